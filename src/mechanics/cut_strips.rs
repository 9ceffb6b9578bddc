//! `cut-strips`: a picture of digits or letters, cut into strips that must be laid in order.

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
use crate::mechanics::dots;
use crate::mechanics::work::{Effort, Work};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct CutStrips;

const STRIPS: &str = "strips";
const CARD: &str = "card";

/// Rows of the picture for each row of a sign, so that cuts run through strokes as well.
const FINE: usize = 2;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// How much work it shall be: into how many strips the picture is cut.
    pub work: Effort,
    /// Whether an arrowhead on each strip points up.
    pub arrows: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { work: Effort::Fair, arrows: true }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The strips in no order that matters; of each, its rows of cells from the top, `#` for ink.
    pub strips: Vec<Vec<String>>,
    /// Whether an arrowhead on each strip points up.
    pub arrows: bool,
}

/// The letter that names a strip on paper, by its place in the view. It tells nothing of the order.
fn letter(index: usize) -> char {
    u8::try_from(index).ok().and_then(|at| b'A'.checked_add(at)).map_or('?', char::from)
}

impl View {
    /// Rows of a strip and signs across, if the strips are whole: alike in size, and room for whole signs.
    fn measures(&self) -> Option<(usize, usize)> {
        let rows = self.strips.first()?.len();
        let width = self.strips.first()?.first()?.len();
        let signs = width.checked_sub(1)? / (dots::ACROSS + 1);
        let whole = (1..=limits::CUT_ROWS).contains(&rows)
            && (1..=limits::CUT_SIGNS).contains(&signs)
            && width == signs * (dots::ACROSS + 1) + 1
            && self.strips.iter().all(|strip| strip.len() == rows)
            && self.strips.iter().flatten().all(|row| row.len() == width && row.chars().all(|c| "#.".contains(c)));
        whole.then_some((rows, signs))
    }
}

impl Mechanic for CutStrips {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "cut-strips",
        name: "Cut strips",
        guests: "lay strips of a cut picture one below another until it shows digits or letters",
        order: "the picture, once whole, from left to right",
        prints: "the strips, and a card that says how they are laid",
        host: "cuts the strips apart and mixes them",
        help: texts::HELP,
        parts: &[
            Part { key: STRIPS, name: "the strips", printed: true, optional: false },
            Part { key: CARD, name: "the card about the strips", printed: true, optional: false },
        ],
        minutes: (4, 12),
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

    fn reread(&self, printed: &[Printed], _: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![STRIPS, CARD]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(view, cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        read::work(view)
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reset(view, cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
