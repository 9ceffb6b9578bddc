//! `marked-letters`: small digits stand under some letters of a sign; a pointer card names the letters in order.

mod draw;
mod lay;
mod read;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::slips::Slip;
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

/// The rule of a pointer that lists letters.
const LETTERS_RULE: &str = "Find these letters on the sign. Read the digits under them, in this order.";
/// The rule of a pointer whose words give letters.
const LINE_RULE: &str =
    "Take the first letter of each word. Find these letters on the sign. Read the digits under them, in that order.";
/// How the rule about equal letters begins.
const EQUAL_RULE: &str = "Does one stand there more than once?";

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
            (Says::Letters(_), true) => rules.push(LETTERS_RULE.to_owned()),
            (Says::Line(_), true) => rules.push(LINE_RULE.to_owned()),
        }
        if self.pointer.equal_rule {
            let way =
                if self.lines.len() > 1 { "from left to right, the top line first" } else { "from left to right" };
            rules.push(format!("{EQUAL_RULE} Take the first, {way}. When it is named again, take the next."));
        }
        rules
    }
}

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
        help: texts::HELP,
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

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec!["sign", "pointer"]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![("sign", "pointer")]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sign(view, cx)?, draw::pointer(view, cx)?])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
