use super::{Draft, Facts, Sink, mends, things};
use crate::codes::as_set;
use crate::diag::{Anchor, PuzzleField};
use crate::kit::LockKind;

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
        // A lock without wheels is a finding of its own.
        if lock.kind.spells(&answer) || lock.kind.wheels() == Some(0) {
            continue;
        }
        let count = answer.chars().count();
        let place = if matches!(lock.kind, LockKind::Directions(_)) { "as push" } else { "on wheel" };
        let off: Vec<String> = answer
            .chars()
            .enumerate()
            .filter(|(at, symbol)| !lock.kind.shows(*at, *symbol))
            .map(|(at, symbol)| format!("\"{symbol}\" {place} {}", at + 1))
            .collect();
        let what = match lock.kind.wheels() {
            _ if count == 0 => "is empty".to_owned(),
            Some(wheels) if wheels != count => format!("has {count} symbols"),
            _ => format!("has {}", off.join(", ")),
        };
        let kind = lock.kind.describe();
        let message = format!("the answer \"{answer}\" {what}, and {} has {kind}", lock.name);
        let mut draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Answer), message);
        if let Some(carries) = carries(&lock.kind, &answer) {
            draft = draft.help(carries);
        }
        sink.add(draft.help(format!("write an answer for {kind}, or let it open another lock")));
    }
}

/// What the wheels carry that the answer asks too much of; all of them where its length is wrong.
fn carries(kind: &LockKind, answer: &str) -> Option<String> {
    match kind {
        LockKind::Digits(_) => Some("each wheel carries the digits 0 to 9".into()),
        LockKind::Directions(_) => Some("a push is written U, D, L or R".into()),
        LockKind::Key | LockKind::Spoken => None,
        LockKind::Letters(wheels) => {
            let length = answer.chars().count() != wheels.len();
            let wanted = |at: usize| length || answer.chars().nth(at).is_some_and(|symbol| !kind.shows(at, symbol));
            let told: Vec<String> = wheels
                .iter()
                .enumerate()
                .filter(|(at, _)| wanted(*at))
                .map(|(at, wheel)| format!("wheel {} carries {}", at + 1, wheel.to_uppercase()))
                .collect();
            (!told.is_empty()).then(|| told.join(", "))
        }
    }
}
