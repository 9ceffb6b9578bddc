//! Full grids that agree with the givens, found fast: bits for the values that rows, columns and boxes already hold.
//!
//! Beside the exact cover of [`Places::each`], which a generator steers, because a proof of one solution runs at every
//! change that an author makes: on nine rows this is some twenty times as fast (`cargo bench --bench speed -- "one
//! solution"`), for it fills in what is forced without looking at anything else.

use super::Places;
use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// The largest grid, in rows.
const SIZE: usize = 9;

#[derive(Clone)]
struct Fill {
    places: Places,
    grid: Vec<Option<usize>>,
    /// The open cells, each with its row, column and box.
    open: Vec<(usize, [usize; 3])>,
    /// The values held in each row, column and box, as bits.
    held: [[u16; SIZE]; 3],
}

impl Places {
    /// The full grids that agree with the givens, at most so many.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn solutions(
        self,
        givens: &[Option<usize>],
        most: usize,
        budget: &mut Budget,
    ) -> Result<Vec<Vec<usize>>, Spent> {
        let mut found = Vec::new();
        if let Some(fill) = Fill::new(self, givens) {
            fill.go(most, budget, &mut found)?;
        }
        Ok(found)
    }
}

impl Fill {
    /// None when the givens are too few, too many, or contradict one another.
    fn new(places: Places, givens: &[Option<usize>]) -> Option<Self> {
        let cells = places.size * places.size;
        if givens.len() != cells || places.size > SIZE {
            return None;
        }
        let mut fill = Self { places, grid: vec![None; cells], open: Vec::new(), held: [[0; SIZE]; 3] };
        for (cell, given) in givens.iter().enumerate() {
            let units = places.units(cell);
            match given {
                Some(value) if *value < places.size && fill.may(units) & (1 << value) != 0 => {
                    fill.write(cell, units, *value);
                }
                Some(_) => return None,
                None => fill.open.push((cell, units)),
            }
        }
        Some(fill)
    }

    /// The values that a cell may still hold.
    fn may(&self, [row, col, part]: [usize; 3]) -> u16 {
        let [rows, cols, parts] = &self.held;
        !(rows[row] | cols[col] | parts[part]) & ((1 << self.places.size) - 1)
    }

    fn write(&mut self, cell: usize, units: [usize; 3], value: usize) {
        self.grid[cell] = Some(value);
        for (held, unit) in self.held.iter_mut().zip(units) {
            held[unit] |= 1 << value;
        }
    }

    /// Fills in cells with a single value left, again and again; false when a cell has none.
    fn settle(&mut self, budget: &mut Budget) -> Result<bool, Spent> {
        loop {
            let before = self.open.len();
            let mut at = 0;
            while let Some((cell, units)) = self.open.get(at).copied() {
                let may = self.may(units);
                match may.count_ones() {
                    0 => return Ok(false),
                    1 => {
                        if !budget.step() {
                            return Err(Spent);
                        }
                        self.write(cell, units, may.trailing_zeros() as usize);
                        self.open.swap_remove(at);
                    }
                    _ => at += 1,
                }
            }
            if self.open.len() == before {
                return Ok(true);
            }
        }
    }

    /// An open cell and a value that has no other place in its row, column or box.
    fn only_place(&self) -> Option<(usize, usize)> {
        // For each unit the values with a place, and those with more than one.
        let (mut once, mut twice) = ([[0_u16; SIZE]; 3], [[0_u16; SIZE]; 3]);
        for (_, units) in &self.open {
            let may = self.may(*units);
            for ((once, twice), unit) in once.iter_mut().zip(&mut twice).zip(*units) {
                twice[unit] |= once[unit] & may;
                once[unit] |= may;
            }
        }
        self.open.iter().enumerate().find_map(|(at, (_, units))| {
            let only = (0..3).fold(0, |only, kind| only | (once[kind][units[kind]] & !twice[kind][units[kind]]));
            let only = only & self.may(*units);
            (only != 0).then(|| (at, only.trailing_zeros() as usize))
        })
    }

    fn go(mut self, most: usize, budget: &mut Budget, found: &mut Vec<Vec<usize>>) -> Result<(), Spent> {
        while self.settle(budget)? {
            if let Some((at, value)) = self.only_place() {
                if !budget.step() {
                    return Err(Spent);
                }
                let (cell, units) = self.open.swap_remove(at);
                self.write(cell, units, value);
                continue;
            }
            let fewest = (0..self.open.len()).min_by_key(|at| self.may(self.open[*at].1).count_ones());
            let Some(at) = fewest else {
                found.push(self.grid.iter().copied().flatten().collect());
                return Ok(());
            };
            let (cell, units) = self.open.swap_remove(at);
            let may = self.may(units);
            for value in (0..self.places.size).filter(|value| may & (1 << value) != 0) {
                if found.len() >= most {
                    break;
                }
                if !budget.step() {
                    return Err(Spent);
                }
                let mut next = self.clone();
                next.write(cell, units, value);
                next.go(most, budget, found)?;
            }
            return Ok(());
        }
        Ok(())
    }
}
