use super::glass_with_children::GLASS;
use super::magnets_with_children::is_magnet;
use super::{Draft, Facts, Sink, things};

check!(
    /// ## What it does
    /// Flags a thing that guests handle and that is meant for older guests than the kit's youngest. Magnets and
    /// glass have checks of their own.
    ///
    /// ## Why it matters at the table
    /// The caution is printed in the host guide, but the host must also act on it. Local codes and the maker's label
    /// come first.
    ///
    /// ## How to mend
    /// Raise the kit's youngest age, choose another thing, or let an adult hand it out and take it back.
    CautionOwed, "caution-owed", Warns, "a thing meant for older guests than the youngest",
    "the host must act on its caution; local codes and the maker's label come first", run
);

/// What only the host handles, while preparing.
const HOST: &[&str] = &["scissors", "glue", "uv-pen", "permanent-marker", "wipe-off-marker"];

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (youngest, _) = facts.kit.ages;
    for (material, at) in things::materials(facts) {
        let elsewhere = HOST.contains(&material.id) || GLASS.contains(&material.id) || is_magnet(material.id);
        if elsewhere || material.caution.is_empty() || youngest >= material.least_age {
            continue;
        }
        let message =
            format!("the kit is for guests from {youngest}, and a {} is meant from {}", material.name, material.least_age);
        sink.add(Draft::new(at.anchor(), message).help(material.caution));
    }
}
