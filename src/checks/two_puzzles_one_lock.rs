use std::collections::{BTreeMap, BTreeSet};

use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::ids::LockId;
use crate::kit::Puzzle;

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
    "once one of them is solved, the others are work for nothing", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let mut openers: BTreeMap<&LockId, Vec<&Puzzle>> = BTreeMap::new();
    facts.kit.puzzles.iter().for_each(|puzzle| openers.entry(&puzzle.opens).or_default().push(puzzle));
    for lock in &facts.kit.locks {
        let puzzles = openers.get(&lock.id).map_or(&[][..], Vec::as_slice);
        if let [_, second, ..] = puzzles {
            let titles: Vec<String> = puzzles.iter().map(|puzzle| format!("\"{}\"", puzzle.title)).collect();
            let many = if titles.len() == 2 { "both" } else { "all" };
            let message = format!("{} {many} open {}", titles.join(" and "), lock.name);
            let draft = Draft::new(Anchor::Puzzle(second.id.clone(), PuzzleField::Opens), message);
            sink.add(draft.help("give each puzzle a lock of its own"));
        }
    }
}

/// Another lock for the second puzzle, one that no puzzle opens.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.puzzle(id)?;
    let opened: BTreeSet<&LockId> = facts.kit.puzzles.iter().map(|puzzle| &puzzle.opens).collect();
    let free = facts.kit.locks.iter().filter(|lock| !opened.contains(&lock.id));
    let mends = free.map(|lock| {
        let title = facts.party.say(&format!("Let \"{}\" open {}", puzzle.title, lock.name));
        trying::ask(title, vec![trying::opening(puzzle, lock)])
    });
    trying::sound(facts, finding, mends)
}
