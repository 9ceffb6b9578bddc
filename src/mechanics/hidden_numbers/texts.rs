//! What it says: help, rule, hints, and how guests get to the answer.

use super::{STORY, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A card holds a short text. Number words from zero to nine hide in it: each begins in one word and ends in the next, as \
zero does in \"froze roads\". In reading order they are the digits of the answer.

## Setup
- `text`: your text, in which exactly the answer hides; empty: sentences that are at hand, two for each digit.
- `state_rule`: whether the card says that number words run across the gaps, in reading order.

## Example
(
    text: \"The lamp burned on every stair. The roof of our tower shook, and nobody had sent word.\",
    state_rule: true,
)

## Traps
- A number word that comes about by accident anywhere in the text is read as well; such a text is refused with its places.
- With no rule stated, words such as \"money\" and \"stone\" count too.
- Two number words that share letters may be taken for one of the two.
- Other languages have other number words: the text is English.";

/// The order rule, as guests read it on the card.
pub(super) const RULE: &str =
    "Number words, zero to nine, run across the gaps between words. Take them in reading order.";

pub(super) fn story<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STORY, "the card with the text")
}

/// The places across gaps, in reading order.
fn places(view: &View) -> Vec<read::Found> {
    read::find(&view.text).into_iter().filter(|found| found.across).collect()
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let steps: Vec<String> = places(view).iter().map(|found| format!("{} in “{}”", found.digit, found.place)).collect();
    format!("In {} number words run across the gaps: {}.", story(cx), steps.join(", "))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was underlined on {}, or print it anew.", story(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let story = story(cx);
    let places: Vec<String> = places(view).iter().map(|found| format!("“{}”", found.place)).collect();
    HintLadder {
        nudge: format!("{} is less interesting for what it tells than for its letters.", capital(story)),
        method: format!("Read {story} as if there were no gaps between its words. Some of its letters make numbers."),
        giveaway: format!("Look closely at these words, in this order: {}. Each hides one number.", places.join(", ")),
    }
}
