//! The solvers and the generators of grids. The aims, as medians on one core: a number place grid of nine rows is proven
//! to have one solution in 1 ms, a picture grid of 15 rows and columns in 5 ms, a logic grid of four kinds of five things
//! in 5 ms; a puzzle is made in 100 ms, whatever its work.

use std::hint::black_box;

use criterion::Criterion;
use inklatch::kit::LockKind;
use inklatch::mechanics::work::Effort;
use inklatch::mechanics::{Job, Rng, find};
use inklatch::readings::Budget;
use inklatch::readings::matching::{Clue, Item, Matching};
use inklatch::readings::places::Places;
use inklatch::readings::runs::Runs;
use rand_chacha::rand_core::SeedableRng as _;
use serde_json::Value;

/// Grids over which each proof is measured in turn, so that no lucky one tells for all.
const GRIDS: u64 = 20;

/// A view of a mechanic, as data.
fn view(id: &str, setup: &str, answer: &str, seed: u64) -> Value {
    let lock = LockKind::Digits(u8::try_from(answer.len()).expect("few wheels"));
    let job = Job {
        answer,
        lock: &lock,
        symbols: &[
            "bell", "book", "boot", "cup", "drum", "feather", "gear", "key", "ladder", "moon", "owl", "star", "weight",
        ],
        marks: &[],
        colours: &[],
        hung: &[],
    };
    let mechanic = find(id).expect("a mechanic");
    mechanic.lay_out(setup, &job, &mut Rng::seed_from_u64(seed)).expect("a puzzle").json()
}

fn number_place(seed: u64) -> Vec<Option<usize>> {
    let view = view("number-place", "(size: 9, reasoning: Any)", "2718", seed);
    let cells = view["rows"].as_array().expect("rows").iter().flat_map(|row| row.as_array().expect("a row"));
    cells.map(|cell| cell.as_str().and_then(|symbol| symbol.parse::<usize>().ok()).map(|value| value - 1)).collect()
}

/// A picture of blots that has one solution: blots by chance, those taken that few lines leave open.
fn blots(seed: u64) -> Runs {
    let mut state = seed;
    let mut chance = || {
        // A linear congruential generator (Knuth, MMIX) is chance enough for blots.
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state >> 33
    };
    loop {
        let mut picture = vec![vec![false; 15]; 15];
        for _ in 0..22 {
            let (row, col) = (chance() as usize % 15, chance() as usize % 15);
            let (high, wide) = (1 + chance() as usize % 4, 1 + chance() as usize % 5);
            for line in picture.iter_mut().skip(row).take(high) {
                line.iter_mut().skip(col).take(wide).for_each(|cell| *cell = true);
            }
        }
        let runs = Runs::of(&picture);
        let mut count = 0;
        let done = runs.each(&mut Budget::new(2_000), &mut |_| {
            count += 1;
            count < 2
        });
        if done.is_ok() && count == 1 {
            return runs;
        }
    }
}

fn logic_grid(seed: u64) -> (Matching, Vec<Clue>) {
    let view = view("logic-grid", KINDS, "27180", seed);
    let item = |value: &Value| {
        let place = |at: usize| usize::try_from(value[at].as_u64().expect("a number")).expect("a small number");
        Item { kind: place(0), at: place(1) }
    };
    let clue = |statement: &Value| {
        let (form, said) = statement.as_object().and_then(|form| form.iter().next()).expect("a statement");
        let by = || usize::try_from(said[2].as_u64().expect("a kind")).expect("a small number");
        match form.as_str() {
            "Same" => Clue::Same(item(&said[0]), item(&said[1])),
            "NotSame" => Clue::NotSame(item(&said[0]), item(&said[1])),
            "Either" => Clue::Either(item(&said[0]), item(&said[1]), item(&said[2])),
            "Before" => Clue::Before(item(&said[0]), item(&said[1]), by()),
            "RightBefore" => Clue::Offset(item(&said[0]), item(&said[1]), by(), 1),
            _ => Clue::NextTo(item(&said[0]), item(&said[1]), by()),
        }
    };
    (Matching { kinds: 4, items: 5 }, view["statements"].as_array().expect("statements").iter().map(clue).collect())
}

/// Three kinds of five things; the tags are the fourth.
const KINDS: &str = r#"(kinds: [
    (name: "a", things: ["a1", "a2", "a3", "a4", "a5"]),
    (name: "b", things: ["b1", "b2", "b3", "b4", "b5"]),
    (name: "c", things: ["c1", "c2", "c3", "c4", "c5"], in_order: true),
])"#;

pub(crate) fn proving(c: &mut Criterion) {
    let mut group = c.benchmark_group("one solution");
    let mut next = 0;
    let mut turn = move || {
        next = (next + 1) % GRIDS as usize;
        next
    };
    let places = Places::new(9).expect("nine rows");
    let grids: Vec<_> = (0..GRIDS).map(number_place).collect();
    group.bench_function("number place, 9 rows", |b| {
        b.iter(|| assert_eq!(places.count(black_box(&grids[turn()]), 2, &mut Budget::default()), Ok(1)));
    });
    let pictures: Vec<_> = (0..GRIDS).map(blots).collect();
    group.bench_function("picture grid, 15 by 15", |b| {
        b.iter(|| {
            let mut count = 0;
            let found = &mut |_: &[Vec<bool>]| {
                count += 1;
                count < 2
            };
            assert!(black_box(&pictures[turn()]).each(&mut Budget::default(), found).is_ok());
            assert_eq!(count, 1);
        });
    });
    let logic: Vec<_> = (0..GRIDS).map(logic_grid).collect();
    group.bench_function("logic grid, 4 kinds of 5", |b| {
        b.iter(|| {
            let (size, clues) = &logic[turn()];
            assert_eq!(size.count(black_box(clues), 2, &mut Budget::default()), Ok(1));
        });
    });
    group.finish();
}

pub(crate) fn making(c: &mut Criterion) {
    let mut group = c.benchmark_group("made");
    group.sample_size(20);
    let kinds = KINDS.trim_end_matches(')');
    let cases: &[(&str, &str)] = &[
        ("number-place", "(size: 9, work: WORK)"),
        ("number-place", "(size: 9, reasoning: Any, work: WORK)"),
        ("picture-grid", "(shape: Thick, margin: 4, work: WORK)"),
        ("logic-grid", &format!("{kinds}, work: WORK)")),
        ("truth-tellers", "(liars: 3, tell_count: false, work: WORK)"),
        ("leftover-letters", "(backwards: true, work: WORK)"),
        ("balance-cards", "(work: WORK)"),
        ("price-list", "(work: WORK)"),
        ("domino-chain", "(work: WORK)"),
        ("fork-maze", "(work: WORK)"),
        ("route-map", "(work: WORK)"),
        ("route-map", "(route: Roads, work: WORK)"),
        ("count-scene", "(work: WORK)"),
        ("cut-strips", "(work: WORK)"),
        ("cut-strips", "(arrows: false, work: WORK)"),
    ];
    for (index, (id, setup)) in cases.iter().enumerate() {
        for effort in [Effort::Fair, Effort::Deep] {
            let setup = setup.replace("WORK", &format!("{effort:?}"));
            let mut seed = 0;
            group.bench_function(format!("{index} {id}, {effort:?}"), |b| {
                b.iter(|| {
                    seed += 1;
                    view(id, &setup, "2718", seed)
                });
            });
        }
    }
    group.finish();
}
