//! Mends of names that lead nowhere: the nearest name that leads somewhere, or nothing in its place.

use super::trying::{ask, opening};
use super::{Facts, Finding, Fix, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::ids::{LockId, PropId};
use crate::kit::edit::Edit;
use crate::kit::file::nearest;
use crate::kit::material::{MATERIALS, material};
use crate::kit::{BoxDef, Finish, Form, Lock, Lying, Place, Prop, PropRole, Puzzle};
use crate::mechanics::MECHANICS;

/// A name put in the place of the one that leads nowhere, the nearest first; or that one taken out. Where none of them
/// leaves the kit without new findings, the nearest name is offered all the same: what was meant shows what else is
/// wrong.
pub(super) fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let (near, others) = match &finding.anchor {
        Anchor::Puzzle(id, field) => puzzle(facts, facts.puzzle(id)?, field)?,
        Anchor::Letter => {
            let place = facts.kit.letter.place.as_ref()?;
            let mut aloud = facts.kit.letter.clone();
            aloud.place = None;
            let aloud = ask("Let the host read it aloud", vec![Edit::Letter(Box::new(aloud))]);
            (near_place(facts, &Lying::Letter, place), vec![aloud])
        }
        Anchor::Note(id) => (near_place(facts, &Lying::Note(id.clone()), &facts.note(id)?.place), Vec::new()),
        Anchor::Box(id) => on_box(facts, facts.box_def(id)?),
        Anchor::Prop(id) => prop(facts, facts.prop(id)?),
        Anchor::Lock(id) => mark(facts, facts.lock(id)?)?,
        Anchor::Finish => finish(facts),
        Anchor::Kit => (None, apart(facts)),
        _ => return None,
    };
    let all = near.iter().chain(&others).cloned();
    trying::sound(facts, finding, all.collect::<Vec<Fix>>()).or(near)
}

/// The nearest name as a mend, and the others.
type Mends = (Option<Fix>, Vec<Fix>);

fn puzzle(facts: &Facts<'_>, puzzle: &Puzzle, field: &PuzzleField) -> Option<Mends> {
    let kit = facts.kit;
    let put = |mended: Puzzle| vec![Edit::Puzzle(Box::new(mended))];
    Some(match field {
        PuzzleField::Opens => {
            let near = near_lock(facts, &puzzle.opens)?;
            let edits = vec![opening(puzzle, facts.lock(&near)?)];
            (Some(instead(near.as_str(), edits)), Vec::new())
        }
        PuzzleField::Part(part) => {
            let thing = Lying::Part(puzzle.id.clone(), part.clone());
            (near_place(facts, &thing, puzzle.parts.get(part)?), trying::elsewhere(facts, &thing).collect())
        }
        PuzzleField::Name(key) => {
            let words = facts.theme.theme.dressings.get(&puzzle.mechanic)?;
            let known: Vec<&str> = words.keys().map(String::as_str).collect();
            let near = nearest(key, &known).filter(|near| !puzzle.names.contains_key(*near)).map(|near| {
                let mut mended = puzzle.clone();
                if let Some(name) = mended.names.remove(key) {
                    mended.names.insert(near.to_owned(), name);
                }
                instead(near, put(mended))
            });
            let mut without = puzzle.clone();
            without.names.remove(key);
            (near, vec![ask(format!("Take the name `{key}` off"), put(without))])
        }
        PuzzleField::Tool(tool) => {
            let known: Vec<&str> = kit.props.iter().map(|prop| prop.id.as_str()).collect();
            let near = nearest(tool.as_str(), &known).and_then(PropId::new).map(|near| {
                let mut mended = puzzle.clone();
                mended.tools.iter_mut().filter(|id| *id == tool).for_each(|id| *id = near.clone());
                instead(near.as_str(), put(mended))
            });
            let mut without = puzzle.clone();
            without.tools.retain(|id| id != tool);
            (near, vec![ask("Take it off the tools", put(without))])
        }
        PuzzleField::Mechanic => {
            let known: Vec<&str> = MECHANICS.iter().map(|mechanic| mechanic.meta().id).collect();
            let near = nearest(&puzzle.mechanic, &known)?;
            (Some(instead(near, put(Puzzle { mechanic: near.to_owned(), ..puzzle.clone() }))), Vec::new())
        }
        _ => return None,
    })
}

