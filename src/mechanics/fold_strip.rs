//! `fold-strip`: left and right halves of digits on one strip; with the pleats between them folded, the halves meet.

mod draw;
mod figures;
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
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use figures::Bar;

/// The mechanic.
#[derive(Debug)]
pub struct FoldStrip;

const STRIP: &str = "strip";

/// What the author chooses.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// What stands on the pleats.
    pub pleat: Pleat,
}

/// What stands on the pleats between the halves.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Pleat {
    /// Halves that lead astray: the open strip shows other digits, or none.
    #[default]
    Halves,
    /// Nothing: for small children.
    Empty,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The figures, left to right.
    pub figures: Vec<Figure>,
}

/// A figure on the open strip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figure {
    /// Its left half.
    pub left: Vec<Bar>,
    /// On the pleat: a right half beside its left one, and a left half beside its right one.
    pub pleat: [Vec<Bar>; 2],
    /// Its right half.
    pub right: Vec<Bar>,
}

impl Mechanic for FoldStrip {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "fold-strip",
        name: "Fold strip",
        guests: "fold the pleats of a strip at their marks so that halves meet and become digits",
        order: "from left to right, once it is folded",
        prints: "the strip with its fold marks",
        host: "cuts it out and leaves it flat",
        help: texts::HELP,
        parts: &[Part { key: STRIP, name: "the strip to fold", printed: true, optional: false }],
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
        vec![STRIP]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::strip(view, cx)?])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
