//! `braille-card`: a row of drawn braille cells; a key card gives their letters or digits.

mod reread;

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::proof::Printed;
use crate::face::{Piece, mm};
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::codes::braille;
use crate::mechanics::signs::{self, Entry, KeyWords, RowWords, Way};
use crate::mechanics::slips::{self, Slip};
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use crate::script::capital;
use crate::units::Size;

/// The mechanic.
#[derive(Debug)]
pub struct BrailleCard;

const CARD: &str = "card";
const KEY_CARD: &str = "key-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    start_mark: bool,
    number_sign: bool,
    key: Lists,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), start_mark: true, number_sign: true, key: Lists::Fitting }
    }
}

/// What the key card lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lists {
    /// Digits for an answer of digits, letters for one of letters.
    Fitting,
    /// Letters and digits.
    Both,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: String,
    /// Dots of each cell, left to right; the number sign among them.
    cells: Vec<String>,
    start_mark: bool,
    key: Vec<Entry>,
}

impl View {
    /// The cells after the number sign, if it comes first.
    fn after_sign(cells: &[String]) -> (bool, &[String]) {
        match cells.split_first() {
            Some((first, rest)) if first == braille::NUMERIC => (true, rest),
            _ => (false, cells),
        }
    }
}

impl Mechanic for BrailleCard {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "braille-card",
        name: "Braille card",
        guests: "read a row of drawn braille cells with a key card",
        order: "from the start mark, left to right",
        prints: "the card with the cells and the key card",
        host: "cuts both out and lays them apart",
        help: HELP,
        parts: &[
            Part { key: CARD, name: "the card of dots", printed: true, optional: false },
            Part { key: KEY_CARD, name: "the key card", printed: true, optional: false },
        ],
        minutes: (2, 6),
        least_age: 7,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, _: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let digits = answer.iter().all(char::is_ascii_digit);
        let mut listed = signs::alphabet(&answer)?;
        if setup.key == Lists::Both {
            listed = ('A'..='Z').chain('0'..='9').collect();
        }
        let dots = |symbol: char| braille::dots(symbol).map(str::to_owned);
        let sign = (digits && setup.number_sign).then(|| braille::NUMERIC.to_owned());
        let cells = sign.into_iter().chain(answer.into_iter().filter_map(dots)).collect();
        let key = listed.into_iter().filter_map(|symbol| Some(Entry { symbol, sign: dots(symbol)? })).collect();
        Ok(View { text: setup.text.trim().to_owned(), cells, start_mark: setup.start_mark, key })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        let back: Vec<String> = view.cells.iter().rev().map(|cell| braille::turned(cell)).collect();
        let mut ways = vec![("as the card lies", &view.cells)];
        if !view.start_mark {
            ways.push(("with the card upside down", &back));
        }
        let mut all = Readings::default();
        for (label, cells) in ways {
            let (number, cells) = View::after_sign(cells);
            let key: Vec<Entry> =
                view.key.iter().filter(|entry| !number || entry.symbol.is_ascii_digit()).cloned().collect();
            let found = signs::read(&[Way { label, signs: cells.to_vec() }], &key, lock, budget);
            for reading in found.list {
                all.add(lock, &reading.answer, reading.why);
            }
            all.more |= found.more;
            all.unproven |= found.unproven;
            if label == "as the card lies" {
                all.remarks = found.remarks;
            }
        }
        all
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![CARD, KEY_CARD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(CARD, KEY_CARD)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let draw = |cell: &str, size: Size| -> Hinted<Arc<str>> { Ok(drawn(cell, size, cx)) };
        let mut rule = String::new();
        if view.start_mark {
            rule.push_str(RULE);
        }
        if View::after_sign(&view.cells).0 {
            rule.push_str(" The first cell only says: digits follow.");
        }
        let card = RowWords {
            part: CARD,
            title: cx.name("card-title", "Made to be felt"),
            text: &view.text,
            rule: rule.trim(),
            start: view.start_mark,
            alt: "A row of cells, each with some of six dots",
        };
        let key = KeyWords {
            part: KEY_CARD,
            title: cx.name("key-title", "Cells of six"),
            rule: "A large dot is raised, a speck is not.",
            square: false,
            alt: "A table that gives a letter or digit for each cell of six dots",
        };
        Ok(vec![signs::row_card(cx, &card, &view.cells, &draw)?, signs::key_card(cx, &key, &view.key, &draw)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        let (number, cells) = View::after_sign(&view.cells);
        let first = if number { " The first cell is the number sign and says that digits follow." } else { "" };
        let digits = |entry: &&Entry| !number || entry.symbol.is_ascii_digit();
        let key: Vec<Entry> = view.key.iter().filter(digits).cloned().collect();
        format!(
            "{} is read from the start mark to the right.{first} By {}, {}.",
            capital(card_name(cx)),
            key_name(cx),
            signs::steps(cells, &key)
        )
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        let unmarked = View { start_mark: false, ..view.clone() };
        slips::without(self, &unmarked, lock, "they hold the card upside down: ask where the start mark is.")
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        format!("Look that nobody has written on {} and {}.", card_name(cx), key_name(cx))
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        let (card, key) = (card_name(cx), key_name(cx));
        let first = if View::after_sign(&view.cells).0 { " The first cell gives no digit of its own." } else { "" };
        HintLadder {
            nudge: format!("The dots on {card} stand in groups of six places. Fingers read such dots."),
            method: format!("Compare each cell on {card} with the cells on {key}: which of the six dots are large?"),
            giveaway: format!(
                "Begin at the arrowhead and go right.{first} Find each cell on {key}, write down what stands beside \
                 it, and set that on {}.",
                cx.lock_name
            ),
        }
    }
}

/// The order rule, as guests read it on the card.
const RULE: &str = "Start at the arrowhead. Read from left to right.";

fn card_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CARD, "the card of dots")
}

