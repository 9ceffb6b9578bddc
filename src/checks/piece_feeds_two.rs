use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};
use crate::face::{Audience, Piece};
use crate::ids::PuzzleId;
use crate::party::words_of;

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
        .filter_map(|piece| Some((owner(piece)?, piece, words_of(piece).printed)))
        .filter(|(_, _, printed)| printed.iter().flat_map(|text| text.split_whitespace()).count() >= LEAST_WORDS)
        .collect();
    for (at, (owner, piece, printed)) in pieces.iter().enumerate() {
        let twin = pieces[..at].iter().find(|(other, _, theirs)| other != owner && theirs == printed);
        let Some((other, ..)) = twin else { continue };
        let title = |id| facts.kit.puzzle(id).map_or("", |puzzle| puzzle.title.as_str());
        let message = format!("\"{}\" and \"{}\" print the same piece: {}", title(other), title(owner), piece.part);
        let anchor = Anchor::Puzzle(owner.clone(), PuzzleField::Part(piece.part.clone()));
        sink.add(Draft::new(anchor, message).help("let one of them use another key, or say that the card serves twice"));
    }
}

/// The puzzle to which a piece belongs, as its texts say.
fn owner(piece: &Piece) -> Option<PuzzleId> {
    piece.front.runs().find_map(|run| match &run.from {
        Anchor::Puzzle(id, field) if !matches!(field, PuzzleField::Hint(..)) => Some(id.clone()),
        _ => None,
    })
}
