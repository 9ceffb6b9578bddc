//! What it says: help, rules, hints, and how guests get to the answer.

use super::{By, TEXT, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A sheet holds a text in short lines. The first letters of its lines, or of its paragraphs, read downwards, spell the answer \
or, for an answer of digits, its number words from zero to nine.

## Setup
- `text`: your text; a line break begins a new line, an empty line a new paragraph. Empty: lines that are at hand.
- `by`: `lines` or `paragraphs`: whose first letters count.
- `bold`: whether those letters are set bold, which makes it easier.
- `state_rule`: whether the sheet says what to read.

## Example
(
    text: \"Six geese came over the hill at noon.\\nIn the barn nobody looked up.\\nXylophones had been asked for, not geese.\",
    by: lines,
    bold: false,
)

## Traps
- The lines are part of the puzzle: they are the same on every paper, and a line that is too long is refused, not broken.
- Number words that come about by accident in the first letters read as well; such a text is refused.
- With no rule stated a guest may try paragraphs, or the last letters of the lines.";

/// The order rule, as guests read it below the lines.
pub(super) const fn rule(by: By) -> &'static str {
    match by {
        By::Lines => "Only the first letter of each line counts. Read down, from the top line to the last.",
        By::Paragraphs => "Only the first letter of each paragraph counts. Read down, from the first to the last.",
    }
}

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(TEXT, "the sheet with the text")
}

/// What the letters are the first of: those that are stated, else those that spell something.
fn by(view: &View) -> By {
    view.rule.or(view.bold).unwrap_or(By::Lines)
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let by = by(view);
    let letters: Vec<String> = read::initials(&view.text, by).iter().map(char::to_string).collect();
    let of = if by == By::Lines { "lines" } else { "paragraphs" };
    format!(
        "On {} the first letters of the {of} are, from the top: {}. They spell the answer, a digit as its word.",
        name(cx),
        letters.join(" ")
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was marked on {}, or print it anew.", name(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let name = name(cx);
    let (each, edge) = match by(view) {
        By::Lines => ("line", "lines"),
        By::Paragraphs => ("paragraph", "paragraphs"),
    };
    HintLadder {
        nudge: format!("Somebody took care where the {edge} on {name} begin."),
        method: format!("Look down the left edge of {name}: one letter of each {each} matters."),
        giveaway: format!(
            "{}: write down the first letter of each {each} in a row, from the top. Part the row into words, and set on {} \
             what they mean.",
            capital(name),
            cx.lock_name
        ),
    }
}
