use std::collections::{BTreeMap, BTreeSet};

use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Severity};
use crate::ids::{BoxId, LockId};
use crate::kit::{BoxDef, Kit, Place, PropRole, Puzzle};

check!(
    /// ## What it does
    /// Flags a box that no play can open, and counts what lies in it. It blocks while the finish cannot be reached,
    /// and warns when the finish does without that box. Boxes that hold one another shut are told by
    /// `locked-behind-itself`; boxes that wait for nothing but what lies in the flagged one are named with it.
    ///
    /// ## Why it matters at the table
    /// What lies in it is printed, cut and packed for nothing, or the party stops there.
    ///
    /// ## How to mend
    /// See which lock stays shut: it wants a puzzle or a key that guests can have.
    NeverReached, "never-reached", Blocks, "a box that no play can open",
    "what lies in it is packed for nothing, or the party stops there", run
);

/// What keeps a box shut.
#[derive(Default)]
struct Waits<'a> {
    /// What is wrong with the box itself, its locks and their puzzles.
    own: Vec<String>,
    /// Boxes in which something lies that it needs.
    boxes: BTreeSet<&'a BoxId>,
}

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let looped = |item: &BoxDef| facts.flow.loops.iter().any(|found| found.boxes.contains(&item.id));
    let shut = facts.kit.boxes.iter().filter(|item| !facts.flow.boxes.contains_key(&item.id) && !looped(item));
    let shut: BTreeMap<&BoxId, &BoxDef> = shut.map(|item| (&item.id, item)).collect();
    let opened_by = openers(facts.kit);
    let waits: BTreeMap<&BoxId, Waits<'_>> =
        shut.iter().map(|(id, item)| (*id, waits_of(facts, item, &opened_by))).collect();
    // A box that waits for what lies in others of these opens as soon as they do.
    let follows = |id: &BoxId| {
        let known = |waits: &&Waits<'_>| waits.own.is_empty() && !waits.boxes.is_empty();
        let waits = waits.get(id).filter(known);
        waits.is_some_and(|waits| waits.boxes.iter().all(|other| shut.contains_key(*other)))
    };
    let (later, first): (Vec<&BoxId>, Vec<&BoxId>) = shut.keys().copied().partition(|id| follows(id));
    // Those that wait for one another alone have no first among them.
    let first = if first.is_empty() { later.clone() } else { first };
    for id in first {
        let (Some(item), Some(own)) = (shut.get(id), waits.get(id)) else { continue };
        let with: Vec<&str> = behind(id, &later, &waits)
            .into_iter()
            .filter_map(|other| shut.get(other).map(|item| item.name.as_str()))
            .collect();
        let severity = if facts.flow.finish_reachable { Severity::Warns } else { Severity::Blocks };
        let mut draft = Draft::new(Anchor::Box(item.id.clone()), message(facts, item)).severity(severity);
        for reason in &own.own {
            draft = draft.help(reason.clone());
        }
        if !with.is_empty() {
            draft = draft.help(format!("for want of what lies in it, these stay shut as well: {}", with.join(", ")));
        }
        sink.add(draft.help("let guests have what opens it"));
    }
}

/// The puzzles of each lock.
fn openers(kit: &Kit) -> BTreeMap<&LockId, Vec<&Puzzle>> {
    let mut openers: BTreeMap<&LockId, Vec<&Puzzle>> = BTreeMap::new();
    kit.puzzles.iter().for_each(|puzzle| openers.entry(&puzzle.opens).or_default().push(puzzle));
    openers
}

/// The boxes of `later` that wait for this one, over others or not.
fn behind<'a>(id: &BoxId, later: &[&'a BoxId], waits: &BTreeMap<&BoxId, Waits<'_>>) -> BTreeSet<&'a BoxId> {
    let mut found: BTreeSet<&BoxId> = BTreeSet::new();
    loop {
        let before = found.len();
        for other in later.iter().filter(|other| **other != id) {
            let Some(waits) = waits.get(*other) else { continue };
            if waits.boxes.contains(id) || waits.boxes.iter().any(|known| found.contains(*known)) {
                found.insert(other);
            }
        }
        if found.len() == before {
            return found;
        }
    }
}

