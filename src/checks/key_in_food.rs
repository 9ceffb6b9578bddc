use super::{Draft, Facts, Sink, things};
use crate::codes::words;
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags a hiding place inside food.
    ///
    /// ## Why it matters at the table
    /// Hard or sharp things in food break teeth and choke; the FDA calls ready-to-eat food with a hard or sharp
    /// object of 7 to 25 mm adulterated (CPG 555.425), and a thing embedded in sweets likewise (21 U.S.C. 342(d)(1)).
    /// Those rules bind commerce; take the lesson. Local codes and the maker's label come first.
    ///
    /// ## How to mend
    /// Hide it under the wrapper, on the box, or beside the plate.
    KeyInFood, "key-in-food", Warns, "a hiding place inside food",
    "hard things in food break teeth and choke; local codes and the maker's label come first", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        if laid.readings.remarks.iter().any(|remark| words(remark).iter().any(|word| word == "food")) {
            let message = format!("\"{}\" hides its key inside food", puzzle.title);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message);
            sink.add(draft.help("hide it under a sealed wrapper, on the box, or beside the plate"));
        }
    }
}
