//! The sheet with the bills.

use super::{Bill, SHEET, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Bills side by side.
const ACROSS: usize = 2;
/// Height of the largest bill.
const LARGEST: Mm = Mm::new(78.0);
/// What is left free towards the frame on either side.
const MARGIN: Mm = Mm::new(6.0);

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!("{}: {} bills. {}", capital(texts::name(cx)), view.bills.len(), view.order());
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("bills-title", "What does it cost?"), alt)?;
    let slot = Rect { x: slot.x + MARGIN, w: slot.w - MARGIN * 2.0, ..slot };
    let top = Rect { h: slot.h * 0.08, ..slot };
    paper::words(&mut face, cx, top, Rich::plain(texts::rule(view)), 15.0);
    let foot = Rect { y: slot.y + slot.h * 0.91, h: slot.h * 0.09, ..slot };
    // No line breaks within the name of a thing.
    let order =
        view.things.iter().fold(view.order(), |order, thing| order.replace(thing, &thing.replace(' ', "\u{a0}")));
    paper::words(&mut face, cx, foot, Rich::plain(order), 15.0);

    let space = Rect { y: top.bottom() + mm(3.0), h: foot.y - top.bottom() - mm(6.0), ..slot };
    let rows = view.bills.len().div_ceil(ACROSS).max(1);
    let (w, h) = (space.w / ACROSS as f64, (space.h / rows as f64).min(LARGEST));
    // What is left stands above, between and below the rows alike.
    let gap = (space.h - h * rows as f64) / (rows + 1) as f64;
    // Words are as large on all bills as the fullest allows, as far as a bill's width goes.
    let fullest = view.bills.iter().map(|bill| bill.pieces.iter().filter(|count| **count > 0).count()).max();
    let fullest = fullest.unwrap_or(0);
    let most = (h.to_pt().get() / (fullest + 1) as f64 * 0.4).clamp(15.0, 21.0);
    for (index, one) in view.bills.iter().enumerate() {
        // A bill that has a row to itself stands in its middle.
        let here = ACROSS.min(view.bills.len() - index / ACROSS * ACROSS);
        let left = (space.w - w * here as f64) / 2.0;
        let (x, y) = (left + w * (index % ACROSS) as f64, gap + (h + gap) * (index / ACROSS) as f64);
        let at = Rect { x: space.x + x, y: space.y + y, w, h }.inset(mm(2.5));
        bill(&mut face, cx, at, view, (one, fullest, most));
    }
    Ok(cx.piece(SHEET, "", face))
}

/// A bill with room for as many lines as the fullest of all has, so that lines are level on bills side by side.
fn bill(face: &mut Face, cx: &Dressing<'_>, at: Rect, view: &View, (bill, lines, most): (&Bill, usize, f64)) {
    let bought: Vec<(u32, &String)> =
        bill.pieces.iter().copied().zip(&view.things).filter(|(count, _)| *count > 0).collect();
    let mut drawing = Drawing::new(Size { w: at.w, h: at.h });
    let edge = Rect::of(Size { w: at.w, h: at.h }).inset(mm(0.3));
    drawing.rect(edge, mm(1.5), Pen::line(cx.colour("line"), mm(0.4)));
    let line = at.h / (lines + 1) as f64;
    for (index, (count, thing)) in bought.iter().enumerate() {
        let y = at.y + line * index as f64;
        let number = Rect { x: at.x + mm(3.0), y: y + mm(0.8), w: mm(9.0), h: line - mm(1.6) };
        paper::symbol(face, cx, number, &count.to_string(), most + 1.0);
        let words = Rect { x: at.x + mm(14.0), w: at.w - mm(17.0), ..number };
        paper::row(face, cx, words, Rich::plain(format!("\u{d7} {thing}")), most);
    }
    let y = line * lines as f64;
    drawing.line((mm(3.0), y), (at.w - mm(3.0), y), Pen::line(cx.colour("ink"), mm(0.5)));
    let words = Rect { x: at.x + mm(3.0), y: at.y + y + mm(0.8), w: at.w * 0.4, h: line - mm(1.6) };
    paper::row(face, cx, words, Rich::plain("together"), most - 2.0);
    let total = Rect { x: at.x + at.w * 0.45, w: at.w * 0.55 - mm(3.0), ..words };
    paper::symbol(face, cx, total, &format!("{} {}", bill.total, view.coin), most + 1.0);
    face.art(drawing.svg(), at, String::new());
}
