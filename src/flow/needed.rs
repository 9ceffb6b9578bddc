//! What a goal cannot do without: everything that stands in each of the ways to reach it.

use super::earliest::{At, ROUNDS, earliest};
use super::net::{Net, Opener, Where};

/// The puzzles, boxes and things without which the goal is out of reach, each on its own account.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Needed {
    pub puzzles: Vec<bool>,
    pub boxes: Vec<bool>,
    pub items: Vec<bool>,
}

/// A set of numbers.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Bits(Vec<u64>);

impl Bits {
    fn none(count: usize) -> Self {
        Self(vec![0; count.div_ceil(64)])
    }

    fn add(&mut self, at: usize) {
        if let Some(word) = self.0.get_mut(at / 64) {
            *word |= 1 << (at % 64);
        }
    }

    fn has(&self, at: usize) -> bool {
        self.0.get(at / 64).is_some_and(|word| word >> (at % 64) & 1 == 1)
    }

    fn join(&mut self, other: &Self) {
        self.0.iter_mut().zip(&other.0).for_each(|(a, b)| *a |= b);
    }

    fn meet(&mut self, other: &Self) {
        self.0.iter_mut().zip(&other.0).for_each(|(a, b)| *a &= b);
    }
}

/// The sets found so far; none stands for "everything", from which they shrink.
struct Sets<'a> {
    net: &'a Net,
    count: usize,
    puzzles: Vec<Option<Bits>>,
    locks: Vec<Option<Bits>>,
    boxes: Vec<Option<Bits>>,
}

/// What the goal, all of these places, cannot do without; nothing when it cannot be reached at all.
///
/// A puzzle needs itself and whatever its things need; a lock what all its openers need; a box itself, its locks
/// and the box around it. The greatest solution of these equations is exactly what every way needs.
pub(super) fn needed(net: &Net, goal: &[Where]) -> Needed {
    let (puzzles, boxes, items) = (net.puzzles.len(), net.boxes.len(), net.items.len());
    let order = earliest(net, ROUNDS, &[]).order;
    let mut sets = Sets {
        net,
        count: puzzles + boxes + items,
        puzzles: vec![None; puzzles],
        locks: vec![None; net.locks.len()],
        boxes: vec![None; boxes],
    };
    // In the order in which things come to hand one sweep nearly always settles everything.
    let mut again = true;
    while again {
        again = false;
        for (at, _) in &order {
            again |= sets.renew(*at);
        }
    }
    let mut all = Bits::none(sets.count);
    for place in goal {
        match sets.place(*place) {
            Some(set) => all.join(&set),
            None => {
                return Needed { puzzles: vec![false; puzzles], boxes: vec![false; boxes], items: vec![false; items] };
            }
        }
    }
    Needed {
        puzzles: (0..puzzles).map(|n| all.has(n)).collect(),
        boxes: (0..boxes).map(|n| all.has(puzzles + n)).collect(),
        items: (0..items).map(|n| all.has(puzzles + boxes + n)).collect(),
    }
}

impl Sets<'_> {
    /// What a place needs; none when that is not known yet or it is never reached.
    fn place(&self, place: Where) -> Option<Bits> {
        match place {
            Where::Open => Some(Bits::none(self.count)),
            Where::Nowhere => None,
            Where::Box(index) => self.boxes.get(index)?.clone(),
        }
    }

    /// Adds what a place needs to a set; false when that is not known yet.
    fn with_place(&self, set: &mut Bits, place: Where) -> bool {
        match place {
            Where::Open => true,
            Where::Nowhere => false,
            Where::Box(index) => match self.boxes.get(index) {
                Some(Some(other)) => {
                    set.join(other);
                    true
                }
                _ => false,
            },
        }
    }

    fn with_item(&self, set: &mut Bits, item: usize) -> bool {
        let known = self.net.items.get(item).is_some_and(|place| self.with_place(set, *place));
        set.add(self.net.puzzles.len() + self.net.boxes.len() + item);
        known
    }

    /// Works a set out anew; whether it changed.
    fn renew(&mut self, at: At) -> bool {
        match at {
            At::Item(_) => false,
            At::Puzzle(n) => {
                let new = self.puzzle(n);
                put(&mut self.puzzles, n, new)
            }
            At::Lock(n) => {
                let new = self.lock(n);
                put(&mut self.locks, n, new)
            }
            At::Box(n) => {
                let new = self.shut(n);
                put(&mut self.boxes, n, new)
            }
        }
    }

    fn puzzle(&self, n: usize) -> Option<Bits> {
        let mut set = Bits::none(self.count);
        set.add(n);
        let known = self.net.puzzles.get(n)?.iter().all(|item| self.with_item(&mut set, *item));
        known.then_some(set)
    }

    fn lock(&self, n: usize) -> Option<Bits> {
        let mut met: Option<Bits> = None;
        for opener in self.net.locks.get(n)? {
            let way = match opener {
                Opener::Puzzle(puzzle) => self.puzzles.get(*puzzle).cloned().flatten(),
                Opener::Item(item) => {
                    let mut set = Bits::none(self.count);
                    self.with_item(&mut set, *item).then_some(set)
                }
            };
            // A way that is not known needs everything as far as is known, so it takes nothing away.
            match (&mut met, way) {
                (Some(met), Some(way)) => met.meet(&way),
                (met @ None, way) => *met = way,
                (Some(_), None) => {}
            }
        }
        met
    }

    fn shut(&self, n: usize) -> Option<Bits> {
        let item = self.net.boxes.get(n)?;
        let mut set = Bits::none(self.count);
        set.add(self.net.puzzles.len() + n);
        let mut known = self.with_place(&mut set, item.stands);
        for lock in &item.locks {
            match self.locks.get(*lock) {
                Some(Some(other)) => set.join(other),
                _ => known = false,
            }
        }
        known.then_some(set)
    }
}

fn put(list: &mut [Option<Bits>], at: usize, new: Option<Bits>) -> bool {
    match list.get_mut(at) {
        Some(slot) if *slot != new => {
            *slot = new;
            true
        }
        _ => false,
    }
}
