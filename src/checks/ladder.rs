use super::Facts;
use crate::diag::{Anchor, Level, PuzzleField, Step};
use crate::kit::{HintLadder, Puzzle};

/// One hint in force.
pub(super) struct Hint<'a> {
    pub puzzle: &'a Puzzle,
    pub step: Step,
    /// The text, slots filled; empty where the author wrote none.
    pub text: &'a str,
    /// The field where that text stands.
    pub anchor: Anchor,
}

/// Every hint in force, puzzle by puzzle, gentlest first.
pub(super) fn hints<'a>(facts: &Facts<'a>) -> Vec<Hint<'a>> {
    let mut hints = Vec::new();
    for (puzzle, laid) in facts.kit.puzzles.iter().zip(&facts.party.puzzles) {
        for step in Step::ALL {
            let anchor = anchor(puzzle, facts.party.level, step);
            hints.push(Hint { puzzle, step, text: laid.hints.step(step).trim(), anchor });
        }
    }
    hints
}

/// The field in which the text of a hint at a level is written: the level's own, or the puzzle's.
pub(super) fn anchor(puzzle: &Puzzle, level: Level, step: Step) -> Anchor {
    let own = puzzle.change(level).and_then(|change| change.hints.as_ref());
    let own = own.is_some_and(|hints| !hints.step(step).trim().is_empty());
    let level = if own { level } else { Level::Standard };
    Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(level, step))
}

/// The same anchor, with a hint's level replaced by that at which its text is written.
pub(super) fn settled(facts: &Facts<'_>, from: &Anchor) -> Anchor {
    match from {
        Anchor::Puzzle(id, PuzzleField::Hint(level, step)) => {
            facts.puzzle(id).map_or_else(|| from.clone(), |puzzle| anchor(puzzle, *level, *step))
        }
        other => other.clone(),
    }
}

/// The hints as they are written at one level, without those that it takes over.
pub(super) fn written(puzzle: &Puzzle, level: Level) -> HintLadder {
    match level {
        Level::Standard => puzzle.hints.clone(),
        level => puzzle.change(level).and_then(|change| change.hints.clone()).unwrap_or_default(),
    }
}

/// The puzzle with another text of one step, written at one level.
pub(super) fn with_step(mut puzzle: Puzzle, level: Level, step: Step, text: String) -> Puzzle {
    *puzzle.hints_mut(level).step_mut(step) = text;
    puzzle
}
