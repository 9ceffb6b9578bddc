use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags a puzzle whose lock hangs on no box.
    ///
    /// ## Why it matters at the table
    /// Guests solve it and have nothing to open.
    ///
    /// ## How to mend
    /// Hang the lock on a box, or let the puzzle open another lock.
    PuzzleWithoutLock, "puzzle-without-lock", Blocks, "a puzzle whose lock hangs on no box",
    "guests solve it and have nothing to open", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for puzzle in &facts.kit.puzzles {
        // A lock that does not exist is a name that leads nowhere.
        let Some(lock) = facts.kit.lock(&puzzle.opens) else { continue };
        if facts.kit.box_of(&puzzle.opens).is_none() {
            let message = format!("\"{}\" opens {}, which hangs on no box", puzzle.title, lock.name);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Opens), message);
            sink.add(draft.help("hang the lock on a box, or let the puzzle open another"));
        }
    }
}
