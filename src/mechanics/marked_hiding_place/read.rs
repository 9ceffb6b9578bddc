//! Finds the thing that a note means, as guests do.

use super::{Hiding, Thing, View};
use crate::kit::LockKind;
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let found = candidates(view);
    for (thing, why) in &found {
        if !budget.step() {
            readings.unproven = true;
            break;
        }
        match &view.slip {
            None => readings.add(lock, &thing.name, why.clone()),
            Some(slip) => {
                if view.things.get(slip.at) == Some(*thing) {
                    let code: String = slip.symbols.iter().collect();
                    readings.add(lock, &code, format!("{why}; the slip lies there"));
                }
            }
        }
    }
    if view.slip.is_some() && found.len() > 1 {
        let names: Vec<&str> = found.iter().map(|(thing, _)| thing.name.as_str()).collect();
        readings.remarks.push(format!("the note fits {} things: {}", found.len(), names.join(", ")));
    }
    if found.is_empty() {
        let known: Vec<&str> = view.things.iter().map(|thing| thing.word.as_str()).collect();
        readings.remarks.push(format!("the note names none of the signs: {}", known.join(", ")));
    }
    if view.place == Hiding::InFood {
        readings.remarks.push(
            "a hard thing inside food breaks teeth and chokes (FDA CPG 555.425; FD&C Act s. 402(d)(1)): put it under a sealed wrapper or beside the plate; local codes and the maker's label come first".into(),
        );
    }
    readings
}

/// Every thing that a careful guest could take for the one that the note means, and why.
pub(super) fn candidates(view: &View) -> Vec<(&Thing, String)> {
    let note = words(&view.note);
    let named: Vec<&str> =
        view.things.iter().map(|thing| thing.word.as_str()).filter(|word| holds(&note, &words(word))).collect();
    let mut found = Vec::new();
    for thing in &view.things {
        let name = words(&thing.name);
        let bare: Vec<String> =
            name.iter().skip_while(|word| matches!(word.as_str(), "the" | "a" | "an")).cloned().collect();
        let why = if holds(&note, &words(&thing.word)) {
            format!("the note names the {}, and {} wears it", thing.word, thing.name)
        } else if let Some(word) = named.iter().find(|word| holds(&name, &words(word))) {
            format!("the note names the {word}, and {} is called so itself", thing.name)
        } else if holds(&note, &bare) {
            format!("the note names {} itself", thing.name)
        } else {
            continue;
        };
        found.push((thing, why));
    }
    found
}

/// The words of a text, in small letters, without signs.
pub(super) fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

/// Whether words stand in a text one after another. The last may stand there in the plural.
pub(super) fn holds(text: &[String], words: &[String]) -> bool {
    let Some((last, first)) = words.split_last() else { return false };
    text.windows(words.len()).any(|window| {
        let Some((end, start)) = window.split_last() else { return false };
        start == first && end.strip_prefix(last.as_str()).is_some_and(|ending| matches!(ending, "" | "s" | "es"))
    })
}
