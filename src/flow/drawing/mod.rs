//! The flow as a picture: a layered drawing from what lies open down to the finish, as plain data.
//!
//! Layers follow the rounds of the fastest play. Nodes of one layer stand in a row, edges run downwards from the
//! foot of one node to the head of another; an edge that closes a loop runs upwards and says so. The order within
//! the layers comes from a library for layered drawings and is then mended where two neighbours are better
//! swapped; same kit, same drawing. There are no answers in it.

mod graph;
mod layers;
mod order;
mod place;
mod shape;

use serde::Serialize;

use crate::diag::Anchor;
use crate::flow::Flow;
use crate::kit::Kit;

pub use shape::{outline, strokes};

/// Width of every node, in the drawing's own unit: a point of the window at 100 %.
pub const NODE_WIDTH: f64 = 148.0;
/// Height of every node: two lines of text.
pub const NODE_HEIGHT: f64 = 46.0;
/// Least gap between neighbours of a row.
pub const NODE_GAP: f64 = 16.0;

/// What a node stands for; each kind has an outline of its own ([`outline`]).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A place in the room.
    Spot,
    /// A box.
    Box,
    /// A lock.
    Lock,
    /// A puzzle.
    Puzzle,
    /// A tool that puzzles need.
    Tool,
    /// A key.
    Key,
    /// A prop that nothing needs.
    Thing,
    /// How it ends.
    Finish,
}

impl Kind {
    /// All kinds.
    pub const ALL: [Self; 8] =
        [Self::Spot, Self::Box, Self::Lock, Self::Puzzle, Self::Tool, Self::Key, Self::Thing, Self::Finish];

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Spot => "spot",
            Self::Box => "box",
            Self::Lock => "lock",
            Self::Puzzle => "puzzle",
            Self::Tool => "tool",
            Self::Key => "key",
            Self::Thing => "prop",
            Self::Finish => "finish",
        }
    }
}

/// What an edge says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tie {
    /// The second lies or stands in or at the first.
    Holds,
    /// The second needs the first.
    Needs,
    /// The first opens the second.
    Opens,
    /// The first shuts the second.
    Shuts,
    /// The second is the end, once the first is open.
    Ends,
}

/// How much of a kit is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Everything.
    All,
    /// What guests solve and open: no spots, and no props that nothing needs.
    Solving,
    /// The same of a kit that is a part of another: the end only where a box leads to it.
    Part,
}

/// A rectangle; y grows downwards.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub w: f64,
    /// Height.
    pub h: f64,
}

/// A node of the drawing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Node {
    /// Where in the kit it is.
    pub at: Anchor,
    /// What it is.
    pub kind: Kind,
    /// Its name, as the kit was given: with slots filled or not.
    pub name: String,
    /// The round in which it is solved, opened or to hand; none when it never is.
    pub round: Option<usize>,
    /// Where it stands in the drawing.
    pub rect: Rect,
}

/// An edge of the drawing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Edge {
    /// Number of the node that it leaves.
    pub from: usize,
    /// Number of the node that it reaches.
    pub to: usize,
    /// What it says.
    pub tie: Tie,
    /// Whether it runs upwards because it closes a loop.
    pub back: bool,
    /// Its bends with both ends, in its own direction. Between two points at different heights it may be drawn as
    /// a curve with upright ends: that crosses nothing that the straight line does not.
    pub points: Vec<(f64, f64)>,
}

/// The line above which a round begins.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RoundLine {
    /// The round, from 1.
    pub round: usize,
    /// Where it begins.
    pub y: f64,
}

/// The flow, drawn.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Drawing {
    /// The nodes, in the kit's order by kind.
    pub nodes: Vec<Node>,
    /// The edges.
    pub edges: Vec<Edge>,
    /// Where the rounds begin, the first first.
    pub rounds: Vec<RoundLine>,
    /// Width of the whole.
    pub width: f64,
    /// Height of the whole.
    pub height: f64,
}

impl Drawing {
    /// The node of a place in the kit. A field of a puzzle belongs to its puzzle.
    #[must_use]
    pub fn node(&self, at: &Anchor) -> Option<&Node> {
        let same = |node: &&Node| match (&node.at, at) {
            (Anchor::Puzzle(a, _), Anchor::Puzzle(b, _)) => a == b,
            (a, b) => a == b,
        };
        self.nodes.iter().find(same)
    }

    /// How often edges cross, counted over all pairs of straight pieces.
    #[must_use]
    pub fn crossings(&self) -> usize {
        let pieces: Vec<Vec<_>> = self
            .edges
            .iter()
            .map(|edge| edge.points.windows(2).filter_map(|w| Some((*w.first()?, *w.get(1)?))).collect())
            .collect();
        let mut count = 0;
        for (at, one) in pieces.iter().enumerate() {
            for other in pieces.iter().skip(at + 1) {
                count +=
                    one.iter().flat_map(|a| other.iter().map(move |b| (a, b))).filter(|(a, b)| cross(**a, **b)).count();
            }
        }
        count
    }
}

/// Draws the flow of `kit`. Names stand in it as they stand in `kit`: give it with its slots filled.
#[must_use]
pub fn draw(kit: &Kit, flow: &Flow, extent: Extent) -> Drawing {
    let graph = graph::Graph::new(kit, flow, extent);
    let layered = layers::Layered::new(&graph);
    let rows = order::rows(&layered);
    place::drawing(graph, &layered, &rows)
}

/// Whether two straight pieces cross at an inner point of both.
fn cross((a, b): ((f64, f64), (f64, f64)), (c, d): ((f64, f64), (f64, f64))) -> bool {
    let side = |p: (f64, f64), q: (f64, f64), r: (f64, f64)| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}
