//! What it says: help, hints, and how guests get to the answer.

use super::{ORDER, SHEET, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::work::counted;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of panels")
}

/// The rule of the grids, as the sheet prints it.
pub(super) fn rule(view: &View) -> String {
    let given =
        if view.panels.iter().any(|panel| !panel.given.is_empty()) { " Some cells are filled for you." } else { "" };
    format!("{RULE}{given} Each panel shows {}.", view.shows.one())
}

const RULE: &str = "The numbers by a row or column tell how many cells to fill there. Each number is one run with no gap. The runs come \
     in the order of the numbers, with one or more blank cells in between. For a 0 fill none.";

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Guests fill the cells of {} as the numbers beside and above them say. Each of the {} then shows one {}. {ORDER}",
        name(cx),
        counted(view.panels.len(), "panel"),
        view.shows.word()
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    let widest = view.panels.first().map_or(0, |panel| panel.cols.len());
    HintLadder {
        nudge: format!("The empty cells of {sheet} want to be filled: each panel hides a picture."),
        method: format!(
            "Begin {sheet} with the rows and columns whose numbers are large: in a row of {widest} cells, a long run must \
             cover the middle, wherever it starts. Mark cells that stay empty with a dot."
        ),
        giveaway: format!(
            "Work through every row and every column of {sheet} in turn and fill what its numbers force. Each panel then \
             shows {}. Take the panels by their numbers and set the {}s on {}.",
            view.shows.one(),
            view.shows.word(),
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
A sheet carries a numbered panel for each digit, letter or direction of the answer. The numbers beside its rows and above its columns tell \
how long the runs of filled cells are. Filled, each panel shows a digit, or each a letter, or, for a lock with directions, each an arrow; the sheet says which. \
The answer must be digits only, or letters A to Z only, or directions.

## Setup
- `shape`: how they are drawn. `Thin`: lines one cell wide, 5 by 7 cells. `Thick`: lines two cells wide, 7 by 9 \
cells, which takes about twice as long.
- `margin`: blank rows and columns by which a panel is larger than its symbol, 0 to 4; the symbol stands anywhere in \
it, so that the first row is not a gift.
- `work`: `Light`: every third inked cell is filled from the start. `Fair`: none is. `Deep`: the panels are two lines larger, \
and of several places for the symbols those that take the most looks.

## Example
(
    shape: Thick,
    margin: 2,
)

## Traps
- Numbers that allow a second picture: if it looks like another symbol, several readings; else a remark.
- A picture that looks like no digit, letter or arrow, or is two cells off two of them.
- A panel that cannot be filled line by line needs a guess, and gets a remark.";
