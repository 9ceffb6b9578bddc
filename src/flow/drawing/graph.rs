use std::collections::BTreeMap;

use super::{Extent, Kind, Tie};
use crate::diag::{Anchor, PuzzleField};
use crate::flow::Flow;
use crate::kit::{Kit, Place, PropRole};

/// A kit as nodes and ties, before it is laid out.
#[derive(Clone, Debug, Default)]
pub(super) struct Graph {
    pub nodes: Vec<Bare>,
    pub ties: Vec<(usize, usize, Tie)>,
}

/// A node without a place.
#[derive(Clone, Debug)]
pub(super) struct Bare {
    pub at: Anchor,
    pub kind: Kind,
    pub name: String,
    pub round: Option<usize>,
}

impl Graph {
    pub fn new(kit: &Kit, flow: &Flow, extent: Extent) -> Self {
        let mut graph = Self::default();
        let mut known = BTreeMap::new();
        let all = extent == Extent::All;
        let mut add = |graph: &mut Self, at: Anchor, kind: Kind, name: &str, round: Option<usize>| {
            // Of two things with one id the first is the one that is meant; the other is a finding.
            known.entry(at.clone()).or_insert_with(|| {
                graph.nodes.push(Bare { at, kind, name: name.to_owned(), round });
                graph.nodes.len() - 1
            });
        };
        if all {
            for spot in &kit.spots {
                add(&mut graph, Anchor::Spot(spot.id.clone()), Kind::Spot, &spot.name, Some(0));
            }
        }
        for prop in &kit.props {
            let kind = match prop.role {
                PropRole::Tool => Kind::Tool,
                PropRole::Key(_) => Kind::Key,
                PropRole::Decoration | PropRole::Decoy | PropRole::Treat => Kind::Thing,
            };
            if all || kind != Kind::Thing {
                let round = flow.props.get(&prop.id).copied();
                add(&mut graph, Anchor::Prop(prop.id.clone()), kind, &prop.name, round);
            }
        }
        for puzzle in &kit.puzzles {
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole);
            add(&mut graph, at, Kind::Puzzle, &puzzle.title, flow.puzzles.get(&puzzle.id).copied());
        }
        for lock in &kit.locks {
            let round = flow.locks.get(&lock.id).copied();
            add(&mut graph, Anchor::Lock(lock.id.clone()), Kind::Lock, &lock.name, round);
        }
        for item in &kit.boxes {
            let round = flow.boxes.get(&item.id).copied();
            add(&mut graph, Anchor::Box(item.id.clone()), Kind::Box, &item.name, round);
        }
        let ends = extent != Extent::Part || kit.boxes.iter().any(|item| item.id == kit.finish.opens);
        if ends {
            add(&mut graph, Anchor::Finish, Kind::Finish, "The end", flow.finish_round);
        }
        graph.tie(kit, &known);
        graph
    }

    /// Adds the ties between known things; one that leads nowhere is a finding of its own.
    fn tie(&mut self, kit: &Kit, known: &BTreeMap<Anchor, usize>) {
        let of = |at: Anchor| known.get(&at).copied();
        let place = |place: &Place| match place {
            Place::Spot(id) => of(Anchor::Spot(id.clone())),
            Place::Box(id) => of(Anchor::Box(id.clone())),
        };
        let mut ties = Vec::new();
        let mut join = |from: Option<usize>, to: Option<usize>, tie: Tie| {
            if let (Some(from), Some(to)) = (from, to) {
                ties.push((from, to, tie));
            }
        };
        for prop in &kit.props {
            let own = of(Anchor::Prop(prop.id.clone()));
            join(place(&prop.place), own, Tie::Holds);
            if let PropRole::Key(lock) = &prop.role {
                join(own, of(Anchor::Lock(lock.clone())), Tie::Opens);
            }
        }
        for puzzle in &kit.puzzles {
            let own = of(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole));
            for at in puzzle.parts.values() {
                join(place(at), own, Tie::Holds);
            }
            for tool in &puzzle.tools {
                join(of(Anchor::Prop(tool.clone())), own, Tie::Needs);
            }
            join(own, of(Anchor::Lock(puzzle.opens.clone())), Tie::Opens);
        }
        for item in &kit.boxes {
            let own = of(Anchor::Box(item.id.clone()));
            join(place(&item.place), own, Tie::Holds);
            for lock in &item.locks {
                join(of(Anchor::Lock(lock.clone())), own, Tie::Shuts);
            }
        }
        join(of(Anchor::Box(kit.finish.opens.clone())), of(Anchor::Finish), Tie::Ends);
        // Several parts of one puzzle at one spot are one tie; a thing in itself is told by its finding.
        let mut seen = std::collections::BTreeSet::new();
        ties.retain(|tie| tie.0 != tie.1 && seen.insert(*tie));
        self.ties = ties;
    }
}
