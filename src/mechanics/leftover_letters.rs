//! `leftover-letters`: a word search; the letters that no listed word uses spell the answer.

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
pub struct LeftoverLetters;

const SHEET: &str = "letters";

/// The order rule as the sheet prints it.
const ORDER: &str = "Then read the letters that are left. Read row by row from the top, each from left to right.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The words to find, of letters A to Z.
    pub words: Vec<String>,
    /// Whether words may run backwards.
    pub backwards: bool,
    /// Whether words may run aslant.
    pub aslant: bool,
    /// How much work it shall be.
    pub work: Effort,
}

impl Default for Setup {
    fn default() -> Self {
        let words = [
            "GARDEN", "LADDER", "LANTERN", "THIMBLE", "BUTTON", "CANDLE", "ROBIN", "HEARTH", "BLANKET", "KETTLE",
            "OWL", "BELFRY",
        ];
        Self { words: words.map(str::to_owned).to_vec(), backwards: false, aslant: true, work: Effort::Fair }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The letters, row by row; a cell without one shows an ornament.
    pub rows: Vec<Vec<Option<char>>>,
    /// The words to find.
    pub words: Vec<String>,
}

impl View {
    /// The letters, with a sign that no word has where there is none.
    fn grid(&self) -> Vec<Vec<char>> {
        self.rows.iter().map(|row| row.iter().map(|cell| cell.unwrap_or(NO_LETTER)).collect()).collect()
    }
}

/// Stands for a cell without a letter while words are looked for.
const NO_LETTER: char = ' ';

impl Mechanic for LeftoverLetters {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "leftover-letters",
        name: "Leftover letters",
        guests: "find all listed words in a square of letters and read the letters that are left over",
        order: "reading order of the letters left over: row by row, from left to right",
        prints: "the sheet with the letters and the list of words",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of letters", printed: true, optional: false }],
        minutes: (5, 12),
        least_age: 7,
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
