//! The words as a person looks for them.

use super::View;
use crate::mechanics::work::{Work, at_places, counted};
use crate::readings::occurrences::{DIRECTIONS, cells_from, placements};
use crate::script::capital;
use std::collections::{BTreeMap, BTreeSet};

/// Words, the directions in which they run, their crossings, and the places that begin like a word and go on
/// otherwise.
///
/// A word counts 1 when it runs to the right or straight down, 2 when it runs aslant or backwards, 3 when both; a
/// false start of two letters counts 1 (the weights are our estimate).
pub(super) fn work(view: &View) -> Option<Work> {
    let grid = view.grid();
    let cols = grid.iter().map(Vec::len).max().unwrap_or(0);
    if grid.is_empty() || cols == 0 {
        return None;
    }
    let letter = |(row, col): (usize, usize)| grid.get(row).and_then(|line| line.get(col)).copied();
    let (mut effort, mut false_starts) = (0, 0);
    let mut ways = BTreeSet::new();
    let mut covered: BTreeMap<(usize, usize), usize> = BTreeMap::new();
    for word in &view.words {
        let letters: Vec<char> = word.chars().collect();
        let found = placements(&grid, &letters);
        for hit in &found {
            let (down, right) = DIRECTIONS[hit.direction];
            let (aslant, backwards) = (down != 0 && right != 0, right < 0 || (right == 0 && down < 0));
            effort += 1 + usize::from(aslant) + usize::from(backwards);
            ways.insert(hit.direction);
            hit.cells.iter().for_each(|cell| *covered.entry(*cell).or_default() += 1);
        }
        let [first, second, ..] = letters.as_slice() else { continue };
        for start in (0..grid.len()).flat_map(|row| (0..cols).map(move |col| (row, col))) {
            for direction in 0..DIRECTIONS.len() {
                let Some(cells) = cells_from(start, direction, 2, grid.len(), cols) else { continue };
                let begins = letter(cells[0]) == Some(*first) && letter(cells[1]) == Some(*second);
                let real = found.iter().any(|hit| hit.start == start && hit.direction == direction);
                false_starts += usize::from(begins && !real);
            }
        }
    }
    let crossings = covered.values().filter(|words| **words > 1).count();
    let says = format!(
        "The {} run in {}{}.{}",
        counted(view.words.len(), "word"),
        counted(ways.len(), "direction"),
        match crossings {
            0 => String::new(),
            1 => " and share one letter".to_owned(),
            _ => format!(" and share {crossings} letters"),
        },
        match false_starts {
            0 => String::new(),
            _ => format!(" {} a word seems to begin where none is.", capital(&at_places(false_starts))),
        },
    );
    Some(Work::new(effort + false_starts, says))
}
