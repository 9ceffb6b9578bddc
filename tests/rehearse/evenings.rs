//! Simulated evenings against closed forms, and what must hold of any.

use inklatch::diag::Level;
use inklatch::kit::Kit;
use inklatch::party::Party;
use inklatch::rehearse::{LogNormal, Rehearsal, Rehearsals, Stage, minutes, outline, percent, rehearse};
use proptest::prelude::*;

use super::{cases, close, quantiles, stage, stage_of};
use crate::sound::sound_kit;

const RUNS: usize = 20_000;

/// Holds that a share `p` of the evenings end within `minutes`: to four standard errors of a share of so many draws.
fn share_within(stage: &Stage, minutes: f64, p: f64) {
    let stage = Stage { minutes, ..stage.clone() };
    let found = rehearse(&stage, RUNS).unwrap().chance;
    let error = (p * (1.0 - p) / RUNS as f64).sqrt();
    assert!(
        (found - p).abs() <= 4.0 * error,
        "{found} of the evenings end within {minutes}, not {p} ± {}",
        4.0 * error
    );
}

/// Holds that the evenings take so long on the average: to four standard errors, with the known spread of one evening.
fn mean_is(stage: &Stage, mean: f64, sd: f64) {
    let found = rehearse(stage, RUNS).unwrap().mean;
    let error = sd / (RUNS as f64).sqrt();
    assert!((found - mean).abs() <= 4.0 * error, "{found}, not {mean} ± {}", 4.0 * error);
}

#[test]
fn one_puzzle_alone_takes_its_own_time() {
    let time = LogNormal::of(7.0, 15.0);
    let stage = stage_of(&[time], false, 2);
    for p in [0.05, 0.25, 0.5, 0.9, 0.95] {
        share_within(&stage, time.quantile(p), p);
    }
    mean_is(&stage, time.mean(), time.sd());
    // The spread that groups share is a part of the puzzle's own, not more of it.
    let mut shared = stage.clone();
    shared.habits.skill = 0.4;
    for p in [0.1, 0.5, 0.9] {
        share_within(&shared, time.quantile(p), p);
    }
    // What three guests can do, four can do no better.
    let [three, four] = [3, 4].map(|guests| rehearse(&stage_of(&[time], false, guests), 500).unwrap().end);
    assert_eq!(three, four);
    assert!(three.median < rehearse(&stage, 500).unwrap().end.median);
}

/// Source: tests/refs/07_max_of_iid.json (order statistics; log-normal means by two integrals): quantiles to 1e-6
/// relative, simulated shares to four standard errors.
#[test]
fn puzzles_side_by_side_take_as_long_as_the_longest() {
    let found = cases(include_str!("../refs/07_max_of_iid.json"), "lognormal_max");
    assert_eq!(found.len(), 4);
    for case in found {
        let time = LogNormal { mu: case["mu"].as_f64().unwrap(), sigma: case["sigma"].as_f64().unwrap() };
        let n = u8::try_from(case["n"].as_u64().unwrap()).unwrap();
        // Twice as many guests as puzzles, who stay apart as long as there is a puzzle for each pair: helpers would
        // make the last ones quicker.
        let mut stage = stage_of(&vec![time; usize::from(n)], false, 2 * n);
        stage.habits.pace = [1.0, 1.0, 1.0];
        for (p, value) in quantiles(&case["expected"]["quantiles"]) {
            close(time.quantile(p.powf(1.0 / f64::from(n))), &value, 1e-6, &case["id"]);
            share_within(&stage, value.as_f64().unwrap(), p);
        }
        // The spread of the longest is at most that of all of them together, which bounds the error of its mean.
        let sd = time.sd() * f64::from(n).sqrt();
        mean_is(&stage, case["expected"]["mean"].as_f64().unwrap(), sd);
    }
}

#[test]
fn a_chain_takes_the_sum() {
    let times = [LogNormal::of(4.0, 6.0), LogNormal::of(8.0, 20.0), LogNormal::of(2.5, 7.0)];
    let mut stage = stage_of(&times, true, 2);
    let sd = times.iter().map(|time| time.sd() * time.sd()).sum::<f64>().sqrt();
    let sum: f64 = times.iter().map(|time| time.mean()).sum();
    mean_is(&stage, sum, sd);
    let rehearsal = rehearse(&stage, 2_000).unwrap();
    assert!(rehearsal.puzzles.iter().all(|puzzle| puzzle.critical == 1.0), "all stand in the way");
    let waited: f64 = rehearsal.puzzles.iter().map(|puzzle| puzzle.holds).sum();
    assert!((waited - rehearsal.mean).abs() < 1e-9 && rehearsal.search < 1e-9);
    let order: Vec<f64> = rehearsal.past.iter().map(|past| past.half).collect();
    assert!(order.is_sorted() && order.len() == 6, "{order:?}");
    // The letter and the way to each lock come on top, to the minute.
    (stage.letter, stage.habits.trying) = (2.0, 0.5);
    mean_is(&stage, sum + 2.0 + 3.0 * 0.5, sd);
    stage.puzzles[0].locks = 3.0;
    mean_is(&stage, sum + 2.0 + 5.0 * 0.5, sd);
}

