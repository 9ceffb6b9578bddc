//! What it says: help, rules, work, hints, and how guests get to the answer.

use super::{Floor, SHEET, Side, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::pictures::word;
use crate::mechanics::work::{Work, counted};
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the maze")
}

/// The rule as the sheet prints it.
pub(super) fn rule(view: &View) -> String {
    let (start, goal) = (word(&view.start.1), word(&view.goal.1));
    let way = if view.say_order {
        format!("Find the way from the {start} to the {goal}. It never turns back.")
    } else {
        format!("Find the way between the {start} and the {goal}. It never turns back.")
    };
    let noted = match &view.floor {
        Floor::Symbols(_) if view.say_order => "Write down what lies on it, in the order you pass it.".to_owned(),
        Floor::Symbols(_) => "Write down what lies on it.".to_owned(),
        Floor::Waymarks(picture, _) => {
            format!("At each {} on it, write down which way it goes on: up, down, left or right.", word(picture))
        }
    };
    format!("{way} {noted}")
}

/// A wrong turn: where it is left from, and how many steps lead into it.
fn wrong_turns(view: &View) -> Vec<usize> {
    let (net, way) = (view.net(), view.way());
    let mut on_way = vec![false; net.len()];
    for cell in &way {
        if let Some(slot) = on_way.get_mut(*cell) {
            *slot = true;
        }
    }
    let mut depths = Vec::new();
    for cell in &way {
        for next in net.from(*cell).iter().copied().filter(|next| !way.contains(next)) {
            let depth = net.distances_without(next, &on_way).into_iter().flatten().max().unwrap_or_default();
            depths.push(depth + 1);
        }
    }
    depths
}

pub(super) fn work(view: &View) -> Work {
    if !view.whole() {
        return Work::new(0, "The maze is not whole.");
    }
    let (turns, steps) = (wrong_turns(view), view.way().len().saturating_sub(1));
    let deepest = turns.iter().max().copied().unwrap_or_default();
    let dead_ends = match turns.len() {
        0 => "No wrong turn leads off it.".to_owned(),
        1 => format!("One wrong turn on it leads into a dead end, which goes {} in.", counted(deepest, "step")),
        many => {
            format!("{many} wrong turns on it lead into dead ends; the deepest goes {} in.", counted(deepest, "step"))
        }
    };
    let says = format!("The way is {} long. {dead_ends}", counted(steps, "step"));
    Work::new(turns.iter().sum(), says)
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!("{} has one way from its start to its goal. {} The way: {}.", capital(name(cx)), rule(view), steps(view))
}

/// The way in steps, those to one side together: "2 down, 3 right".
fn steps(view: &View) -> String {
    let mut runs: Vec<(Side, usize)> = Vec::new();
    for side in view.way().windows(2).filter_map(|pair| view.side(pair[0], pair[1])) {
        match runs.last_mut() {
            Some((last, count)) if *last == side => *count += 1,
            _ => runs.push((side, 1)),
        }
    }
    let word = |side: Side| match side {
        Side::Up => "up",
        Side::Down => "down",
        Side::Left => "left",
        Side::Right => "right",
    };
    runs.iter().map(|(side, count)| format!("{count} {}", word(*side))).collect::<Vec<_>>().join(", ")
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (maze, start, goal) = (name(cx), word(&view.start.1), word(&view.goal.1));
    let (noted, last) = match &view.floor {
        Floor::Symbols(_) => (
            "Only what lies on the right way counts.".to_owned(),
            "write down each sign that the line runs over".to_owned(),
        ),
        Floor::Waymarks(picture, _) => (
            format!("Only each {} on the right way counts.", word(picture)),
            format!("write down, at each {} that the line runs over, the side to which it leaves", word(picture)),
        ),
    };
    HintLadder {
        nudge: format!("{} is waiting for a pencil. Find the {start} first.", capital(maze)),
        method: format!("One way leads from the {start} to the {goal}; all others end at a wall. {noted}"),
        giveaway: format!(
            "In {maze}, shade every dead end from its far end back to the fork where it begins. What stays white is the \
             way. Draw it from the {start} to the {goal} and {last}. Set that on {}.",
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
A maze has one way from its start to its goal. For a lock with digits or letters, signs lie on the floor: those on the \
way, in the order in which they are passed, are the answer; others lie in dead ends. For a lock that is pushed, one of \
the theme's symbols lies here and there, and the side to which the way goes on from it is noted: up, down, left, right. \
The maze is dug by chance for the answer.

## Setup
- `text`: a line of the story above the maze; may be empty.
- `cols`, `rows`: cells from left to right and from top to bottom, 5 to 18. Small mazes suit small children.
- `decoys`: signs that lie off the way, half of them at the ends of dead ends.
- `work`: `Light`: few wrong turns, and short ones. `Fair`: what chance brings. `Deep`: of several mazes the one with the most \
steps into dead ends.
- `start`, `goal`: the theme's symbols at the two ends; empty: by chance.
- `waymark`: for a lock that is pushed, the theme's symbol at which the way on is noted; empty: by chance.
- `say_order`: whether the sheet says from where to where the way is read.

## Example
(
    text: \"The old passage under the town:\",
    cols: 10,
    rows: 10,
    decoys: 6,
    work: Fair,
)

## Traps
- More than one way: each gives a reading, and a second way with the same reading is remarked.
- A hole in the outer wall, so that the way round the outside, along the cut line, is shorter: several readings.
- With nothing said about which end comes first, the way may be read backwards.
- Children who turn back note what lies in dead ends: the rule forbids turning back.
- A way too short for the answer is refused.";
