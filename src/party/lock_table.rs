use serde::Serialize;

use super::Party;
use crate::codes::{Left, as_set};
use crate::ids::{LockId, PuzzleId};
use crate::kit::{Kit, Puzzle};

/// The codes that are left to try on one lock.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LockLeft {
    /// The lock.
    pub lock: LockId,
    /// The puzzle whose answer opens it.
    pub puzzle: PuzzleId,
    /// The codes, by what guests know.
    pub left: Left,
}

/// How many codes are left to try on each lock with wheels, by what guests know, at the party's level. Locks that
/// cannot be set to their answer are left out.
#[must_use]
pub fn lock_table(kit: &Kit, party: &Party) -> Vec<LockLeft> {
    kit.puzzles.iter().filter_map(|puzzle| row(kit, party, puzzle)).collect()
}

fn row(kit: &Kit, party: &Party, puzzle: &Puzzle) -> Option<LockLeft> {
    let lock = party.positions.lock(kit, &puzzle.opens)?;
    let laid = party.puzzle(&puzzle.id)?;
    let hints = [laid.hints.nudge.as_str(), laid.hints.method.as_str(), laid.hints.giveaway.as_str()];
    let left = Left::new(&lock.kind, &as_set(&lock.kind, &laid.answer), &hints)?;
    Some(LockLeft { lock: lock.id.clone(), puzzle: puzzle.id.clone(), left })
}
