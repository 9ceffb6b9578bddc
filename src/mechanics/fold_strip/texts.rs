//! What it says: help, hints, and how guests get to the answer.

use super::{STRIP, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A strip carries digits whose upper and lower halves stand apart, with a band between them. Guests fold the band away \
behind the strip, so that its two dashed lines meet; the halves then join to digits, read from left to right. The answer \
must be digits, at most ten.

## Setup
- `band`: what stands on the band. `Strokes`: lines that lead astray, chosen so that nothing on the open strip is a \
digit. `Empty`: nothing, for small children; then some halves may be digits by themselves.

## Example
(
    band: Empty,
)

## Traps
- An open strip whose halves are digits already: half an 8 is a small 0, half a 1 is a 1, the upper half of a 7 a small \
7. If a whole row of halves can be set on the lock, there are several readings.
- A band whose strokes lengthen a figure to the same or another tall digit.
- Halves that make no digit when they meet.";

/// The order rule, as the strip prints it.
pub(super) const RULE: &str = "Fold the band behind, dashes on dashes; then read to the right.";

pub(super) fn strip<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STRIP, "the strip to fold")
}

pub(super) fn prep(cx: &Dressing<'_>) -> Vec<PrepStep> {
    vec![PrepStep {
        key: "cut",
        what: format!(
            "Print {} on plain paper, which folds sharply, and cut it out. Do not fold it: that is for the guests.",
            strip(cx)
        ),
        needs: vec![Need { material: "plain-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
        hands: 2.0,
        wait: 0.0,
        after: Vec::new(),
    }]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "{} carries {} figures cut in half. Its two dashed lines are brought together, and the band between them, folded at the \
         dots, goes behind. Upper and lower halves then meet as digits, which are read from left to right.",
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
        nudge: format!("Nothing on {strip} is whole. The dashed lines are there to be folded."),
        method: format!(
            "What is in the middle of {strip} is in the way: fold it so that the two dashed lines lie on each other."
        ),
        giveaway: format!(
            "Crease {strip} along both dashed lines and, the other way, along the dots between. Push the band behind until the \
             dashed lines meet. Each of the {} pairs of halves is now a digit: set them from left to right on {}.",
            view.figures.len(),
            cx.lock_name
        ),
    }
}
