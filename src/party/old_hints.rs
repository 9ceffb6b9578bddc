//! Hints in an author's own words that name what an earlier arrangement of a puzzle showed and the new one does not.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::LaidPuzzle;
use crate::diag::Step;
use crate::kit::{Kit, OldHint};
use crate::script::same_word;

/// Letters of the shortest word that is looked for: shorter ones stand everywhere.
const SHORTEST: usize = 3;
/// Longest run of capitals that is read letter by letter, as a pointer's are.
const SPELLED: usize = 12;
/// Words of English that say how to do something, whatever lies there.
const PLAIN: &[&str] = &[
    "and", "are", "begin", "below", "card", "cards", "code", "digit", "digits", "each", "find", "first", "for", "from",
    "last", "left", "letter", "letters", "line", "look", "lock", "mark", "next", "not", "number", "numbers", "one",
    "order", "page", "pages", "picture", "pictures", "read", "right", "row", "sign", "that", "the", "them", "then",
    "they", "this", "top", "turn", "with", "word", "words", "write", "you", "your",
];

/// What the hint of a step says that `was` showed and `is` does not: numbers, letters and words, sorted. `old_words` are
/// those of a season before, which are told elsewhere.
pub(super) fn gone(kit: &Kit, was: &LaidPuzzle, is: &LaidPuzzle, step: Step) -> Vec<String> {
    let shown = Shown::of(was, is);
    let said = marks(is.hints.step(step));
    let old_season =
        |word: &str| kit.dressed.old_words.iter().any(|old| same_word(&old.one, word) || old.one.contains(word));
    said.into_iter().filter(|mark| shown.gone.contains(mark) && !old_season(mark)).collect()
}

/// Brings what is remembered of old hints to a kit whose puzzle `is` was laid out anew: what the puzzle shows again is
/// forgotten.
pub(super) fn shown_again(records: &mut Vec<OldHint>, was: &LaidPuzzle, is: &LaidPuzzle) {
    let shown = Shown::of(was, is);
    let begins = format!("puzzle {}, ", is.id);
    for record in records.iter_mut().filter(|record| record.at.starts_with(&begins)) {
        record.says.retain(|word| !shown.come.contains(word));
    }
    records.retain(|record| !record.says.is_empty());
}

/// What two arrangements of a puzzle show.
struct Shown {
    /// Only the old one.
    gone: BTreeSet<String>,
    /// Only the new one.
    come: BTreeSet<String>,
}

impl Shown {
    fn of(was: &LaidPuzzle, is: &LaidPuzzle) -> Self {
        let (old, new) = (runs(was), runs(is));
        let changed = |a: &BTreeMap<String, usize>, b: &BTreeMap<String, usize>| -> BTreeSet<String> {
            let more = a.iter().filter(|(run, count)| b.get(*run).is_none_or(|other| other < count));
            more.flat_map(|(run, _)| marks(run)).collect()
        };
        let (gone, come) = (changed(&old, &new), changed(&new, &old));
        // A word that stands anywhere on the new pieces is there to be found; a letter or a number may stand for another.
        let anywhere: BTreeSet<String> = new.keys().flat_map(|run| marks(run)).filter(|mark| word(mark)).collect();
        let drafted: BTreeSet<String> = Step::ALL.iter().flat_map(|step| marks(is.drafted.step(*step))).collect();
        let stays = |mark: &String| come.contains(mark) || anywhere.contains(mark) || drafted.contains(mark);
        Self { gone: gone.iter().filter(|mark| !stays(mark)).cloned().collect(), come }
    }
}

fn word(mark: &str) -> bool {
    mark.chars().count() >= SHORTEST && mark.chars().all(char::is_alphabetic)
}

/// Every text and whole number of what guests see, with how often it stands there.
fn runs(laid: &LaidPuzzle) -> BTreeMap<String, usize> {
    let mut runs = BTreeMap::new();
    let mut open = laid.laid.as_ref().map(|view| vec![view.json()]).unwrap_or_default();
    while let Some(value) = open.pop() {
        match value {
            Value::String(text) => *runs.entry(text).or_default() += 1,
            Value::Number(number) if number.is_u64() => *runs.entry(number.to_string()).or_default() += 1,
            Value::Array(items) => open.extend(items),
            Value::Object(fields) => open.extend(fields.into_iter().map(|(_, value)| value)),
            _ => {}
        }
    }
    runs
}

/// The numbers of two digits and more, the single capitals and the longer words of a text.
fn marks(text: &str) -> BTreeSet<String> {
    let mut marks = BTreeSet::new();
    for part in text.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty()) {
        let count = part.chars().count();
        let capitals = part.chars().all(|c| c.is_uppercase());
        if part.chars().all(|c| c.is_ascii_digit()) {
            if count > 1 {
                marks.insert(part.to_owned());
            }
        } else if capitals && count <= SPELLED {
            // "I" and "A" are words as well.
            marks.extend(part.chars().filter(|c| count > 1 || !matches!(c, 'A' | 'I')).map(String::from));
        }
        let lower = part.to_lowercase();
        if word(&lower) && !PLAIN.contains(&lower.as_str()) {
            marks.insert(lower);
        }
    }
    marks
}
