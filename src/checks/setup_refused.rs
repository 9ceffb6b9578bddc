use super::{Draft, Facts, Sink, mend_setup, things};
use crate::codes::as_set;
use crate::diag::{Anchor, PuzzleField};
use crate::kit::Lock;
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
        // So is an answer that no setup could put on its lock.
        let off = facts.lock(&puzzle.opens).is_some_and(|lock| !lock.kind.spells(&as_set(&lock.kind, &laid.answer)));
        // So is a slot that has no word: with it the setup cannot be what its author meant.
        let told = told || off || facts.party.script.unfilled.iter().any(|(unfilled, _)| *unfilled == at);
        if let (false, Err(trouble)) = (told, &laid.laid) {
            // And so is a mark that the theme does not draw, which others of the kit's puzzles may show.
            let names = |lock: &Lock| !lock.mark.is_empty() && trouble.message.contains(&format!("`{}`", lock.mark));
            let drawn = |lock: &Lock| facts.theme.theme.symbols.contains_key(&lock.mark);
            if facts.kit.locks.iter().any(|lock| names(lock) && !drawn(lock)) {
                continue;
            }
            sink.add(Draft::of(at, trouble));
        }
    }
}
