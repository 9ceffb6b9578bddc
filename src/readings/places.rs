//! Number place grids: every row, column and box holds each value once.

mod fill;
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
        Ok(self.solutions(givens, most, budget)?.len())
    }
}
