//! `word-reference`: rows of three numbers lead to words of a text: paragraph, line, word.

mod draw;
mod lay;
mod read;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::fixed::Fixed;
use crate::mechanics::signs;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct WordReference;

const TEXT: &str = "text";
const LIST: &str = "list";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    measure: u8,
    take: Option<Take>,
    state_columns: bool,
    state_counting: bool,
    state_take: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            text: String::new(),
            measure: 44,
            take: None,
            state_columns: true,
            state_counting: true,
            state_take: true,
        }
    }
}

/// What counts of each word that a row leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Take {
    /// The word itself: a number word is its digit.
    Words,
    /// Its first letter.
    Initials,
    /// How many letters it has.
    Lengths,
}

impl Take {
    const ALL: [Self; 3] = [Self::Words, Self::Initials, Self::Lengths];

    /// What is taken, in words.
    const fn words(self) -> &'static str {
        match self {
            Self::Words => "the words",
            Self::Initials => "their first letters",
            Self::Lengths => "their numbers of letters",
        }
    }
}

/// Paragraph, line, word; each counted from 1.
pub type Lead = [u8; 3];

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: Fixed,
    leads: Vec<Lead>,
    /// Whether the columns say paragraph, line, word.
    columns: bool,
    /// Whether the sheet says what counts as a word.
    counting: bool,
    /// What counts of each word, if the list says so.
    take: Option<Take>,
}

impl Mechanic for WordReference {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "word-reference",
        name: "Word reference",
        guests: "find words in a text by the numbers of their paragraph, line and place in the line",
        order: "the rows of the list, from the top",
        prints: "the sheet with the text, whose lines are the same on every paper, and the list of numbers",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: TEXT, name: "the sheet with the text", printed: true, optional: false },
            Part { key: LIST, name: "the list of numbers", printed: true, optional: false },
        ],
        minutes: (3, 8),
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
        Some(draw::reread(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![TEXT, LIST]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(TEXT, LIST)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::text(view, cx)?, draw::list(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}
