use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::limits::HASP;

check!(
    /// ## What it does
    /// Flags a hasp with more padlocks than it has holes for.
    ///
    /// ## Why it matters at the table
    /// A lock-out hasp takes up to six padlocks (common practice, no source); the seventh hangs nowhere.
    ///
    /// ## How to mend
    /// Hang a second hasp into the first (it takes one hole), or move a lock to another box.
    OverHasp, "over-hasp", Warns, "more padlocks than a hasp has holes", "a hasp takes up to six padlocks", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for item in facts.kit.boxes.iter().filter(|item| item.hasp && item.locks.len() > HASP) {
        let message = format!("{} has {} padlocks on one hasp, which takes {HASP}", item.name, item.locks.len());
        let draft = Draft::new(Anchor::Box(item.id.clone()), message);
        sink.add(draft.help("hang a second hasp into the first, or move a lock to another box"));
    }
}
