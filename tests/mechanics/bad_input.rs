//! Setups and answers that nobody should write, for every mechanic: they are refused with what to change, or laid out;
//! never a panic, and never a search without end.

use inklatch::kit::LockKind;
use inklatch::mechanics::MECHANICS;
use inklatch::readings::Budget;
use proptest::prelude::*;

use crate::common::{dressed, lay_out};

/// What a value of a setup is replaced by.
const NUMBERS: &[&str] = &["0", "1", "2", "3", "5", "9", "12", "200", "255"];
const TEXTS: &[&str] =
    &["", " ", "A", "bell", "ÄÖß 猫", "x\u{301}", "SNOW", "1234", "{{ keeper", "a very long name, with a comma"];

/// Strings, numbers, words and single characters of a text, one after another.
fn tokens(text: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let length = if first == '"' {
            rest[1..].find('"').map_or(rest.len(), |end| end + 2)
        } else if first.is_alphanumeric() {
            rest.find(|c: char| !c.is_alphanumeric() && c != '_' && c != '.').unwrap_or(rest.len())
        } else {
            first.len_utf8()
        };
        let (piece, after) = rest.split_at(length);
        pieces.push(piece.to_owned());
        rest = after;
    }
    pieces
}

/// The setup with some of its values replaced: `edits` says which, and by what.
fn spoilt(setup: &str, edits: &[(usize, usize)]) -> String {
    let mut pieces = tokens(setup);
    let is_value = |piece: &String| {
        piece.starts_with(|c: char| c == '"' || c.is_ascii_digit()) || ["true", "false"].contains(&piece.as_str())
    };
    let values: Vec<usize> = (0..pieces.len()).filter(|at| is_value(&pieces[*at])).collect();
    for (which, by) in edits.iter().filter(|_| !values.is_empty()) {
        let at = values[which % values.len()];
        pieces[at] = match pieces[at].as_str() {
            "true" => "false".to_owned(),
            "false" => "true".to_owned(),
            text if text.starts_with('"') => format!("{:?}", TEXTS[by % TEXTS.len()]),
            _ => NUMBERS[by % NUMBERS.len()].to_owned(),
        };
    }
    pieces.concat()
}

/// What is put anywhere into a setup.
const FRAGMENTS: &[&str] = &[
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    "\"",
    "-1",
    "1e300",
    "NaN",
    "99999999999999999999",
    "Some",
    "None",
    "()",
    "[[[[",
    "\u{0}",
    "猫",
    "r#\"",
    "/*",
    "//",
    "true",
    "work: Deep,",
    "work: Deep, work: Light,",
];

/// The setup with its text mangled: tokens dropped, doubled, exchanged, others put in, lists made very long.
fn mangled(setup: &str, edits: &[(u8, usize, usize)]) -> String {
    let mut pieces = tokens(setup);
    for (kind, at, by) in edits {
        let at = at % pieces.len().max(1);
        match kind {
            0 if !pieces.is_empty() => drop(pieces.remove(at)),
            1 if !pieces.is_empty() => pieces.insert(at, pieces[by % pieces.len()].clone()),
            2 if !pieces.is_empty() => {
                let other = by % pieces.len();
                pieces.swap(at, other);
            }
            3 => pieces.insert(at, FRAGMENTS[by % FRAGMENTS.len()].to_owned()),
            _ => {
                // All that stands between the brackets of a list comes again and again.
                let Some(open) = pieces.iter().skip(at).position(|piece| piece == "[").map(|found| found + at) else {
                    continue;
                };
                let Some(close) = pieces.iter().skip(open).position(|piece| piece == "]").map(|found| found + open)
                else {
                    continue;
                };
                let list: Vec<String> = pieces[open + 1..close].to_vec();
                let again = (0..by % 60).flat_map(|_| [",".to_owned()].into_iter().chain(list.clone()));
                let again: Vec<String> = again.collect();
                pieces.splice(close..close, again);
            }
        }
    }
    pieces.concat()
}

/// Lays a puzzle out, reads and draws it; whoever wrote the setup is told what to change, or all goes well.
fn survives(which: usize, setup: &str, answer: &str, lock: &LockKind, seed: u64) -> Result<(), TestCaseError> {
    let mechanic = MECHANICS[which];
    let id = mechanic.meta().id;
    match lay_out(mechanic, setup, answer, lock, seed) {
        Err(trouble) => prop_assert!(
            !trouble.hints.is_empty() || trouble.place.is_some(),
            "{id}: {trouble} says not what to change ({setup}, {answer:?}, {lock:?})"
        ),
        Ok(view) => {
            // What was laid out can be read, counted and drawn; what is wrong with it is found by the checks.
            let _ = view.readings(lock, &mut Budget::default());
            let _ = view.work();
            let pieces = dressed(id, lock, |cx| view.pieces(cx));
            if let Err(trouble) = pieces {
                prop_assert!(!trouble.hints.is_empty(), "{id}: {trouble} says not what to change");
            }
        }
    }
    Ok(())
}

fn locks() -> impl Strategy<Value = LockKind> {
    prop_oneof![
        (0_u8..14).prop_map(LockKind::Digits),
        prop::collection::vec("[A-F]{0,4}", 0..7).prop_map(LockKind::Letters),
        (0_u8..14).prop_map(LockKind::Directions),
        Just(LockKind::Key),
        Just(LockKind::Spoken),
    ]
}

/// An answer that the lock can show more often than not.
fn answers() -> impl Strategy<Value = String> {
    prop_oneof![3 => "[0-9]{1,6}", 2 => "[A-F]{1,5}", 1 => "[UDLR]{1,6}", 1 => "\\PC{0,14}", 1 => "[0-9]{40}"]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_that_is_written_brings_a_mechanic_down(
        which in 0..MECHANICS.len(),
        lock in locks(),
        answer in answers(),
        fitting in any::<bool>(),
        edits in prop::collection::vec((0..40_usize, 0..40_usize), 0..4),
        seed in 0..1_000_u64,
    ) {
        let lock = match answer.len() {
            // Otherwise nearly all answers would be refused for the number of their symbols alone.
            wheels @ 1..=6 if fitting => LockKind::Digits(u8::try_from(wheels).unwrap()),
            _ => lock,
        };
        survives(which, &spoilt(&MECHANICS[which].default_setup().unwrap(), &edits), &answer, &lock, seed)?;
    }

    #[test]
    fn no_text_of_a_setup_brings_a_mechanic_down(
        which in 0..MECHANICS.len(),
        answer in "[0-9]{3,4}",
        edits in prop::collection::vec((0..5_u8, 0..400_usize, 0..400_usize), 1..4),
        seed in 0..1_000_u64,
    ) {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        survives(which, &mangled(&MECHANICS[which].default_setup().unwrap(), &edits), &answer, &lock, seed)?;
    }
}
