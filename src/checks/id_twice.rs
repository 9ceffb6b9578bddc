use std::collections::BTreeMap;

use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags two things of one kind with the same id.
    ///
    /// ## Why it matters at the table
    /// Whatever names the id means the first of them; the second can be reached by nothing.
    ///
    /// ## How to mend
    /// Give one of them another id.
    IdTwice, "id-twice", Blocks, "two things of one kind with the same id",
    "whatever names the id means the first of them, and the second is lost", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    let mut seen: BTreeMap<Anchor, usize> = BTreeMap::new();
    let anchors = kit
        .notes
        .iter()
        .map(|note| Anchor::Note(note.id.clone()))
        .chain(kit.spots.iter().map(|spot| Anchor::Spot(spot.id.clone())))
        .chain(kit.boxes.iter().map(|item| Anchor::Box(item.id.clone())))
        .chain(kit.locks.iter().map(|lock| Anchor::Lock(lock.id.clone())))
        .chain(kit.props.iter().map(|prop| Anchor::Prop(prop.id.clone())))
        .chain(kit.puzzles.iter().map(|puzzle| Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole)));
    for anchor in anchors {
        *seen.entry(anchor).or_default() += 1;
    }
    for (anchor, times) in seen.into_iter().filter(|(_, times)| *times > 1) {
        let message = format!("{anchor} is in the kit {times} times");
        sink.add(Draft::new(anchor, message).help("give all but one of them another id"));
    }
}
