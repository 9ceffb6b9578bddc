//! Flow: what guests can reach, in which round, and what is locked behind itself.
//!
//! Rounds are the fastest play: in each, all is solved and opened that the end of the last one allows. They are
//! no timetable, but they show what is open at once and what must wait.
//!
//! A lock opens when one of its puzzles is solved or its key is to hand. Where a puzzle of a key lock leads to
//! the key's hiding place, guests need both: the puzzle, and the key within reach.

pub mod blocking;
mod map;
pub mod net;
mod words;

use std::collections::BTreeMap;

use serde::Serialize;

use crate::diag::Anchor;
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId};
use crate::kit::Kit;
use map::Map;
use net::{Reached, Where};

/// The parts that each puzzle has, by the keys under which the kit says where they lie.
pub type Parts<'a> = BTreeMap<PuzzleId, Vec<&'a str>>;

/// What guests can reach. Every map gives the round in which a thing is first to hand or open; what is not in
/// it never is. Round 0 is the start.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
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
}

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
    flow.needed = needed(kit, &map, flow.finish_reachable);
    flow
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

/// The puzzles that the finish cannot do without, found by taking each away in turn.
fn needed(kit: &Kit, map: &Map, reachable: bool) -> Vec<PuzzleId> {
    if !reachable {
        return Vec::new();
    }
    let finish = map.finish(kit);
    let mut needed = Vec::new();
    for (index, puzzle) in kit.puzzles.iter().enumerate() {
        let mut net = map.net.clone();
        // A need that is no thing is never to hand.
        net.puzzles[index].push(usize::MAX);
        let reached = net.play();
        let had = |place: &Where| match place {
            Where::Open => true,
            Where::Nowhere => false,
            Where::Box(index) => net::had(&reached.boxes, *index),
        };
        if !finish.iter().all(had) {
            needed.push(puzzle.id.clone());
        }
    }
    needed
}
