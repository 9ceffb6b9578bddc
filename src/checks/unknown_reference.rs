use super::references::is_envelope;
use super::things::{near, unknown_place};
use super::{Draft, Facts, Sink, references};
use crate::diag::{Anchor, PuzzleField, Severity};
use crate::flow::facts::thing_words;
use crate::kit::material::{MATERIALS, material};
use crate::kit::{Lying, Place, PropRole};
use crate::mechanics::{self, MECHANICS};

check!(
    /// ## What it does
    /// Flags a name that leads nowhere: a spot, box, lock, prop, note, mechanic, symbol or material that does not
    /// exist.
    ///
    /// ## Why it matters at the table
    /// Something lies nowhere, opens nothing or is not drawn.
    ///
    /// ## How to mend
    /// Correct the name, or add what it names.
    UnknownReference, "unknown-reference", Blocks, "a name that leads nowhere",
    "something lies nowhere, opens nothing or is not drawn", run, references::mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    places(facts, sink);
    locks(facts, sink);
    puzzles(facts, sink);
    apart(facts, sink);
    envelopes(facts, sink);
    let mut say = |anchor: Anchor, message: String, hint: Vec<String>| add(sink, anchor, message, hint);
    if facts.box_def(&kit.finish.opens).is_none() {
        let hint = near(kit.finish.opens.as_str(), "boxes", kit.boxes.iter().map(|item| item.id.as_str()));
        say(Anchor::Finish, format!("the finish opens a box `{}` that does not exist", kit.finish.opens), hint);
    }
    if facts.note(&kit.finish.card).is_none() {
        let hint = near(kit.finish.card.as_str(), "notes", kit.notes.iter().map(|note| note.id.as_str()));
        say(Anchor::Finish, format!("the closing card `{}` does not exist", kit.finish.card), hint);
    }
    for lock in kit.locks.iter().filter(|lock| !lock.mark.is_empty()) {
        if !facts.theme.theme.symbols.contains_key(&lock.mark) {
            let hint = near(&lock.mark, "symbols of the theme", facts.theme.theme.symbols.keys().map(String::as_str));
            let message = format!("the mark `{}` of {} is no symbol of the theme", lock.mark, lock.name);
            say(Anchor::Lock(lock.id.clone()), message, hint);
        }
    }
    for prop in kit.props.iter().filter(|prop| !prop.material.is_empty()) {
        if material(&prop.material).is_none() {
            let mut hint = near(&prop.material, "materials", MATERIALS.iter().map(|material| material.id));
            hint.push("`inklatch explain materials` says what each is; a thing that needs no caution needs no material".into());
            let message = format!("{} is made of `{}`, which is on no list", prop.name, prop.material);
            say(Anchor::Prop(prop.id.clone()), message, hint);
        }
    }
}

/// The things that the kit wants to lie apart.
fn apart(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    for thing in kit.apart.iter().flat_map(|pair| [&pair.one, &pair.other]) {
        let known = match thing {
            Lying::Letter => true,
            Lying::Note(id) => facts.note(id).is_some(),
            Lying::Prop(id) => facts.prop(id).is_some(),
            Lying::Box(id) => facts.box_def(id).is_some(),
            Lying::Part(id, part) => facts.puzzle(id).is_some_and(|puzzle| puzzle.parts.contains_key(part)),
        };
        if !known {
            let message = format!("{} is to lie apart from another thing, and is not in the kit", thing_words(kit, thing));
            add(sink, Anchor::Kit, message, vec!["correct its name in `apart`, or take the pair off the list".into()]);
        }
    }
}

/// Where things lie.
fn places(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    let mut at: Vec<(Anchor, &Place)> = kit.letter.place.iter().map(|place| (Anchor::Letter, place)).collect();
    at.extend(kit.notes.iter().map(|note| (Anchor::Note(note.id.clone()), &note.place)));
    at.extend(kit.boxes.iter().map(|item| (Anchor::Box(item.id.clone()), &item.place)));
    at.extend(kit.props.iter().map(|prop| (Anchor::Prop(prop.id.clone()), &prop.place)));
    for puzzle in &kit.puzzles {
        at.extend(puzzle.parts.iter().map(|(part, place)| {
            (Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Part(part.clone())), place)
        }));
    }
    for (anchor, place) in at {
        if let Some((message, hint)) = unknown_place(facts, place) {
            add(sink, anchor, message, hint);
        }
    }
}

