//! `magnet-field`: a board of numbered shapes; a magnet finds those that hide another, and a card states their order.

mod draw;
mod lay;
mod read;
mod shape;

use serde::{Deserialize, Serialize};

pub use shape::Kind;

use super::words::{capital, listed};
use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::readings::{Budget, Readings};
use crate::units::{Mm, Size};

/// The mechanic.
#[derive(Debug)]
pub struct MagnetField;

/// The field on which places are counted; a theme's board scales it.
const FIELD: Size = Size::mm(170.0, 200.0);
/// Least breadth of a shape with a number on it.
const LEAST_ACROSS: Mm = Mm::new(12.0);

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
    /// Whether a magnet is felt here.
    pub pulls: bool,
}

impl Shape {
    /// From middle to middle.
    fn distance(&self, other: &Self) -> Mm {
        let (dx, dy) = ((self.x - other.x).get(), (self.y - other.y).get());
        Mm::new((dx * dx + dy * dy).sqrt())
    }

    /// Where on the board it stands, in words: thirds each way.
    fn region(&self) -> &'static str {
        let third = |value: f64, size: Mm| {
            if value < -size.get() / 6.0 {
                0
            } else if value > size.get() / 6.0 {
                2
            } else {
                1
            }
        };
        match (third(self.y.get(), FIELD.h), third(self.x.get(), FIELD.w)) {
            (0, 0) => "at the upper left",
            (0, 1) => "at the top",
            (0, _) => "at the upper right",
            (1, 0) => "at the left",
            (1, 1) => "in the middle",
            (1, _) => "at the right",
            (_, 0) => "at the lower left",
            (_, 1) => "at the bottom",
            _ => "at the lower right",
        }
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

const HELP: &str = "\
## What it does
A board of numbered shapes hangs or lies in the room. Flat magnets are taped behind a few of them; a magnet on a
string or stick, moved slowly over the board, is pulled there. A rule card states the order in which the numbers
count. The order is always stated. A template for the host is printed: the board from behind, with the magnets'
places. Count the magnets out and in; keep them from small children. The answer must be digits, on at least two
shapes.

## Setup
- `shapes`: how many shapes stand on the board, 12 to 160; about 60 is good
- `digits`: digits on each shape: 1, 2 or 3. The answer is cut up from the left; the last number may be shorter
- `order`: Kinds: the rule card lists outlines (circle, star, drop ...), drawn and named; no outline hides two
  magnets, and some outlines hide none. Rows: from the top to the bottom. Sizes: from the smallest to the largest,
  up to four magnets
- `shape_size`: breadth of a shape in millimetres: at least 12 for one digit, 16 for two, 20 for three

## Example
    (
        shapes: 60,
        order: Kinds,
    )

## Traps
- Two magnets that the rule does not put in order: same outline, same height, nearly the same size.
- Numbers of unlike length with no order: 4 and 17 make 417 or 174.
- Another shape within 15 mm of a magnet: its number may be read instead.
- Magnets within 40 mm of each other, shapes too small to write on: a remark.
- A number that stands twice: with one digit that is usual and harmless, since guests read the place that pulls; a
  longer number that stands behind a magnet and elsewhere too gets a remark, since people call shapes by it.
";

impl Mechanic for MagnetField {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "magnet-field",
        name: "Magnet field",
        guests: "move a magnet over a board of numbered shapes and note the numbers of those that pull",
        order: "the rule card: by outline, from top to bottom, or by size; never left open",
        prints: "the board, the rule card, and a template for the host that shows where the magnets go",
        host: "glues the board to card and tapes flat magnets behind it",
        help: HELP,
        parts: &[
            Part { key: "board", name: "the board with its magnets", printed: true, optional: false },
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

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec!["board", "card"]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::board(view, cx)?, draw::card(view, cx)?, draw::template(view, cx)?])
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let (board, wand) = (cx.name("board", "the board"), cx.name("wand", "the magnet"));
        let magnets = view.pulling().len();
        #[expect(clippy::cast_precision_loss, reason = "a handful of magnets")]
        let amount = magnets as f64;
        vec![
            PrepStep {
                key: "glue",
                what: format!(
                    "Glue the print of {board} flat onto corrugated card, cut both to the frame, and let it dry under books."
                ),
                needs: vec![
                    Need { material: "plain-paper", amount: 1.0 },
                    Need { material: "corrugated-card", amount: 1.0 },
                    Need { material: "glue", amount: 1.0 },
                    Need { material: "scissors", amount: 1.0 },
                ],
                hands: 10.0,
                wait: 60.0,
                after: vec![],
            },
            PrepStep {
                key: "tape",
                what: format!(
                    "Lay the template on the back of {board}, prick through each thick ring, and tape a flat magnet over each of the {magnets} marks, all with the same side out. Write down how many magnets you used."
                ),
                needs: vec![Need { material: "magnets", amount }, Need { material: "tape", amount: 1.0 }],
                hands: 8.0,
                wait: 0.0,
                after: vec!["glue"],
            },
            PrepStep {
                key: "try",
                what: format!(
                    "Move {wand} over the front: it must pull behind the right shapes and nowhere else. If the card is too thick, move the magnets' tape to a thinner card."
                ),
                needs: vec![Need { material: "magnet-wand", amount: 1.0 }],
                hands: 4.0,
                wait: 0.0,
                after: vec!["tape"],
            },
            PrepStep {
                key: "cut",
                what: "Cut out the rule card and put the template away.".into(),
                needs: vec![Need { material: "card-paper", amount: 1.0 }],
                hands: 2.0,
                wait: 0.0,
                after: vec![],
            },
        ]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        let places: Vec<String> =
            view.pulling().iter().map(|shape| format!("the {} {}", shape.kind.name(cx), shape.region())).collect();
        let rule = match &view.rule {
            Some(Rule::Kinds(_)) => "in the order in which the rule card lists the outlines",
            Some(Rule::Rows) => "from the top of the board to the bottom, as the rule card says",
            Some(Rule::Sizes) => "from the smallest to the largest, as the rule card says",
            None => "in an order that nothing states",
        };
        format!(
            "{} is pulled by {} of {}. Their numbers, {rule}, are the code.",
            capital(cx.name("wand", "the magnet")),
            listed(&places),
            cx.name("board", "the board"),
        )
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        format!(
            "Count the magnets behind {}: there must be {}. Put {} and the rule card back.",
            cx.name("board", "the board"),
            view.pulling().len(),
            cx.name("wand", "the magnet"),
        )
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        let (board, card, wand) =
            (cx.name("board", "the board"), cx.name("card", "the rule card"), cx.name("wand", "the magnet"));
        let rule = match &view.rule {
            Some(Rule::Kinds(_)) => format!("{} shows which shape comes before which.", capital(card)),
            Some(Rule::Rows) => "Begin at the top and end at the bottom.".into(),
            Some(Rule::Sizes) => "Begin with the smallest shape and end with the largest.".into(),
            None => String::new(),
        };
        let places: Vec<String> =
            view.pulling().iter().map(|shape| format!("the {} {}", shape.kind.name(cx), shape.region())).collect();
        HintLadder {
            nudge: format!("Eyes are no help with {board}. What else do you have that can feel what lies behind it?"),
            method: format!("Move {wand} slowly over {board} and mark each shape that pulls. {rule}").trim().to_owned(),
            giveaway: format!("In the right order, these pull: {}. Read their numbers.", listed(&places)),
        }
    }
}
