//! Setups and answers that nobody should write, for every mechanic: they are refused with what to change, or laid out;
//! never a panic, and never a search without end.

use inklatch::kit::LockKind;
use inklatch::mechanics::MECHANICS;
use inklatch::readings::Budget;
use proptest::prelude::*;

use crate::bent::{mangled, spoilt};
use crate::common::{dressed, lay_out};

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
