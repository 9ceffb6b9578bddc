//! Number place grids: every row, column and box holds each value once.

mod steps;

pub use steps::Steps;

use crate::readings::Budget;
use crate::readings::cover::each_cover;
use crate::readings::tokens::Spent;

/// What may be tried: cells with values, in the order of the trying.
pub type Tries = Vec<(usize, usize)>;

/// A grid's measures. Cells are counted row by row from the top left; values are 0 to `size - 1`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Places {
    /// Cells of a row, a column and a box.
    pub size: usize,
    /// Rows of a box.
    pub box_rows: usize,
    /// Columns of a box.
    pub box_cols: usize,
}

/// How far single deductions lead: what a guest does without trying anything out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Deduced {
    /// Cells in which only one value was left.
    pub only_value: usize,
    /// Values for which only one cell of a row, column or box was left.
    pub only_cell: usize,
    /// Cells that stayed open: beyond this, guests must reason further or try.
    pub open: usize,
}

impl Places {
    /// A grid of 4, 6 or 9 rows; boxes of 2×2, 2×3 and 3×3 cells.
    #[must_use]
    pub const fn new(size: usize) -> Option<Self> {
        match size {
            4 => Some(Self { size, box_rows: 2, box_cols: 2 }),
            6 => Some(Self { size, box_rows: 2, box_cols: 3 }),
            9 => Some(Self { size, box_rows: 3, box_cols: 3 }),
            _ => None,
        }
    }

    /// Row, column and box of a cell.
    #[must_use]
    pub const fn units(self, cell: usize) -> [usize; 3] {
        let (row, col) = (cell / self.size, cell % self.size);
        [row, col, row / self.box_rows * self.box_rows + col / self.box_cols]
    }

    /// Whether two different cells share a row, a column or a box, and so never a value.
    #[must_use]
    pub fn see_each_other(self, a: usize, b: usize) -> bool {
        a != b && self.units(a).iter().zip(self.units(b)).any(|(a, b)| *a == b)
    }

    /// Calls `found` with every full grid that agrees with the givens; it says whether to go on. `arrange` may
    /// change the order in which cells and values are tried, for grids by chance. Givens of the wrong number
    /// have no full grid.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn each(
        self,
        givens: &[Option<usize>],
        arrange: &mut dyn FnMut(&mut Tries),
        budget: &mut Budget,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> Result<(), Spent> {
        let cells = self.size * self.size;
        if givens.len() != cells {
            return Ok(());
        }
        let mut tries: Tries = (0..cells)
            .flat_map(|cell| (0..self.size).map(move |value| (cell, value)))
            .filter(|(cell, value)| givens[*cell].is_none_or(|given| given == *value))
            .collect();
        arrange(&mut tries);
        let options: Vec<Vec<usize>> = tries
            .iter()
            .map(|(cell, value)| {
                let [row, col, r#box] = self.units(*cell);
                let held = |kind: usize, unit: usize| kind * cells + unit * self.size + value;
                vec![*cell, held(1, row), held(2, col), held(3, r#box)]
            })
            .collect();
        each_cover(4 * cells, &options, budget, &mut |chosen| {
            let mut grid = vec![0; cells];
            for option in chosen {
                if let Some((cell, value)) = tries.get(*option) {
                    grid[*cell] = *value;
                }
            }
            found(&grid)
        })
    }

    /// How many full grids agree with the givens, counted up to `most`.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn count(self, givens: &[Option<usize>], most: usize, budget: &mut Budget) -> Result<usize, Spent> {
        let mut count = 0;
        self.each(givens, &mut |_| {}, budget, &mut |_| {
            count += 1;
            count < most
        })?;
        Ok(count)
    }

    /// Fills in what single deductions give, again and again.
    #[must_use]
    pub fn deduce(self, givens: &[Option<usize>]) -> Deduced {
        let mut grid = givens.to_vec();
        grid.resize(self.size * self.size, None);
        let mut deduced = Deduced { only_value: 0, only_cell: 0, open: 0 };
        loop {
            if let Some((cell, value)) = self.only_value(&grid) {
                deduced.only_value += 1;
                grid[cell] = Some(value);
            } else if let Some((cell, value)) = self.only_cell(&grid) {
                deduced.only_cell += 1;
                grid[cell] = Some(value);
            } else {
                deduced.open = grid.iter().filter(|cell| cell.is_none()).count();
                return deduced;
            }
        }
    }

    fn may(self, grid: &[Option<usize>], cell: usize, value: usize) -> bool {
        grid[cell].is_none()
            && !grid.iter().enumerate().any(|(other, held)| *held == Some(value) && self.see_each_other(cell, other))
    }

    fn only_value(self, grid: &[Option<usize>]) -> Option<(usize, usize)> {
        (0..grid.len()).find_map(|cell| {
            let mut values = (0..self.size).filter(|value| self.may(grid, cell, *value));
            let value = values.next()?;
            values.next().is_none().then_some((cell, value))
        })
    }

    fn only_cell(self, grid: &[Option<usize>]) -> Option<(usize, usize)> {
        for kind in 0..3 {
            for unit in 0..self.size {
                for value in 0..self.size {
                    let mut cells =
                        (0..grid.len()).filter(|cell| self.units(*cell)[kind] == unit && self.may(grid, *cell, value));
                    if let Some(cell) = cells.next()
                        && cells.next().is_none()
                    {
                        return Some((cell, value));
                    }
                }
            }
        }
        None
    }
}
