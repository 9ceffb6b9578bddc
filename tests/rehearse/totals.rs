//! What the whole minutes of real evenings teach of puzzles that nobody timed.

use inklatch::diag::Level;
use inklatch::kit::{Play, Plays, PuzzlePlay};
use inklatch::rehearse::{Belief, LogNormal, Source, Total, rehearse};

use super::{cases, close, stage, stage_of};
use crate::sound::sound_kit;

const REF: &str = include_str!("../refs/07_sum_of_parts.json");

fn total(minutes: f64, puzzles: usize) -> Total {
    Total { guests: 2, minutes, known: vec![None; puzzles] }
}

#[test]
fn a_sum_is_split_as_joint_normal_quantities_are() {
    let mut exact = 0;
    for case in cases(REF, "sums") {
        let number = |of: &serde_json::Value| of.as_f64().unwrap();
        let prior: Vec<Belief> = case["prior"]
            .as_array()
            .unwrap()
            .iter()
            .map(|p| Belief { m: number(&p["m"]), k: number(&p["k"]), a: number(&p["a"]), b: number(&p["b"]) })
            .collect();
        let share: Vec<f64> = case["share"].as_array().unwrap().iter().map(number).collect();
        let (off, skill) = (number(&case["off"]), number(&case["shared"]));
        let alone: Vec<f64> = prior.iter().map(|b| b.predictive().scale.powi(2) - skill * skill).collect();
        let common: f64 = share.iter().sum::<f64>() * skill;
        let own: f64 = alone.iter().zip(&share).map(|(alone, s)| s * s * alone).sum();
        let variance = number(&case["rest"]) + own + common * common;
        for (at, (belief, share)) in prior.iter().zip(&share).enumerate() {
            let after = belief.after_sum(share * alone[at] + skill * common, off, variance);
            // What it took, as far as the sum tells.
            close(belief.m + (after.m - belief.m) * (belief.k + 1.0), &case["seen_mean"][at], 1e-9, &case);
            let weight = belief.k + 1.0 - belief.k * (belief.k + 1.0) / after.k;
            let took = (alone[at] + skill * skill) * (1.0 - weight);
            assert!((took - number(&case["seen_variance"][at])).abs() < 1e-9, "{case}: {took}");
            assert!((after.a - belief.a - weight / 2.0).abs() < 1e-9);
            // With nothing in common, the joint posterior of the means; the reference takes the variances as known.
            if skill == 0.0 {
                close(after.m, &case["mean"][at], 1e-9, &case);
                close(belief.b / belief.a / after.k, &case["variance"][at], 1e-9, &case);
                exact += 1;
            }
        }
    }
    assert!(exact >= 10, "{exact}");
}

#[test]
fn an_evening_of_one_puzzle_is_a_play_of_it() {
    let belief = Belief::of(10.0, 18.0);
    let own = belief.predictive().scale.powi(2);
    let (one, other) = (belief.after(&[25.0]), belief.after_sum(own, (25.0_f64 / 10.0).ln(), own));
    for (a, b) in [(one.m, other.m), (one.k, other.k), (one.a, other.a), (one.b, other.b)] {
        assert!((a - b).abs() < 1e-12, "{one:?} {other:?}");
    }
    // The same through simulated evenings, which know the median to a few parts of a hundred.
    let mut alone = stage_of(&[LogNormal::of(10.0, 18.0)], false, 2);
    alone.totals = vec![total(25.0, 1)];
    let learnt = rehearse(&alone, 4000).unwrap().puzzles[0].estimate;
    let next = one.predictive();
    assert_eq!(learnt.source, Source::Totals(0, 1));
    assert!((learnt.median / next.minutes(0.5)).ln().abs() < 0.05, "{learnt:?} {}", next.minutes(0.5));
    assert!((learnt.slow / next.minutes(0.9)).ln().abs() < 0.15, "{learnt:?} {}", next.minutes(0.9));
}

#[test]
fn many_evenings_bring_the_rehearsal_to_what_they_took() {
    let times = [LogNormal::of(8.0, 14.0), LogNormal::of(12.0, 22.0), LogNormal::of(5.0, 11.0)];
    let mut chain = stage_of(&times, true, 2);
    let before = rehearse(&chain, 2000).unwrap();
    let took = before.end.median * 1.8;
    let mut last = before.end.median;
    for count in [1, 3, 12, 60] {
        chain.totals = vec![total(took, 3); count];
        let after = rehearse(&chain, 2000).unwrap().end.median;
        assert!(after > last && after < took * 1.06, "{count}: {after} of {took}");
        last = after;
    }
    assert!((last / took - 1.0).abs() < 0.08, "{last} of {took}");
    // An evening that took what was expected changes little.
    chain.totals = vec![total(before.end.median, 3)];
    let same = rehearse(&chain, 2000).unwrap();
    assert!((same.end.median / before.end.median).ln().abs() < 0.03);
    // The longer and less certain puzzle takes the larger part.
    chain.totals = vec![total(took, 3)];
    let of = |at: usize| {
        let learnt = rehearse(&chain, 2000).unwrap().puzzles[at].estimate.median;
        learnt / times[at].median()
    };
    assert!(of(1) > of(0) && of(1) > of(2), "{} {} {}", of(0), of(1), of(2));
    // A puzzle that was timed learns from its own minutes alone.
    chain.totals = vec![Total { known: vec![None, Some(12.0), None], ..total(took, 3) }];
    assert_eq!(rehearse(&chain, 400).unwrap().puzzles[1].estimate.source, Source::Author);
}

#[test]
fn whole_minutes_of_a_kit_correct_its_rehearsal() {
    let mut kit = sound_kit();
    let before = rehearse(&stage(&kit, Level::Standard), 600).unwrap();
    let play = |minutes: f64, level, finished| Play {
        day: None,
        guests: 4,
        ages: None,
        level,
        minutes,
        finished,
        puzzles: Default::default(),
        note: String::new(),
    };
    let long = before.end.median * 2.0;
    kit.plays = Plays { plays: vec![play(long, Level::Standard, true); 3], ..Plays::default() };
    let after = rehearse(&stage(&kit, Level::Standard), 600).unwrap();
    // Much of so small a kit is looking for things, which no puzzle can be blamed for.
    assert!(after.end.median > before.end.median * 1.1 && after.end.median < long, "{} {long}", after.end.median);
    assert!(
        after.puzzles.iter().any(|puzzle| puzzle.estimate.source.words().ends_with("the whole minutes of 3 plays"))
    );
    // Neither plays that were broken off nor those of another level tell anything here.
    kit.plays =
        Plays { plays: vec![play(long, Level::Standard, false), play(long, Level::Stiff, true)], ..Plays::default() };
    assert_eq!(rehearse(&stage(&kit, Level::Standard), 600).unwrap().end, before.end);
    // Nor does the whole of an evening whose puzzles were all timed.
    let all = kit.puzzles.iter().map(|puzzle| (puzzle.id.clone(), PuzzlePlay { minutes: 6.0, hints: 0 }));
    kit.plays =
        Plays { plays: vec![Play { puzzles: all.collect(), ..play(long, Level::Standard, true) }], ..Plays::default() };
    assert!(stage(&kit, Level::Standard).totals.is_empty());
}
