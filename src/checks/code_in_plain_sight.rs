use super::text::{Saying, says};
use super::{Draft, Facts, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::face::Audience;
use crate::kit::LockKind;

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
    "everything in view is taken for a clue, and this one opens the lock early", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let texts = texts(facts);
    for code in things::codes(facts).iter().filter(|code| code.lock.kind != LockKind::Key) {
        for (anchor, name, text) in &texts {
            let own = matches!(anchor, Anchor::Puzzle(id, field) if *id == code.puzzle.id && *field != PuzzleField::Title);
            if !own && says(text, &code.lock.kind, &code.answer) == Some(Saying::Whole) {
                let message = format!("the code of {} stands in {name}", code.lock.name);
                sink.add(Draft::new(anchor.clone(), message).help("change the text or the code"));
            }
        }
    }
}

/// Every text that guests read from the start or find, with where it is written and what it is called.
fn texts(facts: &Facts<'_>) -> Vec<(Anchor, String, String)> {
    let script = &facts.party.script;
    let letter = &script.letter;
    let mut texts = vec![(Anchor::Kit, "the kit's title".to_owned(), script.title.clone())];
    for part in [&letter.heading, &letter.salutation, &letter.body, &letter.closing, &letter.signature] {
        texts.push((Anchor::Letter, "the letter".into(), part.text()));
    }
    for puzzle in &script.puzzles {
        let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Title);
        texts.push((at, format!("the title \"{}\"", puzzle.title), puzzle.title.clone()));
    }
    for item in &facts.kit.boxes {
        texts.push((Anchor::Box(item.id.clone()), "the name of a box".into(), facts.party.say(&item.name)));
    }
    for lock in &facts.kit.locks {
        texts.push((Anchor::Lock(lock.id.clone()), "the name of a lock".into(), facts.party.say(&lock.name)));
    }
    for piece in facts.party.pieces.iter().filter(|piece| piece.audience == Audience::Players) {
        for face in std::iter::once(&piece.front).chain(&piece.back) {
            texts.extend(face.runs().map(|run| (run.from.clone(), format!("\"{}\"", piece.label), run.text.text())));
        }
    }
    texts
}
