//! `keypad-word`: a word is spelled on a pictured keypad; each letter gives the digit of its key.

mod draw;
mod read;
mod reread;
mod texts;

use rand::RngExt as _;
use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::signs;
use crate::mechanics::spelled::letters;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct KeypadWord;

const KEYPAD: &str = "keypad";
const WORD: &str = "word-card";

/// The digits of a keypad, left to right, the top row first.
const DIGITS: &str = "1234567890";
/// Letters on the keys in that order: Recommendation ITU-T E.161 (from memory). Keys 1 and 0 carry none.
const LETTERS: [&str; 10] = ["", "ABC", "DEF", "GHI", "JKL", "MNO", "PQRS", "TUV", "WXYZ", ""];

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    word: String,
    text: String,
    keys: Vec<String>,
    other_words: Vec<String>,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            word: String::new(),
            text: String::new(),
            keys: LETTERS.iter().map(|letters| (*letters).to_owned()).collect(),
            other_words: Vec::new(),
            state_rule: true,
        }
    }
}

/// A key of the pad.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Key {
    digit: char,
    letters: String,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    keys: Vec<Key>,
    words: Vec<String>,
    text: String,
    rule: bool,
}

impl Mechanic for KeypadWord {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "keypad-word",
        name: "Keypad word",
        guests: "spell a word on a pictured keypad, one digit for each letter",
        order: "the order of the letters in the word",
        prints: "the keypad and the card with the word",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: KEYPAD, name: "the keypad", printed: true, optional: false },
            Part { key: WORD, name: "the card with the word", printed: true, optional: false },
        ],
        minutes: (2, 5),
        least_age: 7,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        let keys = keys(setup)?;
        let word = if letters(&setup.word).is_empty() {
            drawn(&answer, &keys, rng)?
        } else {
            written(&setup.word, &answer, &keys)?
        };
        let others = setup.other_words.iter().map(|word| word.trim().to_uppercase()).filter(|word| !word.is_empty());
        let words = std::iter::once(word).chain(others).collect();
        Ok(View { keys, words, text: setup.text.trim().to_owned(), rule: setup.state_rule })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![KEYPAD, WORD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(KEYPAD, WORD)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::keypad(view, cx)?, draw::word(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}

/// The pad's keys.
fn keys(setup: &Setup) -> Hinted<Vec<Key>> {
    if setup.keys.len() != DIGITS.len() {
        return Err(Trouble::new(format!("`keys` has {} entries, and a keypad has 10 keys", setup.keys.len()))
            .hint("give the letters of the keys 1 to 9 and 0, in that order; \"\" for a key without letters"));
    }
    let keys: Vec<Key> = DIGITS
        .chars()
        .zip(&setup.keys)
        .map(|(digit, own)| Key { digit, letters: letters(own).into_iter().collect() })
        .collect();
    if let Some(key) = keys.iter().find(|key| key.letters.len() > MOST_LETTERS) {
        return Err(Trouble::new(format!("the key {} has more than {MOST_LETTERS} letters", key.digit))
            .hint("spread them over other keys: they would be too small to read"));
    }
    Ok(keys)
}

/// Letters of one key: more are smaller than 9 points.
const MOST_LETTERS: usize = 6;

/// The author's word, if its keys give the answer.
fn written(word: &str, answer: &[char], keys: &[Key]) -> Hinted<String> {
    let spelled = letters(word);
    if spelled.len() != answer.len() {
        return Err(Trouble::new(format!(
            "the word \"{word}\" has {} letters, and the answer has {} digits",
            spelled.len(),
            answer.len()
        ))
        .hint("each letter gives one digit: take a word of that length, or leave `word` empty"));
    }
    let digit = |letter: char| keys.iter().find(|key| key.letters.contains(letter)).map(|key| key.digit);
    let given: String = spelled.iter().map(|letter| digit(*letter).unwrap_or('?')).collect();
    if given.chars().ne(answer.iter().copied()) {
        return Err(Trouble::new(format!("the word \"{word}\" gives {given} on this keypad, which is not the answer"))
            .hint(format!("set the lock and the answer to {given}, change `keys`, or leave `word` empty")));
    }
    Ok(word.trim().to_uppercase())
}

/// Letters by chance, one from each key: consonants where the key has any, so that no word comes about unmeant.
fn drawn(answer: &[char], keys: &[Key], rng: &mut Rng) -> Hinted<String> {
    let mut word = String::new();
    for digit in answer {
        let own = keys.iter().find(|key| key.digit == *digit).map_or("", |key| key.letters.as_str());
        let consonants: Vec<char> = own.chars().filter(|letter| !"AEIOU".contains(*letter)).collect();
        let pick: Vec<char> = if consonants.is_empty() { own.chars().collect() } else { consonants };
        if pick.is_empty() {
            return Err(Trouble::new(format!("the key {digit} has no letters, and the answer needs it"))
                .hint("take an answer without it, or give that key letters in `keys`"));
        }
        word.extend(pick.get(rng.random_range(0..pick.len())));
    }
    Ok(word)
}