fn waits_of<'a>(facts: &Facts<'a>, item: &'a BoxDef, openers: &BTreeMap<&LockId, Vec<&'a Puzzle>>) -> Waits<'a> {
    let mut waits = Waits::default();
    lies(facts, &item.place, &mut waits, "the box itself");
    for lock in item.locks.iter().filter(|lock| !facts.flow.locks.contains_key(*lock)) {
        let puzzles = openers.get(lock).map_or(&[][..], Vec::as_slice);
        let keys = facts.kit.props.iter().filter(|prop| prop.role == PropRole::Key(lock.clone()));
        let mut keyed = false;
        for key in keys {
            keyed = true;
            lies(facts, &key.place, &mut waits, &key.name);
        }
        if puzzles.is_empty() && !keyed {
            let name = facts.lock(lock).map_or(lock.as_str(), |lock| lock.name.as_str());
            waits.own.push(format!("{name} has neither a puzzle nor a key"));
        }
        for puzzle in puzzles {
            needs(facts, puzzle, &mut waits);
        }
    }
    waits
}

/// What a puzzle wants before it can be solved.
fn needs<'a>(facts: &Facts<'a>, puzzle: &'a Puzzle, waits: &mut Waits<'a>) {
    let Some(laid) = facts.party.puzzle(&puzzle.id).filter(|laid| laid.laid.is_ok()) else {
        waits.own.push(format!("\"{}\" cannot be laid out", puzzle.title));
        return;
    };
    for part in &laid.parts {
        match puzzle.parts.get(*part) {
            Some(place) => lies(facts, place, waits, &format!("the part `{part}` of \"{}\"", puzzle.title)),
            None => waits.own.push(format!("the part `{part}` of \"{}\" lies nowhere", puzzle.title)),
        }
    }
    for tool in &puzzle.tools {
        match facts.prop(tool) {
            Some(prop) => lies(facts, &prop.place, waits, &prop.name),
            None => waits.own.push(format!("\"{}\" needs a tool `{tool}` that is not in the kit", puzzle.title)),
        }
    }
}

fn lies<'a>(facts: &Facts<'a>, place: &'a Place, waits: &mut Waits<'a>, what: &str) {
    match place {
        Place::Spot(id) if facts.spot(id).is_none() => {
            waits.own.push(format!("{what} lies at a spot `{id}` that is not in the kit"));
        }
        Place::Box(id) if facts.box_def(id).is_none() => {
            waits.own.push(format!("{what} lies in a box `{id}` that is not in the kit"));
        }
        Place::Box(id) if !facts.flow.boxes.contains_key(id) => drop(waits.boxes.insert(id)),
        Place::Spot(_) | Place::Box(_) => {}
    }
}

fn message(facts: &Facts<'_>, item: &BoxDef) -> String {
    let shut: Vec<&str> = item
        .locks
        .iter()
        .filter(|lock| !facts.flow.locks.contains_key(*lock))
        .map(|lock| facts.lock(lock).map_or(lock.as_str(), |lock| lock.name.as_str()))
        .collect();
    let why = match (shut.is_empty(), &item.place) {
        (false, _) if shut.len() == 1 => format!("{} stays locked", shut.join(" and ")),
        (false, _) => format!("{} stay locked", shut.join(" and ")),
        (true, Place::Box(outer)) => {
            format!("it stands in {}", facts.box_def(outer).map_or(outer.as_str(), |item| item.name.as_str()))
        }
        (true, Place::Spot(spot)) => format!("its spot `{spot}` is not in the kit"),
    };
    match contents(facts.kit, &item.id) {
        0 => format!("{} never opens: {why}", item.name),
        1 => format!("{} never opens, and one thing lies in it: {why}", item.name),
        n => format!("{} never opens, and {n} things lie in it: {why}", item.name),
    }
}

/// How many things lie in a box, not counting what lies in boxes inside it.
fn contents(kit: &Kit, id: &BoxId) -> usize {
    let here = |place: &&Place| **place == Place::Box(id.clone());
    let props = kit.props.iter().map(|prop| &prop.place).filter(here).count();
    let notes = kit.notes.iter().map(|note| &note.place).filter(here).count();
    let boxes = kit.boxes.iter().map(|item| &item.place).filter(here).count();
    let parts = kit.puzzles.iter().flat_map(|puzzle| puzzle.parts.values()).filter(here).count();
    props + notes + boxes + parts + usize::from(kit.letter.place.as_ref().is_some_and(|place| here(&place)))
}
