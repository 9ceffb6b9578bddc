//! Symbols written in ink that shows under a UV torch only.

mod print;
mod reread;
mod solve;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::slips::Slip;
use crate::mechanics::words::{shared_out, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// See [`Meta::help`].
pub struct GlowInk;

const BOOK: &str = "book";
const NOTE: &str = "note";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    places: Vec<Spot>,
    order: Told,
    paper: Paper,
    loose: bool,
    baseline: bool,
    jacket: bool,
    jacket_title: String,
    jacket_text: String,
    note_title: String,
    note_text: String,
}

impl Default for Setup {
    fn default() -> Self {
        let spot = |name: &str, page| Spot { name: name.into(), page };
        Self {
            places: vec![
                spot("the page of the great storm", 12),
                spot("the page of the long wait", 31),
                spot("the last page", 84),
            ],
            order: Told::Listed,
            paper: Paper::Tinted,
            loose: false,
            baseline: true,
            jacket: true,
            jacket_title: "The Log".into(),
            jacket_text: "kept for a hundred years".into(),
            note_title: "To whoever comes next".into(),
            note_text: "What matters I wrote so that daylight cannot read it.".into(),
        }
    }
}

/// A place that the host writes at.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spot {
    name: String,
    #[serde(default)]
    page: u16,
}

impl Spot {
    /// As guests read it: the name, and the page where it has one.
    fn words(&self) -> String {
        if self.page == 0 { self.name.clone() } else { format!("{} (page {})", self.name, self.page) }
    }
}

/// How guests learn in which order the places are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told {
    /// The note lists the places.
    Listed,
    /// The note says: from the lowest page to the highest.
    Pages,
    /// Nothing says.
    Open,
}

/// What is written on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// Off-white, cream or old paper, which stays dark under the torch.
    Tinted,
    /// White paper, which glows by itself.
    White,
}

/// What stands at one place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Writing {
    place: Spot,
    symbols: Vec<char>,
}

/// What guests see under the torch, and what the note tells.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// What is written where, as one comes upon it when leafing through.
    writings: Vec<Writing>,
    order: Told,
    /// The places in the order in which the note lists them; empty when it lists none.
    listed: Vec<String>,
    paper: Paper,
    loose: bool,
    baseline: bool,
    jacket: bool,
    jacket_title: String,
    jacket_text: String,
    note_title: String,
    note_text: String,
}

/// What stands before the list of places on the note, and between two of them.
const LISTED: &str = "Read in this order. First ";
const NEXT: &str = ". Then ";

impl View {
    /// The order rule, as guests read it on the note; empty where the author leaves it open.
    fn rule(&self) -> String {
        if let [only] = self.writings.as_slice() {
            return format!("Look at {} and read from left to right.", only.place.words());
        }
        match self.order {
            Told::Listed => format!("{LISTED}{}.", self.listed.join(NEXT)),
            Told::Pages => "Read from the lowest page number to the highest.".into(),
            Told::Open => String::new(),
        }
    }

    fn has_note(&self) -> bool {
        !(self.note_text.trim().is_empty() && self.rule().is_empty())
    }
}

impl Mechanic for GlowInk {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "glow-ink",
        name: "Glow ink",
        guests: "read with a UV torch what the host wrote in ink that daylight does not show",
        order: "in one place from left to right; in several as the note says",
        prints: "a jacket for the book that is written in, and the note with the order",
        host: "writes a symbol or two in UV ink at each place",
        help: HELP,
        parts: &[
            Part { key: BOOK, name: "the book", printed: true, optional: false },
            Part { key: NOTE, name: "the note", printed: true, optional: true },
        ],
        minutes: (3, 6),
        least_age: 8,
        tools: &["uv-torch"],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, _: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        if setup.places.is_empty() {
            return Err(Trouble::new("no place is given to write at").hint("list at least one in `places`"));
        }
        if setup.places.iter().any(|place| place.name.trim().is_empty()) {
            return Err(Trouble::new("a place has no name").hint("name it as guests would: \"the last page\""));
        }
        if setup.places.len() > answer.len() {
            return Err(Trouble::new(format!(
                "there are {} places for the {} symbols of the answer",
                setup.places.len(),
                answer.len()
            ))
            .hint("take out some of `places`: each needs a symbol at least"));
        }
        let mut places = setup.places.clone();
        if setup.order == Told::Pages {
            // The lowest page gets the first symbol; a place without a page number cannot be ordered so and
            // shows up as several readings.
            places.sort_by_key(|place| place.page);
        }
        let listed = match setup.order {
            Told::Listed => places.iter().map(Spot::words).collect(),
            Told::Pages | Told::Open => Vec::new(),
        };
        let runs = shared_out(&answer, places.len());
        let mut writings: Vec<Writing> =
            places.into_iter().zip(runs).map(|(place, symbols)| Writing { place, symbols }).collect();
        // As one leafs through: by page, and where there is none by name, which tells nothing of the answer.
        writings.sort_by(|a, b| (a.place.page, &a.place.name).cmp(&(b.place.page, &b.place.name)));
        Ok(View {
            writings,
            order: setup.order,
            listed,
            paper: setup.paper,
            loose: setup.loose,
            baseline: setup.baseline,
            jacket: setup.jacket,
            jacket_title: setup.jacket_title.clone(),
            jacket_text: setup.jacket_text.clone(),
            note_title: setup.note_title.clone(),
            note_text: setup.note_text.clone(),
        })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        solve::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, view: &View) -> Vec<&'static str> {
        if view.has_note() { vec![BOOK, NOTE] } else { vec![BOOK] }
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let mut pieces = Vec::new();
        if view.jacket {
            pieces.push(print::jacket(view, cx)?);
        }
        if view.has_note() {
            pieces.push(print::note(view, cx)?);
        }
        Ok(pieces)
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

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        solve::slips(view)
    }

    fn loose(&self, view: &View) -> Vec<String> {
        let loose = view.loose && !view.baseline;
        view.writings.iter().filter(|_| loose).map(|writing| writing.symbols.iter().collect()).collect()
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
The host writes the answer's symbols in UV ink at one place or several; guests find them with a UV torch. Read
in one place from left to right, in several in the order that the note gives. Digits or letters, as the lock shows.

## Setup
- `places`: where the host writes, each with a `name` and, in a book, a `page` (0 for none). One place takes all
  symbols; several share them out, in the order in which they are listed here.
- `order`: how guests learn the order of several places. listed: the note lists them. pages: the note says to go
  from the lowest page to the highest. open: nothing says, which leaves several readings.
- `paper`: tinted, or white (which glows by itself and is remarked).
- `loose`: whether it is written on loose slips, which can lie upside down.
- `baseline`: whether symbols that can be read upside down get a line beneath.
- `jacket`, `jacket_title`, `jacket_text`: the printed jacket of the book.
- `note_title`, `note_text`: the note; the order rule is added to it.

## Example
    (
        places: [
            (name: \"the page of the first snow\", page: 12),
            (name: \"the page of the great bell\", page: 31),
            (name: \"the last page\", page: 84),
        ],
        order: listed,
        jacket_title: \"The Tower Log\",
        note_title: \"To whoever winds next\",
        note_text: \"What matters I wrote so that daylight cannot read it.\",
    )

## Traps
- Several places and no stated order; two places of the same name or page.
- Loose slips without a line: 6 and 9, or a run such as 18, read upside down.
- A torch that guests cannot reach yet (the flow check finds it).
- White paper glows by itself and drowns the ink.
";
