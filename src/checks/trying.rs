//! Mends that are tried before they are offered: the kit is laid out and checked with each.

use std::collections::BTreeSet;

use super::{Facts, Finding, Fix, FixKind, run_unmended};
use crate::diag::Anchor;
use crate::flow::facts::{place_of, place_words, thing_words};
use crate::kit::edit::{Edit, apply_all};
use crate::kit::{BoxDef, Kit, Lock, Lying, Note, Place, Prop, Puzzle};
use crate::limits;
use crate::party::{Kept, Party};

/// The first of these mends with which the finding is gone and no other has come, at the level of the finding. Only
/// the first [`limits::MEND_CANDIDATES`] are tried.
pub(super) fn sound(facts: &Facts<'_>, finding: &Finding, mends: impl IntoIterator<Item = Fix>) -> Option<Fix> {
    let mut kept = Kept::default();
    let mut look = |kit: &Kit| -> Option<Vec<Finding>> {
        kept.begin();
        let level = finding.level.unwrap_or(facts.party.level);
        let party = Party::with(kit, facts.theme, level, &mut kept).ok()?;
        let flow = party.flow(kit);
        let facts = Facts { kit, theme: facts.theme, party: &party, flow: &flow, set: &[], rehearsal: None };
        Some(run_unmended(&facts))
    };
    let count = |found: &[Finding]| found.iter().filter(|other| other.name == finding.name).count();
    let same = |other: &Finding| {
        other.name == finding.name && other.anchor == finding.anchor && other.message == finding.message
    };
    let before = look(facts.kit)?;
    // What was computed by other means, such as the paper, cannot be tried here.
    if !before.iter().any(same) {
        return None;
    }
    let known: BTreeSet<(&str, &Anchor)> = before.iter().map(|found| (found.name, &found.anchor)).collect();
    mends.into_iter().take(limits::MEND_CANDIDATES).find(|mend| {
        let mut kit = facts.kit.clone();
        apply_all(&mut kit, mend.edits.clone());
        look(&kit).is_some_and(|after| {
            count(&after) < count(&before)
                && !after.iter().any(same)
                && after.iter().all(|found| known.contains(&(found.name, &found.anchor)))
        })
    })
}

/// A mend that is made when the author says so.
pub(super) fn ask(title: impl Into<String>, edits: Vec<Edit>) -> Fix {
    Fix { title: title.into(), kind: FixKind::Ask, edits }
}

/// The mends that lay a thing elsewhere: at each spot, then in each box.
pub(super) fn elsewhere<'a>(facts: &Facts<'a>, thing: &Lying) -> impl Iterator<Item = Fix> + use<'a> {
    let (kit, party, thing) = (facts.kit, facts.party, thing.clone());
    let now = place_of(kit, &thing).cloned();
    places(kit).filter(move |place| Some(place) != now.as_ref()).filter_map(move |place| {
        let title = format!("Lay {} {}", thing_words(kit, &thing), place_words(kit, &place));
        Some(ask(party.say(&title), vec![laid(kit, &thing, place)?]))
    })
}

/// All places of a kit, spots first.
pub(super) fn places(kit: &Kit) -> impl Iterator<Item = Place> {
    let spots = kit.spots.iter().map(|spot| Place::Spot(spot.id.clone()));
    spots.chain(kit.boxes.iter().map(|item| Place::Box(item.id.clone())))
}

/// The edit that lays a thing at a place.
pub(super) fn laid(kit: &Kit, thing: &Lying, place: Place) -> Option<Edit> {
    Some(match thing {
        Lying::Letter => {
            let mut letter = kit.letter.clone();
            letter.place = Some(place);
            Edit::Letter(Box::new(letter))
        }
        Lying::Note(id) => Edit::Note(Box::new(Note { place, ..kit.note(id)?.clone() })),
        Lying::Prop(id) => Edit::Prop(Box::new(Prop { place, ..kit.prop(id)?.clone() })),
        Lying::Box(id) => Edit::Box(Box::new(BoxDef { place, ..kit.box_def(id)?.clone() })),
        Lying::Part(id, part) => {
            let mut puzzle = kit.puzzle(id)?.clone();
            puzzle.parts.insert(part.clone(), place);
            Edit::Puzzle(Box::new(puzzle))
        }
    })
}

/// The edit that lets a puzzle open another lock.
pub(super) fn opening(puzzle: &Puzzle, lock: &Lock) -> Edit {
    Edit::Puzzle(Box::new(Puzzle { opens: lock.id.clone(), ..puzzle.clone() }))
}

/// The mends that give each of these locks a symbol which no lock has.
pub(super) fn other_marks<'a>(facts: &Facts<'a>, locks: Vec<&'a Lock>) -> impl Iterator<Item = Fix> + use<'a> {
    let used: BTreeSet<&str> = facts.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
    let free: Vec<&str> =
        facts.theme.theme.symbols.keys().map(String::as_str).filter(|name| !used.contains(name)).collect();
    let party = facts.party;
    locks.into_iter().flat_map(move |lock| {
        let mends = free.iter().map(|mark| {
            let title = format!("Mark {} with the {}", party.say(&lock.name), mark.replace('-', " "));
            ask(title, vec![Edit::Lock(Box::new(Lock { mark: (*mark).to_owned(), ..lock.clone() }))])
        });
        mends.collect::<Vec<Fix>>()
    })
}
