//! The strip with its fold marks, on the frame `sign`.

use super::figures::{Bar, Stroke};
use super::{Figure, STRIP, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::units::{Mm, Rect};

/// Height of the band that is folded away: two fingers' breadth of it cannot be held, less cannot be folded (common
/// practice, no source).
const BAND: f64 = 0.3;
/// Width of the widest cell.
const CELL: Mm = Mm::new(26.0);
/// Share of a cell's width that the figure leaves free at either side.
pub(super) const SIDE: f64 = 0.2;
/// Thickness of a bar, in parts of a half figure's height.
const THICK: f64 = 0.3;

pub(super) fn strip(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("sign")?;
    let mut face =
        Face::on(&frame, format!("A strip with fold marks and {} half figures. {}", view.figures.len(), texts::RULE));
    let slot = cx.slot(&frame, "sign", "letters")?;
    let title = cx.slot(&frame, "sign", "title")?;
    paper::words(&mut face, cx, title, Rich::plain(texts::RULE), 13.0);
    cx.draw_mark(&mut face, &frame)?;

    let slot = slot.inset(mm(0.5));
    let cell = figure_width(slot, view.figures.len());
    let width = cell * count(view.figures.len());
    let band = slot.h * BAND;
    let half = (slot.h - band) / 2.0;
    let left = slot.x + (slot.w - width) / 2.0;
    // Marks and figures are one drawing over the whole face: the folds run from edge to edge.
    let mut drawing = Drawing::new(frame.size);
    let (ink, line) = (cx.colour("ink"), cx.colour("line"));
    for edge in 0..=view.figures.len() {
        let x = left + cell * count(edge);
        drawing.line((x, slot.y), (x, slot.bottom()), Pen::line(line, mm(0.2)));
    }
    let (first, second) = (slot.y + half, slot.y + half + band);
    for (y, dashes) in [(first, mm(2.4)), (second, mm(2.4)), ((first + second) / 2.0, mm(0.5))] {
        drawing.line((Mm::ZERO, y), (frame.size.w, y), Pen::line(line, mm(0.3)).dashed(dashes, mm(1.4)));
    }
    for (index, figure) in view.figures.iter().enumerate() {
        let x = left + cell * count(index) + cell * SIDE;
        let w = cell * (1.0 - 2.0 * SIDE);
        let upper = Rect { x, y: slot.y, w, h: half };
        let middle = Rect { x, y: first, w, h: band };
        let lower = Rect { x, y: second, w, h: half };
        draw(&mut drawing, figure, [upper, middle, lower], Pen::fill(ink));
    }
    face.art(drawing.svg(), Rect::of(frame.size), "");
    Ok(cx.piece(STRIP, "strip to fold", face))
}

fn figure_width(slot: Rect, figures: usize) -> Mm {
    (slot.w / count(figures.max(1))).min(CELL)
}

#[expect(clippy::cast_precision_loss, reason = "a strip has at most a dozen figures")]
const fn count(figures: usize) -> f64 {
    figures as f64
}

fn draw(drawing: &mut Drawing, figure: &Figure, [upper, band, lower]: [Rect; 3], ink: Pen) {
    let thick = (upper.h * THICK).min(upper.w * THICK);
    for (half, bars, cut_below) in [(upper, &figure.upper, true), (lower, &figure.lower, false)] {
        for bar in bars {
            drawing.rect(place(*bar, half, thick, cut_below), Mm::ZERO, ink);
        }
    }
    for stroke in &figure.band {
        let (top, foot) = match stroke {
            Stroke::Left => (band.x, band.x),
            Stroke::Right => (band.right() - thick, band.right() - thick),
            Stroke::Falling => (band.x, band.right() - thick),
            Stroke::Rising => (band.right() - thick, band.x),
        };
        let (y, end) = (band.y, band.bottom());
        drawing.polygon(&[(top, y), (top + thick, y), (foot + thick, end), (foot, end)], ink);
    }
}

fn place(bar: Bar, half: Rect, thick: Mm, cut_below: bool) -> Rect {
    let level = |at_top: bool, h: Mm| Rect { h, y: if at_top { half.y } else { half.bottom() - h }, ..half };
    match bar {
        Bar::Outer => level(cut_below, thick),
        Bar::Cut => level(!cut_below, thick / 2.0),
        Bar::Left => Rect { w: thick, ..half },
        Bar::Right => Rect { x: half.right() - thick, w: thick, ..half },
    }
}
