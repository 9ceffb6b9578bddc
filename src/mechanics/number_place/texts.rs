//! What it says: help, hints, and how guests get to the answer.

use super::{SHEET, View};
use crate::kit::HintLadder;
use crate::limits;
use crate::mechanics::work::{Work, counted};
use crate::mechanics::{Dressing, paper};
use crate::readings::Budget;
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the number grid")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let rules = view.rules();
    format!("{} has one solution. {} {}", capital(name(cx)), rules[0], rules[1])
}

pub(super) fn work(view: &View) -> Option<Work> {
    let givens = view.givens();
    let steps = view.places()?.steps(&givens);
    let given = givens.iter().flatten().count();
    let deeper = match (steps.crossed, steps.tried, steps.open) {
        (0, 0, 0) => "and it takes no guess".to_owned(),
        (crossed, 0, 0) => format!("and {} at two lines together", counted(crossed, "look")),
        (crossed, tried, 0) => {
            format!("{} at two lines together and {}", counted(crossed, "look"), counted(tried, "trial"))
        }
        (_, _, open) => format!("and {} that only long trials settle", counted(open, "cell")),
    };
    let only = match steps.only_cell {
        0 => String::new(),
        many => format!(", {many} because a symbol can stand in no other cell of its row, column or box"),
    };
    let says = format!(
        "{} of {} are given. {} are filled because one symbol is left for them{only}, {deeper}.",
        given,
        counted(givens.len(), "cell"),
        steps.only_value,
    );
    Some(Work::new(steps.weight(), says))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let grid = name(cx);
    let marks = paper::place_letters(view.marks.len());
    HintLadder {
        nudge: format!("{} can be filled by thinking alone. Take a pencil.", capital(grid)),
        method: format!(
            "No row, no column and no box of {grid} may hold the same symbol twice. Start with the row, column or box \
             that has the most filled cells."
        ),
        giveaway: format!(
            "Fill {grid}: cross out in each empty cell what its row, column and box hold, until one symbol is left, or a \
             symbol has one cell left in its row, column or box.{} Then set cells {marks}, in that order, on {}.",
            gift(view).unwrap_or_default(),
            cx.lock_name
        ),
    }
}

/// A cell to be told where single deductions do not lead to the end: the one that helps most, and none that is marked.
fn gift(view: &View) -> Option<String> {
    let (places, givens) = (view.places()?, view.givens());
    if places.deduce(&givens).open == 0 {
        return None;
    }
    let found = places.solutions(&givens, 2, &mut Budget::new(limits::GRID_STEPS)).ok()?;
    let [full] = found.as_slice() else { return None };
    let marked = |cell: usize| view.marks.iter().any(|(row, col)| row * places.size + col == cell);
    let empty = givens.iter().zip(full).enumerate().filter(|(cell, (given, _))| given.is_none() && !marked(*cell));
    let left = |(cell, value): &(usize, usize)| {
        let mut told = givens.clone();
        if let Some(place) = told.get_mut(*cell) {
            *place = Some(*value);
        }
        places.deduce(&told).open
    };
    let (cell, value) = empty.map(|(cell, (_, value))| (cell, *value)).min_by_key(left)?;
    let (row, col) = (cell / places.size + 1, cell % places.size + 1);
    Some(format!(" Row {row}, column {col} holds {}.", view.symbols.get(value)?))
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
