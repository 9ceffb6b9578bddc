//! What it says: help, hints, and how guests get to the answer.

use super::{ORDER, SHEET, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::pictures::word;
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of scales")
}

/// What the pans tell, as the sheet prints it.
pub(super) fn rule(view: &View) -> String {
    let both = if view.weighings.iter().any(|weighing| weighing.both.is_some()) {
        " A thing on both pans weighs the same on each."
    } else {
        ""
    };
    format!("The lower pan holds more weight.{both}")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let weighings: Vec<String> = view
        .weighings
        .iter()
        .filter_map(|weighing| {
            let (heavier, lighter) = (view.things.get(weighing.heavier)?, view.things.get(weighing.lighter)?);
            Some(format!("the {} is heavier than the {}", word(&heavier.symbol), word(&lighter.symbol)))
        })
        .collect();
    let order = read::settled(view).map_or_else(
        || ORDER.to_owned(),
        |ranks| {
            let things = ranks.iter().filter_map(|at| view.things.get(*at));
            let names: Vec<String> = things.map(|thing| format!("{} ({})", word(&thing.symbol), thing.tag)).collect();
            format!("From heavy to light they are, with their tags: {}.", names.join(", "))
        },
    );
    format!("{} shows: {}. {order}", capital(name(cx)), weighings.join("; "))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    HintLadder {
        nudge: format!("The scales on {sheet} do not stand level. That is no slip of the pen."),
        method: format!(
            "On {sheet}, one thing is never the lighter one: that is the heaviest of all {}. Cross it out and look again.",
            view.things.len()
        ),
        giveaway: match read::settled(view) {
            Some(ranks) => {
                let name = |at: &usize| view.things.get(*at).map_or(String::new(), |thing| word(&thing.symbol));
                format!(
                    "{}: the heaviest is the {}. Read their tags in this order and set them on {}.",
                    capital(sheet),
                    ranks.iter().map(name).collect::<Vec<_>>().join(", then the "),
                    cx.lock_name
                )
            }
            None => format!(
                "{}: write the things in a row, the heaviest first. After each comes the one that is lighter than it and \
                 heavier than all the rest. Then read the tags along the row and set them on {}.",
                capital(sheet),
                cx.lock_name
            ),
        },
    }
}

pub(super) const HELP: &str = "\
## What it does
A sheet shows some things of the theme, each with a tag that holds a digit or a letter, and pictures of scales with one \
thing on either pan. Guests put the things in order from heavy to light and read the tags in that order.

## Setup
- `things`: symbols of the theme, at least as many as the answer has digits or letters, from which the things are \
drawn; empty: any of the theme's that mark no lock. The program decides which is heavier.
- `spare`: weighings beyond those that are needed; each of them follows from the others.
- `work`: `Light`: no spare weighings, and the pictures stand in the order of the things, from heavy to light. `Fair`: in \
any order. `Deep`: a third thing lies on both pans of every picture, and must be thought away.

## Example
(
    things: [\"bell\", \"gear\", \"key\", \"lantern\", \"weight\"],
    spare: 2,
)

## Traps
- Two things whose order no weighing settles: several readings, unless their tags are alike; always a remark.
- Weighings that go round in a circle: no reading.
- The lower pan is the heavier one, and the sheet says so.";
