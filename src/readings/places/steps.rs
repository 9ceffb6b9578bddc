//! A number place grid as a person fills it: the easiest step that leads on, again and again.

use super::{Deduced, Places};

/// What a person did until the grid was full, or nothing led on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Steps {
    /// Cells in which only one value was left.
    pub only_value: usize,
    /// Values for which only one cell of a row, column or box was left.
    pub only_cell: usize,
    /// Looks at two lines together: values kept to where a box and a line cross, and pairs of cells that share two
    /// values.
    pub crossed: usize,
    /// Values written in on trial that led to a contradiction.
    pub tried: usize,
    /// Cells that stayed open.
    pub open: usize,
}

impl Steps {
    /// The steps weighed by what they ask of a person: a cell with one value left 1, a value with one cell left 2, two
    /// lines looked at together 4, a trial 8, and so for every cell that stayed open. The weights are our estimate.
    #[must_use]
    pub const fn weight(self) -> usize {
        self.only_value + 2 * self.only_cell + 4 * self.crossed + 8 * (self.tried + self.open)
    }
}

/// The grid with the values that each cell may still hold, as bits.
#[derive(Clone)]
struct Sheet {
    places: Places,
    held: Vec<Option<usize>>,
    may: Vec<u16>,
    /// The cells of every row, column and box.
    units: Vec<Vec<usize>>,
}

impl Places {
    /// Fills in what single deductions give, again and again.
    #[must_use]
    pub fn deduce(self, givens: &[Option<usize>]) -> Deduced {
        let mut sheet = Sheet::new(self, givens);
        let mut deduced = Deduced { only_value: 0, only_cell: 0, open: 0 };
        loop {
            if let Some((cell, value)) = sheet.only_value() {
                deduced.only_value += 1;
                sheet.write(cell, value);
            } else if let Some((cell, value)) = sheet.only_cell() {
                deduced.only_cell += 1;
                sheet.write(cell, value);
            } else {
                deduced.open = sheet.open();
                return deduced;
            }
        }
    }

    /// The steps of a person from these givens on.
    #[must_use]
    pub fn steps(self, givens: &[Option<usize>]) -> Steps {
        let mut steps = Steps::default();
        let mut sheet = Sheet::new(self, givens);
        loop {
            if let Some((cell, value)) = sheet.only_value() {
                steps.only_value += 1;
                sheet.write(cell, value);
            } else if let Some((cell, value)) = sheet.only_cell() {
                steps.only_cell += 1;
                sheet.write(cell, value);
            } else if sheet.crossed() || sheet.pair() {
                steps.crossed += 1;
            } else if let Some((cell, value)) = sheet.refuted() {
                steps.tried += 1;
                sheet.may[cell] &= !(1 << value);
            } else {
                steps.open = sheet.open();
                return steps;
            }
            if sheet.stuck() {
                // The givens contradict one another: there is nothing to fill in.
                steps.open = sheet.open();
                return steps;
            }
        }
    }
}

impl Sheet {
    fn new(places: Places, givens: &[Option<usize>]) -> Self {
        let cells = places.size * places.size;
        let all = (1_u16 << places.size) - 1;
        let mut units = vec![Vec::new(); 3 * places.size];
        for cell in 0..cells {
            for (kind, unit) in places.units(cell).into_iter().enumerate() {
                units[kind * places.size + unit].push(cell);
            }
        }
        let mut sheet = Self { places, held: vec![None; cells], may: vec![all; cells], units };
        for (cell, value) in givens.iter().take(cells).enumerate() {
            if let Some(value) = value.filter(|value| *value < places.size) {
                sheet.write(cell, value);
            }
        }
        sheet
    }

    fn open(&self) -> usize {
        self.held.iter().filter(|held| held.is_none()).count()
    }

    fn write(&mut self, cell: usize, value: usize) {
        self.held[cell] = Some(value);
        self.may[cell] = 0;
        for (kind, unit) in self.places.units(cell).into_iter().enumerate() {
            for other in &self.units[kind * self.places.size + unit] {
                self.may[*other] &= !(1 << value);
            }
        }
    }

