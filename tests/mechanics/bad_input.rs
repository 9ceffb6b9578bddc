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

/// The setup with some of its values replaced: `edits` says which, and by what.
fn spoilt(setup: &str, edits: &[(usize, usize)]) -> String {
    let mut pieces: Vec<String> = Vec::new();
    let mut rest = setup;
    // Strings, numbers, words and single characters, one after another.
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
        let mechanic = MECHANICS[which];
        let id = mechanic.meta().id;
        let lock = match answer.len() {
            // Otherwise nearly all answers would be refused for the number of their symbols alone.
            wheels @ 1..=6 if fitting => LockKind::Digits(u8::try_from(wheels).unwrap()),
            _ => lock,
        };
        let setup = spoilt(&mechanic.default_setup().unwrap(), &edits);
        match lay_out(mechanic, &setup, &answer, &lock, seed) {
            Err(trouble) => prop_assert!(
                !trouble.hints.is_empty() || trouble.place.is_some(),
                "{id}: {trouble} says not what to change ({setup}, {answer:?}, {lock:?})"
            ),
            Ok(view) => {
                // What was laid out can be read, counted and drawn; what is wrong with it is found by the checks.
                let _ = view.readings(&lock, &mut Budget::default());
                let _ = view.work();
                let pieces = dressed(id, &lock, |cx| view.pieces(cx));
                if let Err(trouble) = pieces {
                    prop_assert!(!trouble.hints.is_empty(), "{id}: {trouble} says not what to change");
                }
            }
        }
    }
}
