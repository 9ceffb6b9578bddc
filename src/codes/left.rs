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
    match kind {
        LockKind::Digits(_) => ('0'..='9').collect(),
        LockKind::Directions(_) => "DLRU".chars().collect(),
        LockKind::Letters(wheels) => {
            let all: BTreeSet<char> =
                wheels.get(wheel).into_iter().flat_map(|w| w.to_uppercase().chars().collect::<Vec<_>>()).collect();
            all.into_iter().collect()
        }
        LockKind::Key | LockKind::Spoken => Vec::new(),
    }
}

/// How many codes are left to try on a lock for guests who know this much. Exact. None for keys, words, and locks
/// with more than [`limits::WHEELS`] wheels or [`limits::WHEEL_SYMBOLS`] symbols on one.
#[must_use]
pub fn left(kind: &LockKind, known: &Known) -> Option<u64> {
    let wheels = kind.wheels().filter(|wheels| *wheels <= limits::WHEELS)?;
    let needs = Needs::new(&known.among);
    // Wheel by wheel: how many beginnings still lack which symbols. A code holds what is known when nothing is
    // lacking at its end, and each beginning lacks one thing only, so every code is counted once.
    let mut states: Vec<(u64, u64)> = vec![(needs.all(), 1)];
    let mut shown = Vec::new();
    for wheel in 0..wheels {
        // Most locks have the same symbols on each wheel.
        if wheel == 0 || matches!(kind, LockKind::Letters(_)) {
            shown = symbols(kind, wheel);
        }
        if shown.len() > limits::WHEEL_SYMBOLS {
            return None;
        }
        let fixed = known.at.get(&wheel);
        let on_wheel = || shown.iter().filter(|symbol| fixed.is_none_or(|fixed| fixed == *symbol));
        let (count, slots): (usize, Vec<u32>) =
            (on_wheel().count(), on_wheel().filter_map(|s| needs.slot(*s)).collect());
        let mut next: Vec<(u64, u64)> = Vec::with_capacity(states.len() * 2);
        for (lacking, ways) in states {
            let mut wanted = 0;
            for slot in slots.iter().filter(|slot| lacking >> **slot & NEED > 0) {
                next.push((lacking - (1 << slot), ways));
                wanted += 1;
            }
            // All symbols that nothing lacks lead to the same.
            let others = (count - wanted) as u64;
            if others > 0 {
                next.push((lacking, ways.checked_mul(others)?));
            }
        }
        states = summed(next)?;
    }
    Some(states.first().filter(|(lacking, _)| *lacking == 0).map_or(0, |(_, ways)| *ways))
}

/// Bits in which a count of what is lacking stands: of each of at most [`limits::WHEELS`] symbols, in one number.
const NEED_BITS: u32 = 4;
const NEED: u64 = (1 << NEED_BITS) - 1;
const _: () = assert!(limits::WHEELS as u64 <= NEED && limits::WHEELS as u32 * NEED_BITS <= u64::BITS);

/// The different symbols that a code must hold, and how often each.
struct Needs(Vec<(char, u64)>);

impl Needs {
    fn new(among: &[char]) -> Self {
        let mut needs: Vec<(char, u64)> = Vec::new();
        for symbol in among.iter().take(limits::WHEELS) {
            match needs.iter_mut().find(|(known, _)| known == symbol) {
                Some((_, count)) => *count += 1,
                None => needs.push((*symbol, 1)),
            }
        }
        Self(needs)
    }

    /// All counts in one number.
    fn all(&self) -> u64 {
        self.0.iter().rev().fold(0, |all, (_, count)| all << NEED_BITS | count)
    }

    /// Where the count of a symbol begins in it.
    fn slot(&self, symbol: char) -> Option<u32> {
        (0..).step_by(NEED_BITS as usize).zip(&self.0).find(|(_, (known, _))| *known == symbol).map(|(slot, _)| slot)
    }
}

/// States in order, each once, with the sum of its ways.
fn summed(mut states: Vec<(u64, u64)>) -> Option<Vec<(u64, u64)>> {
    states.sort_unstable();
    let mut sums: Vec<(u64, u64)> = Vec::with_capacity(states.len());
    for (lacking, ways) in states {
        match sums.last_mut().filter(|(last, _)| *last == lacking) {
            Some((_, sum)) => *sum = sum.checked_add(ways)?,
            None => sums.push((lacking, ways)),
        }
    }
    Some(sums)
}

/// Minutes to try so many codes, one after another.
#[must_use]
pub fn minutes(codes: u64) -> f64 {
    codes as f64 * SECONDS_PER_TRY / 60.0
}

/// The time to try so many codes, in words: seconds below a minute, hours from two hours on.
#[must_use]
pub fn time_to_try(codes: u64) -> String {
    match minutes(codes) {
        few if few < 1.0 => format!("{:.0} seconds", few * 60.0),
        few if few < 2.0 => format!("{few:.1} minutes"),
        some if some < 120.0 => format!("{some:.0} minutes"),
        many => format!("{:.1} hours", many / 60.0),
    }
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
