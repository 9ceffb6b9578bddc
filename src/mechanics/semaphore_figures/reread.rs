//! The figures and their key, read back from paper: where the two arms point.

use super::{CARD, KEY_CARD, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, PrintedShape, apart};
use crate::mechanics::codes::semaphore;
use crate::mechanics::{Dressing, signs};
use crate::theme::Colour;

/// Contrast with white from which an arm counts as seen.
const INK: f64 = 3.0;
/// How far an arm may be off its eighth of a turn, in degrees.
const OFF: f64 = 8.0;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let row = signs::row_by(printed, CARD, cx, &figure)?;
    let mut key = signs::chart_by(printed, KEY_CARD, cx, &figure)?;
    // The sign before numerals stands on the key by a sign of its own.
    key.retain(|entry| entry.symbol != '#');
    let says = |words: &str| row.text.contains(words);
    if row.signs.first().is_some_and(|sign| sign == semaphore::NUMERALS) != says("digits follow") {
        return Err(Trouble::new("the card does not say what its first figure stands for"));
    }
    Ok(View {
        text: String::new(),
        say_front: says("from the front"),
        say_order: says("from left to right"),
        figures: row.signs,
        key,
    })
}

/// The two arms: the two longest straight lines that begin at one point.
fn figure(shapes: &[&PrintedShape]) -> Option<String> {
    let seen = |shape: &&&PrintedShape| shape.stroke.is_some_and(|(ink, _)| ink.contrast(Colour::WHITE) >= INK);
    let mut lines: Vec<(Dot, Dot)> = shapes.iter().filter(seen).filter_map(|shape| shape.segment()).collect();
    lines.sort_by(|a, b| apart(b.0, b.1).get().total_cmp(&apart(a.0, a.1).get()));
    let [first, second, ..] = lines.as_slice() else { return None };
    if apart(first.0, second.0).get() > apart(first.0, first.1).get() * 0.05 {
        return None;
    }
    let (a, b) = (points(*first)?, points(*second)?);
    Some(format!("{}-{}", a.min(b), a.max(b)))
}

/// Where an arm points: degrees clockwise from straight down, in eighths of a turn.
fn points((from, to): (Dot, Dot)) -> Option<u16> {
    let degrees = (from.0 - to.0).get().atan2((to.1 - from.1).get()).to_degrees().rem_euclid(360.0);
    (0_u16..=8).map(|eighth| eighth * 45).find(|near| (degrees - f64::from(*near)).abs() < OFF).map(|near| near % 360)
}
