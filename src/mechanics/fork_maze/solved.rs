//! The way through the maze, for the host.

use super::{Floor, View};
use crate::face::mm;
use crate::mechanics::pictures::word;
use crate::mechanics::solved::{HIGHEST, Mark, Panel, Solved, Tone, WIDEST, cell, middle};
use crate::units::{Mm, Size};

/// Cells as wide as this take a letter or digit beside the way.
const CELL: Mm = Mm::new(5.2);
const WALL: Mm = Mm::new(0.4);
const WAY: Mm = Mm::new(1.0);

#[expect(clippy::cast_precision_loss, reason = "cells of a maze on a sheet")]
pub(super) fn solved(view: &View) -> Option<Solved> {
    // With holes in the wall guests may go another way.
    if !view.whole() || !view.gates.is_empty() {
        return None;
    }
    let way = view.way();
    if way.is_empty() {
        return None;
    }
    let side = CELL.min(WIDEST / view.cols as f64).min(HIGHEST / view.rows as f64);
    let mut panel = Panel::new("", Size { w: side * view.cols as f64, h: side * view.rows as f64 });
    let at = |place: usize| (place / view.cols, place % view.cols);
    walls(view, side, &mut panel);
    panel.line(way.iter().map(|place| middle(side, at(*place).0, at(*place).1)).collect(), Tone::Found, WAY);
    for (place, edge) in [(view.start.0, None), (view.goal.0, Some(mm(0.8)))] {
        let (row, col) = at(place);
        panel.marks.push(Mark::Circle { at: middle(side, row, col), r: side * 0.3, tone: Tone::Found, edge });
    }
    let mut noted = String::new();
    match &view.floor {
        Floor::Symbols(list) => {
            let mut list = list.clone();
            list.sort_unstable();
            for (place, symbol) in list {
                let on_way = way.contains(&place);
                let rect = cell(side, at(place).0, at(place).1);
                if on_way {
                    panel.marks.push(Mark::Area { rect: rect.inset(mm(0.6)), tone: Tone::Ground, edge: None });
                    panel.framed(rect);
                }
                panel.write(rect, symbol.to_string(), on_way);
            }
            noted.push_str("In frames what lies on it.");
        }
        Floor::Waymarks(picture, list) => {
            for place in list.iter().filter(|place| way.contains(place)) {
                panel.framed(cell(side, at(*place).0, at(*place).1));
            }
            noted = format!("In frames where a {} lies on it.", word(picture));
        }
    }
    let (start, goal) = (word(&view.start.1), word(&view.goal.1));
    let says = format!("The way from the {start} (the dot) to the {goal} (the ring). {noted}");
    Some(Solved::Drawn { says, panels: vec![panel] })
}

/// The walls between cells without a passage, and round the outside.
#[expect(clippy::cast_precision_loss, reason = "cells of a maze on a sheet")]
fn walls(view: &View, side: Mm, panel: &mut Panel) {
    let Size { w, h } = panel.size;
    let outside = vec![(Mm::ZERO, Mm::ZERO), (w, Mm::ZERO), (w, h), (Mm::ZERO, h), (Mm::ZERO, Mm::ZERO)];
    panel.line(outside, Tone::Ink, WALL);
    let net = view.net();
    for row in 0..view.rows {
        for col in 0..view.cols {
            let place = row * view.cols + col;
            let (x, y) = (side * (col + 1) as f64, side * (row + 1) as f64);
            if col + 1 < view.cols && !net.linked(place, place + 1) {
                panel.line(vec![(x, y - side), (x, y)], Tone::Ink, WALL);
            }
            if row + 1 < view.rows && !net.linked(place, place + view.cols) {
                panel.line(vec![(x - side, y), (x, y)], Tone::Ink, WALL);
            }
        }
    }
}