fn on_box(facts: &Facts<'_>, item: &BoxDef) -> Mends {
    let near = near_place(facts, &Lying::Box(item.id.clone()), &item.place).filter(|_| unknown(facts, &item.place));
    let Some(lost) = item.locks.iter().find(|lock| facts.lock(lock).is_none()) else {
        let (other, rest) = envelope(facts, item);
        return (near.or(other), rest);
    };
    let put = |locks: Vec<LockId>| vec![Edit::Box(Box::new(BoxDef { locks, ..item.clone() }))];
    let others = item.locks.iter().filter(|lock| *lock != lost).cloned();
    let without = ask(format!("Take {lost} off it"), put(others.collect()));
    let near = near.or_else(|| {
        let near = near_lock(facts, lost).filter(|near| !item.locks.contains(near))?;
        let locks = item.locks.iter().map(|lock| if lock == lost { near.clone() } else { lock.clone() });
        Some(instead(near.as_str(), put(locks.collect())))
    });
    (near, vec![without])
}

pub(super) fn is_envelope(prop: &Prop) -> bool {
    prop.printed.as_ref().is_some_and(|spec| spec.form == Form::Envelope)
}

/// The envelope that a box is printed as: the nearest name, the envelope laid where the box stands, or none.
fn envelope(facts: &Facts<'_>, item: &BoxDef) -> Mends {
    let kit = facts.kit;
    let Some(id) = item.printed.as_ref().filter(|_| kit.printed_as(item).is_none()) else { return (None, Vec::new()) };
    let put = |printed: Option<PropId>| Edit::Box(Box::new(BoxDef { printed, ..item.clone() }));
    let laid = |prop: &Prop| Edit::Prop(Box::new(Prop { place: item.place.clone(), ..prop.clone() }));
    let mut others = Vec::new();
    let meant = facts.prop(id).filter(|prop| is_envelope(prop));
    if let Some(prop) = meant.filter(|prop| prop.place != item.place) {
        others.push(ask(facts.party.say(&format!("Lay it where {} stands", item.name)), vec![laid(prop)]));
    }
    others.push(ask(facts.party.say(&format!("Let {} be bought or found at home", item.name)), vec![put(None)]));
    let known: Vec<&Prop> = kit.props.iter().filter(|prop| is_envelope(prop) && kit.as_box(prop).is_none()).collect();
    let names: Vec<&str> = known.iter().map(|prop| prop.id.as_str()).collect();
    let near = nearest(id.as_str(), &names).filter(|_| meant.is_none());
    let near = near.and_then(|near| known.iter().find(|prop| prop.id.as_str() == near)).map(|prop| {
        let mut edits = vec![put(Some(prop.id.clone()))];
        edits.extend((prop.place != item.place).then(|| laid(prop)));
        instead(prop.id.as_str(), edits)
    });
    (near, others)
}

fn prop(facts: &Facts<'_>, prop: &Prop) -> Mends {
    let put = |mended: Prop| vec![Edit::Prop(Box::new(mended))];
    if unknown(facts, &prop.place) {
        let thing = Lying::Prop(prop.id.clone());
        return (near_place(facts, &thing, &prop.place), trying::elsewhere(facts, &thing).collect());
    }
    if let PropRole::Key(lock) = &prop.role
        && facts.lock(lock).is_none()
    {
        let near = near_lock(facts, lock);
        let key =
            |near: LockId| instead(near.as_str(), put(Prop { role: PropRole::Key(near.clone()), ..prop.clone() }));
        return (near.map(key), vec![]);
    }
    if prop.material.is_empty() || material(&prop.material).is_some() {
        return (None, Vec::new());
    }
    let known: Vec<&str> = MATERIALS.iter().map(|material| material.id).collect();
    let with = |material: &str| put(Prop { material: material.to_owned(), ..prop.clone() });
    let near = nearest(&prop.material, &known).map(|near| instead(near, with(near)));
    (near, vec![ask("Name no material", with(""))])
}

