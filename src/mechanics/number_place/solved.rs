//! The filled grid, for the host.

use super::View;
use crate::face::mm;
use crate::limits;
use crate::mechanics::paper::place_letter;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::{Panel, Solved, cell};
use crate::readings::Budget;
use crate::units::{Mm, Rect};

/// A cell takes the letter of its place beside its symbol.
const CELL: Mm = Mm::new(8.4);

/// What each cell holds, row by row; none where the grid has not one solution.
fn full(view: &View) -> Option<Vec<usize>> {
    let found = view.places()?.solutions(&view.givens(), 2, &mut Budget::new(limits::GRID_STEPS)).ok()?;
    let [full] = <[Vec<usize>; 1]>::try_from(found).ok()?;
    Some(full)
}

pub(super) fn solved(view: &View) -> Option<Solved> {
    let (places, givens, full) = (view.places()?, view.givens(), full(view)?);
    let (mut panel, side) = Panel::grid(places.size, places.size, CELL, (places.box_rows, places.box_cols));
    for (at, (value, given)) in full.iter().zip(&givens).enumerate() {
        let (row, col) = (at / places.size, at % places.size);
        let (rect, symbol) = (cell(side, row, col), view.symbols.get(*value)?.to_string());
        match view.marks.iter().position(|mark| *mark == (row, col)) {
            None => panel.write(rect, symbol, given.is_none()),
            Some(index) => {
                panel.framed(rect);
                let half = Rect { w: rect.w / 2.0, ..rect }.moved(mm(0.6), Mm::ZERO);
                panel.write(half, place_letter(index).to_string(), false);
                panel.write(half.moved(half.w - mm(1.0), Mm::ZERO), symbol, true);
            }
        }
    }
    let says = "Filled: in bold what guests find, in frames what they read.".to_owned();
    Some(Solved::Drawn { says, panels: vec![panel] })
}

/// The marked cells, row by row.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let (Some(places), Some(full)) = (view.places(), full(view)) else { return Vec::new() };
    let mut cells: Vec<usize> = view.marks.iter().map(|(row, col)| row * places.size + col).collect();
    cells.sort_unstable();
    let symbols = cells.iter().filter_map(|cell| view.symbols.get(*full.get(*cell)?)).collect();
    vec![(symbols, "they read the marked cells row by row: ask what the small letters are for.")]
}
