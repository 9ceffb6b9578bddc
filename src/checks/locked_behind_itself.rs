use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::{Anchor, PuzzleField, Severity};
use crate::kit::{Lying, PropRole};

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
    "no group can ever open them", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for found in &facts.flow.loops {
        let anchor = found.anchors.first().cloned().unwrap_or(Anchor::Kit);
        let severity = if found.finish { Severity::Blocks } else { Severity::Warns };
        let draft = Draft::new(anchor, found.words.clone()).severity(severity);
        sink.add(draft.help("move one of these things out of its box, or let another lock shut it"));
    }
}

/// One thing of the loop laid elsewhere: a tool or a key before a part of a puzzle, and a box last of all.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let found = facts.flow.loops.iter().find(|found| facts.party.say(&found.words) == finding.message)?;
    let (mut props, mut parts, mut boxes) = (Vec::new(), Vec::new(), Vec::new());
    for anchor in &found.anchors {
        match anchor {
            Anchor::Puzzle(_, PuzzleField::Tool(tool)) => props.push(Lying::Prop(tool.clone())),
            Anchor::Puzzle(id, PuzzleField::Part(part)) => parts.push(Lying::Part(id.clone(), part.clone())),
            Anchor::Lock(lock) => {
                let keys = facts.kit.props.iter().filter(|prop| prop.role == PropRole::Key(lock.clone()));
                props.extend(keys.map(|key| Lying::Prop(key.id.clone())));
            }
            Anchor::Box(id) => boxes.push(Lying::Box(id.clone())),
            _ => {}
        }
    }
    let things: Vec<Lying> = props.into_iter().chain(parts).chain(boxes).collect();
    trying::sound(facts, finding, things.iter().flat_map(|thing| trying::elsewhere(facts, thing)))
}
