//! The way on the map, for the host.

use super::{Task, View};
use crate::face::mm;
use crate::limits;
use crate::mechanics::pictures::word;
use crate::mechanics::solved::{Mark, Panel, Solved, Tone, cell, middle};
use crate::readings::Budget;
use crate::units::Mm;

/// A square, with the way beside its sign.
const SQUARE: Mm = Mm::new(7.0);
const WAY: Mm = Mm::new(1.0);
const ROAD: Mm = Mm::new(0.4);

/// A way with the squares that are noted.
struct Way {
    squares: Vec<usize>,
    noted: Vec<usize>,
}

pub(super) fn solved(view: &View) -> Option<Solved> {
    if !view.whole() || !view.north {
        return None;
    }
    let way = way(view)?;
    let roads = !view.roads.is_empty();
    let (mut panel, side) = Panel::grid(view.rows, view.cols, SQUARE, (view.rows, view.cols));
    let at = |square: usize| (square / view.cols, square % view.cols);
    let mid = |square: usize| middle(side, at(square).0, at(square).1);
    if roads && matches!(view.task, Task::Shortest(..)) {
        panel.marks.clear();
        for (a, b) in &view.roads {
            panel.line(vec![mid(*a), mid(*b)], Tone::Faint, ROAD);
        }
    }
    panel.line(way.squares.iter().map(|square| mid(*square)).collect(), Tone::Found, WAY);
    let (first, last) = (*way.squares.first()?, *way.squares.last()?);
    panel.marks.push(Mark::Circle { at: mid(first), r: side * 0.22, tone: Tone::Found, edge: None });
    // What is noted where the way ends has a frame.
    let ring = !way.noted.contains(&last);
    if ring {
        panel.marks.push(Mark::Circle { at: mid(last), r: side * 0.3, tone: Tone::Found, edge: Some(mm(0.8)) });
    }
    let mut places: Vec<_> = view.places.iter().filter_map(|place| Some((place.at, place.sign?))).collect();
    places.sort_unstable();
    for (square, sign) in places {
        let (rect, noted) = (cell(side, at(square).0, at(square).1), way.noted.contains(&square));
        if way.squares.contains(&square) && ![first, last].contains(&square) || noted {
            panel.marks.push(Mark::Area { rect: rect.inset(mm(0.8)), tone: Tone::Ground, edge: None });
        }
        if noted {
            panel.framed(rect);
        }
        panel.write(rect, sign.to_string(), noted);
    }
    let from = match &view.task {
        Task::Legs(from, _) | Task::Shortest(from, _) => from,
        Task::Bearings(stops) => stops.first()?,
    };
    let ends = if ring { ", and ends at the ring" } else { "" };
    let noted = if way.noted.is_empty() { "" } else { " In frames what is noted." };
    let says = format!("The way begins at the dot (the {}){ends}.{noted}", word(from));
    Some(Solved::Drawn { says, panels: vec![panel] })
}

/// The only way.
fn way(view: &View) -> Option<Way> {
    let only = |picture: &str| <[usize; 1]>::try_from(view.of(picture)).ok().map(|[at]| at);
    match &view.task {
        Task::Legs(start, legs) => {
            let mut way = Way { squares: vec![only(start)?], noted: Vec::new() };
            for leg in legs {
                for (wind, count) in leg {
                    for _ in 0..(*count).min(limits::MAP_SIDE.1) {
                        way.squares.push(view.step(*way.squares.last()?, *wind)?);
                    }
                }
                way.noted.extend(way.squares.last());
            }
            Some(way)
        }
        Task::Shortest(from, to) => {
            let mut ways: Vec<Vec<usize>> = Vec::new();
            let budget = &mut Budget::new(limits::GRID_STEPS);
            let each = &mut |way: &[usize]| {
                ways.push(way.to_vec());
                ways.len() < 2
            };
            view.net().each_shortest(only(from)?, only(to)?, budget, each).ok()?;
            let [squares] = <[Vec<usize>; 1]>::try_from(ways).ok()?;
            let noted = squares.iter().copied().filter(|square| view.sign(*square).is_some()).collect();
            Some(Way { squares, noted })
        }
        Task::Bearings(stops) => {
            let squares: Option<Vec<usize>> = stops.iter().map(|stop| only(stop)).collect();
            Some(Way { squares: squares?, noted: Vec::new() })
        }
    }
}
