//! Finds every number word in a text, whether meant or not.

use super::View;
use crate::kit::LockKind;
use crate::readings::tokens::{self, Mark, Order};
use crate::readings::{Budget, Readings};

/// Number words by digit.
const WORDS: [(char, &str); 10] = [
    ('0', "zero"),
    ('1', "one"),
    ('2', "two"),
    ('3', "three"),
    ('4', "four"),
    ('5', "five"),
    ('6', "six"),
    ('7', "seven"),
    ('8', "eight"),
    ('9', "nine"),
];

/// A number word in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Found {
    pub(super) digit: char,
    /// The words in which it stands.
    pub(super) place: String,
    /// Whether it begins in one word and ends in another.
    pub(super) across: bool,
    /// Its first letter and the one after its last, counted in letters.
    from: usize,
    to: usize,
}

/// Every number word in the letters of a text, in reading order; signs and gaps do not count.
pub(super) fn find(text: &str) -> Vec<Found> {
    let mut letters: Vec<char> = Vec::new();
    // For each letter the word that it stands in.
    let mut owners: Vec<usize> = Vec::new();
    // A hyphen parts words; an apostrophe does not.
    let words: Vec<&str> = text.split(|c: char| !(c.is_alphabetic() || c == '\'' || c == '’')).collect();
    for (index, word) in words.iter().enumerate() {
        for letter in word.chars().filter(|c| c.is_alphabetic()).flat_map(char::to_lowercase) {
            letters.push(letter);
            owners.push(index);
        }
    }
    let mut found = Vec::new();
    for from in 0..letters.len() {
        for (digit, word) in WORDS {
            let to = from + word.len();
            let here = letters.get(from..to).is_some_and(|slice| slice.iter().copied().eq(word.chars()));
            let ends = owners.get(from).zip(owners.get(to - 1));
            if let (true, Some((first, last))) = (here, ends) {
                let place = words.get(*first..=*last).unwrap_or_default();
                let place: Vec<&str> = place.iter().copied().filter(|word| !word.is_empty()).collect();
                found.push(Found { digit, place: place.join(" "), across: first != last, from, to });
            }
        }
    }
    found
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let all = find(&view.text);
    let across: Vec<Found> = all.iter().filter(|found| found.across).cloned().collect();
    let mut ways = vec![("across the gaps", across.clone())];
    if !view.rule && across.len() != all.len() {
        ways.push(("inside words as well", all.clone()));
        ways.push(("inside words only", all.iter().filter(|found| !found.across).cloned().collect()));
    }
    let mut readings = Readings::default();
    for (label, found) in ways {
        let mut lists = vec![found.clone()];
        // Of two number words that share letters a guest may see only one.
        for (one, two) in found.iter().zip(found.iter().skip(1)).filter(|(one, two)| two.from < one.to) {
            for gone in [one, two] {
                lists.push(found.iter().filter(|other| *other != gone).cloned().collect());
            }
        }
        for list in lists.into_iter().filter(|list| !list.is_empty()) {
            let mark = |found: &Found| Mark::new(format!("{} in \"{}\"", found.digit, found.place), found.digit);
            let marks: Vec<Mark> = list.iter().map(mark).collect();
            let read = tokens::read(&marks, &Order::Listed, lock, budget);
            for reading in read.list {
                readings.add(lock, &reading.answer, format!("{label}: {}", reading.why));
            }
            readings.more |= read.more;
            readings.unproven |= read.unproven;
        }
    }
    for found in all.iter().filter(|found| !found.across) {
        readings.remarks.push(format!("\"{}\" holds a number word within itself", found.place));
    }
    readings
}
