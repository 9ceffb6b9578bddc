//! The dominoes and their card, read back from paper: pips are counted on either side of the middle line.

use super::{CARD, PIECES, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, PrintedShape, apart, middle};
use crate::mechanics::front;
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// The least contrast at which a pip is seen (estimate; common practice, no source).
const SEEN: f64 = 1.5;
/// Ends of lines nearer than this meet.
const MEET: Mm = Mm::new(0.4);

pub(super) fn view(printed: &[Printed]) -> Hinted<View> {
    let card = front(printed, CARD)?;
    let mut view = View { card_text: String::new(), pieces: Vec::new(), first: None, arrows: false };
    let mut pointing: Vec<Option<bool>> = Vec::new();
    for side in printed.iter().filter(|side| side.part == PIECES && !side.back) {
        let halves = halves(side)?;
        let arrow = arrow(side, halves.below);
        // An arrow to the left stands on a piece that is held the other way round.
        view.pieces.push(if arrow == Some(false) { (halves.right, halves.left) } else { (halves.left, halves.right) });
        pointing.push(arrow);
        let marked = side.texts.iter().any(|text| text.text.contains("first"));
        if marked && view.first.replace(view.pieces.len() - 1).is_some() {
            return Err(Trouble::new("two dominoes are marked as the first"));
        }
    }
    view.arrows = pointing.iter().all(Option::is_some) && !pointing.is_empty();
    if !view.arrows && pointing.iter().any(Option::is_some) {
        return Err(Trouble::new("some dominoes have an arrow and some have none"));
    }
    if card.says(&view.order()) {
        Ok(view)
    } else {
        Err(Trouble::new("the card does not say how the dominoes are laid"))
    }
}

/// What a domino shows.
struct Halves {
    left: u8,
    right: u8,
    /// Where the strip below the halves begins.
    below: Mm,
}

fn halves(side: &Printed) -> Hinted<Halves> {
    let lines: Vec<(Dot, Dot)> = side.shapes.iter().filter_map(PrintedShape::segment).collect();
    let upright = |(a, b): &&(Dot, Dot)| (a.0 - b.0).get().abs() < 0.2 && apart(*a, *b) > side.size.h * 0.4;
    let level = |(a, b): &&(Dot, Dot)| (a.1 - b.1).get().abs() < 0.2 && apart(*a, *b) > side.size.w * 0.6;
    let (Some(divide), Some(floor)) = (lines.iter().find(upright), lines.iter().find(level)) else {
        return Err(Trouble::new(format!("the domino `{}` is not divided into halves", side.piece)));
    };
    let below = floor.0.1;
    let pip = |shape: &&PrintedShape| {
        let (w, h) = (shape.rect.w.get(), shape.rect.h.get());
        let round = w > 1.0 && w < side.size.w.get() * 0.15 && (w / h - 1.0).abs() < 0.1;
        round && shape.rect.bottom() < below && shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= SEEN)
    };
    let pips: Vec<Rect> = side.shapes.iter().filter(pip).map(|shape| shape.rect).collect();
    let count = |left: bool| {
        let there = pips.iter().filter(|rect| (middle(**rect).0 < divide.0.0) == left).count();
        u8::try_from(there).unwrap_or(u8::MAX)
    };
    Ok(Halves { left: count(true), right: count(false), below })
}

/// Whether an arrow in the strip points to the right; none where there is no arrow.
fn arrow(side: &Printed, below: Mm) -> Option<bool> {
    let lines: Vec<(Dot, Dot)> =
        side.shapes.iter().filter(|shape| shape.rect.y > below).filter_map(PrintedShape::segment).collect();
    let level = lines.iter().filter(|(a, b)| (a.1 - b.1).get().abs() < 0.1 && apart(*a, *b).get() > 5.0);
    level.into_iter().find_map(|(a, b)| {
        let (left, right) = if a.0 < b.0 { (*a, *b) } else { (*b, *a) };
        // A tip is where two slanting lines end.
        let tip = |at: Dot| {
            let slanting = lines.iter().filter(|(a, b)| (a.1 - b.1).get().abs() > 0.5);
            slanting.filter(|(a, b)| apart(*a, at) < MEET || apart(*b, at) < MEET).count() == 2
        };
        match (tip(left), tip(right)) {
            (false, true) => Some(true),
            (true, false) => Some(false),
            _ => None,
        }
    })
}
