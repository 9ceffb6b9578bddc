//! A logic grid as a person ticks it off: statement by statement, every tick carried over, until nothing new comes.

use super::{Clue, Item, Matching};

/// What a person did until all was ticked, or nothing led on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Steps {
    /// How often the list of clues was gone through.
    pub rounds: usize,
    /// Readings of a clue that told something new.
    pub told: usize,
    /// Ticks set on trial that led to a contradiction.
    pub tried: usize,
    /// Pairs of things that stayed open.
    pub open: usize,
}

impl Steps {
    /// The steps weighed: going through the list 2, a reading that tells something 1, a trial 8, and so for every pair
    /// that stayed open. The weights are our estimate.
    #[must_use]
    pub const fn weight(self) -> usize {
        2 * self.rounds + self.told + 8 * (self.tried + self.open)
    }
}

/// Which things may still belong together, for every two things of different kinds.
#[derive(Clone)]
struct Table {
    size: Matching,
    /// By kind and thing of the one, then of the other, as bits of the other's things.
    may: Vec<Vec<Vec<u32>>>,
}

/// Nothing can belong with some thing any more.
struct Contradiction;

impl Matching {
    /// The steps of a person by these clues; none when they contradict one another, or name things that there are not,
    /// or there are more than 32 things of a kind.
    #[must_use]
    pub fn steps(self, clues: &[Clue]) -> Option<Steps> {
        if self.kinds == 0 || self.items == 0 || self.items > 32 || !clues.iter().all(|clue| self.knows(clue)) {
            return None;
        }
        let mut steps = Steps::default();
        let mut table = Table::new(self);
        table.carry().ok()?;
        while table.open() > 0 {
            if table.round(clues, &mut steps).ok()? {
                continue;
            }
            let Some((a, b)) = table.refuted(clues) else { break };
            steps.tried += 1;
            table.cross(a, b);
            table.carry().ok()?;
        }
        steps.open = table.open();
        // What was not read any more, when all was ticked, must agree as well.
        table.round(clues, &mut steps.clone()).ok()?;
        Some(steps)
    }
}

impl Table {
    fn new(size: Matching) -> Self {
        let all = if size.items >= 32 { u32::MAX } else { (1 << size.items) - 1 };
        let mut may = vec![vec![vec![all; size.kinds]; size.items]; size.kinds];
        for (kind, things) in may.iter_mut().enumerate() {
            for (at, row) in things.iter_mut().enumerate() {
                row[kind] = 1 << at;
            }
        }
        Self { size, may }
    }

    fn row(&self, a: Item, kind: usize) -> u32 {
        self.may[a.kind][a.at][kind]
    }

    fn can(&self, a: Item, b: Item) -> bool {
        self.row(a, b.kind) >> b.at & 1 == 1
    }

    /// Crosses a pair out; whether it was open.
    fn cross(&mut self, a: Item, b: Item) -> bool {
        let open = self.can(a, b);
        self.may[a.kind][a.at][b.kind] &= !(1 << b.at);
        self.may[b.kind][b.at][a.kind] &= !(1 << a.at);
        open
    }

    /// Crosses out everything of the other's kind but the other.
    fn tick(&mut self, a: Item, b: Item) -> bool {
        (0..self.size.items).fold(false, |changed, at| {
            let other = Item { at, ..b };
            (other != b && self.cross(a, other)) | changed
        })
    }

    /// Pairs that are neither ticked nor crossed out.
    fn open(&self) -> usize {
        let pairs = self.may.iter().enumerate().flat_map(|(kind, things)| {
            things.iter().flat_map(move |row| row.iter().skip(kind + 1).map(|may| may.count_ones()))
        });
        pairs.map(|may| if may > 1 { may as usize } else { 0 }).sum()
    }

    /// Goes through the list once; whether anything was new.
    fn round(&mut self, clues: &[Clue], steps: &mut Steps) -> Result<bool, Contradiction> {
        let mut new = false;
        steps.rounds += 1;
        for clue in clues {
            if self.tell(clue) {
                steps.told += 1;
                new = true;
                self.carry()?;
            }
        }
        Ok(new)
    }

