use super::{Draft, Facts, Sink, things};
use crate::face::{Face, Outline, TextRun};
use crate::units::{Mm, Rect};

check!(
    /// ## What it does
    /// Flags a text whose place lies less than 2 mm from the straight edges along which its piece is cut. Single symbols are left out.
    ///
    /// ## Why it matters at the table
    /// Scissors wander by a millimetre (common practice, no source), and then the first letters are gone.
    ///
    /// ## How to mend
    /// Draw the slot of the frame further from its edge, or make the label larger. A frame's slots keep 4 mm as a rule.
    ThinMargin, "thin-margin", Warns, "a text less than 2 mm from a cut edge",
    "scissors wander, and then the first letters are gone", run
);

/// Least distance of a text from the cut.
const LEAST: Mm = Mm::new(2.0);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for piece in &facts.party.pieces {
        for face in std::iter::once(&piece.front).chain(&piece.back) {
            let Some((words, edge)) = nearest(face) else { continue };
            let message = format!("\"{words}\" on \"{}\" stands {:.1} mm from the cut edge", piece.label, edge.get());
            sink.add(Draft::new(things::of_piece(piece), message).help("draw the slot further from the frame's edge"));
        }
    }
}

/// The text nearest to a straight cut, if one is too near: its first words and its distance.
fn nearest(face: &Face) -> Option<(String, Mm)> {
    /// Characters of a text that are quoted.
    const QUOTED: usize = 24;
    /// Characters of a symbol with its brackets.
    const SYMBOL: usize = 4;
    if face.outline != Outline::Rect {
        return None;
    }
    let cut = Rect::of(face.size);
    let off = |r: Rect| (r.x - cut.x).min(r.y - cut.y).min(cut.right() - r.right()).min(cut.bottom() - r.bottom());
    // The ink of a single symbol stands in the middle of its place, far from the place's edge.
    let counts = |run: &&TextRun| run.turn == 0.0 && run.text.text().chars().count() > SYMBOL;
    let near = face.runs().filter(counts).map(|run| (run, off(run.rect))).filter(|(_, off)| *off < LEAST);
    let (run, off) = near.min_by(|a, b| a.1.get().total_cmp(&b.1.get()))?;
    Some((run.text.text().chars().take(QUOTED).collect(), off.max(Mm::ZERO)))
}
