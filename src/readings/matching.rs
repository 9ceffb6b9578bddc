//! Logic grids: several kinds of things, one of each kind belonging together, and clues that say how.

mod board;
mod steps;

pub use steps::Steps;

use board::Board;

use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// A thing: its kind, and its place in the kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Item {
    /// Which kind.
    pub kind: usize,
    /// Which thing of the kind.
    pub at: usize,
}

/// What a clue says. `by` names the kind whose things are numbered by their place in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Clue {
    /// The two belong together.
    Same(Item, Item),
    /// They do not.
    NotSame(Item, Item),
    /// The first has the smaller number.
    Before(Item, Item, usize),
    /// Their numbers differ by one.
    NextTo(Item, Item, usize),
    /// The second's number is larger by so much.
    Offset(Item, Item, usize, i64),
    /// The first belongs with the second or with the third.
    Either(Item, Item, Item),
}

/// How many kinds there are, and how many things each has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Matching {
    /// Kinds.
    pub kinds: usize,
    /// Things of each kind.
    pub items: usize,
}

impl Matching {
    /// Calls `found` with every matching that the clues allow; it says whether to go on. A matching gives, for
    /// each kind and thing, its row; things in one row belong together. Clues about things that there are not
    /// allow nothing.
    ///
    /// # Errors
    /// When the budget was spent first, or each kind has more than 64 things.
    pub fn each(
        self,
        clues: &[Clue],
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<usize>]) -> bool,
    ) -> Result<(), Spent> {
        if self.kinds == 0 || self.items == 0 || !clues.iter().all(|clue| self.knows(clue)) {
            return Ok(());
        }
        if self.items > board::MOST {
            return Err(Spent);
        }
        Board::new(self, clues).walk(budget, found).map(|_| ())
    }

    /// How many matchings the clues allow, counted up to `most`.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn count(self, clues: &[Clue], most: usize, budget: &mut Budget) -> Result<usize, Spent> {
        let mut count = 0;
        self.each(clues, budget, &mut |_| {
            count += 1;
            count < most
        })?;
        Ok(count)
    }

    fn knows(self, clue: &Clue) -> bool {
        let item = |item: &Item| item.kind < self.kinds && item.at < self.items;
        match clue {
            Clue::Same(a, b) | Clue::NotSame(a, b) => item(a) && item(b),
            Clue::Before(a, b, by) | Clue::NextTo(a, b, by) | Clue::Offset(a, b, by, _) => {
                item(a) && item(b) && *by < self.kinds
            }
            Clue::Either(a, b, c) => item(a) && item(b) && item(c),
        }
    }
}
