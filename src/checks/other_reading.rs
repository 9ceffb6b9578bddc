use super::{Draft, Facts, Sink, mend_setup, things};
use crate::diag::{Anchor, PuzzleField};
use crate::readings::Verdict;

check!(
    /// ## What it does
    /// Flags a puzzle whose pieces give one answer, but not the one that the author wrote.
    ///
    /// ## Why it matters at the table
    /// The host sets the lock to the author's answer; guests who solve the puzzle cannot open it.
    ///
    /// ## How to mend
    /// Look at the setup: something in it fixes the answer by itself. Change it, or take over what it gives.
    OtherReading, "other-reading", Blocks, "the only reading is not the author's answer",
    "guests who solve it cannot open the lock that the host has set", run, mend_setup::read_answer
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        let (Some(Verdict::Other), Some(reading)) = (laid.verdict, laid.readings.list.first()) else { continue };
        let message = format!("\"{}\" reads as {}, not as {}", puzzle.title, reading.answer, laid.answer);
        let mut draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Answer), message);
        if !reading.why.is_empty() {
            draft = draft.help(format!("{}: {}", reading.answer, reading.why));
        }
        sink.add(draft.help("change the setup so that it gives the answer, or write the answer that it gives"));
    }
}
