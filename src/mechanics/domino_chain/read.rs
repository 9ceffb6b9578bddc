use super::View;
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::Spent;
use crate::readings::{Budget, Readings};

/// The numbers at the joins of every row that uses all pieces; without a marked first piece, from every piece.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let count = view.pieces.len();
    if count > limits::DOMINOES {
        readings.unproven = true;
        return readings;
    }
    let starts: Vec<usize> = match view.first {
        Some(first) => vec![first],
        None => (0..count).collect(),
    };
    if view.first.is_none() {
        readings.remarks.push("no piece is marked as the first, so the row can be read from either end".into());
    }
    let mut rows = 0_u32;
    for start in starts {
        let Some((a, b)) = view.pieces.get(start).copied() else {
            readings.remarks.push("the piece that is marked as the first is not there".into());
            continue;
        };
        for open in if view.arrows || a == b { vec![b] } else { vec![a, b] } {
            let mut used = vec![false; count];
            used[start] = true;
            let done = walk(view, open, &mut used, &mut Vec::new(), budget, &mut |joins| {
                rows += 1;
                let answer: String = joins.iter().map(u8::to_string).collect();
                let why = format!("from the piece {a}|{b}, the pieces touch at {}", spaced(joins));
                readings.add(lock, &answer, why);
                !readings.more
            });
            readings.unproven |= done.is_err();
        }
    }
    if rows == 0 && !readings.unproven {
        readings.remarks.push("no row uses all pieces".into());
    }
    readings
}

fn spaced(joins: &[u8]) -> String {
    joins.iter().map(u8::to_string).collect::<Vec<_>>().join(", ")
}

/// The pieces that fit at an open half, with the half that is open then; of pieces that are alike only one.
pub(super) fn next(view: &View, open: u8, used: &[bool]) -> Vec<(usize, u8)> {
    let mut fitting: Vec<(usize, u8)> = Vec::new();
    for (at, (a, b)) in view.pieces.iter().copied().enumerate().filter(|(at, _)| !used[*at]) {
        let end = if a == open {
            b
        } else if b == open && !view.arrows {
            a
        } else {
            continue;
        };
        if fitting.iter().all(|(_, other)| *other != end) {
            fitting.push((at, end));
        }
    }
    fitting
}

fn walk(
    view: &View,
    open: u8,
    used: &mut Vec<bool>,
    joins: &mut Vec<u8>,
    budget: &mut Budget,
    found: &mut dyn FnMut(&[u8]) -> bool,
) -> Result<bool, Spent> {
    if used.iter().all(|used| *used) {
        return Ok(found(joins));
    }
    for (at, end) in next(view, open, used) {
        if !budget.step() {
            return Err(Spent);
        }
        used[at] = true;
        joins.push(open);
        let go_on = walk(view, end, used, joins, budget, found)?;
        joins.pop();
        used[at] = false;
        if !go_on {
            return Ok(false);
        }
    }
    Ok(true)
}
