//! What the windows leave, for the host.

use super::{View, read};
use crate::mechanics::solved::{CELL, Panel, Solved, cell};

pub(super) fn solved(view: &View) -> Option<Solved> {
    let side = usize::from(view.side());
    if side == 0 || view.rows.iter().any(|row| row.chars().count() != side) {
        return None;
    }
    let turns = view.turns.unwrap_or(1);
    let panel = |turn: u8| {
        let windows = read::after(&view.windows, turn, view.side());
        let (mut panel, unit) = Panel::grid(side, side, CELL, (side, side));
        if turns > 1 {
            panel.name = format!("Laid on the {} time", NTH.get(usize::from(turn)).copied().unwrap_or("next"));
        }
        for (row, (line, number)) in view.rows.iter().zip(0_u8..).enumerate() {
            for (col, (symbol, place)) in line.chars().zip(0_u8..).enumerate() {
                let (rect, shown) = (cell(unit, row, col), windows.contains(&(number, place)));
                if shown {
                    panel.framed(rect);
                }
                panel.write(rect, symbol.to_string(), shown);
            }
        }
        panel
    };
    let says = "In frames what the windows leave.".to_owned();
    Some(Solved::Drawn { says, panels: (0..turns.min(4)).map(panel).collect() })
}

/// How often the card was laid on, in words.
const NTH: [&str; 4] = ["first", "second", "third", "fourth"];
