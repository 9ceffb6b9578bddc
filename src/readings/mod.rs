//! Readings: every answer that a careful guest could defend, found from what guests see and nothing else.

pub mod cover;
pub mod matching;
pub mod occurrences;
pub mod orders;
pub mod places;
pub mod runs;
pub mod spell;
pub mod tokens;
pub mod ways;

use serde::Serialize;

use crate::kit::LockKind;
use crate::limits;

/// An answer that a view allows.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Reading {
    /// The answer as it would be set on the lock.
    pub answer: String,
    /// Which choice leads to it, in words: "bands read red, gold, white".
    pub why: String,
}

/// What a solver found.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Readings {
    /// Distinct answers that the lock can show, sorted; at most [`limits::READINGS`].
    pub list: Vec<Reading>,
    /// Whether there are more than the list holds.
    pub more: bool,
    /// Whether the solver ran out of budget before it had seen everything.
    pub unproven: bool,
    /// What a guest should not have to guess, though the reading is one: two letters share a digit, say.
    pub remarks: Vec<String>,
}

impl Readings {
    /// Adds a reading, if the lock can show it and it is new.
    pub fn add(&mut self, lock: &LockKind, answer: &str, why: impl Into<String>) {
        let answer = match lock {
            LockKind::Letters(_) | LockKind::Directions(_) => answer.to_uppercase(),
            LockKind::Digits(_) | LockKind::Key | LockKind::Spoken => answer.to_owned(),
        };
        if !lock.spells(&answer) {
            return;
        }
        match self.list.binary_search_by(|reading| reading.answer.cmp(&answer)) {
            Ok(_) => {}
            Err(_) if self.list.len() >= limits::READINGS => self.more = true,
            Err(at) => self.list.insert(at, Reading { answer, why: why.into() }),
        }
    }

    /// Compares the readings with the author's answer.
    #[must_use]
    pub fn verdict(&self, answer: &str) -> Verdict {
        let same = |reading: &Reading| same_answer(&reading.answer, answer);
        match self.list.as_slice() {
            _ if self.unproven && self.list.len() < 2 => Verdict::Unproven,
            [] => Verdict::None,
            [only] if same(only) => Verdict::One,
            [_] => Verdict::Other,
            _ => Verdict::Several,
        }
    }
}

/// Whether two answers open the same lock: case and outer spaces do not matter.
#[must_use]
pub fn same_answer(a: &str, b: &str) -> bool {
    a.trim().to_lowercase() == b.trim().to_lowercase()
}

/// How the readings compare with the author's answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// One reading, and it is the author's answer.
    One,
    /// More than one.
    Several,
    /// One, but not the author's.
    Other,
    /// None.
    None,
    /// The solver's budget was spent.
    Unproven,
}

impl Verdict {
    /// The word shown to the author.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::One => "one reading",
            Self::Several => "several readings",
            Self::Other => "another reading",
            Self::None => "no reading",
            Self::Unproven => "unproven",
        }
    }
}

/// Steps that a solver may take before it gives up.
#[derive(Clone, Debug)]
pub struct Budget {
    left: u64,
}

impl Default for Budget {
    fn default() -> Self {
        Self { left: limits::SOLVER_STEPS }
    }
}

impl Budget {
    /// A budget of so many steps.
    #[must_use]
    pub const fn new(steps: u64) -> Self {
        Self { left: steps }
    }

    /// Takes one step; false when the budget is spent.
    pub const fn step(&mut self) -> bool {
        match self.left.checked_sub(1) {
            Some(left) => {
                self.left = left;
                true
            }
            None => false,
        }
    }
}
