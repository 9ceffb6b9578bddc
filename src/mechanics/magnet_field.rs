//! `magnet-field`: a board of numbered shapes; a magnet finds those that hide steel, and a card states their order.

mod draw;
mod lay;
mod read;
mod reread;
mod shape;
mod texts;

use serde::{Deserialize, Serialize};

pub use shape::Kind;

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::slips::Slip;
use crate::readings::{Budget, Readings};
use crate::units::{Mm, Size};

/// The mechanic.
#[derive(Debug)]
pub struct MagnetField;

/// The field on which places are counted; a theme's board scales it.
const FIELD: Size = Size::mm(170.0, 200.0);
/// Least breadth of a shape with a number on it.
const LEAST_ACROSS: Mm = Mm::new(12.0);
/// The washer behind a shape: large series for M6, 18 mm across and 1.6 mm thick (ISO 7093-1, from memory).
const WASHER: Mm = Mm::new(18.0);
/// Least distance between two washers: half way between them each pulls with a hundredth of what it does at its middle, so
/// that they are felt as two.
const STEEL_APART: Mm = Mm::new(40.0);
/// A shape whose middle is nearer than this to a washer's may be taken for the one that pulls. A magnet of 15 mm, 3 to 5 mm
/// above a washer of 18 mm, is drawn down there with a twentieth of the greatest pull at most, and from there on with less
/// (computed: the faces of a round magnet as evenly charged discs, steel that is drawn to the stronger field).
const NEIGHBOUR: Mm = Mm::new(17.0);
/// Least distance of a washer's middle from the board's cut edge, so that it neither sticks out nor is seen.
const EDGE: Mm = Mm::new(12.0);

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// How many shapes stand on the board.
    pub shapes: u8,
    /// Digits on each shape.
    pub digits: u8,
    /// What fixes the order of the numbers.
    pub order: Order,
    /// Breadth of a shape in millimetres; of the smallest, when they differ.
    pub shape_size: Mm,
}

/// What fixes the order of the numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Order {
    /// The rule card lists outlines in order.
    Kinds,
    /// From the top of the board to the bottom.
    Rows,
    /// From the smallest shape to the largest.
    Sizes,
}

impl Default for Setup {
    fn default() -> Self {
        Self { shapes: 60, digits: 1, order: Order::Kinds, shape_size: Mm::new(14.0) }
    }
}

/// What guests see and feel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct View {
    /// The shapes.
    pub shapes: Vec<Shape>,
    /// What the rule card says; none when nothing states the order.
    pub rule: Option<Rule>,
}

/// A shape of the board.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Shape {
    /// From the middle of the field to the right.
    pub x: Mm,
    /// From the middle of the field downwards.
    pub y: Mm,
    /// Breadth.
    pub across: Mm,
    /// Outline.
    pub kind: Kind,
    /// What is written on it.
    pub number: String,
    /// Whether steel is felt here.
    pub pulls: bool,
}

impl Shape {
    /// From middle to middle.
    fn distance(&self, other: &Self) -> Mm {
        let (dx, dy) = ((self.x - other.x).get(), (self.y - other.y).get());
        Mm::new((dx * dx + dy * dy).sqrt())
    }
}

/// What the rule card says about the order.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Rule {
    /// These outlines, first to last.
    Kinds(Vec<Kind>),
    /// From the top of the board to the bottom.
    Rows,
    /// From the smallest to the largest.
    Sizes,
}

impl View {
    /// The shapes that pull, in the order of the rule.
    fn pulling(&self) -> Vec<&Shape> {
        let mut shapes: Vec<&Shape> = self.shapes.iter().filter(|shape| shape.pulls).collect();
        match &self.rule {
            None => {}
            Some(Rule::Rows) => shapes.sort_by(|a, b| a.y.get().total_cmp(&b.y.get())),
            Some(Rule::Sizes) => shapes.sort_by(|a, b| a.across.get().total_cmp(&b.across.get())),
            Some(Rule::Kinds(kinds)) => {
                shapes.sort_by_key(|shape| kinds.iter().position(|kind| *kind == shape.kind));
            }
        }
        shapes
    }
}

impl Mechanic for MagnetField {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "magnet-field",
        name: "Magnet field",
        guests: "move a magnet over a board of numbered shapes and note the numbers of those that pull",
        order: "the rule card: by outline, from top to bottom, or by size; never left open",
        prints: "the board, the rule card, and a template for the host that shows where the washers go",
        host: "glues the board to card and tapes flat steel washers behind it",
        help: texts::HELP,
        parts: &[
            Part { key: "board", name: "the board", printed: true, optional: false },
            Part { key: "card", name: "the rule card", printed: true, optional: false },
        ],
        minutes: (4, 10),
        least_age: 8,
        tools: &["magnet-wand"],
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
        vec!["board", "card"]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::board(view, cx)?, draw::card(view, cx)?, draw::template(view, cx)?])
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(view, cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reset(view, cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
