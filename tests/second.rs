//! Puzzles for a second opinion: as guests see them, written to a folder for `tests/second_opinion`, which solves
//! them with a solver that was not written here.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::PathBuf;
use std::time::Instant;

use inklatch::kit::LockKind;
use inklatch::mechanics::work::Effort;
use inklatch::mechanics::{dots, find};
use inklatch::readings::{Budget, Verdict};
use rand::RngExt as _;
use serde_json::json;

use crate::common::{lay_out, rng};

/// Puzzles of each mechanic.
const SEEDS: u64 = 200;

/// Mechanics with setups that differ in size and form; `WORK` stands for an [`Effort`]. The last tells whether letters
/// are carried as well.
const CASES: &[(&str, &[&str], bool)] = &[
    (
        "number-place",
        &["(size: 4, work: WORK)", "(work: WORK)", "(size: 9, work: WORK)", "(size: 9, reasoning: Any, work: WORK)"],
        true,
    ),
    ("picture-grid", &["(work: WORK)", "(shape: Thick, work: WORK)", "(margin: 4, work: WORK)"], true),
    ("logic-grid", &["(work: WORK)", "(spare: 2, work: WORK)"], true),
    ("truth-tellers", &["(work: WORK)", "(liars: 3, tell_count: false, work: WORK)"], true),
    ("leftover-letters", &["(work: WORK)", "(backwards: true, work: WORK)"], true),
    ("balance-cards", &["(work: WORK)", "(spare: 4, work: WORK)"], true),
    ("price-list", &["(work: WORK)", "(most: 2, spare: 1, work: WORK)"], false),
    ("domino-chain", &["(work: WORK)"], false),
    ("cut-strips", &["(work: WORK)", "(arrows: false, work: WORK)"], true),
    ("count-scene", &["(work: WORK)", "(ringed: false, work: WORK)"], false),
    ("fork-maze", &["(work: WORK)"], true),
    ("route-map", &["(work: WORK)", "(route: Roads, work: WORK)"], true),
];

/// A lock and an answer for it, by chance; every third with letters.
fn task(seed: u64, attempt: u64, letters: bool) -> (LockKind, String) {
    let mut rng = rng(seed * 1_000 + attempt);
    let wheels = 3 + u8::try_from(seed % 3).unwrap();
    if letters && seed % 3 == 1 {
        let alphabet: Vec<String> = vec!["ABCDEFGHIJKLMNOPQRSTUVWXYZ".into(); usize::from(wheels)];
        let word = (0..wheels).map(|_| rng.random_range(b'A'..=b'Z') as char).collect();
        return (LockKind::Letters(alphabet), word);
    }
    (LockKind::Digits(wheels), (0..wheels).map(|_| rng.random_range(b'0'..=b'9') as char).collect())
}

/// For each wheel of a lock the signs that it shows, as a picture of dots draws them.
fn wheels(lock: &LockKind) -> Vec<BTreeMap<char, &'static [&'static str]>> {
    let count = lock.wheels().unwrap_or_default();
    let wheel = |at| dots::SIGNS.iter().filter(move |(symbol, _)| lock.shows(at, *symbol));
    (0..count).map(|at| wheel(at).map(|(symbol, rows)| (*symbol, rows.as_slice())).collect()).collect()
}

#[test]
#[ignore = "tests/check.sh runs it, with the folder in VIEWS"]
fn views_for_a_second_opinion() {
    let folder = PathBuf::from(std::env::var("VIEWS").expect("the folder in VIEWS"));
    for (id, setups, letters) in CASES {
        let mechanic = find(id).unwrap();
        let mut out = String::new();
        for seed in 0..SEEDS {
            let at = usize::try_from(seed).unwrap();
            let effort = Effort::ALL[at / setups.len() % Effort::ALL.len()];
            let setup = setups[at % setups.len()].replace("WORK", &format!("{effort:?}"));
            // An answer that a mechanic refuses is tried another way: refusals have tests of their own.
            let (lock, answer, view) = (0..60)
                .find_map(|attempt| {
                    let (lock, answer) = task(seed, attempt, *letters);
                    let view = lay_out(mechanic, &setup, &answer, &lock, seed).ok()?;
                    Some((lock, answer, view))
                })
                .unwrap_or_else(|| panic!("{id}, seed {seed}: no answer for {setup}"));
            let begun = Instant::now();
            let found = view.readings(&lock, &mut Budget::default());
            let micros = u64::try_from(begun.elapsed().as_micros()).unwrap();
            assert_eq!(found.verdict(&answer), Verdict::One, "{id}, seed {seed}, {setup}");
            let readings: Vec<&str> = found.list.iter().map(|reading| reading.answer.as_str()).collect();
            let line = json!({
                "seed": seed, "setup": setup, "readings": readings, "micros": micros, "view": view.json(),
                "wheels": wheels(&lock),
            });
            writeln!(out, "{line}").unwrap();
        }
        #[expect(clippy::disallowed_methods, reason = "a test writes where its caller says")]
        std::fs::write(folder.join(format!("{id}.jsonl")), out).unwrap();
    }
}
