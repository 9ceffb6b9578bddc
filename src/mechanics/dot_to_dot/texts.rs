//! What it says: help, rules, work, hints, and how guests get to the answer.

use super::{PANELS, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::work::{Work, counted};
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(PANELS, "the panels of dots")
}

/// The way of counting, as the rule prints it.
fn row(view: &View) -> String {
    let step = view.step;
    let numbers: Vec<String> = (1..=3_u16).map(|turn| turn.saturating_mul(step).to_string()).collect();
    format!("{} and so on", numbers.join(", "))
}

/// The rule as the sheet or the first card prints it.
pub(super) fn rule(view: &View) -> String {
    let others = if view.step > 1 { "Leave out all other dots." } else { "Leave out dots with no number." };
    let strays = view.panels.iter().flatten().any(|dot| dot.number.is_none_or(|n| n % view.step.max(1) != 0));
    format!(
        "Join the dots on each panel with straight lines: {}, up to the last. {}Each line shows a digit. Read them in the \
         order of the panels.",
        row(view),
        if strays { format!("{others} ") } else { String::new() }
    )
}

/// The rule in a few words, for a card.
pub(super) fn short_rule(view: &View) -> String {
    let down = if view.baseline { " The ground is at the bottom." } else { "" };
    format!("Join {}.{down}", row(view))
}

pub(super) fn work(view: &View) -> Work {
    let step = view.step.max(1);
    let all: usize = view.panels.iter().map(Vec::len).sum();
    let joined = view.panels.iter().flatten().filter(|dot| dot.number.is_some_and(|n| n.is_multiple_of(step))).count();
    let says = format!(
        "{} are to be joined on {}{}.",
        capital(&counted(joined, "dot")),
        counted(view.panels.len(), "panel"),
        match all - joined {
            0 => String::new(),
            1 => "; one more is there to mislead".to_owned(),
            more => format!("; {more} more are there to mislead"),
        },
    );
    Work::new(all, says)
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!("The rule stands on {}: {}", name(cx), rule(view))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let panels = name(cx);
    let down = if view.baseline { "with the ground line at the bottom" } else { "the numbers upright" };
    HintLadder {
        nudge: format!("{} want a pencil and a steady hand.", capital(panels)),
        method: format!("Some dots on {panels} belong together: count {}, and draw from each to the next.", row(view)),
        giveaway: format!(
            "Take {panels} in the order of their numbers, {down}. Join the dots from the lowest that counts to the highest, \
             and lift the pencil there. Write down the digit that each line draws, and set them on {}.",
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
Each panel shows dots with numbers. Guests join them in the order of the numbers; the line draws a digit. The panels are \
numbered, and their digits, in that order, are the answer, which must be digits. Strays stand between, so that the \
digit is not seen at a glance.

## Setup
- `text`: a line of the story above the rule; may be empty.
- `step`: in what steps guests count, 1 to 4. With 2 they join 2, 4, 6 and so on, and strays carry other numbers; with 1 \
strays carry none.
- `strays`: dots of each panel that belong to no line, up to 14.
- `work`: `Light`: few dots, far apart. `Fair`: more. `Deep`: many.
- `loose`: whether each panel is a card of its own, to be hidden in different places.
- `baseline`: whether each panel has a ground line, which shows which side is down.

## Example
(
    text: \"Stars over the tower, as the winder saw them:\",
    step: 2,
    strays: 8,
)

## Traps
- Without a ground line a panel may be turned over: 6 and 9 then are each other.
- A number that stands twice on a panel leaves two ways to join; one that is missing breaks the line.
- With `step: 1` a sharp eye may see the digit among the numbered dots before it is drawn. With 2 or more every dot bears \
a number, and it must be drawn.
- A line that stands for no digit, or for two: 1 and 7, or 5 and S, are drawn so that they differ.
- Cards lie anywhere: each carries its number.";
