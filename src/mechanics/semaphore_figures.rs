//! `semaphore-figures`: a row of signallers, seen from the front; a key card gives their letters or digits.

mod draw;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::codes::semaphore;
use crate::mechanics::signs::{self, Entry, Way};
use crate::mechanics::slips::{self, Slip};
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct SemaphoreFigures;

const CARD: &str = "card";
const KEY_CARD: &str = "key-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    say_front: bool,
    say_order: bool,
    numeral_sign: bool,
    key: Lists,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), say_front: true, say_order: true, numeral_sign: false, key: Lists::Fitting }
    }
}

/// What the key card lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lists {
    /// Digits for an answer of digits, letters for one of letters.
    Fitting,
    /// Letters and digits.
    Both,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: String,
    /// The two arms of each figure, left to right: degrees clockwise from straight down, as drawn.
    figures: Vec<String>,
    say_front: bool,
    say_order: bool,
    key: Vec<Entry>,
}

/// The figures after the numeral sign, if it comes first.
fn after_sign(figures: &[String]) -> (bool, &[String]) {
    match figures.split_first() {
        Some((first, rest)) if first == semaphore::NUMERALS => (true, rest),
        _ => (false, figures),
    }
}

impl View {
    /// The lines of the key that count: after the numeral sign only digits do.
    fn key_for(&self, numbers: bool) -> Vec<Entry> {
        self.key.iter().filter(|entry| !numbers || entry.symbol.is_ascii_digit()).cloned().collect()
    }
}

impl Mechanic for SemaphoreFigures {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "semaphore-figures",
        name: "Semaphore figures",
        guests: "read a row of drawn signallers by the places of their arms with a key card",
        order: "left to right, the figures standing on their feet and seen from the front, as the card says",
        prints: "the card with the figures and the key card",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: CARD, name: "the card of signallers", printed: true, optional: false },
            Part { key: KEY_CARD, name: "the key card", printed: true, optional: false },
        ],
        minutes: (2, 6),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, _: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let digits = answer.iter().all(char::is_ascii_digit);
        let mut listed = signs::alphabet(&answer)?;
        if setup.key == Lists::Both {
            listed = ('A'..='Z').chain('0'..='9').collect();
        }
        let arms = |symbol: char| semaphore::arms(symbol).map(str::to_owned);
        let sign = (digits && setup.numeral_sign).then(|| semaphore::NUMERALS.to_owned());
        Ok(View {
            text: setup.text.trim().to_owned(),
            figures: sign.into_iter().chain(answer.into_iter().filter_map(arms)).collect(),
            say_front: setup.say_front,
            say_order: setup.say_order,
            key: listed.into_iter().filter_map(|symbol| Some(Entry { symbol, sign: arms(symbol)? })).collect(),
        })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        let (numbers, figures) = after_sign(&view.figures);
        let mirrored = |figures: &[String]| figures.iter().map(|figure| semaphore::mirrored(figure)).collect();
        let back: Vec<String> = figures.iter().rev().cloned().collect();
        let mut ways = vec![Way { label: "left to right, seen from the front", signs: figures.to_vec() }];
        if !view.say_front {
            ways.push(Way { label: "left to right, seen from behind", signs: mirrored(figures) });
        }
        if !view.say_order {
            ways.push(Way { label: "right to left", signs: back.clone() });
            if !view.say_front {
                ways.push(Way { label: "right to left, seen from behind", signs: mirrored(&back) });
            }
        }
        signs::read(&ways, &view.key_for(numbers), lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![CARD, KEY_CARD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(CARD, KEY_CARD)]
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

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        let behind = View { say_front: false, ..view.clone() };
        slips::without(
            self,
            &behind,
            lock,
            "they take the arms from the figure's own side: say that they see it from the front, as on the card.",
        )
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
