use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::face::Audience;
use crate::theme::Edition;

check!(
    /// ## What it does
    /// Notes how much of the paper the pictures of a kit cover with ink, when it is a fifth and more over all pieces, or
    /// two fifths and more on single ones. It looks where the paper is read: in `check`, in an export, and in the window
    /// when nothing is being edited.
    ///
    /// ## Why it matters at the table
    /// Ink is dear, and card that is soaked with it curls and smears. A page of text covers about a twentieth (the test
    /// pages of ISO/IEC 19752 and 24712, from memory); the bounds here are common practice, no source.
    ///
    /// ## How to mend
    /// Export the low-ink edition as well: line work, the same puzzles. Or draw the frames of the theme lighter.
    MuchInk, "much-ink", Notes, "pictures that cover much of the paper with ink",
    "ink is dear, and soaked card curls and smears", run
);

/// Shares of the paper from which it is said: of all pieces together, and of one.
const MUCH: (f64, f64) = (0.2, 0.4);
/// Names that a finding lists.
const NAMED: usize = 4;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    // That edition is the mend.
    if facts.party.edition() == Edition::LowInk {
        return;
    }
    let (mut ink, mut paper) = (0.0, 0.0);
    let mut heavy: Vec<(&str, f64)> = Vec::new();
    for piece in facts.party.pieces.iter().filter(|piece| piece.audience != Audience::Host) {
        let set = facts.set.iter().find(|set| set.piece == piece.id && set.paper.is_none());
        let Some(share) = set.and_then(|set| set.ink) else { continue };
        let area = piece.front.size.w.get() * piece.front.size.h.get() * f64::from(piece.copies);
        ink += share * area;
        paper += area;
        if share >= MUCH.1 {
            heavy.push((&piece.label, share));
        }
    }
    let share = if paper > 0.0 { ink / paper } else { 0.0 };
    if share < MUCH.0 && heavy.is_empty() {
        return;
    }
    let percent = |share: f64| format!("{:.0} %", share * 100.0);
    let mut message = format!("pictures cover {} of the pieces with ink", percent(share));
    if !heavy.is_empty() {
        let named: Vec<String> =
            heavy.iter().take(NAMED).map(|(label, share)| format!("\"{label}\" {}", percent(*share))).collect();
        let more = heavy.len().saturating_sub(NAMED);
        let more = if more > 0 { format!(" and {more} more") } else { String::new() };
        message = format!("{message}; most on {}{more}", named.join(", "));
    }
    sink.add(Draft::new(Anchor::Theme, message).help(
        "export the low-ink edition as well: in the window at Print, Bundle; on the command line --edition low-ink",
    ));
}
