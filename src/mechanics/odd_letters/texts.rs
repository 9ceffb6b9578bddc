//! What it says: help, rule, hints, and how guests get to the answer.

use super::{STORY, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A card holds a short text. A few of its letters are set differently; in reading order they spell the answer, or, for an \
answer of digits, its number words.

## Setup
- `text`: the text, with enough of the letters that the answer needs, in order; left out, one that is at hand.
- `style`: `bold`, `italic` or `both`: how the odd letters are set.
- `state_rule`: whether the card says that some letters are odd and to read them in order.

## Example
(
    text: \"Nobody in the town had seen the owl since the first snow, and yet every morning there were crumbs on the sill, and \
tracks of two small feet that led to the window and never away from it.\",
    style: bold,
)

## Traps
- Emphasis of your own in the text would be read as odd letters and is refused.
- Letters set differently in two ways may be read all together, or those of one kind alone.
- Sloping letters alone are hard to see in print, and get a remark.
- A spoken answer may be taken as number words or as letters.";

/// The order rule, as guests read it on the card.
pub(super) const RULE: &str = "Some letters are not like the others. Read them in order.";

pub(super) fn story<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STORY, "the card with the text")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let letters: Vec<String> = view.odd().map(|(letter, _)| letter.to_string()).collect();
    format!(
        "In {} these letters are set differently, in reading order: {}. They spell the answer, a digit as its \
         word.",
        story(cx),
        letters.join(" ")
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was marked on {}, or print it anew.", story(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let story = story(cx);
    HintLadder {
        nudge: format!("Hold {story} under a good light and look at it, rather than read it."),
        method: format!("{} has letters that are set unlike their neighbours. Mark them.", capital(story)),
        giveaway: format!(
            "Go through {story} line by line. Write down every letter that is heavier or slopes, one after another, and part \
             them into words; set that on {}.",
            cx.lock_name
        ),
    }
}
