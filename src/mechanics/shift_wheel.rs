//! `shift-wheel`: two discs with a ring of letters or digits each; set by a start mark, they turn a message into the
//! answer.

mod draw;
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
use crate::mechanics::signs;
use crate::mechanics::slips::Slip;
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct ShiftWheel;

const WHEEL: &str = "wheel";
const MESSAGE: &str = "message";

/// Least and most symbols of a ring: fewer are soon tried through, more are too small to read.
const RING: (usize, usize) = (5, 30);

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    ring: String,
    shift: usize,
    from: Ring,
    say_setting: bool,
    say_direction: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            text: String::new(),
            ring: String::new(),
            shift: 0,
            from: Ring::Outer,
            say_setting: true,
            say_direction: true,
        }
    }
}

/// One of the two rings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ring {
    /// The ring of the larger disc.
    Outer,
    /// The ring of the smaller disc.
    Inner,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The symbols of both rings, clockwise; the start mark stands at the first of the inner ring.
    ring: Vec<char>,
    message: Vec<char>,
    /// Where on the outer ring the card says to set the start mark.
    setting: Option<char>,
    /// On which ring the card says to look for the message.
    from: Option<Ring>,
    text: String,
}

impl Mechanic for ShiftWheel {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "shift-wheel",
        name: "Shift wheel",
        guests: "set two printed discs by a start mark and turn a message into letters or digits",
        order: "the order of the message, left to right",
        prints: "the two discs and the card with the message",
        host: "cuts them out and joins the discs with a paper fastener",
        help: texts::HELP,
        parts: &[
            Part { key: WHEEL, name: "the wheel of two discs", printed: true, optional: false },
            Part { key: MESSAGE, name: "the card with the message", printed: true, optional: false },
        ],
        minutes: (3, 8),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let ring = ring(setup, &answer)?;
        let count = ring.len();
        let shift = match setup.shift % count {
            0 if setup.shift > 0 => {
                return Err(Trouble::new(format!("a shift of {} on a ring of {count} changes nothing", setup.shift))
                    .hint("take another shift, or 0 for one by chance"));
            }
            0 => by_chance(count, rng),
            shift => shift,
        };
        let coded = |symbol: &char| {
            let at = ring.iter().position(|other| other == symbol)?;
            ring.get(turned(at, shift, count, setup.from == Ring::Outer)).copied()
        };
        let message: Vec<char> = answer.iter().filter_map(coded).collect();
        Ok(View {
            setting: ring.get(shift).copied().filter(|_| setup.say_setting),
            from: setup.say_direction.then_some(setup.from),
            ring,
            message,
            text: setup.text.trim().to_owned(),
        })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![WHEEL, MESSAGE]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(WHEEL, MESSAGE)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let mut steps = signs::cut_out();
        steps.push(texts::join(cx));
        steps
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        let place = |symbol: char| view.ring.iter().position(|other| *other == symbol);
        let (Some(shift), Some(from)) = (view.setting.and_then(place), view.from) else { return Vec::new() };
        // From the other ring than the card says: the same turn the other way round.
        let read = |symbol: &char| view.ring.get(turned(place(*symbol)?, shift, view.ring.len(), from == Ring::Outer));
        let other: Option<String> = view.message.iter().map(read).collect();
        other.map(|answer| (answer, "they looked for the message on the wrong ring.")).into_iter().collect()
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

/// A place on a ring of `count`, `shift` places further, or back.
const fn turned(at: usize, shift: usize, count: usize, further: bool) -> usize {
    let shift = shift % count;
    (if further { at + shift } else { at + count - shift }) % count
}

/// A shift that changes something, and not by half a turn, which would read the same both ways.
fn by_chance(count: usize, rng: &mut Rng) -> usize {
    let shifts: Vec<usize> = (1..count).filter(|shift| shift * 2 != count).collect();
    shifts.get(rng.random_range(0..shifts.len().max(1))).copied().unwrap_or(1)
}

/// The symbols of the rings: the author's, or all digits or letters, as the answer has.
fn ring(setup: &Setup, answer: &[char]) -> Hinted<Vec<char>> {
    if setup.ring.trim().is_empty() {
        return signs::alphabet(answer);
    }
    let ring: Vec<char> = setup.ring.trim().to_uppercase().chars().collect();
    if !(RING.0..=RING.1).contains(&ring.len()) {
        return Err(Trouble::new(format!("the ring has {} symbols", ring.len()))
            .hint(format!("give it {} to {} of them", RING.0, RING.1)));
    }
    if let Some(odd) = ring.iter().enumerate().find_map(|(index, symbol)| {
        let twice = ring.iter().take(index).any(|other| other == symbol);
        (twice || !symbol.is_ascii_alphanumeric()).then_some(symbol)
    }) {
        return Err(Trouble::new(format!("`{odd}` cannot stand on the ring, or stands on it twice"))
            .hint("use letters A to Z and digits, each of them once"));
    }
    if let Some(lacking) = answer.iter().find(|symbol| !ring.contains(symbol)) {
        return Err(Trouble::new(format!("the ring lacks {lacking}, and the answer needs it"))
            .hint("add it to `ring`, or leave `ring` empty"));
    }
    Ok(ring)
}
