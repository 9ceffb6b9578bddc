//! What the minutes of a whole evening teach of puzzles whose own minutes nobody wrote down.
//!
//! The logarithm of an evening's minutes is taken as linear around what is expected: it moves by a puzzle's *share* (the
//! part of the evening for which the end waits for it) times what the logarithm of the puzzle's minutes is off by. What a
//! real evening is off by is then split over its puzzles by their shares and variances, as joint normal quantities are
//! conditioned on their sum; the skill of the group is common to all of them, and what is left over belongs to looking for
//! things and to wrong tries. Evenings are taken in one after another, the oldest first.

use super::belief::Belief;
use super::chance::Z90;
use super::estimate::{Estimate, Source};
use super::gather::Rehearsal;
use super::stage::{Stage, Total};

/// The stage with its estimates corrected by the totals of real evenings; `expected` are simulated evenings of the stage
/// as it is.
pub(super) fn corrected(stage: &Stage, expected: &Rehearsal) -> Stage {
    let mut fresh = stage.clone();
    let mut parts: Vec<Part> = stage
        .puzzles
        .iter()
        .zip(&expected.puzzles)
        .map(|(task, of)| Part {
            share: if expected.mean > 0.0 { of.holds / expected.mean } else { 0.0 },
            base: task.belief.m,
            belief: task.belief,
        })
        .collect();
    // What the evenings vary by beyond their puzzles.
    let spread = (expected.end.slow / expected.end.quick).ln() / (2.0 * Z90);
    let tasks = stage.puzzles.iter().zip(&parts);
    let (own, skill) = tasks.fold((0.0, 0.0), |(own, skill), (task, part)| {
        let common = stage.habits.skill.min(task.time.sigma);
        let alone = (task.time.sigma * task.time.sigma - common * common).max(0.0);
        (own + part.share * part.share * alone, skill + part.share * common)
    });
    let rest = if spread.is_finite() { (spread * spread - own - skill * skill).max(0.0) } else { 0.0 };
    for total in &stage.totals {
        let nearest = expected.sizes.iter().min_by_key(|size| size.guests.abs_diff(total.guests));
        let median = nearest.map_or(expected.end.median, |size| size.median);
        let off = (total.minutes / median).ln();
        if off.is_finite() {
            learn(&mut parts, total, off, rest, stage.habits.skill);
        }
    }
    for (task, part) in fresh.puzzles.iter_mut().zip(&parts) {
        if part.belief == task.belief {
            continue;
        }
        let next = part.belief.predictive();
        let plays = match task.estimate.source {
            Source::Plays(count) => count,
            _ => 0,
        };
        let totals = stage.totals.len();
        task.belief = part.belief;
        task.estimate =
            Estimate { median: next.minutes(0.5), slow: next.minutes(0.9), source: Source::Totals(plays, totals) };
        task.time = task.estimate.time().longer(stage.habits.slower(stage.level));
    }
    fresh.totals.clear();
    fresh
}

/// A puzzle's part of the evening.
struct Part {
    /// By how much of what it is off by the evening is off.
    share: f64,
    /// The mean with which the evenings were simulated.
    base: f64,
    belief: Belief,
}

impl Part {
    /// The deviation of the next play's logarithm that it has in common with all puzzles of the evening, and the variance
    /// of what is its own.
    fn parted(&self, skill: f64) -> (f64, f64) {
        let all = self.belief.predictive().scale.powi(2);
        let common = skill.min(all.sqrt());
        (common, (all - common * common).max(0.0))
    }
}

/// Takes one evening in, which was off by `off` in logarithms; `rest` is the variance that is no puzzle's, and `skill` the
/// deviation that the puzzles have in common.
fn learn(parts: &mut [Part], total: &Total, off: f64, rest: f64, skill: f64) {
    let known = |at: usize| total.known.get(at).copied().flatten().filter(|minutes| *minutes > 0.0).map(f64::ln);
    let (mut off, mut own, mut common) = (off, 0.0, 0.0);
    // What the puzzles that were timed tell of the group's skill: its mean, and its variance where 1 is that of all groups.
    let (mut told, mut sure) = (0.0, 1.0);
    for (at, part) in parts.iter().enumerate() {
        let (with_all, alone) = part.parted(skill);
        match known(at) {
            Some(minutes) => {
                off -= part.share * (minutes - part.base);
                if alone > 0.0 {
                    told += with_all * (minutes - part.belief.m) / alone;
                    sure += with_all * with_all / alone;
                }
            }
            None => {
                off -= part.share * (part.belief.m - part.base);
                own += part.share * part.share * alone;
                common += part.share * with_all;
            }
        }
    }
    off -= common * told / sure;
    let variance = rest + own + common * common / sure;
    if !(off.is_finite() && variance.is_finite() && variance > 0.0) {
        return;
    }
    for (_, part) in parts.iter_mut().enumerate().filter(|(at, _)| known(*at).is_none()) {
        let (with_all, alone) = part.parted(skill);
        let shared = part.share * alone + with_all * common / sure;
        part.belief = part.belief.after_sum(shared, off, variance);
    }
}
