//! `fork-maze`: a maze with one way from start to goal; what lies on the way, or how the way goes on, is the answer.

mod dig;
mod draw;
mod read;
mod reread;
mod solved;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::paper;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::{Effort, Work};
use crate::readings::ways::Net;
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct ForkMaze;

const SHEET: &str = "maze";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// A line above the maze.
    pub text: String,
    /// Cells from left to right.
    pub cols: u8,
    /// Cells from top to bottom.
    pub rows: u8,
    /// Signs that lie off the way.
    pub decoys: u8,
    /// How much work it shall be.
    pub work: Effort,
    /// The theme's symbol at the start; empty: by chance.
    pub start: String,
    /// The theme's symbol at the goal; empty: by chance.
    pub goal: String,
    /// For a lock that is pushed: the theme's symbol at which the way on is noted; empty: by chance.
    pub waymark: String,
    /// Whether the sheet says from where to where the way is read.
    pub say_order: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            text: String::new(),
            cols: 11,
            rows: 12,
            decoys: 8,
            work: Effort::Fair,
            start: String::new(),
            goal: String::new(),
            waymark: String::new(),
            say_order: true,
        }
    }
}

/// What guests see. Cells are counted row by row from the top left.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// A line above the maze.
    pub text: String,
    /// Cells from left to right.
    pub cols: usize,
    /// Cells from top to bottom.
    pub rows: usize,
    /// Neighbouring cells without a wall between them.
    pub passages: Vec<(usize, usize)>,
    /// Holes in the outer wall.
    pub gates: Vec<(usize, Side)>,
    /// Where it starts, and with which of the theme's symbols.
    pub start: (usize, String),
    /// Where it ends, and with which of the theme's symbols.
    pub goal: (usize, String),
    /// What lies on the floor.
    pub floor: Floor,
    /// Whether the sheet says from where to where the way is read.
    pub say_order: bool,
}

/// What lies on the floor of a maze.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Floor {
    /// Digits or letters, each in a cell.
    Symbols(Vec<(usize, char)>),
    /// One of the theme's symbols, in these cells: the side to which the way goes on is noted.
    Waymarks(String, Vec<usize>),
}

/// A side of a cell, and the push of a lock that goes there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Side {
    /// To the top of the sheet.
    Up,
    /// To its bottom.
    Down,
    /// To the left.
    Left,
    /// To the right.
    Right,
}

impl Side {
    /// As a lock's pushes are written.
    const fn letter(self) -> char {
        match self {
            Self::Up => 'U',
            Self::Down => 'D',
            Self::Left => 'L',
            Self::Right => 'R',
        }
    }
}

impl View {
    /// Whether its sides are within bounds and all cells that it names are its own.
    fn whole(&self) -> bool {
        let (least, most) = limits::MAZE_SIDE;
        let cells = self.cols.saturating_mul(self.rows);
        let signs: Vec<usize> = match &self.floor {
            Floor::Symbols(list) => list.iter().map(|(cell, _)| *cell).collect(),
            Floor::Waymarks(_, list) => list.clone(),
        };
        let mut named = self.passages.iter().flat_map(|(a, b)| [*a, *b]).chain(signs);
        (least..=most).contains(&self.cols)
            && (least..=most).contains(&self.rows)
            && self.passages.iter().all(|(a, b)| self.side(*a, *b).is_some())
            && self.gates.iter().all(|(cell, _)| *cell < cells)
            && self.passages.len() <= 2 * cells
            && self.gates.len() <= 2 * (self.cols + self.rows)
            && self.start.0 < cells
            && self.goal.0 < cells
            && named.all(|cell| cell < cells)
    }

    /// The cells and, as the last place, what lies outside the outer wall.
    fn net(&self) -> Net {
        let outside = self.cols * self.rows;
        let mut net = Net::new(outside + 1);
        for (a, b) in &self.passages {
            net.link(*a, *b);
        }
        for (cell, _) in &self.gates {
            net.link(*cell, outside);
        }
        net
    }

    /// To which side one steps from a cell into a neighbour.
    fn side(&self, from: usize, to: usize) -> Option<Side> {
        if to == from + 1 && !to.is_multiple_of(self.cols) {
            Some(Side::Right)
        } else if from == to + 1 && !from.is_multiple_of(self.cols) {
            Some(Side::Left)
        } else if to == from + self.cols {
            Some(Side::Down)
        } else if from == to + self.cols {
            Some(Side::Up)
        } else {
            None
        }
    }

    /// The shortest way from start to goal.
    fn way(&self) -> Vec<usize> {
        let mut way = Vec::new();
        let stop = &mut |found: &[usize]| {
            way = found.to_vec();
            false
        };
        // A budget too small leaves the way empty, and nothing is counted.
        let _ = self.net().each_shortest(self.start.0, self.goal.0, &mut Budget::default(), stop);
        way
    }
}

impl Mechanic for ForkMaze {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "fork-maze",
        name: "Forking maze",
        guests: "find the one way through a maze, and note what they pass on it or which way it goes on",
        order: "the way, from the start to the goal",
        prints: "the sheet with the maze",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the maze", printed: true, optional: false }],
        minutes: (3, 8),
        least_age: 5,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        dig::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        Some(texts::work(view))
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        read::slips(view, lock)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
