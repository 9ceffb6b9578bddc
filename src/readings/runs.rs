//! Picture grids: each row and column says how long its runs of ink are.

use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// What is known of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cell {
    /// Nothing yet.
    Open,
    /// Ink.
    Ink,
    /// No ink.
    Blank,
}

/// The run lengths of all rows, from the top, and of all columns, from the left. A line without runs is blank.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Runs {
    /// Of each row, from left to right.
    pub rows: Vec<Vec<usize>>,
    /// Of each column, from top to bottom.
    pub cols: Vec<Vec<usize>>,
}

/// What a person did to fill a picture grid line by line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Looks {
    /// How often all rows and columns were gone through.
    pub passes: usize,
    /// Lines that told something new.
    pub told: usize,
    /// Cells that stayed open: beyond this, guests must try.
    pub open: usize,
}

/// The run lengths of a line.
fn runs_of(line: impl Iterator<Item = bool>) -> Vec<usize> {
    let mut runs = Vec::new();
    let mut length = 0;
    for ink in line.chain([false]) {
        if ink {
            length += 1;
        } else if length > 0 {
            runs.push(length);
            length = 0;
        }
    }
    runs
}

impl Runs {
    /// The runs of a picture, given row by row; rows shorter than the first count as blank at their end.
    #[must_use]
    pub fn of(picture: &[Vec<bool>]) -> Self {
        let width = picture.first().map_or(0, Vec::len);
        let at = |row: &Vec<bool>, col: usize| row.get(col).copied().unwrap_or(false);
        Self {
            rows: picture.iter().map(|row| runs_of((0..width).map(|col| at(row, col)))).collect(),
            cols: (0..width).map(|col| runs_of(picture.iter().map(|row| at(row, col)))).collect(),
        }
    }

    /// What lines alone tell, looked at one after another until none tells more; none when they contradict one
    /// another.
    #[must_use]
    pub fn by_lines(&self) -> Option<Vec<Vec<Cell>>> {
        let mut grid = self.open();
        self.settle(&mut grid).then_some(grid)
    }

    /// A grid of which nothing is known.
    #[must_use]
    pub fn open(&self) -> Vec<Vec<Cell>> {
        vec![vec![Cell::Open; self.cols.len()]; self.rows.len()]
    }

