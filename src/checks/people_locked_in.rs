use super::{Draft, Facts, Sink};
use crate::codes::words;
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Flags a lock on something that people go through or could be shut into: a door, a gate, a room, a cupboard.
    ///
    /// ## Why it matters at the table
    /// Lock the box, never a door, a cupboard or a person: in 2019 five young people died in a puzzle room whose
    /// door did not open from inside. IBC 2021 section 411 asks such rooms for exits that open at once. A party at
    /// home may be outside such codes; local codes and the fire authority's advice come first.
    ///
    /// ## How to mend
    /// Hang the lock on a box and leave every way out open and lit.
    PeopleLockedIn, "people-locked-in", Blocks, "a lock on a door, a room or a cupboard",
    "never lock a door, a cupboard or a person: every way out stays open; local codes come first", run
);

/// What must never be locked. Only the thing itself counts: "the clock's door key box" is a box.
const NEVER: &[&str] =
    &["door", "gate", "room", "exit", "cupboard", "wardrobe", "closet", "cellar", "attic", "bathroom", "toilet", "shed", "garage"];

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for item in facts.kit.boxes.iter().filter(|item| !item.locks.is_empty()) {
        let name = facts.party.say(&item.name);
        if let Some(thing) = thing(&name).filter(|thing| NEVER.contains(&thing.as_str())) {
            let message = format!("{name} is locked, and people go through or into a {thing}");
            let draft = Draft::new(Anchor::Box(item.id.clone()), message);
            sink.add(draft.help("hang the lock on a box that no one can go into"));
        }
    }
}

/// The thing that a name names: the last word before "of", "with" and the like.
fn thing(name: &str) -> Option<String> {
    let words = words(name);
    let end = words.iter().position(|word| matches!(word.as_str(), "of" | "with" | "in" | "on" | "at" | "for" | "from" | "to"));
    let end = end.unwrap_or(words.len());
    words.get(end.checked_sub(1)?).cloned()
}
