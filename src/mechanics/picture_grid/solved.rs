//! The filled panels, for the host.

use super::{Panel as Grid, View};
use crate::limits;
use crate::mechanics::solved::{Mark, Panel, Solved, Tone, cell};
use crate::readings::Budget;
use crate::units::Mm;

/// Cells hold no words.
const CELL: Mm = Mm::new(3.2);

pub(super) fn solved(view: &View) -> Option<Solved> {
    let panels: Option<Vec<Panel>> =
        view.panels.iter().zip(1..).map(|(grid, number)| filled(grid, format!("Panel {number}"))).collect();
    let says = "Filled, the panels look like this.".to_owned();
    Some(Solved::Drawn { says, panels: panels.filter(|panels| !panels.is_empty())? })
}

/// The only picture that the runs of a panel allow.
fn filled(grid: &Grid, name: String) -> Option<Panel> {
    let runs = grid.runs();
    if runs.rows.len() > limits::PANEL_CELLS || runs.cols.len() > limits::PANEL_CELLS {
        return None;
    }
    let mut pictures: Vec<Vec<Vec<bool>>> = Vec::new();
    runs.each_from(grid.start(), &mut Budget::new(limits::GRID_STEPS), &mut |picture| {
        pictures.push(picture.to_vec());
        pictures.len() < 2
    })
    .ok()?;
    let [only] = pictures.as_slice() else { return None };
    let (mut panel, side) = Panel::grid(runs.rows.len(), runs.cols.len(), CELL, (0, 0));
    panel.name = name;
    for (row, line) in only.iter().enumerate() {
        for col in line.iter().enumerate().filter_map(|(col, ink)| ink.then_some(col)) {
            panel.marks.push(Mark::Area { rect: cell(side, row, col), tone: Tone::Ink, edge: None });
        }
    }
    Some(panel)
}
