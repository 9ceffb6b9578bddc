//! The sheet with the panels.

use super::texts::rule;
use super::{ORDER, Panel, SHEET, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::script::capital;
use crate::units::{Mm, Rect, Size};

/// Side of the largest cell: a pencil fills it in a few strokes.
const CELL: Mm = Mm::new(9.0);
/// Height of a panel's name, and white between panels and below the last, in cells.
const HEAD: f64 = 1.3;
const APART: f64 = 1.0;
/// Every so many cells a line is thick, so that long panels can be counted.
const COUNT_BY: usize = 5;

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!(
        "{}: {} empty grids with numbers beside their rows and columns. {ORDER}",
        capital(texts::name(cx)),
        view.panels.len()
    );
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("panels-title", "Picture grids"), alt)?;
    let words = Rich::plain(format!("{} {ORDER}", rule(view)));
    let told = Rect { h: paper::told_height(cx, &words, slot.w, slot.h * 0.11), ..slot };
    paper::words(&mut face, cx, told, words, 14.0);
    let space = Rect { y: told.bottom() + mm(2.0), h: slot.h - told.h - mm(2.0), ..slot };

    // So many panels side by side as make the cells largest.
    let count = view.panels.len().max(1);
    let most = |of: &dyn Fn(&Panel) -> usize| view.panels.iter().map(of).max().unwrap_or(1);
    // All grids get the same room for their numbers, so that they stand in line.
    let room = Room { above: most(&|panel| depth(&panel.cols)), beside: most(&|panel| depth(&panel.rows)) };
    let rows = most(&|panel| panel.rows.len()) + room.above;
    let cols = most(&|panel| panel.cols.len()) + room.beside;
    let cell_of = |across: usize| {
        let w = space.w / across as f64 / (cols as f64 + 0.8);
        let h = space.h / count.div_ceil(across) as f64 / (rows as f64 + HEAD + APART);
        w.min(h).min(CELL)
    };
    let mut across = 1;
    for tried in 2..=count {
        if cell_of(tried) > cell_of(across) {
            across = tried;
        }
    }
    let cell = cell_of(across);
    let (w, h) = (space.w / across as f64, space.h / count.div_ceil(across) as f64);
    for (index, panel) in view.panels.iter().enumerate() {
        // The last row may have fewer panels; they stand in its middle.
        let here = across.min(count - index / across * across);
        let left = (space.w - w * here as f64) / 2.0;
        let (x, y) = (left + w * (index % across) as f64, h * (index / across) as f64);
        let place = Rect { x: space.x + x, y: space.y + y, w, h };
        draw(&mut face, cx, place, (cell, room), index + 1, panel);
    }
    Ok(cx.piece(SHEET, "", face))
}

/// Cells above and beside a grid that are kept for its numbers.
#[derive(Clone, Copy)]
struct Room {
    above: usize,
    beside: usize,
}

/// The most numbers beside a line; a line without ink shows a 0.
fn depth(lines: &[Vec<usize>]) -> usize {
    lines.iter().map(Vec::len).max().unwrap_or(0).max(1)
}

fn draw(face: &mut Face, cx: &Dressing<'_>, place: Rect, (cell, room): (Mm, Room), number: usize, panel: &Panel) {
    let Room { above, beside } = room;
    let (rows, cols) = (panel.rows.len(), panel.cols.len());
    let head = cell * HEAD;
    let (w, h) = (cell * (cols + beside) as f64, cell * (rows + above) as f64 + head);
    let left = place.x + (place.w - w) / 2.0;
    let top = place.y + (place.h - h) / 2.0;
    // Over the cells, not over the numbers beside them.
    let title = Rect { x: left + cell * beside as f64, y: top, w: cell * cols as f64, h: head };
    paper::words(face, cx, title, Rich::plain(format!("Panel {number}")), 14.0);

    let rect = Rect {
        x: left + cell * beside as f64,
        y: top + head + cell * above as f64,
        w: cell * cols as f64,
        h: cell * rows as f64,
    };
    let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
    // Both ways or neither: a thick line only one way would look like a border.
    let long = rows.max(cols) >= 2 * COUNT_BY;
    let pen = |at: usize, end: usize| {
        if at == 0 || at == end || (long && at.is_multiple_of(COUNT_BY)) {
            Pen::line(cx.colour("ink"), mm(0.5))
        } else {
            Pen::line(cx.colour("line"), mm(0.2))
        }
    };
    for (row, col) in &panel.given {
        let (x, y) = (cell * *col as f64, cell * *row as f64);
        drawing.rect(Rect { x, y, w: cell, h: cell }, Mm::ZERO, Pen::fill(cx.colour("ink")));
    }
    for row in 0..=rows {
        drawing.line((Mm::ZERO, cell * row as f64), (rect.w, cell * row as f64), pen(row, rows));
    }
    for col in 0..=cols {
        drawing.line((cell * col as f64, Mm::ZERO), (cell * col as f64, rect.h), pen(col, cols));
    }
    face.art(drawing.svg(), rect, String::new());

    let most = cell.to_pt().get() * 0.62;
    let mut number_at = |col: f64, row: f64, run: usize| {
        let (x, y) = (rect.x + cell * col, rect.y + cell * row);
        let at = Rect { x, y, w: cell, h: cell }.inset(cell * 0.06);
        paper::symbol(face, cx, at, &run.to_string(), most);
    };
    for (index, line) in panel.rows.iter().enumerate() {
        let shown = if line.is_empty() { &[0][..] } else { line };
        for (back, run) in shown.iter().rev().enumerate().rev() {
            number_at(-1.0 - back as f64, index as f64, *run);
        }
    }
    for (index, line) in panel.cols.iter().enumerate() {
        let shown = if line.is_empty() { &[0][..] } else { line };
        for (back, run) in shown.iter().rev().enumerate().rev() {
            number_at(index as f64, -1.0 - back as f64, *run);
        }
    }
}
