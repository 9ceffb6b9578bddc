//! Words by their stem: "owls", "owl's" and "owl" are one word.

use std::ops::Range;

use rust_stemmers::{Algorithm, Stemmer};

/// A word in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WordAt {
    /// Where it stands, in bytes.
    pub span: Range<usize>,
    /// Its stem: M. F. Porter's Snowball English, of the word in lower case.
    pub stem: String,
}

/// The words of a text outside its slots, in order. A hyphen parts words.
#[must_use]
pub fn words_of(text: &str) -> Vec<WordAt> {
    let stemmer = Stemmer::create(Algorithm::English);
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(c) = text.get(at..).and_then(|rest| rest.chars().next()) {
        let rest = text.get(at..).unwrap_or_default();
        if rest.starts_with("{{") {
            at += rest.find("}}").map_or(rest.len(), |end| end + 2);
        } else if c.is_alphabetic() {
            let inside = |c: char| c.is_alphabetic() || c == '\'' || c == '’';
            let length = rest.find(|c: char| !inside(c)).unwrap_or(rest.len());
            let word = rest.get(..length).unwrap_or_default().trim_end_matches(['\'', '’']);
            let lower = word.to_lowercase().replace('’', "'");
            let span = at..at + word.len();
            found.push(WordAt { span, stem: stemmer.stem(&lower).into_owned() });
            at += length;
        } else {
            at += c.len_utf8();
        }
    }
    found
}

/// The stems of a phrase, in order.
#[must_use]
pub fn stems(phrase: &str) -> Vec<String> {
    words_of(phrase).into_iter().map(|word| word.stem).collect()
}

/// Whether two phrases are the same but for their endings.
#[must_use]
pub fn same_word(a: &str, b: &str) -> bool {
    stems(a) == stems(b)
}
