//! A party: one kit in its theme at one play level, with everything computed short of type setting.

use crate::diag::{Level, Trouble};
use crate::face::Piece;
use crate::ids::PuzzleId;
use crate::kit::HintLadder;
use crate::kit::material::PrepStep;
use crate::mechanics::AnyView;
use crate::readings::{Readings, Verdict};
use crate::script::Script;
use crate::theme::Palette;

/// One kit in its theme at one play level.
#[derive(Debug)]
pub struct Party {
    /// The play level.
    pub level: Level,
    /// The palette in force.
    pub palette: Palette,
    /// All texts.
    pub script: Script,
    /// The puzzles, in the kit's order.
    pub puzzles: Vec<LaidPuzzle>,
    /// Every printed piece except the letter, whose size follows the paper ([`Party::letter`]).
    pub pieces: Vec<Piece>,
    /// What kept a piece from being made, and for which puzzle or note.
    pub troubles: Vec<(crate::diag::Anchor, Trouble)>,
}

/// A puzzle, laid out and read.
#[derive(Debug)]
pub struct LaidPuzzle {
    /// Which one.
    pub id: PuzzleId,
    /// The puzzle laid out, or why it cannot be.
    pub laid: Result<Box<dyn AnyView>, Trouble>,
    /// What the independent solver found.
    pub readings: Readings,
    /// How that compares with the author's answer; none when it could not be laid out.
    pub verdict: Option<Verdict>,
    /// The parts that the puzzle has.
    pub parts: Vec<&'static str>,
    /// What the host does beforehand.
    pub prep: Vec<PrepStep>,
    /// How guests get to the answer.
    pub reason: String,
    /// How to put it back.
    pub reset: String,
    /// The hints in force: the author's, and where a step is empty none.
    pub hints: HintLadder,
    /// What the mechanic drafts for this puzzle, for the author to take over.
    pub drafted: HintLadder,
}
