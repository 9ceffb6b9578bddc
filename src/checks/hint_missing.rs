use super::{Draft, Facts, FixKind, Sink};
use crate::diag::{Anchor, Level, PuzzleField, Step};
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Flags a hint ladder with steps that have no text: one finding for each puzzle, with all its empty steps.
    ///
    /// ## Why it matters at the table
    /// A stuck group gets too much or nothing: there is no token between.
    ///
    /// ## How to mend
    /// Write the steps; the mechanic's drafts are a start.
    HintMissing, "hint-missing", Warns, "a hint step without a text", "a stuck group gets too much at once, or nothing",
    run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in facts.kit.puzzles.iter().zip(&facts.party.puzzles) {
        let empty: Vec<Step> =
            Step::ALL.into_iter().filter(|step| laid.hints.step(*step).trim().is_empty()).collect();
        let Some(first) = empty.first() else { continue };
        let words: Vec<String> = empty.iter().map(|step| format!("no {}", step.word())).collect();
        let none = if empty.len() == Step::ALL.len() { "no hints".to_owned() } else { words.join(" and ") };
        let anchor = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(Level::Standard, *first));
        let mut draft = Draft::new(anchor, format!("\"{}\" has {none}", facts.party.say(&puzzle.title)));
        let mut mended = puzzle.clone();
        let mut taken = 0;
        for step in empty {
            let drafted = laid.drafted.step(step).trim();
            if drafted.is_empty() {
                draft = draft.help(format!("write the {}", step.word()));
            } else {
                draft = draft.help(format!("the mechanic drafts the {}: {drafted}", step.word()));
                drafted.clone_into(mended.hints.step_mut(step));
                taken += 1;
            }
        }
        let title = match taken {
            0 => {
                sink.add(draft);
                continue;
            }
            1 => "Take the mechanic's draft",
            _ => "Take the mechanic's drafts",
        };
        sink.add(draft.fix(title, FixKind::Ask, vec![Edit::Puzzle(Box::new(mended))]));
    }
}
