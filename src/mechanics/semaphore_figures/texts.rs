//! What it says: help, rules, hints, and how guests get to the answer.

use super::{CARD, KEY_CARD, View, after_sign};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::signs;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A card shows a row of figures with two flags each; a key card, found elsewhere, gives the letter or digit for each pair \
of arms. Arms are those of flag semaphore, drawn as one sees a signaller who faces one. The answer is digits, or letters \
A to Z. In the code itself digits borrow the arms of A to I and K and come after a sign of their own.

## Setup
- `text`: a line above the figures; empty for none.
- `say_front`: whether both cards say that the figures are seen from the front.
- `say_order`: whether the card says to read from left to right.
- `numeral_sign`: whether the sign that numerals follow stands before digits, and the card says so.
- `key`: `fitting` (digits or letters, as the answer has) or `both`.

## Example
(
    text: \"Seen from the tower at dusk:\",
    say_front: true,
    key: fitting,
)

## Traps
- With nothing said, a guest may take the figures as seen from behind: left and right change places, and most digits \
read as other digits.
- With no order said, the row may be read from the right.
- Digits and letters share arms: with both on the key and no numeral sign, a spoken answer reads two ways.";

/// The order rule, as guests read it on the card.
pub(super) fn rule(view: &View) -> String {
    let mut rules: Vec<&str> = Vec::new();
    match (view.say_order, view.say_front) {
        (true, true) => rules.push("Read from left to right. You see them all from the front, as on the other card."),
        (true, false) => rules.push("Read from left to right."),
        (false, true) => rules.push("You see them all from the front, as on the other card."),
        (false, false) => {}
    }
    if after_sign(&view.figures).0 {
        rules.push("The first only says: digits follow.");
    }
    rules.join(" ")
}

pub(super) fn card<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CARD, "the card of signallers")
}

pub(super) fn key<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(KEY_CARD, "the key card")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let (numbers, figures) = after_sign(&view.figures);
    let first = if numbers { " The first figure says that digits follow." } else { "" };
    format!(
        "The figures on {} are read from left to right, as seen from the front.{first} By {}, {}.",
        card(cx),
        key(cx),
        signs::steps(figures, &view.key_for(numbers))
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has written on {} and {}.", card(cx), key(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (card, key) = (card(cx), key(cx));
    let first = if after_sign(&view.figures).0 { " The first figure gives no digit of its own." } else { "" };
    HintLadder {
        nudge: format!("{} shows people at work: each of them holds the arms in another way.", capital(card)),
        method: format!("Look for the arms of each figure on {key}. You face the figures, and they face you."),
        giveaway: format!(
            "Go from left to right.{first} Find each pair of arms on {key}, write down what stands beside it, and set \
             that on {}.",
            cx.lock_name
        ),
    }
}
