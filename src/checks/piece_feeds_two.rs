use std::collections::BTreeMap;

use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};
use crate::face::{Audience, Face, Piece};
use crate::ids::PuzzleId;

check!(
    /// ## What it does
    /// Notes a printed piece that two puzzles have in common: word for word the same, such as one key card for two
    /// messages in the same signs.
    ///
    /// ## Why it matters at the table
    /// A piece that has done its work is laid aside; the group that finds its twin wonders which of the two to use.
    ///
    /// ## How to mend
    /// Let one of the puzzles use another key or other signs, or say in the letter that a card serves twice.
    PieceFeedsTwo, "piece-feeds-two", Notes, "a piece that two puzzles have in common",
    "a piece that has done its work is laid aside, and its twin confuses", run
);

/// Pieces with fewer words in them, such as labels, are alike without being clues.
const LEAST_WORDS: usize = 6;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let pieces: Vec<(PuzzleId, &Piece, Vec<String>)> = facts
        .party
        .pieces
        .iter()
        .filter(|piece| piece.audience == Audience::Players)
        .filter_map(|piece| Some((owner(piece)?, piece, printed(piece))))
        .filter(|(_, _, printed)| printed.iter().flat_map(|text| text.split_whitespace()).count() >= LEAST_WORDS)
        .collect();
    let mut known: BTreeMap<&[String], Vec<&PuzzleId>> = BTreeMap::new();
    for (owner, piece, printed) in &pieces {
        let alike = known.entry(printed).or_default();
        let twin = alike.iter().find(|other| **other != owner).copied();
        alike.push(owner);
        let Some(other) = twin else { continue };
        let title = |id| facts.puzzle(id).map_or("", |puzzle| puzzle.title.as_str());
        let message = format!("\"{}\" and \"{}\" print the same piece: {}", title(other), title(owner), piece.part);
        let anchor = Anchor::Puzzle(owner.clone(), PuzzleField::Part(piece.part.clone()));
        sink.add(Draft::new(anchor, message).help("let one of them use another key, or say that the card serves twice"));
    }
}

/// The texts within the cut line.
fn printed(piece: &Piece) -> Vec<String> {
    std::iter::once(&piece.front).chain(&piece.back).flat_map(Face::runs).map(|run| run.text.text()).collect()
}

/// The puzzle to which a piece belongs, as its texts say.
fn owner(piece: &Piece) -> Option<PuzzleId> {
    piece.front.runs().find_map(|run| match &run.from {
        Anchor::Puzzle(id, field) if !matches!(field, PuzzleField::Hint(..)) => Some(id.clone()),
        _ => None,
    })
}
