//! What the host does when something goes wrong (common practice, no source).

use serde::Serialize;

use super::Source;
use super::words::{list, shown};
use crate::kit::{Lock, LockKind};
use crate::party::WORD_RULE;

/// A mishap and what to do about it.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Mishap {
    what: String,
    text: String,
}

/// What can go wrong with this kit.
pub(super) fn mishaps(source: &Source<'_>) -> Vec<Mishap> {
    let kit = &source.opened.kit;
    let mut found = Vec::new();
    let mut add = |what: &str, text: String| found.push(Mishap { what: what.to_owned(), text });
    let has = |wanted: fn(&LockKind) -> bool| kit.locks.iter().any(|lock| wanted(&lock.kind));
    let wheels = has(|kind| matches!(kind, LockKind::Digits(_) | LockKind::Letters(_)));
    let pushes = has(|kind| matches!(kind, LockKind::Directions(_)));
    if wheels || pushes {
        let mut text = "Hold it against the answers. If it is the same, dial it yourself once.".to_owned();
        if wheels {
            text.push_str(
                " Every wheel stands exactly on the line, the lock is held the same way up as when you set it, and \
                 the first symbol stands on the first wheel.",
            );
        }
        if pushes {
            text.push_str(" A lock that is pushed is cleared by squeezing its shackle in twice before each try.");
        }
        text.push_str(" Then pull the shackle while nobody pulls at the box.");
        add("A code is right and the lock stays shut", text);
        add(
            "A lock jams, or is set to something else",
            "Say so at once: the guests have solved it, and for you this lock is open. Take it off if it lets go. If it \
             does not, count it as open until all others of its box are, and then open the box by the way that you kept for \
             yourself. No force, and no tools near a guest."
                .to_owned(),
        );
    }
    if has(|kind| matches!(kind, LockKind::Key)) {
        add(
            "The key is lost",
            "Use the spare from your pocket, but only when the guests know where the first one lay. Look for the first \
             one when the evening is over."
                .to_owned(),
        );
    }
    if has(|kind| matches!(kind, LockKind::Spoken)) {
        let words: Vec<String> = kit.locks.iter().filter_map(|lock| word(source, lock)).collect();
        add(
            "A word is nearly right",
            format!("{WORD_RULE} {}: {}.", if words.len() == 1 { "The word" } else { "The words" }, list(&words)),
        );
    }
    add(
        "A piece is torn, wet or written over",
        "Print its sheet once more: the name of each piece stands beneath it on its sheet. Until it is there, read to \
         them what stood on it, or show them the page on a screen."
            .to_owned(),
    );
    add(
        "A guest wants out, or to sit and watch",
        "At once and without a reason: no door is locked. Somebody else takes over what they had in hand; the kit needs \
         nobody in particular."
            .to_owned(),
    );
    add(
        "The time is over and a lock is still shut",
        "Nobody loses. Ask whether they want to go on. If not, give the last token of each lock that is shut, or do its last \
         step together, until the last box is open: everybody should see the end."
            .to_owned(),
    );
    if source.prep.cautions.iter().any(|caution| caution.text.contains("swallow")) {
        add(
            "A magnet, a small part or a battery is missing",
            "Stop, and count until it is there. A suspected swallow is an emergency: call for help at once, as “Take care” \
             says."
                .to_owned(),
        );
    }
    found
}

fn word(source: &Source<'_>, lock: &Lock) -> Option<String> {
    let puzzle = source.opened.kit.puzzle_of(&lock.id).filter(|_| lock.kind == LockKind::Spoken)?;
    Some(shown(&lock.kind, &source.party.puzzle(&puzzle.id)?.answer))
}
