use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::kit::LockKind;
use crate::limits;

/// Seconds for one try at a lock (common practice, no source: public pages assume from 1.5 to 6).
pub const SECONDS_PER_TRY: f64 = 3.0;

/// What guests know of a code.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Known {
    /// Symbols whose wheel is known, the wheels counted from 0.
    pub at: BTreeMap<usize, char>,
    /// Symbols that stand in the code, each as often as it is known to; those of `at` may be among them.
    pub among: Vec<char>,
}

impl Known {
    /// All symbols of a code, without their order.
    #[must_use]
    pub fn unordered(code: &str) -> Self {
        Self { at: BTreeMap::new(), among: code.chars().collect() }
    }

    /// Adds what else is known.
    pub fn add(&mut self, other: &Self) {
        self.at.extend(&other.at);
        for symbol in &other.among {
            let count = |list: &[char]| list.iter().filter(|found| *found == symbol).count();
            if count(&self.among) < count(&other.among) {
                self.among.push(*symbol);
            }
        }
    }

    /// Whether nothing is known.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.at.is_empty() && self.among.is_empty()
    }
}

/// The symbols that a wheel shows, each once, capitals; none for keys and words.
#[must_use]
pub fn symbols(kind: &LockKind, wheel: usize) -> Vec<char> {
    let all: BTreeSet<char> = match kind {
        LockKind::Digits(_) => ('0'..='9').collect(),
        LockKind::Directions(_) => "UDLR".chars().collect(),
        LockKind::Letters(wheels) => {
            wheels.get(wheel).map(|wheel| wheel.to_uppercase().chars().collect()).unwrap_or_default()
        }
        LockKind::Key | LockKind::Spoken => BTreeSet::new(),
    };
    all.into_iter().collect()
}

/// How many codes are left to try on a lock for guests who know this much. Exact. None for keys, words, and locks
/// with more than [`limits::WHEELS`] wheels or [`limits::WHEEL_SYMBOLS`] symbols on one.
#[must_use]
pub fn left(kind: &LockKind, known: &Known) -> Option<u64> {
    let wheels = kind.wheels().filter(|wheels| *wheels <= limits::WHEELS)?;
    let mut needs: BTreeMap<char, u8> = BTreeMap::new();
    for symbol in known.among.iter().take(limits::WHEELS) {
        *needs.entry(*symbol).or_default() += 1;
    }
    // Wheel by wheel: how many beginnings still lack which symbols. A code holds what is known when nothing is
    // lacking at its end, and each beginning lacks one thing only, so every code is counted once.
    let mut states: BTreeMap<BTreeMap<char, u8>, u64> = BTreeMap::from([(needs, 1)]);
    for wheel in 0..wheels {
        let mut shown = symbols(kind, wheel);
        if shown.len() > limits::WHEEL_SYMBOLS {
            return None;
        }
        if let Some(fixed) = known.at.get(&wheel) {
            shown.retain(|symbol| symbol == fixed);
        }
        let mut next: BTreeMap<BTreeMap<char, u8>, u64> = BTreeMap::new();
        for (lacking, ways) in states {
            let mut add = |lacking: BTreeMap<char, u8>, ways: u64| {
                let sum = next.entry(lacking).or_default();
                *sum = sum.checked_add(ways)?;
                Some(())
            };
            let wanted: Vec<char> = shown.iter().filter(|symbol| lacking.contains_key(symbol)).copied().collect();
            for symbol in &wanted {
                let mut lacking = lacking.clone();
                match lacking.get_mut(symbol) {
                    Some(1) | None => drop(lacking.remove(symbol)),
                    Some(count) => *count -= 1,
                }
                add(lacking, ways)?;
            }
            // All symbols that nothing lacks lead to the same.
            let others = (shown.len() - wanted.len()) as u64;
            if others > 0 {
                add(lacking, ways.checked_mul(others)?)?;
            }
        }
        states = next;
    }
    Some(states.get(&BTreeMap::new()).copied().unwrap_or_default())
}

/// Minutes to try so many codes, one after another.
#[must_use]
pub fn minutes(codes: u64) -> f64 {
    codes as f64 * SECONDS_PER_TRY / 60.0
}

/// How many codes of a lock are left to try for guests who know a part of its code.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Left {
    /// Nothing is known.
    pub nothing: u64,
    /// All symbols are known, but not their order.
    pub unordered: u64,
    /// All wheels but one are known; the one with the most symbols is the open one.
    pub but_one: u64,
    /// After the nudge, the method and the giveaway, each with those before it.
    pub steps: Vec<u64>,
}

impl Left {
    /// The table of a lock with this code and these hints, gentlest first. None as [`left`], and when the lock
    /// cannot be set to the code.
    #[must_use]
    pub fn new(kind: &LockKind, code: &str, hints: &[&str]) -> Option<Self> {
        if !kind.spells(code) {
            return None;
        }
        let mut known = Known::default();
        let mut steps = Vec::new();
        for hint in hints {
            known.add(&super::told(hint, kind, code));
            steps.push(left(kind, &known)?);
        }
        Some(Self {
            nothing: left(kind, &Known::default())?,
            unordered: left(kind, &Known::unordered(code))?,
            but_one: (0..code.chars().count()).map(|wheel| symbols(kind, wheel).len() as u64).max()?,
            steps,
        })
    }
}
