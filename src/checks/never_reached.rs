use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Severity};
use crate::ids::BoxId;
use crate::kit::{Kit, Place};

check!(
    /// ## What it does
    /// Flags a box that no play can open, and counts what lies in it. It blocks while the finish cannot be reached,
    /// and warns when the finish does without that box. Boxes that hold one another shut are told by
    /// `locked-behind-itself`.
    ///
    /// ## Why it matters at the table
    /// What lies in it is printed, cut and packed for nothing, or the party stops there.
    ///
    /// ## How to mend
    /// See which lock stays shut: it wants a puzzle or a key that guests can have.
    NeverReached, "never-reached", Blocks, "a box that no play can open",
    "what lies in it is packed for nothing, or the party stops there", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    for item in &kit.boxes {
        let looped = facts.flow.loops.iter().any(|found| found.boxes.contains(&item.id));
        if looped || facts.flow.boxes.contains_key(&item.id) {
            continue;
        }
        let shut: Vec<&str> = item
            .locks
            .iter()
            .filter(|lock| !facts.flow.locks.contains_key(lock))
            .map(|lock| kit.lock(lock).map_or(lock.as_str(), |lock| lock.name.as_str()))
            .collect();
        let why = match (shut.is_empty(), &item.place) {
            (false, _) if shut.len() == 1 => format!("{} stays locked", shut.join(" and ")),
            (false, _) => format!("{} stay locked", shut.join(" and ")),
            (true, Place::Box(outer)) => format!("it stands in {}", box_name(kit, outer)),
            (true, Place::Spot(spot)) => format!("its spot `{spot}` is not in the kit"),
        };
        let severity = if facts.flow.finish_reachable { Severity::Warns } else { Severity::Blocks };
        let message = match contents(kit, &item.id) {
            0 => format!("{} never opens: {why}", item.name),
            1 => format!("{} never opens, and one thing lies in it: {why}", item.name),
            n => format!("{} never opens, and {n} things lie in it: {why}", item.name),
        };
        let draft = Draft::new(Anchor::Box(item.id.clone()), message).severity(severity);
        sink.add(draft.help("let guests have what opens it"));
    }
}

fn box_name<'a>(kit: &'a Kit, id: &'a BoxId) -> &'a str {
    kit.box_def(id).map_or(id.as_str(), |item| item.name.as_str())
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
