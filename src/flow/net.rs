//! The bare question "what opens when", over numbers instead of names.
//!
//! A box opens when what it stands in is open and all its locks are open; a lock opens when one of its openers
//! is to hand; a puzzle is solved when all that it needs is to hand. Nothing is ever used up, so the least
//! fix-point is the whole truth and the order in which things are tried cannot matter.

use super::earliest::{ROUNDS, Times, earliest};

/// Where a thing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// In the open.
    Open,
    /// Listed, but laid nowhere.
    Nowhere,
    /// In this box.
    Box(usize),
}

/// What opens a lock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opener {
    /// This puzzle, solved.
    Puzzle(usize),
    /// This thing, to hand: a key.
    Item(usize),
}

/// A box of a [`Net`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NetBox {
    /// Where it stands.
    pub stands: Where,
    /// The locks that shut it; a number that is no lock never opens.
    pub locks: Vec<usize>,
}

/// Boxes, locks, puzzles and things by number.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Net {
    /// The boxes.
    pub boxes: Vec<NetBox>,
    /// For each lock what opens it; one is enough, and none means that nothing does.
    pub locks: Vec<Vec<Opener>>,
    /// For each puzzle the things that it needs, all of them; a number that is no thing is never to hand.
    pub puzzles: Vec<Vec<usize>>,
    /// For each thing where it is.
    pub items: Vec<Where>,
}

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

    /// The boxes around a place, innermost first; boxes that stand in one another end the walk.
    #[must_use]
    pub fn around(&self, place: Where) -> Vec<usize> {
        let mut found = Vec::new();
        let mut at = place;
        while let Where::Box(index) = at {
            if found.contains(&index) {
                break;
            }
            let Some(item) = self.boxes.get(index) else { break };
            found.push(index);
            at = item.stands;
        }
        found
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
