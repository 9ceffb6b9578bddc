//! The row of pieces, for the host.

use super::{View, read};
use crate::face::mm;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::{Panel, Solved, Tone, WIDEST};
use crate::readings::Budget;
use crate::units::{Mm, Rect, Size};

/// A half with its number of dots.
const HALF: Mm = Mm::new(8.0);

#[expect(clippy::cast_precision_loss, reason = "a dozen pieces")]
pub(super) fn solved(view: &View) -> Option<Solved> {
    let row = row(view)?;
    let half = HALF.min(WIDEST / (2 * row.len()).max(1) as f64);
    let mut panel = Panel::new("", Size { w: half * (2 * row.len()) as f64, h: HALF });
    for (index, (left, right)) in row.iter().enumerate() {
        for (side, pips) in [(0, left), (1, right)] {
            let x = half * (2 * index + side) as f64;
            let rect = Rect { x, y: Mm::ZERO, w: half, h: HALF };
            let outer = (index == 0 && side == 0) || (index + 1 == row.len() && side == 1);
            panel.write(rect, pips.to_string(), !outer);
        }
        let (from, to) = (half * (2 * index) as f64, half * (2 * index + 2) as f64);
        let edge = vec![(from, Mm::ZERO), (to, Mm::ZERO), (to, HALF), (from, HALF), (from, Mm::ZERO)];
        panel.line(edge, Tone::Ink, mm(0.4));
    }
    let says = "The row, in numbers of dots. In bold where two pieces touch: read each such number once.".to_owned();
    Some(Solved::Drawn { says, panels: vec![panel] })
}

/// The only row that takes all pieces, each as it lies.
fn row(view: &View) -> Option<Vec<(u8, u8)>> {
    if view.pieces.len() > limits::DOMINOES {
        return None;
    }
    let first = view.first?;
    let (a, b) = view.pieces.get(first).copied()?;
    let mut found = Vec::new();
    let mut budget = Budget::new(limits::GRID_STEPS);
    for (left, right) in if view.arrows || a == b { vec![(a, b)] } else { vec![(a, b), (b, a)] } {
        let mut used = vec![false; view.pieces.len()];
        *used.get_mut(first)? = true;
        extend(view, &mut vec![(left, right)], &mut used, &mut budget, &mut found)?;
    }
    let [only] = <[Vec<(u8, u8)>; 1]>::try_from(found).ok()?;
    Some(only)
}

/// Finds the rows that begin like this; none when it takes too many steps.
fn extend(
    view: &View,
    row: &mut Vec<(u8, u8)>,
    used: &mut Vec<bool>,
    budget: &mut Budget,
    found: &mut Vec<Vec<(u8, u8)>>,
) -> Option<()> {
    if used.iter().all(|used| *used) {
        found.push(row.clone());
        return Some(());
    }
    let open = row.last()?.1;
    for (at, end) in read::next(view, open, used) {
        if !budget.step() {
            return None;
        }
        *used.get_mut(at)? = true;
        row.push((open, end));
        extend(view, row, used, budget, found)?;
        row.pop();
        *used.get_mut(at)? = false;
    }
    Some(())
}

/// The numbers read from the free end of the first piece, which touches nothing.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let Some(row) = row(view) else { return Vec::new() };
    let lefts = row.iter().take(row.len().saturating_sub(1)).map(|(left, _)| left.to_string()).collect();
    let rights = row.iter().skip(1).map(|(_, right)| right.to_string()).collect();
    let why = "they counted a free end: only where two pieces touch is a number.";
    vec![(lefts, why), (rights, why)]
}
