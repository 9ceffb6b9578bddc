//! The knob `work` and the number that reports it, for every mechanic whose setup has it.

use inklatch::kit::LockKind;
use inklatch::mechanics::work::Effort;
use inklatch::mechanics::{AnyMechanic, MECHANICS, find};
use rand::RngExt as _;

use crate::common::{lay_out, rng};

const SEEDS: u64 = 40;

/// The default setup with another `work`; none where the setup has no such field.
fn setup(mechanic: &dyn AnyMechanic, effort: Effort) -> Option<String> {
    let setup = mechanic.default_setup().unwrap();
    let turned = setup.replace("work: Fair", &format!("work: {effort:?}"));
    setup.contains("work: Fair").then_some(turned)
}

/// The work of the default setup at an effort, over all seeds that can be laid out, in rising order.
fn counts(mechanic: &dyn AnyMechanic, effort: Effort) -> Vec<u32> {
    let setup = setup(mechanic, effort).unwrap();
    let mut counts: Vec<u32> = (0..SEEDS)
        .filter_map(|seed| {
            let mut rng = rng(seed);
            let answer: String = (0..4).map(|_| rng.random_range(b'0'..=b'9') as char).collect();
            let view = lay_out(mechanic, &setup, &answer, &LockKind::Digits(4), seed).ok()?;
            let work = view.work().unwrap_or_else(|| panic!("{} counts no work", mechanic.meta().id));
            assert!(work.says.ends_with('.') && !work.says.contains(&answer), "{}", work.says);
            Some(work.count)
        })
        .collect();
    counts.sort_unstable();
    assert!(counts.len() >= 20, "{}: only {} of {SEEDS} seeds", mechanic.meta().id, counts.len());
    counts
}

#[test]
fn the_median_work_rises_with_the_knob() {
    let mut seen = 0;
    for mechanic in MECHANICS.iter().filter(|mechanic| setup(**mechanic, Effort::Fair).is_some()) {
        let median = |effort| {
            let counts = counts(*mechanic, effort);
            counts[counts.len() / 2]
        };
        let medians = Effort::ALL.map(median);
        println!("{}: {medians:?}", mechanic.meta().id);
        assert!(medians[0] < medians[1] && medians[1] < medians[2], "{}: {medians:?}", mechanic.meta().id);
        seen += 1;
    }
    assert!(seen > 0);
}

#[test]
fn a_setup_without_the_knob_is_a_fair_one() {
    for mechanic in MECHANICS {
        let Some(fair) = setup(*mechanic, Effort::Fair) else { continue };
        let id = mechanic.meta().id;
        let without: String = fair.lines().filter(|line| line.trim() != "work: Fair,").collect::<Vec<_>>().join("\n");
        let lock = LockKind::Digits(4);
        let json = |setup: &str| lay_out(*mechanic, setup, "1432", &lock, 3).unwrap().json();
        assert_ne!(without, fair, "{id}");
        assert_eq!(json(&without), json(&fair), "{id}");
    }
}

#[test]
fn the_steps_of_a_person_are_counted() {
    let view = |rows: &[&str]| {
        let row =
            |line: &&str| line.chars().map(|c| (c != '.').then(|| c.to_string())).collect::<Vec<Option<String>>>();
        let rows: Vec<_> = rows.iter().map(row).collect();
        let symbols: Vec<String> = (1..=rows.len()).map(|n| n.to_string()).collect();
        let json = serde_json::json!({ "symbols": symbols, "rows": rows, "marks": [[0, 1]], "large": false });
        find("number-place").unwrap().view(&json).unwrap()
    };
    // Four cells, each with one value left.
    let work = view(&["1.34", "3412", "21.3", "432."]).work().unwrap();
    assert_eq!(work.count, 3, "{}", work.says);
    // Nothing given: no step leads on, and every cell stays open.
    let work = view(&["....", "....", "....", "...."]).work().unwrap();
    assert_eq!(work.count, 8 * 16, "{}", work.says);
}
