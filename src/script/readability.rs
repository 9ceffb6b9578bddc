//! How hard a text is to read, and how long it takes to read aloud.

use super::Rich;
use super::syllables::syllables;

/// Words that a person reads aloud in a minute, to a table with children (common practice, no source).
pub const ALOUD: f64 = 130.0;

/// Abbreviations whose full stop ends no sentence.
const ABBREVIATIONS: &[&str] =
    &["mr.", "mrs.", "ms.", "dr.", "st.", "prof.", "jr.", "sr.", "vs.", "etc.", "cf.", "approx.", "capt.", "fig."];

/// What was counted in a text.
///
/// A word is a run of signs between spaces that holds a letter or a digit, so a hyphen joins. A sentence ends with a
/// full stop, exclamation mark, question mark or ellipsis at the end of a word, or where a paragraph or line ends; not
/// with the full stop of an abbreviation, of a number within, or of a list's number. Digits count as a syllable each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Readability {
    /// Words.
    pub words: usize,
    /// Sentences.
    pub sentences: usize,
    /// Syllables.
    pub syllables: usize,
}

impl Readability {
    /// Counts a text whose lines may end anywhere; an empty line ends a paragraph.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let mut all = Self::default();
        for paragraph in text.split("\n\n") {
            all.add(paragraph);
        }
        all
    }

    /// Counts a finished text; its line breaks end sentences as paragraphs do.
    #[must_use]
    pub fn of_rich(text: &Rich) -> Self {
        Self::of(&text.text().replace('\n', "\n\n"))
    }

    /// The sum of both.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self {
            words: self.words + other.words,
            sentences: self.sentences + other.sentences,
            syllables: self.syllables + other.syllables,
        }
    }

    fn add(&mut self, paragraph: &str) {
        let tokens: Vec<&str> = paragraph.split_whitespace().collect();
        let mut open = false;
        let mut fresh = true;
        for (at, token) in tokens.iter().enumerate() {
            if !token.chars().any(char::is_alphanumeric) {
                continue;
            }
            let list =
                fresh && token.strip_suffix('.').is_some_and(|number| number.chars().all(|c| c.is_ascii_digit()));
            fresh = false;
            self.words += 1;
            self.syllables += spoken(token);
            open = true;
            if !list && ended(token, tokens.get(at + 1).copied()) {
                self.sentences += 1;
                (open, fresh) = (false, true);
            }
        }
        self.sentences += usize::from(open);
    }

    /// Flesch reading ease: 206.835 − 1.015 words per sentence − 84.6 syllables per word (Flesch, "A new readability
    /// yardstick", Journal of Applied Psychology 32, 1948). Plain English is 60 to 70; more is easier. Nought words
    /// have none.
    #[must_use]
    pub fn ease(self) -> Option<f64> {
        let (length, weight) = self.ratios()?;
        Some(206.835 - 1.015 * length - 84.6 * weight)
    }

    /// Flesch-Kincaid grade: 0.39 words per sentence + 11.8 syllables per word − 15.59 (Kincaid, Fishburne, Rogers and
    /// Chissom, Research Branch Report 8-75, Naval Technical Training Command, 1975). The school year, in the United
    /// States, of those who can read it.
    #[must_use]
    pub fn grade(self) -> Option<f64> {
        let (length, weight) = self.ratios()?;
        Some(0.39 * length + 11.8 * weight - 15.59)
    }

    /// The age of those who can read it: children of the first grade are six to seven years old (common practice, no
    /// source).
    #[must_use]
    pub fn age(self) -> Option<f64> {
        self.grade().map(|grade| grade + FIRST_GRADE)
    }

    /// Minutes that it takes to read aloud, at [`ALOUD`] words a minute.
    #[must_use]
    pub fn minutes_aloud(self) -> f64 {
        real(self.words) / ALOUD
    }

    /// Words per sentence, and syllables per word.
    fn ratios(self) -> Option<(f64, f64)> {
        (self.words > 0 && self.sentences > 0)
            .then(|| (real(self.words) / real(self.sentences), real(self.syllables) / real(self.words)))
    }
}

/// Years by which the age of a grade's children is above its number.
const FIRST_GRADE: f64 = 5.5;

#[expect(clippy::cast_precision_loss, reason = "texts are bounded far below 2^52 characters")]
const fn real(count: usize) -> f64 {
    count as f64
}

/// The syllables of a word as it is read aloud.
fn spoken(token: &str) -> usize {
    let parts = token.split(|c: char| !(c.is_alphabetic() || c == '\'' || c == '’'));
    let digits = token.chars().filter(char::is_ascii_digit).count();
    parts.map(syllables).sum::<usize>() + digits
}

/// Whether a sentence ends with this word.
fn ended(token: &str, next: Option<&str>) -> bool {
    let bare = token.trim_end_matches(['"', '\'', '”', '’', ')', ']', '*', '_']);
    if bare.ends_with(['!', '?', '…']) {
        return true;
    }
    let Some(word) = bare.strip_suffix('.') else { return false };
    let lower = bare.trim_start_matches(|c: char| !c.is_alphanumeric()).to_lowercase();
    let Some(next) = next else { return true };
    let number = next.starts_with(|c: char| c.is_ascii_digit());
    // p.m. and i.e., and no. before a number.
    let initials =
        word.contains('.') && word.split('.').all(|part| part.chars().filter(|c| c.is_alphabetic()).count() <= 1);
    let lettered = initials && !word.chars().any(|c| c.is_ascii_digit());
    !(ABBREVIATIONS.contains(&lower.as_str()) || lettered || (lower == "no." && number))
}