/// The envelopes that boxes are printed as.
fn envelopes(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    for item in kit.boxes.iter().filter(|item| kit.printed_as(item).is_none()) {
        let Some(id) = &item.printed else { continue };
        let known = kit.props.iter().filter(|prop| is_envelope(prop)).map(|prop| prop.id.as_str());
        let name = facts.party.say(&item.name);
        let (message, hint) = match facts.prop(id) {
            None => (format!("{name} is printed as `{id}`, which does not exist"), near(id.as_str(), "envelopes", known)),
            Some(prop) if !is_envelope(prop) => {
                (format!("{name} is printed as `{id}`, which is no printed envelope"), near(id.as_str(), "envelopes", known))
            }
            Some(prop) if prop.place != item.place => {
                let hint = vec!["lay the envelope where the box stands: they are one thing".to_owned()];
                (format!("{name} is printed as `{id}`, which lies at another place"), hint)
            }
            Some(_) => {
                let hint = vec!["give each box an envelope of its own".to_owned()];
                (format!("{name} is printed as `{id}`, and so is another box"), hint)
            }
        };
        add(sink, Anchor::Box(item.id.clone()), message, hint);
    }
}

/// The locks that boxes, keys and puzzles name.
fn locks(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    let boxes = kit.boxes.iter().flat_map(|item| item.locks.iter().map(|lock| (Anchor::Box(item.id.clone()), lock)));
    let keys = kit.props.iter().filter_map(|prop| match &prop.role {
        PropRole::Key(lock) => Some((Anchor::Prop(prop.id.clone()), lock)),
        PropRole::Tool | PropRole::Decoration | PropRole::Decoy | PropRole::Treat => None,
    });
    let opens = |puzzle: &crate::kit::Puzzle| Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Opens);
    let puzzles = kit.puzzles.iter().map(|puzzle| (opens(puzzle), &puzzle.opens));
    for (anchor, lock) in boxes.chain(keys).chain(puzzles) {
        if facts.lock(lock).is_none() {
            let hint = near(lock.as_str(), "locks", kit.locks.iter().map(|lock| lock.id.as_str()));
            add(sink, anchor, format!("there is no lock `{lock}`"), hint);
        }
    }
}

/// The mechanics and tools of puzzles.
fn puzzles(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    for puzzle in &kit.puzzles {
        if mechanics::find(&puzzle.mechanic).is_err() {
            let hint = near(&puzzle.mechanic, "mechanics", MECHANICS.iter().map(|mechanic| mechanic.meta().id));
            let anchor = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Mechanic);
            add(sink, anchor, format!("there is no mechanic `{}`", puzzle.mechanic), hint);
        }
        names(facts, puzzle, sink);
        for tool in puzzle.tools.iter().filter(|tool| facts.prop(tool).is_none()) {
            let hint = near(tool.as_str(), "props", kit.props.iter().map(|prop| prop.id.as_str()));
            let anchor = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Tool(tool.clone()));
            add(sink, anchor, format!("there is no prop `{tool}`"), hint);
        }
    }
}

/// What a puzzle names of its own: only what its mechanic prints or calls by a word has a name.
fn names(facts: &Facts<'_>, puzzle: &crate::kit::Puzzle, sink: &mut Sink) {
    // A theme without words for the mechanic cannot say which there are.
    let Some(words) = facts.theme.theme.dressings.get(&puzzle.mechanic) else { return };
    let parts = mechanics::find(&puzzle.mechanic).map(|mechanic| mechanic.meta().parts).unwrap_or_default();
    let known = || words.keys().map(String::as_str).chain(parts.iter().map(|part| part.key));
    for key in puzzle.names.keys().filter(|key| known().all(|known| known != key.as_str())) {
        let message = format!("`{}` names nothing that is called `{key}`", puzzle.mechanic);
        let all: std::collections::BTreeSet<&str> = known().collect();
        let hint = near(key, "names", all.into_iter());
        let anchor = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Name(key.clone()));
        let draft = Draft::new(anchor, message).severity(Severity::Warns);
        sink.add(hint.into_iter().fold(draft, Draft::help));
    }
}

fn add(sink: &mut Sink, anchor: Anchor, message: String, hints: Vec<String>) {
    let hints = if hints.is_empty() { vec!["correct the name, or add what it names".into()] } else { hints };
    sink.add(hints.into_iter().fold(Draft::new(anchor, message), Draft::help));
}
