use super::{Draft, Facts, Sink};
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Notes a stretch of the evening in which only one puzzle is open at a time.
    ///
    /// ## Why it matters at the table
    /// One guest reads, the others wait.
    ///
    /// ## How to mend
    /// Let one lock open the way to two puzzles, or lay a piece of a later puzzle out from the start.
    SingleFile, "single-file", Notes, "only one puzzle is open for a long stretch", "one guest reads, the others wait",
    run
);

/// Rounds in a row with one open puzzle that make a stretch (common practice, no source).
const STRETCH: usize = 3;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let open = facts.flow.open_per_round();
    let longest = open.split(|count| *count != 1).map(<[usize]>::len).max().unwrap_or_default();
    if longest >= STRETCH {
        let rounds: Vec<String> = open.iter().map(usize::to_string).collect();
        let message = format!("{longest} rounds in a row have one open puzzle (open by round: {})", rounds.join(", "));
        sink.add(Draft::new(Anchor::Kit, message).help("let one lock open the way to two puzzles"));
    }
}
