//! What it says: help, hints, and how guests get to the answer.

use super::{ORDER, SHEET, View};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::readings::occurrences::{DIRECTIONS, placements};
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of letters")
}

/// What the sheet tells about the words.
pub(super) fn rule(view: &View) -> String {
    match view.words.len() {
        1 => format!("Circle the word of the list. It runs {}.", ways(view)),
        count => format!("Circle all {count} words. They run {} and may cross.", ways(view)),
    }
}

/// The ways in which the words of this sheet run: "across, down and on a slant, some of them backwards or up,".
fn ways(view: &View) -> String {
    let grid = view.grid();
    let mut ways = [("across", false), ("down", false), ("on a slant", false)];
    let mut turned = [("backwards", false), ("up", false)];
    for word in &view.words {
        let letters: Vec<char> = word.chars().collect();
        for (down, right) in placements(&grid, &letters).iter().filter_map(|hit| DIRECTIONS.get(hit.direction)) {
            let way = match (*down, *right) {
                (0, _) => 0,
                (_, 0) => 1,
                _ => 2,
            };
            ways[way].1 = true;
            turned[0].1 |= *right < 0;
            turned[1].1 |= *right == 0 && *down < 0;
        }
    }
    let used = |all: &[(&str, bool)]| -> Vec<String> {
        all.iter().filter(|(_, used)| *used).map(|(word, _)| (*word).to_owned()).collect()
    };
    let turned = used(&turned);
    let turned = match (turned.as_slice(), view.words.len()) {
        ([], _) => String::new(),
        ([way], 1) if way == "up" => return "straight up".to_owned(),
        (all, 1) => format!(", {}", all.join(" and ")),
        (all, _) => format!(", some of them {},", all.join(" or ")),
    };
    format!("{}{turned}", listed(&used(&ways)))
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Guests find the {} on {}; each stands there once. {ORDER} They spell the answer, a digit as its word.",
        if view.words.len() == 1 { "word".to_owned() } else { format!("{} words", view.words.len()) },
        name(cx),
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    let longest = view.words.iter().max_by_key(|word| word.chars().count()).map_or("", String::as_str);
    HintLadder {
        nudge: format!("{} is more than a pastime. Mind the letters that you do not circle.", capital(sheet)),
        method: if view.words.len() == 1 {
            format!("Find {longest} on {sheet}, and cross out its letters.")
        } else {
            format!(
                "Find every word of the list on {sheet}, the long ones first ({longest}, say), and cross out its letters as \
                 you go. A letter may belong to two words."
            )
        },
        giveaway: format!(
            "With {} crossed out on {sheet}, some letters remain. Copy them row by row, from left to right: they \
             spell, without gaps, what you set on {}.",
            if view.words.len() == 1 { "the word".to_owned() } else { format!("all {} words", view.words.len()) },
            cx.lock_name
        ),
    }
}

pub(super) const HELP: &str = "\
## What it does
Listed words are hidden in a square of letters. The letters that no word uses, in reading order, spell the answer: \
digits in words (FOUR for 4), letters as they are. Cells beyond that carry a dot instead of a letter, so that nothing is \
left over by chance.

## Setup
- `words`: the words to find, of 3 letters or more, A to Z. None may stand within another, read either way.
- `backwards`: whether words may run to the left or upwards; harder for children.
- `aslant`: whether words may run aslant.
- `work`: `Light`: words run to the right and straight down only, whatever else is allowed, with few places that begin \
like a word. `Fair`: as allowed. `Deep`: of several squares the one with the most turns and false starts.

## Example
(
    words: [\"SNOW\", \"LADDER\", \"BELL\", \"ROPE\", \"LAMP\", \"OWL\", \"GEAR\", \"TOWER\"],
    backwards: true,
    aslant: true,
)

## Traps
- A listed word that stands in a second place by chance leaves other letters over: it is remarked, and another reading \
where those letters spell one. The sheet is made anew until there is none.
- A listed word that stands nowhere is remarked.
- Letters left over that spell no number cannot be set on digit wheels: no reading.";
