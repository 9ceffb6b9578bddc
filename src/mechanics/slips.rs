//! Wrong answers to which a usual slip of a pattern leads: what the host is told of them.

use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::{AnyView, Mechanic};
use crate::readings::{Budget, same_answer};

/// A wrong answer, and what went wrong with what to say, for the host.
pub type Slip = (String, &'static str);

/// The slips of a puzzle that its lock can show: none is the answer, none stands twice; the most usual first.
#[must_use]
pub fn told(view: &dyn AnyView, lock: &LockKind, answer: &str) -> Vec<Slip> {
    let mut told: Vec<Slip> = Vec::new();
    for (other, why) in view.slips(lock) {
        let known = told.iter().any(|(known, _)| same_answer(known, &other));
        if told.len() < limits::SLIPS && !known && lock.spells(&other) && !same_answer(&other, answer) {
            told.push((other, why));
        }
    }
    told
}

/// What guests read who overlook something: `view` is the puzzle without it. Where that leaves too much open it is no
/// usual slip, and nothing is told.
pub fn without<M: Mechanic>(mechanic: &M, view: &M::View, lock: &LockKind, why: &'static str) -> Vec<Slip> {
    let found = mechanic.readings(view, lock, &mut Budget::new(limits::GRID_STEPS));
    // The true answer is among them.
    if found.more || found.unproven || found.list.len() > limits::SLIPS + 1 {
        return Vec::new();
    }
    found.list.into_iter().map(|reading| (reading.answer, why)).collect()
}
