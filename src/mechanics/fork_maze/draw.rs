//! The sheet with the maze, drawn as by hand: walls with a rim, corners a little out of line.

use super::{Floor, SHEET, Side, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::sketch::{jitter, with_text};
use crate::mechanics::{Dressing, paper};
use crate::script::capital;
use crate::units::{Mm, Rect, Size};

/// Side of the largest cell.
const CELL: Mm = Mm::new(20.0);
/// How far a corner may stand out of line, as a share of a cell: seen as drawn by hand, and no wall is in doubt.
const OUT_OF_LINE: f64 = 0.07;
/// Thickness of a wall and of its rim, as shares of a cell.
const WALL: f64 = 0.17;
const RIM: f64 = 0.05;

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    if !view.whole() {
        return Err(Trouble::new("the maze is not whole").hint("lay the puzzle out again from its setup"));
    }
    let rule = texts::rule(view);
    let alt = format!("{}: a maze of {} by {} cells. {rule}", capital(texts::name(cx)), view.cols, view.rows);
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("maze-title", "The way through"), alt)?;
    let words = with_text(&view.text, &rule);
    let usual = slot.h * if view.text.is_empty() { 0.09 } else { 0.13 };
    let told = Rect { h: paper::told_height(cx, &words, slot.w, usual), ..slot };
    paper::words(&mut face, cx, told, words, 14.0);
    let space = Rect { y: told.bottom() + mm(2.0), h: slot.h - told.h - mm(2.0), ..slot }.inset(mm(1.5));
    let grid = paper::Grid::fit(space, view.rows, view.cols, CELL);
    let floor = Maze { view, grid };
    floor.walls(&mut face, cx);
    floor.signs(&mut face, cx)?;
    Ok(cx.piece(SHEET, "", face))
}

struct Maze<'a> {
    view: &'a View,
    grid: paper::Grid,
}

impl Maze<'_> {
    /// A corner of cells, from the top left of the grid.
    fn corner(&self, row: usize, col: usize) -> (Mm, Mm) {
        let out = self.grid.cell * OUT_OF_LINE;
        let (dx, dy) = jitter(row, col, 0);
        (self.grid.cell * col as f64 + out * dx, self.grid.cell * row as f64 + out * dy)
    }

    /// Every wall: the corners between which it stands.
    fn standing(&self) -> Vec<((usize, usize), (usize, usize))> {
        let (rows, cols) = (self.view.rows, self.view.cols);
        let open = |a: usize, b: usize| self.view.passages.contains(&(a, b)) || self.view.passages.contains(&(b, a));
        let gate = |cell: usize, side: Side| self.view.gates.contains(&(cell, side));
        let mut walls = Vec::new();
        for row in 0..=rows {
            for col in 0..cols {
                let shut = match (row.checked_sub(1), row < rows) {
                    (None, _) => !gate(col, Side::Up),
                    (Some(above), false) => !gate(above * cols + col, Side::Down),
                    (Some(above), true) => !open(above * cols + col, row * cols + col),
                };
                if shut {
                    walls.push(((row, col), (row, col + 1)));
                }
            }
        }
        for row in 0..rows {
            for col in 0..=cols {
                let shut = match (col.checked_sub(1), col < cols) {
                    (None, _) => !gate(row * cols, Side::Left),
                    (Some(before), false) => !gate(row * cols + before, Side::Right),
                    (Some(before), true) => !open(row * cols + before, row * cols + col),
                };
                if shut {
                    walls.push(((row, col), (row + 1, col)));
                }
            }
        }
        walls
    }

    fn walls(&self, face: &mut Face, cx: &Dressing<'_>) {
        // The rim of the outer wall stands over the grid by half a wall.
        let margin = self.grid.cell * (WALL + RIM);
        let rect = self.grid.rect.inset(-margin);
        let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
        let (ink, body) = (cx.colour("ink"), cx.colour("soft"));
        let shifted = |(x, y): (Mm, Mm)| (x + margin, y + margin);
        // A spot of colour under the start and the goal, so that they are found at once.
        for (cell, _) in [&self.view.start, &self.view.goal] {
            let at = self.grid.at(cell / self.view.cols, cell % self.view.cols);
            let (x, y) = (at.x + at.w / 2.0 - rect.x, at.y + at.h / 2.0 - rect.y);
            drawing.circle(x, y, self.grid.cell * 0.4, Pen::fill(cx.colour("glow")));
        }
        let walls = self.standing();
        // All rims first, then all bodies over them, so that walls that meet are one.
        for pen in [Pen::line(ink, self.grid.cell * (WALL + 2.0 * RIM)), Pen::line(body, self.grid.cell * WALL)] {
            for (from, to) in &walls {
                drawing.line(shifted(self.corner(from.0, from.1)), shifted(self.corner(to.0, to.1)), pen);
            }
        }
        face.art(drawing.svg(), rect, String::new());
    }

    fn signs(&self, face: &mut Face, cx: &Dressing<'_>) -> Hinted<()> {
        let at = |cell: usize| self.grid.at(cell / self.view.cols, cell % self.view.cols);
        let room = self.grid.cell * (WALL * 0.5 + RIM + 0.05);
        for (cell, picture) in [&self.view.start, &self.view.goal] {
            face.art(cx.symbol(picture)?, at(*cell).inset(room), picture.clone());
        }
        match &self.view.floor {
            Floor::Symbols(list) => {
                let most = self.grid.cell.to_pt().get() * 0.55;
                for (cell, symbol) in list {
                    paper::symbol(face, cx, at(*cell).inset(room), &symbol.to_string(), most);
                }
            }
            Floor::Waymarks(picture, list) => {
                for cell in list {
                    face.art(cx.symbol(picture)?, at(*cell).inset(room + self.grid.cell * 0.06), picture.clone());
                }
            }
        }
        Ok(())
    }
}
