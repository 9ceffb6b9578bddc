//! How a text can say a code: as digits, as number words, backwards, spelled out.

use super::numbers::{cardinal, numbers};
use super::{cased_words, words};
use crate::kit::LockKind;

/// How a text says a code, the most telling first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Saying {
    /// All of it.
    Whole,
    /// All of it, backwards.
    Reversed,
    /// All of it, with the first letters of its words.
    Initials,
    /// All but one symbol of it, in a row: the last one is missing, or with `true` the first.
    Nearly(bool),
    /// All its symbols and no others of their kind, in another order.
    Shuffled,
}

impl Saying {
    /// What the text does: "gives the answer backwards".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Whole => "gives the answer",
            Self::Reversed => "gives the answer backwards",
            Self::Initials => "spells the answer with the first letters of its words",
            Self::Nearly(_) => "gives all of the answer but one symbol",
            Self::Shuffled => "gives all symbols of the answer, in another order",
        }
    }

    /// Whether it gives the whole code to whoever sees it.
    #[must_use]
    pub const fn whole(self) -> bool {
        matches!(self, Self::Whole | Self::Reversed | Self::Initials)
    }
}

/// The least letters that the initials of words must spell to count: three agree by chance in every longer text.
pub(super) const INITIALS: usize = 4;

/// The most telling way in which `text` says the code of a lock, as it is set on it; none when it does not.
#[must_use]
pub fn says(text: &str, kind: &LockKind, answer: &str) -> Option<Saying> {
    let cased: Vec<&str> = cased_words(text).collect();
    let words = words(text);
    let symbols = match kind {
        LockKind::Digits(_) => numbers(&cased, &words),
        LockKind::Directions(_) => words.iter().map(|word| direction(word)).collect(),
        LockKind::Letters(_) => words.iter().cloned().map(Some).collect(),
        LockKind::Key | LockKind::Spoken => return phrase(&words, answer).then_some(Saying::Whole),
    };
    let code = answer.trim().to_lowercase();
    if code.chars().count() < 2 {
        return None;
    }
    let reversed: String = code.chars().rev().collect();
    let spoken = matches!(kind, LockKind::Digits(_)) && cardinal(&code).is_some_and(|row| holds(&words, &row));
    if spoken || stands(&symbols, &code) {
        Some(Saying::Whole)
    } else if stands(&symbols, &reversed) {
        Some(Saying::Reversed)
    } else if matches!(kind, LockKind::Letters(_)) && initials(&words, &code) {
        Some(Saying::Initials)
    } else if let Some((first, _)) = nearly(&code).into_iter().find(|(_, part)| stands(&symbols, part)) {
        Some(Saying::Nearly(first))
    } else {
        shuffled(&symbols, &code, kind).then_some(Saying::Shuffled)
    }
}

/// Codes of three symbols and more without their first or last one, and whether it is the first. Letters are left
/// out: most parts of words are harmless.
fn nearly(code: &str) -> Vec<(bool, &str)> {
    let count = code.chars().count();
    if count < 3 || !code.chars().all(|c| c.is_ascii_digit()) {
        return Vec::new();
    }
    [code.get(1..).map(|part| (true, part)), code.get(..count - 1).map(|part| (false, part))]
        .into_iter()
        .flatten()
        .collect()
}

/// Whether neighbouring symbols, joined, are exactly `code`.
fn stands(symbols: &[Option<String>], code: &str) -> bool {
    (0..symbols.len()).any(|first| {
        let mut rest = code;
        for symbol in &symbols[first..] {
            let Some(left) = symbol.as_deref().and_then(|symbol| rest.strip_prefix(symbol)) else { return false };
            if left.is_empty() {
                return true;
            }
            rest = left;
        }
        false
    })
}

/// Whether the text has exactly the symbols of a code of three and more, in whatever order: for letters one word of
/// them, or single letters. "One" is an everyday word and counts only where the code has a 1.
fn shuffled(symbols: &[Option<String>], code: &str, kind: &LockKind) -> bool {
    if code.chars().count() < 3 {
        return false;
    }
    let sorted = |text: &str| {
        let mut all: Vec<char> = text.chars().collect();
        all.sort_unstable();
        all
    };
    let wanted = sorted(code);
    let told = symbols.iter().flatten();
    match kind {
        LockKind::Letters(_) => {
            let single: String =
                told.clone().filter(|word| word.chars().count() == 1 && *word != "a").cloned().collect();
            told.clone().any(|word| sorted(word) == wanted) || sorted(&single) == wanted
        }
        LockKind::Digits(_) => {
            let digits: String = told.filter(|digits| *digits != "1" || code.contains('1')).cloned().collect();
            sorted(&digits) == wanted
        }
        LockKind::Directions(_) | LockKind::Key | LockKind::Spoken => false,
    }
}

