//! What it says: help, hints, and how guests get to the answer.

use super::{KEY_CARD, STRIP, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::signs;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A strip carries short and long signs with gaps between them; a key card, found elsewhere, gives the letter or digit for \
each group. Signs and gaps have the lengths of ITU-R M.1677-1: short 1, long 3, gap within a group 1, gap between two \
groups 3. The answer is digits, or letters A to Z.

## Setup
- `look`: `lamps` (round and long lights), `bars` (narrow and wide bars) or `beads` (round and long beads on a string).
- `start_mark`: whether an arrowhead stands before the first sign.

## Example
(
    look: beads,
    start_mark: true,
)

## Traps
- Without a start mark the strip may be read from its other end: every digit then reads as another digit.
- Groups with no wider gap between them run together and can be parted in several ways.
- Five digits or more make a long strip of small signs; beyond the strip's length the answer is refused.";

/// The order rule, as guests read it on the key card.
pub(super) const RULE: &str = "From the mark to the right, gap by gap.";

/// The rule where there is no start mark.
pub(super) const NO_MARK: &str = "Wide gaps part groups.";

pub(super) fn strip<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(STRIP, "the strip of signs")
}

pub(super) fn key<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(KEY_CARD, "the key card")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let groups = read::groups(view);
    format!(
        "{} is read from the start mark to the right; the wide gaps part it into groups: {}. By {}, {}.",
        capital(strip(cx)),
        groups.join(" / "),
        key(cx),
        signs::steps(&groups, &view.key)
    )
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!("Look that nobody has written on {} and {}.", strip(cx), key(cx))
}

pub(super) fn draft_hints(cx: &Dressing<'_>) -> HintLadder {
    let (strip, key) = (strip(cx), key(cx));
    HintLadder {
        nudge: format!("{} is no mere ornament: some of its signs are short, and some are long.", capital(strip)),
        method: format!("Part {strip} at its wider gaps, and look for each group on {key}."),
        giveaway: format!(
            "Begin at the arrowhead of {strip}. Copy the signs as dots and dashes, draw a line at each wider gap, find \
             every group on {key}, and set on {} what stands beside it.",
            cx.lock_name
        ),
    }
}
