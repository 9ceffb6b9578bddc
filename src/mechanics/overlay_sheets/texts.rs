//! What it says: help, hints, and how guests get to the answer.

use super::{OVER, UNDER};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
Two sheets of dots, neither of which tells anything. Laid on one another, mark on mark, they show the digits of the \
answer: dark on grey. One of the two must be clear. The answer must be digits, at most six.

After Naor and Shamir, \"Visual cryptography\" (EUROCRYPT '94): every point is a block of four cells with two dark ones \
on each sheet, so a sheet alone is pure chance.

## Setup
- `large`: whether the sheets are as large as a board, with two digits in a row and cells of two to four millimetres; else they are cards with \
cells of little over a millimetre, for at most five digits, which take a steady hand.

## Example
(
    large: false,
)

## Traps
- Cells under a millimetre cannot be laid true by hand; such an answer is refused. At 94 % print scale cells are still a \
millimetre.
- Both sheets must be printed at one scale and on one printer, best in one go: otherwise they do not fit. Print one on \
clear film made for your printer. Stand-in: tracing paper, held with the other sheet against a window by day.
- A block with more or fewer than two dark cells shows through on one sheet alone.
- Digits that also stand out with the clear sheet turned round get a remark.";

/// The order rule, as the paper sheet prints it.
pub(super) const RULE: &str =
    "Lay the clear sheet on this one, cross on cross and black spot on black spot. Read row by row, left to right.";

fn under<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(UNDER, "the paper sheet of dots")
}

fn over<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(OVER, "the clear sheet of dots")
}

pub(super) fn prep(cx: &Dressing<'_>) -> Vec<PrepStep> {
    let (under, over) = (under(cx), over(cx));
    vec![
        PrepStep {
            key: "print",
            what: format!(
                "Print {under} on paper and {over} on clear film made for your printer, both at the same scale; let the film \
                 dry as its maker says."
            ),
            needs: vec![Need { material: "plain-paper", amount: 1.0 }, Need { material: "printer-film", amount: 1.0 }],
            hands: 4.0,
            // Ink on film dries slowly (common practice, no source).
            wait: 15.0,
            after: Vec::new(),
        },
        PrepStep {
            key: "cut",
            what: format!(
                "Lay {over} on {under}, cross on cross, and look that the digits stand out. Then keep the two \
                 apart."
            ),
            needs: vec![Need { material: "scissors", amount: 1.0 }],
            hands: 2.0,
            wait: 0.0,
            after: vec!["print"],
        },
    ]
}

pub(super) fn reason(cx: &Dressing<'_>) -> String {
    format!(
        "{} is laid on {}, cross on cross and black spot on black spot. Where a digit is, the dots of one fill the gaps of the \
         other; elsewhere half of the cells stay light. The dark digits are read row by row, from left to right.",
        capital(over(cx)),
        under(cx)
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has traced the digits on {} and {}.", under(cx), over(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (under, over) = (under(cx), over(cx));
    HintLadder {
        nudge: format!("{} can be seen through. What could be worth seeing under it?", capital(over)),
        method: format!("{} and {over} have the same marks in their corners: lay one on the other.", capital(under)),
        giveaway: format!(
            "Lay {over} flat on {under} with the black spots at the upper left on one another, and shift it by hairs until all \
             four crosses meet. Dark digits stand out: set them row by row on {}.",
            cx.lock_name
        ),
    }
}
