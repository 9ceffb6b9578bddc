//! When each thing is first to hand, by the generalisation of Dijkstra's algorithm to problems in which a thing
//! may need several others at once (Knuth 1977): the next to be settled is always the earliest of all.

use std::cmp::{Ordering, Reverse};
use std::collections::BinaryHeap;

use super::links::Links;
use super::net::{Net, Where};

/// What the steps of a play take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Costs<'a> {
    /// Each puzzle, once all that it needs is to hand; [`Costs::rest`] for those beyond the list.
    pub puzzles: &'a [f64],
    /// Every other puzzle.
    pub rest: f64,
    /// Taking a key to its lock.
    pub key: f64,
    /// Opening a locked box after the box around it.
    pub inner: f64,
}

/// Everything in one round: what the end of the last round allows is done.
pub(super) const ROUNDS: Costs<'_> = Costs { puzzles: &[], rest: 1.0, key: 1.0, inner: 1.0 };

/// A box, lock, puzzle or thing by its number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum At {
    Item(usize),
    Puzzle(usize),
    Lock(usize),
    Box(usize),
}

/// When each is first to hand, and what it waited for last.
#[derive(Clone, Debug, Default)]
pub(super) struct Times {
    pub items: Vec<Option<f64>>,
    pub puzzles: Vec<Option<f64>>,
    pub locks: Vec<Option<f64>>,
    pub boxes: Vec<Option<f64>>,
    /// In the order in which they were settled: the thing, and what it waited for last.
    pub order: Vec<(At, Option<At>)>,
}

/// Minutes from the start, ordered, as the key of a queue of what happens next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Time(pub f64);

impl Eq for Time {}
impl PartialOrd for Time {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Time {
    fn cmp(&self, other: &Self) -> Ordering {
        self.0.total_cmp(&other.0)
    }
}

/// What still keeps a puzzle or box, and the latest of what has come.
#[derive(Clone, Copy, Debug)]
struct Waits {
    left: usize,
    latest: f64,
    last: Option<At>,
}

/// The play under way.
struct Play<'a> {
    net: &'a Net,
    costs: Costs<'a>,
    links: Links,
    puzzles: Vec<Waits>,
    boxes: Vec<Waits>,
    heap: BinaryHeap<Reverse<(Time, At, Option<At>)>>,
    times: Times,
}

/// Plays `net` at these costs, with the boxes in `given` open from the start, wherever they stand.
pub(super) fn earliest(net: &Net, costs: Costs<'_>, given: &[usize]) -> Times {
    let waits = |left: usize| Waits { left, latest: 0.0, last: None };
    let mut play = Play {
        net,
        costs,
        links: Links::new(net),
        puzzles: net.puzzles.iter().map(|needs| waits(needs.len())).collect(),
        boxes: net.boxes.iter().map(|b| waits(b.locks.len() + usize::from(b.stands != Where::Open))).collect(),
        heap: BinaryHeap::new(),
        times: Times {
            items: vec![None; net.items.len()],
            puzzles: vec![None; net.puzzles.len()],
            locks: vec![None; net.locks.len()],
            boxes: vec![None; net.boxes.len()],
            order: Vec::new(),
        },
    };
    for (index, place) in net.items.iter().enumerate() {
        if *place == Where::Open {
            play.push(0.0, At::Item(index), None);
        }
    }
    for index in 0..net.puzzles.len() {
        if play.puzzles[index].left == 0 {
            let cost = play.puzzle_cost(index);
            play.push(cost, At::Puzzle(index), None);
        }
    }
    for index in 0..net.boxes.len() {
        if play.boxes[index].left == 0 || given.contains(&index) {
            play.push(0.0, At::Box(index), None);
        }
    }
    while let Some(Reverse((Time(time), at, last))) = play.heap.pop() {
        play.settle(time, at, last);
    }
    play.times
}

impl Play<'_> {
    fn push(&mut self, time: f64, at: At, last: Option<At>) {
        self.heap.push(Reverse((Time(time), at, last)));
    }

    fn puzzle_cost(&self, puzzle: usize) -> f64 {
        self.costs.puzzles.get(puzzle).copied().unwrap_or(self.costs.rest)
    }

    /// Settles a thing unless it was settled earlier, and tells those that wait for it.
    fn settle(&mut self, time: f64, at: At, last: Option<At>) {
        let slot = match at {
            At::Item(n) => self.times.items.get_mut(n),
            At::Puzzle(n) => self.times.puzzles.get_mut(n),
            At::Lock(n) => self.times.locks.get_mut(n),
            At::Box(n) => self.times.boxes.get_mut(n),
        };
        match slot {
            Some(slot @ None) => *slot = Some(time),
            _ => return,
        }
        self.times.order.push((at, last));
        match at {
            At::Item(n) => {
                for puzzle in std::mem::take(&mut self.links.item_puzzles[n]) {
                    self.puzzle_gets(puzzle, time, at);
                }
                for lock in std::mem::take(&mut self.links.item_locks[n]) {
                    self.push(time + self.costs.key, At::Lock(lock), Some(at));
                }
            }
            At::Puzzle(n) => {
                for lock in std::mem::take(&mut self.links.puzzle_locks[n]) {
                    self.push(time, At::Lock(lock), Some(at));
                }
            }
            At::Lock(n) => {
                for index in std::mem::take(&mut self.links.lock_boxes[n]) {
                    self.box_gets(index, time, at);
                }
            }
            At::Box(n) => {
                for item in std::mem::take(&mut self.links.box_items[n]) {
                    self.push(time, At::Item(item), Some(at));
                }
                for index in std::mem::take(&mut self.links.box_boxes[n]) {
                    let locked = self.net.boxes.get(index).is_some_and(|inner| !inner.locks.is_empty());
                    let inner = if locked { self.costs.inner } else { 0.0 };
                    self.box_gets(index, time + inner, at);
                }
            }
        }
    }

    fn puzzle_gets(&mut self, puzzle: usize, time: f64, from: At) {
        if let Some(latest) = self.puzzles.get_mut(puzzle).and_then(|waits| waits.get(time, from)) {
            let cost = self.puzzle_cost(puzzle);
            self.push(latest.0 + cost, At::Puzzle(puzzle), latest.1);
        }
    }

    fn box_gets(&mut self, index: usize, time: f64, from: At) {
        if let Some(latest) = self.boxes.get_mut(index).and_then(|waits| waits.get(time, from)) {
            self.push(latest.0, At::Box(index), latest.1);
        }
    }
}

impl Waits {
    /// One of the things waited for has come; the latest of all when it was the last that was missing.
    fn get(&mut self, time: f64, from: At) -> Option<(f64, Option<At>)> {
        if self.last.is_none() || time > self.latest {
            (self.latest, self.last) = (time, Some(from));
        }
        self.left = self.left.saturating_sub(1);
        (self.left == 0).then_some((self.latest, self.last))
    }
}
