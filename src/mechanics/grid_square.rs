//! `grid-square`: a square of letters with a digit for each row and column; a word gives digits, or pairs give letters.

mod draw;
mod lay;
mod read;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::signs;
use crate::mechanics::slips::Slip;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct GridSquare;

const SQUARE: &str = "square";
const MESSAGE: &str = "message";

/// Rows, and columns, of the square.
const SIDE: usize = 5;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    word: String,
    text: String,
    fill: Fill,
    share: String,
    leave_out: char,
    headings: Headings,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            word: String::new(),
            text: String::new(),
            fill: Fill::Shuffled,
            share: String::new(),
            leave_out: 'Q',
            headings: Headings::Any,
            state_rule: true,
        }
    }
}

/// How the letters stand in the square.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fill {
    /// In the order of the alphabet, row by row.
    Alphabet,
    /// By chance.
    Shuffled,
}

/// The digits of rows and columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Headings {
    /// 1 to 5, from the top and from the left.
    Ordered,
    /// Whichever the answer needs, the others by chance.
    Any,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    rows: Vec<char>,
    columns: Vec<char>,
    /// Letters of each cell, row by row; one, or two that share it.
    cells: Vec<Vec<String>>,
    message: Message,
    text: String,
    rule: bool,
}

/// What the card says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Message {
    /// A word, whose letters give two digits each.
    Word(String),
    /// Pairs of digits, each of which gives a letter.
    Pairs(Vec<String>),
}

impl View {
    /// The letters where a row and a column of these digits meet.
    fn cell(&self, row: char, column: char) -> Option<&str> {
        let row = self.rows.iter().position(|digit| *digit == row)?;
        let column = self.columns.iter().position(|digit| *digit == column)?;
        self.cells.get(row)?.get(column).map(String::as_str)
    }

    /// The digits of every cell that holds a letter: row, then column.
    fn places(&self, letter: char) -> Vec<(char, char)> {
        let mut places = Vec::new();
        for (row, cells) in self.rows.iter().zip(&self.cells) {
            for (column, cell) in self.columns.iter().zip(cells) {
                if cell.contains(letter) {
                    places.push((*row, *column));
                }
            }
        }
        places
    }
}

impl Mechanic for GridSquare {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "grid-square",
        name: "Grid square",
        guests: "find letters in a square by the digits of their rows and columns, or the digits by the letters",
        order: "letter by letter, and for each the row before the column, as the card says",
        prints: "the square of letters and the card with the message",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: SQUARE, name: "the square of letters", printed: true, optional: false },
            Part { key: MESSAGE, name: "the card with the message", printed: true, optional: false },
        ],
        minutes: (3, 7),
        least_age: 8,
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
        vec![SQUARE, MESSAGE]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(SQUARE, MESSAGE)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::square(view, cx)?, draw::message(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        read::slips(view, lock)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
