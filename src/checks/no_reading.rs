use super::{Draft, Facts, Sink, mend_setup, things};
use crate::diag::{Anchor, PuzzleField};
use crate::readings::Verdict;

check!(
    /// ## What it does
    /// Flags a puzzle from whose pieces nothing can be read that its lock can show.
    ///
    /// ## Why it matters at the table
    /// The puzzle cannot be solved, and nobody at the table can know that.
    ///
    /// ## How to mend
    /// See whether the lock has the right number and kind of wheels, and whether all pieces that the guests need
    /// are part of the setup.
    NoReading, "no-reading", Blocks, "nothing that the lock can show can be read from the pieces",
    "the puzzle cannot be solved, and nobody at the table can know that", run,
    mend_setup::one_field
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        if laid.verdict != Some(Verdict::None) {
            continue;
        }
        let lock = facts.lock(&puzzle.opens).map_or_else(String::new, |lock| lock.kind.describe());
        let message = format!("\"{}\" gives nothing that its lock ({lock}) can show", puzzle.title);
        let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message);
        sink.add(draft.help("compare the setup with the lock: number of symbols, and which symbols"));
    }
}
