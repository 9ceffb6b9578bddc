//! What a text tells of a code short of all of it: "the first wheel is four", "it ends in N".

use super::numbers::{number, numbers, roman};
use super::says::{Saying, direction, says};
use super::{Known, cased_words, words};
use crate::kit::LockKind;

/// Words for places in a row, from the first.
const ORDINALS: &[&str] =
    &["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];
/// Words that may stand between a place and what is there: "the first of the digits must be a four".
const BETWEEN: &[&str] = &[
    "digit", "digits", "number", "figure", "symbol", "letter", "letters", "wheel", "push", "one", "place", "is", "are",
    "a", "an", "the", "shows", "show", "reads", "must", "be", "to", "of", "set", "goes", "comes", "and", "with", "in",
    "at", "on", "as",
];
/// Most words between a place and what is there.
const REACH: usize = 6;

/// What someone who reads `text` knows of the code of a lock. A place that the text names with another symbol than
/// the code has there is about something else and tells nothing.
#[must_use]
pub fn told(text: &str, kind: &LockKind, code: &str) -> Known {
    let symbols: Vec<char> = code.chars().collect();
    let mut known = Known::default();
    if matches!(kind, LockKind::Key | LockKind::Spoken) {
        return known;
    }
    let from = |first: usize, end: usize| (first..end).filter_map(|at| Some((at, *symbols.get(at)?)));
    match says(text, kind, code) {
        Some(Saying::Whole | Saying::Reversed | Saying::Initials) => known.at.extend(from(0, symbols.len())),
        Some(Saying::Nearly(first_missing)) => {
            known.at.extend(from(usize::from(first_missing), symbols.len() - usize::from(!first_missing)));
        }
        Some(Saying::Shuffled) => known.among.clone_from(&symbols),
        None => {}
    }
    let words = words(text);
    for (at, place) in places(&words, symbols.len()) {
        let Some(symbol) = symbols.get(place) else { continue };
        if value(&words[at + 1..], kind).is_some_and(|told| told.eq_ignore_ascii_case(&symbol.to_string())) {
            known.at.insert(place, *symbol);
        }
    }
    known
}

/// The words that name a place of a row of so many, and the place.
fn places(words: &[String], many: usize) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let next = words.get(at + 1).map_or("", String::as_str);
        let place = match word.as_str() {
            "last" => many.checked_sub(1),
            "begins" | "starts" | "beginning" | "starting" => Some(0),
            "ends" | "ending" if matches!(next, "in" | "with" | "on") => many.checked_sub(1),
            word => ordinal(word).and_then(|number| number.checked_sub(1)),
        };
        found.extend(place.map(|place| (at, place)));
    }
    found
}

/// The number of an ordinal, in words or as in "2nd".
fn ordinal(word: &str) -> Option<usize> {
    let short = ["st", "nd", "rd", "th"].iter().find_map(|end| word.strip_suffix(end)?.parse().ok());
    short.or_else(|| ORDINALS.iter().position(|name| *name == word).map(|at| at + 1))
}

/// The symbol that follows a place; words between are passed over.
fn value(words: &[String], kind: &LockKind) -> Option<String> {
    let mut one = None;
    for word in words.iter().take(REACH) {
        let found = match kind {
            LockKind::Digits(_) => number(word).filter(|digits| digits.len() == 1),
            LockKind::Directions(_) => direction(word).filter(|push| push.len() == 1),
            LockKind::Letters(_) if word != "a" => (word.chars().count() == 1).then(|| word.clone()),
            LockKind::Letters(_) | LockKind::Key | LockKind::Spoken => None,
        };
        match found {
            // "The first one is four" and "the first is one" both have the word.
            Some(digit) if word == "one" => one = Some(digit),
            Some(symbol) => return Some(symbol),
            None if BETWEEN.contains(&word.as_str()) => {}
            None => break,
        }
    }
    one
}

/// The number by which a name could be put in order: "Puzzle 3", "The third bell", "Part IV".
#[must_use]
pub fn ordered_by(name: &str) -> Option<usize> {
    let cased: Vec<&str> = cased_words(name).collect();
    let lower = words(name);
    let by_word = lower.iter().find_map(|word| ordinal(word));
    let by_number = || numbers(&cased, &lower).into_iter().flatten().find_map(|digits| digits.parse().ok());
    let by_roman =
        || cased.iter().rev().find(|word| !matches!(**word, "I" | "C" | "D" | "L" | "M")).and_then(|word| roman(word));
    by_word.or_else(by_number).or_else(|| by_roman().map(usize::from))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codes::left;

    #[test]
    fn places_are_told_in_words() {
        let three = LockKind::Digits(3);
        for (text, count) in [
            ("The first digit is four.", 100),
            ("The first one is a four.", 100),
            ("The second is one.", 100),
            ("It starts with 4 and ends in seven.", 10),
            ("2nd wheel: 1, last wheel: 7", 10),
            // Told of something else: the code has no nine in front.
            ("The first card has nine bells.", 1000),
            ("Read what glows.", 1000),
            ("A seven, a four and a one.", 6),
            ("four one seven", 1),
        ] {
            assert_eq!(left(&three, &told(text, &three, "417")), Some(count), "{text}");
        }
        let letters =
            LockKind::Letters(vec!["BCFGHLMSTW".into(), "AEHILNORTU".into(), "ACEIKLNORS".into(), "DEKLNPRSTY".into()]);
        assert_eq!(left(&letters, &told("It starts with W.", &letters, "WREN")), Some(1000));
        let pushes = LockKind::Directions(4);
        assert_eq!(left(&pushes, &told("The last push is up.", &pushes, "LLDU")), Some(64));
    }

    #[test]
    fn names_with_numbers_have_an_order() {
        for (name, number) in [
            ("Puzzle 3", Some(3)),
            ("The third bell", Some(3)),
            ("Part IV", Some(4)),
            ("I see", None),
            ("The cuff", None),
        ] {
            assert_eq!(ordered_by(name), number, "{name}");
        }
    }
}
