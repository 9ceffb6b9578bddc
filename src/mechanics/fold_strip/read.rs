//! What a guest can take the strip to show: with every pleat folded, and open as it is found.

use super::figures::joined;
use super::{Figure, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.figures.len() > limits::FOLD_FIGURES {
        all.unproven = true;
        return all;
    }
    let folded: Vec<Vec<char>> = view.figures.iter().map(folded).collect();
    // On the open strip what is no digit is passed over.
    let open = view.figures.iter().flat_map(open).filter(|digits| !digits.is_empty()).collect();
    for (index, digits) in folded.iter().enumerate() {
        if digits.is_empty() {
            all.remarks.push(format!("figure {} is no digit when its pleat is folded", index + 1));
        }
    }
    for (way, shapes) in [("every pleat folded", folded), ("the strip open, before it is folded", open)] {
        let (mut marks, mut cues) = (Vec::new(), Vec::new());
        for (index, digits) in shapes.iter().enumerate() {
            let label = format!("figure {}", index + 1);
            let first = marks.len();
            marks.extend(digits.iter().map(|digit| Mark::new(format!("{label} as {digit}"), *digit)));
            cues.push(Cue { label, marks: (first..marks.len()).collect() });
        }
        if cues.is_empty() {
            continue;
        }
        let found = read(&marks, &Order::Cued(cues), lock, budget);
        for reading in found.list {
            all.add(lock, &reading.answer, format!("{way}: {}", reading.why));
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
    all
}

/// The digits that a figure can be taken for when its pleat is folded.
pub(super) fn folded(figure: &Figure) -> Vec<char> {
    joined(&figure.left, &figure.right)
}

/// The digits of the two shapes that a figure shows while the strip lies open: its left half beside what stands on
/// the pleat, and what stands on the pleat beside its right half.
pub(super) fn open(figure: &Figure) -> [Vec<char>; 2] {
    let [first, second] = &figure.pleat;
    [joined(&figure.left, first), joined(second, &figure.right)]
}
