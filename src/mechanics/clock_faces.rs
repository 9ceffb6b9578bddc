//! `clock-faces`: clocks that stand at full hours; a card names them in order, and their hours are the digits.

mod draw;
mod read;
mod reread;
mod texts;

use rand::seq::SliceRandom as _;
use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::signs;
use crate::mechanics::slips::Slip;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct ClockFaces;

const CLOCKS: &str = "clocks";
const ORDER_CARD: &str = "order-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    names: Vec<String>,
    text: String,
    hour_hand: f64,
    say_order: bool,
    say_twelve: bool,
}

impl Default for Setup {
    fn default() -> Self {
        let names = ["attic", "stairs", "kitchen", "parlour", "cellar", "porch"];
        Self {
            names: names.iter().map(|name| (*name).to_owned()).collect(),
            text: String::new(),
            hour_hand: 0.6,
            say_order: true,
            say_twelve: true,
        }
    }
}

/// A clock at a full hour.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clock {
    name: String,
    /// 1 to 12; the long hand stands at 12.
    hour: u8,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    clocks: Vec<Clock>,
    /// The hour hand's length as a share of the minute hand's.
    hour_hand: f64,
    /// The clocks' names as the card lists them; empty: it lists none.
    order: Vec<String>,
    /// Whether the card says that hours run from 1 to 12.
    say_twelve: bool,
    text: String,
}

impl View {
    const fn has_card(&self) -> bool {
        !self.order.is_empty() || self.say_twelve || !self.text.is_empty()
    }
}

impl Mechanic for ClockFaces {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "clock-faces",
        name: "Clock faces",
        guests: "read the hours of several pictured clocks in the order that a card names",
        order: "the order in which the card names the clocks",
        prints: "a card for each clock, and the card with their order",
        host: "cuts them out, hangs the clocks where their names say, and lays the card elsewhere",
        help: texts::HELP,
        parts: &[
            Part { key: CLOCKS, name: "the clocks", printed: true, optional: false },
            Part { key: ORDER_CARD, name: "the card with the order", printed: true, optional: true },
        ],
        minutes: (3, 7),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        let hours = hours(&answer)?;
        let names: Vec<String> = setup.names.iter().map(|name| name.trim().to_owned()).collect();
        if names.len() < hours.len() {
            return Err(Trouble::new(format!(
                "the answer needs {} clocks, and {} are named",
                hours.len(),
                names.len()
            ))
            .hint("name one clock for each digit in `names`"));
        }
        if let Some(name) = names.iter().enumerate().find_map(|(index, name)| {
            let twice = names.iter().take(index).any(|other| other.eq_ignore_ascii_case(name));
            (twice || name.is_empty()).then_some(name)
        }) {
            return Err(Trouble::new(format!("\"{name}\" names no clock, or two"))
                .hint("give every clock a name of its own: two alike could not be told apart"));
        }
        if !(LEAST_HAND..=1.0).contains(&setup.hour_hand) {
            return Err(Trouble::new(format!(
                "`hour_hand` is {}, a share of the minute hand's length",
                setup.hour_hand
            ))
            .hint(format!("write a number from {LEAST_HAND} to 1; 0.6 is plain to see")));
        }
        // The clocks keep the author's order; the card names them in another, by chance.
        let mut places: Vec<usize> = (0..names.len()).take(hours.len()).collect();
        places.shuffle(rng);
        let mut placed: Vec<(usize, u8)> = places.into_iter().zip(hours).collect();
        let name = |place: usize| names.get(place).cloned().unwrap_or_default();
        let order = placed.iter().map(|(place, _)| name(*place)).collect();
        placed.sort_unstable();
        Ok(View {
            clocks: placed.into_iter().map(|(place, hour)| Clock { name: name(place), hour }).collect(),
            hour_hand: setup.hour_hand,
            order: if setup.say_order { order } else { Vec::new() },
            say_twelve: setup.say_twelve,
            text: setup.text.trim().to_owned(),
        })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, view: &View) -> Vec<&'static str> {
        if view.has_card() { vec![CLOCKS, ORDER_CARD] } else { vec![CLOCKS] }
    }

    fn apart(&self, view: &View) -> Vec<(&'static str, &'static str)> {
        if view.has_card() { vec![(CLOCKS, ORDER_CARD)] } else { Vec::new() }
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}

/// Shortest hour hand that still shows a direction.
const LEAST_HAND: f64 = 0.3;

/// The answer as full hours: a digit each, and 10 where a 0 follows a 1.
fn hours(answer: &[char]) -> Hinted<Vec<u8>> {
    let mut hours: Vec<u8> = Vec::new();
    for digit in answer.iter().filter_map(|digit| digit.to_digit(10)).filter_map(|digit| u8::try_from(digit).ok()) {
        match (digit, hours.last_mut()) {
            (0, Some(last)) if *last == 1 => *last = 10,
            (0, _) => {
                return Err(Trouble::new("no clock shows the hour 0, and the answer has a 0 that follows no 1")
                    .hint("take an answer without 0, or with 0 only after 1: a clock at 10 gives both digits"));
            }
            _ => hours.push(digit),
        }
    }
    if hours.len() > limits::WHEELS {
        return Err(Trouble::new("more clocks than a lock has wheels").hint("take a shorter answer"));
    }
    Ok(hours)
}
