use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Trouble};

check!(
    /// ## What it does
    /// Flags a piece that cannot be drawn or set: a frame or symbol that the theme lacks, a slot that a frame does
    /// not have. A picture that cannot be read is flagged by `theme-incomplete`.
    ///
    /// ## Why it matters at the table
    /// The piece is missing from the printed sheets.
    ///
    /// ## How to mend
    /// Add what is missing to the theme, or choose another theme.
    PieceUnmade, "piece-unmade", Blocks, "a piece that cannot be drawn or set",
    "the piece would be missing from the printed sheets", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (anchor, trouble) in &facts.party.troubles {
        sink.add(Draft::of(super::ladder::settled(facts, anchor), trouble));
    }
    let unset = |trouble: &Trouble, piece: &str| {
        let anchor = if piece == "letter" { Anchor::Letter } else { Anchor::Piece(piece.to_owned()) };
        Draft::of(anchor, trouble)
    };
    for piece in facts.set {
        if let Some(trouble) = &piece.trouble {
            sink.add(unset(trouble, &piece.piece));
        }
    }
}
