use super::{RouteMap, Task, View, Wind};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::pictures::word;
use crate::mechanics::slips::{self, Slip};
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    if !view.whole() {
        readings.remarks.push("the map is not whole: its places, roads or route do not fit its size".into());
        return readings;
    }
    if view.places.iter().enumerate().any(|(index, place)| view.places.iter().take(index).any(|o| o.at == place.at)) {
        readings.remarks.push("two places stand on one square".into());
    }
    match &view.task {
        Task::Legs(start, legs) => walk(view, start, legs, lock, budget, &mut readings),
        Task::Shortest(from, to) => shortest(view, from, to, lock, budget, &mut readings),
        Task::Bearings(stops) => bearings(view, stops, lock, budget, &mut readings),
    }
    readings
}

/// The ways in which the map may lie: with a north mark one, without it any side may be north.
fn turns(view: &View, readings: &mut Readings) -> std::ops::Range<usize> {
    if view.north {
        return 0..1;
    }
    readings.remarks.push("the map has no north mark".into());
    0..4
}

fn starts(view: &View, picture: &str, readings: &mut Readings) -> Vec<usize> {
    let starts = view.of(picture);
    match starts.len() {
        1 => {}
        0 => readings.remarks.push(format!("the card names the {}, and the map shows none", word(picture))),
        count => readings.remarks.push(format!("{count} places on the map show the {}", word(picture))),
    }
    starts
}

fn walk(
    view: &View,
    start: &str,
    legs: &[Vec<(Wind, usize)>],
    lock: &LockKind,
    budget: &mut Budget,
    readings: &mut Readings,
) {
    let turns = turns(view, readings);
    for first in starts(view, start, readings) {
        for turn in turns.clone() {
            let Some((stops, passed)) = go(view, first, legs, turn, budget, readings) else { continue };
            let north = ["up", "to the right", "down", "to the left"].get(turn).copied().unwrap_or_default();
            readings.add(lock, &stops, format!("north {north}, the signs at the stops"));
            if !view.say_stops {
                readings.add(lock, &passed, format!("north {north}, all signs that are passed"));
            }
        }
    }
    if !view.say_stops {
        readings.remarks.push("nothing says whether signs that are passed count".into());
    }
}

/// What is noted at the stops, and what along the whole way; none when the way leaves the map or a stop has no sign.
fn go(
    view: &View,
    first: usize,
    legs: &[Vec<(Wind, usize)>],
    turn: usize,
    budget: &mut Budget,
    readings: &mut Readings,
) -> Option<(String, String)> {
    let (mut here, mut stops, mut passed) = (first, String::new(), String::new());
    for leg in legs {
        for (wind, count) in leg {
            if *count > limits::MAP_SIDE.1 {
                return None;
            }
            for _ in 0..*count {
                if !budget.step() {
                    readings.unproven = true;
                    return None;
                }
                here = view.step(here, wind.turned(turn))?;
                passed.extend(view.sign(here));
            }
        }
        stops.push(view.sign(here)?);
    }
    Some((stops, passed))
}

fn shortest(view: &View, from: &str, to: &str, lock: &LockKind, budget: &mut Budget, readings: &mut Readings) {
    let net = view.net();
    let ends = starts(view, to, readings);
    for first in starts(view, from, readings) {
        for last in ends.iter().copied() {
            let mut ways = 0_usize;
            let done = net.each_shortest(first, last, budget, &mut |way| {
                ways += 1;
                let text: String = way.iter().filter_map(|at| view.sign(*at)).collect();
                readings.add(lock, &text, format!("shortest way {ways}, of {} steps", way.len() - 1));
                !readings.more
            });
            readings.unproven |= done.is_err();
            match ways {
                0 if done.is_ok() => readings.remarks.push("no road leads from the start to the goal".into()),
                0 | 1 => {}
                _ => readings.remarks.push(format!("{ways} ways are equally short")),
            }
        }
    }
}

fn bearings(view: &View, stops: &[String], lock: &LockKind, budget: &mut Budget, readings: &mut Readings) {
    let turns = turns(view, readings);
    let places: Vec<Vec<usize>> = stops.iter().map(|stop| starts(view, stop, readings)).collect();
    let mut open: Vec<(Vec<usize>, Vec<Wind>)> = vec![(Vec::new(), Vec::new())];
    for here in &places {
        let mut longer = Vec::new();
        for (way, winds) in &open {
            for at in here {
                if !budget.step() || longer.len() > limits::FIELD_MARKS {
                    readings.unproven = true;
                    return;
                }
                let wind = match way.last() {
                    None => None,
                    Some(from) => match line(view, *from, *at) {
                        None => continue,
                        wind => wind,
                    },
                };
                let way = way.iter().copied().chain([*at]).collect();
                longer.push((way, winds.iter().copied().chain(wind).collect()));
            }
        }
        open = longer;
    }
    if open.is_empty() {
        readings.remarks.push("two stops do not lie in line with each other".into());
    }
    for (_, winds) in open {
        for turn in turns.clone() {
            let text: String = winds.iter().map(|wind| wind.turned(turn).push()).collect();
            let words: Vec<&str> = winds.iter().map(|wind| wind.turned(turn).word()).collect();
            readings.add(lock, &text, format!("the stops lie {}", words.join(", then ")));
        }
    }
}

/// In which direction a square lies from another, where it lies straight on.
fn line(view: &View, from: usize, to: usize) -> Option<Wind> {
    let ((row, col), (to_row, to_col)) = ((from / view.cols, from % view.cols), (to / view.cols, to % view.cols));
    match (row.cmp(&to_row), col.cmp(&to_col)) {
        (std::cmp::Ordering::Greater, std::cmp::Ordering::Equal) => Some(Wind::North),
        (std::cmp::Ordering::Less, std::cmp::Ordering::Equal) => Some(Wind::South),
        (std::cmp::Ordering::Equal, std::cmp::Ordering::Greater) => Some(Wind::West),
        (std::cmp::Ordering::Equal, std::cmp::Ordering::Less) => Some(Wind::East),
        _ => None,
    }
}

/// The map held another way up, east taken for west, and the square counted on which one stands; most such ways end
/// where nothing can be noted.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    if !view.whole() || !view.north {
        return Vec::new();
    }
    let changed = |change: &dyn Fn((Wind, usize)) -> (Wind, usize), why| {
        let Task::Legs(from, legs) = &view.task else { return Vec::new() };
        let legs = legs.iter().map(|leg| leg.iter().map(|step| change(*step)).collect()).collect();
        let other = View { task: Task::Legs(from.clone(), legs), ..view.clone() };
        slips::without(&RouteMap, &other, lock, why)
    };
    let mirrored = |(wind, count)| match wind {
        Wind::East => (Wind::West, count),
        Wind::West => (Wind::East, count),
        Wind::North | Wind::South => (wind, count),
    };
    let mut slips = changed(&mirrored, "they took east for west: show them the rose on the map.");
    let short = |(wind, count): (Wind, usize)| (wind, count.saturating_sub(1));
    slips.extend(changed(&short, "they counted the square on which they stand: read the card aloud once more."));
    let unmarked = View { north: false, ..view.clone() };
    slips.extend(slips::without(&RouteMap, &unmarked, lock, "they hold the map another way up: ask where north is."));
    slips
}
