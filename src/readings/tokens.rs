//! The core that many mechanics share: marks with text, found in an unknown, partial or full order.
//!
//! A mechanic says which marks guests find ([`Mark`]) and what its cues tell about their order ([`Order`]);
//! [`read`] lists every answer that this allows. It never sees the author's answer.

mod search;
mod turn;

pub use search::{Spent, Taken, each};
pub use turn::{turned, turns};

use crate::kit::LockKind;
use crate::readings::{Budget, Readings};

/// Something with text that guests find.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// How a guest would point at it: "the white band", "page 12".
    pub label: String,
    /// What it says: one symbol or several.
    pub text: String,
    /// Whether it can lie upside down unnoticed: a loose piece without a line under its symbols.
    pub loose: bool,
}

impl Mark {
    /// A mark that can be held one way only.
    pub fn new(label: impl Into<String>, text: impl Into<String>) -> Self {
        Self { label: label.into(), text: text.into(), loose: false }
    }

    /// The same mark on a piece that can lie upside down unnoticed.
    #[must_use]
    pub const fn loose(mut self, loose: bool) -> Self {
        self.loose = loose;
        self
    }

    /// What it can be taken to say: as written, then upside down where that is different and readable.
    #[must_use]
    pub fn ways(&self) -> Vec<String> {
        let mut ways = vec![self.text.clone()];
        ways.extend(self.loose.then(|| turned(&self.text)).flatten().filter(|text| *text != self.text));
        ways
    }
}

/// What the cues tell about the order of the marks. Marks are named by their place in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Order {
    /// All marks, as they are listed.
    Listed,
    /// All marks; the first of each pair comes somewhere before the second. No pairs: any order.
    Partial(Vec<(usize, usize)>),
    /// One mark for each cue, in the order of the cues; no mark serves twice. A cue that fits several marks
    /// leaves the choice open; a mark that no cue fits is left out.
    Cued(Vec<Cue>),
    /// All marks, round a ring, listed rightwards as seen from outside.
    Ring {
        /// A start mark stands before the first.
        start: bool,
        /// The way round is stated.
        way: Way,
    },
}

impl Order {
    /// Nothing is known about the order.
    #[must_use]
    pub const fn open() -> Self {
        Self::Partial(Vec::new())
    }
}

/// A cue of a pointer: what it says, and the marks that fit it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cue {
    /// The cue in words: "white", "the letter D".
    pub label: String,
    /// The marks that a careful guest could take for it.
    pub marks: Vec<usize>,
}

/// The way in which a ring is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// To the right, as seen from outside.
    Rightwards,
    /// To the left.
    Leftwards,
    /// Not stated.
    Unstated,
}

/// Every answer that the marks and their order allow and the lock can show.
#[must_use]
pub fn read(marks: &[Mark], order: &Order, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let fits = |prefix: &str| {
        let symbols = prefix.chars().count();
        lock.wheels().is_none_or(|wheels| symbols <= wheels)
            && prefix.chars().enumerate().all(|(index, symbol)| lock.shows(index, symbol))
    };
    let done = each(marks, order, &fits, budget, &mut |answer, taken| {
        readings.add(lock, answer, why(marks, order, taken));
        !readings.more
    });
    readings.unproven = done.is_err();
    readings
}

/// The choices that lead to an answer, in words.
fn why(marks: &[Mark], order: &Order, taken: &[Taken]) -> String {
    let steps: Vec<String> = taken
        .iter()
        .enumerate()
        .filter_map(|(place, step)| {
            let mark = marks.get(step.mark)?;
            let cue = match order {
                Order::Cued(cues) => cues.get(place).filter(|cue| cue.marks.len() > 1),
                _ => None,
            };
            let mut words = match cue {
                Some(cue) => format!("{} taken for {}", mark.label, cue.label),
                None => mark.label.clone(),
            };
            if step.upside_down {
                words = format!("{words} upside down ({})", step.text);
            }
            Some(words)
        })
        .collect();
    let start = match order {
        Order::Ring { start: false, .. } => "starting there: ",
        _ => "",
    };
    format!("{start}{}", steps.join(", then "))
}
