//! One simulated evening.

mod opening;
mod table;
mod working;

use std::collections::{BinaryHeap, VecDeque};

use rand::SeedableRng as _;

use self::table::{Busy, Event, Play, Puzzle, Unit};
use super::chance::{normal, share};
use super::stage::Stage;
use crate::flow::Links;
use crate::flow::net::Where;
use crate::limits;
use crate::mechanics::Rng;

/// Wrong answers at one lock come to an end: at most so many times the tries after which a token is due, which is when
/// the ladder is used up.
const WRONG_LADDERS: u8 = 4;

/// One simulated evening, as far as it is counted.
#[derive(Clone, Debug, Default)]
pub(super) struct Evening {
    /// How many guests.
    pub guests: u8,
    /// Minutes to the end.
    pub end: f64,
    /// The puzzles.
    pub puzzles: Vec<Spent>,
    /// When each lock opened; none when the end came first.
    pub locks: Vec<Option<f64>>,
    /// The same of the boxes.
    pub boxes: Vec<Option<f64>>,
    /// The puzzles that the end waited for, the last first, with the minutes that it waited.
    pub chain: Vec<(usize, f64)>,
    /// Minutes of guests with nothing to do, added up.
    pub idle: f64,
}

/// What one puzzle took.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Spent {
    /// When somebody began.
    pub began: Option<f64>,
    /// When its lock opened.
    pub solved: Option<f64>,
    /// Tokens taken: nudge, method, giveaway; last how often the host sat down to it.
    pub tokens: [u16; 4],
    /// Minutes of idle guests while this was among what the others worked on, shared evenly.
    pub idle: f64,
}

/// Plays the evening with this number; none when it never ends, which a stage with a reachable finish does not bring
/// about. The same number is the same evening.
pub(super) fn evening(stage: &Stage, links: &Links, number: usize) -> Option<Evening> {
    let mut rng = Rng::seed_from_u64(stage.seed);
    rng.set_stream(number as u64);
    let (least, most) = stage.guests;
    let sizes = usize::from(most - least.min(most)) + 1;
    let guests = usize::from(least) + number % sizes;
    let habits = &stage.habits;
    let skill = normal(&mut rng);
    let puzzles = stage.puzzles.iter().zip(&stage.net.puzzles).map(|(task, needs)| {
        // The spread of a puzzle's time has two parts: the group's, which all its puzzles share, and the puzzle's own.
        let shared = habits.skill.min(task.time.sigma);
        let own = (task.time.sigma * task.time.sigma - shared * shared).max(0.0).sqrt();
        let time = (task.time.mu + shared * skill + own * normal(&mut rng)).exp();
        let open = task.steps.iter().zip(habits.hints).take(usize::from(task.open));
        let open: f64 = open.filter(|(there, _)| **there).map(|(_, left)| left).product();
        let whole = time.min(limits::PLAY_MINUTES) * open;
        let most = habits.wrong_tries.saturating_mul(WRONG_LADDERS);
        let wrongs = (0..most).take_while(|_| share(&mut rng) < habits.wrong).count();
        Puzzle {
            lacks: needs.len(),
            left: whole,
            whole,
            rest: 1.0,
            wrongs: u8::try_from(wrongs).unwrap_or(most),
            step: usize::from(task.open),
            ..Puzzle::default()
        }
    });
    let puzzles: Vec<Puzzle> = puzzles.collect();
    let shared = habits.skill.min(habits.search.sigma);
    let own = (habits.search.sigma * habits.search.sigma - shared * shared).max(0.0).sqrt();
    let mut find = || (habits.search.mu + shared * skill + own * normal(&mut rng)).exp().min(limits::PLAY_MINUTES);
    let finds: Vec<f64> = stage.sought.iter().map(|_| find()).collect();
    let pairs = std::iter::repeat_n(2, guests / 2).chain((guests % 2 == 1).then_some(1));
    let net = &stage.net;
    let shut = |b: &crate::flow::net::NetBox| b.locks.len() + usize::from(b.stands != Where::Open);
    let mut play = Play {
        stage,
        links,
        now: 0.0,
        stirred: 0.0,
        begun: false,
        units: pairs.map(|heads| Unit { heads, at: Busy::Idle, last: None }).collect(),
        puzzles,
        boxes: net.boxes.iter().map(|b| (shut(b), None)).collect(),
        locks: vec![None; net.locks.len()],
        items: vec![false; net.items.len()],
        finds,
        unfound: VecDeque::new(),
        waiting: VecDeque::new(),
        busy: Vec::new(),
        heap: BinaryHeap::new(),
        events: 0,
        finish: stage.finish.iter().filter(|place| matches!(place, Where::Box(_))).count(),
        out: Evening { guests: u8::try_from(guests).unwrap_or(u8::MAX), ..Evening::default() },
        rng,
    };
    play.out.puzzles = vec![Spent::default(); play.puzzles.len()];
    play.push(stage.letter, Event::Begin);
    play.run()
}
