use rayon::prelude::*;
use serde::Serialize;

use super::estimate::Estimate;
use super::evening::{Evening, evening};
use super::stage::Stage;
use crate::diag::{Hinted, Trouble};
use crate::flow::Links;
use crate::ids::{BoxId, LockId, PuzzleId};
use crate::limits;

/// How long something takes over many evenings, in minutes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Spread {
    /// One of ten is quicker.
    pub quick: f64,
    /// Half are.
    pub median: f64,
    /// Nine of ten are.
    pub slow: f64,
}

/// What came of many simulated evenings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rehearsal {
    /// How many evenings were simulated.
    pub runs: usize,
    /// Minutes that the kit states.
    pub stated: f64,
    /// Share of the evenings that end within them.
    pub chance: f64,
    /// Standard error of that share: √(p(1 − p) / n).
    pub error: f64,
    /// Minutes to the end.
    pub end: Spread,
    /// The same on the average.
    pub mean: f64,
    /// The evenings by their minutes, in bars of equal width.
    pub bars: Vec<Bar>,
    /// The same by the number of guests.
    pub sizes: Vec<OfSize>,
    /// The puzzles, in the kit's order.
    pub puzzles: Vec<OfPuzzle>,
    /// Minutes that the end waits while guests read, look for things and walk about, on the average.
    pub search: f64,
    /// How many guests have nothing to do at a time, on the average.
    pub idle: f64,
    /// The share of all guests' time that this is.
    pub idle_share: f64,
    /// What is open when, the earliest first; what the end does not need is left out where most evenings end before it.
    pub past: Vec<Past>,
}

/// Evenings that take between these minutes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Bar {
    /// From so many minutes.
    pub from: f64,
    /// To so many; the last bar holds all that take longer as well.
    pub to: f64,
    /// How many evenings.
    pub evenings: usize,
}

/// The evenings with so many guests.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OfSize {
    /// How many guests.
    pub guests: u8,
    /// Share of their evenings that end in time.
    pub chance: f64,
    /// Minutes that half of them need.
    pub median: f64,
}

/// What a puzzle does to the evenings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OfPuzzle {
    /// Which one.
    pub puzzle: PuzzleId,
    /// What it was rehearsed with.
    pub estimate: Estimate,
    /// Minutes from its beginning to its open lock, tokens and wrong tries and all.
    pub minutes: Spread,
    /// Share of the evenings whose end waits for it.
    pub critical: f64,
    /// Minutes that the end waits for it, on the average over all evenings.
    pub holds: f64,
    /// Minutes of idle guests while it is worked on, all guests together, on the average.
    pub idle: f64,
    /// Tokens taken in an evening, on the average: nudge, method, giveaway, and last how often the host sits down to it.
    pub tokens: [f64; 4],
}

/// A lock or a box, and when it is open.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Past {
    /// What opens.
    pub opens: Opens,
    /// Half of the groups have it open by this minute.
    pub half: f64,
    /// Nine groups of ten by this one; none where not so many open it before the end.
    pub slow: Option<f64>,
}

/// Something that opens.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Opens {
    /// A lock.
    Lock(LockId),
    /// A box.
    Box(BoxId),
}

/// Simulated evenings of a stage as it is, gathered.
///
/// # Errors
/// When the end was not reached in one.
pub(super) fn evenings(stage: &Stage, runs: usize) -> Hinted<Rehearsal> {
    let links = Links::new(&stage.net);
    let evenings: Option<Vec<Evening>> = (0..runs).into_par_iter().map(|at| evening(stage, &links, at)).collect();
    let evenings = evenings.ok_or_else(|| Trouble::new("the end was not reached in a simulated evening"))?;
    Ok(gathered(stage, &evenings))
}

fn gathered(stage: &Stage, evenings: &[Evening]) -> Rehearsal {
    let runs = evenings.len() as f64;
    let mean = |of: &dyn Fn(&Evening) -> f64| evenings.iter().map(of).sum::<f64>() / runs;
    let in_time = |evening: &Evening| evening.end <= stage.minutes;
    let chance = mean(&|evening| f64::from(u8::from(in_time(evening))));
    let ends: Vec<f64> = evenings.iter().map(|evening| evening.end).collect();
    let (mut critical, mut holds) = (vec![0_usize; stage.puzzles.len()], vec![0.0; stage.puzzles.len()]);
    for (puzzle, minutes) in evenings.iter().flat_map(|evening| &evening.chain) {
        critical[*puzzle] += 1;
        holds[*puzzle] += minutes;
    }
    let waited: f64 = holds.iter().sum::<f64>() / runs;
    let puzzles = stage.puzzles.iter().enumerate().map(|(at, task)| {
        let spent = evenings.iter().filter_map(|evening| evening.puzzles.get(at));
        let minutes = spent.clone().filter_map(|spent| Some(spent.solved? - spent.began?));
        OfPuzzle {
            puzzle: task.id.clone(),
            estimate: task.estimate,
            minutes: Spread::of(minutes.collect()),
            critical: critical[at] as f64 / runs,
            holds: holds[at] / runs,
            idle: spent.clone().map(|spent| spent.idle).sum::<f64>() / runs,
            tokens: [0, 1, 2, 3].map(|step: usize| {
                let taken = spent.clone().map(|spent| f64::from(spent.tokens.get(step).copied().unwrap_or_default()));
                taken.sum::<f64>() / runs
            }),
        }
    });
    let idle: f64 = evenings.iter().map(|evening| evening.idle).sum();
    let time: f64 = ends.iter().sum();
    let there: f64 = evenings.iter().map(|evening| evening.end * f64::from(evening.guests)).sum();
    Rehearsal {
        runs: evenings.len(),
        stated: stage.minutes,
        chance,
        mean: time / runs,
        error: (chance * (1.0 - chance) / runs).sqrt(),
        bars: bars(&ends),
        sizes: sizes(stage, evenings),
        puzzles: puzzles.collect(),
        search: (time / runs - waited).max(0.0),
        idle: if time > 0.0 { idle / time } else { 0.0 },
        idle_share: if there > 0.0 { idle / there } else { 0.0 },
        past: past(stage, evenings),
        end: Spread::of(ends),
    }
}

