use std::collections::{BTreeMap, BTreeSet};

use super::Parts;
use super::net::{Net, NetBox, Opener, Where};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};
use crate::kit::{Kit, LockKind, Place, PropRole};

/// A thing that lies somewhere.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Thing {
    Prop(PropId),
    Note(NoteId),
    Part(PuzzleId, String),
    Letter,
}

/// A kit as a net: boxes, locks and puzzles keep the kit's order, things are listed here.
pub(super) struct Map {
    pub net: Net,
    pub things: Vec<Thing>,
}

impl Map {
    pub fn new(kit: &Kit, parts: &Parts<'_>) -> Self {
        let boxes: BTreeMap<&BoxId, usize> = numbered(kit.boxes.iter().map(|item| &item.id));
        let locks: BTreeMap<&LockId, usize> = numbered(kit.locks.iter().map(|lock| &lock.id));
        let spots: BTreeSet<&SpotId> = kit.spots.iter().map(|spot| &spot.id).collect();
        let place = |place: &Place| match place {
            Place::Spot(id) if spots.contains(id) => Where::Open,
            Place::Spot(_) => Where::Nowhere,
            Place::Box(id) => boxes.get(id).map_or(Where::Nowhere, |index| Where::Box(*index)),
        };
        let mut things = Vec::new();
        let mut net = Net::default();
        let mut props = BTreeMap::new();
        for prop in &kit.props {
            props.entry(&prop.id).or_insert(things.len());
            things.push(Thing::Prop(prop.id.clone()));
            net.items.push(place(&prop.place));
        }
        for note in &kit.notes {
            things.push(Thing::Note(note.id.clone()));
            net.items.push(place(&note.place));
        }
        if let Some(at) = &kit.letter.place {
            things.push(Thing::Letter);
            net.items.push(place(at));
        }
        for puzzle in &kit.puzzles {
            let mut needs = Vec::new();
            for part in parts.get(&puzzle.id).map_or(&[][..], Vec::as_slice) {
                needs.push(things.len());
                things.push(Thing::Part(puzzle.id.clone(), (*part).to_owned()));
                net.items.push(puzzle.parts.get(*part).map_or(Where::Nowhere, place));
            }
            // A tool that does not exist is a number that is no thing.
            needs.extend(puzzle.tools.iter().map(|tool| props.get(tool).copied().unwrap_or(usize::MAX)));
            net.puzzles.push(needs);
        }
        let mut puzzles_of: BTreeMap<&LockId, Vec<usize>> = BTreeMap::new();
        for (index, puzzle) in kit.puzzles.iter().enumerate() {
            puzzles_of.entry(&puzzle.opens).or_default().push(index);
        }
        // Props stand first among the things, in the kit's order.
        let mut keys_of: BTreeMap<&LockId, Vec<usize>> = BTreeMap::new();
        for (index, prop) in kit.props.iter().enumerate() {
            if let PropRole::Key(lock) = &prop.role {
                keys_of.entry(lock).or_default().push(index);
            }
        }
        for lock in &kit.locks {
            let puzzles = puzzles_of.get(&lock.id).cloned().unwrap_or_default();
            let keys = keys_of.get(&lock.id).cloned().unwrap_or_default();
            if lock.kind == LockKind::Key && !puzzles.is_empty() {
                // The puzzle says where this very key lies: guests need both, and neither opens the lock alone.
                for key in keys {
                    puzzles.iter().for_each(|puzzle| net.puzzles[*puzzle].push(key));
                }
                net.locks.push(puzzles.into_iter().map(Opener::Puzzle).collect());
            } else {
                net.locks
                    .push(puzzles.into_iter().map(Opener::Puzzle).chain(keys.into_iter().map(Opener::Item)).collect());
            }
        }
        for item in &kit.boxes {
            let shut = item.locks.iter().map(|lock| locks.get(lock).copied().unwrap_or(usize::MAX)).collect();
            net.boxes.push(NetBox { stands: place(&item.place), locks: shut });
        }
        Self { net, things }
    }

    /// Where the finish is: its box, and what its card lies in.
    pub fn finish(&self, kit: &Kit) -> Vec<Where> {
        let opens = kit.boxes.iter().position(|item| item.id == kit.finish.opens).map_or(Where::Nowhere, Where::Box);
        let card = self.things.iter().position(|thing| *thing == Thing::Note(kit.finish.card.clone()));
        let card = card.and_then(|at| self.net.items.get(at).copied()).unwrap_or(Where::Nowhere);
        vec![opens, card]
    }
}

/// The first number of each id.
fn numbered<'a, T: Ord>(ids: impl Iterator<Item = &'a T>) -> BTreeMap<&'a T, usize> {
    let mut numbers = BTreeMap::new();
    for (index, id) in ids.enumerate() {
        numbers.entry(id).or_insert(index);
    }
    numbers
}
