//! What it says: help, hints, and how guests get to the answer.

use super::{LEGEND, ROW, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::signs;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A card shows a row of the theme's pictures; a legend, found elsewhere, gives each picture a digit or letter. The answer \
is digits, or letters A to Z, and has no more different ones than there are pictures.

## Setup
- `text`: a line above the row; empty for none.
- `pictures`: the theme's symbols that stand in the legend, first to last; empty: ten of them by chance.
- `start_mark`: whether an arrowhead stands before the first picture, and the card says to begin there.

## Example
(
    text: \"Left in the snow by the door:\",
    pictures: [],
    start_mark: true,
)

## Traps
- Without a start mark the row may be read from the right as well.
- Two pictures that look alike in grey at print size are refused when the pieces are made.
- A legend that gives one picture two digits leaves a choice; a picture that it lacks is remarked.
- A picture that also marks a lock may be taken for that mark.";

/// The order rule, as guests read it on the card.
pub(super) const RULE: &str = "Start at the arrowhead. Read from left to right.";

pub(super) fn row<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(ROW, "the row of pictures")
}

pub(super) fn legend<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(LEGEND, "the legend")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "{} shows, from left to right: {}. By {}, {}.",
        capital(row(cx)),
        view.row.join(", "),
        legend(cx),
        signs::steps(&view.row, &view.legend)
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has written on {} and {}.", row(cx), legend(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (row, legend) = (row(cx), legend(cx));
    HintLadder {
        nudge: format!("{} and {legend} lie in different places, but show the same pictures.", capital(row)),
        method: format!("Every picture on {legend} stands beside a sign for the lock. Use it to read {row}."),
        giveaway: format!(
            "Begin at the arrowhead and take the pictures from left to right. Find each on {legend}, write down what \
             stands beside it, and set that on {}.",
            cx.lock_name
        ),
    }
}
