//! The strip with its fold marks, on the frame `sign`.

use super::figures::Bar;
use super::{STRIP, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::units::{Mm, Rect};

/// Gap in the middle of a pleat and between two figures, in widths of a half figure: the shapes on the open strip
/// must not touch.
pub(super) const GAP: f64 = 0.7;
/// Thickness of a bar, in widths of a half figure.
const THICK: f64 = 0.26;
/// Width of the widest half figure, in heights of the figure.
const WIDEST: f64 = 0.36;

pub(super) fn strip(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("sign")?;
    let alt = format!("A strip with fold marks, and half figures for {} digits. {}", view.figures.len(), texts::RULE);
    let mut face = Face::on(&frame, alt);
    let letters = cx.slot(&frame, "sign", "letters")?;
    let title = cx.slot(&frame, "sign", "title")?;
    // What the words need in large print is taken from the figures.
    let told = paper::told_height(cx, &Rich::plain(texts::RULE), title.w, title.h);
    let down = (told - title.h).max(Mm::ZERO).min(letters.h * 0.5);
    let title = Rect { h: title.h + down, ..title };
    let slot = Rect { y: letters.y + down, h: letters.h - down, ..letters };
    paper::words(&mut face, cx, title, Rich::plain(texts::RULE), 13.0);
    cx.draw_mark(&mut face, &frame)?;

    let slot = slot.inset(mm(0.5));
    // Four halves and a gap for each figure, and a gap between two.
    #[expect(clippy::cast_precision_loss, reason = "a strip has at most a handful of figures")]
    let figures = view.figures.len().max(1) as f64;
    let halves = figures * (4.0 + GAP) + (figures - 1.0) * GAP;
    let half = (slot.w / halves).min(slot.h * WIDEST);
    let mut x = slot.x + (slot.w - half * halves) / 2.0;
    // Marks and figures are one drawing over the whole face: the folds run from edge to edge.
    let mut drawing = Drawing::new(frame.size);
    let (ink, line) = (Pen::fill(cx.colour("ink")), cx.colour("line"));
    for figure in &view.figures {
        let [first, second] = &figure.pleat;
        let fold = x + half;
        let back = fold + half * (2.0 + GAP);
        for (at, dashes) in [(fold, mm(2.4)), ((fold + back) / 2.0, mm(0.5)), (back, mm(2.4))] {
            let pen = Pen::line(line, mm(0.3)).dashed(dashes, mm(1.4));
            // From edge to edge, but for the words.
            drawing.line((at, Mm::ZERO), (at, title.y), pen);
            drawing.line((at, title.bottom()), (at, frame.size.h), pen);
        }
        let place = |x: Mm| Rect { x, w: half, ..slot };
        for (bars, at, left) in
            [(&figure.left, x, true), (first, fold, false), (second, back - half, true), (&figure.right, back, false)]
        {
            for bar in bars {
                drawing.rect(bar_place(*bar, place(at), half * THICK, left), Mm::ZERO, ink);
            }
        }
        x = back + half * (1.0 + GAP);
    }
    face.art(drawing.svg(), Rect::of(frame.size), "");
    Ok(cx.piece(STRIP, "", face))
}

/// Where a bar stands in a left or a right half.
fn bar_place(bar: Bar, half: Rect, thick: Mm, left: bool) -> Rect {
    let middle = half.h / 2.0;
    let level = |y: Mm| Rect { y, h: thick, ..half };
    let x = if left { half.x } else { half.right() - thick };
    let upright = |y: Mm| Rect { x, y, w: thick, h: middle + thick / 2.0 };
    match bar {
        Bar::Top => level(half.y),
        Bar::Middle => level(half.y + middle - thick / 2.0),
        Bar::Foot => level(half.bottom() - thick),
        Bar::Upper => upright(half.y),
        Bar::Lower => upright(half.y + middle - thick / 2.0),
    }
}
