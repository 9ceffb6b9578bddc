//! `marked-letters`: small digits stand under some letters of a sign; a pointer card names the letters in order.

mod draw;
mod lay;
mod read;

use serde::{Deserialize, Serialize};

use super::words::{capital, listed};
use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct MarkedLetters;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The sign's words.
    pub sign: String,
    /// A small line above them.
    pub heading: String,
    /// The letters that the pointer names, in order; empty: drawn by chance.
    pub letters: String,
    /// How the pointer names them.
    pub pointer: Style,
    /// What to do with letters that stand on the sign more than once.
    pub equal_letters: EqualLetters,
    /// Marked letters that the pointer does not name.
    pub decoys: u8,
    /// Whether the pointer card states its rule.
    pub state_rule: bool,
}

/// How a pointer names letters.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Style {
    /// One after another: "U, G, H".
    Plain,
    /// By the first letters of the words of a line.
    Initials(String),
}

/// What to do with letters that stand on the sign more than once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum EqualLetters {
    /// They are never named.
    Avoid,
    /// They may be named; each naming takes the next of them in reading order.
    ReadingOrder,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            sign: "WINDLE & DAUGHTERS CLOCKMAKERS".into(),
            heading: String::new(),
            letters: String::new(),
            pointer: Style::Plain,
            equal_letters: EqualLetters::Avoid,
            decoys: 4,
            state_rule: true,
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct View {
    /// The small line above the letters.
    pub heading: String,
    /// The sign's lines.
    pub lines: Vec<Vec<Cell>>,
    /// The pointer card.
    pub pointer: Pointer,
}

/// A letter of the sign, or the space or sign between letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cell {
    /// What stands there.
    pub letter: char,
    /// The small digit under it.
    pub mark: Option<char>,
}

/// What the pointer card says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pointer {
    /// The letters, or the line whose words give them.
    pub says: Says,
    /// Whether the card states how to get from the line to the letters.
    pub rule: bool,
    /// Whether the card states which of several equal letters comes first.
    pub equal_rule: bool,
}

/// The pointer's words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Says {
    /// Letters, one after another.
    Letters(Vec<char>),
    /// A line of words.
    Line(String),
}

impl View {
    /// All cells in reading order: the top line first, each from left to right.
    fn cells(&self) -> impl Iterator<Item = &Cell> {
        self.lines.iter().flatten()
    }

    /// How often a letter stands on the sign.
    fn stands(&self, letter: char) -> usize {
        self.cells().filter(|cell| cell.letter == letter).count()
    }

    /// The rules that the pointer card prints.
    fn rules(&self) -> Vec<String> {
        let mut rules = Vec::new();
        match (&self.pointer.says, self.pointer.rule) {
            (_, false) => {}
            (Says::Letters(_), true) => rules.push("Read the digits under these letters, in this order.".to_owned()),
            (Says::Line(_), true) => rules.push(
                "Take the first letter of each word, then read the digits under those letters, in that order.".into(),
            ),
        }
        if self.pointer.equal_rule {
            let way =
                if self.lines.len() > 1 { "from left to right, the top line first" } else { "from left to right" };
            rules.push(format!(
                "If such a letter stands on the sign more than once, take the first of them {way}; each time it is named again, the next."
            ));
        }
        rules
    }
}

/// What the pointer's rule is called in sentences for the host.
fn letters_in_words(view: &View) -> String {
    let letters = read::first_way(&view.pointer.says);
    listed(&letters.iter().map(char::to_string).collect::<Vec<_>>())
}

const HELP: &str = "\
## What it does
A sign with large letters hangs in the room. Under some letters stands a small digit. A pointer card, found
elsewhere, names letters in order; the digits under them, in that order, open the lock. Decoy digits stand under
letters that the card does not name. The answer must be digits, one for each letter named.

