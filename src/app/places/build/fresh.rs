//! Fresh things, sound enough to go on with: an id of their own, words that say what is missing.

use crate::app::session::Selection;
use crate::codes::{as_set, guess, likeness};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};
use crate::kit::edit::Edit;
use crate::kit::material::{Material, material};
use crate::kit::{
    BoxDef, HintLadder, Kit, Lock, LockKind, Note, NoteKind, Place, Prop, PropRole, Puzzle, RawSetup, Spot,
};
use crate::mechanics::AnyMechanic;
use crate::mechanics::sample::{self, carried};
use crate::party::rng_of;
use crate::readings::same_answer;
use crate::redress::symbols_used;
use crate::theme::{Loaded, Theme};

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
    let spot = Spot { id: id.clone(), name: "a new spot".into(), about: String::new(), person: false };
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
        amount: Default::default(),
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    };
    (Edit::Prop(Box::new(prop)), Selection::Prop(id))
}

/// A lock.
#[must_use]
pub fn lock(kit: &Kit, theme: &Theme) -> (Edit, Selection) {
    let id = free("lock", LockId::from_text, |id| kit.lock(id).is_some());
    (Edit::Lock(Box::new(fresh_lock(id.clone(), LockKind::Digits(3), (kit, theme)))), Selection::Lock(id))
}

/// A lock with a mark that nothing in the kit uses yet, so that guests tell it from the others; it is called after it.
fn fresh_lock(id: LockId, kind: LockKind, (kit, theme): (&Kit, &Theme)) -> Lock {
    let used = symbols_used(kit, theme);
    let mark = theme.symbols.keys().find(|name| !used.contains(*name)).cloned().unwrap_or_default();
    let name =
        if mark.is_empty() { "a new lock".into() } else { format!("the lock with the {}", mark.replace('-', " ")) };
    Lock { id, name, kind, mark, hole: 0, how_to_set: String::new(), tag: true }
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
        printed: None,
        about: String::new(),
    };
    (Edit::Box(Box::new(item)), Selection::Box(id))
}

/// A tool of a material, such as a puzzle asks for.
#[must_use]
pub fn tool(kit: &Kit, material: &Material) -> Prop {
    let id = free(material.id, PropId::from_text, |id| kit.prop(id).is_some());
    Prop {
        id,
        name: format!("the {}", material.name),
        role: PropRole::Tool,
        place: somewhere(kit),
        material: material.id.to_owned(),
        amount: crate::kit::HowMany::Usual,
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    }
}

/// A puzzle of this mechanic that can be played as it stands, with the tools that it needs: on the first lock without a puzzle for which an answer is
/// found, else on a fresh lock, with an answer that no other puzzle has and that nobody guesses first.
#[must_use]
pub fn puzzle_of(kit: &Kit, theme: &Loaded, mechanic: &'static dyn AnyMechanic) -> Option<(Vec<Edit>, Selection)> {
    let id = free(mechanic.meta().id, PuzzleId::from_text, |id| kit.puzzle(id).is_some());
    let setup = mechanic.default_setup().ok()?;
    let mut rng = rng_of(kit.seed, &id);
    let mut answer = |kind: &LockKind| {
        // Neither the code of another lock, nor one that is near to it.
        let known = |answer: &str| {
            kit.puzzles.iter().any(|puzzle| {
                let lock = kit.lock(&puzzle.opens);
                let set = lock.map_or_else(|| puzzle.answer.clone(), |lock| as_set(&lock.kind, &puzzle.answer));
                same_answer(&puzzle.answer, answer) || likeness(&set, &as_set(kind, answer)).is_some()
            })
        };
        let refused = |answer: &str| *kind != LockKind::Key && (guess(kind, answer).is_some() || known(answer));
        carried(mechanic, &setup, kind, theme, &refused, &mut rng).map(|(answer, _)| answer)
    };
    let mut edits = Vec::new();
    let waiting = kit.locks.iter().filter(|lock| kit.puzzle_of(&lock.id).is_none());
    let found = waiting.into_iter().find_map(|lock| Some((lock.id.clone(), answer(&lock.kind)?)));
    let (opens, answer) = match found {
        Some(found) => found,
        None => {
            let (kind, answer) = sample::locks().into_iter().find_map(|kind| Some((kind.clone(), answer(&kind)?)))?;
            let lock_id = free("lock", LockId::from_text, |id| kit.lock(id).is_some());
            edits.push(Edit::Lock(Box::new(fresh_lock(lock_id.clone(), kind, (kit, &theme.theme)))));
            if let Some(item) = kit.boxes.first() {
                let mut item = item.clone();
                item.locks.push(lock_id.clone());
                edits.push(Edit::Box(Box::new(item)));
            }
            (lock_id, answer)
        }
    };
    let mut puzzle = bare(kit, mechanic, id.clone(), opens)?;
    mechanic.meta().name.clone_into(&mut puzzle.title);
    puzzle.answer = answer;
    for wanted in mechanic.meta().tools {
        let known = kit.props.iter().find(|prop| prop.role == PropRole::Tool && prop.material == *wanted);
        if let Some(prop) = known {
            puzzle.tools.push(prop.id.clone());
        } else if let Some(material) = material(wanted) {
            let prop = tool(kit, material);
            puzzle.tools.push(prop.id.clone());
            edits.push(Edit::Prop(Box::new(prop)));
        }
    }
    edits.push(Edit::Puzzle(Box::new(puzzle)));
    Some((edits, Selection::Puzzle(id)))
}

/// A puzzle without title and answer; its parts lie at the first spot.
fn bare(kit: &Kit, mechanic: &dyn AnyMechanic, id: PuzzleId, opens: LockId) -> Option<Puzzle> {
    let setup = RawSetup::new(&mechanic.default_setup().ok()?).ok()?;
    let parts = mechanic.meta().parts.iter().filter(|part| !part.optional);
    Some(Puzzle {
        id,
        title: "A new puzzle".into(),
        mechanic: mechanic.meta().id.to_owned(),
        answer: String::new(),
        opens,
        arrangement: 0,
        setup,
        parts: parts.map(|part| (part.key.to_owned(), somewhere(kit))).collect(),
        tools: Vec::new(),
        preparation: Vec::new(),
        hints: HintLadder::default(),
        slow_minutes: None,
        names: std::collections::BTreeMap::new(),
        minutes: None,
        gentle: None,
        stiff: None,
    })
}
