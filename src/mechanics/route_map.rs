//! `route-map`: a map, and a card with a route; the signs at its stops, or on the shortest road, are the answer.

mod draw;
mod land;
mod lay;
mod read;
mod reread;
mod solved;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::signs;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::{Effort, Work};
use crate::readings::ways::Net;
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct RouteMap;

const MAP: &str = "map";
const CARD: &str = "route";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// A line of the story on the card.
    pub text: String,
    /// What kind of route the card gives.
    pub route: Route,
    /// Squares, or crossings, from west to east.
    pub cols: u8,
    /// Squares, or crossings, from north to south.
    pub rows: u8,
    /// Places with a sign that the route does not ask for.
    pub others: u8,
    /// The theme's symbols at the places that the card does not name; empty: all others, by chance.
    pub pictures: Vec<String>,
    /// How much work it shall be.
    pub work: Effort,
    /// The theme's symbol at which the route begins; empty: by chance.
    pub start: String,
    /// For a route by roads, the theme's symbol at which it ends; empty: by chance.
    pub goal: String,
    /// Whether the map has a north mark.
    pub north: bool,
    /// Whether the card says that only stops count, not what is passed.
    pub say_stops: bool,
}

/// What kind of route the card gives. A lock that is pushed has its own kind: the side to which each stop lies from the
/// one before.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Route {
    /// So many squares to the north, east, south, west, from stop to stop.
    Squares,
    /// The shortest way along the roads, from one place to another.
    Roads,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            text: String::new(),
            route: Route::Squares,
            cols: 8,
            rows: 8,
            others: 10,
            pictures: Vec::new(),
            work: Effort::Fair,
            start: String::new(),
            goal: String::new(),
            north: true,
            say_stops: true,
        }
    }
}

/// What guests see. Squares are counted row by row from the top left.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// A line of the story on the card.
    pub text: String,
    /// Squares from left to right.
    pub cols: usize,
    /// Squares from top to bottom.
    pub rows: usize,
    /// What stands on the map.
    pub places: Vec<Place>,
    /// Neighbouring squares that a road joins.
    pub roads: Vec<(usize, usize)>,
    /// Whether the map has a north mark; north is up.
    pub north: bool,
    /// What the card asks.
    pub task: Task,
    /// Whether the card says that only stops count, not what is passed.
    pub say_stops: bool,
}

/// Something on the map.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Its square.
    pub at: usize,
    /// The theme's symbol.
    pub picture: String,
    /// The digit or letter beside it.
    pub sign: Option<char>,
}

/// What the card asks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Task {
    /// From the place with this symbol, leg by leg; each leg ends at a stop.
    Legs(String, Vec<Vec<(Wind, usize)>>),
    /// By the shortest road from the place with the first symbol to that with the second.
    Shortest(String, String),
    /// From place to place, straight: the side to which each lies from the one before.
    Bearings(Vec<String>),
}

/// A direction of the compass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Wind {
    /// Up on the map.
    North,
    /// To the right.
    East,
    /// Down.
    South,
    /// To the left.
    West,
}

impl Wind {
    /// All four, clockwise.
    const ALL: [Self; 4] = [Self::North, Self::East, Self::South, Self::West];

    const fn word(self) -> &'static str {
        match self {
            Self::North => "north",
            Self::East => "east",
            Self::South => "south",
            Self::West => "west",
        }
    }

    /// As a lock's pushes are written.
    const fn push(self) -> char {
        match self {
            Self::North => 'U',
            Self::East => 'R',
            Self::South => 'D',
            Self::West => 'L',
        }
    }

    /// The direction so many quarter turns on, clockwise.
    fn turned(self, quarters: usize) -> Self {
        let at = Self::ALL.iter().position(|wind| *wind == self).unwrap_or_default();
        Self::ALL[(at + quarters) % 4]
    }
}

impl View {
    /// Whether its sides are within bounds and all that it names lies on it.
    fn whole(&self) -> bool {
        let (least, most) = limits::MAP_SIDE;
        let squares = self.cols.saturating_mul(self.rows);
        let near =
            |a: usize, b: usize| a.abs_diff(b) == self.cols || (a.abs_diff(b) == 1 && a / self.cols == b / self.cols);
        (least..=most).contains(&self.cols)
            && (least..=most).contains(&self.rows)
            && self.places.len() <= squares
            && self.places.iter().all(|place| place.at < squares)
            && self.roads.iter().all(|(a, b)| *a < squares && *b < squares && near(*a, *b))
            && match &self.task {
                Task::Legs(_, legs) => {
                    legs.len() <= limits::WHEELS && legs.iter().all(|leg| leg.len() <= 2 * limits::WHEELS)
                }
                Task::Bearings(stops) => stops.len() <= limits::WHEELS + 1,
                Task::Shortest(..) => true,
            }
    }

    /// The square one step on; none where the map ends.
    fn step(&self, from: usize, wind: Wind) -> Option<usize> {
        let (row, col) = (from / self.cols, from % self.cols);
        match wind {
            Wind::North => row.checked_sub(1).map(|row| row * self.cols + col),
            Wind::West => (col > 0).then(|| from - 1),
            Wind::East => (col + 1 < self.cols).then_some(from + 1),
            Wind::South => (row + 1 < self.rows).then_some(from + self.cols),
        }
    }

    /// The squares where a symbol stands.
    fn of(&self, picture: &str) -> Vec<usize> {
        self.places.iter().filter(|place| place.picture == picture).map(|place| place.at).collect()
    }

    /// The sign on a square.
    fn sign(&self, at: usize) -> Option<char> {
        self.places.iter().find(|place| place.at == at).and_then(|place| place.sign)
    }

    fn net(&self) -> Net {
        let mut net = Net::new(self.cols * self.rows);
        for (a, b) in &self.roads {
            net.link(*a, *b);
        }
        net
    }
}

impl Mechanic for RouteMap {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "route-map",
        name: "Route on a map",
        guests: "follow a route over a map and note the signs at its stops, or on the shortest road",
        order: "the route, from its start",
        prints: "the map, and the card with the route",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: MAP, name: "the map", printed: true, optional: false },
            Part { key: CARD, name: "the card with the route", printed: true, optional: false },
        ],
        minutes: (3, 7),
        least_age: 7,
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
        vec![MAP, CARD]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(MAP, CARD)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::map(view, cx)?, draw::card(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        Some(texts::work(view))
    }

    fn slips(&self, view: &View, lock: &LockKind) -> Vec<Slip> {
        read::slips(view, lock)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        format!("Erase any lines on {} and {}.", texts::map(cx), texts::card(cx))
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}
