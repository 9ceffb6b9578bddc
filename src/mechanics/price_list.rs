//! `price-list`: bills tell what several things cost together; the price of each, in the order of a list, is the
//! answer.

mod draw;
mod lay;
mod read;
mod reread;
mod solved;
mod texts;
mod work;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::paper;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::{Effort, Work};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct PriceList;

const SHEET: &str = "bills";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// What is sold; each thing at one price. Things that the answer does not need stay off the bills.
    pub things: Vec<String>,
    /// What the prices are counted in.
    pub coin: String,
    /// Most pieces of one thing on a bill.
    pub most: u8,
    /// Bills beyond those that are needed.
    pub spare: u8,
    /// How much work it shall be.
    pub work: Effort,
}

impl Default for Setup {
    fn default() -> Self {
        let things = ["cup of tea", "honey bun", "roast apple", "bag of nuts", "gingerbread star", "bowl of soup"];
        Self {
            things: things.map(str::to_owned).to_vec(),
            coin: "pennies".into(),
            most: 3,
            spare: 0,
            work: Effort::Fair,
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// What is sold.
    pub things: Vec<String>,
    /// What the prices are counted in.
    pub coin: String,
    /// The bills.
    pub bills: Vec<Bill>,
    /// The places of the things whose prices are asked for, in the order of the answer.
    pub asked: Vec<usize>,
}

/// A bill.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bill {
    /// How many pieces of each thing, in the order of the things.
    pub pieces: Vec<u32>,
    /// What they cost together.
    pub total: u32,
}

impl View {
    /// The list that orders the answer, as the sheet prints it.
    fn order(&self) -> String {
        let asked: Vec<&str> = self.asked.iter().filter_map(|at| self.things.get(*at)).map(String::as_str).collect();
        format!("Read the prices of one piece each, in this order: {}.", asked.join("; "))
    }
}

impl Mechanic for PriceList {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "price-list",
        name: "Price list",
        guests: "work out from bills what each thing costs, and read the prices in the order of a list",
        order: "the list of things on the sheet",
        prints: "the sheet with the bills and the list",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of bills", printed: true, optional: false }],
        minutes: (4, 12),
        least_age: 9,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        lay::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        work::work(view)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
