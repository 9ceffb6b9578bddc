//! `morse-strip`: short and long signs on a strip; a key card gives their letters or digits.

mod draw;
mod read;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::codes::morse::{self, Run};
use crate::mechanics::signs::{self, Entry};
use crate::mechanics::slips::Slip;
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct MorseStrip;

const STRIP: &str = "strip";
const KEY_CARD: &str = "key-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// How the signs are drawn.
    pub look: Look,
    /// Whether a start mark stands before the first sign.
    pub start_mark: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { look: Look::Lamps, start_mark: true }
    }
}

/// How short and long signs are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// Lights: round, and long with round ends.
    Lamps,
    /// Bars, all as tall.
    Bars,
    /// Beads on a string that runs through the gaps.
    Beads,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// Ink and gaps of the strip, left to right.
    pub runs: Vec<Run>,
    /// How they are drawn.
    pub look: Look,
    /// Whether a start mark stands at the left.
    pub start_mark: bool,
    /// The key card; signs are written with `.` and `-`.
    pub key: Vec<Entry>,
}

impl Mechanic for MorseStrip {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "morse-strip",
        name: "Morse strip",
        guests: "read short and long signs on a strip with a key card",
        order: "from the start mark, left to right",
        prints: "the strip and the key card",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: STRIP, name: "the strip of signs", printed: true, optional: false },
            Part { key: KEY_CARD, name: "the key card", printed: true, optional: false },
        ],
        minutes: (3, 8),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, _: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let alphabet = signs::alphabet(&answer)?;
        let text: String = answer.iter().collect();
        let runs = morse::runs(&text).ok_or_else(|| {
            Trouble::new("the answer holds a symbol that the code table lacks")
                .hint("write an answer of digits, or one of the letters A to Z")
        })?;
        let length = morse::length(&runs);
        if length > limits::STRIP_UNITS {
            return Err(Trouble::new(format!(
                "the strip would be {length} units long, and it has room for {}",
                limits::STRIP_UNITS
            ))
            .hint("take a shorter answer, or letters: a digit takes up to three times the room of a letter"));
        }
        let key = alphabet
            .into_iter()
            .filter_map(|symbol| Some(Entry { symbol, sign: morse::code(symbol)?.to_owned() }))
            .collect();
        Ok(View { runs, look: setup.look, start_mark: setup.start_mark, key })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![STRIP, KEY_CARD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(STRIP, KEY_CARD)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::strip(view, cx)?, draw::key_card(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        read::slips(view, lock)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}
