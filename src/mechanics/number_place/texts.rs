//! What it says: help, hints, and how guests get to the answer.

use super::{SHEET, View};
use crate::kit::HintLadder;
use crate::limits;
use crate::mechanics::work::{Work, counted, times};
use crate::mechanics::{Dressing, paper};
use crate::readings::Budget;
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the number grid")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let rules = view.rules();
    format!("Guests fill in {}; there is one way to do it. {} {}", name(cx), rules[0], rules[1])
}

pub(super) fn work(view: &View) -> Option<Work> {
    let givens = view.givens();
    let steps = view.places()?.steps(&givens);
    let given = givens.iter().flatten().count();
    let deeper = match (steps.crossed, steps.tried, steps.open) {
        (0, 0, 0) => " The rest can be filled in one after another, without a guess.".to_owned(),
        (crossed, 0, 0) => {
            format!(" The rest takes no guess, but guests must look at two lines together {}.", times(crossed))
        }
        (_, tried, 0) => {
            format!(" Guests must suppose a symbol and see whether it can be so {}.", times(tried))
        }
        (_, _, open) => format!(" {} can be filled only by trying for long.", capital(&counted(open, "cell"))),
    };
    let says = format!("{given} of the {} are filled in already.{deeper}", counted(givens.len(), "cell"));
    Some(Work::new(steps.weight(), says))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let grid = name(cx);
    let marks = paper::place_letters(view.marks.len());
    let most = || "Start with the row, column or box that has the most filled cells.".to_owned();
    let begin = first(view).unwrap_or_else(most);
    let rest = marked_rows(view).unwrap_or_else(|| {
        format!(
            "Fill {grid}: cross out in each empty cell what its row, column and box hold, until one symbol is left, or a \
             symbol has one cell left in its row, column or box."
        )
    });
    HintLadder {
        nudge: format!("{} can be filled by thinking alone. Take a pencil.", capital(grid)),
        method: format!("No row, no column and no box of {grid} may hold the same symbol twice. {begin}"),
        giveaway: format!("{rest} Then set cells {marks}, in that order, on {}.", cx.lock_name),
    }
}

/// Where to begin: an empty cell, not a marked one, whose row, column and box leave it a single symbol; the one that sees
/// the most filled cells in its row.
fn first(view: &View) -> Option<String> {
    let (places, givens) = (view.places()?, view.givens());
    let marked = |cell: usize| view.marks.iter().any(|(row, col)| row * places.size + col == cell);
    let single = |cell: &usize| {
        let seen = |value: &usize| {
            (0..givens.len()).any(|at| places.see_each_other(*cell, at) && givens.get(at) == Some(&Some(*value)))
        };
        givens.get(*cell) == Some(&None) && !marked(*cell) && (0..places.size).filter(|value| !seen(value)).count() == 1
    };
    let cell = (0..givens.len()).find(single)?;
    let (row, col) = (cell / places.size + 1, cell % places.size + 1);
    Some(format!("Begin in row {row} from the top, column {col} from the left: only one symbol fits there."))
}

/// The rows that hold marked cells, filled but for these; none where they are not certain, or would tell the code by chance.
fn marked_rows(view: &View) -> Option<String> {
    let (places, givens) = (view.places()?, view.givens());
    let found = places.solutions(&givens, 2, &mut Budget::new(limits::GRID_STEPS)).ok()?;
    let [full] = found.as_slice() else { return None };
    let symbol = |row: usize, col: usize| view.symbols.get(*full.get(row * places.size + col)?);
    let code = view.marks.iter().map(|(row, col)| symbol(*row, *col)).collect::<Option<String>>()?;
    let mut rows: Vec<usize> = view.marks.iter().map(|(row, _)| *row).collect();
    rows.sort_unstable();
    rows.dedup();
    let mut told = Vec::new();
    for row in rows {
        let cells: Vec<String> = (0..places.size)
            .map(|col| match view.marks.iter().position(|mark| *mark == (row, col)) {
                Some(mark) => Some(paper::place_letter(mark).to_string()),
                None => symbol(row, col).map(char::to_string),
            })
            .collect::<Option<_>>()?;
        let line = cells.concat();
        if line.contains(&code) || line.chars().rev().collect::<String>().contains(&code) {
            return None;
        }
        told.push(format!("row {} is {}", row + 1, cells.join(" ")));
    }
    Some(format!("From the top, {}.", told.join("; ")))
}

pub(super) const HELP: &str = "\
## What it does
A grid is partly filled. Guests fill the rest so that every row, every column and every box holds each symbol once. \
Some cells carry a small letter a, b, c; read in that order, they give the answer. The grid is made by chance for the \
answer, and thinned out only as long as it has one solution.

## Setup
- `size`: rows of the grid: 4 (a few minutes), 6 or 9 (the longest).
- `symbols`: what the cells are filled with, as many as there are rows; empty: 1, 2, 3 and so on, or, where the answer \
has other digits or letters, those of the answer and some more of the lock.
- `givens`: how many cells are filled from the start; 0 or too few: as few as the work allows. More make it easier.
- `reasoning`: `Single`: one look at a row, column and box at a time leads to the end, without a guess. `Any`: one \
solution, however hard to find.
- `work`: `Light`: three cells of five are given. `Fair`: as few as the reasoning allows. `Deep`: of several such grids the \
one that takes the most steps.
- `large`: prints a grid of 4 or 6 rows on a whole board, for a group round a table; 9 rows always are.

## Example
(
    size: 6,
    givens: 16,
    reasoning: Single,
    work: Light,
)

## Traps
- A second solution in which a marked cell differs: several readings. One that differs elsewhere is remarked.
- A grid that single deductions do not finish is remarked: children stop there.
- An answer with more different symbols than the grid has rows is refused.";
