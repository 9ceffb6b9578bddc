use super::{Floor, ForkMaze, Side, View};
use crate::kit::LockKind;
use crate::mechanics::slips::{self, Slip};
use crate::readings::{Budget, Readings};

/// What every way from start to goal gives that comes to no cell twice, also round the outside where the outer wall has
/// holes; and, where nothing says which end is first, what it gives backwards.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    if !view.whole() {
        readings.remarks.push("the maze is not whole: its walls or signs do not fit its size".into());
        return readings;
    }
    if !view.gates.is_empty() {
        readings.remarks.push("the outer wall has holes, so guests may go round the outside".into());
    }
    let net = view.net();
    let mut ways = 0_usize;
    let done = net.each_simple(view.start.0, view.goal.0, budget, &mut |way| {
        ways += 1;
        let backwards: Vec<usize> = way.iter().rev().copied().collect();
        let from = |picture: &str| format!("the way of {} steps from the {picture}", way.len() - 1);
        readings.add(lock, &text(view, way), from(&view.start.1));
        if !view.say_order {
            readings.add(lock, &text(view, &backwards), from(&view.goal.1));
        }
        !readings.more
    });
    readings.unproven = done.is_err();
    match ways {
        0 if !readings.unproven => readings.remarks.push("no way leads from the start to the goal".into()),
        0 | 1 => {}
        _ => readings.remarks.push(format!("{ways} ways lead from the start to the goal, not one")),
    }
    readings
}

/// What a guest notes on a way.
fn text(view: &View, way: &[usize]) -> String {
    match &view.floor {
        Floor::Symbols(list) => {
            way.iter().filter_map(|cell| list.iter().find(|(at, _)| at == cell)).map(|(_, symbol)| *symbol).collect()
        }
        Floor::Waymarks(_, list) => way
            .windows(2)
            .filter(|pair| list.contains(&pair[0]))
            .filter_map(|pair| leaves(view, pair[0], pair[1]))
            .map(Side::letter)
            .collect(),
    }
}

/// To which side the way leaves a cell: into a neighbour, or out by a gate.
fn leaves(view: &View, from: usize, to: usize) -> Option<Side> {
    view.side(from, to).or_else(|| view.gates.iter().find(|(cell, _)| *cell == from).map(|(_, side)| *side))
}

/// The way from the other end; with waymarks, the side from which each is come upon.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    if !view.whole() || !view.say_order {
        return Vec::new();
    }
    if let Floor::Waymarks(_, list) = &view.floor {
        let way = view.way();
        let come = way.windows(2).filter(|pair| list.contains(&pair[1]));
        let into: String = come.filter_map(|pair| view.side(pair[0], pair[1])).map(Side::letter).collect();
        let mut slips =
            vec![(into, "they wrote which way they came to each mark: it is which way they go on from it.")];
        slips.extend(back(view, lock));
        return slips;
    }
    back(view, lock)
}

fn back(view: &View, lock: &LockKind) -> Vec<Slip> {
    let either = View { say_order: false, ..view.clone() };
    slips::without(&ForkMaze, &either, lock, "they went from the goal to the start: the sheet says where to begin.")
}
