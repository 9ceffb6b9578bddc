//! Finds every number word in a text, whether meant or not.

use super::View;
use crate::kit::LockKind;
use crate::mechanics::number_words;
use crate::readings::tokens::{self, Mark, Order};
use crate::readings::{Budget, Readings};

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
    let place = |from: usize, to: usize| -> Option<(String, bool)> {
        let (first, last) = owners.get(from).zip(owners.get(to.checked_sub(1)?))?;
        let place = words.get(*first..=*last).unwrap_or_default();
        let place: Vec<&str> = place.iter().copied().filter(|word| !word.is_empty()).collect();
        Some((place.join(" "), first != last))
    };
    let found = number_words::find(&letters).into_iter();
    found
        .filter_map(|found| {
            let (place, across) = place(found.from, found.to)?;
            Some(Found { digit: found.digit, place, across, from: found.from, to: found.to })
        })
        .collect()
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
        // Of two number words that share letters a guest may see only one.
        let lists = number_words::taken(&found, |one, two| two.from < one.to);
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
