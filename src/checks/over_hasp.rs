use super::{Draft, Facts, Finding, Fix, FixKind, Sink, trying};
use crate::diag::Anchor;
use crate::kit::edit::Edit;
use crate::kit::{BoxDef, Lock};
use crate::limits::HASP;

check!(
    /// ## What it does
    /// Flags padlocks that cannot hang as the kit says: more on a hasp than it has holes for, two in one hole, a hole
    /// where there is no hasp.
    ///
    /// ## Why it matters at the table
    /// A lock-out hasp takes up to six padlocks (common practice, no source); the seventh hangs nowhere, and the host
    /// guide sends two into one hole, or into one that is not there.
    ///
    /// ## How to mend
    /// Hang a second hasp into the first (it takes one hole), or move a lock to another box; give each lock a hole of
    /// its own; write `hasp: true` on the box, or leave the hole out.
    OverHasp, "over-hasp", Warns, "padlocks that cannot hang as the kit says", "the host has no place to hang them", run,
    mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for item in facts.kit.boxes.iter().filter(|item| item.hasp && item.locks.len() > HASP) {
        let message = format!("{} has {} padlocks on one hasp, which takes {HASP}", item.name, item.locks.len());
        let draft = Draft::new(Anchor::Box(item.id.clone()), message);
        sink.add(draft.help("hang a second hasp into the first, or move a lock to another box"));
    }
    for item in &facts.kit.boxes {
        holes(facts, item, sink);
    }
}

/// The holes in which the locks of a box hang.
fn holes(facts: &Facts<'_>, item: &BoxDef, sink: &mut Sink) {
    let hung: Vec<&Lock> = item.locks.iter().filter_map(|id| facts.lock(id)).filter(|lock| lock.hole > 0).collect();
    let at = || Anchor::Box(item.id.clone());
    if !item.hasp {
        if let [first, ..] = hung.as_slice() {
            let message = format!("{} hangs in hole {}, and {} has no hasp", first.name, first.hole, item.name);
            let hasp = BoxDef { hasp: true, ..item.clone() };
            let draft = Draft::new(at(), message).help("write `hasp: true` on the box, or leave `hole` out of its locks");
            sink.add(draft.fix("Give it a hasp", FixKind::Ask, vec![Edit::Box(Box::new(hasp))]));
        }
        return;
    }
    for (index, lock) in hung.iter().enumerate() {
        let Some(other) = hung.iter().take(index).find(|other| other.hole == lock.hole) else { continue };
        let message = format!("{} and {} both hang in hole {} of {}", other.name, lock.name, lock.hole, item.name);
        let draft = Draft::new(at(), message).help("give each lock of a hasp a hole of its own");
        let most = u8::try_from(HASP).unwrap_or(u8::MAX);
        let free = (1..=most).find(|hole| hung.iter().all(|other| other.hole != *hole));
        sink.add(match free {
            Some(hole) => {
                let moved = Lock { hole, ..(*lock).clone() };
                draft.fix(format!("Hang it in hole {hole}"), FixKind::Ask, vec![Edit::Lock(Box::new(moved))])
            }
            None => draft,
        });
    }
}

/// The last padlock moved to another box.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Box(id) = &finding.anchor else { return None };
    let mut full = facts.box_def(id)?.clone();
    if full.locks.len() <= HASP {
        return None;
    }
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
