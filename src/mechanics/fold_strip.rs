//! `fold-strip`: upper and lower halves of digits on one strip; folded at the marks, the halves meet.

mod draw;
mod figures;
mod read;
mod reread;
mod texts;

use rand::RngExt as _;
use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use figures::{Bar, Stroke};

/// The mechanic.
#[derive(Debug)]
pub struct FoldStrip;

const STRIP: &str = "strip";

/// What the author chooses.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// What stands on the band that is folded away.
    pub band: Band,
}

/// What stands on the band between the halves.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Band {
    /// Strokes that lead astray, chosen so that nothing on the open strip is a digit.
    #[default]
    Strokes,
    /// Nothing: for small children. Some halves are digits by themselves, and the answer may then not be sure.
    Empty,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The figures, left to right.
    pub figures: Vec<Figure>,
}

/// A figure on the open strip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figure {
    /// Bars above the band.
    pub upper: Vec<Bar>,
    /// Strokes on the band.
    pub band: Vec<Stroke>,
    /// Bars below the band.
    pub lower: Vec<Bar>,
}

impl Mechanic for FoldStrip {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "fold-strip",
        name: "Fold strip",
        guests: "fold a strip at its marks so that halves meet and become digits",
        order: "from left to right, once it is folded",
        prints: "the strip with its fold marks",
        host: "cuts it out and leaves it flat",
        help: texts::HELP,
        parts: &[Part { key: STRIP, name: "the strip to fold", printed: true, optional: false }],
        minutes: (2, 6),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        if answer.len() > limits::FOLD_FIGURES {
            return Err(Trouble::new(format!("{} digits are too many for one strip", answer.len()))
                .hint(format!("give the puzzle a lock of at most {} wheels", limits::FOLD_FIGURES)));
        }
        let mut figures = Vec::new();
        for digit in answer {
            let Some((upper, lower)) = figures::halves(digit) else {
                return Err(Trouble::new(format!("there is no figure of {digit}")).hint("write an answer of digits"));
            };
            let plain = Figure { upper, band: Vec::new(), lower };
            figures.push(match setup.band {
                Band::Empty => plain,
                Band::Strokes => astray(&plain, rng)?,
            });
        }
        Ok(View { figures })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![STRIP]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::strip(view, cx)?])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(cx)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

/// The figure with strokes on its band such that nothing of it is a digit while the strip lies open.
fn astray(plain: &Figure, rng: &mut Rng) -> Hinted<Figure> {
    let fit: Vec<Figure> = figures::bands()
        .map(|band| Figure { band, ..plain.clone() })
        .filter(|figure| !figure.band.is_empty() && read::open(figure).is_empty())
        .collect();
    let at = rng.random_range(0..fit.len().max(1));
    fit.into_iter().nth(at).ok_or_else(|| {
        Trouble::new("there is a digit that can be read on the open strip whatever stands on its band")
            .hint("put `band: Empty`, and look which readings are left")
    })
}
