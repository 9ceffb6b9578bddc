//! Why boxes stay shut: the smallest sets of boxes that hold one another shut.

use super::net::{Net, Opener, Where};
use super::rounds::{Reached, had};
use crate::limits;

/// Why a box of a blocking set stays shut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// It stands in this box of the set.
    Inside(usize),
    /// This lock never opens: for each of its openers the thing that is missing and the box of the set around it.
    Lock(usize, Vec<(Opener, usize, usize)>),
}

impl Net {
    /// The net with everything mended that is not a loop: locks that nothing opens are open, things and boxes
    /// laid nowhere lie in the open. What still stays shut is held by loops alone.
    #[must_use]
    pub fn charitable(&self) -> Self {
        let mut net = self.clone();
        let place = |place: Where| match place {
            Where::Box(index) if index < self.boxes.len() => Where::Box(index),
            _ => Where::Open,
        };
        for item in &mut net.items {
            *item = place(*item);
        }
        for item in &mut net.boxes {
            item.stands = place(item.stands);
            item.locks.retain(|lock| self.locks.get(*lock).is_some_and(|openers| !openers.is_empty()));
        }
        let items = self.items.len();
        for needs in &mut net.puzzles {
            needs.retain(|item| *item < items);
        }
        net
    }

    /// Why `index` cannot be the first box of `set` to open; none when it could be.
    #[must_use]
    pub fn reason(&self, index: usize, set: &[usize]) -> Option<Reason> {
        let item = self.boxes.get(index)?;
        if let Some(outer) = self.around(item.stands).into_iter().find(|outer| set.contains(outer)) {
            return Some(Reason::Inside(outer));
        }
        item.locks.iter().find_map(|lock| {
            let openers = self.locks.get(*lock)?;
            let held: Option<Vec<_>> = openers.iter().map(|opener| self.held(*opener, set)).collect();
            held.map(|held| Reason::Lock(*lock, held))
        })
    }

    /// The thing that an opener lacks while `set` is shut, and the box of the set around it.
    fn held(&self, opener: Opener, set: &[usize]) -> Option<(Opener, usize, usize)> {
        let one = |item: usize| {
            let around = self.around(*self.items.get(item)?);
            around.into_iter().find(|outer| set.contains(outer)).map(|outer| (opener, item, outer))
        };
        match opener {
            Opener::Item(item) => one(item),
            Opener::Puzzle(puzzle) => self.puzzles.get(puzzle)?.iter().find_map(|item| one(*item)),
        }
    }

    /// The largest part of `set` whose boxes hold one another shut. Such parts are closed under union, so it
    /// is found by taking out, again and again, every box that could open first.
    #[must_use]
    pub fn core(&self, set: &[usize]) -> Vec<usize> {
        let mut core = set.to_vec();
        loop {
            let kept: Vec<usize> = core.iter().copied().filter(|index| self.reason(*index, &core).is_some()).collect();
            if kept.len() == core.len() {
                return kept;
            }
            core = kept;
        }
    }

    /// A smallest set of boxes within `shut` that hold one another shut: exactly smallest while the sets that
    /// must be tried stay within [`limits::LOOP_SETS`], else one from which no box can be left out.
    #[must_use]
    pub fn smallest_core(&self, shut: &[usize]) -> Vec<usize> {
        let whole = self.core(shut);
        let mut left = limits::LOOP_SETS;
        for size in 1..whole.len() {
            let mut pick: Vec<usize> = (0..size).collect();
            loop {
                let set: Vec<usize> = pick.iter().filter_map(|at| whole.get(*at).copied()).collect();
                if set.iter().all(|index| self.reason(*index, &set).is_some()) {
                    return set;
                }
                let Some(rest) = left.checked_sub(1) else { return self.shaved(whole) };
                left = rest;
                if !next_pick(&mut pick, whole.len()) {
                    break;
                }
            }
        }
        whole
    }

    /// `set` with boxes left out as long as some of the rest hold one another shut.
    fn shaved(&self, set: Vec<usize>) -> Vec<usize> {
        let mut set = set;
        let mut at = 0;
        while let Some(drop) = set.get(at).copied() {
            let rest: Vec<usize> = set.iter().copied().filter(|index| *index != drop).collect();
            let core = self.core(&rest);
            if core.is_empty() {
                at += 1;
            } else {
                // What was kept before `at` may be gone as well, so the count starts anew.
                set = core;
                at = 0;
            }
        }
        set
    }

    /// The shut boxes on which `wanted` things depend, sorted.
    #[must_use]
    pub fn depends(&self, wanted: &[Where], reached: &Reached) -> Vec<usize> {
        let mut found = vec![false; self.boxes.len()];
        let mut open: Vec<usize> = wanted.iter().flat_map(|place| self.around(*place)).collect();
        while let Some(index) = open.pop() {
            if had(&reached.boxes, index) || found.get(index).copied().unwrap_or(true) {
                continue;
            }
            found[index] = true;
            let item = &self.boxes[index];
            open.extend(self.around(item.stands));
            for opener in item.locks.iter().filter_map(|lock| self.locks.get(*lock)).flatten() {
                let needs: &[usize] = match opener {
                    Opener::Puzzle(puzzle) => self.puzzles.get(*puzzle).map_or(&[], Vec::as_slice),
                    Opener::Item(item) => std::slice::from_ref(item),
                };
                for item in needs {
                    open.extend(self.items.get(*item).into_iter().flat_map(|place| self.around(*place)));
                }
            }
        }
        found.iter().enumerate().filter(|(_, found)| **found).map(|(index, _)| index).collect()
    }
}

/// Moves `pick` to the next choice of as many numbers below `count`, in lexical order; false after the last.
fn next_pick(pick: &mut [usize], count: usize) -> bool {
    let size = pick.len();
    for at in (0..size).rev() {
        if pick[at] + size - at < count {
            pick[at] += 1;
            for later in at + 1..size {
                pick[later] = pick[later - 1] + 1;
            }
            return true;
        }
    }
    false
}
