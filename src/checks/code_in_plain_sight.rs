use std::collections::BTreeMap;

use super::{Draft, Facts, Sink, mends, things};
use crate::codes::{Saying, says};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::LockKind;
use crate::party::OnView;

check!(
    /// ## What it does
    /// Flags the code of a lock that stands in a text which guests read and which is no part of its puzzle: the
    /// letter, a note, a title, another puzzle's piece.
    ///
    /// ## Why it matters at the table
    /// Everything in view is taken for a clue; a year or a price that happens to be the code opens the lock early.
    ///
    /// ## How to mend
    /// Change the text or the code.
    CodeInPlainSight, "code-in-plain-sight", Warns, "a code that stands in a text on view",
    "everything in view is taken for a clue, and this one opens the lock early", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let texts = facts.party.on_view(facts.kit);
    let codes: Vec<things::Code<'_>> =
        things::codes(facts).into_iter().filter(|code| code.lock.kind != LockKind::Key).collect();
    let mut pairs: BTreeMap<usize, Vec<&OnView>> = BTreeMap::new();
    let index = things::index(&codes);
    for view in &texts {
        index.may_say(&view.text).into_iter().for_each(|code| pairs.entry(code).or_default().push(view));
    }
    for (code, texts) in pairs {
        let Some(code) = codes.get(code) else { continue };
        for OnView { from, name, text } in texts {
            let own = matches!(from, Anchor::Puzzle(id, field) if *id == code.puzzle.id && *field != PuzzleField::Title);
            if !own && says(text, &code.lock.kind, &code.answer) == Some(Saying::Whole) {
                let message = format!("the code of {} stands in {name}", code.lock.name);
                sink.add(Draft::new(from.clone(), message).about(&code.puzzle.id).help("change the text or the code"));
            }
        }
    }
}
