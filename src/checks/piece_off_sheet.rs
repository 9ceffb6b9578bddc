use super::{Draft, Facts, Sink, things};
use crate::sheet::{Paper, holds};

check!(
    /// ## What it does
    /// Flags a piece that no sheet of A4 or of US Letter takes at its true size, upright or turned, with its label and
    /// inside the margin that home printers keep clear.
    ///
    /// ## Why it matters at the table
    /// It cannot be printed whole, so the export of that paper stops.
    ///
    /// ## How to mend
    /// Make the piece smaller, or two pieces that are joined. In the large-print edition pieces are parted by
    /// themselves.
    PieceOffSheet, "piece-off-sheet", Blocks, "a piece that no sheet takes", "it cannot be printed whole", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for piece in &facts.party.pieces {
        for paper in Paper::ALL {
            if let Err(trouble) = holds(piece, paper) {
                let mut draft = Draft::new(things::of_piece(piece), trouble.message);
                for hint in trouble.hints {
                    draft = draft.help(hint);
                }
                sink.add(draft);
            }
        }
    }
}
