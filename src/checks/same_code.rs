use std::collections::BTreeMap;

use super::{Draft, Facts, Sink, mends, things};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags two locks that open with the same code or word.
    ///
    /// ## Why it matters at the table
    /// A guest who tries a code on every lock opens two at once, and the second puzzle is never played.
    ///
    /// ## How to mend
    /// Choose another answer for one of them.
    SameCode, "same-code", Blocks, "two locks open with the same code",
    "one code tried on every lock opens two, and the second puzzle is never played", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let codes = things::codes(facts);
    let codes: Vec<_> = codes.iter().filter(|code| code.lock.kind != crate::kit::LockKind::Key).collect();
    let mut known: BTreeMap<String, Vec<&things::Code<'_>>> = BTreeMap::new();
    for second in codes {
        let alike = known.entry(second.answer.to_lowercase()).or_default();
        // Two puzzles for one lock are told elsewhere.
        let first = alike.iter().find(|first| first.lock.id != second.lock.id).copied();
        alike.push(second);
        if let Some(first) = first {
            let message = format!("{} and {} both open with {}", first.lock.name, second.lock.name, second.answer);
            let draft = Draft::new(Anchor::Puzzle(second.puzzle.id.clone(), PuzzleField::Answer), message);
            sink.add(draft.help("choose another answer for one of them"));
        }
    }
}
