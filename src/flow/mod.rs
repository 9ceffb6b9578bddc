//! Flow: what guests can reach, in which round, and what is locked behind itself.
//!
//! Rounds are the fastest play: in each, all is solved and opened that the end of the last one allows. They are
//! no timetable, but they show what is open at once and what must wait.
//!
//! A lock opens when one of its puzzles is solved or its key is to hand. Where a puzzle of a key lock leads to
//! the key's hiding place, guests need both: the puzzle, and the key within reach.

pub mod blocking;
pub mod connect;
pub mod drawing;
mod earliest;
pub mod facts;
mod links;
mod map;
mod needed;
pub mod net;
mod rounds;
mod words;

use std::collections::BTreeMap;

use serde::Serialize;

use crate::diag::Anchor;
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId};
use crate::kit::{Kit, PropRole};
pub use earliest::Time;
pub use links::Links;
pub use rounds::Reached;

use earliest::{At, Costs, earliest};
use facts::{ClosePair, EarlyTool};
use map::Map;

/// The parts that each puzzle has, by the keys under which the kit says where they lie.
pub type Parts<'a> = BTreeMap<PuzzleId, Vec<&'a str>>;

/// What guests can reach. Every map gives the round in which a thing is first to hand or open; what is not in
/// it never is. Round 0 is the start.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Flow {
    /// Boxes that open.
    pub boxes: BTreeMap<BoxId, usize>,
    /// Locks that open.
    pub locks: BTreeMap<LockId, usize>,
    /// Puzzles that can be solved, and the first round in which all they need is to hand.
    pub puzzles: BTreeMap<PuzzleId, usize>,
    /// Parts of puzzles that come to hand.
    pub parts: BTreeMap<PuzzleId, BTreeMap<String, usize>>,
    /// Props that come to hand.
    pub props: BTreeMap<PropId, usize>,
    /// Notes that come to hand.
    pub notes: BTreeMap<NoteId, usize>,
    /// Whether the letter can be had; a letter with no place is read aloud by the host.
    pub letter: bool,
    /// The rounds after the start.
    pub rounds: Vec<Round>,
    /// Loops: boxes that hold one another shut, the shortest first.
    pub loops: Vec<LockLoop>,
    /// Whether the box of the finish opens and the closing card can be had.
    pub finish_reachable: bool,
    /// The round in which it is.
    pub finish_round: Option<usize>,
    /// The puzzles without which the finish cannot be reached, each on its own account.
    pub needed: Vec<PuzzleId>,
    /// What can be reached but the finish does not need.
    pub spare: Spare,
    /// The longest wait: puzzles that can only be solved one after the other.
    pub chain: Chain,
    /// Tools that guests have long before they need them.
    pub early: Vec<EarlyTool>,
    /// Things that were to lie apart and do not: those of the kit's own list, until others are added.
    pub close: Vec<ClosePair>,
}

/// What guests can reach but the finish does not need.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Spare {
    /// Puzzles.
    pub puzzles: Vec<PuzzleId>,
    /// Boxes.
    pub boxes: Vec<BoxId>,
    /// Tools and keys.
    pub props: Vec<PropId>,
}

/// Puzzles each of which waits for the one before, and how long they take together.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Chain {
    /// The puzzles, the first first.
    pub puzzles: Vec<PuzzleId>,
    /// Minutes for all of them: the author's estimates, and [`USUAL_MINUTES`] where there is none.
    pub minutes: f64,
}

/// Minutes that a puzzle without an estimate is taken to need (estimate; common practice, no source).
pub const USUAL_MINUTES: f64 = 7.0;

/// One round of the fastest play.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Round {
    /// Puzzles that are open at its start and are solved in it: how many guests can work at once.
    pub solves: Vec<PuzzleId>,
    /// Locked boxes that open in it.
    pub opens: Vec<BoxId>,
}

/// Boxes that hold one another shut.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LockLoop {
    /// The loop in words: "the torch lies in the small box; the small box needs the brass lock; …".
    pub words: String,
    /// The boxes, sorted.
    pub boxes: Vec<BoxId>,
    /// Where in the kit to look, the box first.
    pub anchors: Vec<Anchor>,
    /// Whether the finish depends on it.
    pub finish: bool,
}

impl Flow {
    /// How many puzzles are open at once, round by round.
    #[must_use]
    pub fn open_per_round(&self) -> Vec<usize> {
        self.rounds.iter().map(|round| round.solves.len()).collect()
    }
}

/// What guests can reach in `kit`, where `parts` are the parts that its puzzles have.
#[must_use]
pub fn flow(kit: &Kit, parts: &Parts<'_>) -> Flow {
    let map = Map::new(kit, parts);
    let reached = map.net.play();
    let mut flow = named(kit, &map, &reached);
    flow.loops = loops(kit, &map);
    sort_needed(kit, &map, &mut flow);
    flow.chain = chain(kit, &map);
    flow.early = facts::early_tools(kit, &flow);
    flow.close = facts::close_pairs(kit, &[]);
    flow
}

/// A kit as a net, for those who play it by a clock of their own; and where the finish is: its box, and what its card lies
/// in.
///
/// Boxes, locks and puzzles stand in the kit's order. Of the things, the kit's props stand first, in its order.
#[must_use]
pub fn net(kit: &Kit, parts: &Parts<'_>) -> (net::Net, Vec<net::Where>) {
    let map = Map::new(kit, parts);
    let finish = map.finish(kit);
    (map.net, finish)
}

