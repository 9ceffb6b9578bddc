//! The work that a puzzle is for guests: chosen by the author, and counted on what came out.

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::limits;
use crate::mechanics::Rng;

/// How much work the author wants a generated puzzle to be: the setup's `work`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Effort {
    /// Little: for children, or for one puzzle among many.
    Light,
    /// What comes out as a rule.
    #[default]
    Fair,
    /// Much: for a group that likes to sit over a sheet.
    Deep,
}

impl Effort {
    /// All of them, from the least.
    pub const ALL: [Self; 3] = [Self::Light, Self::Fair, Self::Deep];
}

/// The work that a puzzle is, counted by a solver that goes on as a person does. The count grows with the work; it
/// may be compared between puzzles of one mechanic and not between mechanics.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Work {
    /// How many steps it takes.
    pub count: u32,
    /// What was counted, in a sentence or two for the author and the host. It tells nothing of the answer.
    pub says: String,
}

impl Work {
    /// Work of so many steps; counts beyond all measure stop at the largest number.
    pub fn new(count: usize, says: impl Into<String>) -> Self {
        Self { count: u32::try_from(count).unwrap_or(u32::MAX), says: says.into() }
    }
}

/// Arrangements by chance, of which the one is taken whose work suits: of several the lightest or the deepest, or
/// the first where the work is `Fair`.
///
/// # Errors
/// What kept the first from being made.
pub fn arranged<V>(
    effort: Effort,
    rng: &mut Rng,
    make: &mut dyn FnMut(&mut Rng) -> Hinted<V>,
    work: &dyn Fn(&V) -> Option<Work>,
) -> Hinted<V> {
    let mut best = make(rng)?;
    if effort == Effort::Fair {
        return Ok(best);
    }
    let count = |view: &V| work(view).map_or(0, |work| work.count);
    let mut so_far = count(&best);
    for _ in 1..limits::WORK_STARTS {
        let Ok(view) = make(rng) else { continue };
        let steps = count(&view);
        if if effort == Effort::Light { steps < so_far } else { steps > so_far } {
            (so_far, best) = (steps, view);
        }
    }
    Ok(best)
}

/// "no cells", "one cell", "3 cells": a number with its noun, which an s makes many.
#[must_use]
pub fn counted(count: usize, noun: &str) -> String {
    match count {
        0 => format!("no {noun}s"),
        1 => format!("one {noun}"),
        _ => format!("{count} {noun}s"),
    }
}

/// "at one place", "at 3 places".
#[must_use]
pub fn at_places(count: usize) -> String {
    format!("at {}", counted(count, "place"))
}

/// "once", "twice", "3 times".
#[must_use]
pub fn times(count: usize) -> String {
    match count {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        _ => format!("{count} times"),
    }
}
