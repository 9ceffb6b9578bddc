use std::cmp::Reverse;
use std::collections::{BinaryHeap, VecDeque};

use super::Evening;
use crate::flow::{Links, Time};
use crate::mechanics::Rng;
use crate::rehearse::stage::Stage;

/// Something that will happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Event {
    /// The letter is read.
    Begin,
    /// The work at a puzzle is done, unless it has changed since.
    Worked(usize, u32),
    /// Its answer has been tried.
    Tried(usize),
    /// A thing is found by these guests.
    Found(usize, usize),
    /// A lock opens by its key, thanks to this puzzle.
    Keyed(usize, Option<usize>),
}

/// Guests who stay together.
#[derive(Clone, Copy, Debug)]
pub(super) struct Unit {
    pub heads: usize,
    pub at: Busy,
    /// The puzzle that they were at last.
    pub last: Option<usize>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Busy {
    Idle,
    Seeking(usize),
    At(usize),
}

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Puzzle {
    /// Things that are not to hand yet.
    pub lacks: usize,
    /// The puzzle thanks to which the last of them was.
    pub thanks: Option<usize>,
    pub open: f64,
    pub began: Option<f64>,
    /// The puzzle that kept those who began it, where it was open before.
    pub kept_by: Option<usize>,
    pub solved: Option<f64>,
    /// Work left, and as it was at the start, in minutes of two guests.
    pub left: f64,
    pub whole: f64,
    pub heads: usize,
    pub since: f64,
    pub trying: bool,
    /// Whether it is solved, or its lock open without it.
    pub over: bool,
    pub version: u32,
    /// Answers that will be tried in vain.
    pub wrongs: u8,
    /// Answers that were.
    pub wrong: u8,
    /// What the tokens taken leave of its work.
    pub rest: f64,
    /// Whether the host has sat down to it.
    pub helped: bool,
    pub step: usize,
    /// Since when it has been quiet around it.
    pub quiet: f64,
}

pub(super) struct Play<'a> {
    pub stage: &'a Stage,
    pub links: &'a Links,
    pub rng: Rng,
    pub now: f64,
    /// When anything last happened.
    pub stirred: f64,
    pub begun: bool,
    pub units: Vec<Unit>,
    pub puzzles: Vec<Puzzle>,
    pub boxes: Vec<(usize, Option<f64>)>,
    pub locks: Vec<Option<f64>>,
    pub items: Vec<bool>,
    /// Minutes to find each thing.
    pub finds: Vec<f64>,
    /// Things in the open that nobody has found or is looking for.
    pub unfound: VecDeque<usize>,
    /// Open puzzles at which nobody is.
    pub waiting: VecDeque<usize>,
    /// Puzzles at which somebody is.
    pub busy: Vec<usize>,
    pub heap: BinaryHeap<Reverse<(Time, u32, Event)>>,
    pub events: u32,
    pub finish: usize,
    pub out: Evening,
}
