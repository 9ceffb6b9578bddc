use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Severity};
use crate::kit::PropRole;

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
    "the box stays shut whatever the guests do", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    for lock in &kit.locks {
        let at = || Anchor::Lock(lock.id.clone());
        let keyed = kit.props.iter().any(|prop| prop.role == PropRole::Key(lock.id.clone()));
        let opened = keyed || kit.puzzle_of(&lock.id).is_some();
        match kit.box_of(&lock.id) {
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
