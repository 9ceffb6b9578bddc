use super::text_overflows::tenths;
use super::{Draft, Facts, Sink, ladder};
use crate::face::Audience;
use crate::party::LARGE;
use crate::theme::Edition;

check!(
    /// ## What it does
    /// Flags a text that is set below 12 points in the letter or below 9 points on any other piece for guests; below 16 points
    /// anywhere in the large-print edition.
    ///
    /// ## Why it matters at the table
    /// It is read by lamplight, by several people at once, some without their glasses. Clear-print guidance asks for
    /// 12 points at least, and for 16 in large print (UKAAF G003); 9 on cards is common practice, no source.
    ///
    /// ## How to mend
    /// Shorten the text, or choose a larger piece.
    TextTooSmall, "text-too-small", Warns, "a text below 9 points on a card or 12 in the letter",
    "it is read by lamplight, by several people at once", run
);

/// Least sizes in points: of the letter, of other pieces.
const LEAST: (f64, f64) = (12.0, 9.0);
/// Sizes are found by halving steps and may stand a little below what was asked.
const SLACK: f64 = 0.05;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let large = facts.party.edition() == Edition::LargePrint;
    for piece in facts.set.iter().filter(|piece| large || piece.audience != Audience::Host) {
        let least = match (large, piece.paper.is_some()) {
            (true, _) => LARGE.get(),
            (false, true) => LEAST.0,
            (false, false) => LEAST.1,
        };
        for fit in piece.fits.iter().filter(|fit| fit.size.get() < least - SLACK) {
            let size = tenths(fit.size.get());
            let message = format!("\"{}\" on {} is set at {size} pt, below {}", fit.words, piece.piece, tenths(least));
            let draft = Draft::new(ladder::settled(facts, &fit.from), message);
            sink.add(draft.help("shorten the text, or choose a larger piece"));
        }
    }
}
