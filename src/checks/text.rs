//! How a text can say a code: as digits, as number words, backwards, spelled out.

use crate::kit::LockKind;

/// The numbers that have a word of their own below twenty, in order from nought.
const UNITS: &[&str] = &[
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
/// The tens from twenty.
const TENS: &[&str] = &["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
/// Other words for small numbers. "A pair", "once" and the like are everyday words and are left alone.
const OTHER: &[(&str, &str)] = &[("nought", "0"), ("nil", "0"), ("dozen", "12")];

/// How a text says a code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Saying {
    /// All of it.
    Whole,
    /// All of it, backwards.
    Reversed,
    /// All but one symbol of it, in a row.
    Nearly,
}

impl Saying {
    pub const fn words(self) -> &'static str {
        match self {
            Self::Whole => "gives the answer",
            Self::Reversed => "gives the answer backwards",
            Self::Nearly => "gives all of the answer but one symbol",
        }
    }
}

/// The words of a text in lower case: letters and digits, with all else as a break.
pub(super) fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

/// The most telling way in which `text` says the answer of a lock; none when it does not.
pub(super) fn says(text: &str, kind: &LockKind, answer: &str) -> Option<Saying> {
    let words = words(text);
    let symbols = match kind {
        LockKind::Digits(_) => numbers(&words),
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
    } else if nearly(&code).iter().any(|part| stands(&symbols, part)) {
        Some(Saying::Nearly)
    } else {
        None
    }
}

/// Codes of three symbols and more without their first or last one. Letters are left out: most parts of words
/// are harmless.
fn nearly(code: &str) -> Vec<&str> {
    let count = code.chars().count();
    if count < 3 || !code.chars().all(|c| c.is_ascii_digit()) {
        return Vec::new();
    }
    [code.get(1..), code.get(..count - 1)].into_iter().flatten().collect()
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

/// Each word as digits, where it is a number; "forty two" stands as 42 at its first word.
fn numbers(words: &[String]) -> Vec<Option<String>> {
    let mut found: Vec<Option<String>> = Vec::new();
    let mut tens = false;
    for word in words {
        let number = number(word);
        if tens
            && let (Some(digit), Some(Some(last))) = (&number, found.last_mut())
            && digit.len() == 1
            && digit != "0"
        {
            last.pop();
            last.push_str(digit);
            tens = false;
            continue;
        }
        tens = TENS.contains(&word.as_str());
        found.push(number);
    }
    found
}

fn number(word: &str) -> Option<String> {
    if word.chars().all(|c| c.is_ascii_digit()) {
        return Some(word.to_owned());
    }
    let unit = UNITS.iter().position(|unit| *unit == word);
    let ten = || TENS.iter().position(|ten| *ten == word).map(|at| (at + 2) * 10);
    let other = || OTHER.iter().find(|(other, _)| *other == word).map(|(_, digits)| (*digits).to_owned());
    unit.or_else(ten).map(|number| number.to_string()).or_else(other)
}

fn direction(word: &str) -> Option<String> {
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

/// A number below ten thousand in words, without "and"; none where the code starts with a nought.
fn cardinal(code: &str) -> Option<Vec<String>> {
    let value: usize = code.parse().ok().filter(|value| (100..10_000).contains(value))?;
    if code.starts_with('0') {
        return None;
    }
    let mut row: Vec<String> = Vec::new();
    let unit = |n: usize| UNITS.get(n).map(|unit| (*unit).to_owned());
    if value >= 1000 {
        row.extend(unit(value / 1000));
        row.push("thousand".into());
    }
    if !(value / 100).is_multiple_of(10) {
        row.extend(unit(value / 100 % 10));
        row.push("hundred".into());
    }
    let rest = value % 100;
    if rest >= 20 {
        row.extend(TENS.get(rest / 10 - 2).map(|ten| (*ten).to_owned()));
        row.extend(unit(rest % 10).filter(|_| !rest.is_multiple_of(10)));
    } else if rest > 0 {
        row.extend(unit(rest));
    }
    Some(row)
}

/// Whether a row of words stands in a text, "and" left out.
fn holds(words: &[String], row: &[String]) -> bool {
    let words: Vec<&String> = words.iter().filter(|word| *word != "and").collect();
    words.windows(row.len().max(1)).any(|window| window.iter().zip(row).all(|(a, b)| *a == b))
}

/// Whether the answer's words stand in the text in a row; articles do not count.
fn phrase(text: &[String], answer: &str) -> bool {
    let plain = |word: &String| !matches!(word.as_str(), "the" | "a" | "an");
    let answer: Vec<String> = words(answer).into_iter().filter(plain).collect();
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
        for text in ["417", "set 4-1-7", "4, 1, 7", "four one seven", "four seventeen", "four hundred and seventeen"] {
            assert_eq!(digits(text, "417"), Some(Saying::Whole), "{text}");
        }
        assert_eq!(digits("seven, one, four", "417"), Some(Saying::Reversed));
        assert_eq!(digits("it starts 4 1", "417"), Some(Saying::Nearly));
        assert_eq!(digits("forty-two it is", "427"), Some(Saying::Nearly));
        // Two digits of three stand together; the first is said as well, but apart.
        assert_eq!(digits("four and then seventeen", "417"), Some(Saying::Nearly));
        for text in ["1417", "4171", "three bands", "one seventh"] {
            assert_eq!(digits(text, "417"), None, "{text}");
        }
    }

    #[test]
    fn words_and_pushes_are_said_too() {
        let letters = LockKind::Letters(vec![String::new(); 4]);
        assert_eq!(says("It is B-E-L-L.", &letters, "BELL"), Some(Saying::Whole));
        assert_eq!(says("a lleb", &letters, "BELL"), Some(Saying::Reversed));
        assert_eq!(says("bells", &letters, "BELL"), None);
        assert_eq!(says("up, left, left", &LockKind::Directions(3), "ULL"), Some(Saying::Whole));
        assert_eq!(says("look below the third bell!", &LockKind::Key, "third bell"), Some(Saying::Whole));
    }
}
