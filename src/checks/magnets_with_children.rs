use super::{Draft, Facts, Sink, things};
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Flags magnets in a kit whose youngest guests are younger than those magnets are for.
    ///
    /// ## Why it matters at the table
    /// Two swallowed magnets attract each other through the gut and can kill (16 CFR 1262; EN 71-1). Local codes and
    /// the maker's label come first.
    ///
    /// ## How to mend
    /// Hide flat steel washers and let guests search with one large magnet on a wand, raise the age, or choose
    /// another puzzle.
    MagnetsWithChildren, "magnets-with-children", Warns, "magnets in a kit for younger guests than they are for",
    "two swallowed magnets attract each other through the gut; local codes and the maker's label come first", run
);

/// Whether a material is a magnet.
pub(super) fn is_magnet(id: &str) -> bool {
    id.starts_with("magnet")
}

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (youngest, _) = facts.kit.ages;
    for (material, at) in things::materials(facts) {
        if is_magnet(material.id) && youngest < material.least_age {
            let message = format!(
                "the kit is for guests from {youngest} and uses {}, meant from {}",
                material.name, material.least_age
            );
            let draft = Draft::new(at.anchor(), message).help(material.caution);
            sink.add(draft.help(format!("raise the youngest age ({}), or choose other things", Anchor::Kit)));
        }
    }
}