#[test]
fn nobody_goes_on_with_a_puzzle_whose_lock_is_open() {
    use inklatch::flow::net::Opener;
    let fixed = |minutes: f64| LogNormal { mu: minutes.ln(), sigma: 0.0 };
    // Two puzzles open one lock, a third the other; two pairs. The quick one opens the lock, and the pair at the slow
    // one goes over to the third.
    let mut stage = stage_of(&[fixed(4.0), fixed(30.0), fixed(10.0)], false, 4);
    stage.net.locks = vec![vec![Opener::Puzzle(0), Opener::Puzzle(1)], vec![Opener::Puzzle(2)]];
    stage.net.boxes[0].locks = vec![0, 1];
    let rehearsal = rehearse(&stage, 1).unwrap();
    // From minute 4 on three of four are of use at the third puzzle, which nobody has begun.
    assert!((rehearsal.mean - (4.0 + 10.0 / 1.2)).abs() < 1e-9, "{}", rehearsal.mean);
    assert_eq!(rehearsal.puzzles[1].critical, 0.0);
}

#[test]
fn guests_with_nothing_to_do_are_counted() {
    // Three pairs at one puzzle: three guests are of use, one looks over their shoulders, two do nothing.
    let stage = stage_of(&[LogNormal::of(5.0, 8.0)], false, 6);
    let rehearsal = rehearse(&stage, 400).unwrap();
    assert!((rehearsal.idle - 3.0).abs() < 1e-9 && (rehearsal.idle_share - 0.5).abs() < 1e-9, "{rehearsal:?}");
    let puzzle = &rehearsal.puzzles[0];
    assert!((puzzle.idle - 3.0 * rehearsal.mean).abs() < 1e-6 && puzzle.critical == 1.0);
}

#[test]
fn tokens_come_when_it_is_quiet_or_a_lock_is_tried_in_vain() {
    let mut stage = stage_of(&[LogNormal { mu: 60.0_f64.ln(), sigma: 0.0 }], false, 2);
    stage.quiet = 6.0;
    // 60 minutes of work: 6 done, 54 · 0.75 left; 6 done, 34.5 · 0.5; 6 done, 11.25 · 0.25 = 2.8125.
    let rehearsal = rehearse(&stage, 1).unwrap();
    assert_eq!(rehearsal.puzzles[0].tokens, [1.0, 1.0, 1.0, 0.0]);
    assert!((rehearsal.mean - 20.8125).abs() < 1e-9, "{}", rehearsal.mean);
    // A ladder without a method goes on with the giveaway; then the host sits down, and a minute is left.
    stage.puzzles[0].steps = [true, false, true];
    stage.habits.hints[2] = 0.9;
    let rehearsal = rehearse(&stage, 1).unwrap();
    assert_eq!(rehearsal.puzzles[0].tokens, [1.0, 0.0, 1.0, 1.0]);
    assert!((rehearsal.mean - 19.0).abs() < 1e-9, "{}", rehearsal.mean);
    // Steps that lie open are not given again.
    stage.puzzles[0].open = 1;
    assert_eq!(rehearse(&stage, 1).unwrap().puzzles[0].tokens[0], 0.0);
    // Wrong answers without end: a token after three of them, and the next after three more.
    let mut stage = stage_of(&[LogNormal { mu: 0.0, sigma: 0.0 }], false, 2);
    (stage.habits.wrong, stage.habits.again) = (1.0, 0.1);
    let rehearsal = rehearse(&stage, 1).unwrap();
    assert_eq!(rehearsal.puzzles[0].tokens, [1.0, 1.0, 1.0, 1.0]);
}

#[test]
fn the_same_stage_is_the_same_evening_on_any_number_of_cores() {
    let stage = stage(&sound_kit(), Level::Standard);
    let here = rehearse(&stage, 300).unwrap();
    let alone = rayon::ThreadPoolBuilder::new().num_threads(1).build().unwrap();
    assert_eq!(alone.install(|| rehearse(&stage, 300)).unwrap(), here);
    assert_ne!(rehearse(&Stage { seed: stage.seed + 1, ..stage }, 300).unwrap(), here);
}

