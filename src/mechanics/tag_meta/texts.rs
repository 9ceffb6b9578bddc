//! What it says: help, rule, hints, and how guests get to the answer.

use super::{CARD, TAGS, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
Every lock of a hasp carries a folded tag, closed with tape, that comes off with its lock. Inside is a letter or two and the \
lock's mark. A hasp card numbers the holes and shows which mark hangs in which. In the order of the holes the tags spell a \
closing word, which guests say to the host or set on a lock with letters.

## Setup
- `locks`: the locks with a tag: `hole`, `name`, `mark` (a symbol of the theme) and `spare` (guests may leave it shut). Empty: \
every lock of the kit that has a hole, but for the one that the word opens.
- `numbers`: whether each tag says the number of its hole as well.
- `hasp_card`: whether the card is printed; without it the tags need `numbers`.
- `state_rule`: whether the card says from which hole to read.

Lay the part `tags` into the box that these locks shut: the tags are all in hand when it \
opens. The host guide says that they hang on the locks.

## Example
(
    locks: [
        (hole: 1, name: \"the brass padlock\", mark: \"bell\"),
        (hole: 2, name: \"the long padlock\", mark: \"owl\"),
        (hole: 3, name: \"the black padlock\", mark: \"key\"),
    ],
    numbers: false,
)

## Traps
- Two locks with the same mark: their tags can change places, unless the tags have `numbers`.
- A lock that guests may leave shut: its tag stays closed, and a shorter word reads as well.
- Neither card nor numbers: the tags can lie in any order.
- A tag that is not folded and closed can be read before its lock is open.";

/// The order rule, as guests read it on the hasp card.
pub(super) const RULE: &str =
    "Open a tag only when its lock is open. Put the tags in the order of the holes. Hole 1 is at the hinge. Then read.";

pub(super) fn tags<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(TAGS, "the tags on the locks")
}

pub(super) fn card<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CARD, "the hasp card")
}

/// Which tag hangs where, for the host.
pub(super) fn hung(view: &View) -> String {
    let place = |tag: &super::Tag| {
        let mark = if tag.mark.is_empty() { String::new() } else { format!(" (mark: {})", tag.mark) };
        format!("the tag with {} on {}{mark}", tag.text, tag.lock)
    };
    listed(&view.tags.iter().map(place).collect::<Vec<_>>())
}

/// What fixes the order, for guests and host.
fn order(view: &View, cx: &Dressing<'_>) -> String {
    if view.holes.is_empty() { "of the numbers on them".into() } else { format!("of the holes on {}", card(cx)) }
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!("Each lock of the hasp has a tag: {}. They are read in the order {}.", hung(view), order(view, cx))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Fold {} again, close them with fresh tape, and hang them on their locks before you shut these.", tags(cx))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let tags = tags(cx);
    let by = if view.holes.is_empty() {
        "Each bears a number.".to_owned()
    } else {
        format!("{} tells where each hung.", capital(card(cx)))
    };
    HintLadder {
        nudge: format!("Have you kept {tags}? They are good for more than decoration."),
        method: format!("Unfold {tags}, every one of them, and lay them in a row. {by}"),
        giveaway: format!(
            "Lay {tags} in the order {}, the first at the left, and read what they bear from left to right. That is for {}.",
            order(view, cx),
            cx.lock_name
        ),
    }
}
