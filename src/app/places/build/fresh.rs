//! Fresh things, sound enough to go on with: an id of their own, words that say what is missing.

use crate::app::session::Selection;
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};
use crate::kit::edit::Edit;
use crate::kit::{
    BoxDef, HintLadder, Kit, Lock, LockKind, Note, NoteKind, Place, Prop, PropRole, Puzzle, RawSetup, Spot,
};
use crate::mechanics::MECHANICS;

/// The first of `stem`, `stem-2`, `stem-3`, … that is free.
fn free<T>(stem: &str, make: impl Fn(&str) -> T, taken: impl Fn(&T) -> bool) -> T {
    let mut id = make(stem);
    let mut n = 1_u32;
    while taken(&id) {
        n += 1;
        id = make(&format!("{stem}-{n}"));
    }
    id
}

/// Where a fresh thing lies: the first spot, else the first box, else a spot still to be made.
fn somewhere(kit: &Kit) -> Place {
    if let Some(spot) = kit.spots.first() {
        return Place::Spot(spot.id.clone());
    }
    kit.boxes.first().map_or_else(|| Place::Spot(SpotId::from_text("spot")), |item| Place::Box(item.id.clone()))
}

/// A note.
#[must_use]
pub fn note(kit: &Kit) -> (Edit, Selection) {
    let id = free("note", NoteId::from_text, |id| kit.note(id).is_some());
    let note = Note {
        id: id.clone(),
        kind: NoteKind::Note,
        title: "A note".into(),
        text: "Write here what guests read.".into(),
        picture: None,
        place: somewhere(kit),
    };
    (Edit::Note(Box::new(note)), Selection::Note(id))
}

/// A spot.
#[must_use]
pub fn spot(kit: &Kit) -> (Edit, Selection) {
    let id = free("spot", SpotId::from_text, |id| kit.spot(id).is_some());
    let spot = Spot { id: id.clone(), name: "a new spot".into(), about: String::new() };
    (Edit::Spot(Box::new(spot)), Selection::Spot(id))
}

/// A prop.
#[must_use]
pub fn prop(kit: &Kit) -> (Edit, Selection) {
    let id = free("prop", PropId::from_text, |id| kit.prop(id).is_some());
    let prop = Prop {
        id: id.clone(),
        name: "a new prop".into(),
        role: PropRole::Decoration,
        place: somewhere(kit),
        material: String::new(),
        about: String::new(),
    };
    (Edit::Prop(Box::new(prop)), Selection::Prop(id))
}

/// A lock.
#[must_use]
pub fn lock(kit: &Kit) -> (Edit, Selection) {
    let id = free("lock", LockId::from_text, |id| kit.lock(id).is_some());
    let lock = Lock {
        id: id.clone(),
        name: "a new lock".into(),
        kind: LockKind::Digits(3),
        mark: String::new(),
        hole: 0,
        how_to_set: String::new(),
    };
    (Edit::Lock(Box::new(lock)), Selection::Lock(id))
}

/// A box.
#[must_use]
pub fn box_def(kit: &Kit) -> (Edit, Selection) {
    let id = free("box", BoxId::from_text, |id| kit.box_def(id).is_some());
    let item = BoxDef {
        id: id.clone(),
        name: "a new box".into(),
        place: somewhere(kit),
        locks: Vec::new(),
        hasp: false,
        label: None,
        about: String::new(),
    };
    (Edit::Box(Box::new(item)), Selection::Box(id))
}

/// A puzzle of the first mechanic that the kit does not use yet, on the first lock without one. None when the
/// program knows no mechanic.
#[must_use]
pub fn puzzle(kit: &Kit) -> Option<(Edit, Selection)> {
    let id = free("puzzle", PuzzleId::from_text, |id| kit.puzzle(id).is_some());
    let unused = |id: &str| kit.puzzles.iter().all(|puzzle| puzzle.mechanic != id);
    let mechanic = MECHANICS.iter().find(|mechanic| unused(mechanic.meta().id)).or_else(|| MECHANICS.first())?;
    let opens = kit
        .locks
        .iter()
        .find(|lock| kit.puzzle_of(&lock.id).is_none())
        .or_else(|| kit.locks.first())
        .map_or_else(|| LockId::from_text("lock"), |lock| lock.id.clone());
    let setup = RawSetup::new(&mechanic.default_setup().ok()?).ok()?;
    let puzzle = Puzzle {
        id: id.clone(),
        title: "A new puzzle".into(),
        mechanic: mechanic.meta().id.to_owned(),
        answer: String::new(),
        opens,
        setup,
        parts: mechanic
            .meta()
            .parts
            .iter()
            .filter(|part| !part.optional)
            .map(|part| (part.key.to_owned(), somewhere(kit)))
            .collect(),
        tools: Vec::new(),
        hints: HintLadder::default(),
        minutes: None,
        gentle: None,
        stiff: None,
        arrangement: 0,
    };
    Some((Edit::Puzzle(Box::new(puzzle)), Selection::Puzzle(id)))
}
