//! Old words in a text: found as whole words in the singular, the plural and the possessive, and put into another word's
//! form.

use std::ops::Range;

use crate::kit::{OldWord, WordForms};
use crate::script::{article, capital, many, stems, title_case, words_of};

/// An old word as it stands in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Hit {
    /// Which of the old words.
    pub word: usize,
    /// Where, in bytes, without a possessive ending.
    pub span: Range<usize>,
    /// Where an article stands before it, if one does: "a " or "an ".
    pub article: Option<Range<usize>>,
    /// In which form.
    pub form: Form,
}

/// The form of a word in a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// "owl"
    One,
    /// "owls"
    Many,
    /// One of what the old word names several of: nothing else can take its place by rule.
    Other,
}

/// The old words that stand in a text, first to last; of two that overlap the longer.
pub(super) fn hits(text: &str, old: &[OldWord]) -> Vec<Hit> {
    let words = words_of(text);
    let mut phrases: Vec<(usize, Vec<String>)> = Vec::new();
    for (at, word) in old.iter().enumerate() {
        phrases.push((at, stems(&word.one)));
        if !word.many.is_empty() {
            phrases.push((at, stems(&word.many)));
        }
    }
    phrases.retain(|(_, stems)| !stems.is_empty());
    phrases.sort_by_key(|(_, stems)| std::cmp::Reverse(stems.len()));
    let mut found = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let here = words.get(at..).unwrap_or_default();
        let start = here.first().map_or(0, |word| word.span.start);
        let before = at.checked_sub(1).and_then(|at| words.get(at)).and_then(|word| {
            let gap = text.get(word.span.end..start)?;
            Some((word.span.start, text.get(word.span.clone())?.to_lowercase())).filter(|_| gap == " ")
        });
        let hit = phrases.iter().find_map(|(word, stems)| {
            let alike = here.len() >= stems.len() && here.iter().zip(stems).all(|(word, stem)| word.stem == *stem);
            let last = here.get(stems.len().checked_sub(1)?).filter(|_| alike)?.span.end;
            let whole = text.get(start..last)?;
            let bare = ["'s", "’s", "'S", "’S"].iter().find_map(|end| whole.strip_suffix(end)).unwrap_or(whole);
            let form = form(bare, old.get(*word)?)?;
            let noun = before.as_ref().is_some_and(|(_, word)| BEFORE_NOUNS.contains(&word.as_str()));
            let small = LITTLE_WORDS.contains(&bare.to_lowercase().as_str()) && !noun && text.trim() != whole;
            (!small).then_some((*word, stems.len(), start..start + bare.len(), form))
        });
        let Some((word, length, span, form)) = hit else {
            at += 1;
            continue;
        };
        let article = before.filter(|(_, said)| said == "a" || said == "an").map(|(from, _)| from..start);
        found.push(Hit { word, span, article, form });
        at += length;
    }
    found
}

/// Names of things that are mostly said as other kinds of words: "you can", "as well", "turn right".
const LITTLE_WORDS: &[&str] = &[
    "can", "down", "last", "left", "like", "may", "might", "mine", "must", "near", "past", "right", "round", "second",
    "still", "well", "while", "will",
];
/// Words after which such a one names a thing. Those after which it may be a verb ("that can", "all can") are left out:
/// rather none is found than one in every other sentence.
const BEFORE_NOUNS: &[&str] =
    &["a", "an", "the", "my", "your", "his", "her", "its", "our", "their", "every", "another"];

/// The form of a whole word; none for another word of the same stem: the gardener is no garden.
fn form(said: &str, old: &OldWord) -> Option<Form> {
    let said =
        words_of(said).into_iter().filter_map(|word| said.get(word.span)).collect::<Vec<_>>().join(" ").to_lowercase();
    let forms = WordForms { one: old.one.to_lowercase(), many: old.many.to_lowercase(), ..WordForms::default() };
    if said == forms.one {
        Some(Form::One)
    } else if said == many(&forms) {
        Some(Form::Many)
    } else {
        let several = many(&WordForms { one: said, ..WordForms::default() });
        (several == forms.one).then_some(Form::Other)
    }
}

/// How a word is written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Case {
    Small,
    Capital,
    /// A capital in a title or a name: each word of what takes its place has one.
    Title,
    Capitals,
}

fn case(said: &str) -> Case {
    let letters: Vec<char> = said.chars().filter(|c| c.is_alphabetic()).collect();
    if letters.len() > 1 && letters.iter().all(|c| c.is_uppercase()) {
        Case::Capitals
    } else if letters.first().is_some_and(|c| c.is_uppercase()) {
        Case::Capital
    } else {
        Case::Small
    }
}

/// How a hit is written: a capital that no sentence asks for is that of a title or a name.
fn case_at(text: &str, hit: &Hit) -> Case {
    let said = text.get(hit.span.clone()).unwrap_or_default();
    let written = case(said);
    if written != Case::Capital {
        return written;
    }
    let before = text.get(..hit.span.start).unwrap_or_default().trim_end_matches([' ', '*', '_', '"', '“', '‘', '(']);
    let first = before.is_empty() || before.ends_with(['.', '!', '?', ':', '\n']);
    let next = text.get(hit.span.end..).and_then(|rest| rest.strip_prefix(' ')).and_then(|rest| rest.chars().next());
    let in_title =
        next.is_some_and(char::is_uppercase) || said.split(' ').skip(1).any(|word| case(word) != Case::Small);
    if first && !in_title { Case::Capital } else { Case::Title }
}

/// The slot that stands for a hit, with its article, and the span of the text that it takes the place of.
pub(super) fn as_slot(text: &str, hit: &Hit, slot: &str) -> (Range<usize>, String) {
    let mut filters = String::new();
    let mut span = hit.span.clone();
    if hit.form == Form::Many {
        filters.push_str(" | plural");
    }
    let mut written = case_at(text, hit);
    if let (Some(before), Form::One, Case::Small) = (&hit.article, hit.form, written) {
        filters.push_str(" | a");
        span.start = before.start;
        written = case(text.get(before.clone()).unwrap_or_default().trim());
        // A lone "A" at a sentence's start is one capital, not capitals throughout.
        if written == Case::Capitals {
            written = Case::Capital;
        }
    }
    match written {
        Case::Small => {}
        Case::Capital => filters.push_str(" | cap"),
        Case::Title => filters.push_str(" | title"),
        Case::Capitals => filters.push_str(" | caps"),
    }
    (span, format!("{{{{ {slot}{filters} }}}}"))
}

/// Another word in the form of a hit, with its article, and the span that it takes the place of.
pub(super) fn as_word(text: &str, hit: &Hit, new: &WordForms) -> (Range<usize>, String) {
    let plain = if hit.form == Form::Many { many(new) } else { new.one.clone() };
    let cased = match case_at(text, hit) {
        Case::Small => plain,
        Case::Capital => capital(&plain),
        Case::Title => title_case(&plain),
        Case::Capitals => plain.to_uppercase(),
    };
    let Some(before) = &hit.article else { return (hit.span.clone(), cased) };
    let said = article(new);
    let upper = text.get(before.clone()).is_some_and(|text| text.starts_with('A'));
    let said = if upper { capital(said) } else { said.to_owned() };
    (before.start..hit.span.end, format!("{said} {cased}"))
}
