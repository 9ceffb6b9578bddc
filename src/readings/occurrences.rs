//! Word searches: where a word stands in a square of letters, in the eight directions.

use std::collections::BTreeSet;

/// Steps of the eight directions, row and column: N, NE, E, SE, S, SW, W, NW.
pub const DIRECTIONS: [(isize, isize); 8] = [(-1, 0), (-1, 1), (0, 1), (1, 1), (1, 0), (1, -1), (0, -1), (-1, -1)];

/// A word where it stands.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Hit {
    /// Row and column of the first letter.
    pub start: (usize, usize),
    /// Which of [`DIRECTIONS`].
    pub direction: usize,
    /// Its cells, from the first letter to the last.
    pub cells: Vec<(usize, usize)>,
}

/// The cells from a start in a direction, as long as they stay within `rows` and `cols`.
pub fn cells_from(
    start: (usize, usize),
    direction: usize,
    length: usize,
    rows: usize,
    cols: usize,
) -> Option<Vec<(usize, usize)>> {
    let (down, right) = *DIRECTIONS.get(direction)?;
    let mut cells = Vec::new();
    let mut at = Some(start);
    for _ in 0..length {
        let (row, col) = at.filter(|(row, col)| *row < rows && *col < cols)?;
        cells.push((row, col));
        at = row.checked_add_signed(down).zip(col.checked_add_signed(right));
    }
    Some(cells)
}

/// Every place and direction in which the letters stand. A word of one letter stands in no direction.
#[must_use]
pub fn hits(grid: &[Vec<char>], word: &[char]) -> Vec<Hit> {
    let mut hits = Vec::new();
    if word.len() < 2 {
        return hits;
    }
    let cols = grid.iter().map(Vec::len).max().unwrap_or(0);
    for row in 0..grid.len() {
        for col in 0..cols {
            for direction in 0..DIRECTIONS.len() {
                let Some(cells) = cells_from((row, col), direction, word.len(), grid.len(), cols) else {
                    continue;
                };
                let letter = |(row, col): &(usize, usize)| grid.get(*row).and_then(|line| line.get(*col));
                if cells.iter().zip(word).all(|(cell, wanted)| letter(cell) == Some(wanted)) {
                    hits.push(Hit { start: (row, col), direction, cells });
                }
            }
        }
    }
    hits
}

/// The hits that cover different cells: a word that reads the same both ways stands once.
#[must_use]
pub fn placements(grid: &[Vec<char>], word: &[char]) -> Vec<Hit> {
    let mut seen = BTreeSet::new();
    let mut placements = hits(grid, word);
    placements.retain(|hit| {
        let mut cells = hit.cells.clone();
        cells.sort_unstable();
        seen.insert(cells)
    });
    placements
}
