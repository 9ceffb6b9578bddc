use super::ladder::Hint;
use super::{Draft, Facts, Fix, FixKind, Sink, ladder};
use crate::codes::{as_set, left, says, told};
use crate::diag::{Anchor, Level, PuzzleField};
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Flags a step of a hint ladder that tells more of the code than a later one: a nudge that names a digit, where
    /// the giveaway names none.
    ///
    /// ## Why it matters at the table
    /// The group that asks a little gets a lot, and the group that asks for the last hint learns nothing from it.
    ///
    /// ## How to mend
    /// Exchange the two texts, or write the earlier one anew: nudge, where to look; method, what to do; giveaway, all
    /// but the last step.
    HintOutOfOrder, "hint-out-of-order", Warns, "a hint that tells more than a later one",
    "the group that asks a little gets a lot, and the last hint tells nothing new", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for ladder in ladder::hints(facts).chunks(3) {
        let [nudge, method, giveaway] = ladder else { continue };
        let [first, second, third] = [nudge, method, giveaway].map(|hint| (hint, codes_left(facts, hint)));
        let pairs = [(first, third), (first, second), (second, third)];
        let worst = pairs.into_iter().find_map(|((early, few), (late, many))| {
            let (few, many) = (few?, many?);
            (few < many).then_some((early, late, few, many))
        });
        let Some((early, late, few, many)) = worst else { continue };
        let message = format!(
            "the {} of \"{}\" tells more than the {}: {few} codes left against {many}",
            early.step.word(),
            early.puzzle.title,
            late.step.word()
        );
        let draft = Draft::new(early.anchor.clone(), message);
        let draft = draft.help("let each step tell a little more than the one before");
        sink.add(match exchanged(early, late) {
            Some(fix) => draft.with(fix),
            None => draft,
        });
    }
}

/// How many codes are left for someone who reads one hint alone; none for an empty one, and for one that gives the
/// whole code, which is another finding.
fn codes_left(facts: &Facts<'_>, hint: &Hint<'_>) -> Option<u64> {
    let lock = facts.lock(&hint.puzzle.opens).filter(|_| !hint.text.is_empty())?;
    let code = as_set(&lock.kind, &facts.party.puzzle(&hint.puzzle.id)?.answer);
    if says(hint.text, &lock.kind, &code).is_some_and(crate::codes::Saying::whole) {
        return None;
    }
    left(&lock.kind, &told(hint.text, &lock.kind, &code))
}

/// The two texts exchanged, where both are written at one level.
fn exchanged(early: &Hint<'_>, late: &Hint<'_>) -> Option<Fix> {
    let level = |anchor: &Anchor| match anchor {
        Anchor::Puzzle(_, PuzzleField::Hint(level, _)) => *level,
        _ => Level::Standard,
    };
    let at = level(&early.anchor);
    if at != level(&late.anchor) {
        return None;
    }
    let hints = ladder::written(early.puzzle, at);
    let (first, second) = (hints.step(early.step).to_owned(), hints.step(late.step).to_owned());
    let mended = ladder::with_step(early.puzzle.clone(), at, early.step, second);
    let mended = ladder::with_step(mended, at, late.step, first);
    let title = format!("Exchange the {} and the {}", early.step.word(), late.step.word());
    Some(Fix { title, kind: FixKind::Ask, edits: vec![Edit::Puzzle(Box::new(mended))] })
}
