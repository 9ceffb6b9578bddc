//! `dot-to-dot`: panels of numbered dots; joined in the order of their numbers they draw a digit each.

mod draw;
mod lay;
mod read;
mod reread;
mod solved;
mod strokes;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::paper;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::{Effort, Work};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct DotToDot;

const PANELS: &str = "panels";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// A line of the story above the rule; on a sheet only.
    pub text: String,
    /// The step in which guests count from dot to dot.
    pub step: u8,
    /// Dots of each panel that belong to no line.
    pub strays: u8,
    /// How much work it shall be.
    pub work: Effort,
    /// Whether each panel is a card of its own.
    pub loose: bool,
    /// Whether each panel has a ground line that shows which side is down.
    pub baseline: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), step: 1, strays: 9, work: Effort::Fair, loose: false, baseline: true }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// A line of the story above the rule.
    pub text: String,
    /// The step in which guests count from dot to dot.
    pub step: u16,
    /// The panels in the order of their numbers.
    pub panels: Vec<Vec<Dot>>,
    /// Whether each panel is a card of its own.
    pub loose: bool,
    /// Whether each panel has a ground line.
    pub baseline: bool,
}

/// A dot. Places are thousandths of the panel's breadth, from its top left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dot {
    /// To the right.
    pub x: u16,
    /// Downwards.
    pub y: u16,
    /// The number beside it.
    pub number: Option<u16>,
}

/// A panel's breadth and height.
const PANEL: (u16, u16) = (1000, 1300);

impl Mechanic for DotToDot {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "dot-to-dot",
        name: "Dot to dot",
        guests: "join numbered dots with a pencil until each panel shows a digit",
        order: "the numbers of the panels",
        prints: "the sheet with the panels, or a card for each",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: PANELS, name: "the panels of dots", printed: true, optional: false }],
        minutes: (3, 7),
        least_age: 5,
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
        vec![PANELS]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        Some(texts::work(view))
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
