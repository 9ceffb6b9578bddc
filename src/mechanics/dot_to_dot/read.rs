use super::strokes::{Point, shown};
use super::{Dot, PANEL, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// What each panel can be taken to show, when its dots are joined by the rule; panels in the order of their numbers. A
/// card without a ground line may lie upside down.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let (mut marks, mut cues, mut remarks) = (Vec::new(), Vec::new(), Vec::new());
    let mut spent = false;
    for (index, dots) in view.panels.iter().enumerate() {
        let label = format!("panel {}", index + 1);
        if dots.len() > limits::PANEL_DOTS {
            remarks.push(format!("{label} has more than {} dots", limits::PANEL_DOTS));
            spent = true;
            continue;
        }
        let (lines, missing) = lines(dots, view.step.max(1), budget);
        spent |= lines.is_none();
        let lines = lines.unwrap_or_default();
        if let Some(number) = missing {
            remarks.push(format!("{label} has no dot {number}, and has later ones"));
        }
        if lines.len() > 1 {
            remarks.push(format!("{label} has a number twice, so its dots can be joined in {} ways", lines.len()));
        }
        let first = marks.len();
        for line in &lines {
            for digit in shown(line) {
                marks.push(Mark::new(format!("{label} as {digit}"), digit.to_string()));
            }
            if !view.baseline {
                let turned: Vec<Point> =
                    line.iter().map(|(x, y)| (f64::from(PANEL.0) - x, f64::from(PANEL.1) - y)).collect();
                for digit in shown(&turned) {
                    marks.push(Mark::new(format!("{label}, turned over, as {digit}"), digit.to_string()));
                }
            }
        }
        if marks.len() == first {
            remarks.push(format!("{label} shows no digit"));
        }
        cues.push(Cue { label, marks: (first..marks.len()).collect() });
    }
    let mut readings = read(&marks, &Order::Cued(cues), lock, budget);
    readings.unproven |= spent;
    readings.remarks = remarks;
    readings
}

/// Every line that the rule allows on a panel, and the number at which the row of numbers breaks off. None when there
/// are more lines than a budget allows.
fn lines(dots: &[Dot], step: u16, budget: &mut Budget) -> (Option<Vec<Vec<Point>>>, Option<u16>) {
    let last = dots.iter().filter_map(|dot| dot.number).filter(|number| number.is_multiple_of(step)).max();
    let (mut lines, mut number) = (vec![Vec::new()], step);
    while last.is_some_and(|last| number <= last) {
        let here: Vec<Point> = dots
            .iter()
            .filter(|dot| dot.number == Some(number))
            .map(|dot| (f64::from(dot.x), f64::from(dot.y)))
            .collect();
        if here.is_empty() {
            return (Some(lines), Some(number));
        }
        let mut longer = Vec::new();
        for line in &lines {
            for place in &here {
                if longer.len() > limits::PANEL_DOTS || !budget.step() {
                    return (None, None);
                }
                longer.push(line.iter().copied().chain([*place]).collect::<Vec<Point>>());
            }
        }
        lines = longer;
        let Some(next) = number.checked_add(step) else { break };
        number = next;
    }
    (Some(lines), None)
}
