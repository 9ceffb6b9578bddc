//! The joined dots, for the host.

use super::{Dot, PANEL, View};
use crate::face::mm;
use crate::limits;
use crate::mechanics::solved::{Mark, Panel, Solved, Tone};
use crate::units::{Mm, Size};

/// Breadth of a panel.
const ACROSS: Mm = Mm::new(20.0);

pub(super) fn solved(view: &View) -> Option<Solved> {
    let panels = view.panels.iter().zip(1..);
    let panels: Option<Vec<Panel>> =
        panels.map(|(dots, number)| joined(dots, view.step.max(1), format!("Panel {number}"))).collect();
    let says = "Joined, the dots look like this.".to_owned();
    Some(Solved::Drawn { says, panels: panels.filter(|panels| !panels.is_empty())? })
}

/// The line through the dots that count; none where a number is missing or stands twice.
fn joined(dots: &[Dot], step: u16, name: String) -> Option<Panel> {
    if dots.len() > limits::PANEL_DOTS {
        return None;
    }
    let unit = ACROSS / f64::from(PANEL.0);
    let place = |dot: &Dot| (unit * f64::from(dot.x), unit * f64::from(dot.y));
    let mut panel = Panel::new(name, Size { w: ACROSS, h: unit * f64::from(PANEL.1) });
    for dot in dots {
        panel.marks.push(Mark::Circle { at: place(dot), r: mm(0.5), tone: Tone::Ink, edge: None });
    }
    let mut counted: Vec<(u16, &Dot)> = dots.iter().filter_map(|dot| Some((dot.number?, dot))).collect();
    counted.retain(|(number, _)| number.is_multiple_of(step));
    counted.sort_by_key(|(number, _)| *number);
    let whole = counted.iter().zip(1..).all(|((number, _), nth)| Some(*number) == step.checked_mul(nth));
    panel.line(counted.iter().map(|(_, dot)| place(dot)).collect(), Tone::Found, mm(1.0));
    (whole && counted.len() > 1).then_some(panel)
}
