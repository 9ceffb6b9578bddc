use super::{Draft, Facts, Sink, mend_setup, things};
use crate::diag::{Anchor, PuzzleField};
use crate::mechanics;

check!(
    /// ## What it does
    /// Flags a puzzle that its mechanic cannot arrange: a setup that cannot be read, or that cannot carry the answer.
    ///
    /// ## Why it matters at the table
    /// There is no such puzzle: nothing of it is printed.
    ///
    /// ## How to mend
    /// The hints come from the mechanic itself; `explain` with the mechanic's name describes its setup.
    SetupRefused, "setup-refused", Blocks, "a puzzle that its mechanic cannot arrange",
    "nothing of the puzzle can be printed", run,
    mend_setup::accepted
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        // An unknown mechanic or lock is a finding of its own.
        let told = mechanics::find(&puzzle.mechanic).is_err() || facts.lock(&puzzle.opens).is_none();
        let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup);
        // So is a slot that has no word: with it the setup cannot be what its author meant.
        let told = told || facts.party.script.unfilled.iter().any(|(unfilled, _)| *unfilled == at);
        if let (false, Err(trouble)) = (told, &laid.laid) {
            sink.add(Draft::of(at, trouble));
        }
    }
}
