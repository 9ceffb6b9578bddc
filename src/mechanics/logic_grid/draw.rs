//! The sheet: statements, the table to tick, the list of what is asked.

use super::{SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::script::capital;
use crate::units::{Mm, Pt, Rect, Size};

/// The largest cell of the table: a cross or a tick is made without care.
const CELL: Mm = Mm::new(13.0);
/// Most and least room for the names beside the table: some fifteen and six letters of the largest type.
const NAMES: (Mm, Mm) = (Mm::new(32.0), Mm::new(15.0));
/// Greatest size of the names beside the table.
const NAME: Pt = Pt::new(13.0);
/// Greatest sizes of the statements: large where they are few.
const STATEMENT: (Pt, Pt) = (Pt::new(16.0), Pt::new(13.0));
/// The share of the sheet's height under which statements count as few.
const FEW: f64 = 0.16;

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
    let high = |size| numbered.chunks(half.max(1)).map(|part| height(part, w, size)).fold(Mm::ZERO, Mm::max);
    let points = if high(STATEMENT.0) < slot.h * FEW { STATEMENT.0 } else { STATEMENT.1 };
    let list = Rect { y: top.bottom() + mm(2.0), h: high(points).min(slot.h * 0.3 - mm(2.0)), ..slot };
    for (index, part) in numbered.chunks(half.max(1)).enumerate() {
        let column = Rect { x: list.x + (list.w / 2.0 + mm(2.0)) * index as f64, w, ..list };
        paper::lines(&mut face, cx, column, part, points.get());
    }
    let bottom = Rect { y: slot.y + slot.h * 0.925, h: slot.h * 0.075, ..slot };
    paper::words(&mut face, cx, bottom, Rich::plain(texts::order(view)), 14.0);
    let table_at = Rect { y: list.bottom() + mm(2.0), h: bottom.y - list.bottom() - mm(4.0), ..slot };
    table(&mut face, cx, table_at, view, (size.kinds, size.items));
    Ok(cx.piece(SHEET, "logic grid", face))
}

/// About how high sentences of a size stand in a column. Where it is too little they shrink by a little.
fn height(sentences: &[String], w: Mm, size: Pt) -> Mm {
    // In the text faces of our themes a letter is 0.43 to 0.45 of its size broad on average, a line 1.3 times as high.
    let size = size.to_mm();
    let per_line = (w.get() / (size.get() * 0.44)).floor().max(1.0);
    let lines = |sentence: &String| (sentence.chars().count() as f64 / per_line).ceil() + 0.4;
    size * 1.3 * sentences.iter().map(lines).sum::<f64>()
}

/// Every thing against every thing of the other kinds: across, all kinds but the first; down, the first, then the
/// others from the last, so that each pair of kinds meets once.
fn table(face: &mut Face, cx: &Dressing<'_>, slot: Rect, view: &View, (kinds, items): (usize, usize)) {
    let blocks = kinds - 1;
    let across: Vec<usize> = (1..kinds).collect();
    let down: Vec<usize> = std::iter::once(0).chain((2..kinds).rev()).collect();
    let count = (blocks * items) as f64;
    let names = room(view);
    let cell = ((slot.w - names) / count).min((slot.h - names) / count).min(CELL);
    // The table stands in the middle of what the sheet has left.
    let free = (slot.w - names - cell * count, slot.h - names - cell * count);
    let (x0, y0) = (slot.x + free.0 / 2.0 + names, slot.y + free.1 / 2.0 + names);
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
            let name = Rect { x: x0 - names, y, w: names - mm(1.5), h: cell };
            paper::row_to_right(face, cx, name, Rich::plain(view.thing((*kind, thing))), NAME.get());
        }
    }
    for (block, kind) in across.iter().enumerate() {
        for thing in 0..items {
            let x = at(0, block * items + thing).x;
            let name = Rect { x, y: y0 - names, w: cell, h: names - mm(1.5) };
            paper::upward(face, cx, name, Rich::plain(view.thing((*kind, thing))), NAME.get());
        }
    }
}

/// Room for the longest name beside the table.
fn room(view: &View) -> Mm {
    let things = view.kinds.iter().enumerate().flat_map(|(kind, of)| (0..of.things.len()).map(move |at| (kind, at)));
    let longest = things.map(|thing| view.thing(thing).chars().count()).max().unwrap_or(0);
    (NAME.to_mm() * 0.41 * longest as f64 + mm(3.0)).min(NAMES.0).max(NAMES.1)
}
