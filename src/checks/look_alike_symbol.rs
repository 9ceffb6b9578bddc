use super::{Draft, Facts, Sink, mends, things};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::LockKind;

check!(
    /// ## What it does
    /// Flags a symbol of an answer that looks like another one which may stand there as well: 0 and O, 1 and I and L,
    /// 5 and S, 2 and Z, 8 and B. On a lock with wheels both must be on the wheel; a spoken word or name must mix
    /// letters and digits. Which symbols look alike is common practice, no source.
    ///
    /// ## Why it matters at the table
    /// Guests who have found the right thing set or say the wrong one, and lose faith in a right idea.
    ///
    /// ## How to mend
    /// Choose another answer, or take one of the two off the wheel.
    LookAlikeSymbol, "look-alike-symbol", Warns, "a letter or digit of an answer that can be taken for another",
    "guests who have found the right thing set the wrong one", run, mends::other_code
);

/// Symbols that look alike.
const ALIKE: &[&str] = &["0O", "1IL", "5S", "2Z", "8B"];

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for code in things::codes(facts) {
        for (index, symbol) in code.answer.to_uppercase().chars().enumerate() {
            let Some(twin) = twins(symbol).find(|twin| stands(&code.lock.kind, &code.answer, index, *twin)) else {
                continue;
            };
            let message = format!("{symbol} in the answer of \"{}\" can be taken for {twin}", code.puzzle.title);
            let draft = Draft::new(Anchor::Puzzle(code.puzzle.id.clone(), PuzzleField::Answer), message);
            sink.add(draft.help("choose another answer, or take one of the two off the wheel"));
        }
    }
}

/// The other symbols that look like this one.
fn twins(symbol: char) -> impl Iterator<Item = char> {
    let row = ALIKE.iter().find(|row| row.contains(symbol)).copied().unwrap_or_default();
    row.chars().filter(move |twin| *twin != symbol)
}

/// Whether the twin may stand in the answer at this place.
fn stands(kind: &LockKind, answer: &str, index: usize, twin: char) -> bool {
    match kind {
        LockKind::Letters(_) => kind.shows(index, twin),
        LockKind::Spoken => {
            answer.chars().any(|c| c.is_ascii_digit()) && answer.chars().any(char::is_alphabetic)
        }
        LockKind::Digits(_) | LockKind::Directions(_) | LockKind::Key => false,
    }
}
