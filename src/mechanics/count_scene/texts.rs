//! What it says: help, rules, work, hints, and how guests get to the answer.

use super::{LIST, SCENE, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::pictures::word;
use crate::mechanics::words::listed;
use crate::mechanics::work::{Work, counted};
use crate::script::capital;

pub(super) fn scene<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SCENE, "the scene")
}

pub(super) fn list<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(LIST, "the list of what to count")
}

/// Whether something on the list is nowhere to be found.
fn none_of_some(view: &View) -> bool {
    let counts = |picture: &String| view.things.iter().any(|thing| thing.picture == *picture && !thing.ringed);
    view.list.iter().any(|picture| !counts(picture))
}

/// The rule as the list prints it.
pub(super) fn rule(view: &View) -> String {
    let mut rule = String::from("How many of each are there?");
    if view.ring_rule {
        rule.push_str(" Leave out what has a circle round it.");
    }
    if none_of_some(view) {
        rule.push_str(" If there is none, write zero.");
    }
    if view.say_order {
        rule.push_str(" Set the numbers from the top of the list down.");
    }
    rule
}

pub(super) fn work(view: &View) -> Work {
    let on_list = |picture: &String| view.list.contains(picture);
    let ringed = view.things.iter().filter(|thing| thing.ringed).count();
    let strangers = view.things.iter().filter(|thing| !on_list(&thing.picture)).count();
    let rings = match ringed {
        0 => String::new(),
        1 => ", and one has a circle round it and does not count".to_owned(),
        _ => format!(", and {ringed} have a circle round them and do not count"),
    };
    let says = format!(
        "There is {} to look through: {} that the list does not ask for{rings}.",
        counted(view.things.len(), "thing").replace("one thing", "a single thing"),
        match strangers {
            0 => "nothing in it is of a kind".to_owned(),
            1 => "one is of a kind".to_owned(),
            _ => format!("{strangers} are of kinds"),
        },
    )
    .replace("There is ", if view.things.len() == 1 { "There is " } else { "There are " });
    // Each line of the list is a walk over the whole scene; ringed things want a second look.
    Work::new(view.things.len() * view.list.len() + ringed * 4, says)
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let count = |picture: &String| view.things.iter().filter(|t| t.picture == *picture && !t.ringed).count();
    let names: Vec<String> =
        view.list.iter().map(|picture| format!("the {} ({} of them)", word(picture), count(picture))).collect();
    format!("{} asks for {} in {}. {}", capital(list(cx)), listed(&names), scene(cx), rule(view))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (scene, list) = (scene(cx), list(cx));
    let rings = if view.ring_rule { " Pass over what has a circle round it." } else { "" };
    HintLadder {
        nudge: format!("{} shows much that nobody asks for. {} says what matters.", capital(scene), capital(list)),
        method: format!("Take the lines of {list} one after another, and count only that kind in {scene}.{rings}"),
        giveaway: format!(
            "Let each of you count one kind in {scene}, from the top to the bottom, a finger on each, and let a second check \
             it.{rings} Set the counts on {} in the order of {list}.",
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
A scene is strewn with the theme's things. A list, found elsewhere, shows which of them to count; the counts, from the \
first line to the last, are the answer, which must be digits. Strangers that nobody asks for stand between, and some of \
the things to count have a circle round them: those were counted before and are left out.

## Setup
- `text`: a line of the story on the list; may be empty.
- `count`: the theme's symbols to count, in order, one for each digit; empty: by chance.
- `others`: the theme's symbols that stand about and are not counted, the first few of them; empty: by chance. Leave out those that mark a lock.
- `ringed`: whether some things have a circle round them and are left out. Leave it off for the youngest.
- `work`: `Light`: few strangers. `Fair`: more of them, and some circles. `Deep`: a crowd.
- `say_order`: whether the list says that its order is that of the answer.

## Example
(
    text: \"For the keeper's book, before the bell:\",
    count: [],
    ringed: true,
    work: Fair,
)

## Traps
- A thing half under another, or cut by the edge, may be counted or not: several readings.
- Two kinds that look alike in grey at print size are refused when the pieces are made.
- A count over 9 takes two wheels; the answer's digits are the counts, so none is made.
- Circles without a rule: with them or without them, two readings.
- No order stated: the counts may be set in any.";