/// In a chain nothing can be done in another order, so what is less work is never later; side by side a group that has
/// less to do may choose worse, and only most evenings are earlier.
#[test]
fn less_work_ends_earlier_and_slower_groups_later() {
    let times = [LogNormal::of(4.0, 6.0), LogNormal::of(8.0, 20.0), LogNormal::of(5.0, 9.0)];
    let open = |chained: bool, open: u8, guests: u8| {
        let mut stage = stage_of(&times, chained, guests);
        stage.puzzles.iter_mut().for_each(|task| task.open = open);
        rehearse(&stage, 2_000).unwrap()
    };
    for (chained, guests) in [(true, 2), (true, 5), (false, 2), (false, 6)] {
        let steps: Vec<Rehearsal> = (0..=3).map(|steps| open(chained, steps, guests)).collect();
        for pair in steps.windows(2) {
            assert!(pair[1].chance >= pair[0].chance && pair[1].mean < pair[0].mean);
            assert!(pair[1].end.quick < pair[0].end.quick && pair[1].end.slow < pair[0].end.slow);
        }
    }
    let mut stage = stage_of(&times, true, 2);
    let usual = rehearse(&stage, 500).unwrap();
    stage.puzzles.iter_mut().for_each(|task| task.time = task.time.longer(2.0));
    let slower = rehearse(&stage, 500).unwrap();
    assert!((slower.mean / usual.mean - 2.0).abs() < 1e-9 && slower.chance <= usual.chance);
    // Groups that differ more spread their evenings wider, about the same middle.
    stage.habits.skill = 0.5;
    let apart = rehearse(&stage, 20_000).unwrap();
    stage.habits.skill = 0.0;
    let alike = rehearse(&stage, 20_000).unwrap();
    assert!(apart.end.slow > alike.end.slow && apart.end.quick < alike.end.quick);
}

#[test]
fn the_demo_kits_fit_their_hour_at_every_level() {
    for name in ["the-stopped-clock", "the-harbour-regatta"] {
        let opened = inklatch::bundle::open(Some(std::path::Path::new(name))).unwrap();
        for level in Level::ALL {
            let party = Party::new(&opened.kit, &opened.theme, level).unwrap();
            let found = Rehearsals::default().of(&opened.kit, &party.parts(&opened.kit), level).unwrap();
            assert!((0.6..=0.98).contains(&found.chance), "{name}, {}: {}", level.word(), found.chance);
            assert!(found.bars.iter().map(|bar| bar.evenings).sum::<usize>() == found.runs);
            assert!(outline(&opened.kit, &found).iter().all(|line| line.ends_with('.')));
        }
    }
}

#[test]
fn a_rehearsal_is_kept_while_nothing_it_depends_on_changes() {
    let mut kit = sound_kit();
    let mut kept = Rehearsals::default();
    let mut of = |kit: &Kit| {
        let party = Party::new(kit, &crate::common::plain_theme(), Level::Standard).unwrap();
        kept.of(kit, &party.parts(kit), Level::Standard).unwrap()
    };
    let first = of(&kit);
    kit.title = "Another title".into();
    kit.puzzles[0].hints.nudge.push_str(" Look twice.");
    assert!(std::sync::Arc::ptr_eq(&first, &of(&kit)));
    kit.puzzles[0].minutes = Some(30.0);
    let second = of(&kit);
    assert!(second.mean > first.mean);
}

#[test]
fn what_cannot_be_rehearsed_says_why() {
    let small = stage_of(&[LogNormal::of(5.0, 8.0)], false, 2);
    for runs in [0, 100_001] {
        let trouble = rehearse(&small, runs).unwrap_err();
        assert!(trouble.hints[0].contains("1 to 100000"), "{trouble}");
    }
    let large = stage_of(&vec![LogNormal::of(5.0, 8.0); 2_000], true, 4);
    assert_eq!(large.usual_runs(), 40);
    assert!(rehearse(&large, 2_001).unwrap_err().hints[0].contains("1 to 2000"));
    assert_eq!(rehearse(&large, large.usual_runs()).unwrap().chance, 0.0);
    let mut kit = sound_kit();
    kit.puzzles[0].parts.clear();
    let party = Party::new(&kit, &crate::common::plain_theme(), Level::Standard).unwrap();
    let trouble = Stage::new(&kit, &party.parts(&kit), Level::Standard).unwrap_err();
    assert!(trouble.message.contains("the end cannot be reached"), "{trouble}");
}

#[test]
fn shares_and_minutes_in_words() {
    let shown: Vec<String> = [0.0, 0.004, 0.61, 0.996, 1.0].map(percent).into();
    assert_eq!(shown, ["0 %", "under 1 %", "61 %", "over 99 %", "100 %"]);
    assert_eq!([0.0, 3.26, 9.0, 41.7].map(minutes), ["0", "3.3", "9", "42"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Whatever a kit states, an evening ends, and nothing of it is no number.
    #[test]
    fn strange_numbers_do_no_harm(
        minutes in prop::collection::vec(prop::option::of(prop::num::f64::ANY), 6),
        players in any::<(u8, u8)>(),
        stated in any::<u16>(),
        rules in any::<(u8, u8)>(),
    ) {
        let mut kit = sound_kit();
        for (at, puzzle) in kit.puzzles.iter_mut().enumerate() {
            (puzzle.minutes, puzzle.slow_minutes) = (minutes[at], minutes[at + 3]);
        }
        (kit.players, kit.minutes) = (players, stated);
        (kit.levels.standard.open_steps, kit.levels.standard.quiet_minutes) = rules;
        let found = rehearse(&stage(&kit, Level::Standard), 20).unwrap();
        prop_assert!((0.0..=1.0).contains(&found.chance));
        prop_assert!([found.mean, found.end.slow, found.idle, found.search].iter().all(|m| m.is_finite() && *m >= 0.0));
        prop_assert!(found.puzzles.iter().all(|puzzle| puzzle.minutes.slow.is_finite() && puzzle.holds >= 0.0));
    }
}
