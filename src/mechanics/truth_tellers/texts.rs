//! What it says: claims in words, help, hints, and how guests get to the answer.

use super::{Claim, ORDER, SHEET, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of speakers")
}

/// What the sheet tells about all of them.
pub(super) fn rule(view: &View) -> String {
    let count = match view.liars {
        None => String::new(),
        Some(1) => " Exactly one of them says what is false.".to_owned(),
        Some(count) => format!(" Exactly {count} of them say what is false."),
    };
    format!("Each of them says one sentence, and it is either true or false.{count}")
}

/// A claim as it is said.
pub(super) fn said(view: &View, claim: Claim) -> String {
    let name = |at: usize| view.speakers.get(at).map_or("", |speaker| speaker.name.as_str());
    match claim {
        Claim::True(a) => format!("\u{201c}What {} says is true.\u{201d}", name(a)),
        Claim::False(a) => format!("\u{201c}What {} says is false.\u{201d}", name(a)),
        Claim::Alike(a, b) => {
            format!("\u{201c}Either {} and {} both say what is true, or neither does.\u{201d}", name(a), name(b))
        }
        Claim::Unlike(a, b) => {
            format!("\u{201c}One of {} and {} says what is true, the other what is false.\u{201d}", name(a), name(b))
        }
        Claim::NotBoth(a, b) => {
            format!("\u{201c}At least one of {} and {} says what is false.\u{201d}", name(a), name(b))
        }
    }
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let false_ones = match read::liars(view).as_deref() {
        Some([one]) => format!(" {one} says what is false, and all the others tell the truth."),
        Some(liars) if !liars.is_empty() => {
            format!(" {} say what is false, and all the others tell the truth.", capital(&listed(liars)))
        }
        _ => String::new(),
    };
    format!("The {} sentences on {} fit together in one case only.{false_ones} {ORDER}", view.speakers.len(), name(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    let single = view.speakers.iter().find(|speaker| matches!(speaker.says, Claim::True(_) | Claim::False(_)));
    let begin = single.or(view.speakers.first()).map_or("", |speaker| speaker.name.as_str());
    HintLadder {
        nudge: format!("Not all on {sheet} can be believed. What they say of one another shows who is honest."),
        method: format!(
            "Suppose that {begin} tells the truth, and follow on {sheet} what must then be true of the others. If that \
             contradicts itself, {begin} says what is false, and you can go on from there."
        ),
        giveaway: match read::liars(view).as_deref() {
            Some([]) | None => format!(
                "Write T or F beside every name on {sheet}, one after another, until each sentence agrees with its letter. \
                 Then take the badges beside every T, from the top down, and set them on {}.",
                cx.lock_name
            ),
            Some([only]) => format!(
                "What {only} says on {sheet} is false. Cross out that row. Take the badges of all the others, from the top \
                 down, and set them on {}.",
                cx.lock_name
            ),
            Some([one, ..]) => format!(
                "What {one} says on {sheet} is false: cross out that row, and follow what that tells of the others. Cross \
                 out every row that comes out false. Take the badges that are left, from the top down, and set them on {}.",
                cx.lock_name
            ),
        },
    }
}

pub(super) const HELP: &str = "\
## What it does
A list of speakers, each with a badge that shows a digit or a letter. Each says one sentence about others: that one \
tells the truth, that two are alike, and so on. Only one case fits. The badges of those who tell the truth, from the top \
down, are the answer; the others' badges are drawn by chance.

## Setup
- `names`: the speakers, in the order of the list: as many as the answer has symbols and `liars` together. More may \
stand here and are left out.
- `liars`: how many say what is false; 2 or 3 are enough.
- `tell_count`: whether the sheet tells how many they are. Without it the puzzle is harder.
- `work`: `Light`: of several sets of sentences the one that takes the fewest trials. `Fair`: any. `Deep`: the one that \
takes the most.

## Example
(
    names: [\"the cook\", \"the ringer\", \"the smith\", \"the baker\", \"the clerk\", \"the miller\"],
    liars: 2,
    tell_count: true,
)

## Traps
- More than one case that fits: several readings, if both can be set on the lock; else a remark.
- Sentences that fit no case: no reading.
- Nobody speaks of themselves: \"I tell the truth\" says nothing.";
