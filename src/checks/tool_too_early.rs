use super::{Draft, Facts, Sink};
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Notes a tool that guests have long before the first puzzle that needs it.
    ///
    /// ## Why it matters at the table
    /// A tool on view asks to be used: guests try it on everything and are led astray.
    ///
    /// ## How to mend
    /// Lay the tool into a box that opens shortly before its puzzle.
    ToolTooEarly, "tool-too-early", Notes, "a tool on view long before its puzzle",
    "a tool on view asks to be used: guests try it on everything", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for early in &facts.flow.early {
        let (Some(prop), Some(puzzle)) = (facts.kit.prop(&early.prop), facts.kit.puzzle(&early.puzzle)) else { continue };
        let message = format!("{} is to hand {} rounds before \"{}\" needs it", prop.name, early.wait, puzzle.title);
        let draft = Draft::new(Anchor::Prop(prop.id.clone()), message);
        sink.add(draft.help("lay it into a box that opens shortly before"));
    }
}
