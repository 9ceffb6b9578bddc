//! The dominoes and the rule card.

use super::{CARD, PIECES, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Side of a half, and height of the strip below with the lock's mark.
const HALF: Mm = Mm::new(26.0);
const STRIP: Mm = Mm::new(10.0);
/// Side of the lock’s mark, which stands as clear of the border as of the line above it.
const MARK: Mm = Mm::new(6.4);

/// Where pips stand in a half, in a square of three by three, for 0 to 9 (double-nine sets; common practice, no
/// source).
const PIPS: [&[(u8, u8)]; 10] = [
    &[],
    &[(1, 1)],
    &[(0, 0), (2, 2)],
    &[(0, 0), (1, 1), (2, 2)],
    &[(0, 0), (2, 0), (0, 2), (2, 2)],
    &[(0, 0), (2, 0), (1, 1), (0, 2), (2, 2)],
    &[(0, 0), (2, 0), (0, 1), (2, 1), (0, 2), (2, 2)],
    &[(0, 0), (2, 0), (0, 1), (1, 1), (2, 1), (0, 2), (2, 2)],
    &[(0, 0), (1, 0), (2, 0), (0, 1), (2, 1), (0, 2), (1, 2), (2, 2)],
    &[(0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1), (0, 2), (1, 2), (2, 2)],
];

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = Vec::new();
    for (index, (a, b)) in view.pieces.iter().copied().enumerate() {
        let face = domino((a, b), view.first == Some(index), view.arrows, cx)?;
        let mut piece = cx.piece(PIECES, "", face);
        piece.id = format!("{}-{PIECES}-{}", cx.puzzle, index + 1);
        pieces.push(piece);
    }
    pieces.push(card(view, cx)?);
    Ok(pieces)
}

fn domino((a, b): (u8, u8), first: bool, arrow: bool, cx: &Dressing<'_>) -> Hinted<Face> {
    let size = Size { w: HALF * 2.0 + mm(4.0), h: HALF + STRIP + mm(2.0) };
    let marked = if first { ", marked as the first" } else { "" };
    let pointing = if arrow { format!(", with an arrow from the {a} to the {b}") } else { String::new() };
    let mut face = Face::new(size, format!("a domino: one half {a}, the other {b}{marked}{pointing}"));
    let mut drawing = Drawing::new(size);
    let (ink, line) = (cx.colour("ink"), cx.colour("line"));
    let edge = Rect::of(size).inset(mm(0.6));
    drawing.rect(edge, mm(3.0), Pen { fill: Some(cx.colour("paper")), ..Pen::line(ink, mm(0.6)) });
    let middle = size.w / 2.0;
    drawing.line((middle, mm(3.0)), (middle, HALF - mm(1.0)), Pen::line(ink, mm(0.6)));
    drawing.line((mm(3.0), HALF + mm(1.5)), (size.w - mm(3.0), HALF + mm(1.5)), Pen::line(line, mm(0.25)));
    for (left, pips) in [(mm(2.0), a), (middle, b)] {
        for (col, row) in PIPS.get(usize::from(pips)).copied().unwrap_or_default() {
            let at = |step: u8| mm(5.0) + mm(7.5) * f64::from(step);
            let (x, y) = (left + at(*col), at(*row));
            drawing.circle(x, y, mm(2.2), Pen::fill(ink));
        }
    }
    if arrow {
        let (y, pen) = (HALF + mm(6.3), Pen::line(ink, mm(0.7)));
        let (tail, tip) = (mm(4.5), mm(15.5));
        drawing.line((tail, y), (tip, y), pen);
        drawing.line((tip - mm(2.4), y - mm(1.8)), (tip, y), pen);
        drawing.line((tip - mm(2.4), y + mm(1.8)), (tip, y), pen);
    }
    face.art(drawing.svg(), Rect::of(size), String::new());
    let strip = Rect { x: mm(3.0), y: HALF + mm(2.2), w: size.w - mm(6.0), h: STRIP - mm(1.6) };
    if !cx.mark.is_empty() {
        let mark = Rect { x: strip.right() - MARK - mm(1.0), y: strip.y + (strip.h - MARK) / 2.0, w: MARK, h: MARK };
        face.art(cx.symbol(cx.mark)?, mark, format!("mark: {}", cx.mark));
    }
    if first {
        let left = if arrow { mm(14.0) } else { Mm::ZERO };
        // Two millimetres from the cut, as `thin-margin` asks.
        let (w, h) = (strip.w - MARK - mm(3.0) - left, strip.h - mm(0.7));
        let words = Rect { x: strip.x + left, w, h, ..strip };
        paper::words(&mut face, cx, words, Rich::plain("first piece"), 12.0);
    }
    Ok(face)
}

fn card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!("{}: {}", capital(texts::card_name(cx)), view.order());
    let (mut face, slot) = paper::sheet(cx, "landscape", cx.name("card-title", "All in a row"), alt)?;
    let head = if view.card_text.is_empty() { Mm::ZERO } else { slot.h * 0.3 };
    paper::words(&mut face, cx, Rect { h: head, ..slot }, crate::script::parse(&view.card_text), 14.0);
    let rest = Rect { y: slot.y + head, h: slot.h - head, ..slot };
    paper::words(&mut face, cx, rest, Rich::plain(view.order()), 14.0);
    Ok(cx.piece(CARD, "", face))
}
