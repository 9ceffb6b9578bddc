//! What it says: help, rules, hints, and how guests get to the answer.

use super::{CLOCKS, ORDER_CARD, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
Each of several cards shows a clock at a full hour and bears the name of a place. A further card names the places in \
order; the hours, read in that order, are the digits. A clock at 10 gives two digits. No clock shows 0, so a 0 must \
follow a 1.

## Setup
- `names`: one name for each clock; more names than needed are left over.
- `text`: a line on the card with the order; empty for none.
- `hour_hand`: the short hand's length as a share of the long hand's, 0.3 to 1.
- `say_order`: whether the card names the clocks in order.
- `say_twelve`: whether the card says that hours run from 1 to 12.

## Example
(
    names: [\"bell loft\", \"weathervane\", \"cellar\", \"porch\"],
    text: \"The winder's evening round:\",
    hour_hand: 0.6,
)

## Traps
- With no order stated the clocks may be read in any.
- With nothing said about twelve hours, 3 may be 15, or 03.
- Hands of like length are taken for each other: every clock may then say 12.
- Two clocks of one name cannot be told apart and are refused.";

/// The order rule, as guests read it on the card.
pub(super) fn rule(view: &View) -> String {
    match (view.order.is_empty(), view.say_twelve) {
        (false, true) => "Read these clocks in this order. The short hand gives the hour, from 1 to 12.".into(),
        (false, false) => "Read the hours of these clocks in this order.".into(),
        (true, true) => "The short hand gives the hour, from 1 to 12.".into(),
        (true, false) => String::new(),
    }
}

pub(super) fn clocks<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CLOCKS, "the clocks")
}

pub(super) fn order_card<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(ORDER_CARD, "the card with the order")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let hour = |name: &String| {
        let clock = view.clocks.iter().find(|clock| clock.name == *name)?;
        Some(format!("{name} stands at {}", clock.hour))
    };
    let steps: Vec<String> = view.order.iter().filter_map(hour).collect();
    if steps.is_empty() {
        let all: Vec<String> =
            view.clocks.iter().map(|clock| format!("{} stands at {}", clock.name, clock.hour)).collect();
        return format!("The hours of {} are the digits: {}.", clocks(cx), all.join(", "));
    }
    format!("{} names {} in order: {}.", capital(order_card(cx)), clocks(cx), steps.join(", "))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that all of {} hang where their names say.", clocks(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (clocks, card) = (clocks(cx), order_card(cx));
    HintLadder {
        nudge: format!(
            "{} stand still, and each at another place. Who goes round them, and which way?",
            capital(clocks)
        ),
        method: format!("Take {card} and look at {clocks} one after another. Only the hours matter."),
        giveaway: format!(
            "Go through the names on {card} from the first to the last. Write down the hour that the short hand of each \
             clock shows, and set the figures on {}.",
            cx.lock_name
        ),
    }
}
