//! The solved state of a puzzle, for the host who stands beside a table and sees at a glance where it went wrong.
//!
//! Plain data: the guide paints it. Nothing of it reaches guests, so it may hold the answer.

use serde::Serialize;

use crate::face::mm;
use crate::units::{Mm, Rect, Size};

/// The solved state.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Solved {
    /// Drawings, each for a panel, a turn or a sheet of the puzzle.
    Drawn {
        /// What they show, in a sentence: the caption, and all that is told to those who cannot see them.
        says: String,
        /// From left to right.
        panels: Vec<Panel>,
    },
    /// A table.
    Table {
        /// What it shows, in a sentence.
        says: String,
        /// What stands over the columns.
        head: Vec<String>,
        /// As many cells in each row as there are columns.
        rows: Vec<Vec<String>>,
    },
}

/// A drawing, no larger than [`WIDEST`] by [`HIGHEST`]. Words in it are set in the guide's least size, 12 pt; in large print
/// all of it is enlarged as the guide's words are.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Panel {
    /// What stands below it; may be empty.
    pub name: String,
    /// All that it takes.
    pub size: Size,
    /// What is drawn, lowest first; words in the order in which they are read.
    pub marks: Vec<Mark>,
}

/// Something drawn, in millimetres from the panel's top left.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Mark {
    /// A line from point to point.
    Line {
        /// Its points.
        points: Vec<(Mm, Mm)>,
        /// Its colour.
        tone: Tone,
        /// Its breadth.
        width: Mm,
    },
    /// A rectangle, filled or drawn by its edge.
    Area {
        /// Where.
        rect: Rect,
        /// Its colour.
        tone: Tone,
        /// The breadth of its edge; none fills it.
        edge: Option<Mm>,
    },
    /// A circle, filled or drawn by its edge.
    Circle {
        /// Its middle.
        at: (Mm, Mm),
        /// Its radius.
        r: Mm,
        /// Its colour.
        tone: Tone,
        /// The breadth of its edge; none fills it.
        edge: Option<Mm>,
    },
    /// A few letters or digits in the middle of a rectangle.
    Words {
        /// Where.
        rect: Rect,
        /// What stands there.
        text: String,
        /// Its colour.
        tone: Tone,
        /// Whether it is bold: what is bold is told from the rest without colour.
        bold: bool,
    },
}

/// A colour by what it is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tone {
    /// What guests had from the start.
    Ink,
    /// The lines of a grid, and what does not count.
    Faint,
    /// What they find.
    Found,
    /// The paper, to keep what stands on a line clear of it.
    Ground,
}

/// The widest drawing: in large print, a third larger, it still fits beside the lock's mark on both papers.
pub const WIDEST: Mm = Mm::new(120.0);
/// The highest: the words of its answer stand on the same page.
pub const HIGHEST: Mm = Mm::new(104.0);
/// The side of a cell that takes one letter or digit of 12 pt (4.2 mm).
pub const CELL: Mm = Mm::new(5.6);

impl Panel {
    /// An empty drawing.
    #[must_use]
    pub fn new(name: impl Into<String>, size: Size) -> Self {
        Self { name: name.into(), size, marks: Vec::new() }
    }

    /// A grid of square cells, no larger than `most`, with its lines; every so many of them, of rows and of columns, are thick.
    /// The drawing, and the side of a cell.
    #[must_use]
    #[expect(clippy::cast_precision_loss, reason = "cells of a puzzle on a sheet")]
    pub fn grid(rows: usize, cols: usize, most: Mm, heavy: (usize, usize)) -> (Self, Mm) {
        let side = most.min(WIDEST / cols.max(1) as f64).min(HIGHEST / rows.max(1) as f64);
        let (w, h) = (side * cols as f64, side * rows as f64);
        let mut panel = Self::new("", Size { w, h });
        let thick = |at: usize, step: usize| step > 0 && at.is_multiple_of(step);
        for last in [false, true] {
            let (tone, width) = if last { (Tone::Ink, mm(0.5)) } else { (Tone::Faint, mm(0.2)) };
            for row in (0..=rows).filter(|row| thick(*row, heavy.0) == last) {
                let y = side * row as f64;
                panel.line(vec![(Mm::ZERO, y), (w, y)], tone, width);
            }
            for col in (0..=cols).filter(|col| thick(*col, heavy.1) == last) {
                let x = side * col as f64;
                panel.line(vec![(x, Mm::ZERO), (x, h)], tone, width);
            }
        }
        (panel, side)
    }

    /// Draws a line.
    pub fn line(&mut self, points: Vec<(Mm, Mm)>, tone: Tone, width: Mm) {
        self.marks.push(Mark::Line { points, tone, width });
    }

    /// Draws a frame on the inner edge of a rectangle: what is asked for.
    pub fn framed(&mut self, rect: Rect) {
        self.marks.push(Mark::Area { rect: rect.inset(mm(0.5)), tone: Tone::Found, edge: Some(mm(0.8)) });
    }

    /// Writes into a rectangle: what guests `found` is bold.
    pub fn write(&mut self, rect: Rect, text: impl Into<String>, found: bool) {
        let tone = if found { Tone::Found } else { Tone::Ink };
        self.marks.push(Mark::Words { rect, text: text.into(), tone, bold: found });
    }
}

/// A cell of a grid with cells of this side.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "cells of a puzzle on a sheet")]
pub fn cell(side: Mm, row: usize, col: usize) -> Rect {
    Rect { x: side * col as f64, y: side * row as f64, w: side, h: side }
}

/// The middle of a cell.
#[must_use]
pub fn middle(side: Mm, row: usize, col: usize) -> (Mm, Mm) {
    let rect = cell(side, row, col);
    (rect.x + rect.w / 2.0, rect.y + rect.h / 2.0)
}
