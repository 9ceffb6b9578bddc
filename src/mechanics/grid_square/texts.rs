//! What it says: help, rules, hints, and how guests get to the answer.

use super::{MESSAGE, Message, SQUARE, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::spelled::letters;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A square of five rows and five columns holds the letters; each row and column has a digit. For an answer of digits a word, \
found elsewhere, gives two digits for each letter: its row, then its column. For an answer of letters the card shows pairs \
of digits, and each pair gives a letter. An answer of digits must have an even number of them.

## Setup
- `word`: for an answer of digits, the word, half as long as the answer; empty: letters by chance.
- `text`: a line above the message; empty for none.
- `fill`: `shuffled` or `alphabet`: how the letters stand in the square.
- `share`: two letters that share a cell, as \"IJ\" do in the old square; empty: one letter is left out instead.
- `leave_out`: the letter left out where none share a cell.
- `headings`: `any` (whichever digits the answer needs) or `ordered`.
- `state_rule`: whether the card says that the row comes before the column.

## Example
(
    word: \"OWL\",
    text: \"Who sits on the weathervane?\",
    fill: shuffled,
    leave_out: 'Q',
)

## Traps
- With no rule stated a guest may take the column first.
- Letters that share a cell: a pair then gives either, if the lock can show both.
- A word longer than the lock takes may be cut at either end; one with a letter that is not in the square is remarked.";

/// The order rule for a word, as guests read it on the card.
pub(super) const WORD_RULE: &str =
    "Take the letters from left to right. For each, write the digit of its row, then the digit of its column.";
/// The order rule for pairs.
pub(super) const PAIR_RULE: &str = "Read from left to right. In each pair the row comes first, then the column.";

pub(super) fn square<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SQUARE, "the square of letters")
}

pub(super) fn message<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(MESSAGE, "the card with the message")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let (says, steps): (String, Vec<String>) = match &view.message {
        Message::Word(word) => {
            let step = |letter: char| {
                view.places(letter)
                    .first()
                    .map(|(row, column)| format!("{letter} stands in row {row}, column {column}"))
            };
            (word.clone(), letters(word).into_iter().filter_map(step).collect())
        }
        Message::Pairs(pairs) => {
            let step = |pair: &String| {
                let mut digits = pair.chars();
                let (row, column) = (digits.next()?, digits.next()?);
                view.cell(row, column).map(|cell| format!("row {row}, column {column} is {cell}"))
            };
            (pairs.join(", "), pairs.iter().filter_map(step).collect())
        }
    };
    format!("{} says {says}. On {}, {}.", capital(message(cx)), square(cx), steps.join("; "))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was written on {} and {}.", square(cx), message(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (square, message) = (square(cx), message(cx));
    let (method, giveaway) = match view.message {
        Message::Word(_) => (
            format!("Every letter on {square} stands in a row and in a column. Look up what {message} says."),
            "Take the letters from left to right. For each write down the digit of its row, then the digit of its column.",
        ),
        Message::Pairs(_) => (
            format!("Each pair on {message} names a row and a column of {square}."),
            "Take the pairs from left to right. For each go along the row of its first digit to the column of its second.",
        ),
    };
    HintLadder {
        nudge: format!("{} has digits along two of its sides. They are there for {message}.", capital(square)),
        method,
        giveaway: format!("{giveaway} Set what you find on {}.", cx.lock_name),
    }
}
