//! What it says: help, hints, and how guests get to the answer.

use super::{STRIPS, View, read};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
The digits or letters of the answer stand side by side as one picture, each at a height of its own. The picture is cut \
level into strips, which are mixed. Laid in order, they show the answer again. The answer is digits, or letters A to Z, \
at most six.

The picture is cut so that only one order shows signs that the lock can be set to. A sign counts as such wherever it \
stands and however long its upright strokes come out.

Each strip bears a letter, so that hints and the host's answers can name it; the letters tell nothing of the order.

## Setup
- `work`: `Light` (5 strips), `Fair` (7) or `Deep` (9).
- `arrows`: whether an arrowhead on each strip points up. Without it guests must find out as well which way up a strip \
lies.

## Example
(
    work: Deep,
    arrows: true,
)

## Traps
- Two orders that both show digits: several readings.
- Without arrowheads, a picture that reads on its head as well: 6 as 9, and 2 or 5 as themselves.
- Strips that look like one another, or the same upside down, get a remark.";

/// The order rule, as the card prints it.
pub(super) fn rule(view: &View) -> String {
    let ends = if view.arrows { "Each arrowhead points up" } else { "Some of them are upside down" };
    format!(
        "These {} strips were one picture. Lay them one below the next, with no gaps and with their left ends in line. {ends}. \
         Change their order till you see whole letters or digits. Read them from left to right. The small letters just name \
         the strips.",
        view.strips.len()
    )
}

fn strips<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STRIPS, "the strips")
}

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    vec![PrepStep {
        key: "cut",
        what: format!(
            "Cut {} apart exactly along their lines: there are {}. Mix them, and put a clip or a band round them if they are to \
             stay together.",
            strips(cx),
            view.strips.len()
        ),
        needs: vec![Need { material: "card-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
        hands: 2.0,
        wait: 0.0,
        after: Vec::new(),
    }]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "There is one order in which the {} pieces of {} show whole signs. Level strokes tell most: they must not come out \
         thicker or thinner than elsewhere, and every stroke goes on below the cut.{} Laid so, the picture is read from left \
         to right.",
        view.strips.len(),
        strips(cx),
        read::in_order(view, cx.lock).map_or_else(String::new, |order| format!(" From the top: {order}."))
    )
}

pub(super) fn reset(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Count {}: there are {}. Mix them and put them back with nothing written on them.",
        strips(cx),
        view.strips.len()
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let strips = strips(cx);
    let turn = if view.arrows { "with every arrowhead up" } else { "and turn those that stand on their heads" };
    HintLadder {
        nudge: format!("{} belong together: what is cut off on one goes on along another.", capital(strips)),
        method: format!(
            "Lay {strips} below one another, {turn}. Begin with one that has an empty stretch at its top, and look for strokes \
             that go on across the cut."
        ),
        giveaway: match read::in_order(view, cx.lock) {
            Some(order) => format!(
                "Lay {strips} in this order, from the top: {order}. Read the picture from left to right and set it on {}.",
                cx.lock_name
            ),
            None => format!(
                "Take one place across {strips} at a time. Its sign needs a top, a middle and a foot, and each level \
                 stroke is as thick as any other. Read the picture from left to right and set it on {}.",
                cx.lock_name
            ),
        },
    }
}
