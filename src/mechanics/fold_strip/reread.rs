//! The strip read back from paper: what is inked where a bar or a stroke would be.

use super::draw::SIDE;
use super::figures::{BARS, Bar, STROKES, Stroke};
use super::{Figure, STRIP, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, PrintedShape, ruled};
use crate::mechanics::{Dressing, front};
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// Contrast with white from which a place counts as inked.
const INK: f64 = 3.0;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let strip = front(printed, STRIP)?;
    if !strip.says(texts::RULE) {
        return Err(Trouble::new("the strip does not say how it is folded and read"));
    }
    let slot = cx.slot_on(strip, "sign", "letters")?;
    // Folds run from edge to edge; the lines between figures stand in the slot.
    let apart = Mm::new(0.5);
    let from_edge = |shape: &&PrintedShape| shape.dashed && shape.rect.w > strip.size.w * 0.95;
    let (folds, _) = ruled(strip.shapes.iter().filter(from_edge), apart);
    let (_, edges) = ruled(strip.shapes.iter().filter(|shape| slot.holds(shape.rect) && !shape.dashed), apart);
    let [first, _, second] = folds.as_slice() else {
        return Err(Trouble::new(format!("the strip has {} fold marks, not three", folds.len())));
    };
    let upright = |shape: &&PrintedShape| {
        slot.holds(shape.rect) && shape.segment().is_some() && shape.rect.h > slot.h * 0.5 && !shape.dashed
    };
    let Some(tall) = strip.shapes.iter().find(upright).map(|shape| shape.rect) else {
        return Err(Trouble::new("no lines stand between the figures of the strip"));
    };
    let figures = edges.windows(2).filter_map(|pair| {
        let (left, right) = (*pair.first()?, *pair.last()?);
        let side = (right - left) * SIDE;
        let x = left + side;
        let across = Rect { x, y: tall.y, w: right - side - x, h: *first - tall.y };
        let band = Rect { y: *first, h: *second - *first, ..across };
        let lower = Rect { y: *second, h: tall.bottom() - *second, ..across };
        Some(Figure {
            upper: bars(strip, across, true),
            band: STROKES.into_iter().filter(|stroke| stroked(strip, band, *stroke)).collect(),
            lower: bars(strip, lower, false),
        })
    });
    Ok(View { figures: figures.collect() })
}

fn inked(strip: &Printed, at: Dot) -> bool {
    strip.ground(at, usize::MAX).contrast(Colour::WHITE) >= INK
}

/// A place in a rectangle, in parts of its sides.
fn at(rect: Rect, x: f64, y: f64) -> Dot {
    (rect.x + rect.w * x, rect.y + rect.h * y)
}

fn bars(strip: &Printed, half: Rect, cut_below: bool) -> Vec<Bar> {
    let flip = |y: f64| if cut_below { y } else { 1.0 - y };
    let place = |bar: Bar| match bar {
        Bar::Outer => at(half, 0.5, flip(0.04)),
        Bar::Cut => at(half, 0.5, flip(0.97)),
        Bar::Left => at(half, 0.04, 0.5),
        Bar::Right => at(half, 0.96, 0.5),
    };
    BARS.into_iter().filter(|bar| inked(strip, place(*bar))).collect()
}

/// A stroke is there when all along it there is ink.
fn stroked(strip: &Printed, band: Rect, stroke: Stroke) -> bool {
    [0.1, 0.3, 0.7, 0.9].into_iter().all(|y| {
        // The middle of a stroke stands half its thickness, about a tenth of the width, off the sides.
        let (near, far) = (0.06, 0.94);
        let x = match stroke {
            Stroke::Left => near,
            Stroke::Right => far,
            Stroke::Falling => near + (far - near) * y,
            Stroke::Rising => far - (far - near) * y,
        };
        inked(strip, at(band, x, y))
    })
}
