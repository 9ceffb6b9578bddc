use std::collections::{BTreeMap, BTreeSet};

use super::numbers::{cardinal, numbers};
use super::says::{INITIALS, direction, plain};
use super::{cased_words, words};
use crate::kit::LockKind;

/// Codes by the ways in which a text can say the whole of one, so that a text need not be held against every code.
///
/// A code is known by its number in the list that the index was made of.
#[derive(Clone, Debug, Default)]
pub struct Index {
    digits: Rows,
    pushes: Rows,
    letters: Rows,
    /// Codes as rows of number words, "and" left out, and spoken answers without their articles.
    cardinals: Phrases,
    phrases: Phrases,
    /// Words for letter wheels by the letters with which other words may begin.
    initials: BTreeMap<Vec<char>, Vec<usize>>,
}

/// Codes of one kind, forwards and backwards.
#[derive(Clone, Debug, Default)]
struct Rows {
    codes: BTreeMap<String, Vec<usize>>,
    longest: usize,
}

/// Rows of words.
#[derive(Clone, Debug, Default)]
struct Phrases {
    rows: BTreeMap<Vec<String>, Vec<usize>>,
    lengths: BTreeSet<usize>,
}

impl Index {
    /// The index of a list of codes, each as it is set on its lock.
    #[must_use]
    pub fn new<'c>(codes: impl IntoIterator<Item = (&'c LockKind, &'c str)>) -> Self {
        let mut index = Self::default();
        for (at, (kind, answer)) in codes.into_iter().enumerate() {
            let code = answer.trim().to_lowercase();
            match kind {
                LockKind::Digits(_) => {
                    index.digits.add(&code, at);
                    index.cardinals.add(cardinal(&code).unwrap_or_default(), at);
                }
                LockKind::Directions(_) => index.pushes.add(&code, at),
                LockKind::Letters(_) => {
                    index.letters.add(&code, at);
                    index.initials.entry(code.chars().collect()).or_default().push(at);
                }
                LockKind::Key | LockKind::Spoken => {
                    index.phrases.add(words(answer).into_iter().filter(|word| plain(word)).collect(), at);
                }
            }
        }
        index
    }

    /// The codes that `text` may say as a whole: all of those of which [`super::says`] finds that it does, and at most
    /// a few others.
    #[must_use]
    pub fn may_say(&self, text: &str) -> BTreeSet<usize> {
        let mut found = BTreeSet::new();
        let words = words(text);
        if self.digits.longest > 0 {
            let cased: Vec<&str> = cased_words(text).collect();
            self.digits.find(&numbers(&cased, &words), &mut found);
            let counted: Vec<String> = words.iter().filter(|word| *word != "and").cloned().collect();
            self.cardinals.find(&counted, &mut found);
        }
        if self.pushes.longest > 0 {
            let pushes: Vec<Option<String>> = words.iter().map(|word| direction(word)).collect();
            self.pushes.find(&pushes, &mut found);
        }
        if self.letters.longest > 0 {
            let all: Vec<Option<String>> = words.iter().cloned().map(Some).collect();
            self.letters.find(&all, &mut found);
            let first: Vec<char> = words.iter().filter_map(|word| word.chars().next()).collect();
            for length in INITIALS..=self.letters.longest {
                let rows = first.windows(length).filter_map(|row| self.initials.get(row));
                found.extend(rows.flatten());
            }
        }
        if !self.phrases.rows.is_empty() {
            let said: Vec<String> = words.into_iter().filter(|word| plain(word)).collect();
            self.phrases.find(&said, &mut found);
        }
        found
    }
}

impl Rows {
    fn add(&mut self, code: &str, at: usize) {
        self.codes.entry(code.to_owned()).or_default().push(at);
        self.codes.entry(code.chars().rev().collect()).or_default().push(at);
        self.longest = self.longest.max(code.len());
    }

    /// The codes that neighbouring symbols make when they are joined.
    fn find(&self, symbols: &[Option<String>], found: &mut BTreeSet<usize>) {
        let mut row = String::new();
        for first in 0..symbols.len() {
            row.clear();
            for symbol in symbols.iter().skip(first) {
                let Some(symbol) = symbol.as_deref() else { break };
                row.push_str(symbol);
                if row.len() > self.longest {
                    break;
                }
                found.extend(self.codes.get(&row).into_iter().flatten());
            }
        }
    }
}

impl Phrases {
    fn add(&mut self, row: Vec<String>, at: usize) {
        if !row.is_empty() {
            self.lengths.insert(row.len());
            self.rows.entry(row).or_default().push(at);
        }
    }

    fn find(&self, words: &[String], found: &mut BTreeSet<usize>) {
        for length in &self.lengths {
            found.extend(words.windows(*length).filter_map(|row| self.rows.get(row)).flatten());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codes::{Saying, says};

    /// Every text is held against every code, and no whole saying is missed.
    #[test]
    fn no_code_that_is_said_is_missed() {
        let letters = LockKind::Letters(vec![String::new(); 4]);
        let codes = [
            (LockKind::Digits(3), "417"),
            (LockKind::Digits(4), "1847"),
            (LockKind::Digits(3), "447"),
            (LockKind::Digits(2), "40"),
            (LockKind::Directions(4), "UDLR"),
            (letters.clone(), "BELL"),
            (letters, "MOON"),
            (LockKind::Spoken, "the old clock"),
            (LockKind::Key, "under a stool"),
        ];
        let texts = [
            "417",
            "set 4-1-7 and 7, 4, 8, 1",
            "four hundred and seventeen",
            "one thousand eight hundred forty-seven",
            "CDXVII or IV I VII",
            "double four, seven",
            "forty",
            "up down left, right",
            "rldu",
            "ring the bell",
            "lleb",
            "be ll",
            "many owls over Norway",
            "Look at the clock: an old clock",
            "It lies under the stool",
            "nothing of it: 41, 7 up, 9",
            "",
        ];
        let index = Index::new(codes.iter().map(|(kind, code)| (kind, *code)));
        let mut told = 0;
        for text in texts {
            let may = index.may_say(text);
            for (at, (kind, code)) in codes.iter().enumerate() {
                if says(text, kind, code).is_some_and(Saying::whole) {
                    assert!(may.contains(&at), "{text}: {code}");
                    told += 1;
                }
            }
        }
        assert!(told >= 15, "{told}");
        assert!(index.may_say("nothing of it: 41 doors up, 9").is_empty());
    }
}
