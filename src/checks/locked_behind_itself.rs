use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Severity};

check!(
    /// ## What it does
    /// Flags boxes that hold one another shut, and tells the shortest loop in words. It blocks when the finish
    /// depends on the loop and warns when it does not.
    ///
    /// ## Why it matters at the table
    /// No group can ever open them, however clever.
    ///
    /// ## How to mend
    /// Move one thing of the loop out of its box.
    LockedBehindItself, "locked-behind-itself", Blocks, "boxes that hold one another shut",
    "no group can ever open them", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for found in &facts.flow.loops {
        let anchor = found.anchors.first().cloned().unwrap_or(Anchor::Kit);
        let severity = if found.finish { Severity::Blocks } else { Severity::Warns };
        let draft = Draft::new(anchor, found.words.clone()).severity(severity);
        sink.add(draft.help("move one of these things out of its box, or let another lock shut it"));
    }
}
