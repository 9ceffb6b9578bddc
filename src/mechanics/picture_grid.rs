//! `picture-grid`: the lengths of the runs of ink in rows and columns; each filled panel shows a digit.

mod draw;
mod glyphs;
mod read;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::paper;
use crate::mechanics::words::{digits_only, symbols};
use crate::readings::runs::Runs;
use crate::readings::{Budget, Readings};
use glyphs::Shape;
use rand::RngExt as _;

/// The mechanic.
#[derive(Debug)]
pub struct PictureGrid;

const SHEET: &str = "panels";

/// The order rule as the sheet prints it.
const ORDER: &str = "Read the panels in the order of their numbers.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// How the digits are drawn.
    pub shape: Shape,
    /// Blank rows and columns round the digit, so that its place in the panel is not known beforehand.
    pub margin: u8,
}

impl Default for Setup {
    fn default() -> Self {
        Self { shape: Shape::Thin, margin: 1 }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The panels in the order of their numbers.
    pub panels: Vec<Panel>,
}

/// A panel: the lengths of the runs of its rows and columns.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Panel {
    /// Of each row, from left to right.
    pub rows: Vec<Vec<usize>>,
    /// Of each column, from top to bottom.
    pub cols: Vec<Vec<usize>>,
}

impl Panel {
    fn runs(&self) -> Runs {
        Runs { rows: self.rows.clone(), cols: self.cols.clone() }
    }
}

impl Mechanic for PictureGrid {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "picture-grid",
        name: "Picture grid",
        guests: "fill cells by the numbers beside rows and columns until each panel shows a digit",
        order: "the numbers of the panels",
        prints: "the sheet with the panels",
        host: "cuts it out and lays a pencil beside it",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of panels", printed: true, optional: false }],
        minutes: (5, 12),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        if answer.len() > limits::PANELS {
            return Err(Trouble::new(format!("{} panels do not fit on a sheet", answer.len()))
                .hint(format!("give the puzzle a lock of at most {} wheels", limits::PANELS)));
        }
        if setup.margin > limits::PANEL_MARGIN {
            return Err(Trouble::new(format!("a margin of {} cells makes the panels too small to fill", setup.margin))
                .hint(format!("take a `margin` of at most {}", limits::PANEL_MARGIN)));
        }
        let margin = usize::from(setup.margin);
        let mut panels = Vec::new();
        for digit in answer {
            let glyph = setup.shape.picture(digit).ok_or_else(|| {
                Trouble::new(format!("there is no picture of {digit}")).hint("write an answer of digits")
            })?;
            // The digit stands anywhere within its margin, so that equal digits need not have equal panels.
            let (left, top) = (rng.random_range(0..=margin), rng.random_range(0..=margin));
            let width = glyph.first().map_or(0, Vec::len) + margin;
            let mut picture = vec![vec![false; width]; glyph.len() + margin];
            for (row, line) in glyph.iter().enumerate() {
                for (col, ink) in line.iter().enumerate() {
                    picture[row + top][col + left] = *ink;
                }
            }
            let Runs { rows, cols } = Runs::of(&picture);
            panels.push(Panel { rows, cols });
        }
        Ok(View { panels })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep(&[texts::name(cx)], cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
