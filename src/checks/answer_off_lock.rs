use super::{Draft, Facts, Sink, mends, things};
use crate::codes::as_set;
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags an answer that its lock cannot show: too long, too short, or with a symbol that a wheel does not carry.
    ///
    /// ## Why it matters at the table
    /// The host cannot set the lock; if it is found on the evening, there is no evening.
    ///
    /// ## How to mend
    /// Choose an answer with as many symbols as the lock has wheels, or another lock.
    AnswerOffLock, "answer-off-lock", Blocks, "an answer that its lock cannot show", "the host cannot set the lock", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        let Some(lock) = facts.lock(&puzzle.opens) else { continue };
        let answer = as_set(&lock.kind, &laid.answer);
        if lock.kind.spells(&answer) {
            continue;
        }
        let count = answer.chars().count();
        let off: Vec<String> = answer
            .chars()
            .enumerate()
            .filter(|(at, symbol)| !lock.kind.shows(*at, *symbol))
            .map(|(at, symbol)| format!("\"{symbol}\" on wheel {}", at + 1))
            .collect();
        let what = match lock.kind.wheels() {
            _ if count == 0 => "is empty".to_owned(),
            Some(wheels) if wheels != count => format!("has {count} symbols"),
            _ => format!("has {}", off.join(", ")),
        };
        let kind = lock.kind.describe();
        let message = format!("the answer \"{answer}\" {what}, and {} has {kind}", lock.name);
        let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Answer), message);
        sink.add(draft.help(format!("write an answer for {kind}, or let it open another lock")));
    }
}