impl Spread {
    /// Of a list of minutes; zeros when it is empty.
    fn of(mut minutes: Vec<f64>) -> Self {
        minutes.sort_by(f64::total_cmp);
        Self { quick: quantile(&minutes, 0.1), median: quantile(&minutes, 0.5), slow: quantile(&minutes, 0.9) }
    }
}

/// The quantile of a sorted list, between neighbours by proportion (Hyndman and Fan 1996, type 7).
fn quantile(sorted: &[f64], p: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    let place = p * last as f64;
    let below = whole(place).min(last);
    let (low, high) = (sorted[below], sorted[(below + 1).min(last)]);
    low + (high - low) * (place - below as f64)
}

/// A number that is not negative, without its fraction.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "it is not negative, and its uses bound it"
)]
fn whole(number: f64) -> usize {
    number.max(0.0) as usize
}

/// Bars of one of the widths that a scale has, so that all but the slowest hundredth have bars of their own.
fn bars(ends: &[f64]) -> Vec<Bar> {
    let mut sorted = ends.to_vec();
    sorted.sort_by(f64::total_cmp);
    let (first, last) = (quantile(&sorted, 0.0), quantile(&sorted, 0.99));
    let most = limits::REHEARSED_BARS as f64;
    let fits = |width: &f64| (last / width).ceil() - (first / width).floor() <= most;
    // 1, 2, 5, 10, … minutes.
    let scale = (0..12).flat_map(|power| [1.0, 2.0, 5.0].map(|step| step * 10.0_f64.powi(power)));
    let width = scale.clone().find(fits).unwrap_or(last.max(1.0));
    let from = (first / width).floor();
    let count = whole((last / width).ceil() - from).clamp(1, limits::REHEARSED_BARS);
    let mut bars: Vec<Bar> = (0..count)
        .map(|at| Bar { from: (from + at as f64) * width, to: (from + at as f64 + 1.0) * width, evenings: 0 })
        .collect();
    for end in ends {
        let at = whole(end / width - from).min(count - 1);
        bars[at].evenings += 1;
    }
    bars
}

fn sizes(stage: &Stage, evenings: &[Evening]) -> Vec<OfSize> {
    let of = |guests: u8| {
        let mut ends: Vec<f64> =
            evenings.iter().filter(|evening| evening.guests == guests).map(|evening| evening.end).collect();
        if ends.is_empty() {
            return None;
        }
        ends.sort_by(f64::total_cmp);
        let in_time = ends.iter().filter(|end| **end <= stage.minutes).count();
        Some(OfSize { guests, chance: in_time as f64 / ends.len() as f64, median: quantile(&ends, 0.5) })
    };
    (stage.guests.0..=stage.guests.1).filter_map(of).collect()
}

/// When locks and boxes are open. A lock or box that one evening did not open before its end counts as opened late.
fn past(stage: &Stage, evenings: &[Evening]) -> Vec<Past> {
    let when = |opens: Opens, of: &dyn Fn(&Evening) -> Option<f64>| {
        let mut times: Vec<f64> = evenings.iter().map(|evening| of(evening).unwrap_or(f64::INFINITY)).collect();
        times.sort_by(f64::total_cmp);
        // Between a time and none there is nothing in proportion: the later of the two counts.
        let at = |p: f64| times.get(whole((p * (times.len() as f64 - 1.0)).ceil())).copied().filter(|t| t.is_finite());
        let half = at(0.5)?;
        Some(Past { opens, half, slow: at(0.9) })
    };
    let locks = stage
        .locks
        .iter()
        .enumerate()
        .filter_map(|(at, id)| when(Opens::Lock(id.clone()), &|evening| evening.locks.get(at).copied().flatten()));
    // A box without locks is as open as what it stands in.
    let shut = |at: usize| stage.net.boxes.get(at).is_some_and(|item| !item.locks.is_empty());
    let boxes = stage
        .boxes
        .iter()
        .enumerate()
        .filter(|(at, _)| shut(*at))
        .filter_map(|(at, id)| when(Opens::Box(id.clone()), &|evening| evening.boxes.get(at).copied().flatten()));
    let mut all: Vec<Past> = locks.chain(boxes).collect();
    // The locks of a box stand before it.
    all.sort_by(|a, b| a.half.total_cmp(&b.half));
    all
}
