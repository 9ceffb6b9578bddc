//! `number-place`: a number place grid; the marked cells, once filled, give the answer.

mod draw;
mod lay;
mod read;
mod reread;
mod solved;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::paper;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::{Effort, Work};
use crate::readings::places::Places;
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct NumberPlace;

const SHEET: &str = "grid";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// Rows of the grid: 4, 6 or 9.
    pub size: u8,
    /// What the cells are filled with, one symbol after another; empty: chosen so that the answer fits.
    pub symbols: String,
    /// Cells that are filled from the start; 0: as few as the reasoning allows.
    pub givens: u8,
    /// What guests must be able to do.
    pub reasoning: Reasoning,
    /// How much work it shall be.
    pub work: Effort,
    /// Whether a 4 or 6 row grid is printed on a whole board.
    pub large: bool,
}

/// What guests must be able to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reasoning {
    /// One look at a row, column and box at a time leads to the end.
    Single,
    /// Anything, as long as the grid has one solution.
    Any,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            size: 6,
            symbols: String::new(),
            givens: 0,
            reasoning: Reasoning::Single,
            work: Effort::Fair,
            large: false,
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// What the cells are filled with.
    pub symbols: Vec<char>,
    /// The cells, row by row.
    pub rows: Vec<Vec<Option<char>>>,
    /// Row and column of the marked cells, in the order of their letters: a, b, c.
    pub marks: Vec<(usize, usize)>,
    /// Whether it is printed on a board.
    pub large: bool,
}

impl View {
    /// The grid's measures, if it is whole: as many rows, columns and different symbols as such a grid has.
    fn places(&self) -> Option<Places> {
        let places = Places::new(self.rows.len())?;
        let mut symbols = self.symbols.clone();
        symbols.sort_unstable();
        symbols.dedup();
        let whole = symbols.len() == places.size
            && self.symbols.len() == places.size
            && self.rows.iter().all(|row| row.len() == places.size)
            && self.rows.iter().flatten().flatten().all(|symbol| symbols.contains(symbol))
            && self.marks.iter().all(|(row, col)| *row < places.size && *col < places.size);
        whole.then_some(places)
    }

    /// The givens by their places among the symbols.
    fn givens(&self) -> Vec<Option<usize>> {
        let value = |symbol: &char| self.symbols.iter().position(|other| other == symbol);
        self.rows.iter().flatten().map(|cell| cell.as_ref().and_then(value)).collect()
    }

    /// The rules as the sheet prints them, the order of the answer last.
    fn rules(&self) -> [String; 2] {
        let symbols: Vec<String> = self.symbols.iter().map(char::to_string).collect();
        [
            format!("Each row, column and box must hold {}, each once.", symbols.join(" ")),
            format!("Then read cells {} in this order.", paper::place_letters(self.marks.len())),
        ]
    }
}

impl Mechanic for NumberPlace {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "number-place",
        name: "Number place",
        guests: "fill a grid so that every row, column and box holds each symbol once, and read the marked cells",
        order: "the letters a, b, c of the marked cells",
        prints: "the sheet with the grid",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the number grid", printed: true, optional: false }],
        minutes: (6, 15),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        lay::lay_out(setup, job, rng)
    }

    fn symbols(&self, setup: &Setup, lock: &LockKind) -> Option<Vec<char>> {
        lay::symbols_of(setup, lock)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        texts::work(view)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        solved::slips(view)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
