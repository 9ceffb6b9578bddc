use super::{Draft, Facts, Sink, things};

check!(
    /// ## What it does
    /// Flags a picture made of pixels that has fewer than 150 to the inch at the size at which it is printed.
    ///
    /// ## Why it matters at the table
    /// It comes out blurred or in steps, and small things in it can no longer be made out. 150 to the inch at least is
    /// common practice, no source; 300 are sharp.
    ///
    /// ## How to mend
    /// Take the picture in a larger size from where it came, or print it smaller. Scaling it up in a program adds pixels
    /// and no sharpness. A drawing saved as SVG is sharp at every size.
    ArtTooCoarse, "art-too-coarse", Warns, "a picture of fewer than 150 pixels to the inch in print",
    "it comes out blurred, and small things in it can no longer be made out", run
);

/// Least pixels to the inch.
const LEAST: f64 = 150.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for piece in &facts.party.pieces {
        for art in std::iter::once(&piece.front).chain(&piece.back).flat_map(|face| face.arts()) {
            let Some(dots) = art.dots_per_inch().filter(|dots| *dots < LEAST) else { continue };
            let message = format!(
                "a picture on \"{}\" is printed with {dots:.0} pixels to the inch, fewer than {LEAST:.0}",
                piece.label
            );
            sink.add(Draft::new(things::of_piece(piece), message).help("take a larger picture, or print it smaller"));
        }
    }
}
