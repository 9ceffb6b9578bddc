use super::{Draft, Facts, Sink, things};

check!(
    /// ## What it does
    /// Flags glass or glazed tiles in a kit for children.
    ///
    /// ## Why it matters at the table
    /// It is carried about by excited hands. Local codes and the maker's label come first.
    ///
    /// ## How to mend
    /// Take clear plastic instead, and write so into the prop's remarks.
    GlassWithChildren, "glass-with-children", Warns, "glass in a kit for children",
    "it is carried about by excited hands; local codes and the maker's label come first", run
);

/// Materials that break into sharp pieces.
pub(super) const GLASS: &[&str] = &["jar", "tile"];
/// Below this age plastic is asked for (common practice, no source).
const AGE: u8 = 8;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (youngest, _) = facts.kit.ages;
    for (material, at) in things::materials(facts) {
        if GLASS.contains(&material.id) && youngest < AGE {
            let message = format!("the kit is for guests from {youngest} and uses a {}", material.name);
            let draft = Draft::new(at.anchor(), message).help(material.caution);
            sink.add(draft.help(format!("take {}", material.stand_in)));
        }
    }
}
