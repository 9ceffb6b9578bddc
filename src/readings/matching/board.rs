//! The search for matchings: for each thing the rows in which it may still stand, narrowed by every clue before any row
//! is tried.

use super::{Clue, Item, Matching};
use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// Rows as bits.
type Rows = u64;

/// The most things of a kind: a bit for each row.
pub(super) const MOST: usize = 64;

/// A half-made matching.
#[derive(Clone)]
pub(super) struct Board<'a> {
    size: Matching,
    clues: &'a [Clue],
    /// For each kind and thing, the rows in which it may stand.
    may: Vec<Vec<Rows>>,
}

impl<'a> Board<'a> {
    /// Nothing is known but the clues. Rows are told apart only by their things, so one kind's are placed as they are
    /// listed: that by whose numbers most clues go.
    pub(super) fn new(size: Matching, clues: &'a [Clue]) -> Self {
        let by = |kind: &usize| {
            let named = |clue: &&Clue| match clue {
                Clue::Before(_, _, by) | Clue::NextTo(_, _, by) | Clue::Offset(_, _, by, _) => by == kind,
                Clue::Same(..) | Clue::NotSame(..) | Clue::Either(..) => false,
            };
            clues.iter().filter(named).count()
        };
        let any = if size.items < MOST { (1 << size.items) - 1 } else { Rows::MAX };
        let mut may = vec![vec![any; size.items]; size.kinds];
        let first = (0..size.kinds).rev().max_by_key(by).and_then(|kind| may.get_mut(kind));
        for (at, rows) in first.into_iter().flatten().enumerate() {
            *rows = 1 << (at % MOST);
        }
        Self { size, clues, may }
    }

