use serde::Serialize;

use super::belief::Belief;
use super::chance::LogNormal;
use super::habits::Habits;
use crate::diag::Level;
use crate::flow::USUAL_MINUTES;
use crate::kit::{Kit, Puzzle};
use crate::limits;
use crate::mechanics;

/// Where the minutes of a puzzle come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// The author's estimate.
    Author,
    /// What the mechanic takes as a rule; an estimate too.
    Mechanic,
    /// An estimate, corrected by so many plays.
    Plays(usize),
    /// An estimate, corrected by so many plays in which it was timed, and by the whole minutes of so many evenings.
    Totals(usize, usize),
}

impl Source {
    /// In words, for a table.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::Author => "the author's estimate".into(),
            Self::Mechanic => "the mechanic's usual minutes, an estimate".into(),
            Self::Plays(1) => "an estimate, corrected by 1 play".into(),
            Self::Plays(count) => format!("an estimate, corrected by {count} plays"),
            Self::Totals(0, 1) => "an estimate, corrected by the whole minutes of 1 play".into(),
            Self::Totals(0, totals) => format!("an estimate, corrected by the whole minutes of {totals} plays"),
            Self::Totals(plays, totals) => {
                format!("{}, and by the whole minutes of {totals}", Self::Plays(plays).words())
            }
        }
    }
}

/// The minutes that a puzzle takes two guests who are not new to such evenings, with no hint.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Estimate {
    /// Half of the groups need no more.
    pub median: f64,
    /// Nine groups of ten need no more.
    pub slow: f64,
    /// Where that comes from.
    pub source: Source,
}

/// How much longer the slow tenth takes than half of the groups, where no mechanic says.
const USUAL_SPREAD: f64 = 1.8;

impl Estimate {
    /// What is known of a puzzle at a level: the author's minutes, else the mechanic's; corrected by the plays of the
    /// kit in which it had the same setup.
    #[must_use]
    pub fn of(kit: &Kit, puzzle: &Puzzle, level: Level) -> Self {
        Self::believed(kit, puzzle, level).0
    }

    /// The same, with what it rests on.
    pub(super) fn believed(kit: &Kit, puzzle: &Puzzle, level: Level) -> (Self, Belief) {
        let guess = Self::guessed(puzzle, level);
        let played = played(kit, puzzle, level);
        let belief = Belief::of(guess.median, guess.slow).after(&played);
        if played.is_empty() {
            return (guess, belief);
        }
        let next = belief.predictive();
        let source = Source::Plays(played.len());
        (Self { median: next.minutes(0.5), slow: next.minutes(0.9), source }, belief)
    }

    /// The same before any play.
    #[must_use]
    pub fn guessed(puzzle: &Puzzle, level: Level) -> Self {
        let usual = mechanics::find(&puzzle.mechanic).ok().map(|found| {
            let (least, most) = found.meta().minutes;
            (f64::from(least.max(1)), f64::from(most.max(1)))
        });
        // The mechanic's least and most are taken as the points that one group of ten stays below and above.
        let (middle, spread) = match usual {
            Some((least, most)) if most > least => ((least * most).sqrt(), (most / least).sqrt()),
            Some((least, _)) => (least, USUAL_SPREAD),
            None => (USUAL_MINUTES, USUAL_SPREAD),
        };
        let own = time(puzzle.minutes);
        let Some(median) = time(puzzle.change(level).and_then(|change| change.minutes)).or(own) else {
            let slow = time(puzzle.slow_minutes).filter(|slow| *slow > middle).unwrap_or(middle * spread);
            return Self { median: middle, slow, source: Source::Mechanic };
        };
        // Where a level has other minutes, the slow tenth has as many times more.
        let stated = time(puzzle.slow_minutes).zip(own).filter(|(slow, own)| slow > own).map(|(slow, own)| slow / own);
        Self { median, slow: median * stated.unwrap_or(spread), source: Source::Author }
    }

    /// The times of all groups.
    #[must_use]
    pub fn time(self) -> LogNormal {
        LogNormal::of(self.median, self.slow)
    }
}

/// Minutes that can be some.
fn time(minutes: Option<f64>) -> Option<f64> {
    minutes.filter(|minutes| minutes.is_finite() && *minutes > 0.0 && *minutes <= limits::PLAY_MINUTES)
}

/// The minutes of a puzzle in the plays of a kit, each as it would have been without hints; plays at levels with another
/// setup are passed over.
fn played(kit: &Kit, puzzle: &Puzzle, level: Level) -> Vec<f64> {
    let habits = Habits::default();
    let same = |other: Level| other == level || puzzle.setup_at(other) == puzzle.setup_at(level);
    let plays = kit.plays.plays.iter().filter(|play| same(play.level));
    plays
        .filter_map(|play| {
            let known = play.puzzles.get(&puzzle.id)?;
            let open = kit.levels.of(play.level).open_steps;
            Some(habits.without_hints(known.minutes, open, known.hints) / habits.slower(play.level))
        })
        .collect()
}
