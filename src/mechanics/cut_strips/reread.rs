//! The strips read back from paper: cell by cell, by the size of the smallest drawn cell.

use super::draw::cap;
use super::{CARD, STRIPS, View, letter};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, PrintedShape};
use crate::mechanics::front;
use crate::theme::Colour;
use crate::units::Mm;

/// Contrast with white from which a cell counts as ink.
const INK: f64 = 3.0;

pub(super) fn view(printed: &[Printed]) -> Hinted<View> {
    let sides: Vec<&Printed> = printed.iter().filter(|side| side.part == STRIPS && !side.back).collect();
    let arrows = match sides.iter().filter(|side| own(side).any(points_up)).count() {
        0 => false,
        count if count == sides.len() => true,
        count => return Err(Trouble::new(format!("{count} of {} strips carry an arrowhead", sides.len()))),
    };
    if arrows != front(printed, CARD)?.says("arrowhead") {
        return Err(Trouble::new("the card and the strips do not agree whether there are arrowheads"));
    }
    let cells = || sides.iter().flat_map(|side| own(side)).filter(|shape| inked(shape) && !points_up(shape));
    let least = |of: &dyn Fn(&PrintedShape) -> Mm| cells().map(of).reduce(Mm::min);
    let (Some(w), Some(h)) = (least(&|shape| shape.rect.w), least(&|shape| shape.rect.h)) else {
        return Err(Trouble::new("the strips show nothing"));
    };
    for (index, side) in sides.iter().enumerate() {
        // Hints call the strips by their letters.
        let wanted = letter(index).to_string();
        if !side.texts.iter().any(|text| text.text.trim() == wanted) {
            return Err(Trouble::new(format!("strip {} does not bear the letter {wanted}", index + 1)));
        }
    }
    let strips = sides.iter().map(|side| cells_of(side, w, h)).collect();
    let view = View { strips, arrows };
    match view.measures() {
        Some(_) => Ok(view),
        None => Err(Trouble::new("the strips are not all of one size, or hold no whole signs")),
    }
}

/// The shapes of the strip itself, without those of the lock's mark, which is a small picture of its own.
fn own(side: &Printed) -> impl Iterator<Item = &PrintedShape> {
    let whole = |art: usize| side.arts.get(art).is_some_and(|art| art.rect.w.get() > side.size.w.get() * 0.9);
    side.shapes.iter().filter(move |shape| whole(shape.art))
}

fn inked(shape: &PrintedShape) -> bool {
    shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= INK)
}

/// Whether a shape is an arrowhead that points up.
fn points_up(shape: &PrintedShape) -> bool {
    let [outline] = shape.contours.as_slice() else { return false };
    let mut heights: Vec<f64> = outline.points.iter().map(|point| point.1.get()).collect();
    heights.sort_by(f64::total_cmp);
    inked(shape) && matches!(heights.as_slice(), [top, a, b] if (b - a) * 10.0 < a - top)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a strip has a few dozen cells each way"
)]
fn cells_of(side: &Printed, w: Mm, h: Mm) -> Vec<String> {
    let count = |whole: Mm, part: Mm| (whole.get() / part.get().max(0.1)).round().clamp(0.0, 500.0) as usize;
    let (rows, all) = (count(side.size.h, h), count(side.size.w, w));
    // The picture is what both ends leave.
    let across = (1..all).find(|across| across + cap(*across) * 2 >= all).unwrap_or(all);
    let cap = cap(across);
    let ink = |row: usize, col: usize| {
        let at = (w * (col as f64 + 0.5), h * (row as f64 + 0.5));
        side.ground(at, usize::MAX).contrast(Colour::WHITE) >= INK
    };
    (0..rows).map(|row| (cap..cap + across).map(|col| if ink(row, col) { '#' } else { '.' }).collect()).collect()
}
