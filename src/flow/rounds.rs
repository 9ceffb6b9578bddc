//! A net played in rounds, as fast as can be.

use super::earliest::{ROUNDS, Times, earliest};
use super::net::Net;

/// What opened in which round. Round 0 is what is to hand before anybody solves anything.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reached {
    /// For each box the round in which it opens; none when it never does.
    pub boxes: Vec<Option<usize>>,
    /// For each lock.
    pub locks: Vec<Option<usize>>,
    /// For each puzzle the round in which it is solved.
    pub puzzles: Vec<Option<usize>>,
    /// For each thing the round in which it comes to hand.
    pub items: Vec<Option<usize>>,
    /// How many rounds there are in which something is solved or opens.
    pub rounds: usize,
}

impl Net {
    /// Plays as fast as can be: in each round all is solved and opened that the end of the last round allows.
    #[must_use]
    pub fn play(&self) -> Reached {
        self.play_with(&[])
    }

    /// As [`Net::play`], with these boxes open from the start, wherever they stand.
    #[must_use]
    pub fn play_with(&self, given: &[usize]) -> Reached {
        let Times { items, puzzles, locks, boxes, .. } = earliest(self, ROUNDS, given);
        let rounds = |times: Vec<Option<f64>>| times.into_iter().map(|time| time.map(round)).collect::<Vec<_>>();
        let (puzzles, locks, boxes) = (rounds(puzzles), rounds(locks), rounds(boxes));
        let last = puzzles.iter().chain(&locks).chain(&boxes).flatten().max().copied().unwrap_or(0);
        Reached { items: rounds(items), puzzles, locks, boxes, rounds: last }
    }
}

/// Whether a numbered thing is to hand; a number that is none is not.
pub(super) fn had(list: &[Option<usize>], index: usize) -> bool {
    list.get(index).is_some_and(Option::is_some)
}

/// A time that is a count of rounds, as one.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "sums of ones, bounded by the puzzles")]
const fn round(time: f64) -> usize {
    time as usize
}
