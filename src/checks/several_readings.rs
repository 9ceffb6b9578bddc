use super::{Draft, Facts, Sink, mend_setup, things};
use crate::diag::{Anchor, PuzzleField};
use crate::readings::Verdict;

check!(
    /// ## What it does
    /// Flags a puzzle from whose pieces a careful guest could defend more than one answer that the lock can show.
    /// It lists the answers and the choice that parts them.
    ///
    /// ## Why it matters at the table
    /// Guests who read rightly and find the lock shut drop the right method and never come back to it.
    ///
    /// ## How to mend
    /// Let a piece say the choice: an order, a start mark, a direction. Or choose another answer or another setup.
    SeveralReadings, "several-readings", Blocks, "the pieces allow more than one answer",
    "guests who read rightly and find the lock shut drop the right method", run, mend_setup::one_field
);

/// Answers listed in a line.
const LISTED: usize = 6;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        if laid.verdict != Some(Verdict::Several) {
            continue;
        }
        let list = &laid.readings.list;
        let answers: Vec<&str> = list.iter().take(LISTED).map(|reading| reading.answer.as_str()).collect();
        let rest = if laid.readings.more || list.len() > LISTED { " and more" } else { "" };
        let own = list.iter().any(|reading| crate::readings::same_answer(&reading.answer, &laid.answer));
        let own = if own { "" } else { "; the author's answer is none of them" };
        let message = format!("\"{}\" can be read as {}{rest}{own}", puzzle.title, answers.join(", "));
        let mut draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message);
        for reading in list.iter().take(LISTED).filter(|reading| !reading.why.is_empty()) {
            draft = draft.help(format!("{}: {}", reading.answer, reading.why));
        }
        sink.add(draft.help("let a printed piece say which choice is meant, or choose another answer"));
    }
}
