use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags a lock that more than one puzzle opens.
    ///
    /// ## Why it matters at the table
    /// Once one of them is solved, the others are work for nothing; and with other answers they are wrong.
    ///
    /// ## How to mend
    /// Give each puzzle a lock of its own.
    TwoPuzzlesOneLock, "two-puzzles-one-lock", Warns, "a lock that more than one puzzle opens",
    "once one of them is solved, the others are work for nothing", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for lock in &facts.kit.locks {
        let puzzles: Vec<_> = facts.kit.puzzles.iter().filter(|puzzle| puzzle.opens == lock.id).collect();
        if let [_, second, ..] = puzzles.as_slice() {
            let titles: Vec<String> = puzzles.iter().map(|puzzle| format!("\"{}\"", puzzle.title)).collect();
            let message = format!("{} all open {}", titles.join(" and "), lock.name);
            let draft = Draft::new(Anchor::Puzzle(second.id.clone(), PuzzleField::Opens), message);
            sink.add(draft.help("give each puzzle a lock of its own"));
        }
    }
}
