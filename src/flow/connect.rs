//! Joining two things of a kit, as a drag from one to the other does in the drawing.

use super::facts::place_words;
use crate::diag::Anchor;
use crate::ids::{BoxId, LockId, PropId, PuzzleId};
use crate::kit::edit::Edit;
use crate::kit::{BoxDef, Kit, Place, PropRole};
use crate::script::capital;

/// What joining two things comes to.
#[derive(Clone, Debug, PartialEq)]
pub enum Joined {
    /// These edits, one step of undo, and what they do, in a sentence.
    Edits(Vec<Edit>, String),
    /// One of these parts of the puzzle is to be laid there; ask which, then [`lay_part`].
    Parts(PuzzleId, Vec<String>, Place),
    /// Nothing, for this reason, in a sentence.
    Refused(String),
}

/// Joins two things. It does not matter which was dragged, unless both could lie in one another: then the first is
/// put into the second.
#[must_use]
pub fn join(kit: &Kit, from: &Anchor, to: &Anchor) -> Joined {
    if from == to {
        return Joined::Refused("A thing cannot be joined to itself.".into());
    }
    one_way(kit, from, to).or_else(|| one_way(kit, to, from)).unwrap_or_else(|| Joined::Refused(refusal(from, to)))
}

/// Lays one part of a puzzle at a place.
#[must_use]
pub fn lay_part(kit: &Kit, puzzle: &PuzzleId, part: &str, place: &Place) -> Joined {
    let Some(old) = kit.puzzle(puzzle) else { return gone() };
    if old.parts.get(part) == Some(place) {
        return Joined::Refused(format!("The {} lies there already.", part.replace('-', " ")));
    }
    let mut new = old.clone();
    new.parts.insert(part.to_owned(), place.clone());
    let told = format!("Laid {}: the {} of \"{}\".", place_words(kit, place), part.replace('-', " "), new.title);
    Joined::Edits(vec![Edit::Puzzle(Box::new(new))], told)
}

/// What `from` can do with `to`; none when it can do nothing.
fn one_way(kit: &Kit, from: &Anchor, to: &Anchor) -> Option<Joined> {
    let joined = match (from, to) {
        (Anchor::Prop(prop), Anchor::Spot(spot)) => prop_to(kit, prop, Place::Spot(spot.clone())),
        (Anchor::Prop(prop), Anchor::Box(item)) => prop_to(kit, prop, Place::Box(item.clone())),
        (Anchor::Prop(prop), Anchor::Puzzle(puzzle, _)) => tool_to(kit, prop, puzzle),
        (Anchor::Prop(prop), Anchor::Lock(lock)) => key_to(kit, prop, lock),
        (Anchor::Puzzle(puzzle, _), Anchor::Lock(lock)) => puzzle_to(kit, puzzle, lock),
        (Anchor::Puzzle(puzzle, _), Anchor::Spot(spot)) => part_to(kit, puzzle, Place::Spot(spot.clone())),
        (Anchor::Puzzle(puzzle, _), Anchor::Box(item)) => part_to(kit, puzzle, Place::Box(item.clone())),
        (Anchor::Lock(lock), Anchor::Box(item)) => lock_to(kit, lock, item),
        (Anchor::Box(item), Anchor::Spot(spot)) => box_to(kit, item, Place::Spot(spot.clone())),
        (Anchor::Box(item), Anchor::Box(outer)) => box_to(kit, item, Place::Box(outer.clone())),
        (Anchor::Box(item), Anchor::Finish) => finish_by(kit, item),
        _ => return None,
    };
    Some(joined)
}

fn gone() -> Joined {
    Joined::Refused("One of the two is no longer in the kit.".into())
}

fn prop_to(kit: &Kit, prop: &PropId, place: Place) -> Joined {
    let Some(old) = kit.prop(prop) else { return gone() };
    if old.place == place {
        return Joined::Refused(format!("Already {}: {}.", place_words(kit, &place), old.name));
    }
    let told = format!("Laid {}: {}.", place_words(kit, &place), old.name);
    Joined::Edits(vec![Edit::Prop(Box::new(crate::kit::Prop { place, ..old.clone() }))], told)
}

fn tool_to(kit: &Kit, prop: &PropId, puzzle: &PuzzleId) -> Joined {
    let (Some(prop), Some(old)) = (kit.prop(prop), kit.puzzle(puzzle)) else { return gone() };
    if prop.role != PropRole::Tool {
        return Joined::Refused(format!(
            "No puzzle can need {} yet: say first in its own fields that it is a tool.",
            prop.name
        ));
    }
    if old.tools.contains(&prop.id) {
        return Joined::Refused(format!("\"{}\" needs {} already.", old.title, prop.name));
    }
    let mut new = old.clone();
    new.tools.push(prop.id.clone());
    Joined::Edits(vec![Edit::Puzzle(Box::new(new))], format!("\"{}\" now needs {}.", old.title, prop.name))
}

