//! `marked-hiding-place`: of several like things one wears the sign that a note names; the key lies there.

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
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct MarkedHidingPlace;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The things, and the sign that each wears.
    pub things: Vec<Thing>,
    /// Where at the thing the key lies.
    pub place: Hiding,
    /// What names the sign.
    pub told_by: Teller,
    /// The sentence that names it; empty: a plain one.
    pub note: String,
    /// What is hidden.
    pub holds: Holds,
    /// For a slip: the name of the thing at which it lies.
    pub at: String,
}

/// One of several like things.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thing {
    /// What the host and guests call it: "the round parcel".
    pub name: String,
    /// The symbol of the theme that it wears; empty in a setup: drawn by chance.
    #[serde(default)]
    pub sign: String,
    /// The word that stands under the symbol, and by which the note names it; empty in a setup: the symbol's name.
    #[serde(default)]
    pub word: String,
}

/// Where at the thing the key lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hiding {
    /// Under it.
    Under,
    /// Behind it.
    Behind,
    /// Inside it.
    Inside,
    /// Inside something to eat: allowed, with a finding.
    InFood,
}

impl Hiding {
    /// The word in a sentence.
    const fn word(self) -> &'static str {
        match self {
            Self::Under => "under",
            Self::Behind => "behind",
            Self::Inside | Self::InFood => "inside",
        }
    }
}

/// What names the sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Teller {
    /// A printed note.
    Card,
    /// The story letter or another text of the author's.
    Letter,
}

/// What is hidden.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Holds {
    /// The key of the lock.
    Key,
    /// A slip on which the host writes the code.
    Slip,
}

impl Default for Setup {
    fn default() -> Self {
        let thing = |name: &str| Thing { name: name.into(), ..Thing::default() };
        Self {
            things: vec![
                thing("the round one"),
                thing("the long one"),
                thing("the flat one"),
                thing("the tall one"),
                thing("the striped one"),
            ],
            place: Hiding::Under,
            told_by: Teller::Card,
            note: String::new(),
            holds: Holds::Key,
            at: String::new(),
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct View {
    /// The things with their signs.
    pub things: Vec<Thing>,
    /// The sentence that names a sign.
    pub note: String,
    /// What says it.
    pub told_by: Teller,
    /// Where at the thing guests look.
    pub place: Hiding,
    /// The code slip, if one is hidden in place of a key.
    pub slip: Option<Slip>,
}

/// A code slip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slip {
    /// At which thing it lies, counted from zero.
    pub at: usize,
    /// What is written on it, symbol by symbol.
    pub symbols: Vec<char>,
}

impl View {
    /// The thing at which the key or slip lies, if the view leaves no doubt.
    fn spot(&self) -> Option<&Thing> {
        if let Some(slip) = &self.slip {
            return self.things.get(slip.at);
        }
        let found = read::candidates(self);
        match found.as_slice() {
            [(only, _)] => Some(*only),
            _ => None,
        }
    }

    fn hidden(&self) -> &'static str {
        if self.slip.is_some() { "code slip" } else { "key" }
    }
}

impl Mechanic for MarkedHidingPlace {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "marked-hiding-place",
        name: "Marked hiding place",
        guests: "look at the thing that wears the sign which the note names",
        order: "a key needs none; a slip is read from left to right",
        prints: "a tag for each thing, and the note",
        host: "ties the tags to like things and hides the key at one of them",
        help: texts::HELP,
        parts: &[
            Part { key: "things", name: "the tagged things", printed: true, optional: false },
            Part { key: "note", name: "the note", printed: true, optional: true },
        ],
        minutes: (2, 6),
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

    fn parts(&self, view: &View) -> Vec<&'static str> {
        match view.told_by {
            Teller::Card => vec!["things", "note"],
            Teller::Letter => vec!["things"],
        }
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let mut pieces = draw::tags(view, cx)?;
        if view.told_by == Teller::Card {
            pieces.push(draw::note(view, cx)?);
        }
        Ok(pieces)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(view, cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reset(view, cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
