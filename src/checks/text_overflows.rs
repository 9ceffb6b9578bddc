use super::{Draft, Facts, Sink, dress, ladder};

check!(
    /// ## What it does
    /// Flags a text that does not fit its place even at the least size.
    ///
    /// ## Why it matters at the table
    /// The end of the text lies over the art or off the card.
    ///
    /// ## How to mend
    /// Shorten the text, or choose a larger piece. Where a frame of the theme is drawn far smaller than usual, draw it at
    /// true size.
    TextOverflows, "text-overflows", Blocks, "a text that does not fit its place",
    "the end of the text lies over the art or off the card", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for piece in facts.set {
        for fit in piece.fits.iter().filter(|fit| fit.overflows) {
            let on = match piece.paper {
                Some(paper) => format!("{} on {} paper", piece.piece, paper.word()),
                None => piece.piece.clone(),
            };
            let message = format!("\"{}\" does not fit on {on} at {} pt", fit.words, tenths(fit.least.get()));
            let draft = Draft::new(ladder::settled(facts, &fit.from), message);
            let size = facts.party.piece(&piece.piece).map(|piece| piece.front.size);
            let small = size.and_then(|size| dress::blame(facts.theme, &facts.party.palette, size));
            sink.add(draft.help(small.unwrap_or_else(|| "shorten the text".to_owned())));
        }
    }
}

/// A size with at most one decimal.
pub(super) fn tenths(value: f64) -> String {
    format!("{value:.1}").trim_end_matches(".0").to_owned()
}
