//! Ways through a net of places: simple ways, shortest ways, and how far every place is.

use std::collections::VecDeque;

use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// Places and the links between them, which can be gone both ways.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Net {
    links: Vec<Vec<usize>>,
}

impl Net {
    /// So many places, none linked.
    #[must_use]
    pub fn new(places: usize) -> Self {
        Self { links: vec![Vec::new(); places] }
    }

    /// How many places there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.links.len()
    }

    /// Whether there is no place at all.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.links.is_empty()
    }

    /// Links two places. What is linked already, or is no place, or is one place, stays as it is.
    pub fn link(&mut self, a: usize, b: usize) {
        if a == b || a >= self.len() || b >= self.len() || self.linked(a, b) {
            return;
        }
        for (from, to) in [(a, b), (b, a)] {
            if let Some(list) = self.links.get_mut(from) {
                list.push(to);
                list.sort_unstable();
            }
        }
    }

    /// Whether two places are linked.
    #[must_use]
    pub fn linked(&self, a: usize, b: usize) -> bool {
        self.from(a).contains(&b)
    }

    /// The places linked to this one, in rising order.
    #[must_use]
    pub fn from(&self, place: usize) -> &[usize] {
        self.links.get(place).map_or(&[], Vec::as_slice)
    }

    /// How many links lead from `from` to every place; none where no way leads.
    #[must_use]
    pub fn distances(&self, from: usize) -> Vec<Option<usize>> {
        self.distances_without(from, &[])
    }

    /// As [`Net::distances`], on ways that keep off the places where `shut` holds.
    #[must_use]
    pub fn distances_without(&self, from: usize, shut: &[bool]) -> Vec<Option<usize>> {
        let mut far = vec![None; self.len()];
        let Some(start) = far.get_mut(from) else { return far };
        *start = Some(0);
        let mut open = VecDeque::from([(from, 0)]);
        while let Some((place, steps)) = open.pop_front() {
            for next in self.from(place).iter().copied() {
                let free = !shut.get(next).copied().unwrap_or(false);
                if let Some(slot @ None) = far.get_mut(next).filter(|_| free) {
                    *slot = Some(steps + 1);
                    open.push_back((next, steps + 1));
                }
            }
        }
        far
    }

    /// Calls `found` with every way from `from` to `to` that comes to no place twice; it says whether to go on. A step
    /// is only taken where the end can still be reached, so that no time goes into dead ends.
    ///
    /// # Errors
    /// When the budget was spent first: it pays for every place that is looked at.
    pub fn each_simple(
        &self,
        from: usize,
        to: usize,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> Result<(), Spent> {
        if from >= self.len() || to >= self.len() {
            return Ok(());
        }
        let mut used = vec![false; self.len()];
        used[from] = true;
        self.walk(&mut vec![from], &mut |_, _| true, to, &mut used, budget, found)
    }

    /// Calls `found` with every way from `from` to `to` that takes the fewest links; it says whether to go on.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn each_shortest(
        &self,
        from: usize,
        to: usize,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> Result<(), Spent> {
        let left = self.distances(to);
        let (Some(Some(_)), true) = (left.get(from), to < self.len()) else { return Ok(()) };
        let nearer = |a: usize, b: usize| match (left.get(a), left.get(b)) {
            (Some(Some(a)), Some(Some(b))) => *b + 1 == *a,
            _ => false,
        };
        let mut used = vec![false; self.len()];
        used[from] = true;
        self.walk(&mut vec![from], &mut { nearer }, to, &mut used, budget, found)
    }

    /// Goes on from the last place of `way`. It keeps the choices still open in a list of its own: a way may be longer
    /// than a stack of calls is deep.
    fn walk(
        &self,
        way: &mut Vec<usize>,
        allowed: &mut dyn FnMut(usize, usize) -> bool,
        to: usize,
        used: &mut [bool],
        budget: &mut Budget,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> Result<(), Spent> {
        if way.last() == Some(&to) {
            found(way);
            return Ok(());
        }
        let mut open = vec![self.steps(way, allowed, to, used, budget)?];
        while let Some(steps) = open.last_mut() {
            let Some(next) = steps.pop() else {
                open.pop();
                if !open.is_empty()
                    && let Some(back) = way.pop()
                {
                    used[back] = false;
                }
                continue;
            };
            way.push(next);
            if next == to {
                if !found(way) {
                    return Ok(());
                }
                way.pop();
                continue;
            }
            used[next] = true;
            let steps = self.steps(way, allowed, to, used, budget)?;
            open.push(steps);
        }
        Ok(())
    }

    /// Where the way may go on, last first: to places that it has not come to, from which the end can be reached.
    fn steps(
        &self,
        way: &[usize],
        allowed: &mut dyn FnMut(usize, usize) -> bool,
        to: usize,
        used: &[bool],
        budget: &mut Budget,
    ) -> Result<Vec<usize>, Spent> {
        let Some(here) = way.last().copied() else { return Ok(Vec::new()) };
        let reach = self.distances_without(to, used);
        for _ in reach.iter().flatten() {
            if !budget.step() {
                return Err(Spent);
            }
        }
        let fits =
            |next: &usize| !used.get(*next).copied().unwrap_or(true) && reach.get(*next).is_some_and(Option::is_some);
        Ok(self.from(here).iter().rev().copied().filter(fits).filter(|next| allowed(here, *next)).collect())
    }
}
