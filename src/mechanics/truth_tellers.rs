//! `truth-tellers`: speakers in a line, each with a badge; who tells the truth gives the answer.

mod draw;
mod lay;
mod read;
mod reread;
mod solved;
mod texts;
mod work;

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
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct TruthTellers;

const SHEET: &str = "speakers";

/// The order rule as the sheet prints it.
const ORDER: &str = "Read the badges of those who tell the truth, from the top of the list down.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The speakers, in the order of the list; the truthful ones are as many as the answer has symbols.
    pub names: Vec<String>,
    /// How many of them say what is false.
    pub liars: u8,
    /// Whether the sheet tells how many say what is false.
    pub tell_count: bool,
    /// How much work it shall be.
    pub work: Effort,
}

impl Default for Setup {
    fn default() -> Self {
        let names = ["Ida", "Jonas", "Maud", "Piet", "Runa", "Silas", "Tove", "Ulf", "Vera"];
        Self { names: names.map(str::to_owned).to_vec(), liars: 2, tell_count: true, work: Effort::Fair }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The speakers, from the top down.
    pub speakers: Vec<Speaker>,
    /// How many say what is false, if the sheet tells.
    pub liars: Option<usize>,
}

/// A speaker.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Speaker {
    /// The name.
    pub name: String,
    /// The symbol on the badge.
    pub badge: char,
    /// What is said.
    pub says: Claim,
}

/// What a speaker says; speakers are named by their place in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Claim {
    /// This one tells the truth.
    True(usize),
    /// This one does not.
    False(usize),
    /// Of these two, both do or neither does.
    Alike(usize, usize),
    /// Of these two, exactly one does.
    Unlike(usize, usize),
    /// At least one of these two does not.
    NotBoth(usize, usize),
}

impl Claim {
    /// Whether it is so, when `truthful` tells of each speaker whether the truth is told; none when it names a
    /// speaker that there is not.
    fn holds(self, truthful: &[bool]) -> Option<bool> {
        let told = |at: usize| truthful.get(at).copied();
        Some(match self {
            Self::True(a) => told(a)?,
            Self::False(a) => !told(a)?,
            Self::Alike(a, b) => told(a)? == told(b)?,
            Self::Unlike(a, b) => told(a)? != told(b)?,
            Self::NotBoth(a, b) => !(told(a)? && told(b)?),
        })
    }
}

impl Mechanic for TruthTellers {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "truth-tellers",
        name: "Truth tellers",
        guests: "work out from what speakers say of one another who tells the truth, and read their badges",
        order: "the list of speakers, from the top down",
        prints: "the sheet with the speakers, their badges and what they say",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of speakers", printed: true, optional: false }],
        minutes: (4, 12),
        least_age: 9,
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
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        work::work(view)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
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