/// Whether the first letters of words in a row spell the code.
fn initials(words: &[String], code: &str) -> bool {
    let code: Vec<char> = code.chars().collect();
    let first: Vec<char> = words.iter().filter_map(|word| word.chars().next()).collect();
    code.len() >= INITIALS && first.windows(code.len()).any(|row| row == code)
}

/// The push that a word says, or the pushes that it is made of.
pub(super) fn direction(word: &str) -> Option<String> {
    let first = match word {
        "u" | "up" | "upwards" => "u",
        "d" | "down" | "downwards" => "d",
        "l" | "left" => "l",
        "r" | "right" => "r",
        other if other.chars().all(|c| "udlr".contains(c)) => other,
        _ => return None,
    };
    Some(first.to_owned())
}

/// Whether a row of words stands in a text, "and" left out.
fn holds(words: &[String], row: &[String]) -> bool {
    let words: Vec<&String> = words.iter().filter(|word| *word != "and").collect();
    words.windows(row.len().max(1)).any(|window| window.iter().zip(row).all(|(a, b)| *a == b))
}

/// Whether a word counts in a spoken answer.
pub(super) fn plain(word: &str) -> bool {
    !matches!(word, "the" | "a" | "an")
}

/// Whether the answer's words stand in the text in a row; articles do not count.
fn phrase(text: &[String], answer: &str) -> bool {
    let answer: Vec<String> = words(answer).into_iter().filter(|word| plain(word)).collect();
    let text: Vec<&String> = text.iter().filter(|word| plain(word)).collect();
    !answer.is_empty() && text.windows(answer.len()).any(|window| window.iter().zip(&answer).all(|(a, b)| *a == b))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn digits(text: &str, code: &str) -> Option<Saying> {
        says(text, &LockKind::Digits(3), code)
    }

    #[test]
    fn a_number_is_said_in_many_ways() {
        for text in [
            "417",
            "set 4-1-7",
            "4, 1, 7",
            "four one seven",
            "four seventeen",
            "four hundred and seventeen",
            "IV I VII",
            "CDXVII",
        ] {
            assert_eq!(digits(text, "417"), Some(Saying::Whole), "{text}");
        }
        assert_eq!(digits("double four, seven", "447"), Some(Saying::Whole));
        assert_eq!(digits("seven, one, four", "417"), Some(Saying::Reversed));
        assert_eq!(digits("it starts 4 1", "417"), Some(Saying::Nearly(false)));
        assert_eq!(digits("forty-two it is", "427"), Some(Saying::Nearly(false)));
        // Two digits of three stand together; the first is said as well, but apart.
        assert_eq!(digits("four and then seventeen", "417"), Some(Saying::Nearly(true)));
        assert_eq!(digits("one bird, seven bells and four cups", "417"), Some(Saying::Shuffled));
        assert_eq!(digits("seven cups for one bird", "417"), None);
        assert_eq!(digits("two cups, one after another, near the six and the nine", "269"), Some(Saying::Shuffled));
        for text in ["1417", "4171", "three bands", "one seventh", "I see four", "MIX it"] {
            assert_eq!(digits(text, "417"), None, "{text}");
        }
    }

    #[test]
    fn words_and_pushes_are_said_too() {
        let letters = LockKind::Letters(vec![String::new(); 4]);
        assert_eq!(says("It is B-E-L-L.", &letters, "BELL"), Some(Saying::Whole));
        assert_eq!(says("a lleb", &letters, "BELL"), Some(Saying::Reversed));
        assert_eq!(says("Begin early, little lamb.", &letters, "BELL"), Some(Saying::Initials));
        assert_eq!(says("anagram of wern", &letters, "WREN"), Some(Saying::Shuffled));
        assert_eq!(says("e, w, n and r", &letters, "WREN"), Some(Saying::Shuffled));
        assert_eq!(says("bells", &letters, "BELL"), None);
        assert_eq!(says("up, left, left", &LockKind::Directions(3), "ULL"), Some(Saying::Whole));
        assert_eq!(says("look below the third bell!", &LockKind::Key, "third bell"), Some(Saying::Whole));
    }
}