fn key_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(KEY_CARD, "the key card")
}

/// A cell: two columns of three places; raised dots large, the others as specks.
fn drawn(cell: &str, size: Size, cx: &Dressing<'_>) -> Arc<str> {
    let mut drawing = Drawing::new(size);
    let step = (size.h / 3.4).min(size.w / 2.4);
    let left = size.w / 2.0 - step / 2.0;
    let top = size.h / 2.0 - step;
    for (dot, column, row) in
        [('1', 0.0, 0.0), ('2', 0.0, 1.0), ('3', 0.0, 2.0), ('4', 1.0, 0.0), ('5', 1.0, 1.0), ('6', 1.0, 2.0)]
    {
        let raised = cell.contains(dot);
        let radius = if raised { step * 0.34 } else { (step * 0.09).max(mm(0.15)) };
        let colour = cx.colour(if raised { "ink" } else { "line" });
        drawing.circle(left + step * column, top + step * row, radius, Pen::fill(colour));
    }
    drawing.svg()
}

const HELP: &str = "\
## What it does
A card shows a row of braille cells, drawn large; a key card, found elsewhere, gives the letter or digit for each cell.
Cells are those of Unified English Braille, uncontracted. The answer is digits, or letters A to Z.

## Setup
- `text`: a line above the cells; empty for none.
- `start_mark`: whether an arrowhead stands before the first cell, and the card says to begin there.
- `number_sign`: whether the number sign stands before digits, and the card says so.
- `key`: `fitting` (digits or letters, as the answer has) or `both`.

## Example
(
    text: \"The blind ringer marked the rope:\",
    start_mark: true,
    key: fitting,
)

## Traps
- Without a start mark the card may be read upside down, and some cells are then other letters.
- Digits and letters share cells: with both on the key and no number sign, a spoken answer reads two ways.
- A cell that the key card lacks is remarked.
- It is drawn, not embossed: those who read by touch need the host to copy it with raised dots.
";
