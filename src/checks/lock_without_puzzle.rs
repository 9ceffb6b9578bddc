use std::collections::BTreeSet;

use super::{Draft, Facts, Finding, Fix, Sink, things, trying};
use crate::diag::{Anchor, Severity};
use crate::ids::LockId;
use crate::kit::edit::{Edit, Item};
use crate::kit::{BoxDef, PropRole};

check!(
    /// ## What it does
    /// Flags a lock that nothing opens: no puzzle has it, and no prop is its key. A lock that hangs on no box is
    /// flagged as well, as a warning.
    ///
    /// ## Why it matters at the table
    /// The box stays shut whatever the guests do.
    ///
    /// ## How to mend
    /// Let a puzzle open it, add its key, or take the lock off the box.
    LockWithoutPuzzle, "lock-without-puzzle", Blocks, "a lock that nothing opens",
    "the box stays shut whatever the guests do", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    let keyed = kit.props.iter().filter_map(|prop| match &prop.role {
        PropRole::Key(lock) => Some(lock),
        PropRole::Tool | PropRole::Decoration | PropRole::Decoy | PropRole::Treat => None,
    });
    let openable: BTreeSet<&LockId> = keyed.chain(kit.puzzles.iter().map(|puzzle| &puzzle.opens)).collect();
    let shut = things::shut(kit);
    for lock in &kit.locks {
        let at = || Anchor::Lock(lock.id.clone());
        let opened = openable.contains(&lock.id);
        match shut.get(&lock.id) {
            Some(item) if !opened => {
                let draft = Draft::new(at(), format!("nothing opens {}, which shuts {}", lock.name, item.name));
                sink.add(draft.help("let a puzzle open it, or add its key").help("or take it off the box"));
            }
            None if !opened => {
                let draft = Draft::new(at(), format!("{} hangs on no box, and nothing opens it", lock.name));
                let draft = draft.severity(Severity::Warns).why("the host buys it for nothing");
                sink.add(draft.help("hang it on a box, or remove it"));
            }
            Some(_) | None => {}
        }
    }
}

/// The lock taken off its box and out of the kit.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Lock(id) = &finding.anchor else { return None };
    let lock = facts.lock(id)?;
    let on = facts.kit.boxes.iter().filter(|item| item.locks.contains(id));
    let mut edits: Vec<Edit> = on
        .map(|item| {
            let locks = item.locks.iter().filter(|other| *other != id).cloned().collect();
            Edit::Box(Box::new(BoxDef { locks, ..item.clone() }))
        })
        .collect();
    edits.push(Edit::Remove(Item::Lock(id.clone())));
    let title = facts.party.say(&format!("Take {} out of the kit", lock.name));
    trying::sound(facts, finding, [trying::ask(title, edits)])
}
