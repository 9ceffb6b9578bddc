//! What it says: help, hints, and how guests get to the answer.

use super::{STRIP, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A strip carries digits whose left and right halves stand apart, with a pleat between them. Guests fold every pleat away \
behind the strip, so that its two dashed lines meet; the halves then join to digits, read from left to right. The answer \
must be digits, at most six.

## Setup
- `pleat`: what stands on the pleats. `Halves`: halves that lead astray, so that the open strip shows other digits or \
none. `Empty`: nothing, for small children.

## Example
(
    pleat: Empty,
)

## Traps
- An open strip that shows digits already, and as many of them as the lock has wheels: a further reading. `Halves` are \
chosen so that it cannot happen.
- A level bar that is there by half only leaves a choice: 1 or 7, 0 or 8.
- Halves that make no digit when they meet.";

/// The order rule, as the strip prints it.
pub(super) const RULE: &str = "Tuck the dotted lines back till the dashed lines meet. Read left to right.";

pub(super) fn strip<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STRIP, "the strip to fold")
}

pub(super) fn prep(cx: &Dressing<'_>) -> Vec<PrepStep> {
    vec![PrepStep {
        key: "cut",
        what: format!(
            "Leave {} flat: it is printed on plain paper, which folds sharply, and the folding is for the guests.",
            strip(cx)
        ),
        needs: vec![Need { material: "plain-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
        hands: 0.5,
        wait: 0.0,
        after: Vec::new(),
    }]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "{} carries {} digits cut in half. Each pair of dashed lines is brought together; the paper between them, folded at the \
         dots, goes behind. Left and right halves then meet as digits, which are read from left to right.",
        capital(strip(cx)),
        view.figures.len()
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Put out a fresh print of {}: creases tell the next group where to fold.", strip(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let strip = strip(cx);
    HintLadder {
        nudge: format!("Much of what stands on {strip} is in the way. The dashed lines are there to be folded."),
        method: format!(
            "Fold {strip} so that a dashed line comes to lie on the next one, and what is between them goes behind. There are {} \
             such pleats.",
            view.figures.len()
        ),
        giveaway: format!(
            "Crease {strip} along all dashed lines backwards and along the dotted lines forwards. Push every pleat behind until \
             dashes meet dashes. Each of the {} pairs of halves in front is now a digit: set them from left to right on {}.",
            view.figures.len(),
            cx.lock_name
        ),
    }
}
