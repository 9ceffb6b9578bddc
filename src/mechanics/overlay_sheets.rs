//! `overlay-sheets`: two sheets of noise, one of them clear; laid on one another they show digits.
//!
//! After M. Naor and A. Shamir, "Visual cryptography", EUROCRYPT '94: every point of the picture is a block of two by
//! two cells, two of them dark on either sheet. Where the picture is light, both sheets have the same two; where it
//! is dark, the second has the other two. Each sheet alone is then the same noise whatever the picture is.

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
use crate::limits;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct OverlaySheets;

const UNDER: &str = "paper-sheet";
const OVER: &str = "clear-sheet";

/// Cells along a side of a block.
const BLOCK: usize = 2;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// Whether the sheets are as large as a board; else they are cards, with cells little over a millimetre.
    pub large: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { large: true }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The cells of the sheet on paper, row by row, `#` for dark.
    pub under: Vec<String>,
    /// The cells of the clear sheet.
    pub over: Vec<String>,
    /// Whether they are printed as large as a board.
    pub large: bool,
}

impl View {
    /// Rows and columns of cells, if both sheets are whole and alike in size.
    fn measures(&self) -> Option<(usize, usize)> {
        let size = (self.under.len(), self.under.first()?.len());
        let fits = |side: usize| (BLOCK..=limits::OVERLAY_SIDE).contains(&side) && side.is_multiple_of(BLOCK);
        let whole = |sheet: &[String]| {
            sheet.len() == size.0
                && sheet.iter().all(|row| row.len() == size.1 && row.chars().all(|cell| "#.".contains(cell)))
        };
        (fits(size.0) && fits(size.1) && whole(&self.under) && whole(&self.over)).then_some(size)
    }
}

impl Mechanic for OverlaySheets {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "overlay-sheets",
        name: "Overlay sheets",
        guests: "lay a clear sheet of dots on a paper one until digits stand out",
        order: "the digits row by row, from left to right",
        prints: "both sheets of dots",
        host: "prints one sheet on clear film, or on tracing paper that is held to a window",
        help: texts::HELP,
        parts: &[
            Part { key: UNDER, name: "the paper sheet of dots", printed: true, optional: false },
            Part { key: OVER, name: "the clear sheet of dots", printed: true, optional: false },
        ],
        minutes: (2, 6),
        least_age: 6,
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
        vec![UNDER, OVER]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(UNDER, OVER)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(cx)
    }

    fn reason(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reason(cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}
