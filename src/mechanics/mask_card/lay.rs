//! Chooses the windows and fills the grid.

use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{Cell, Setup, View, read, turned};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{any_symbol, symbols};
use crate::mechanics::{Job, Rng, number_words, signs};
use crate::readings::{Budget, Verdict};

/// Most windows, in hundredths of the cells, with which the card still holds together (common practice, no source).
const MOST_OPEN: usize = 45;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let digits = signs::alphabet(&answer)?.contains(&'0');
    let (least, most) = limits::MASK_SIDE;
    let Setup { side, turns, spell, corner, state_rule } = *setup;
    if !(least..=most).contains(&side) || !(1..=4).contains(&turns) {
        return Err(Trouble::new(format!("`side` is {side} and `turns` is {turns}"))
            .hint(format!("a square has {least} to {most} cells on a side, and a card is laid on 1 to 4 times")));
    }
    let spell = spell && digits;
    let wanted = if spell { number_words::spelled(&answer) } else { answer };
    let each = wanted.len().div_ceil(usize::from(turns));
    if wanted.len() % usize::from(turns) > 0 && !spell {
        return Err(Trouble::new(format!(
            "{} symbols cannot be shared out over {turns} turns of one card",
            wanted.len()
        ))
        .hint("let `turns` be a divisor of the answer's length, or set `turns` to 1"));
    }
    let cells = usize::from(side) * usize::from(side);
    // Windows turned about the middle of a square with an odd side would meet there.
    let room = cells - usize::from(side % 2);
    if each * 100 > cells * MOST_OPEN || each * usize::from(turns) > room {
        return Err(Trouble::new(format!("the card would have {each} windows, and would fall apart"))
            .hint("make `side` larger, raise `turns`, or take a shorter answer"));
    }
    let mut last = None;
    for start in 0..limits::MASK_STARTS {
        // Windows that touch make a weak card: they are taken only when nothing else was found.
        let apart = start < limits::MASK_STARTS / 2;
        let Some(windows) = windows(side, turns, each, apart, rng) else { continue };
        let mut grid: Vec<Vec<Option<char>>> = vec![vec![None; usize::from(side)]; usize::from(side)];
        let mut left = wanted.iter().copied();
        for turn in 0..turns {
            let mut laid: Vec<Cell> =
                windows.iter().map(|cell| (0..turn).fold(*cell, |c, _| turned(c, side))).collect();
            laid.sort_unstable();
            for (row, col) in laid {
                if let Some(cell) = grid.get_mut(usize::from(row)).and_then(|row| row.get_mut(usize::from(col))) {
                    *cell = left.next();
                }
            }
        }
        let mut fill = |cell: &Option<char>| {
            cell.unwrap_or_else(|| {
                if spell { char::from(rng.random_range(b'A'..=b'Z')) } else { any_symbol(job.lock, rng) }
            })
        };
        let rows = grid.iter().map(|row| row.iter().map(&mut fill).collect()).collect();
        let view = View { rows, windows, corner, turns: Some(turns).filter(|_| state_rule) };
        let one = read::readings(&view, job.lock, &mut Budget::default()).verdict(job.answer) == Verdict::One;
        if one && !open(&view, &wanted) {
            return Ok(view);
        }
        last = Some(view);
    }
    // A card that lies in many ways has several readings, however it is filled; that is for the author to hear.
    last.ok_or_else(|| Trouble::new("no windows were found for this card").hint("make `side` larger"))
}

/// Windows by chance: after each of the turns they lie on fresh cells; with `apart`, no two share an edge.
fn windows(side: u8, turns: u8, count: usize, apart: bool, rng: &mut Rng) -> Option<Vec<Cell>> {
    let mut cells: Vec<Cell> = (0..side).flat_map(|row| (0..side).map(move |col| (row, col))).collect();
    cells.shuffle(rng);
    let mut windows: Vec<Cell> = Vec::new();
    let mut used: Vec<Cell> = Vec::new();
    for cell in cells {
        if windows.len() == count {
            break;
        }
        let orbit: Vec<Cell> = (0..turns).map(|turn| (0..turn).fold(cell, |cell, _| turned(cell, side))).collect();
        let fresh = orbit
            .iter()
            .enumerate()
            .all(|(at, place)| !used.contains(place) && !orbit.iter().take(at).any(|other| other == place));
        let beside = |(row, col): &Cell| row.abs_diff(cell.0) + col.abs_diff(cell.1) == 1;
        if fresh && !(apart && windows.iter().any(beside)) {
            windows.push(cell);
            used.extend(orbit);
        }
    }
    windows.sort_unstable();
    (windows.len() == count).then_some(windows)
}

/// Whether what is wanted stands openly in a row or column of the grid.
fn open(view: &View, wanted: &[char]) -> bool {
    let wanted: String = wanted.iter().collect();
    let column = |at: usize| view.rows.iter().filter_map(|row| row.chars().nth(at)).collect::<String>();
    view.rows.iter().any(|row| row.contains(&wanted)) || (0..view.rows.len()).any(|at| column(at).contains(&wanted))
}
