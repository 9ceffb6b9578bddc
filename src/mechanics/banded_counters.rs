//! A jar full of small banded things, a few of them numbered; a card names the bands in order.

mod arrange;
mod print;
mod reread;
mod solve;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use crate::theme::Colour;

/// See [`Meta::help`].
pub struct BandedCounters;

const JAR: &str = "jar";
const ORDER_CARD: &str = "order-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    bands: Vec<String>,
    plain: u16,
    other_bands: Vec<String>,
    twins: bool,
    baseline: bool,
    order_card: bool,
    discs: bool,
    lid_mm: f64,
    lid_title: String,
    card_title: String,
    card_text: String,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            bands: vec!["white".into(), "gold".into(), "blue".into()],
            plain: 36,
            other_bands: vec!["red".into()],
            twins: true,
            baseline: true,
            order_card: true,
            discs: false,
            lid_mm: 70.0,
            lid_title: "Spare parts".into(),
            card_title: "The count".into(),
            card_text: "Only a few have a number.".into(),
        }
    }
}

/// A sign drawn beside a band's digit and on the card, so that colour never stands alone. No ring: beside a digit it
/// reads as a nought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pattern {
    /// A triangle.
    Triangle,
    /// A cross.
    Cross,
    /// A square.
    Square,
    /// Two bars.
    Bars,
    /// A zigzag.
    Zigzag,
    /// Three dots.
    Dots,
    /// A plus sign.
    Plus,
    /// An arrowhead that is open below.
    Chevron,
}

impl Pattern {
    const ALL: [Self; 8] =
        [Self::Triangle, Self::Cross, Self::Square, Self::Zigzag, Self::Dots, Self::Bars, Self::Plus, Self::Chevron];

    /// How the host draws it.
    const fn drawn(self) -> &'static str {
        match self {
            Self::Cross => "a cross (two lines that cross slantwise)",
            Self::Triangle => "a triangle",
            Self::Square => "a square",
            Self::Bars => "two bars, one above the other",
            Self::Zigzag => "a zigzag (a line like an M)",
            Self::Dots => "three dots",
            Self::Plus => "a plus sign",
            Self::Chevron => "an arrowhead, point up, open below",
        }
    }

    /// As guests read it.
    const fn word(self) -> &'static str {
        match self {
            Self::Cross => "cross",
            Self::Triangle => "triangle",
            Self::Square => "square",
            Self::Bars => "two bars",
            Self::Zigzag => "zigzag",
            Self::Dots => "three dots",
            Self::Plus => "plus",
            Self::Chevron => "arrowhead",
        }
    }
}

/// A kind of band.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Band {
    name: String,
    colour: Colour,
    pattern: Option<Pattern>,
}

/// Counters that look alike.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Counter {
    /// The band it wears, by its place in the list of bands.
    band: Option<usize>,
    /// The digit on it; empty for a plain one.
    text: String,
    count: u16,
}

/// What guests see: what the jar holds, and the card.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    bands: Vec<Band>,
    /// In no order that tells anything.
    counters: Vec<Counter>,
    /// The bands in the order of the card, if there is one.
    card: Option<Vec<usize>>,
    baseline: bool,
    discs: bool,
    lid_mm: f64,
    lid_title: String,
    card_title: String,
    card_text: String,
}

impl Mechanic for BandedCounters {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "banded-counters",
        name: "Banded counters",
        guests: "search a jar of small banded things for the few that carry a digit, and put those in order by their bands",
        order: "the order of the bands on the card",
        prints: "the disc for the jar's lid, the order card, and the counters themselves if wanted",
        host: "bands the counters, writes the digits and fills the jar",
        help: HELP,
        parts: &[
            Part { key: JAR, name: "the jar", printed: true, optional: false },
            Part { key: ORDER_CARD, name: "the order card", printed: true, optional: true },
        ],
        minutes: (3, 7),
        least_age: 5,
        tools: &[],
        colour: true,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        arrange::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        solve::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, view: &View) -> Vec<&'static str> {
        if view.card.is_some() { vec![JAR, ORDER_CARD] } else { vec![JAR] }
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        print::pieces(view, cx)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        texts::prep(view, cx)
    }

    fn kinds(&self, view: &View) -> Vec<(&'static str, String)> {
        texts::kinds(view)
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn loose(&self, view: &View) -> Vec<String> {
        view.counters.iter().filter(|_| !view.baseline).map(|counter| counter.text.clone()).collect()
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::hints(view, cx)
    }
}

const HELP: &str = "\
## What it does
A jar is two thirds full of small counters, each with a coloured band. A few carry a digit. A card names the
bands in order; the digits in that order open the lock. Each band has a pattern as well, so that nobody needs to
tell colours apart.

## Setup
- `bands`: the bands of the numbered counters, in the order of the answer's digits. Names are those under
  `colours` in the theme, or plain English ones (white, black, grey, red, orange, yellow, gold, green, blue, purple,
  brown, pink).
- `plain`: how many counters carry no digit.
- `other_bands`: further bands that only plain counters wear.
- `twins`: whether each band has a pattern of its own beside it, on the counter and on the card.
- `baseline`: whether digits have a line beneath, so that 6 and 9 cannot be mistaken on a counter that rolls.
- `order_card`: whether there is an order card; without one the order is anybody's guess.
- `discs`: whether the counters are printed as paper discs, for hosts without elastic bands.
- `lid_mm`: the diameter of the lid disc in millimetres, 30 to 150.
- `lid_title`, `card_title`, `card_text`: the words on the lid and on the card; the order rule is added to the card.

## Example
    (
        bands: [\"white\", \"gold\", \"blue\"],
        plain: 36,
        other_bands: [\"red\"],
        lid_title: \"Spare cogs\",
        card_title: \"How the winder counted\",
        card_text: \"Three cogs in the tin are numbered.\",
    )

## Traps
- No order card: every order of the digits reads.
- Two bands alike to colour-blind eyes or on a grey print, with no pattern to tell them apart (Machado,
  Oliveira and Fernandes 2009; CIEDE2000).
- A numbered counter that lost its band, or two with the same band.
- 6 and 9 without a line beneath.
";
