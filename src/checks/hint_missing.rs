use super::{Draft, Facts, FixKind, Sink, ladder};
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Flags a step of a hint ladder without a text.
    ///
    /// ## Why it matters at the table
    /// A stuck group gets too much or nothing: there is no token between.
    ///
    /// ## How to mend
    /// Write the step; the mechanic's draft is a start.
    HintMissing, "hint-missing", Warns, "a hint step without a text", "a stuck group gets too much at once, or nothing",
    run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for hint in ladder::hints(facts).into_iter().filter(|hint| hint.text.is_empty()) {
        let message = format!("\"{}\" has no {}", hint.puzzle.title, hint.step.word());
        let draft = Draft::new(hint.anchor, message);
        let drafted = facts.party.puzzle(&hint.puzzle.id).map_or("", |laid| laid.drafted.step(hint.step)).trim();
        if drafted.is_empty() {
            sink.add(draft.help("write it"));
            continue;
        }
        let mut mended = hint.puzzle.clone();
        drafted.clone_into(mended.hints.step_mut(hint.step));
        let edits = vec![Edit::Puzzle(Box::new(mended))];
        sink.add(draft.help(format!("the mechanic drafts: {drafted}")).fix(
            "Take the mechanic's draft",
            FixKind::Ask,
            edits,
        ));
    }
}
