//! `logic-grid`: statements tell which things of several kinds belong together; the tags asked for are the answer.

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
use crate::readings::matching::{Clue, Item, Matching};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct LogicGrid;

const SHEET: &str = "statements";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// Two or three kinds of things, each with as many things; the tags are one kind more.
    pub kinds: Vec<Kind>,
    /// What the tags are called, in the singular.
    pub tag: String,
    /// Statements beyond those that are needed.
    pub spare: u8,
    /// How much work it shall be.
    pub work: Effort,
}

/// A kind of things.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kind {
    /// What they are called, in the plural.
    pub name: String,
    /// The things, as they stand in a sentence.
    pub things: Vec<String>,
    /// Whether they come one after another, as they are listed: hours, hooks, floors.
    #[serde(default)]
    pub in_order: bool,
}

impl Default for Setup {
    fn default() -> Self {
        let kind = |name: &str, things: [&str; 4], in_order| Kind {
            name: name.into(),
            things: things.map(str::to_owned).to_vec(),
            in_order,
        };
        Self {
            kinds: vec![
                kind("guests", ["Ida", "Jonas", "Maud", "Piet"], false),
                kind("things", ["the broom", "the ladder", "the lamp", "the bucket"], false),
                kind("hours", ["one o'clock", "two o'clock", "three o'clock", "four o'clock"], true),
            ],
            tag: "tag".into(),
            spare: 0,
            work: Effort::Fair,
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// All kinds; the last is the tags, each with one symbol.
    pub kinds: Vec<Kind>,
    /// What a tag is called.
    pub tag: String,
    /// The statements.
    pub statements: Vec<Statement>,
    /// Kind and place of the things whose tags are asked for, in the order of the answer.
    pub asked: Vec<(usize, usize)>,
}

/// A thing by its kind and its place in the kind.
pub type Thing = (usize, usize);

/// What a statement says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Statement {
    /// The two belong together.
    Same(Thing, Thing),
    /// They do not.
    NotSame(Thing, Thing),
    /// The first goes with the second or with the third.
    Either(Thing, Thing, Thing),
    /// By the things of this kind, the first comes somewhere before the second.
    Before(Thing, Thing, usize),
    /// By the things of this kind, the first comes right before the second.
    RightBefore(Thing, Thing, usize),
    /// By the things of this kind, the two stand next to each other.
    NextTo(Thing, Thing, usize),
}

impl Statement {
    fn clue(&self) -> Clue {
        let item = |(kind, at): Thing| Item { kind, at };
        match *self {
            Self::Same(a, b) => Clue::Same(item(a), item(b)),
            Self::NotSame(a, b) => Clue::NotSame(item(a), item(b)),
            Self::Either(a, b, c) => Clue::Either(item(a), item(b), item(c)),
            Self::Before(a, b, by) => Clue::Before(item(a), item(b), by),
            Self::RightBefore(a, b, by) => Clue::Offset(item(a), item(b), by, 1),
            Self::NextTo(a, b, by) => Clue::NextTo(item(a), item(b), by),
        }
    }
}

impl View {
    /// How many kinds and things there are, if all kinds have as many and none is out of bounds.
    fn size(&self) -> Option<Matching> {
        use crate::limits::{GRID_KINDS, GRID_THINGS};
        let size = Matching { kinds: self.kinds.len(), items: self.kinds.first()?.things.len() };
        let whole = (2..=GRID_KINDS).contains(&size.kinds)
            && (2..=GRID_THINGS).contains(&size.items)
            && self.kinds.iter().all(|kind| kind.things.len() == size.items)
            && self.asked.iter().all(|(kind, at)| *kind < size.kinds && *at < size.items);
        whole.then_some(size)
    }

    fn clues(&self) -> Vec<Clue> {
        self.statements.iter().map(Statement::clue).collect()
    }

    /// What a thing is called in a sentence.
    fn thing(&self, (kind, at): Thing) -> String {
        let name = self.kinds.get(kind).and_then(|kind| kind.things.get(at)).map_or("", String::as_str);
        if kind + 1 == self.kinds.len() { format!("{} {name}", self.tag) } else { name.to_owned() }
    }
}

impl Mechanic for LogicGrid {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "logic-grid",
        name: "Logic grid",
        guests: "work out from statements which things belong together, and read the tags that are asked for",
        order: "the list at the foot of the sheet",
        prints: "the sheet with the statements, a table to tick, and the list",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of statements", printed: true, optional: false }],
        minutes: (8, 20),
        least_age: 10,
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
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::sheets(view, cx)
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
