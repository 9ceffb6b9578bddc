//! `count-scene`: a scene strewn with things; a list says which to count, and in which order.

mod draw;
mod lay;
mod read;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::signs;
use crate::mechanics::slips::Slip;
use crate::mechanics::work::{Effort, Work};
use crate::readings::{Budget, Readings};
use crate::units::{Mm, Size};

/// The mechanic.
#[derive(Debug)]
pub struct CountScene;

const SCENE: &str = "scene";
const LIST: &str = "list";

/// The field on which places are counted; a theme's board scales it.
const FIELD: Size = Size::mm(170.0, 195.0);

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// A line of the story on the list.
    pub text: String,
    /// The theme's symbols to count, in order; empty: by chance.
    pub count: Vec<String>,
    /// The theme's symbols that stand about and are not counted; empty: by chance.
    pub others: Vec<String>,
    /// Whether some things stand in a ring and are left out of the count.
    pub ringed: bool,
    /// How much work it shall be.
    pub work: Effort,
    /// Whether the list says that its order is that of the answer.
    pub say_order: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            text: String::new(),
            count: Vec::new(),
            others: Vec::new(),
            ringed: true,
            work: Effort::Fair,
            say_order: true,
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// A line of the story on the list.
    pub text: String,
    /// The things of the scene, farthest first.
    pub things: Vec<Thing>,
    /// The symbols to count, in order.
    pub list: Vec<String>,
    /// Whether the list says that ringed things are left out.
    pub ring_rule: bool,
    /// Whether the list says that its order is that of the answer.
    pub say_order: bool,
}

/// A thing of the scene.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thing {
    /// The theme's symbol.
    pub picture: String,
    /// From the left edge of the field to its middle.
    pub x: Mm,
    /// From the top edge of the field to its middle.
    pub y: Mm,
    /// Breadth.
    pub across: Mm,
    /// Degrees by which it leans, clockwise.
    pub lean: i8,
    /// Whether a ring stands about it.
    pub ringed: bool,
}

impl Thing {
    /// From middle to middle.
    fn distance(&self, other: &Self) -> Mm {
        let (dx, dy) = ((self.x - other.x).get(), (self.y - other.y).get());
        Mm::new((dx * dx + dy * dy).sqrt())
    }
}

impl Mechanic for CountScene {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "count-scene",
        name: "Count the scene",
        guests: "count certain things in a crowded scene, in the order of a list",
        order: "the list, from its first line to its last",
        prints: "the scene and the list",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: SCENE, name: "the scene", printed: true, optional: false },
            Part { key: LIST, name: "the list of what to count", printed: true, optional: false },
        ],
        minutes: (2, 6),
        least_age: 4,
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
        vec![SCENE, LIST]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(SCENE, LIST)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        Some(texts::work(view))
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        let all = |picture: &String| view.things.iter().filter(|thing| thing.picture == *picture).count().to_string();
        vec![(view.list.iter().map(all).collect(), "they counted what has a circle round it, too.")]
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        format!("Erase any ticks on {} and {}.", texts::scene(cx), texts::list(cx))
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
