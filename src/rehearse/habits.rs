use serde::Serialize;

use super::chance::LogNormal;
use crate::diag::Level;

/// How groups go about an evening. Every number is an estimate; where no source is named, it is common practice.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Habits {
    /// Spread of the groups' skill: the standard deviation of a factor's logarithm that all puzzles of one evening
    /// share. Five play-throughs of one paper prototype took from 29:22 to 55:28 minutes (a pair and four soloists; a
    /// student thesis in the 1library collection); the range of five draws is 2.326 standard deviations on the average, so 0.27.
    pub skill: f64,
    /// How much longer guests need who play at the gentle level, being younger or new to it.
    pub gentle: f64,
    /// Minutes for one pair or single guest to find one thing that lies openly in the room.
    pub search: LogNormal,
    /// Minutes to carry an answer to its lock, set it and pull.
    pub trying: f64,
    /// The chance that an answer is wrong when it is first tried, and each time after.
    pub wrong: f64,
    /// The share of the puzzle's time that is spent on it again after a wrong try.
    pub again: f64,
    /// Wrong tries at one lock after which the host offers the next token; the host guide says three.
    pub wrong_tries: u8,
    /// What each step of a hint ladder leaves of the work still to be done: nudge, method, giveaway.
    pub hints: [f64; 3],
    /// Minutes that the last step takes when the host sits down with the guests.
    pub rescue: f64,
    /// How fast one, two and three guests work at one puzzle, two being the measure; more do not help.
    pub pace: [f64; 3],
}

impl Default for Habits {
    fn default() -> Self {
        Self {
            skill: 0.27,
            gentle: 1.5,
            search: LogNormal::of(1.0, 3.0),
            trying: 0.5,
            wrong: 0.25,
            again: 0.3,
            wrong_tries: 3,
            hints: [0.75, 0.5, 0.25],
            rescue: 1.0,
            pace: [0.7, 1.0, 1.2],
        }
    }
}

impl Habits {
    /// Habits with which nothing takes time but the puzzles, and all groups are alike.
    #[must_use]
    pub fn bare() -> Self {
        Self {
            skill: 0.0,
            gentle: 1.0,
            search: LogNormal { mu: f64::NEG_INFINITY, sigma: 0.0 },
            trying: 0.0,
            wrong: 0.0,
            ..Self::default()
        }
    }

    /// How much longer guests need at a level than the author's groups do.
    #[must_use]
    pub const fn slower(&self, level: Level) -> f64 {
        match level {
            Level::Gentle => self.gentle,
            Level::Standard | Level::Stiff => 1.0,
        }
    }

    /// How fast so many guests work at one puzzle.
    #[must_use]
    pub fn pace(&self, heads: usize) -> f64 {
        let at = heads.clamp(1, self.pace.len()) - 1;
        self.pace.get(at).copied().unwrap_or(1.0)
    }

    /// How many guests are of use at one puzzle.
    #[must_use]
    pub const fn useful(&self) -> usize {
        self.pace.len()
    }

    /// The minutes that a puzzle would have taken without its tokens, of the minutes that it took with the first
    /// `steps` of its ladder. When they were taken is not known, so they are thought of as spread evenly; `open` steps
    /// lay open from the start.
    #[must_use]
    pub fn without_hints(&self, minutes: f64, open: u8, steps: u8) -> f64 {
        let open = usize::from(open).min(self.hints.len());
        let taken = usize::from(steps).min(self.hints.len() - open);
        let part = minutes / (taken as f64 + 1.0);
        let mut left: f64 = self.hints.iter().take(open).product();
        let mut whole = part / left;
        for hint in self.hints.iter().skip(open).take(taken) {
            left *= hint;
            whole += part / left;
        }
        whole
    }
}
