//! The sheet: statements, the table to tick, the list of what is asked.

use super::{SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::script::capital;
use crate::units::{Mm, Pt, Rect, Size};

/// The largest cell of the table.
const CELL: Mm = Mm::new(9.0);
/// Room for the names beside the table: some twelve letters of 9 points.
const NAMES: Mm = Mm::new(27.0);

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let size = view
        .size()
        .ok_or_else(|| Trouble::new("the kinds are not whole").hint("lay the puzzle out again from its setup"))?;
    let alt = format!("{}: statements, and a table to tick. {}", capital(texts::name(cx)), texts::order(view));
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("statements-title", "Who, what and when"), alt)?;

    let top = Rect { h: slot.h * 0.075, ..slot };
    paper::words(&mut face, cx, top, Rich::plain(texts::rule(view)), 13.0);
    let numbered: Vec<String> =
        texts::statements(view).iter().enumerate().map(|(index, text)| format!("{}. {text}", index + 1)).collect();
    let half = numbered.len().div_ceil(2);
    let w = slot.w / 2.0 - mm(2.0);
    let high = numbered.chunks(half.max(1)).map(|part| height(part, w)).fold(Mm::ZERO, Mm::max);
    let list = Rect { y: top.bottom() + mm(1.0), h: high.min(slot.h * 0.3 - mm(1.0)), ..slot };
    for (index, part) in numbered.chunks(half.max(1)).enumerate() {
        let column = Rect { x: list.x + (list.w / 2.0 + mm(2.0)) * index as f64, w, ..list };
        paper::lines(&mut face, cx, column, part, 13.0);
    }
    let bottom = Rect { y: slot.y + slot.h * 0.925, h: slot.h * 0.075, ..slot };
    paper::words(&mut face, cx, bottom, Rich::plain(texts::order(view)), 14.0);
    let table_at = Rect { y: list.bottom() + mm(2.0), h: bottom.y - list.bottom() - mm(4.0), ..slot };
    table(&mut face, cx, table_at, view, (size.kinds, size.items));
    Ok(cx.piece(SHEET, "logic grid", face))
}

/// About how high sentences of 13 points stand in a column, rather too high than too low: what the table does not get is
/// only air, but sentences without room shrink.
fn height(sentences: &[String], w: Mm) -> Mm {
    // Letters are half as broad as their size, lines 1.3 times as high, and a paragraph ends with half a line.
    let size = Pt::new(13.0).to_mm();
    let per_line = (w.get() / (size.get() * 0.5)).floor().max(1.0);
    let lines = |sentence: &String| (sentence.chars().count() as f64 / per_line).ceil() + 0.5;
    size * 1.3 * sentences.iter().map(lines).sum::<f64>()
}

/// Every thing against every thing of the other kinds: across, all kinds but the first; down, the first, then the
/// others from the last, so that each pair of kinds meets once.
fn table(face: &mut Face, cx: &Dressing<'_>, slot: Rect, view: &View, (kinds, items): (usize, usize)) {
    let blocks = kinds - 1;
    let across: Vec<usize> = (1..kinds).collect();
    let down: Vec<usize> = std::iter::once(0).chain((2..kinds).rev()).collect();
    let count = (blocks * items) as f64;
    let cell = ((slot.w - NAMES) / count).min((slot.h - NAMES) / count).min(CELL);
    let (x0, y0) = (slot.x + (slot.w - NAMES - cell * count) / 2.0 + NAMES, slot.y + NAMES);
    let at = |row: usize, col: usize| Rect { x: x0 + cell * col as f64, y: y0 + cell * row as f64, w: cell, h: cell };
    let side = cell * count;
    let mut drawing = Drawing::new(Size { w: side, h: side });
    let (thin, thick) = (Pen::line(cx.colour("line"), mm(0.2)), Pen::line(cx.colour("ink"), mm(0.6)));
    for row in 0..blocks {
        for col in 0..blocks - row {
            let (x, y, w) = (cell * (col * items) as f64, cell * (row * items) as f64, cell * items as f64);
            for line in 1..items {
                let along = cell * line as f64;
                drawing.line((x + along, y), (x + along, y + w), thin);
                drawing.line((x, y + along), (x + w, y + along), thin);
            }
            drawing.rect(Rect { x, y, w, h: w }, Mm::ZERO, thick);
        }
    }
    face.art(drawing.svg(), Rect { x: x0, y: y0, w: side, h: side }, String::new());
    for (block, kind) in down.iter().enumerate() {
        for thing in 0..items {
            let y = at(block * items + thing, 0).y;
            let name = Rect { x: x0 - NAMES, y, w: NAMES - mm(1.0), h: cell };
            paper::words(face, cx, name, Rich::plain(view.thing((*kind, thing))), 11.0);
        }
    }
    for (block, kind) in across.iter().enumerate() {
        for thing in 0..items {
            let x = at(0, block * items + thing).x;
            let name = Rect { x, y: y0 - NAMES, w: cell, h: NAMES - mm(1.0) };
            paper::upward(face, cx, name, Rich::plain(view.thing((*kind, thing))), 11.0);
        }
    }
}
