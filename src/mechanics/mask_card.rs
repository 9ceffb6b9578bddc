//! `mask-card`: a grid of letters or digits, and a card with windows that leaves the right ones to be read.

mod draw;
mod lay;
mod read;
mod reread;
mod solved;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct MaskCard;

const GRID: &str = "grid";
const MASK: &str = "mask";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    side: u8,
    turns: u8,
    spell: bool,
    corner: Corner,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { side: 6, turns: 1, spell: false, corner: Corner::Printed, state_rule: true }
    }
}

/// What tells how the card lies on the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Corner {
    /// A mark printed in a corner of both: the card lies in one way only, since its back has none.
    Printed,
    /// A corner cut off both: the card can still be flipped about that corner.
    Cut,
    /// Nothing: four turns, each on two sides.
    Plain,
}

/// A row and a column, from 0 at the top left.
pub type Cell = (u8, u8);

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The rows of the grid, one letter or digit for each cell.
    rows: Vec<String>,
    /// The windows of the card as it is printed.
    windows: Vec<Cell>,
    corner: Corner,
    /// How many times the card is laid on, turned to the right by a quarter after each; none where nothing says so.
    turns: Option<u8>,
}

impl View {
    /// How many cells a side has.
    fn side(&self) -> u8 {
        u8::try_from(self.rows.len()).unwrap_or(u8::MAX)
    }
}

/// A cell after the card was turned to the right by a quarter, on a grid of this side.
const fn turned((row, col): Cell, side: u8) -> Cell {
    (col, side.saturating_sub(1).saturating_sub(row))
}

impl Mechanic for MaskCard {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "mask-card",
        name: "Mask card",
        guests: "lay a card with windows on a square of letters or digits and read what is left",
        order: "row by row, each from left to right, and turn after turn, as the square says",
        prints: "the square, and the card with its windows marked",
        host: "cuts both out, cuts the windows, and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: GRID, name: "the square", printed: true, optional: false },
            Part { key: MASK, name: "the card with windows", printed: true, optional: false },
        ],
        minutes: (2, 6),
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

    fn reread(&self, printed: &[Printed], _: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![GRID, MASK]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(GRID, MASK)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::grid(view, cx)?, draw::mask(view, cx)?])
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let (grid, mask) = (texts::grid(cx), texts::mask(cx));
        vec![
            PrepStep::printed(vec![
                Need { material: "card-paper", amount: 1.0 },
                Need { material: "scissors", amount: 1.0 },
            ]),
            PrepStep {
                key: "windows",
                what: format!(
                    "Cut out {} of {mask}, crossed and dashed. Lay it on {grid} to try it: both must be printed at the same scale.",
                    match view.windows.len() {
                        1 => "the one window".to_owned(),
                        count => format!("all {count} windows"),
                    }
                ),
                needs: vec![Need { material: "scissors", amount: 1.0 }],
                hands: 4.0,
                wait: 0.0,
                after: vec!["cut"],
            },
        ]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        read::slips(view, lock)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
