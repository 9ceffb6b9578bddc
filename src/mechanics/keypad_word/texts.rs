//! What it says: help, hints, and how guests get to the answer.

use super::{KEYPAD, View, WORD};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::spelled::letters;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A keypad has letters below its digits; a word, found elsewhere, is spelled on it. Each letter gives the digit of its key, \
from left to right. Letters lead to digits and never back: a key has several letters.

## Setup
- `word`: the word, as many letters as the answer has digits, each on the right key; empty: consonants by chance.
- `text`: a line above the word; empty for none.
- `keys`: the letters of the keys 1 to 9 and 0, in that order; left out, those of ITU-T E.161, where 1 and 0 have none.
- `other_words`: other words set as large on the same card.
- `state_rule`: whether the card says that each letter gives its key's digit once.

## Example
(
    word: \"FROST\",
    text: \"Ask the tower for\",
    keys: [\"\", \"ABC\", \"DEF\", \"GHI\", \"JKL\", \"MNO\", \"PQRS\", \"TUV\", \"WXYZ\", \"\"],
)

## Traps
- The usual keys 1 and 0 have no letters: an answer with these digits is refused.
- With no rule stated a guest may press a key as often as the letter's place on it.
- A second word as long reads as well; a word longer than the lock has wheels may be cut at either end.
- A lock with letter wheels is refused: the way from digits to letters is open.";

/// The order rule, as guests read it on the card.
pub(super) const RULE: &str = "Take the letters from left to right. For each, write the digit on its key, just once.";

pub(super) fn keypad<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(KEYPAD, "the keypad")
}

pub(super) fn word<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(WORD, "the card with the word")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let spelled = view.words.first().map_or("", String::as_str);
    let steps: Vec<String> = letters(spelled)
        .into_iter()
        .filter_map(|letter| view.keys.iter().find(|key| key.letters.contains(letter)).map(|key| (letter, key.digit)))
        .map(|(letter, digit)| format!("{letter} is {digit}"))
        .collect();
    format!(
        "{} says {spelled}. On {}, {}. The letters are taken from left to right.",
        capital(word(cx)),
        keypad(cx),
        steps.join(", ")
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has written on {} and {}.", keypad(cx), word(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (pad, word) = (keypad(cx), word(cx));
    HintLadder {
        nudge: format!("{} has letters as well as digits. Who would need them?", capital(pad)),
        method: format!("Spell what {word} says on {pad}: every letter sits on a key."),
        giveaway: format!(
            "Take the letters of {word} from left to right. Find each on {pad}, write down the digit of its key, and set \
             on {} what you have written.",
            cx.lock_name
        ),
    }
}
