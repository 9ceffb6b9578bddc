//! What is proven is what is printed: every view is read back from the laid-out pieces.

use inklatch::diag::Hinted;
use inklatch::face::proof::Printed;
use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyMechanic, AnyView, MECHANICS};
use inklatch::readings::{Budget, Verdict};

use super::laid;
use crate::common::{printed, reread};

/// Mechanics whose pieces nothing reads back yet. A mechanic that learns it leaves the list; the list only shrinks.
const UNREAD: &[&str] = &["glow-ink", "banded-counters", "lasting-ink", "magnet-field", "marked-hiding-place"];

/// Seeds of each proof.
const SEEDS: u64 = 10;

#[test]
fn the_list_of_the_unread_is_exact() {
    let mut unread = Vec::new();
    for mechanic in MECHANICS {
        let (lock, _, view) = laid(*mechanic, 0).into_iter().next().unwrap();
        if reread(*mechanic, &lock, &printed(mechanic.meta().id, &lock, view.as_ref())).is_none() {
            unread.push(mechanic.meta().id);
        }
    }
    assert_eq!(unread, UNREAD);
}

/// Whether the paper, read back, gives this one answer.
fn gives(again: Hinted<Box<dyn AnyView>>, lock: &LockKind, answer: &str) -> Result<(), String> {
    let again = again.map_err(|trouble| trouble.to_string())?;
    let found = again.readings(lock, &mut Budget::default());
    if found.verdict(answer) == Verdict::One { Ok(()) } else { Err(format!("{found:?}\n{again:?}")) }
}

/// Walks the family: every mechanic that can be read back, ten seeds, one sample of each kind of lock.
fn every(mut look: impl FnMut(&'static dyn AnyMechanic, &LockKind, &str, &[Printed])) {
    for mechanic in MECHANICS.iter().copied().filter(|mechanic| !UNREAD.contains(&mechanic.meta().id)) {
        for seed in 0..SEEDS {
            let mut samples = laid(mechanic, seed);
            samples.dedup_by_key(|(lock, _, _)| std::mem::discriminant(lock));
            for (lock, answer, view) in samples {
                look(mechanic, &lock, &answer, &printed(mechanic.meta().id, &lock, view.as_ref()));
            }
        }
    }
}

#[test]
fn what_is_printed_reads_as_what_was_proven() {
    let grey = |sides: &[Printed]| sides.iter().map(Printed::grey).collect::<Vec<_>>();
    let small = |sides: &[Printed]| sides.iter().map(|side| side.scaled(0.94)).collect::<Vec<_>>();
    every(|mechanic, lock, answer, sides| {
        let id = mechanic.meta().id;
        for (name, sides) in [("as it is", sides.to_vec()), ("in grey", grey(sides)), ("at 94 %", small(sides))] {
            let again = reread(mechanic, lock, &sides).unwrap();
            if let Err(fault) = gives(again, lock, answer) {
                panic!("{id}, {answer}, {name}: {fault}");
            }
        }
    });
}