## Setup
- `sign`: the sign's words: letters, spaces and & ' - . , but no digits; long signs wrap between words
- `heading`: a small line above the letters, without digits; empty for none
- `letters`: the letters that the card names, in order; empty: drawn by chance from those that will do
- `pointer`: Plain: the card lists the letters. Initials(\"...\"): the card holds a line of words and the printed
  rule \"Take the first letter of each word\"; one word for each digit of the answer
- `equal_letters`: Avoid: only letters that stand on the sign once are named. ReadingOrder: others too, and the
  card states that the first of them comes first, from left to right, the top line first
- `decoys`: how many letters that the card does not name carry a digit as well
- `state_rule`: whether the card prints its rule; leave it out only when a note of yours states it. The proof
  counts what the card alone allows

## Example
    (
        sign: \"WINDLE & DAUGHTERS CLOCKMAKERS\",
        pointer: Initials(\"Underneath golden hands\"),
        decoys: 5,
    )

## Traps
- Equal letters that several digits stand under, with no order stated: several readings.
- A line of words with no rule: first letters, last letters or all letters are read.
- A hyphenated word in the line: one word or two.
- A named letter that stands on the sign more often than it carries a digit, or carries none: a remark.
";

impl Mechanic for MarkedLetters {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "marked-letters",
        name: "Marked letters",
        guests: "find the letters that a card names on a sign and read the small digits under them",
        order: "the order in which the pointer card names the letters; equal letters by the order that the card states",
        prints: "the sign and the pointer card",
        host: "hangs the sign and lays the card elsewhere",
        help: HELP,
        parts: &[
            Part { key: "sign", name: "the sign", printed: true, optional: false },
            Part { key: "pointer", name: "the pointer card", printed: true, optional: false },
        ],
        minutes: (3, 8),
        least_age: 7,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        lay::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec!["sign", "pointer"]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sign(view, cx)?, draw::pointer(view, cx)?])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let (sign, pointer) = (cx.name("sign", "the sign"), cx.name("pointer", "the pointer card"));
        vec![
            PrepStep {
                key: "cut",
                what: format!("Cut out {sign} and {pointer}."),
                needs: vec![Need { material: "card-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
                hands: 6.0,
                wait: 0.0,
                after: vec![],
            },
            PrepStep {
                key: "hang",
                what: format!(
                    "Hang {sign} at eye height where there is light to read small digits by; {pointer} goes elsewhere."
                ),
                needs: vec![Need { material: "tape", amount: 1.0 }],
                hands: 2.0,
                wait: 0.0,
                after: vec!["cut"],
            },
        ]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        let how = match &view.pointer.says {
            Says::Letters(_) => format!("names {}", letters_in_words(view)),
            Says::Line(line) => format!("says “{line}”; the first letters of its words are {}", letters_in_words(view)),
        };
        let equal =
            if view.pointer.equal_rule { " Equal letters are taken in reading order, as the card says." } else { "" };
        format!(
            "{} {how}. The digits under these letters on {}, in that order, are the code.{equal} All other digits on it are decoys.",
            capital(cx.name("pointer", "the pointer card")),
            cx.name("sign", "the sign"),
        )
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        let (sign, pointer) = (cx.name("sign", "the sign"), cx.name("pointer", "the pointer card"));
        format!("Look that nobody has ticked letters on {sign}, and put {pointer} back in its place.")
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        let (sign, pointer) = (cx.name("sign", "the sign"), cx.name("pointer", "the pointer card"));
        let method = match view.pointer.says {
            Says::Letters(_) => {
                format!("{} names letters in order. Find each of them on {sign}.", capital(pointer))
            }
            Says::Line(_) => {
                format!("Take the first letter of each word on {pointer}, and find these letters on {sign}.")
            }
        };
        HintLadder {
            nudge: format!("Go close to {sign}. Something small stands under some of its letters."),
            method,
            giveaway: format!("The letters are {}. Read what stands under each of them.", letters_in_words(view)),
        }
    }
}
