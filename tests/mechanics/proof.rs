//! What is proven is what is printed: every view is read back from the laid-out pieces.

use inklatch::diag::Hinted;
use inklatch::face::proof::Printed;
use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyMechanic, AnyView, MECHANICS, find};
use inklatch::readings::{Budget, Verdict};
use inklatch::theme::Edition;

use super::samples;
use crate::common::Stage;

/// Mechanics whose pieces nothing reads back yet. A mechanic that learns it leaves the list; the list only shrinks.
const UNREAD: &[&str] = &[];

/// Seeds of each proof: one after another in another theme.
const SEEDS: u64 = 10;

/// Setups beside the defaults, for drawings that those do not show: mechanic, setup, answer, wheels of the lock.
const VARIANTS: &[(&str, &str, &str, u8)] = &[
    ("glow-ink", "(places: [(name: \"the inside of the lid\")])", "6801", 4),
    ("glow-ink", "(order: pages, note_text: \"\")", "619", 3),
    ("banded-counters", "(discs: true)", "690", 3),
    ("banded-counters", "(discs: true, other_bands: [], plain: 0)", "118", 3),
    ("banded-counters", "(baseline: false)", "123", 3),
    ("lasting-ink", "(direction: leftwards)", "1066", 4),
    ("lasting-ink", "(around_mm: 400.0, direction: leftwards)", "1066", 4),
    ("lasting-ink", "(printed: false)", "1066", 4),
    ("lasting-ink", "(carrier: tile, around_mm: 170.0)", "6091", 4),
    ("lasting-ink", "(carrier: tile, around_mm: 170.0, printed: false)", "6091", 4),
    ("marked-letters", "(equal_letters: ReadingOrder)", "4711", 4),
    ("marked-letters", "(pointer: Initials(\"Open gates now\"))", "471", 3),
    ("magnet-field", "(order: Rows)", "471", 3),
    ("magnet-field", "(order: Sizes)", "471", 3),
    ("magnet-field", "(digits: 2, shape_size: 18.0, shapes: 40)", "47119", 5),
    ("marked-hiding-place", "(holds: Slip, at: \"the flat one\", told_by: Letter, place: Behind)", "471", 3),
    ("picture-key", "(text: \"Above the row.\")", "4711", 4),
    ("shift-wheel", "(from: inner, text: \"Set down:\")", "4711", 4),
];

#[test]
fn the_list_of_the_unread_is_exact() {
    let stages = Stage::all();
    let mut unread = Vec::new();
    for mechanic in MECHANICS {
        let (lock, _, view) = laid(&stages[0], *mechanic, 0).into_iter().next().unwrap();
        let printed = stages[0].printed(mechanic.meta().id, &lock, view.as_ref());
        if stages[0].reread(*mechanic, &lock, &printed).is_none() {
            unread.push(mechanic.meta().id);
        }
    }
    assert_eq!(unread, UNREAD);
}

/// A puzzle laid out: its lock, its answer, what guests see.
type Sample = (LockKind, String, Box<dyn AnyView>);

/// The default setup with one answer for each kind of lock that it can open.
fn laid(stage: &Stage, mechanic: &dyn AnyMechanic, seed: u64) -> Vec<Sample> {
    let setup = mechanic.default_setup().unwrap();
    let mut found: Vec<Sample> = Vec::new();
    for (lock, answer) in samples(mechanic, seed) {
        if found.iter().all(|(known, _, _)| std::mem::discriminant(known) != std::mem::discriminant(&lock))
            && let Ok(view) = stage.lay_out(mechanic, &setup, &answer, &lock, seed)
        {
            found.push((lock, answer, view));
        }
    }
    found
}

/// Whether the paper, read back, gives this one answer.
fn gives(again: Hinted<Box<dyn AnyView>>, lock: &LockKind, answer: &str) -> Result<(), String> {
    let again = again.map_err(|trouble| trouble.to_string())?;
    let found = again.readings(lock, &mut Budget::default());
    if found.verdict(answer) == Verdict::One { Ok(()) } else { Err(format!("{found:?}\n{again:?}")) }
}

/// Walks the family: every mechanic that can be read back, ten seeds in turn in every theme, and the variants in two.
fn every(edition: Edition, mut look: impl FnMut(&Stage, &'static dyn AnyMechanic, &Sample, &[Printed])) {
    let stages = Stage::in_edition(edition);
    let mut show = |stage: &Stage, mechanic: &'static dyn AnyMechanic, sample: &Sample| {
        look(stage, mechanic, sample, &stage.printed(mechanic.meta().id, &sample.0, sample.2.as_ref()));
    };
    for mechanic in MECHANICS.iter().copied().filter(|mechanic| !UNREAD.contains(&mechanic.meta().id)) {
        let mut seen = 0;
        let seeds = if edition == Edition::Colour { SEEDS } else { SEEDS * 6 / 10 };
        for (seed, stage) in (0..seeds).zip(stages.iter().cycle()) {
            for sample in laid(stage, mechanic, seed) {
                show(stage, mechanic, &sample);
                seen += 1;
            }
        }
        assert!(seen >= seeds / 2, "{}: only {seen} samples", mechanic.meta().id);
    }
    for (index, (id, setup, answer, wheels)) in VARIANTS.iter().enumerate() {
        let (mechanic, lock) = (find(id).unwrap(), LockKind::Digits(*wheels));
        for stage in [&stages[0], &stages[1 + index % (stages.len() - 1)]] {
            let view = stage.lay_out(mechanic, setup, answer, &lock, 3);
            let view = view.unwrap_or_else(|trouble| panic!("{id} {setup}: {trouble}"));
            show(stage, mechanic, &(lock.clone(), (*answer).to_owned(), view));
        }
    }
}

#[test]
fn what_is_printed_reads_as_what_was_proven() {
    let grey = |sides: &[Printed]| sides.iter().map(Printed::grey).collect::<Vec<_>>();
    let small = |sides: &[Printed]| sides.iter().map(|side| side.scaled(0.94)).collect::<Vec<_>>();
    let mut faults = Vec::new();
    every(Edition::Colour, |stage, mechanic, (lock, answer, view), sides| {
        for (name, sides) in [("as it is", sides.to_vec()), ("in grey", grey(sides)), ("at 94 %", small(sides))] {
            if let Err(fault) = gives(stage.reread(mechanic, lock, &sides).unwrap(), lock, answer) {
                let (id, theme) = (mechanic.meta().id, &stage.theme.theme.id);
                faults.push(format!("{id} in {theme}, {answer}, {name}: {fault}\n  of {view:?}"));
            }
        }
    });
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn line_work_reads_as_what_was_proven() {
    reads(Edition::LowInk);
}

#[test]
fn large_print_reads_as_what_was_proven() {
    reads(Edition::LargePrint);
}

fn reads(edition: Edition) {
    let mut faults = Vec::new();
    every(edition, |stage, mechanic, (lock, answer, view), sides| {
        for (name, sides) in
            [("as it is", sides.to_vec()), ("in grey", sides.iter().map(Printed::grey).collect::<Vec<_>>())]
        {
            if let Err(fault) = gives(stage.reread(mechanic, lock, &sides).unwrap(), lock, answer) {
                let (id, theme) = (mechanic.meta().id, &stage.theme.theme.id);
                faults.push(format!("{id} in {theme}, {answer}, {name}: {fault}\n  of {view:?}"));
            }
        }
    });
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}