    /// Whether a cell has no value left, or a value no cell in some row, column or box.
    fn stuck(&self) -> bool {
        let all = (1_u16 << self.places.size) - 1;
        self.held.iter().zip(&self.may).any(|(held, may)| held.is_none() && *may == 0)
            || self.units.iter().any(|unit| {
                let seen = unit.iter().fold(0, |seen, cell| seen | self.may[*cell] | self.bit(*cell));
                seen != all
            })
    }

    fn bit(&self, cell: usize) -> u16 {
        self.held[cell].map_or(0, |value| 1 << value)
    }

    fn only_value(&self) -> Option<(usize, usize)> {
        let cell = self.may.iter().position(|may| may.count_ones() == 1)?;
        Some((cell, self.may[cell].trailing_zeros() as usize))
    }

    fn only_cell(&self) -> Option<(usize, usize)> {
        self.units.iter().find_map(|unit| {
            let (mut once, mut more) = (0_u16, 0_u16);
            for cell in unit {
                more |= once & self.may[*cell];
                once |= self.may[*cell];
            }
            let only = once & !more;
            if only == 0 {
                return None;
            }
            let value = only.trailing_zeros() as usize;
            let cell = unit.iter().find(|cell| self.may[**cell] >> value & 1 == 1)?;
            Some((*cell, value))
        })
    }

    /// Where all cells of one unit that may hold a value lie in another unit as well, the rest of the other cannot
    /// hold it. True when that crossed something out.
    fn crossed(&mut self) -> bool {
        for a in 0..self.units.len() {
            for value in 0..self.places.size {
                let may = |cell: &&usize| self.may[**cell] >> value & 1 == 1;
                let cells: Vec<usize> = self.units[a].iter().filter(may).copied().collect();
                if cells.len() < 2 {
                    continue;
                }
                for b in (0..self.units.len()).filter(|b| *b != a) {
                    if !cells.iter().all(|cell| self.units[b].contains(cell)) {
                        continue;
                    }
                    let rest: Vec<usize> =
                        self.units[b].iter().filter(may).filter(|cell| !cells.contains(cell)).copied().collect();
                    if !rest.is_empty() {
                        rest.iter().for_each(|cell| self.may[*cell] &= !(1 << value));
                        return true;
                    }
                }
            }
        }
        false
    }

    /// Where two cells of a unit may hold the same two values and no other, the rest of the unit cannot hold them.
    fn pair(&mut self) -> bool {
        for unit in &self.units {
            for (at, a) in unit.iter().enumerate() {
                let two = self.may[*a];
                if two.count_ones() != 2 {
                    continue;
                }
                let Some(b) = unit[at + 1..].iter().find(|b| self.may[**b] == two) else { continue };
                let rest: Vec<usize> = unit
                    .iter()
                    .filter(|cell| *cell != a && *cell != b && self.may[**cell] & two != 0)
                    .copied()
                    .collect();
                if !rest.is_empty() {
                    rest.iter().for_each(|cell| self.may[*cell] &= !two);
                    return true;
                }
            }
        }
        false
    }

    /// A value that, written in on trial, contradicts itself after the easy steps that follow; tried first where few
    /// values are left.
    fn refuted(&self) -> Option<(usize, usize)> {
        let mut cells: Vec<usize> = (0..self.may.len()).filter(|cell| self.may[*cell] != 0).collect();
        cells.sort_by_key(|cell| (self.may[*cell].count_ones(), *cell));
        cells.into_iter().find_map(|cell| {
            let value = (0..self.places.size).filter(|value| self.may[cell] >> value & 1 == 1).find(|value| {
                let mut trial = self.clone();
                trial.write(cell, *value);
                while !trial.stuck() {
                    let Some((cell, value)) = trial.only_value().or_else(|| trial.only_cell()) else { return false };
                    trial.write(cell, value);
                }
                true
            })?;
            Some((cell, value))
        })
    }
}
