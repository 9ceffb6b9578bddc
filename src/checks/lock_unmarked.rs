use std::collections::BTreeMap;

use super::{Draft, Facts, FixKind, Sink};
use crate::diag::Anchor;
use crate::kit::edit::Edit;
use crate::kit::{Lock, LockKind};

check!(
    /// ## What it does
    /// Flags locks of one kind with no mark, or with the same mark, so that guests cannot tell which answer goes
    /// where; and locks of any kinds with one mark, a word that is said among them: hint tokens and pieces wear the mark of
    /// the lock that they help to open.
    ///
    /// ## Why it matters at the table
    /// Every code found must be tried on every like lock: with six of them up to thirty-six tries, and a right code
    /// on the wrong lock looks like a wrong code.
    ///
    /// ## How to mend
    /// Give each lock a symbol of the theme of its own; every piece that feeds it is then printed with that symbol.
    LockUnmarked, "lock-unmarked", Warns, "locks that guests cannot tell apart by their marks",
    "a right code on the wrong lock looks like a wrong code", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    alike(facts, sink);
    shared(facts, sink);
}

/// Locks of one kind.
fn alike(facts: &Facts<'_>, sink: &mut Sink) {
    let mut kinds: BTreeMap<String, Vec<&Lock>> = BTreeMap::new();
    for lock in facts.kit.locks.iter().filter(|lock| lock.kind != LockKind::Spoken) {
        kinds.entry(lock.kind.describe()).or_default().push(lock);
    }
    for (kind, locks) in kinds.into_iter().filter(|(_, locks)| locks.len() > 1) {
        let mut times: BTreeMap<&str, usize> = BTreeMap::new();
        locks.iter().for_each(|lock| *times.entry(&lock.mark).or_default() += 1);
        let alike = |lock: &Lock| lock.mark.is_empty() || times.get(lock.mark.as_str()).is_some_and(|times| *times > 1);
        let unmarked: Vec<&Lock> = locks.iter().copied().filter(|lock| alike(lock)).collect();
        let Some(first) = unmarked.first() else { continue };
        let names: Vec<&str> = unmarked.iter().map(|lock| lock.name.as_str()).collect();
        let tries = locks.len() * locks.len();
        let message =
            format!("{} with {kind} cannot be told apart: up to {tries} tries for {} codes", names.join(", "), locks.len());
        let draft = Draft::new(Anchor::Lock(first.id.clone()), message);
        // A mark that was chosen is not changed unasked.
        let kind = if unmarked.iter().all(|lock| lock.mark.is_empty()) { FixKind::Safe } else { FixKind::Ask };
        sink.add(match marked(facts, &unmarked) {
            Some(edits) => draft
                .help("give each lock a symbol of its own")
                .fix("Give them unused symbols of the theme", kind, edits),
            None => draft.help("draw more symbols in the theme: it has none left for them"),
        });
    }
}

/// Locks of more kinds than one that wear one mark; those of one kind are told as such.
fn shared(facts: &Facts<'_>, sink: &mut Sink) {
    let mut marks: BTreeMap<&str, Vec<&Lock>> = BTreeMap::new();
    for lock in facts.kit.locks.iter().filter(|lock| !lock.mark.is_empty()) {
        marks.entry(&lock.mark).or_default().push(lock);
    }
    for (mark, locks) in marks {
        let Some(first) = locks.first() else { continue };
        let told = first.kind != LockKind::Spoken && locks.iter().all(|lock| lock.kind.describe() == first.kind.describe());
        if locks.len() < 2 || told {
            continue;
        }
        let names: Vec<&str> = locks.iter().map(|lock| lock.name.as_str()).collect();
        let message = format!("{} wear one mark, `{mark}`", names.join(" and "));
        let draft = Draft::new(Anchor::Lock(first.id.clone()), message)
            .why("hint tokens and pieces wear it as well: those of two puzzles look the same, and the host hands out the wrong one");
        sink.add(match marked(facts, &locks) {
            Some(edits) => draft
                .help("give each lock a symbol of its own")
                .fix("Give all but the first unused symbols of the theme", FixKind::Ask, edits),
            None => draft.help("draw more symbols in the theme: it has none left for them"),
        });
    }
}

/// The locks with symbols that no lock has yet; a lock keeps a mark that it is the first to carry.
fn marked(facts: &Facts<'_>, locks: &[&Lock]) -> Option<Vec<Edit>> {
    let used: Vec<&str> = facts.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
    let mut free = facts.theme.theme.symbols.keys().filter(|symbol| !used.contains(&symbol.as_str()));
    let mut kept: Vec<&str> = Vec::new();
    let mut edits = Vec::new();
    for lock in locks {
        if !lock.mark.is_empty() && !kept.contains(&lock.mark.as_str()) {
            kept.push(&lock.mark);
            continue;
        }
        let mended = Lock { mark: free.next()?.clone(), ..(*lock).clone() };
        edits.push(Edit::Lock(Box::new(mended)));
    }
    Some(edits)
}