    /// Marks what a clue tells by itself; whether anything was new.
    fn tell(&mut self, clue: &Clue) -> bool {
        match *clue {
            Clue::Same(a, b) => self.tick(a, b) | self.tick(b, a),
            Clue::NotSame(a, b) => self.cross(a, b),
            Clue::Either(a, b, c) => self.either(a, b, c),
            Clue::Before(a, b, by) => self.numbers(a, b, by, &|x, y| x < y),
            Clue::NextTo(a, b, by) => self.numbers(a, b, by, &|x, y| x.abs_diff(y) == 1),
            Clue::Offset(a, b, by, d) => self.numbers(a, b, by, &|x, y| y.checked_sub(x) == Some(d)),
        }
    }

    fn either(&mut self, a: Item, b: Item, c: Item) -> bool {
        let mut changed = match (self.can(a, b), self.can(a, c)) {
            (false, true) => self.tick(a, c) | self.tick(c, a),
            (true, false) => self.tick(a, b) | self.tick(b, a),
            _ => false,
        };
        if b.kind == c.kind {
            for at in (0..self.size.items).filter(|at| *at != b.at && *at != c.at) {
                changed |= self.cross(a, Item { kind: b.kind, at });
            }
        }
        changed
    }

    /// Crosses out numbers of either for which the other has none that suits.
    fn numbers(&mut self, a: Item, b: Item, by: usize, suits: &dyn Fn(i64, i64) -> bool) -> bool {
        let mut changed = a.kind != b.kind && !suits(0, 0) && self.cross(a, b);
        let numbers = |row: u32| (0..self.size.items).filter(move |at| row >> at & 1 == 1).collect::<Vec<usize>>();
        let (of_a, of_b) = (numbers(self.row(a, by)), numbers(self.row(b, by)));
        let fits = |x: usize, y: usize| suits(i64::try_from(x).unwrap_or(0), i64::try_from(y).unwrap_or(0));
        for x in of_a.iter().filter(|x| !of_b.iter().any(|y| fits(**x, *y))) {
            changed |= self.cross(a, Item { kind: by, at: *x });
        }
        for y in of_b.iter().filter(|y| !of_a.iter().any(|x| fits(*x, **y))) {
            changed |= self.cross(b, Item { kind: by, at: *y });
        }
        changed
    }

    /// Carries every mark over until nothing new comes: a thing that can belong with one only is ticked there, and two
    /// things that have nothing in common in some third kind do not belong together.
    fn carry(&mut self) -> Result<(), Contradiction> {
        let things: Vec<Item> =
            (0..self.size.kinds).flat_map(|kind| (0..self.size.items).map(move |at| Item { kind, at })).collect();
        loop {
            let mut changed = false;
            for a in &things {
                for kind in 0..self.size.kinds {
                    match self.row(*a, kind) {
                        0 => return Err(Contradiction),
                        one if one.is_power_of_two() => {
                            let b = Item { kind, at: one.trailing_zeros() as usize };
                            changed |= self.tick(b, *a);
                        }
                        _ => {}
                    }
                }
                for b in things.iter().filter(|b| b.kind > a.kind) {
                    let apart = (0..self.size.kinds).any(|kind| self.row(*a, kind) & self.row(*b, kind) == 0);
                    changed |= apart && self.cross(*a, *b);
                }
            }
            if !changed {
                return Ok(());
            }
        }
    }

    /// A pair that, ticked on trial, contradicts the clues; tried first where few are left.
    fn refuted(&self, clues: &[Clue]) -> Option<(Item, Item)> {
        let mut pairs: Vec<(u32, Item, Item)> = Vec::new();
        for (kind, things) in self.may.iter().enumerate() {
            for (at, row) in things.iter().enumerate() {
                for (other, may) in row.iter().enumerate().filter(|(other, may)| *other > kind && may.count_ones() > 1)
                {
                    let held = (0..self.size.items).filter(|b| may >> b & 1 == 1);
                    pairs.extend(held.map(|b| (may.count_ones(), Item { kind, at }, Item { kind: other, at: b })));
                }
            }
        }
        pairs.sort();
        pairs.into_iter().find_map(|(_, a, b)| {
            let mut trial = self.clone();
            trial.tick(a, b);
            trial.tick(b, a);
            let mut fails = trial.carry().is_err();
            let mut ignored = Steps::default();
            while !fails {
                match trial.round(clues, &mut ignored) {
                    Err(Contradiction) => fails = true,
                    Ok(true) => {}
                    Ok(false) => break,
                }
            }
            fails.then_some((a, b))
        })
    }
}
