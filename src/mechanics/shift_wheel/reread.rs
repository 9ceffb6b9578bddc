//! The discs and the card, read back from paper.

use super::{MESSAGE, Ring, View, WHEEL};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, apart, middle};
use crate::mechanics::{Dressing, front};
use crate::units::Mm;

/// How far a symbol may stand from its place on the ring, in parts of the distance of two neighbours.
const OFF_PLACE: f64 = 0.25;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let mut discs: Vec<&Printed> = printed.iter().filter(|side| side.part == WHEEL && !side.back).collect();
    discs.sort_by(|a, b| a.size.w.get().total_cmp(&b.size.w.get()));
    let [inner, outer] = discs.as_slice() else {
        return Err(Trouble::new(format!("{} discs are printed, not two", discs.len())));
    };
    let ring = ring(inner, Some(start(inner)?))?;
    let other = self::ring(outer, None)?;
    let turned = |by: usize| other.iter().cycle().skip(by).take(other.len()).eq(ring.iter());
    if other.len() != ring.len() || !(0..ring.len()).any(turned) {
        return Err(Trouble::new("the two discs do not carry the same ring"));
    }
    let card = front(printed, MESSAGE)?;
    let mut view = View { ring, message: Vec::new(), setting: None, from: None, text: String::new() };
    for block in card.blocks_in(cx.slot_on(card, "landscape", "body")?) {
        let text = block.text();
        let symbols: Option<Vec<char>> = text.split(' ').map(single).collect();
        match symbols {
            Some(symbols) if view.message.is_empty() => view.message = symbols,
            Some(_) => return Err(Trouble::new("the card has two messages")),
            None => rules(&text, &mut view),
        }
    }
    Ok(view)
}

/// The rules that a text of the card states, if it states any.
fn rules(text: &str, view: &mut View) {
    if let Some((_, rest)) = text.split_once("Set the start mark to ") {
        view.setting = rest.split(' ').next().and_then(single);
    }
    if text.contains("Find each sign on the outer ring,") {
        view.from = Some(Ring::Outer);
    } else if text.contains("Find each sign on the inner ring,") {
        view.from = Some(Ring::Inner);
    }
    if view.setting.is_none() && view.from.is_none() {
        text.clone_into(&mut view.text);
    }
}

fn single(word: &str) -> Option<char> {
    let mut chars = word.chars();
    chars.next().filter(|_| chars.next().is_none())
}

fn hub(disc: &Printed) -> Dot {
    (disc.size.w / 2.0, disc.size.h / 2.0)
}

/// The way from the hub to a point, as a part of a full turn clockwise from straight up.
fn bearing(disc: &Printed, at: Dot) -> f64 {
    let hub = hub(disc);
    let (x, y) = ((at.0 - hub.0).get(), (hub.1 - at.1).get());
    (x.atan2(y) / std::f64::consts::TAU).rem_euclid(1.0)
}

/// Where the start mark points: the one filled triangle at the rim.
fn start(disc: &Printed) -> Hinted<f64> {
    let rim = disc.size.w * 0.4;
    let marks: Vec<f64> = disc
        .shapes
        .iter()
        .filter(|shape| shape.fill.is_some_and(|fill| fill.contrast(crate::theme::Colour::WHITE) > 2.0))
        .filter(|shape| matches!(shape.contours.as_slice(), [line] if line.points.len() == 3))
        .map(|shape| middle(shape.rect))
        .filter(|at| apart(*at, hub(disc)) > rim)
        .map(|at| bearing(disc, at))
        .collect();
    match marks.as_slice() {
        [mark] => Ok(*mark),
        _ => Err(Trouble::new(format!("the smaller disc has {} start marks, not one", marks.len()))),
    }
}

/// The symbols of a disc clockwise, from the start mark if there is one; each must stand upright on its own place.
#[expect(clippy::cast_precision_loss, reason = "a ring has at most thirty symbols")]
fn ring(disc: &Printed, start: Option<f64>) -> Hinted<Vec<char>> {
    let mut symbols: Vec<(f64, char)> = Vec::new();
    let mut far: Option<Mm> = None;
    for text in &disc.texts {
        let Some(symbol) = single(text.text.trim()) else {
            return Err(Trouble::new(format!("a disc has \"{}\" on its ring", text.text)));
        };
        let at = middle(text.rect);
        let from_hub = apart(at, hub(disc));
        if (from_hub - *far.get_or_insert(from_hub)).get().abs() > text.size.to_mm().get() {
            return Err(Trouble::new(format!("{symbol} does not stand on its disc's ring")));
        }
        symbols.push((bearing(disc, at), symbol));
    }
    let first = match start {
        Some(start) => start,
        None => symbols.first().map_or(0.0, |(at, _)| *at),
    };
    let count = symbols.len().max(1) as f64;
    // Half a place back, so that the symbol at the mark itself is the first on either side of it.
    let place = |at: f64| ((at - first) * count + 0.5).rem_euclid(count) - 0.5;
    let mut placed: Vec<(f64, char)> = symbols.into_iter().map(|(at, symbol)| (place(at), symbol)).collect();
    placed.sort_by(|a, b| a.0.total_cmp(&b.0));
    for (index, (place, symbol)) in placed.iter().enumerate() {
        if (place - index as f64).abs() > OFF_PLACE {
            return Err(Trouble::new(format!("{symbol} does not stand on a place of its disc's ring")));
        }
    }
    Ok(placed.into_iter().map(|(_, symbol)| symbol).collect())
}
