//! What it says: help, preparation, hints, and how guests get to the answer.

use super::{Says, View, read};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A sign with large letters hangs in the room. Under some letters stands a small digit. A pointer card, found elsewhere, \
names letters in order; the digits under them, in that order, open the lock. Decoy digits stand under letters that the \
card does not name. The answer must be digits, one for each letter named.

## Setup
- `sign`: the sign's words: letters, spaces and & ' - . , but no digits. Long signs wrap between words.
- `heading`: a small line above the letters, without digits; empty for none.
- `letters`: the letters that the card names, in order; empty: drawn by chance from those that will do.
- `pointer`: `Plain`: the card lists the letters. `Initials(\"...\")`: the card holds a line of words and the printed rule \
to take the first letter of each; write one word for each digit of the answer, and leave `letters` empty.
- `equal_letters`: `Avoid`: only letters that stand on the sign once are named. `ReadingOrder`: others too, and the card \
states that the first of them comes first, from left to right, the top line first.
- `decoys`: how many letters that the card does not name carry a digit as well.
- `state_rule`: whether the card prints its rule. Leave it out only when a note of yours states it; the proof counts what \
the card alone allows.

## Example
(
    sign: \"WINDLE & DAUGHTERS CLOCKMAKERS\",
    pointer: Initials(\"Underneath golden hands\"),
    decoys: 5,
)

## Traps
- Equal letters with several digits under them and no order stated have several readings.
- A line of words with no rule can be read by first letters, last letters or all letters.
- A hyphenated word in the line is one word or two.
- A named letter that stands on the sign more often than it carries a digit, or carries none, gets a remark.";

/// The letters that the pointer names, in a sentence.
fn letters_in_words(view: &View) -> String {
    let letters = read::first_way(&view.pointer.says);
    listed(&letters.iter().map(char::to_string).collect::<Vec<_>>())
}

pub(super) fn prep(cx: &Dressing<'_>) -> Vec<PrepStep> {
    let (sign, pointer) = (cx.name("sign", "the sign"), cx.name("pointer", "the pointer card"));
    vec![
        PrepStep::printed(vec![
            Need { material: "card-paper", amount: 1.0 },
            Need { material: "scissors", amount: 1.0 },
        ]),
        PrepStep {
            key: "hang",
            what: format!(
                "Fix {sign} at eye height with tape or a pin at the middle of its top edge, where there is light to read \
                 small digits by; {pointer} goes elsewhere."
            ),
            needs: vec![Need { material: "tape", amount: 1.0 }],
            hands: 2.0,
            wait: 0.0,
            after: vec!["cut"],
        },
    ]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let how = match &view.pointer.says {
        Says::Letters(_) => format!("names {}", letters_in_words(view)),
        Says::Line(line) => format!("says “{line}”; the first letters of its words are {}", letters_in_words(view)),
    };
    let equal =
        if view.pointer.equal_rule { " Equal letters are taken in reading order, as the card says." } else { "" };
    let marked = view.lines.iter().flatten().filter(|cell| cell.mark.is_some()).count();
    let others = if marked > named(view) { " All other digits on it are decoys." } else { "" };
    format!(
        "{} {how}. The digits under these letters on {}, in that order, are the code{}.{equal}{others}",
        capital(cx.name("pointer", "the pointer card")),
        cx.name("sign", "the sign"),
        digits(view),
    )
}

/// Which digit stands under which letter: ": I 0, H 6". Nothing where a letter's digit is not certain.
fn digits(view: &View) -> String {
    let mut used: Vec<(usize, usize)> = Vec::new();
    let mut told = Vec::new();
    for letter in read::first_way(&view.pointer.says) {
        let cells =
            view.lines.iter().enumerate().flat_map(|(row, line)| line.iter().enumerate().map(move |at| (row, at)));
        let mut fitting = cells
            .filter(|(row, (col, cell))| cell.letter == letter && cell.mark.is_some() && !used.contains(&(*row, *col)));
        let (Some((row, (col, cell))), more) = (fitting.next(), fitting.next().is_some()) else { return String::new() };
        if more && !view.pointer.equal_rule {
            return String::new();
        }
        used.push((row, col));
        told.extend(cell.mark.map(|mark| format!("{letter} {mark}")));
    }
    format!(": {}", told.join(", "))
}

/// How many letters the card names.
fn named(view: &View) -> usize {
    match &view.pointer.says {
        Says::Letters(letters) => letters.len(),
        Says::Line(line) => line.split_whitespace().count(),
    }
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has ticked letters on {}.", cx.name("sign", "the sign"))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (sign, pointer) = (cx.name("sign", "the sign"), cx.name("pointer", "the pointer card"));
    let method = match view.pointer.says {
        Says::Letters(_) => {
            format!("{} names letters in order. Find each of them on {sign}.", capital(pointer))
        }
        Says::Line(_) => {
            format!("Take the first letter of each word on {pointer}, and find these letters on {sign}.")
        }
    };
    HintLadder {
        nudge: format!("Go close to {sign}. Something small stands under some of its letters."),
        method,
        giveaway: format!("The letters are {}. Read what stands under each of them.", letters_in_words(view)),
    }
}
