//! What it says: help, rules, hints, and how guests get to the answer.

use super::read::{Counting, word, words};
use super::{LIST, TEXT, Take, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::fixed::Fixed;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A sheet holds a text. A list, found elsewhere, holds rows of three numbers: paragraph, line, and word in the line. Each row \
leads to a word. For an answer of digits the words are number words; for an answer of letters their first letters spell it.

## Setup
- `text`: your text; an empty line parts paragraphs. Empty: one that is at hand and holds every number word.
- `measure`: most characters of a line, 20 to 64; longer ones are broken, once and for all.
- `take`: `words`, `initials` or `lengths` (how many letters a word has); left out, words for digits and initials for letters. \
For an answer of digits, initials spell number words.
- `state_columns`: whether the list says which column is which.
- `state_counting`: whether the sheet says how titles, hyphens and signs count.
- `state_take`: whether the list says what to take of each word.

## Example
(
    text: \"We were seven at table, and six of us sang.\\n\\nOne did not, for she had four cakes to eat.\",
    measure: 30,
    take: Some(words),
)

## Traps
- The lines are part of the puzzle: they are the same on every paper.
- A title, a hyphen or a single dash that may count or not; with `state_counting` the sheet says which.
- Columns without names can be taken in six orders.
- A row that leads past the end of a line is remarked.";

/// How words are counted, as guests read it below the text.
pub(super) const COUNTING: &str = "To count here: leave out the title.";

/// The same, with what this text takes: hyphens and signs are named only where it has some.
pub(super) fn counting(text: &Fixed) -> String {
    let told = |counting| text.lines().any(|line| words(line, Counting::Stated) != words(line, counting));
    let more = match (told(Counting::Hyphens), told(Counting::Signs)) {
        (true, true) => " A word with a hyphen is one word, a sign alone is none.",
        (true, false) => " A word with a hyphen is one word.",
        (false, true) => " A sign alone is no word.",
        (false, false) => "",
    };
    format!("{COUNTING}{more}")
}

/// What is taken, as guests read it below the list; the foot of the frame takes about fifty letters.
pub(super) const fn take_rule(take: Take) -> &'static str {
    match take {
        Take::Words => "Take these words, from the top down.",
        Take::Initials => "Take their first letters, from the top down.",
        Take::Lengths => "Count their letters, from the top down.",
    }
}

pub(super) fn text<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(TEXT, "the sheet with the text")
}

pub(super) fn list<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(LIST, "the list of numbers")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let steps: Vec<String> = view
        .leads
        .iter()
        .map(|lead| {
            let [paragraph, line, place] = lead;
            let found = word(&view.text, *lead, Counting::Stated).unwrap_or_else(|| "nothing".into());
            format!("paragraph {paragraph}, line {line}, word {place} is “{found}”")
        })
        .collect();
    let take = view.take.map_or("what they say", Take::words);
    format!("{} leads to words on {}: {}. The lock wants {take}.", capital(list(cx)), text(cx), steps.join("; "))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was marked on {} and {}.", text(cx), list(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (text, list) = (text(cx), list(cx));
    HintLadder {
        nudge: format!("The numbers on {list} are not for a lock. They are for {text}."),
        method: format!("Each row of {list} names a paragraph of {text}, a line in it, and a word in that line."),
        giveaway: format!(
            "Take the rows of {list} from the top down. Count to the paragraph, then to the line, then to the word, and do with \
             the words what the list says. Set that on {}.",
            cx.lock_name
        ),
    }
}
