//! Symbols in wipe-off ink that go when wiped, and a few in lasting ink that stay.

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
use crate::mechanics::slips::Slip;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// See [`Meta::help`].
pub struct LastingInk;

const JAR: &str = "jar";
const LABEL: &str = "label";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    carrier: Carrier,
    decoys: u16,
    start: bool,
    direction: Direction,
    around_mm: f64,
    printed: bool,
    lid_mm: f64,
    label_title: String,
    label_text: String,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            carrier: Carrier::Jar,
            decoys: 14,
            start: true,
            direction: Direction::Rightwards,
            around_mm: 240.0,
            printed: true,
            lid_mm: 70.0,
            label_title: "Pickles".into(),
            label_text: "Not everything written here was meant to stay.".into(),
        }
    }
}

/// What is written on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Carrier {
    /// A round jar, read round the outside.
    Jar,
    /// A flat tile, read in rows.
    Tile,
}

/// The way round a jar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// To the right, as seen from outside.
    Rightwards,
    /// To the left.
    Leftwards,
    /// Not stated.
    Unstated,
}

/// A symbol at its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Symbol {
    text: char,
    /// Whether it stays when it is wiped.
    lasting: bool,
    /// The row, from the top.
    row: u16,
    /// Middle of the symbol, in millimetres: on a jar rightwards from the start mark, on a tile from the left.
    at: f64,
}

/// What guests see, before and after wiping.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    carrier: Carrier,
    symbols: Vec<Symbol>,
    /// A jar: the start mark is drawn. A tile: a mark shows which way is up.
    start: bool,
    direction: Direction,
    /// Millimetres round the jar, or across the tile.
    around_mm: f64,
    /// Millimetres from the middle of one symbol to the next.
    pitch_mm: f64,
    printed: bool,
    lid_mm: f64,
    label_title: String,
    label_text: String,
}

impl Mechanic for LastingInk {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "lasting-ink",
        name: "Lasting ink",
        guests: "wipe a jar or tile full of symbols; most go, and those in lasting ink stay",
        order: "on a jar from the start mark, the stated way round; on a tile row by row",
        prints: "the lid disc or label with the start and the way; if wanted the lasting symbols as a strip or sheet",
        host: "writes the decoys in wipe-off ink, and the rest in lasting ink where it is not printed",
        help: HELP,
        parts: &[
            Part { key: JAR, name: "the jar or tile full of symbols", printed: true, optional: false },
            Part { key: LABEL, name: "the lid or label that says where to start", printed: true, optional: false },
        ],
        minutes: (2, 5),
        least_age: 5,
        tools: &["cloth"],
        colour: false,
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

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![JAR, LABEL]
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

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        solve::slips(view, lock)
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reset(view, cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::hints(view, cx)
    }
}

const HELP: &str = "\
## What it does
A jar or a tile is covered with symbols. Most are written in wipe-off ink and go when somebody wipes them; a few are
in lasting ink and stay. Those are the answer: on a round jar from the start mark the stated way round, on a tile
row by row. Digits or letters, as the lock shows.

With `printed`, Inklatch prints the lasting symbols as a strip for the jar (or a sheet for the tile) in the
lettering that looks like handwriting. The host covers it with clear tape or a sheet protector and writes the decoys
on that with a wipe-off marker, where the host's template shows them. Without it, the host writes everything.

## Setup
- `carrier`: jar or tile.
- `decoys`: how many symbols go when wiped.
- `start`: on a jar, whether a start mark is drawn; on a tile, whether a mark shows which way is up.
- `direction`: the way round a jar: rightwards, leftwards, or unstated.
- `around_mm`: how long the way round the jar is in millimetres, or the width of the tile: 120 to 500.
- `printed`: whether the lasting symbols are printed.
- `lid_mm`: the diameter of the jar's lid disc in millimetres, 30 to 150.
- `label_title`, `label_text`: the words on the lid or label; the order rule is added.

## Example
    (
        carrier: jar,
        decoys: 14,
        direction: rightwards,
        around_mm: 240.0,
        label_title: \"Winter greens\",
        label_text: \"Not everything written here was meant to stay.\",
    )

## Traps
- A round jar without a start mark has as many first symbols as lasting ones; without a direction it also reads
  backwards.
- A tile that can be held upside down, when all that stays can be read that way.
- Lasting symbols so close to wipe-off ones that a wipe smears them: give them a finger's width.
- Ink where food or lips come: write on the outside only.
";
