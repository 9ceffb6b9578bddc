use super::glass_with_children::GLASS;
use super::magnets_with_children::is_magnet;
use super::{Draft, Facts, Finding, Fix, Sink, things, trying};
use crate::kit::edit::{Edit, Facts as Lines};

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
    "the host must act on its caution; local codes and the maker's label come first", run, mend
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

/// The kit meant for guests who are old enough for the thing.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let (youngest, oldest) = facts.kit.ages;
    let here = things::materials(facts).into_iter().filter(|(_, at)| at.anchor() == finding.anchor);
    let least = here.map(|(material, _)| material.least_age).max().filter(|age| *age > youngest && *age <= oldest)?;
    let lines = Lines { ages: (least, oldest), ..Lines::of(facts.kit) };
    let title = format!("Make it a kit for guests from {least}");
    trying::sound(facts, finding, [trying::ask(title, vec![Edit::Facts(Box::new(lines))])])
}
