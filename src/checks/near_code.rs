use std::collections::{BTreeMap, BTreeSet};

use super::things::{self, Code};
use super::{Draft, Facts, Sink, mends};
use crate::codes::{Likeness, likeness, reads_turned};
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
    let mut known: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    for (at, second) in codes.iter().enumerate() {
        let signs = signs(&second.answer);
        let alike: BTreeSet<usize> = signs.iter().filter_map(|sign| known.get(sign)).flatten().copied().collect();
        signs.into_iter().for_each(|sign| known.entry(sign).or_default().push(at));
        for first in alike.into_iter().filter_map(|at| codes.get(at)) {
            let how = likeness(&first.answer, &second.answer).filter(|how| *how != Likeness::Equal);
            let Some(how) = how else { continue };
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

/// Signs of which two codes that are like each other have one in common: all symbols but that of one wheel, all
/// symbols in whatever order, what is read upside down.
fn signs(code: &str) -> Vec<String> {
    let symbols: Vec<char> = code.chars().collect();
    let mut sorted = symbols.clone();
    sorted.sort_unstable();
    // Upside down no other code of the same symbols need come out: both carry the lesser of the two.
    let turned = reads_turned(code).map(|turned| format!("turned {}", turned.as_str().min(code)));
    let wheel = |at: usize| {
        let open = symbols.iter().enumerate().map(|(wheel, symbol)| if wheel == at { '?' } else { *symbol });
        format!("wheel {}", open.collect::<String>())
    };
    let mut signs: Vec<String> = (0..symbols.len()).map(wheel).collect();
    signs.push(format!("symbols {}", sorted.into_iter().collect::<String>()));
    signs.extend(turned);
    signs
}
