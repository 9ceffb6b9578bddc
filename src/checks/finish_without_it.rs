use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags a puzzle that the finish does not need: the last box opens without it. It also flags a closing card
    /// that can be had before the last box opens.
    ///
    /// ## Why it matters at the table
    /// Guests pass it by, and its minutes are missing from the evening; or they read the end before the end.
    ///
    /// ## How to mend
    /// Hang its lock on a box on the way, or put something into its box that is needed.
    FinishWithoutIt, "finish-without-it", Warns, "a puzzle that the finish does not need",
    "guests pass it by, and its minutes are missing from the evening", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (flow, finish) = (facts.flow, &facts.kit.finish);
    if !flow.finish_reachable {
        return;
    }
    for puzzle in facts.kit.puzzles.iter().filter(|puzzle| !flow.needed.contains(&puzzle.id)) {
        let message = format!("the last box opens without \"{}\"", puzzle.title);
        let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Opens), message);
        sink.add(draft.help("hang its lock on the way to the finish, or put into its box what another puzzle needs"));
    }
    if let (Some(card), Some(opened)) = (flow.notes.get(&finish.card), flow.boxes.get(&finish.opens))
        && card < opened
    {
        let draft = Draft::new(Anchor::Finish, "the closing card can be had before the last box opens");
        sink.add(draft.why("guests read the end before the end").help("lay the closing card into the last box"));
    }
}