/// The numbers of the net turned back into the kit's names.
fn named(kit: &Kit, map: &Map, reached: &Reached) -> Flow {
    let mut flow = Flow { letter: kit.letter.place.is_none(), ..Flow::default() };
    flow.rounds.resize_with(reached.rounds, Round::default);
    for (item, round) in kit.boxes.iter().zip(&reached.boxes) {
        let Some(round) = *round else { continue };
        flow.boxes.insert(item.id.clone(), round);
        if !item.locks.is_empty()
            && let Some(round) = round.checked_sub(1).and_then(|at| flow.rounds.get_mut(at))
        {
            round.opens.push(item.id.clone());
        }
    }
    for (lock, round) in kit.locks.iter().zip(&reached.locks) {
        flow.locks.extend(round.map(|round| (lock.id.clone(), round)));
    }
    for (puzzle, round) in kit.puzzles.iter().zip(&reached.puzzles) {
        let Some(round) = *round else { continue };
        flow.puzzles.insert(puzzle.id.clone(), round);
        if let Some(round) = round.checked_sub(1).and_then(|at| flow.rounds.get_mut(at)) {
            round.solves.push(puzzle.id.clone());
        }
    }
    for (thing, round) in map.things.iter().zip(&reached.items) {
        let Some(round) = *round else { continue };
        match thing {
            map::Thing::Prop(id) => {
                flow.props.insert(id.clone(), round);
            }
            map::Thing::Note(id) => {
                flow.notes.insert(id.clone(), round);
            }
            map::Thing::Part(id, part) => {
                flow.parts.entry(id.clone()).or_default().insert(part.clone(), round);
            }
            map::Thing::Letter => flow.letter = true,
        }
    }
    flow.finish_round = flow
        .boxes
        .get(&kit.finish.opens)
        .and_then(|opened| flow.notes.get(&kit.finish.card).map(|card| *opened.max(card)));
    flow.finish_reachable = flow.finish_round.is_some();
    flow
}

/// Loop after loop: each is taken as mended before the next is looked for, so each has a cause of its own.
fn loops(kit: &Kit, map: &Map) -> Vec<LockLoop> {
    let net = map.net.charitable();
    let finish = map.finish(kit);
    let mut mended = Vec::new();
    let mut found = Vec::new();
    loop {
        let reached = net.play_with(&mended);
        let shut: Vec<usize> = (0..net.boxes.len()).filter(|index| reached.boxes[*index].is_none()).collect();
        if shut.is_empty() {
            return found;
        }
        let wanted = net.depends(&finish, &reached);
        let of_finish = net.core(&wanted);
        let set = net.smallest_core(if of_finish.is_empty() { &shut } else { &of_finish });
        if set.is_empty() {
            return found;
        }
        found.push(words::tell(kit, map, &net, &set, !of_finish.is_empty()));
        mended.extend(set);
    }
}

/// What the finish cannot do without, and what it does not need.
fn sort_needed(kit: &Kit, map: &Map, flow: &mut Flow) {
    if !flow.finish_reachable {
        return;
    }
    let needed = needed::needed(&map.net, &map.finish(kit));
    for (puzzle, needed) in kit.puzzles.iter().zip(&needed.puzzles) {
        if *needed {
            flow.needed.push(puzzle.id.clone());
        } else if flow.puzzles.contains_key(&puzzle.id) {
            flow.spare.puzzles.push(puzzle.id.clone());
        }
    }
    for (item, needed) in kit.boxes.iter().zip(&needed.boxes) {
        if !needed && flow.boxes.contains_key(&item.id) {
            flow.spare.boxes.push(item.id.clone());
        }
    }
    // Props stand first among the things, in the kit's order.
    for (prop, needed) in kit.props.iter().zip(&needed.items) {
        let used = matches!(prop.role, PropRole::Tool | PropRole::Key(_));
        if used && !needed && flow.props.contains_key(&prop.id) {
            flow.spare.props.push(prop.id.clone());
        }
    }
}

/// The puzzles that take longest one after the other, each waiting for the one before.
fn chain(kit: &Kit, map: &Map) -> Chain {
    let minutes: Vec<f64> = kit.puzzles.iter().map(|puzzle| minutes(puzzle.minutes)).collect();
    let costs = Costs { puzzles: &minutes, rest: 0.0, key: 0.0, inner: 0.0 };
    let times = earliest(&map.net, costs, &[]);
    let waited: BTreeMap<At, Option<At>> = times.order.iter().copied().collect();
    // Of two that end together the first: later ones may hang on it.
    let mut longest: Option<(f64, usize)> = None;
    for (puzzle, time) in times.puzzles.iter().enumerate() {
        if let Some(time) = *time
            && longest.is_none_or(|(best, _)| time > best)
        {
            longest = Some((time, puzzle));
        }
    }
    let Some((minutes, last)) = longest else { return Chain::default() };
    let mut puzzles = Vec::new();
    let mut at = Some(At::Puzzle(last));
    while let Some(now) = at {
        if let At::Puzzle(puzzle) = now {
            puzzles.extend(kit.puzzles.get(puzzle).map(|puzzle| puzzle.id.clone()));
        }
        at = waited.get(&now).copied().flatten();
    }
    puzzles.reverse();
    Chain { puzzles, minutes }
}

/// The author's estimate, or the usual minutes where there is none or it is no time.
fn minutes(estimate: Option<f64>) -> f64 {
    estimate.filter(|minutes| minutes.is_finite() && *minutes >= 0.0).unwrap_or(USUAL_MINUTES)
}
