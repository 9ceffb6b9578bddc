use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::flow::facts::STRETCH;

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

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let Some(stretch) = facts.flow.single_file().filter(|stretch| stretch.len() >= STRETCH) else { return };
    let rounds: Vec<String> = facts.flow.open_per_round().iter().map(usize::to_string).collect();
    let message =
        format!("{} rounds in a row have one open puzzle (open by round: {})", stretch.len(), rounds.join(", "));
    sink.add(Draft::new(Anchor::Kit, message).help("let one lock open the way to two puzzles"));
}
