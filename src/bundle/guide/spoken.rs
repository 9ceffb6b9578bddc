//! Locks that are words: what the guide says of them, where it would speak of padlocks otherwise.

use super::Source;
use super::words::{LOCKS, LOCKS_BOTH, LOCKS_HASP, LOCKS_HEARD, LOCKS_KEEP, LOCKS_SPOKEN, LOCKS_TOLD, list, shown};
use crate::kit::{BoxDef, Kit, Lock, LockKind};
use crate::script::capital;

fn is_word(lock: &Lock) -> bool {
    lock.kind == LockKind::Spoken
}

/// What an answer does, in an answer's line: "opens the brass padlock"; "said aloud, opens the basket".
pub(super) fn opens(source: &Source<'_>, lock: &Lock) -> String {
    match (is_word(lock), source.opened.kit.box_of(&lock.id)) {
        (true, Some(item)) => format!("said aloud, opens {}", source.say(&item.name)),
        (true, None) => "is said aloud".to_owned(),
        (false, _) => format!("opens {}", source.say(&lock.name)),
    }
}

/// The same after a puzzle's title.
pub(super) fn gives(source: &Source<'_>, lock: &Lock) -> String {
    match (is_word(lock), source.opened.kit.box_of(&lock.id)) {
        (true, Some(item)) => format!("gives the word that is said for {}", source.say(&item.name)),
        (true, None) => "gives a word that is said".to_owned(),
        (false, _) => opens(source, lock),
    }
}

/// The words that open a box without a padlock; none where something else shuts it as well, or nothing.
pub(super) fn only(source: &Source<'_>, item: &BoxDef) -> Option<String> {
    let kit = &source.opened.kit;
    let locks: Vec<&Lock> = item.locks.iter().filter_map(|id| kit.lock(id)).collect();
    if locks.is_empty() || !locks.iter().copied().all(is_word) {
        return None;
    }
    let words: Vec<String> = locks
        .iter()
        .map(|lock| {
            let answer = kit.puzzle_of(&lock.id).and_then(|puzzle| source.party.puzzle(&puzzle.id));
            let word = answer.map_or_else(|| source.say(&lock.name), |laid| shown(&lock.kind, &laid.answer));
            if lock.mark.is_empty() { word } else { format!("{word} ({})", lock.mark) }
        })
        .collect();
    Some(list(&words))
}

/// What a host with a minute does with the locks: those that are set and tested, and words that are told.
pub(super) fn set(kit: &Kit) -> Option<String> {
    let set = kit.locks.iter().filter(|lock| lock.kind.wheels().is_some()).count();
    let keys = kit.locks.iter().filter(|lock| lock.kind == LockKind::Key).count();
    // The table has a row for a lock with a key as well, and none is set there.
    let test = if set + keys == 1 { "test it twice while it is open" } else { "test each lock twice while it is open" };
    let set = match set {
        0 if keys == 0 => None,
        0 => Some(capital(test)),
        1 if keys == 0 => Some(format!("Set the code of the lock as below, and {test}")),
        1 => Some(format!("Set the one code as below, and {test}")),
        many => Some(format!("Set the {many} codes as below, and {test}")),
    };
    let (told, heard) = kit.words();
    let told = match told.len() {
        0 => None,
        1 => Some("tell the word to whoever waits for it"),
        _ => Some("tell the words to those who wait for them"),
    };
    let heard = match heard.len() {
        0 => None,
        1 => Some("keep by you the slip of the word that you wait for"),
        _ => Some("keep by you the slips of the words that you wait for"),
    };
    let said: Vec<String> = set.into_iter().chain(told.into_iter().chain(heard).map(str::to_owned)).collect();
    (!said.is_empty()).then(|| capital(&said.join("; ")))
}

/// How the locks are set, whichever there are.
pub(super) fn note(kit: &Kit) -> String {
    let locks = &kit.locks;
    let set = locks.iter().any(|lock| !is_word(lock)) || locks.is_empty();
    let (told, heard) = kit.words();
    let (told, heard) = (!told.is_empty(), !heard.is_empty());
    let hasp = kit.boxes.iter().any(|item| item.hasp && item.locks.len() > 1);
    let parts = [
        (set, LOCKS),
        (hasp, LOCKS_HASP),
        (told || heard, LOCKS_SPOKEN),
        (told, LOCKS_TOLD),
        (heard, if told { LOCKS_BOTH } else { LOCKS_HEARD }),
        (true, LOCKS_KEEP),
    ];
    parts.iter().filter(|(said, _)| *said).map(|(_, text)| *text).collect::<Vec<_>>().join(" ")
}
