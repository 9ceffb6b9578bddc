//! The sheet with the speakers.

use super::texts::{name, rule, said};
use super::{ORDER, SHEET, View};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Height of the largest row: three lines of words beside a badge.
const ROW: Mm = Mm::new(27.0);
/// Middle and greatest radius of the badges, from the left.
const BADGE: (Mm, Mm) = (Mm::new(10.0), Mm::new(9.0));

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!("{}: speakers with badges, and what each says. {ORDER}", capital(name(cx)));
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("speakers-title", "Who tells the truth?"), alt)?;
    let top = Rect { h: slot.h * 0.1, ..slot };
    paper::words(&mut face, cx, top, Rich::plain(rule(view)), 15.0);
    let foot = Rect { y: slot.y + slot.h * 0.93, h: slot.h * 0.07, ..slot };
    paper::words(&mut face, cx, foot, Rich::plain(ORDER), 15.0);

    let space = Rect { y: top.bottom() + mm(2.0), h: foot.y - top.bottom() - mm(4.0), ..slot };
    let count = view.speakers.len().max(1) as f64;
    let row = (space.h / count).min(ROW);
    // Rows that do not fill the sheet stand in its middle.
    let space = Rect { y: space.y + (space.h - row * count) / 2.0, h: row * count, ..space };
    let radius = (row * 0.38).min(BADGE.1);
    let mut drawing = Drawing::new(Size { w: space.w, h: space.h });
    let (ink, line) = (Pen::line(cx.colour("ink"), mm(0.5)), Pen::line(cx.colour("line"), mm(0.2)));
    for (index, speaker) in view.speakers.iter().enumerate() {
        let y = row * index as f64;
        if index > 0 {
            drawing.line((Mm::ZERO, y), (space.w, y), line);
        }
        drawing.circle(BADGE.0, y + row / 2.0, radius, ink);
        let (middle, at) = (space.y + y + row / 2.0, space.y + y);
        let badge = Rect { x: space.x + BADGE.0 - radius, y: middle - radius, w: radius * 2.0, h: radius * 2.0 };
        paper::symbol(&mut face, cx, badge.inset(radius * 0.25), &speaker.badge.to_string(), 32.0);
        let called = Rect { x: space.x + mm(22.0), y: at + mm(1.0), w: mm(36.0), h: row - mm(2.0) };
        paper::row(&mut face, cx, called, Rich::plain(speaker.name.as_str()), 19.0);
        let words = Rect { x: space.x + mm(60.0), w: space.w - mm(60.0), ..called };
        paper::row(&mut face, cx, words, Rich::plain(said(view, speaker.says)), 17.0);
    }
    face.art(drawing.svg(), space, String::new());
    Ok(cx.piece(SHEET, "", face))
}