fn mark(facts: &Facts<'_>, lock: &Lock) -> Option<Mends> {
    let known: Vec<&str> = facts.theme.theme.symbols.keys().map(String::as_str).collect();
    let with = |mark: &str| vec![Edit::Lock(Box::new(Lock { mark: mark.to_owned(), ..lock.clone() }))];
    let near = nearest(&lock.mark, &known).map(|near| instead(near, with(near)));
    let others = trying::other_marks(facts, vec![facts.lock(&lock.id)?]);
    Some((near, others.chain([ask("Give it no mark", with(""))]).collect()))
}

fn finish(facts: &Facts<'_>) -> Mends {
    let kit = facts.kit;
    let put = |finish: Finish| vec![Edit::Finish(Box::new(finish))];
    let mut mends: Vec<Fix> = Vec::new();
    if facts.box_def(&kit.finish.opens).is_none() {
        let known: Vec<&str> = kit.boxes.iter().map(|item| item.id.as_str()).collect();
        let near = nearest(kit.finish.opens.as_str(), &known);
        let boxes = kit.boxes.iter().filter(|item| Some(item.id.as_str()) == near).chain(&kit.boxes);
        mends.extend(boxes.map(|item| {
            let title = facts.party.say(&format!("Let {} be the last box", item.name));
            ask(title, put(Finish { opens: item.id.clone(), ..kit.finish.clone() }))
        }));
    }
    if facts.note(&kit.finish.card).is_none() {
        let known: Vec<&str> = kit.notes.iter().map(|note| note.id.as_str()).collect();
        let near = nearest(kit.finish.card.as_str(), &known);
        let notes = kit.notes.iter().filter(|note| Some(note.id.as_str()) == near).chain(&kit.notes);
        mends.extend(notes.map(|note| {
            ask(
                format!("Let {} be the closing card", note.id),
                put(Finish { card: note.id.clone(), ..kit.finish.clone() }),
            )
        }));
    }
    (None, mends)
}

/// The pairs to lie apart without those that name what is not in the kit.
fn apart(facts: &Facts<'_>) -> Vec<Fix> {
    let known = |thing: &Lying| match thing {
        Lying::Letter => true,
        Lying::Note(id) => facts.note(id).is_some(),
        Lying::Prop(id) => facts.prop(id).is_some(),
        Lying::Box(id) => facts.box_def(id).is_some(),
        Lying::Part(id, part) => facts.puzzle(id).is_some_and(|puzzle| puzzle.parts.contains_key(part)),
    };
    let left = facts.kit.apart.iter().filter(|pair| known(&pair.one) && known(&pair.other));
    vec![ask("Take the pair off the list", vec![Edit::Apart(left.cloned().collect())])]
}

fn instead(name: &str, edits: Vec<Edit>) -> Fix {
    ask(format!("Use {name} instead"), edits)
}

fn near_lock(facts: &Facts<'_>, lock: &LockId) -> Option<LockId> {
    let known: Vec<&str> = facts.kit.locks.iter().map(|lock| lock.id.as_str()).collect();
    nearest(lock.as_str(), &known).and_then(LockId::new)
}

fn unknown(facts: &Facts<'_>, place: &Place) -> bool {
    match place {
        Place::Spot(id) => facts.spot(id).is_none(),
        Place::Box(id) => facts.box_def(id).is_none(),
    }
}

/// The thing laid at the place of the same kind whose name is nearest.
fn near_place(facts: &Facts<'_>, thing: &Lying, place: &Place) -> Option<Fix> {
    let name = |place: &Place| match place {
        Place::Spot(id) => id.to_string(),
        Place::Box(id) => id.to_string(),
    };
    let kind =
        |other: &Place| matches!((other, place), (Place::Spot(_), Place::Spot(_)) | (Place::Box(_), Place::Box(_)));
    let known: Vec<Place> = trying::places(facts.kit).filter(|other| kind(other)).collect();
    let names: Vec<String> = known.iter().map(name).collect();
    let near = nearest(&name(place), &names.iter().map(String::as_str).collect::<Vec<&str>>())?;
    let place = known.iter().find(|place| name(place) == near)?;
    Some(instead(near, vec![trying::laid(facts.kit, thing, place.clone())?]))
}
