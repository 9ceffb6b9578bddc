//! The number words zero to nine: spelled with letters, and found among letters.

use crate::kit::LockKind;
use crate::readings::{Budget, Readings};

/// Number words by digit, in capitals.
pub const WORDS: [&str; 10] = ["ZERO", "ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT", "NINE"];

/// The number word of a digit.
#[must_use]
pub fn word(digit: char) -> Option<&'static str> {
    WORDS.get(usize::try_from(digit.to_digit(10)?).ok()?).copied()
}

/// The digit of a number word, in whatever case.
#[must_use]
pub fn digit(word: &str) -> Option<char> {
    ('0'..='9').zip(WORDS).find(|(_, known)| known.eq_ignore_ascii_case(word)).map(|(digit, _)| digit)
}

/// The letters of an answer: those of its number words where it is made of digits, else its own.
#[must_use]
pub fn spelled(answer: &[char]) -> Vec<char> {
    answer
        .iter()
        .flat_map(|symbol| word(*symbol).map_or_else(|| vec![*symbol], |word| word.chars().collect()))
        .collect()
}

/// A number word among letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    /// The digit that it means.
    pub digit: char,
    /// Its first letter's place.
    pub from: usize,
    /// The place after its last letter.
    pub to: usize,
}

/// Every number word among the letters, in order, whether meant or not.
#[must_use]
pub fn find(letters: &[char]) -> Vec<Found> {
    let mut found = Vec::new();
    for from in 0..letters.len() {
        for (digit, word) in ('0'..='9').zip(WORDS) {
            let to = from + word.len();
            let here = |slice: &[char]| slice.iter().zip(word.chars()).all(|(a, b)| a.eq_ignore_ascii_case(&b));
            if letters.get(from..to).is_some_and(here) {
                found.push(Found { digit, from, to });
            }
        }
    }
    found
}

/// What a guest may take of things that were found in order: all, or, of two neighbours that share letters, only one.
#[must_use]
pub fn taken<T: Clone + PartialEq>(found: &[T], share: impl Fn(&T, &T) -> bool) -> Vec<Vec<T>> {
    let mut lists = vec![found.to_vec()];
    for (one, two) in found.iter().zip(found.iter().skip(1)).filter(|(one, two)| share(one, two)) {
        for gone in [one, two] {
            lists.push(found.iter().filter(|other| *other != gone).cloned().collect());
        }
    }
    lists
}

/// Adds what letters say to a guest who takes them as they stand, or looks for number words among them.
pub fn add(letters: &[char], label: &str, lock: &LockKind, budget: &mut Budget, all: &mut Readings) {
    if !budget.step() {
        all.unproven = true;
        return;
    }
    all.add(lock, &letters.iter().collect::<String>(), label);
    for list in taken(&find(letters), |one, two| two.from < one.to) {
        if !budget.step() {
            all.unproven = true;
            return;
        }
        let digits: String = list.iter().map(|found| found.digit).collect();
        all.add(lock, &digits, format!("{label}, as number words"));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_share_letters_are_taken_for_both_or_one() {
        let letters: Vec<char> = "atwonex".chars().collect();
        let found = find(&letters);
        assert_eq!(found.iter().map(|found| found.digit).collect::<String>(), "21");
        let lists = taken(&found, |one, two| two.from < one.to);
        let lists: Vec<String> = lists.iter().map(|list| list.iter().map(|found| found.digit).collect()).collect();
        assert_eq!(lists, ["21", "1", "2"]);
    }

    #[test]
    fn digits_and_words_go_both_ways() {
        for value in '0'..='9' {
            assert_eq!(digit(word(value).unwrap()), Some(value));
        }
        assert_eq!((digit("seven"), digit("ten"), word('x')), (Some('7'), None, None));
        assert_eq!(spelled(&['1', 'B']), ['O', 'N', 'E', 'B']);
    }
}
