//! Spells every word on view on the keypad.

use super::View;
use crate::kit::LockKind;
use crate::mechanics::spelled::{letters, tries};
use crate::readings::tokens::{self, Cue, Mark, Order};
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    for word in &view.words {
        let mut ways: Vec<(String, Vec<char>, bool)> = Vec::new();
        for (name, spelled) in tries(word, lock.wheels()) {
            ways.push((name, spelled, false));
        }
        if !view.rule {
            // As on old telephones: a letter is the key pressed as often as its place on it.
            ways.push((format!("{word} with a press for each place"), letters(word), true));
        }
        for (name, spelled, presses) in ways {
            let (marks, order) = cues(view, &spelled, presses);
            let found = tokens::read(&marks, &order, lock, budget);
            for reading in found.list {
                all.add(lock, &reading.answer, format!("{name}: {}", reading.why));
            }
            all.more |= found.more;
            all.unproven |= found.unproven;
        }
        for letter in letters(word) {
            if !view.keys.iter().any(|key| key.letters.contains(letter)) {
                all.remarks.push(format!("the letter {letter} of {word} is on no key"));
            }
        }
    }
    all
}

fn cues(view: &View, spelled: &[char], presses: bool) -> (Vec<Mark>, Order) {
    let mut marks = Vec::new();
    let mut cues = Vec::new();
    for letter in spelled {
        let first = marks.len();
        for key in &view.keys {
            if let Some(place) = key.letters.chars().position(|other| other == *letter) {
                let times = if presses { place + 1 } else { 1 };
                let text = key.digit.to_string().repeat(times);
                marks.push(Mark::new(format!("{letter} is {text}"), text));
            }
        }
        cues.push(Cue { label: letter.to_string(), marks: (first..marks.len()).collect() });
    }
    if cues.is_empty() {
        // A word without letters says nothing.
        cues.push(Cue { label: "no letter".into(), marks: Vec::new() });
    }
    (marks, Order::Cued(cues))
}
