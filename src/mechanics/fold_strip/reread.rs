//! The strip read back from paper: what is inked where a bar would be, beside the folds.

use super::draw::GAP;
use super::figures::{BARS, Bar};
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
    // Folds run from the words to the lower edge.
    let folds = |shape: &&PrintedShape| {
        shape.dashed && shape.rect.h > strip.size.h * 0.35 && shape.rect.bottom() > strip.size.h * 0.98
    };
    let (_, folds) = ruled(strip.shapes.iter().filter(folds), Mm::new(0.5));
    if folds.is_empty() || !folds.len().is_multiple_of(3) {
        return Err(Trouble::new(format!("the strip has {} fold marks, not three to a figure", folds.len())));
    }
    // The bars' own extent: every figure reaches from the top to the foot with its uprights.
    let bars = strip.shapes.iter().filter(|shape| slot.holds(shape.rect) && inked_by(shape));
    let (top, foot) =
        bars.fold((slot.bottom(), slot.y), |(top, foot), bar| (top.min(bar.rect.y), foot.max(bar.rect.bottom())));
    if top >= foot {
        return Err(Trouble::new("the strip shows no figures"));
    }
    let figures = folds.chunks(3).filter_map(|three| {
        let (fold, back) = (*three.first()?, *three.last()?);
        let w = (back - fold) / (2.0 + GAP);
        let half = |x: Mm, left: bool| bars_of(strip, Rect { x, y: top, w, h: foot - top }, left);
        Some(Figure {
            left: half(fold - w, true),
            pleat: [half(fold, false), half(back - w, true)],
            right: half(back, false),
        })
    });
    Ok(View { figures: figures.collect() })
}

fn inked_by(shape: &PrintedShape) -> bool {
    shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= INK)
}

fn bars_of(strip: &Printed, half: Rect, left: bool) -> Vec<Bar> {
    // Near the cut only level bars pass; near the outer edge, between them, only uprights.
    let (cut, outer) = if left { (0.9, 0.06) } else { (0.1, 0.94) };
    let at = |x: f64, y: f64| -> Dot { (half.x + half.w * x, half.y + half.h * y) };
    let place = |bar: Bar| match bar {
        Bar::Top => at(cut, 0.02),
        Bar::Middle => at(cut, 0.5),
        Bar::Foot => at(cut, 0.98),
        Bar::Upper => at(outer, 0.28),
        Bar::Lower => at(outer, 0.72),
    };
    let inked = |bar: &Bar| strip.ground(place(*bar), usize::MAX).contrast(Colour::WHITE) >= INK;
    BARS.into_iter().filter(inked).collect()
}
