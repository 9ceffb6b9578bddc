use super::{Draft, Facts, Sink, things};
use crate::diag::Anchor;
use crate::face::Piece;
use crate::mechanics::words::listed;

check!(
    /// ## What it does
    /// Notes the pieces that go onto a thing of their size, such as a lid, a mug or a book, and so must come out of the
    /// printer at their true size.
    ///
    /// ## Why it matters at the table
    /// A printer that fits pages to the paper makes them up to 6 % smaller, and the strip no longer goes round the mug.
    /// Pieces that only go with one another shrink together and are not noted.
    ///
    /// ## How to mend
    /// Nothing to mend: print at 100 % and measure the check bar on the same sheet before you cut. Measure the thing as
    /// well, and put its size into the setup.
    ScaleCritical, "scale-critical", Notes, "a piece that must come out at its true size",
    "a printer that fits pages to the paper makes it too small for its thing", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let pieces: Vec<&Piece> = facts.party.pieces.iter().filter(|piece| piece.on_a_thing && piece.measured).collect();
    let Some(first) = pieces.first() else { return };
    // One note for all: they are printed, and measured, together.
    let mut named: Vec<String> = Vec::new();
    for piece in &pieces {
        let (w, h) = (piece.front.size.w.get(), piece.front.size.h.get());
        let what = piece.label.split(':').next().unwrap_or_default();
        let name = format!("\"{what}\" ({w:.0} × {h:.0} mm)");
        if !named.contains(&name) {
            named.push(name);
        }
    }
    let many = named.len();
    named.truncate(NAMED);
    if many > NAMED {
        named.push(format!("{} more", many - NAMED));
    }
    let at = if many == 1 { things::of_piece(first) } else { Anchor::Piece(first.id.clone()) };
    let draft = Draft::new(at, format!("{} must come out at true size", listed(&named)));
    sink.add(draft.help("print at 100 %, measure the check bar, and hold one piece to its thing before you cut the rest"));
}

/// Pieces that are named; of more only the number is told.
const NAMED: usize = 3;