fn key_to(kit: &Kit, prop: &PropId, lock: &LockId) -> Joined {
    let (Some(old), Some(lock)) = (kit.prop(prop), kit.lock(lock)) else { return gone() };
    match &old.role {
        PropRole::Key(of) if *of == lock.id => {
            Joined::Refused(format!("{} opens {} already.", capital(&old.name), lock.name))
        }
        PropRole::Key(_) => {
            let new = crate::kit::Prop { role: PropRole::Key(lock.id.clone()), ..old.clone() };
            let told = format!("{} now opens {}.", capital(&old.name), lock.name);
            Joined::Edits(vec![Edit::Prop(Box::new(new))], told)
        }
        _ => Joined::Refused(format!(
            "No lock can be opened with {} yet: say first in its own fields that it is a key.",
            old.name
        )),
    }
}

fn puzzle_to(kit: &Kit, puzzle: &PuzzleId, lock: &LockId) -> Joined {
    let (Some(old), Some(lock)) = (kit.puzzle(puzzle), kit.lock(lock)) else { return gone() };
    if old.opens == lock.id {
        return Joined::Refused(format!("\"{}\" opens {} already.", old.title, lock.name));
    }
    let mut new = old.clone();
    new.opens = lock.id.clone();
    Joined::Edits(vec![Edit::Puzzle(Box::new(new))], format!("\"{}\" now opens {}.", old.title, lock.name))
}

fn part_to(kit: &Kit, puzzle: &PuzzleId, place: Place) -> Joined {
    let Some(old) = kit.puzzle(puzzle) else { return gone() };
    let parts: Vec<String> = old.parts.keys().cloned().collect();
    match parts.as_slice() {
        [] => Joined::Refused(format!("\"{}\" has no part that lies anywhere.", old.title)),
        [part] => lay_part(kit, puzzle, part, &place),
        _ => Joined::Parts(puzzle.clone(), parts, place),
    }
}

fn lock_to(kit: &Kit, lock: &LockId, item: &BoxId) -> Joined {
    let (Some(lock), Some(old)) = (kit.lock(lock), kit.box_def(item)) else { return gone() };
    if old.locks.contains(&lock.id) {
        return Joined::Refused(format!("{} hangs on {} already.", capital(&lock.name), old.name));
    }
    // A lock hangs in one place: it leaves every other box.
    let mut edits: Vec<Edit> = kit
        .boxes
        .iter()
        .filter(|other| other.id != old.id && other.locks.contains(&lock.id))
        .map(|other| {
            let locks = other.locks.iter().filter(|on| **on != lock.id).cloned().collect();
            Edit::Box(Box::new(BoxDef { locks, ..other.clone() }))
        })
        .collect();
    let mut new = old.clone();
    new.locks.push(lock.id.clone());
    edits.push(Edit::Box(Box::new(new)));
    Joined::Edits(edits, format!("{} now hangs on {}.", capital(&lock.name), old.name))
}

fn box_to(kit: &Kit, item: &BoxId, place: Place) -> Joined {
    let Some(old) = kit.box_def(item) else { return gone() };
    if old.place == place {
        return Joined::Refused(format!("{} stands {} already.", capital(&old.name), place_words(kit, &place)));
    }
    let mut around = place.clone();
    for _ in 0..=kit.boxes.len() {
        let Place::Box(outer) = &around else { break };
        if *outer == old.id {
            return Joined::Refused(format!(
                "{} cannot stand {}, because that stands in {} itself.",
                capital(&old.name),
                place_words(kit, &place),
                old.name
            ));
        }
        let Some(outer) = kit.box_def(outer) else { break };
        around = outer.place.clone();
    }
    let told = format!("{} now stands {}.", capital(&old.name), place_words(kit, &place));
    Joined::Edits(vec![Edit::Box(Box::new(BoxDef { place, ..old.clone() }))], told)
}

fn finish_by(kit: &Kit, item: &BoxId) -> Joined {
    let Some(item) = kit.box_def(item) else { return gone() };
    if kit.finish.opens == item.id {
        return Joined::Refused(format!("{} is the last box already.", capital(&item.name)));
    }
    let finish = crate::kit::Finish { opens: item.id.clone(), ..kit.finish.clone() };
    let told = format!("{} is now the last box; see that the closing card lies in it.", capital(&item.name));
    Joined::Edits(vec![Edit::Finish(Box::new(finish))], told)
}

/// Why two things cannot be joined.
fn refusal(from: &Anchor, to: &Anchor) -> String {
    const JOINS: &str = "A prop goes to a spot, a box or a puzzle; a puzzle to its lock or to where a part lies; a \
                         lock to its box; the last box to the end.";
    match (word(from), word(to)) {
        (Some(a), Some(b)) if a == b => format!("Two {a}s cannot be joined. {JOINS}"),
        (Some(a), Some(b)) => format!("A {a} and a {b} cannot be joined. {JOINS}"),
        _ => format!("These two cannot be joined. {JOINS}"),
    }
}

const fn word(at: &Anchor) -> Option<&'static str> {
    match at {
        Anchor::Spot(_) => Some("spot"),
        Anchor::Box(_) => Some("box"),
        Anchor::Lock(_) => Some("lock"),
        Anchor::Puzzle(..) => Some("puzzle"),
        Anchor::Prop(_) => Some("prop"),
        _ => None,
    }
}
