//! What it says: help, hints, and how guests get to the answer.

use super::{CARD, PIECES, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) fn pieces_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(PIECES, "the dominoes")
}

pub(super) fn card_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CARD, "the domino card")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "{} says how to lay {}; only one row takes all {} of them. {}",
        capital(card_name(cx)),
        pieces_name(cx),
        view.pieces.len(),
        view.order()
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (pieces, card) = (pieces_name(cx), card_name(cx));
    HintLadder {
        nudge: format!("{} are not for a game of their own. Read {card}.", capital(pieces)),
        method: format!(
            "Lay {pieces} in one row, all {}. One of them says that it is the first: nothing goes before it.",
            view.pieces.len()
        ),
        giveaway: format!(
            "Try both halves of the first piece; to one of them another of {pieces} fits. Go on until every piece lies \
             in the row. Count the dots at each place where two pieces touch, from the first piece on, once and not twice, write the numbers down, and set \
             the digits on {}.",
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
Loose dominoes of 0 to 9 dots, one of them marked as the first, and a card with the rule. Laid in a row so that equal \
halves touch, all pieces fit in one way; the numbers where two pieces touch, in order, are the answer. The answer must \
be digits; there is one piece more than digits.

## Setup
- `card_text`: a line of the story above the rule on the card; may be empty.
- `work`: `Light`: an arrow on every piece tells which way round it lies. `Fair`: the pieces may be turned. `Deep`: the row \
can also be begun the wrong way round, where the answer allows that.

## Example
(
    card_text: \"The ringers left their game when the clock stopped.\",
)

## Traps
- No marked first piece: the row can be read from either end, several readings.
- A digit that stands in the answer several times may let the pieces chain in a second way: what lies between the two can be turned \
round, unless it reads the same backwards. Such an answer is refused, with what it also reads. With the arrows of \
`Light` only a digit that stands three times or more can do so.
- A lost piece: count them when you put them back.";
