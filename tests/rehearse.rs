//! Tests of `rehearse`: distributions against references, simulated evenings against closed forms.

#[path = "rehearse/evenings.rs"]
mod evenings;
#[path = "rehearse/plays.rs"]
mod plays;
#[path = "rehearse/totals.rs"]
mod totals;

use inklatch::diag::Level;
use inklatch::flow::net::{Net, NetBox, Opener, Where};
use inklatch::ids::{BoxId, LockId, PuzzleId};
use inklatch::kit::Kit;
use inklatch::rehearse::{Belief, Estimate, Habits, LogNormal, Source, Stage, Task, t_quantile};
use serde_json::Value as Json;

use crate::common::plain_theme;

fn cases(text: &str, list: &str) -> Vec<Json> {
    serde_json::from_str::<Json>(text).unwrap()[list].as_array().unwrap().clone()
}

fn close(found: f64, wanted: &Json, tolerance: f64, what: &Json) {
    let wanted = wanted.as_f64().unwrap();
    assert!((found - wanted).abs() <= tolerance * wanted.abs().max(1e-9), "{what}: {found}, not {wanted}");
}

fn quantiles(of: &Json) -> Vec<(f64, Json)> {
    of.as_object().unwrap().iter().map(|(p, value)| (p.parse().unwrap(), value.clone())).collect()
}

/// Source: tests/refs/07_lognormal.json (scipy 1.17.1, equal to the closed forms); to 1e-6 relative.
#[test]
fn log_normal_times_agree_with_the_reference() {
    let found = cases(include_str!("refs/07_lognormal.json"), "cases");
    assert_eq!(found.len(), 10);
    for case in found {
        let expected = &case["expected"];
        let time = if case["kind"] == "from_mu_sigma" {
            LogNormal { mu: case["mu"].as_f64().unwrap(), sigma: case["sigma"].as_f64().unwrap() }
        } else {
            let time = LogNormal::of(case["median"].as_f64().unwrap(), case["p90"].as_f64().unwrap());
            close(time.mu, &expected["mu"], 1e-6, &case["id"]);
            close(time.sigma, &expected["sigma"], 1e-6, &case["id"]);
            time
        };
        close(time.mean(), &expected["mean"], 1e-6, &case["id"]);
        close(time.sd(), &expected["sd"], 1e-6, &case["id"]);
        if !expected["mode"].is_null() {
            close(time.mode(), &expected["mode"], 1e-6, &case["id"]);
        }
        for (p, value) in quantiles(&expected["quantiles"]) {
            close(time.quantile(p), &value, 1e-6, &case["id"]);
        }
    }
}

/// Source: tests/refs/07_nig_predictive.json (scipy 1.17.1, confirmed by integration); posterior to 1e-8, quantiles to
/// 1e-6 relative.
#[test]
fn what_plays_teach_agrees_with_the_reference() {
    let found = cases(include_str!("refs/07_nig_predictive.json"), "cases");
    assert_eq!(found.len(), 5);
    for case in found {
        let number = |name: &str| case["prior"][name].as_f64().unwrap();
        let prior = Belief { m: number("m0"), k: number("k0"), a: number("a0"), b: number("b0") };
        let minutes: Vec<f64> = case["data_minutes"].as_array().unwrap().iter().map(|m| m.as_f64().unwrap()).collect();
        let (expected, id) = (&case["expected"], &case["id"]);
        let after = prior.after(&minutes);
        for (found, name) in [(after.m, "m"), (after.k, "k"), (after.a, "a"), (after.b, "b")] {
            close(found, &expected["posterior"][name], 1e-8, id);
        }
        // One at a time is the same as all at once.
        let one_by_one = minutes.iter().fold(prior, |belief, minutes| belief.after(&[*minutes]));
        assert!((one_by_one.b - after.b).abs() < 1e-12 && (one_by_one.m - after.m).abs() < 1e-12, "{id}");
        let next = after.predictive();
        for (found, name) in [(next.df, "df"), (next.loc, "loc"), (next.scale, "scale")] {
            close(found, &expected["predictive_log"][name], 1e-8, id);
        }
        for (p, value) in quantiles(&expected["log_quantiles"]) {
            close(next.loc + next.scale * t_quantile(p, next.df), &value, 1e-6, id);
        }
        for (p, value) in quantiles(&expected["minute_quantiles"]) {
            close(next.minutes(p), &value, 1e-6, id);
        }
    }
}

/// Puzzles that need nothing but time, on locks of one box: all at once, or each in a box that the one before opens.
fn stage_of(times: &[LogNormal], chained: bool, guests: u8) -> Stage {
    let count = times.len();
    let name = |at: usize| format!("n{at}");
    let net = if chained {
        Net {
            boxes: (0..count)
                .map(|at| NetBox { stands: if at == 0 { Where::Open } else { Where::Box(at - 1) }, locks: vec![at] })
                .collect(),
            locks: (0..count).map(|at| vec![Opener::Puzzle(at)]).collect(),
            puzzles: (0..count).map(|at| vec![at]).collect(),
            items: (0..count).map(|at| if at == 0 { Where::Open } else { Where::Box(at - 1) }).collect(),
        }
    } else {
        Net {
            boxes: vec![NetBox { stands: Where::Open, locks: (0..count).collect() }],
            locks: (0..count).map(|at| vec![Opener::Puzzle(at)]).collect(),
            puzzles: vec![Vec::new(); count],
            items: Vec::new(),
        }
    };
    let last = net.boxes.len() - 1;
    Stage {
        finish: vec![Where::Box(last)],
        puzzles: times
            .iter()
            .enumerate()
            .map(|(at, time)| Task {
                id: PuzzleId::new(&name(at)).unwrap(),
                estimate: Estimate { median: time.median(), slow: time.quantile(0.9), source: Source::Author },
                belief: Belief::of(time.median(), time.quantile(0.9)),
                time: *time,
                steps: [true; 3],
                open: 0,
                locks: 1.0,
            })
            .collect(),
        sought: vec![true; net.items.len()],
        guests: (guests, guests),
        minutes: 60.0,
        quiet: f64::INFINITY,
        letter: 0.0,
        habits: Habits::bare(),
        level: Level::Standard,
        totals: Vec::new(),
        boxes: (0..=last).map(|at| BoxId::new(&name(at)).unwrap()).collect(),
        locks: (0..count).map(|at| LockId::new(&name(at)).unwrap()).collect(),
        seed: 11,
        net,
    }
}

/// The stage of a kit as it is laid out at a level.
fn stage(kit: &Kit, level: Level) -> Stage {
    let party = inklatch::party::Party::new(kit, &plain_theme(), level).unwrap();
    Stage::new(kit, &party.parts(kit), level).unwrap()
}
