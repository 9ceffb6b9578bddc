//! Lays the card on the grid in every way that no mark rules out, and reads.

use super::{Cell, Corner, View, turned};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::number_words;
use crate::mechanics::slips::Slip;
use crate::readings::{Budget, Readings};

/// Most quarter turns that make a difference.
const QUARTERS: u8 = 4;

/// A way of laying the card on: its windows as they then lie, and how, in words.
type Laid = (Vec<Cell>, String);

/// Every way that no mark rules out.
fn ways(view: &View) -> Vec<Laid> {
    let side = view.side();
    let whole = view.windows.clone();
    match view.corner {
        Corner::Printed => vec![(whole, "black corner on black corner".into())],
        Corner::Cut => {
            let flipped = whole.iter().map(|(row, col)| (*col, *row)).collect();
            vec![(whole, "corner on corner".into()), (flipped, "corner on corner, face down".into())]
        }
        Corner::Plain => {
            let flipped: Vec<Cell> =
                whole.iter().map(|(row, col)| (*row, side.saturating_sub(1).saturating_sub(*col))).collect();
            let mut ways = Vec::new();
            for (cells, face) in [(whole, "face up"), (flipped, "face down")] {
                for quarters in 0..QUARTERS {
                    ways.push((after(&cells, quarters, side), format!("{face}, turned by {quarters} quarters")));
                }
            }
            ways
        }
    }
}

/// The windows after so many quarter turns to the right.
pub(super) fn after(cells: &[Cell], quarters: u8, side: u8) -> Vec<Cell> {
    let turn = |cell: &Cell| (0..quarters).fold(*cell, |cell, _| turned(cell, side));
    cells.iter().map(turn).collect()
}

/// What the windows leave, row by row, or column by column.
pub(super) fn shown(view: &View, cells: &[Cell], by_rows: bool) -> Vec<char> {
    let mut cells = cells.to_vec();
    cells.sort_unstable_by_key(|(row, col)| if by_rows { (*row, *col) } else { (*col, *row) });
    let symbol = |(row, col): &Cell| view.rows.get(usize::from(*row))?.chars().nth(usize::from(*col));
    cells.iter().filter_map(symbol).collect()
}

/// The symbols read in so many turns, each by a quarter in one direction.
fn series(view: &View, cells: &[Cell], turns: u8, rightwards: bool, by_rows: bool) -> Vec<char> {
    let quarters = |turn: u8| if rightwards { turn % QUARTERS } else { (QUARTERS - turn % QUARTERS) % QUARTERS };
    let turn = |turn: u8| shown(view, &after(cells, quarters(turn), view.side()), by_rows);
    (0..turns.min(QUARTERS)).flat_map(turn).collect()
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    for (cells, how) in ways(view) {
        if let Some(turns) = view.turns {
            number_words::add(&series(view, &cells, turns, true, true), &how, lock, budget, &mut all);
            continue;
        }
        for turns in 1..=QUARTERS {
            for (rightwards, way) in [(true, "to the right"), (false, "to the left")] {
                for (by_rows, order) in [(true, "row by row"), (false, "column by column")] {
                    let label = match turns {
                        1 => format!("{how}, {order}"),
                        _ => format!("{how}, {order}, laid {turns} times, turned {way}"),
                    };
                    let read = series(view, &cells, turns, rightwards, by_rows);
                    number_words::add(&read, &label, lock, budget, &mut all);
                }
            }
        }
    }
    if view.corner == Corner::Plain {
        all.remarks.push("nothing shows how the card lies on the square".into());
    }
    if view.turns.is_none() {
        all.remarks.push("nothing says in which order the windows are read".into());
    }
    all
}

/// The windows read down the columns, or the card laid on face down; where it is turned, all turns alike.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    let mut slips = Vec::new();
    let mut add = |cells: &[Cell], by_rows: bool, why: &'static str| {
        let read = series(view, cells, view.turns.unwrap_or(1), true, by_rows);
        let mut found = Readings::default();
        number_words::add(&read, "", lock, &mut Budget::new(limits::GRID_STEPS), &mut found);
        slips.extend(found.list.into_iter().map(|reading| (reading.answer, why)));
    };
    if view.turns.is_some() {
        add(&view.windows, false, "they read down the columns: say that one reads row by row, as in a book.");
        let side = view.side();
        let flipped: Vec<Cell> =
            view.windows.iter().map(|(row, col)| (*row, side.saturating_sub(1).saturating_sub(*col))).collect();
        add(&flipped, true, "the card lies face down: ask where its corner belongs.");
    }
    slips
}
