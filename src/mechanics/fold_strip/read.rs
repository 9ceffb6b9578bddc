//! What a guest can take the strip to show: folded, and open as it is found.

use super::figures::{Bar, Stroke, joined, squat};
use super::{Figure, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// A way to take the strip: in words, and what it makes of a figure.
type Way = (&'static str, fn(&Figure) -> Vec<char>);

const WAYS: [Way; 4] = [
    ("folded", |figure| joined(&figure.upper, &figure.lower)),
    ("open, each figure as one tall digit", tall),
    ("open, the upper halves alone", upper),
    ("open, the lower halves alone", lower),
];

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.figures.len() > limits::FOLD_FIGURES {
        all.unproven = true;
        return all;
    }
    for (way, shows) in WAYS {
        let (mut marks, mut cues) = (Vec::new(), Vec::new());
        for (index, figure) in view.figures.iter().enumerate() {
            let first = marks.len();
            marks.extend(shows(figure).iter().map(|digit| Mark::new(format!("figure {}", index + 1), *digit)));
            cues.push(Cue { label: format!("figure {}", index + 1), marks: (first..marks.len()).collect() });
        }
        let found = read(&marks, &Order::Cued(cues), lock, budget);
        for reading in found.list {
            all.add(lock, &reading.answer, format!("{way}: {}", reading.why));
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
    for (index, figure) in view.figures.iter().enumerate() {
        if joined(&figure.upper, &figure.lower).is_empty() {
            all.remarks.push(format!("figure {} is no digit when it is folded", index + 1));
        }
        if !open(figure).is_empty() {
            all.remarks.push(format!("figure {} looks like a digit before it is folded", index + 1));
        }
    }
    all
}

/// The digits that can be read on a figure while the strip lies open.
pub(super) fn open(figure: &Figure) -> Vec<char> {
    let mut digits: Vec<char> = WAYS.iter().skip(1).flat_map(|(_, shows)| shows(figure)).collect();
    digits.sort_unstable();
    digits.dedup();
    digits
}

/// The whole figure as one tall digit: uprights must run through the band, and the bar in the middle may stand at
/// either edge of the band.
fn tall(figure: &Figure) -> Vec<char> {
    let Figure { upper, band, lower } = figure;
    if band.contains(&Stroke::Falling) || band.contains(&Stroke::Rising) {
        return Vec::new();
    }
    let runs = |stroke: Stroke| band.contains(&stroke);
    let (left, right) = (runs(Stroke::Left), runs(Stroke::Right));
    let agrees = |half: &[Bar]| half.contains(&Bar::Left) == left && half.contains(&Bar::Right) == right;
    // Where the middle bar stands above the band, the band belongs to the lower half, and the other way round.
    let above = agrees(lower) && !lower.contains(&Bar::Cut);
    let below = agrees(upper) && !upper.contains(&Bar::Cut);
    if above || below { joined(upper, lower) } else { Vec::new() }
}

/// The upper half as a low digit; not where a stroke of the band touches it.
fn upper(figure: &Figure) -> Vec<char> {
    let touched = [(Stroke::Left, 0), (Stroke::Falling, 0), (Stroke::Right, 1), (Stroke::Rising, 1)];
    alone(&figure.upper, &figure.band, touched, Bar::Outer)
}

fn lower(figure: &Figure) -> Vec<char> {
    let touched = [(Stroke::Left, 0), (Stroke::Rising, 0), (Stroke::Right, 1), (Stroke::Falling, 1)];
    alone(&figure.lower, &figure.band, touched, Bar::Cut)
}

/// `corners` says at which end of the cut, left 0 or right 1, each stroke of the band touches this half.
fn alone(half: &[Bar], band: &[Stroke], corners: [(Stroke, usize); 4], level: Bar) -> Vec<char> {
    let has = |bar: Bar| half.contains(&bar);
    let inked = [has(Bar::Left) || has(Bar::Cut), has(Bar::Right) || has(Bar::Cut)];
    let touches = |(stroke, corner): &(Stroke, usize)| band.contains(stroke) && inked.get(*corner) == Some(&true);
    if corners.iter().any(touches) {
        return Vec::new();
    }
    squat(half, level).into_iter().collect()
}
