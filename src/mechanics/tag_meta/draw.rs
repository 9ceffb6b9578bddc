//! The tags and the hasp card.

use super::{CARD, Hole, TAGS, Tag, View, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Art, Face, Layer, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// The size of a mark on the hasp card, and of a hole with its number.
const MARK: Mm = Mm::new(11.0);
const HOLE: Mm = Mm::new(9.0);
/// What of a tag stands out when it is folded.
const TAB: Mm = Mm::new(9.0);
/// The most room in points that letters on a tag take.
const LETTERS: f64 = 48.0;

/// A tag for each lock. It bears the mark of the lock that it hangs on, and not that of the puzzle's own lock.
pub(super) fn tags(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = Vec::new();
    for (index, tag) in view.tags.iter().enumerate() {
        let piece = cx.piece(TAGS, &format!("for {}", tag.lock), face(tag, cx)?);
        pieces.push(Piece { id: format!("{}-tag-{}", cx.puzzle, index + 1), ..piece });
    }
    Ok(pieces)
}

/// How far below the upper edge of its paper the print of a tag of this height begins.
pub(super) fn printed_at(h: Mm) -> Mm {
    h + TAB
}

fn face(tag: &Tag, cx: &Dressing<'_>) -> Hinted<Face> {
    let frame = cx.frame("tag")?;
    let mut face = Face::on(&frame, "A folded tag, to be opened with its lock");
    let title = tag.number.map_or_else(|| cx.name("tag-title", "").to_owned(), |number| format!("Hole {number}"));
    cx.title(&mut face, &frame, "tag", &title)?;
    let body = cx.slot(&frame, "tag", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let run = TextRun::new(body, Role::Code, Rich::plain(tag.text.clone()), Pt::new(LETTERS), ink, from);
    face.text(run.at_least(Pt::new(20.0)));
    if !tag.mark.is_empty() {
        let slot = cx.slot(&frame, "tag", "mark")?;
        face.art(cx.symbol(&tag.mark)?, slot, format!("mark: {}", tag.mark));
    }
    // A blank half above, which is folded down over the print: so the hole lies beside the fold, where a punch reaches
    // through both. What of it is longer stands out below the print then, and tells on which lock the closed tag hangs; it
    // stands on its head on the sheet, since it is turned with the half.
    let (w, down) = (face.size.w, printed_at(face.size.h));
    let mut face = face.lowered(down);
    let tab = Rect { x: Mm::ZERO, y: Mm::ZERO, w, h: TAB }.inset(mm(1.2));
    if tag.mark.is_empty() {
        let from = cx.at(PuzzleField::Setup);
        let run = TextRun::new(tab, Role::Text, Rich::plain(tag.lock.clone()), Pt::new(10.0), ink, from);
        face.text(run.turned(180.0));
    } else {
        let rect = Rect { x: tab.x + (tab.w - tab.h) / 2.0, w: tab.h, ..tab };
        let alt = format!("mark: {}", tag.mark);
        face.layers.push(Layer::Art(Art { svg: cx.symbol(&tag.mark)?, rect, turn: 180.0, alt }));
    }
    Ok(face)
}

#[expect(clippy::cast_precision_loss, reason = "a handful of holes")]
pub(super) fn hasp_card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("landscape")?;
    let mut face = Face::on(&frame, "A card with the numbered holes of the hasp, and the marks of the locks");
    cx.title(&mut face, &frame, "landscape", cx.name("hasp-title", "On the hasp"))?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let rule = if view.rule { texts::RULE } else { "" };
    let foot = Rect { y: body.y + body.h * 0.66, h: body.h * 0.34, ..body };
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(TextRun::new(foot, Role::Text, Rich::plain(rule), Pt::new(11.0), ink, from.clone()));
    let row = Rect { h: body.h * 0.64, ..body };
    // The hasp's plate behind the holes, and the hinge at its left.
    let (plate, wide) = (mm(11.0), row.w / view.holes.len().max(1) as f64);
    let mut drawing = Drawing::new(Size { w: row.w, h: row.h });
    drawing.rect(Rect { x: Mm::ZERO, y: Mm::ZERO, w: row.w, h: plate }, mm(2.0), Pen::fill(cx.colour("soft")));
    drawing.rect(Rect { x: Mm::ZERO, y: Mm::ZERO, w: mm(2.4), h: plate }, mm(0.8), Pen::fill(cx.colour("line")));
    let middle = |index: usize| wide * (index as f64 + 0.5);
    for (index, _) in view.holes.iter().enumerate() {
        let pen = Pen { fill: Some(cx.colour("paper")), ..Pen::line(ink, mm(0.4)) };
        drawing.circle(middle(index), plate / 2.0, HOLE / 2.0, pen);
    }
    face.art(drawing.svg(), row, "");
    for (index, Hole { number, mark }) in view.holes.iter().enumerate() {
        let x = row.x + middle(index);
        let hole = Rect { x: x - HOLE / 2.0, y: row.y + (plate - HOLE) / 2.0, w: HOLE, h: HOLE };
        let run = TextRun::new(
            hole.inset(mm(1.2)),
            Role::Code,
            Rich::plain(number.to_string()),
            Pt::new(15.0),
            ink,
            from.clone(),
        );
        face.text(run);
        if !mark.is_empty() {
            let side = MARK.min(row.h - plate - mm(1.5)).min(wide - mm(1.0));
            let at = Rect { x: x - side / 2.0, y: row.y + plate + mm(1.0), w: side, h: side };
            face.art(cx.symbol(mark)?, at, format!("mark: {mark}"));
        }
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(CARD, "", face))
}
