use super::{Draft, Facts, Sink, mend_setup, things};
use crate::diag::{Anchor, PuzzleField};
use crate::readings::tokens::turned;

check!(
    /// ## What it does
    /// Flags a digit or number on a loose piece that reads as another one upside down, with no line beneath it to say
    /// which way is up: 6 and 9, 16 and 91. Of the digits 0, 1 and 8 stay what they are, and 6 and 9 change places.
    ///
    /// ## Why it matters at the table
    /// The piece lies as it fell, and half the guests sit on the other side of the table.
    ///
    /// ## How to mend
    /// Let the setup put a line beneath it, or take another answer.
    SixOrNine, "six-or-nine", Warns, "a number on a loose piece that reads otherwise upside down",
    "half the guests sit on the other side of the table", run,
    mend_setup::field_back
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        let Ok(view) = &laid.laid else { continue };
        for text in view.loose() {
            let Some(other) = turned(&text).filter(|other| *other != text) else { continue };
            let message = format!("{text} lies loose in \"{}\" and reads as {other} upside down", puzzle.title);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message);
            sink.add(draft.help("set `baseline: true`, so that a line stands beneath it"));
        }
    }
}
