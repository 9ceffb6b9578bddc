//! A key card gives each letter a digit; a name found elsewhere spells the answer.

mod print;
mod reread;
mod solve;

use rand::seq::SliceRandom as _;
use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::spelled::letters;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use crate::script::capital;

/// See [`Meta::help`].
pub struct LetterKey;

const KEY_CARD: &str = "key-card";
const WORD_CARD: &str = "word-card";

/// The order rule, as guests read it on the key card.
const RULE: &str = "Read from left to right. Each letter gives a digit.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    word: String,
    letters: String,
    card: Card,
    card_title: String,
    card_text: String,
    key_title: String,
    other_words: Vec<String>,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            word: "WREN".into(),
            letters: ('A'..='Z').collect(),
            card: Card::Note,
            card_title: "Found".into(),
            card_text: "There is a name sewn into the cuff:".into(),
            key_title: "Letters and digits".into(),
            other_words: Vec::new(),
        }
    }
}

/// The frame of the word card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Card {
    /// A smaller text.
    Note,
    /// An upright card.
    Portrait,
    /// A card that lies.
    Landscape,
    /// A square card.
    Square,
}

impl Card {
    const fn frame(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Portrait => "portrait",
            Self::Landscape => "landscape",
            Self::Square => "square",
        }
    }
}

/// A letter of the key card with its digit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    letter: char,
    digit: char,
}

/// What guests see: the key, and the names that are set large.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    key: Vec<Entry>,
    words: Vec<String>,
    card: Card,
    card_title: String,
    card_text: String,
    key_title: String,
}

impl Mechanic for LetterKey {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "letter-key",
        name: "Letter key",
        guests: "find a card that gives each letter a digit, and elsewhere a short name to spell with it",
        order: "the order of the letters in the name",
        prints: "the key card in the shape of a bookmark, and the card with the name",
        host: "cuts both out and lays them apart",
        help: HELP,
        parts: &[
            Part { key: KEY_CARD, name: "the key card", printed: true, optional: false },
            Part { key: WORD_CARD, name: "the card with the name", printed: true, optional: false },
        ],
        minutes: (2, 5),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        let word = letters(&setup.word);
        if word.len() != answer.len() {
            return Err(Trouble::new(format!(
                "the name \"{}\" has {} letters, and the answer has {} digits",
                setup.word,
                word.len(),
                answer.len()
            ))
            .hint("each letter of `word` gives one digit: take a name of that length"));
        }
        let mut letters: Vec<char> = letters(&setup.letters);
        letters.sort_unstable();
        letters.dedup();
        if let Some(letter) = word.iter().find(|letter| !letters.contains(letter)) {
            return Err(Trouble::new(format!("the letter {letter} of the name is not on the key card"))
                .hint("add it to `letters`"));
        }
        let mut given: Vec<Entry> = Vec::new();
        for (letter, digit) in word.into_iter().zip(answer) {
            match given.iter().find(|entry| entry.letter == letter) {
                Some(entry) if entry.digit != digit => {
                    return Err(Trouble::new(format!(
                        "the letter {letter} stands twice in the name, and the answer gives it two digits"
                    ))
                    .hint("take a name without that letter twice, or an answer that repeats its digit there"));
                }
                Some(_) => {}
                None => given.push(Entry { letter, digit }),
            }
        }
        // Each digit about as often as any other, so that a look at the key alone tells nothing.
        let mut deck: Vec<char> = ('0'..='9').cycle().take(letters.len()).collect();
        deck.shuffle(rng);
        let key = letters
            .into_iter()
            .zip(deck)
            .map(|(letter, spare)| {
                let digit = given.iter().find(|entry| entry.letter == letter).map_or(spare, |entry| entry.digit);
                Entry { letter, digit }
            })
            .collect();
        let mut words = vec![setup.word.trim().to_uppercase()];
        words.extend(setup.other_words.iter().map(|word| word.trim().to_uppercase()).filter(|word| !word.is_empty()));
        Ok(View {
            key,
            words,
            card: setup.card,
            card_title: setup.card_title.clone(),
            card_text: setup.card_text.clone(),
            key_title: setup.key_title.clone(),
        })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        solve::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![KEY_CARD, WORD_CARD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        // Side by side they are no search: the word is read off the key at once.
        vec![(KEY_CARD, WORD_CARD)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![print::key_card(view, cx)?, print::word_card(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        vec![PrepStep::printed(vec![
            Need { material: "card-paper", amount: 1.0 },
            Need { material: "scissors", amount: 1.0 },
        ])]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        let name = view.words.first().map_or("", String::as_str);
        let steps: Vec<String> = letters(name)
            .into_iter()
            .filter_map(|letter| view.key.iter().find(|entry| entry.letter == letter))
            .map(|entry| format!("{} is {}", entry.letter, entry.digit))
            .collect();
        format!(
            "{} shows the name {name}. {} gives each letter a digit: {}. The letters are taken from left to right.",
            capital(word_name(cx)),
            capital(key_name(cx)),
            steps.join(", ")
        )
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        format!("Look that nobody has written on {} and {}.", key_name(cx), word_name(cx))
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        let (key, word) = (key_name(cx), word_name(cx));
        HintLadder {
            nudge: format!("{} and {word} lie in different places, but they belong together.", capital(key)),
            method: format!("Every letter on {key} stands beside a digit. Spell with them what {word} says."),
            giveaway: format!(
                "Go through the name letter by letter, from left to right. Find each letter on {key}, write down the \
                 digit beside it, and set on {} what you have written.",
                cx.lock_name
            ),
        }
    }
}

fn key_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(KEY_CARD, "the key card")
}

fn word_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(WORD_CARD, "the card with the name")
}

const HELP: &str = "\
## What it does
A key card in the shape of a bookmark gives each letter a digit. A short name lies elsewhere. Guests spell the
name with the key: each letter gives one digit, from left to right.

## Setup
- `word`: the name, as many letters as the answer has digits. A letter that stands in it twice needs the same
  digit twice.
- `letters`: the letters on the key card; A to Z when left out.
- `card`: the frame of the card with the name: note, portrait, landscape or square.
- `card_title`, `card_text`: what stands above the name.
- `key_title`: the title of the key card.
- `other_words`: other names set as large on the same card.

## Example
    (
        word: \"WREN\",
        card: note,
        card_title: \"Found in the snow\",
        card_text: \"There is a name sewn into the cuff:\",
        key_title: \"The winder's list\",
    )

## Traps
- A second name as long as the lock has wheels reads as well: several readings.
- A name longer or shorter than the lock has wheels; a letter that the key card lacks.
- Two letters that share a digit read well; it is only remarked.
";
