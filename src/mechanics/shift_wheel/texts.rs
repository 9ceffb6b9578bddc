//! What it says: help, rules, preparation, hints, and how guests get to the answer.

use super::{MESSAGE, Ring, View, WHEEL};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
Two discs, the smaller on the larger, carry the same ring of letters or digits. The smaller has a start mark at its first. \
A card says where on the outer ring to set the mark, and gives a message; each of its letters or digits is found on one \
ring, and the answer stands beside it on the other.

## Setup
- `text`: a line above the message; empty for none.
- `ring`: what stands on the rings, clockwise; empty: 0 to 9 or A to Z, as the answer has.
- `shift`: by how many places the mark is set on; 0: by chance, never half a turn.
- `from`: `outer` or `inner`: the ring on which the message is found.
- `say_setting`: whether the card says where to set the mark.
- `say_direction`: whether the card says on which ring to look.

## Example
(
    text: \"Set down by the last winder:\",
    shift: 7,
    from: outer,
)

## Traps
- With no direction stated a guest may read inwards or outwards: two readings, save at half a turn.
- With no setting stated every shift reads.
- A shift by the whole ring changes nothing and is refused; one by half (13 of 26) is remarked.
- A message with a letter that the wheel lacks cannot be read.";

/// The order rule, as guests read it on the card.
pub(super) fn rule(view: &View) -> String {
    let mut rules: Vec<String> = Vec::new();
    if let Some(setting) = view.setting {
        rules.push(format!("Set the start mark to {setting} on the outer ring."));
    }
    match view.from {
        Some(Ring::Outer) => rules.push(
            "Go from left to right. Find each sign on the outer ring, and read the sign beside it on the inner ring."
                .into(),
        ),
        Some(Ring::Inner) => rules.push(
            "Go from left to right. Find each sign on the inner ring, and read the sign beside it on the outer ring."
                .into(),
        ),
        None => {}
    }
    rules.join(" ")
}

pub(super) fn join(cx: &Dressing<'_>) -> PrepStep {
    PrepStep {
        key: "join",
        what: format!(
            "For {}, make a hole in the middle of both discs, lay the smaller on the larger, and join them with a paper \
             fastener so that they turn. Set the start mark anywhere but where the message wants it.",
            wheel(cx)
        ),
        needs: vec![Need { material: "paper-fastener", amount: 1.0 }],
        hands: 4.0,
        wait: 0.0,
        after: vec!["cut"],
    }
}

pub(super) fn wheel<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(WHEEL, "the wheel of two discs")
}

pub(super) fn message<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(MESSAGE, "the card with the message")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let coded: Vec<String> = view.message.iter().map(char::to_string).collect();
    let set = view.setting.map_or_else(String::new, |at| format!("The start mark of {} is set to {at}. ", wheel(cx)));
    let (on, beside) = match view.from {
        Some(Ring::Inner) => ("inner", "outer"),
        Some(Ring::Outer) | None => ("outer", "inner"),
    };
    format!(
        "{set}{} says {}. Each of these is found on the {on} ring, and what stands beside it on the {beside} ring is taken.",
        capital(message(cx)),
        coded.join(" ")
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Turn {} away from its setting.", wheel(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (wheel, message) = (wheel(cx), message(cx));
    let set = view.setting.map_or_else(
        || "With the start mark in its place".to_owned(),
        |at| format!("Turn the small disc until its start mark points to {at} on the large one. Hold it there"),
    );
    let (on, beside) = match view.from {
        Some(Ring::Inner) => ("small", "large"),
        Some(Ring::Outer) | None => ("large", "small"),
    };
    let begin = first(view).map_or_else(String::new, |(coded, plain)| {
        format!(" {coded} on the {on} disc has {plain} beside it on the {beside} one.")
    });
    HintLadder {
        nudge: format!("What {message} says makes no sense as it stands. {} turns.", capital(wheel)),
        method: format!("Set {wheel} as {message} says, and do not move it again while you read."),
        giveaway: format!(
            "{set}, and find what {message} shows, one after another, on the {on} disc.{begin} Go on like that, and set \
             what you find on {}.",
            cx.lock_name
        ),
    }
}

/// The first of the message and what it stands for; none where the card leaves it open.
fn first(view: &View) -> Option<(char, char)> {
    let place = |symbol: char| view.ring.iter().position(|other| *other == symbol);
    let (coded, from) = (*view.message.first()?, view.from?);
    let at = super::turned(place(coded)?, place(view.setting?)?, view.ring.len(), from == Ring::Inner);
    Some((coded, *view.ring.get(at)?))
}
