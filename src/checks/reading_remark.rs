use super::{Draft, Facts, Sink, things};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Passes on what the solver remarked although the reading is one: two letters that share a digit, two bands
    /// that some eyes cannot tell apart but that a pattern parts, and the like.
    ///
    /// ## Why it matters at the table
    /// It is no fault, but a guest may stop at it.
    ///
    /// ## How to mend
    /// Nothing need be done; if play-tests stop there, change the setup.
    ReadingRemark, "reading-remark", Notes, "the reading is one, but something in it may give a guest pause",
    "it is no fault, but a guest may stop at it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        for remark in &laid.readings.remarks {
            let message = format!("\"{}\": {remark}", puzzle.title);
            sink.add(Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message));
        }
    }
}
