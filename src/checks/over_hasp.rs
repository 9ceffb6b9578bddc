use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::Anchor;
use crate::kit::edit::Edit;
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
    OverHasp, "over-hasp", Warns, "more padlocks than a hasp has holes", "a hasp takes up to six padlocks", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for item in facts.kit.boxes.iter().filter(|item| item.hasp && item.locks.len() > HASP) {
        let message = format!("{} has {} padlocks on one hasp, which takes {HASP}", item.name, item.locks.len());
        let draft = Draft::new(Anchor::Box(item.id.clone()), message);
        sink.add(draft.help("hang a second hasp into the first, or move a lock to another box"));
    }
}

/// The last padlock moved to another box.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Box(id) = &finding.anchor else { return None };
    let mut full = facts.box_def(id)?.clone();
    let lock = full.locks.pop()?;
    let name = facts.lock(&lock).map_or(lock.as_str(), |lock| lock.name.as_str());
    let mends = facts.kit.boxes.iter().filter(|item| item.id != *id).map(|item| {
        let mut other = item.clone();
        other.locks.push(lock.clone());
        let title = facts.party.say(&format!("Hang {name} on {}", item.name));
        trying::ask(title, vec![Edit::Box(Box::new(full.clone())), Edit::Box(Box::new(other))])
    });
    trying::sound(facts, finding, mends)
}