    /// Calls `found` with every matching; whether to go on.
    pub(super) fn walk(
        mut self,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<usize>]) -> bool,
    ) -> Result<bool, Spent> {
        if !budget.step() {
            return Err(Spent);
        }
        if !self.settle() {
            return Ok(true);
        }
        let things = (0..self.size.kinds).flat_map(|kind| (0..self.size.items).map(move |at| Item { kind, at }));
        let open = things.filter(|item| self.rows(*item).count_ones() > 1);
        let Some(item) = open.min_by_key(|item| self.rows(*item).count_ones()) else {
            let row = |rows: &Rows| rows.trailing_zeros() as usize;
            let whole: Vec<Vec<usize>> = self.may.iter().map(|kind| kind.iter().map(row).collect()).collect();
            return Ok(found(&whole));
        };
        let mut left = self.rows(item);
        while left != 0 {
            let row = left & left.wrapping_neg();
            left &= !row;
            let mut next = self.clone();
            next.may[item.kind][item.at] = row;
            if !next.walk(budget, found)? {
                return Ok(false);
            }
        }
        Ok(true)
    }

    fn rows(&self, item: Item) -> Rows {
        self.may[item.kind][item.at]
    }

    /// Leaves a thing only these rows; whether that changed anything.
    fn keep(&mut self, item: Item, rows: Rows) -> bool {
        let may = &mut self.may[item.kind][item.at];
        let before = *may;
        *may &= rows;
        *may != before
    }

    /// Narrows until nothing changes; false when a thing has no row left.
    fn settle(&mut self) -> bool {
        loop {
            let mut changed = false;
            for kind in 0..self.size.kinds {
                changed |= self.one_each(kind);
            }
            for clue in self.clues {
                changed |= self.narrow(clue);
            }
            if self.may.iter().flatten().any(|rows| *rows == 0) {
                return false;
            }
            if !changed {
                return true;
            }
        }
    }

    /// Each row holds one thing of a kind: a row that is taken is no other's, and a row with one candidate is taken.
    fn one_each(&mut self, kind: usize) -> bool {
        let mut changed = false;
        let (mut once, mut twice, mut taken) = (0, 0, 0);
        for rows in &self.may[kind] {
            twice |= once & rows;
            once |= rows;
            if rows.count_ones() == 1 {
                // Two things in one row leave neither any.
                taken |= rows;
            }
        }
        let only = once & !twice;
        for at in 0..self.size.items {
            let item = Item { kind, at };
            let rows = self.rows(item);
            let mine = rows & only;
            let keep = match (rows.count_ones(), mine) {
                (1, _) => {
                    let shared =
                        self.may[kind].iter().enumerate().any(|(other, rows)| other != at && *rows == self.rows(item));
                    if shared { 0 } else { rows }
                }
                (_, 0) => !taken,
                (_, mine) => mine,
            };
            changed |= self.keep(item, keep);
        }
        changed
    }

    /// What a clue leaves its things.
    fn narrow(&mut self, clue: &Clue) -> bool {
        match *clue {
            Clue::Same(a, b) => {
                let both = self.rows(a) & self.rows(b);
                self.keep(a, both) | self.keep(b, both)
            }
            Clue::NotSame(a, b) => self.apart(a, b) | self.apart(b, a),
            Clue::Either(a, b, c) => {
                let changed = self.keep(a, self.rows(b) | self.rows(c));
                // Where it cannot be with one, it is with the other.
                let with = match (self.rows(a) & self.rows(b), self.rows(a) & self.rows(c)) {
                    (0, _) => c,
                    (_, 0) => b,
                    _ => return changed,
                };
                let both = self.rows(a) & self.rows(with);
                changed | self.keep(a, both) | self.keep(with, both)
            }
            Clue::Before(a, b, by) => {
                let (first, second) = (self.numbers(a, by), self.numbers(b, by));
                // Numbers above the least of the first; below the greatest of the second.
                let above = if first == 0 { 0 } else { Rows::MAX.checked_shl(first.trailing_zeros() + 1).unwrap_or(0) };
                let below = if second == 0 { 0 } else { (1 << (63 - second.leading_zeros())) - 1 };
                self.numbered(b, by, above) | self.numbered(a, by, below)
            }
            Clue::NextTo(a, b, by) => {
                let beside = |numbers: Rows| numbers << 1 | numbers >> 1;
                let (first, second) = (self.numbers(a, by), self.numbers(b, by));
                self.numbered(b, by, beside(first)) | self.numbered(a, by, beside(second))
            }
            Clue::Offset(a, b, by, d) => {
                let far = u32::try_from(d.unsigned_abs()).unwrap_or(u32::MAX);
                let up = |numbers: Rows| numbers.checked_shl(far).unwrap_or(0);
                let down = |numbers: Rows| numbers.checked_shr(far).unwrap_or(0);
                let (first, second) = (self.numbers(a, by), self.numbers(b, by));
                let (wanted, back) = if d < 0 { (down(first), up(second)) } else { (up(first), down(second)) };
                self.numbered(b, by, wanted) | self.numbered(a, by, back)
            }
        }
    }

    /// A thing that stands in one row keeps another out of it.
    fn apart(&mut self, a: Item, b: Item) -> bool {
        let rows = self.rows(a);
        rows.count_ones() == 1 && self.keep(b, !rows)
    }

    /// The numbers that a thing may have, as bits: the places of those of the kind `by` with which it may share a row.
    fn numbers(&self, item: Item, by: usize) -> Rows {
        let rows = self.rows(item);
        let shares = self.may[by].iter().enumerate().filter(|(_, may)| **may & rows != 0);
        shares.fold(0, |numbers, (at, _)| numbers | 1 << (at % MOST))
    }

    /// Leaves a thing only rows of these numbers.
    fn numbered(&mut self, item: Item, by: usize, numbers: Rows) -> bool {
        let of = self.may[by].iter().enumerate().filter(|(at, _)| numbers >> (at % MOST) & 1 == 1);
        let rows = of.fold(0, |rows, (_, may)| rows | may);
        self.keep(item, rows)
    }
}
