//! Both sheets: the same size, the cells at the same place, marks in the corners.

use super::{OVER, UNDER, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Stock, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// Side of the smallest cell: printed at 94 %, it is still a millimetre, which can be laid true by hand (common
/// practice, no source).
const LEAST: Mm = Mm::new(1.07);
/// Side of the largest cell.
const MOST: Mm = Mm::new(5.5);
/// Between the words and the dots.
const GAP: Mm = Mm::new(3.0);
/// Half the length of a corner mark.
const MARK: f64 = 2.2;

pub(super) fn frame(large: bool) -> (&'static str, &'static str) {
    if large { ("board", "field") } else { ("landscape", "body") }
}

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let (rows, cols) = view.measures().ok_or_else(|| {
        Trouble::new("the two sheets are not of one size").hint("lay the puzzle out again from its setup")
    })?;
    let (name, _) = frame(view.large);
    let alt = format!("A sheet of dots with marks in its corners. {}", texts::RULE);
    let (mut under, slot) = paper::sheet(cx, name, cx.name("sheets-title", "Dots on dots"), alt)?;
    let told_h = if view.large { mm(20.0) } else { mm(9.4) };
    let inner = slot.inset(mm(0.6));
    let room = mm(2.0 * MARK);
    #[expect(clippy::cast_precision_loss, reason = "a sheet has at most a few hundred cells each way")]
    let (across, down) = (cols as f64, rows as f64);
    let side = |gap: Mm| ((inner.w - room * 2.0) / across).min((inner.h - told_h - gap) / down).min(MOST);
    // Words stand clear of the dots, unless that would make the cells too small to lay true.
    let gap = if side(GAP) >= LEAST { GAP } else { Mm::ZERO };
    let cell = side(gap);
    if cell < LEAST {
        return Err(Trouble::new("the cells of the sheets would be smaller than a millimetre")
            .hint("put `large: true`, or give the puzzle a lock with fewer wheels"));
    }
    let (w, h) = (cell * across, cell * down);
    // Words and dots together stand in the middle of the sheet.
    let top = inner.y + (inner.h - told_h - gap - h) / 2.0;
    let told = Rect { y: top, h: told_h, ..inner };
    let at = Rect { x: inner.x + (inner.w - w) / 2.0, y: told.bottom() + gap, w, h };
    paper::words(&mut under, cx, told, Rich::plain(texts::RULE), if view.large { 19.0 } else { 10.0 });

    let mut over = Face::new(under.size, "A clear sheet of dots with marks in its corners");
    for (face, cells) in [(&mut under, &view.under), (&mut over, &view.over)] {
        face.art(drawn(cells, at, cell, face.size, cx.colour("ink")), Rect::of(face.size), "");
    }
    let sheet = |part, label, face| Piece { measured: true, ..cx.piece(part, label, face) };
    Ok(vec![
        sheet(UNDER, "print it on paper", under),
        Piece { stock: Stock::Film, ..sheet(OVER, "print it on clear film", over) },
    ])
}

/// The cells in their place on the whole face, and the marks beside their corners.
#[expect(clippy::cast_precision_loss, reason = "a sheet has at most a few hundred cells each way")]
fn drawn(cells: &[String], at: Rect, cell: Mm, size: Size, ink: Colour) -> std::sync::Arc<str> {
    let mut drawing = Drawing::new(size);
    for (row, line) in cells.iter().enumerate() {
        let mut col = 0;
        for run in line.chars().collect::<Vec<_>>().chunk_by(|a, b| a == b) {
            if run.first() == Some(&'#') {
                let (x, y) = (at.x + cell * col as f64, at.y + cell * row as f64);
                let w = cell * run.len() as f64;
                drawing.rect(Rect { x, y, w, h: cell }, Mm::ZERO, Pen::fill(ink));
            }
            col += run.len();
        }
    }
    let (reach, line) = (mm(MARK), Pen::line(ink, mm(0.3)));
    for (x, y) in corners(at) {
        drawing.line((x - reach * 0.8, y), (x + reach * 0.8, y), line);
        drawing.line((x, y - reach * 0.8), (x, y + reach * 0.8), line);
    }
    if let Some((x, y)) = corners(at).first() {
        drawing.circle(*x, *y, reach * 0.5, Pen::fill(ink));
    }
    drawing.svg()
}

/// The marks' middles, the upper left first.
fn corners(at: Rect) -> [(Mm, Mm); 4] {
    let (left, right) = (at.x - mm(MARK), at.right() + mm(MARK));
    let (top, foot) = (at.y + mm(MARK), at.bottom() - mm(MARK));
    [(left, top), (right, top), (left, foot), (right, foot)]
}
