//! What several checks look up.

use std::collections::BTreeMap;

use super::Facts;
use crate::codes::{Index, as_set};
use crate::diag::Anchor;
use crate::face::Piece;
use crate::ids::LockId;
use crate::kit::file::nearest;
use crate::kit::material::{Material, material};
use crate::kit::{BoxDef, Kit, Lock, LockKind, Place, Prop, Puzzle};
use crate::party::LaidPuzzle;
use crate::script::Readability;

/// Where a piece comes from: what its first text says, else the theme, which drew it.
pub(super) fn of_piece(piece: &Piece) -> Anchor {
    let from = piece.front.runs().next().map(|run| run.from.clone());
    from.unwrap_or(Anchor::Theme)
}

/// A code: a puzzle, its lock, and the answer as it is set on it.
pub(super) struct Code<'a> {
    pub puzzle: &'a Puzzle,
    pub lock: &'a Lock,
    pub answer: String,
}

impl Code<'_> {
    /// Whether the lock has wheels or pushes.
    pub const fn wheels(&self) -> bool {
        !matches!(self.lock.kind, LockKind::Key | LockKind::Spoken)
    }
}

/// The codes of all puzzles whose lock exists and can show them.
pub(super) fn codes<'a>(facts: &Facts<'a>) -> Vec<Code<'a>> {
    facts
        .kit
        .puzzles
        .iter()
        .zip(&facts.party.puzzles)
        .filter_map(|(puzzle, laid)| {
            let lock = facts.lock(&puzzle.opens)?;
            let answer = as_set(&lock.kind, &laid.answer);
            lock.kind.spells(&answer).then_some(Code { puzzle, lock, answer })
        })
        .collect()
}

/// The codes by what texts can say of them.
pub(super) fn index(codes: &[Code<'_>]) -> Index {
    Index::new(codes.iter().map(|code| (&code.lock.kind, code.answer.as_str())))
}

/// The letter and the notes: where they stand, what to call them, and what was counted in them.
pub(super) fn readable(facts: &Facts<'_>) -> Vec<(Anchor, String, Readability)> {
    let letter = &facts.party.script.letter;
    let parts = [&letter.salutation, &letter.body, &letter.closing].map(Readability::of_rich);
    let whole = parts.into_iter().fold(Readability::default(), Readability::and);
    let mut all = vec![(Anchor::Letter, "the letter".to_owned(), whole)];
    for note in &facts.party.script.notes {
        let name = format!("the text \"{}\"", note.title.text());
        all.push((Anchor::Note(note.id.clone()), name, Readability::of_rich(&note.text)));
    }
    all
}

/// The box that each lock shuts; the first, should there be two.
pub(super) fn shut(kit: &Kit) -> BTreeMap<&LockId, &BoxDef> {
    let mut shut = BTreeMap::new();
    for item in &kit.boxes {
        for lock in &item.locks {
            shut.entry(lock).or_insert(item);
        }
    }
    shut
}

/// The puzzles of the kit with what became of them.
pub(super) fn puzzles<'a>(facts: &Facts<'a>) -> impl Iterator<Item = (&'a Puzzle, &'a LaidPuzzle)> {
    facts.kit.puzzles.iter().zip(&facts.party.puzzles)
}

/// Whether a place is in the kit; else what to say of it, the nearest name and all of them.
pub(super) fn unknown_place(facts: &Facts<'_>, place: &Place) -> Option<(String, Vec<String>)> {
    let kit = facts.kit;
    match place {
        Place::Spot(id) if facts.spot(id).is_none() => {
            let near = near(id.as_str(), "spots", kit.spots.iter().map(|spot| spot.id.as_str()));
            Some((format!("there is no spot `{id}`"), near))
        }
        Place::Box(id) if facts.box_def(id).is_none() => {
            let near = near(id.as_str(), "boxes", kit.boxes.iter().map(|item| item.id.as_str()));
            Some((format!("there is no box `{id}`"), near))
        }
        Place::Spot(_) | Place::Box(_) => None,
    }
}

/// Names that a hint lists; of more, it lists none.
const LISTED: usize = 60;

/// "did you mean …", if any known name is near, and what there is: "the spots are …".
pub(super) fn near<'a>(name: &str, what: &str, known: impl Iterator<Item = &'a str>) -> Vec<String> {
    let known: Vec<&str> = known.collect();
    let near = nearest(name, &known).map(|near| format!("did you mean `{near}`?"));
    let all = match known.as_slice() {
        [] => Some(format!("there are no {what} yet: add one")),
        [one] => Some(format!("the only one of the {what} is {one}")),
        _ if known.len() <= LISTED => Some(format!("the {what} are {}", known.join(", "))),
        _ => None,
    };
    near.into_iter().chain(all).collect()
}

/// A material in use, and where.
pub(super) enum Use<'a> {
    /// A prop is made of it.
    Prop(&'a Prop),
    /// A puzzle's preparation takes it.
    Puzzle(&'a Puzzle),
}

impl Use<'_> {
    pub fn anchor(&self) -> Anchor {
        use crate::diag::{Anchor, PuzzleField};
        match self {
            Self::Prop(prop) => Anchor::Prop(prop.id.clone()),
            Self::Puzzle(puzzle) => Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole),
        }
    }
}

/// Every material in use, each once for each prop and puzzle.
pub(super) fn materials<'a>(facts: &Facts<'a>) -> Vec<(&'static Material, Use<'a>)> {
    let mut found = Vec::new();
    for prop in &facts.kit.props {
        let step = crate::prep::printed::step(prop);
        let needs = step.iter().flat_map(|step| &step.needs).map(|need| need.material);
        let own = needs.chain([prop.material.as_str()]).filter_map(material);
        found.extend(own.map(|material| (material, Use::Prop(prop))));
    }
    for (puzzle, laid) in puzzles(facts) {
        let mut ids: Vec<&str> = laid.prep.iter().flat_map(|step| &step.needs).map(|need| need.material).collect();
        ids.extend(puzzle.preparation.iter().flat_map(|step| step.takes.keys()).map(String::as_str));
        ids.sort_unstable();
        ids.dedup();
        found.extend(ids.into_iter().filter_map(material).map(|material| (material, Use::Puzzle(puzzle))));
    }
    found
}
