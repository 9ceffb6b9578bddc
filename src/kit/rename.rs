use super::edit::{Edit, Item, apply, between};
use super::{Kit, Lying, Place, PropRole};
use crate::diag::{Anchor, Hinted, PuzzleField, Trouble};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId, slug};

/// The edits that give an item another id and change every reference to it: one step. The item keeps its place in its
/// list.
///
/// A puzzle's chance follows its id, so a puzzle of a mechanic that uses chance is arranged anew.
///
/// # Errors
/// When the kit has no such item, the new id is none, or another item of the kind has it.
pub fn rename(kit: &Kit, item: &Item, id: &str) -> Hinted<Vec<Edit>> {
    let mut new = kit.clone();
    macro_rules! renamed {
        ($list:ident, $old:expr, $id:ident, $refer:path) => {{
            let fresh = $id::new(id).ok_or_else(|| no_id(id))?;
            if kit.$list.iter().any(|other| other.id == fresh) {
                return Err(taken(id));
            }
            let at = kit.$list.iter().position(|item| item.id == *$old).ok_or_else(gone)?;
            if let Some(item) = new.$list.get_mut(at) {
                item.id = fresh.clone();
            }
            $refer(&mut new, $old, &fresh);
            vec![Edit::Id(item.clone(), 0, id.to_owned())]
        }};
    }
    let mut edits = match item {
        Item::Note(old) => renamed!(notes, old, NoteId, note),
        Item::Spot(old) => renamed!(spots, old, SpotId, spot),
        Item::Box(old) => renamed!(boxes, old, BoxId, box_def),
        Item::Lock(old) => renamed!(locks, old, LockId, lock),
        Item::Prop(old) => renamed!(props, old, PropId, prop),
        Item::Puzzle(old) => renamed!(puzzles, old, PuzzleId, puzzle),
    };
    // All else that differs refers to it.
    let mut same = kit.clone();
    for edit in edits.clone() {
        apply(&mut same, edit);
    }
    edits.extend(between(&same, &new));
    Ok(edits)
}

fn no_id(text: &str) -> Trouble {
    Trouble::new(format!("\"{text}\" cannot be an id"))
        .hint(format!("write lower-case letters, digits and single hyphens, such as {}", slug(text)))
}

fn taken(id: &str) -> Trouble {
    Trouble::new(format!("the kit already has a thing of this kind with the id {id}")).hint("choose another")
}

fn gone() -> Trouble {
    Trouble::new("this is not in the kit any more").hint("go back to the list and choose again")
}

/// Changes what `Lying` and the list of words to keep say of an item.
fn elsewhere(kit: &mut Kit, old: &Anchor, new: &Anchor, lying: impl Fn(&mut Lying)) {
    kit.apart.iter_mut().flat_map(|pair| [&mut pair.one, &mut pair.other]).for_each(lying);
    let (old, new) = (old.to_string(), new.to_string());
    let dressed = &mut kit.dressed;
    let hints = dressed.old_hints.iter_mut().map(|hint| &mut hint.at);
    for at in dressed.kept.iter_mut().map(|kept| &mut kept.at).chain(hints) {
        let rest = at.strip_prefix(&old).filter(|rest| rest.is_empty() || rest.starts_with(','));
        if let Some(rest) = rest {
            *at = format!("{new}{rest}");
        }
    }
}

/// All places of the kit, to change.
fn places(kit: &mut Kit) -> impl Iterator<Item = &mut Place> {
    let notes = kit.notes.iter_mut().map(|note| &mut note.place);
    let boxes = kit.boxes.iter_mut().map(|item| &mut item.place);
    let props = kit.props.iter_mut().map(|prop| &mut prop.place);
    let parts = kit.puzzles.iter_mut().flat_map(|puzzle| puzzle.parts.values_mut());
    kit.letter.place.iter_mut().chain(notes).chain(boxes).chain(props).chain(parts)
}

fn swap<T: PartialEq + Clone>(id: &mut T, old: &T, new: &T) {
    if id == old {
        id.clone_from(new);
    }
}

fn note(kit: &mut Kit, old: &NoteId, new: &NoteId) {
    swap(&mut kit.finish.card, old, new);
    elsewhere(kit, &Anchor::Note(old.clone()), &Anchor::Note(new.clone()), |lying| {
        if let Lying::Note(id) = lying {
            swap(id, old, new);
        }
    });
}

fn spot(kit: &mut Kit, old: &SpotId, new: &SpotId) {
    for place in places(kit) {
        if let Place::Spot(id) = place {
            swap(id, old, new);
        }
    }
    elsewhere(kit, &Anchor::Spot(old.clone()), &Anchor::Spot(new.clone()), |_| {});
}

fn box_def(kit: &mut Kit, old: &BoxId, new: &BoxId) {
    for place in places(kit) {
        if let Place::Box(id) = place {
            swap(id, old, new);
        }
    }
    swap(&mut kit.finish.opens, old, new);
    elsewhere(kit, &Anchor::Box(old.clone()), &Anchor::Box(new.clone()), |lying| {
        if let Lying::Box(id) = lying {
            swap(id, old, new);
        }
    });
}

fn lock(kit: &mut Kit, old: &LockId, new: &LockId) {
    kit.boxes.iter_mut().flat_map(|item| &mut item.locks).for_each(|id| swap(id, old, new));
    kit.puzzles.iter_mut().for_each(|puzzle| swap(&mut puzzle.opens, old, new));
    for prop in &mut kit.props {
        if let PropRole::Key(id) = &mut prop.role {
            swap(id, old, new);
        }
    }
    elsewhere(kit, &Anchor::Lock(old.clone()), &Anchor::Lock(new.clone()), |_| {});
}

fn prop(kit: &mut Kit, old: &PropId, new: &PropId) {
    kit.puzzles.iter_mut().flat_map(|puzzle| &mut puzzle.tools).for_each(|id| swap(id, old, new));
    kit.boxes.iter_mut().filter_map(|item| item.printed.as_mut()).for_each(|id| swap(id, old, new));
    elsewhere(kit, &Anchor::Prop(old.clone()), &Anchor::Prop(new.clone()), |lying| {
        if let Lying::Prop(id) = lying {
            swap(id, old, new);
        }
    });
}

fn puzzle(kit: &mut Kit, old: &PuzzleId, new: &PuzzleId) {
    let whole = |id: &PuzzleId| Anchor::Puzzle(id.clone(), PuzzleField::Whole);
    for play in &mut kit.plays.plays {
        if let Some(known) = play.puzzles.remove(old) {
            play.puzzles.insert(new.clone(), known);
        }
    }
    elsewhere(kit, &whole(old), &whole(new), |lying| {
        if let Lying::Part(id, _) = lying {
            swap(id, old, new);
        }
    });
}
