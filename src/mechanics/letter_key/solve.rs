use std::collections::BTreeSet;

use super::View;
use crate::kit::LockKind;
use crate::mechanics::spelled::{letters, tries};
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// Every name on view, whole and in its parts, through the key. A name longer than the lock has wheels may be
/// cut at either end by a guest who must make it fit.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let mut remarks = BTreeSet::new();
    for word in &view.words {
        for (name, spelled) in tries(word, lock.wheels()) {
            let found = through(view, &name, &spelled, lock, budget);
            for reading in found.list {
                all.add(lock, &reading.answer, reading.why);
            }
            all.more |= found.more;
            all.unproven |= found.unproven;
        }
        remarks.extend(notes(view, word, lock));
    }
    all.remarks = remarks.into_iter().collect();
    all
}

fn through(view: &View, name: &str, spelled: &[char], lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut marks = Vec::new();
    let mut cues = Vec::new();
    for letter in spelled {
        let first = marks.len();
        // A key that lists a letter twice with two digits leaves a choice.
        let on_key = view.key.iter().filter(|entry| entry.letter.to_ascii_uppercase() == *letter);
        marks.extend(on_key.map(|entry| Mark::new(format!("{letter} is {}", entry.digit), entry.digit)));
        cues.push(Cue { label: letter.to_string(), marks: (first..marks.len()).collect() });
    }
    let mut found = read(&marks, &Order::Cued(cues), lock, budget);
    for reading in &mut found.list {
        reading.why = format!("{name}: {}", reading.why);
    }
    found
}

/// What is odd about a name, though it may read one way only.
fn notes(view: &View, word: &str, lock: &LockKind) -> Vec<String> {
    let mut notes = Vec::new();
    let spelled = letters(word);
    for letter in spelled.iter().collect::<BTreeSet<_>>() {
        let digits: Vec<char> =
            view.key.iter().filter(|entry| entry.letter == *letter).map(|entry| entry.digit).collect();
        if digits.is_empty() {
            notes.push(format!("the letter {letter} of {word} is not on the key card"));
        }
        let shares = |other: &&char| {
            **other > *letter && view.key.iter().any(|entry| entry.letter == **other && digits.contains(&entry.digit))
        };
        for other in spelled.iter().filter(shares).collect::<BTreeSet<_>>() {
            notes.push(format!("the letters {letter} and {other} of {word} share a digit, which reads well"));
        }
    }
    if let Some(wheels) = lock.wheels()
        && spelled.len() != wheels
    {
        notes.push(format!("{word} has {} letters, and the lock has {wheels} wheels", spelled.len()));
    }
    notes
}
