//! What it says: help, rules, hints, and how guests get to the answer.

use super::{Corner, GRID, MASK, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A square holds letters or digits in rows and columns. A card of the same size has a few windows. Laid on the square, it leaves \
the right ones to be read: row by row, each from left to right.

## Setup
- `side`: cells on a side of the square, 4 to 8.
- `turns`: how many times the card is laid on, 1 to 4; after each it is turned to the right by a quarter.
- `spell`: for an answer of digits, whether the windows spell its number words in a square of letters.
- `corner`: `printed` (a black corner on both), `cut` (a corner cut off both) or `plain` (nothing).
- `state_rule`: whether the square says how to lay the card on and how to read.

## Example
(
    side: 6,
    turns: 1,
    spell: true,
    corner: printed,
)

## Traps
- A card with no mark lies in eight ways, four turns on each side, and each may give a number: several readings. A square of \
letters that spell number words (`spell`) mostly has one all the same.
- A cut corner still lets the card be flipped about that corner.
- Both pieces must be printed at the same scale; which one does not matter, 94 % works as well as 100 %.";

/// The rules, as guests read them below the square.
pub(super) fn rule(corner: Corner, turns: u8) -> String {
    let lay = match corner {
        Corner::Printed => "Lay the card on this square, black corner on black corner.",
        Corner::Cut => "Lay the card on this square, cut corner on cut corner.",
        Corner::Plain => "Lay the card on this square.",
    };
    let read = "Read what shows in its windows. Start with the top row, and read each row from left to right.";
    let turn = "Then turn the card to the right, like a clock hand that goes from 12 to 3, and read on.";
    match turns {
        1 => format!("{lay} {read}"),
        2 => format!("{lay} {read} {turn}"),
        3 => format!("{lay} {read} {turn} Turn it once more and read on."),
        _ => format!("{lay} {read} {turn} Turn it twice more, and read on each time."),
    }
}

pub(super) fn grid<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(GRID, "the square")
}

pub(super) fn mask<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(MASK, "the card with windows")
}

/// How the card is laid on, as part of a sentence.
const fn lay(corner: Corner) -> &'static str {
    match corner {
        Corner::Printed => "black corner on black corner",
        Corner::Cut => "face up, so that the cut corners meet",
        Corner::Plain => "face up and upright",
    }
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let turns = view.turns.unwrap_or(1);
    let read = |turn: u8| {
        let shown = read::shown(view, &read::after(&view.windows, turn, view.side()), true);
        shown.iter().map(char::to_string).collect::<Vec<_>>().join(" ")
    };
    let more: String =
        (1..turns).map(|turn| format!(" Turned to the right by a quarter, they leave: {}.", read(turn))).collect();
    format!(
        "{} lies on {}, {}. Its windows leave, row by row: {}.{more}",
        capital(mask(cx)),
        grid(cx),
        lay(view.corner),
        read(0)
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Erase what was marked on {} and {}.", grid(cx), mask(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (grid, mask) = (grid(cx), mask(cx));
    let more = match view.turns.unwrap_or(1) {
        0 | 1 => "",
        2 => " Turn it a quarter to the right and read on.",
        3 => " Turn it a quarter to the right and read on; then once more.",
        _ => " Turn it a quarter to the right and read on, three times in all.",
    };
    let shown = read::shown(view, &view.windows, true);
    let begin = shown.first().map_or_else(String::new, |first| format!(" You begin with {first}."));
    HintLadder {
        nudge: format!("{} is exactly as large as something else.", capital(mask)),
        method: format!("{} belongs on {grid}. What its windows leave is what counts.", capital(mask)),
        giveaway: format!(
            "Lay {mask} on {grid}, {}. Write down what stands in the windows, row by row and from left to right.{begin}{more} Set that \
             on {}.",
            lay(view.corner),
            cx.lock_name
        ),
    }
}
