use std::collections::BTreeMap;

use super::{Draft, Facts, Sink, things};
use crate::face::Piece;

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
    let mut groups: BTreeMap<&str, Vec<&Piece>> = BTreeMap::new();
    for piece in facts.party.pieces.iter().filter(|piece| piece.on_a_thing && piece.measured) {
        groups.entry(&piece.group).or_default().push(piece);
    }
    for pieces in groups.values() {
        let Some(first) = pieces.first() else { continue };
        let (w, h) = (first.front.size.w.get(), first.front.size.h.get());
        let more = match pieces.len() - 1 {
            0 => String::new(),
            1 => " and 1 more piece".to_owned(),
            more => format!(" and {more} more pieces"),
        };
        let message = format!("\"{}\" ({w:.0} × {h:.0} mm){more} must come out at true size", first.label);
        let draft = Draft::new(things::of_piece(first), message);
        sink.add(draft.help("print at 100 %, measure the check bar, and hold one piece to its thing before you cut the rest"));
    }
}
