use std::collections::BTreeMap;

use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::edit::{Edit, Item};

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
    "whatever names the id means the first of them, and the second is lost", run, mend
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

/// The second of the two under an id of its own; taken out where it is the same as the first.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let kit = facts.kit;
    macro_rules! parted {
        ($list:ident, $id:expr, $variant:ident) => {{
            let taken = |name: &str| kit.$list.iter().any(|item| item.id.as_str() == name);
            let fresh = (2..).map(|n| format!("{}-{n}", $id)).find(|name| !taken(name))?;
            let mut twins = kit.$list.iter().filter(|item| item.id == *$id);
            let same = twins.next()? == twins.next()?;
            let item = Item::$variant($id.clone());
            let renamed = item.with_id(&fresh)?;
            let mut edits = vec![Edit::Id(item, 1, fresh.clone())];
            if same {
                edits.push(Edit::Remove(renamed));
            }
            let title = if same { format!("Take the second {} out", $id) } else { format!("Call the second {fresh}") };
            Some(trying::ask(title, edits))
        }};
    }
    match &finding.anchor {
        Anchor::Note(id) => parted!(notes, id, Note),
        Anchor::Spot(id) => parted!(spots, id, Spot),
        Anchor::Box(id) => parted!(boxes, id, Box),
        Anchor::Lock(id) => parted!(locks, id, Lock),
        Anchor::Prop(id) => parted!(props, id, Prop),
        Anchor::Puzzle(id, _) => parted!(puzzles, id, Puzzle),
        _ => None,
    }
}
