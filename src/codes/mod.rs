//! Codes: how many are left to try, which are too like one another, which people guess first, and what a text tells
//! of one.
//!
//! All of it is computed from a lock, a code and texts alone; who proposes codes that avoid all this is `propose`.

mod count;
mod guess;
mod index;
mod left;
mod likeness;
mod numbers;
mod says;
mod told;

pub use count::{Repeats, chance_within, codes, mean_tries, orderings};
pub use guess::{Guess, guess};
pub use index::Index;
pub use left::{Known, Left, SECONDS_PER_TRY, left, minutes, symbols, time_to_try};
pub use likeness::{Likeness, likeness, reads_turned};
pub use numbers::{number, roman};
pub use says::{Saying, says};
pub use told::{ordered_by, told};

use crate::kit::LockKind;

/// An answer as it is set on a lock: letters and pushes in capitals, no outer spaces.
#[must_use]
pub fn as_set(kind: &LockKind, answer: &str) -> String {
    match kind {
        LockKind::Letters(_) | LockKind::Directions(_) => answer.trim().to_uppercase(),
        LockKind::Digits(_) | LockKind::Key | LockKind::Spoken => answer.trim().to_owned(),
    }
}

/// The words of a text in lower case: letters and digits, with all else as a break.
#[must_use]
pub fn words(text: &str) -> Vec<String> {
    cased_words(text).map(str::to_lowercase).collect()
}

/// Whether a code stands in a text as a word of its own, just as it is set on the lock.
#[must_use]
pub fn stands_in(text: &str, code: &str) -> bool {
    cased_words(text).any(|word| word == code)
}

/// The words of a text as they stand.
pub fn cased_words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty())
}
