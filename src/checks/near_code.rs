use super::things::{self, Code};
use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags two locks whose codes are too near: one is the other backwards, has the same symbols in another order,
    /// or differs on one wheel only.
    ///
    /// ## Why it matters at the table
    /// A guest who misreads a little, or turns a card, gets the code of another lock and takes the puzzle for solved.
    ///
    /// ## How to mend
    /// Choose another answer for one of them.
    NearCode, "near-code", Warns, "two codes that are nearly the same",
    "a small slip gives the code of another lock, and the wrong puzzle is taken for solved", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let codes = things::codes(facts);
    let codes: Vec<&Code<'_>> = codes.iter().filter(|code| code.wheels()).collect();
    for (at, second) in codes.iter().enumerate() {
        for first in &codes[..at] {
            let Some(how) = nearness(&first.answer, &second.answer) else { continue };
            let message = format!(
                "{} of {} and {} of {} {how}",
                first.answer, first.lock.name, second.answer, second.lock.name
            );
            let draft = Draft::new(Anchor::Puzzle(second.puzzle.id.clone(), PuzzleField::Answer), message);
            sink.add(draft.help("choose another answer for one of them"));
        }
    }
}

/// How two different codes of one length are near to each other.
fn nearness(a: &str, b: &str) -> Option<&'static str> {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    if a.len() != b.len() || a == b || a.len() < 2 {
        return None;
    }
    let sorted = |code: &[char]| {
        let mut code = code.to_vec();
        code.sort_unstable();
        code
    };
    if a.iter().eq(b.iter().rev()) {
        Some("are each other backwards")
    } else if sorted(&a) == sorted(&b) {
        Some("have the same symbols in another order")
    } else if a.iter().zip(&b).filter(|(a, b)| a != b).count() == 1 {
        Some("differ on one wheel only")
    } else {
        None
    }
}
