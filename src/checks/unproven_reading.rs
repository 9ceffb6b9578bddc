use super::{Draft, Facts, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::readings::Verdict;

check!(
    /// ## What it does
    /// Flags a puzzle so large that the solver gave up before it had seen every reading.
    ///
    /// ## Why it matters at the table
    /// A second answer may be hidden in it, and the first group that finds it is stuck.
    ///
    /// ## How to mend
    /// Make the puzzle smaller, or let its pieces say more: fewer marks, a stated order.
    UnprovenReading, "unproven-reading", Warns, "the solver gave up before it had seen every reading",
    "a second answer may be hidden in it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        if laid.verdict == Some(Verdict::Unproven) {
            let message = format!("\"{}\" is too large to be read to the end", puzzle.title);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message);
            sink.add(draft.help("use fewer marks, or state the order on a piece"));
        }
    }
}
