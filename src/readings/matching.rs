//! Logic grids: several kinds of things, one of each kind belonging together, and clues that say how.

mod steps;

pub use steps::Steps;

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

/// A half-made matching: rows of things that belong together.
struct Board<'a> {
    size: Matching,
    clues: &'a [Clue],
    /// The kinds in the order in which they are placed.
    order: Vec<usize>,
    /// For each kind and thing, its row.
    row: Vec<Vec<Option<usize>>>,
    /// For each kind and row, the thing there.
    thing: Vec<Vec<Option<usize>>>,
}

impl Matching {
    /// Calls `found` with every matching that the clues allow; it says whether to go on. A matching gives, for
    /// each kind and thing, its row; things in one row belong together. Clues about things that there are not
    /// allow nothing.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn each(
        self,
        clues: &[Clue],
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<usize>]) -> bool,
    ) -> Result<(), Spent> {
        if self.kinds == 0 || self.items == 0 || !clues.iter().all(|clue| self.knows(clue)) {
            return Ok(());
        }
        // Numbered kinds first: a clue about numbers is then known as soon as both its things are placed.
        let by = |kind: &usize| {
            clues.iter().filter(|clue| matches!(clue, Clue::Before(_, _, by) | Clue::NextTo(_, _, by) | Clue::Offset(_, _, by, _) if by == kind)).count()
        };
        let mut order: Vec<usize> = (0..self.kinds).collect();
        order.sort_by_key(|kind| std::cmp::Reverse(by(kind)));
        let empty = vec![vec![None; self.items]; self.kinds];
        let mut board = Board { size: self, clues, order, row: empty.clone(), thing: empty };
        if let Some(first) = board.order.first().copied() {
            // Rows are told apart only by their things, so the first kind's are placed as they are listed.
            for at in 0..self.items {
                board.row[first][at] = Some(at);
                board.thing[first][at] = Some(at);
            }
        }
        if board.holds() {
            board.walk(1, 0, budget, found)?;
        }
        Ok(())
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

impl Board<'_> {
    fn walk(
        &mut self,
        depth: usize,
        at: usize,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<usize>]) -> bool,
    ) -> Result<bool, Spent> {
        let Some(kind) = self.order.get(depth).copied() else {
            let rows: Vec<Vec<usize>> =
                self.row.iter().map(|kind| kind.iter().map(|row| row.unwrap_or_default()).collect()).collect();
            return Ok(found(&rows));
        };
        if at == self.size.items {
            return self.walk(depth + 1, 0, budget, found);
        }
        for row in 0..self.size.items {
            if self.thing[kind][row].is_some() {
                continue;
            }
            if !budget.step() {
                return Err(Spent);
            }
            self.thing[kind][row] = Some(at);
            self.row[kind][at] = Some(row);
            let go_on = !self.holds() || self.walk(depth, at + 1, budget, found)?;
            self.thing[kind][row] = None;
            self.row[kind][at] = None;
            if !go_on {
                return Ok(false);
            }
        }
        Ok(true)
    }

    fn holds(&self) -> bool {
        self.clues.iter().all(|clue| self.says(clue) != Some(false))
    }

    /// Whether a clue is true, as far as it is known.
    fn says(&self, clue: &Clue) -> Option<bool> {
        let row = |item: Item| self.row[item.kind][item.at];
        // Two things belong together when they have one row; as soon as one is placed, a row held by another
        // thing of the second's kind tells that they do not.
        let same = |a: Item, b: Item| match (row(a), row(b)) {
            (Some(a), Some(b)) => Some(a == b),
            (Some(a), None) => self.thing[b.kind][a].map(|_| false),
            (None, Some(b)) => self.thing[a.kind][b].map(|_| false),
            (None, None) => None,
        };
        let number = |item: Item, by: usize| Some(i64::try_from(self.thing[by][row(item)?]?).unwrap_or(i64::MAX));
        match *clue {
            Clue::Same(a, b) => same(a, b),
            Clue::NotSame(a, b) => same(a, b).map(|same| !same),
            Clue::Before(a, b, by) => Some(number(a, by)? < number(b, by)?),
            Clue::NextTo(a, b, by) => Some(number(a, by)?.abs_diff(number(b, by)?) == 1),
            Clue::Offset(a, b, by, d) => Some(number(b, by)?.checked_sub(number(a, by)?) == Some(d)),
            Clue::Either(a, b, c) => match (same(a, b), same(a, c)) {
                (Some(true), _) | (_, Some(true)) => Some(true),
                (Some(false), Some(false)) => Some(false),
                _ => None,
            },
        }
    }
}
