//! The words where they stand, for the host.

use std::collections::BTreeSet;

use super::View;
use crate::face::mm;
use crate::limits;
use crate::mechanics::solved::{CELL, Panel, Solved, Tone, cell, middle};
use crate::readings::occurrences::placements;

pub(super) fn solved(view: &View) -> Option<Solved> {
    let cols = view.rows.iter().map(Vec::len).max()?;
    if view.rows.len() > limits::SEARCH_SIDE || cols > limits::SEARCH_SIDE || view.words.len() > limits::SEARCH_WORDS {
        return None;
    }
    let grid = view.grid();
    let (mut panel, side) = Panel::grid(view.rows.len(), cols, CELL, (view.rows.len(), cols));
    // Cells are told apart by their letters: lines between them would be taken for those through words.
    panel.marks.clear();
    let mut covered: BTreeSet<(usize, usize)> = BTreeSet::new();
    for word in &view.words {
        let letters: Vec<char> = word.chars().collect();
        let found = placements(&grid, &letters);
        let [only] = found.as_slice() else { return None };
        let (first, last) = (only.cells.first()?, only.cells.last()?);
        panel.line(vec![middle(side, first.0, first.1), middle(side, last.0, last.1)], Tone::Faint, mm(0.9));
        covered.extend(only.cells.iter().copied());
    }
    for (row, line) in view.rows.iter().enumerate() {
        for (col, letter) in line.iter().enumerate().filter_map(|(col, letter)| letter.map(|letter| (col, letter))) {
            let (rect, left) = (cell(side, row, col), !covered.contains(&(row, col)));
            if left {
                panel.framed(rect);
            }
            panel.write(rect, letter.to_string(), left);
        }
    }
    let says = "Lines run through the words that guests find. The letters in frames are left.".to_owned();
    Some(Solved::Drawn { says, panels: vec![panel] })
}
