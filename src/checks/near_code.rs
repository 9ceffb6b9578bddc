use super::things::{self, Code};
use super::{Draft, Facts, Sink, mends};
use crate::codes::{Likeness, likeness};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags two locks whose codes are too near: one is the other backwards or upside down, has the same symbols in
    /// another order, or differs on one wheel only.
    ///
    /// ## Why it matters at the table
    /// A guest who misreads a little, or turns a card, gets the code of another lock and takes the puzzle for solved.
    ///
    /// ## How to mend
    /// Choose another answer for one of them.
    NearCode, "near-code", Warns, "two codes that are nearly the same",
    "a small slip gives the code of another lock, and the wrong puzzle is taken for solved", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let codes = things::codes(facts);
    let codes: Vec<&Code<'_>> = codes.iter().filter(|code| code.wheels()).collect();
    for (at, second) in codes.iter().enumerate() {
        for first in &codes[..at] {
            let Some(how) = likeness(&first.answer, &second.answer).filter(|how| *how != Likeness::Equal) else { continue };
            let how = how.words();
            let message = format!(
                "{} of {} and {} of {} {how}",
                first.answer, first.lock.name, second.answer, second.lock.name
            );
            let draft = Draft::new(Anchor::Puzzle(second.puzzle.id.clone(), PuzzleField::Answer), message);
            sink.add(draft.help("choose another answer for one of them"));
        }
    }
}