    /// Calls `found` with every picture that has these runs; it says whether to go on.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn each(&self, budget: &mut Budget, found: &mut dyn FnMut(&[Vec<bool>]) -> bool) -> Result<(), Spent> {
        self.each_from(self.open(), budget, found)
    }

    /// As [`Runs::each`], from a grid of which something is known; a grid of another size has no picture.
    ///
    /// # Errors
    /// When the budget was spent first.
    pub fn each_from(
        &self,
        grid: Vec<Vec<Cell>>,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<bool>]) -> bool,
    ) -> Result<(), Spent> {
        if grid.len() == self.rows.len() && grid.iter().all(|line| line.len() == self.cols.len()) {
            self.walk(grid, budget, found)?;
        }
        Ok(())
    }

    /// The looks of a person who goes through all rows, then all columns, again and again, from a grid of which
    /// something is known; none when the lines contradict one another or the grid is of another size.
    #[must_use]
    pub fn looks(&self, mut grid: Vec<Vec<Cell>>) -> Option<Looks> {
        if grid.len() != self.rows.len() || grid.iter().any(|line| line.len() != self.cols.len()) {
            return None;
        }
        let mut looks = Looks::default();
        let open = |grid: &[Vec<Cell>]| grid.iter().flatten().filter(|cell| **cell == Cell::Open).count();
        loop {
            let before = looks.told;
            for (line, runs) in grid.iter_mut().zip(&self.rows) {
                looks.told += usize::from(settle_line(line, runs)?);
            }
            for (col, runs) in self.cols.iter().enumerate() {
                let mut line: Vec<Cell> = grid.iter().map(|row| row[col]).collect();
                looks.told += usize::from(settle_line(&mut line, runs)?);
                grid.iter_mut().zip(line).for_each(|(row, cell)| row[col] = cell);
            }
            if looks.told == before {
                looks.open = open(&grid);
                return Some(looks);
            }
            looks.passes += 1;
            if open(&grid) == 0 {
                return Some(looks);
            }
        }
    }

    fn walk(
        &self,
        mut grid: Vec<Vec<Cell>>,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[Vec<bool>]) -> bool,
    ) -> Result<bool, Spent> {
        if !budget.step() {
            return Err(Spent);
        }
        if !self.settle(&mut grid) {
            return Ok(true);
        }
        let open = grid.iter().enumerate().find_map(|(row, line)| {
            let col = line.iter().position(|cell| *cell == Cell::Open)?;
            Some((row, col))
        });
        let Some((row, col)) = open else {
            let picture: Vec<Vec<bool>> =
                grid.iter().map(|line| line.iter().map(|cell| *cell == Cell::Ink).collect()).collect();
            return Ok(found(&picture));
        };
        for guess in [Cell::Ink, Cell::Blank] {
            let mut tried = grid.clone();
            tried[row][col] = guess;
            if !self.walk(tried, budget, found)? {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Fills in what follows line by line; false when a line cannot be filled.
    fn settle(&self, grid: &mut [Vec<Cell>]) -> bool {
        loop {
            let mut more = false;
            for (line, runs) in grid.iter_mut().zip(&self.rows) {
                match settle_line(line, runs) {
                    Some(changed) => more |= changed,
                    None => return false,
                }
            }
            for (col, runs) in self.cols.iter().enumerate() {
                let mut line: Vec<Cell> = grid.iter().map(|row| row[col]).collect();
                match settle_line(&mut line, runs) {
                    Some(changed) => more |= changed,
                    None => return false,
                }
                for (row, cell) in grid.iter_mut().zip(line) {
                    row[col] = cell;
                }
            }
            if !more {
                return true;
            }
        }
    }
}

/// Fills in the cells that are the same in every way to lay the runs into a line. Whether it filled any; none
/// when there is no way.
fn settle_line(line: &mut [Cell], runs: &[usize]) -> Option<bool> {
    let runs: Vec<usize> = runs.iter().copied().filter(|run| *run > 0).collect();
    let (n, m) = (line.len(), runs.len());
    if m > n || runs.iter().any(|run| *run > n) {
        return None;
    }
    let blank = |at: usize| line[at] != Cell::Ink;
    let ink = |from: usize, to: usize| line[from..to].iter().all(|cell| *cell != Cell::Blank);

    // before[i][j]: the first i cells can hold exactly the first j runs; after[i][j]: the cells from i on can
    // hold exactly the runs from j on.
    let mut before = vec![vec![false; m + 1]; n + 1];
    let mut after = vec![vec![false; m + 1]; n + 1];
    before[0][0] = true;
    after[n][m] = true;
    for i in 1..=n {
        for j in 0..=m {
            let mut can = blank(i - 1) && before[i - 1][j];
            if let Some(run) = j.checked_sub(1).map(|last| runs[last])
                && run <= i
                && ink(i - run, i)
            {
                can |= if run == i { before[0][j - 1] } else { blank(i - run - 1) && before[i - run - 1][j - 1] };
            }
            before[i][j] = can;
        }
    }
    for i in (0..n).rev() {
        for j in 0..=m {
            let mut can = blank(i) && after[i + 1][j];
            if let Some(run) = runs.get(j)
                && i + run <= n
                && ink(i, i + run)
            {
                let end = i + run;
                can |= if end == n { after[n][j + 1] } else { blank(end) && after[end + 1][j + 1] };
            }
            after[i][j] = can;
        }
    }
    if !before[n][m] {
        return None;
    }
    let mut may_ink = vec![false; n];
    for (j, run) in runs.iter().enumerate() {
        for start in 0..=n.saturating_sub(*run) {
            let end = start + run;
            let fits = end <= n
                && ink(start, end)
                && (if start == 0 { before[0][j] } else { blank(start - 1) && before[start - 1][j] })
                && (if end == n { after[n][j + 1] } else { blank(end) && after[end + 1][j + 1] });
            if fits {
                may_ink[start..end].fill(true);
            }
        }
    }
    let may_blank: Vec<bool> = (0..n).map(|i| blank(i) && (0..=m).any(|j| before[i][j] && after[i + 1][j])).collect();
    let mut changed = false;
    for i in 0..n {
        let told = match (may_ink[i], may_blank[i]) {
            (true, false) => Cell::Ink,
            (false, true) => Cell::Blank,
            (false, false) => return None,
            (true, true) => continue,
        };
        changed |= line[i] != told;
        line[i] = told;
    }
    Some(changed)
}
