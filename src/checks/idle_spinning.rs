use std::collections::BTreeMap;

use super::{Draft, Facts, Sink, ladder, mends};
use crate::codes::{minutes, says, time_to_try};
use crate::diag::{Anchor, Step};
use crate::ids::PuzzleId;
use crate::kit::Puzzle;
use crate::mechanics;
use crate::party::{LockLeft, lock_table};

check!(
    /// ## What it does
    /// Flags a lock whose codes can all be tried in less time than its puzzle is meant to take, and a nudge or a method
    /// that leaves so few codes. A try is taken to last three seconds (common practice, no source).
    ///
    /// ## Why it matters at the table
    /// One guest turns the wheels while the others read, and the lock opens before the puzzle is understood.
    ///
    /// ## How to mend
    /// Use a lock with more wheels, or let the hint say where to look and what to do, but nothing of the code.
    IdleSpinning, "idle-spinning", Warns, "a lock that falls to trying sooner than its puzzle is solved",
    "one guest turns the wheels while the others read, and the lock opens before the puzzle is understood", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let hints = ladder::hints(facts);
    let hints: BTreeMap<(&PuzzleId, Step), &ladder::Hint<'_>> =
        hints.iter().map(|hint| ((&hint.puzzle.id, hint.step), hint)).rev().collect();
    for row in lock_table(facts.kit, facts.party) {
        let (Some(puzzle), Some(lock)) = (facts.puzzle(&row.puzzle), facts.lock(&row.lock)) else { continue };
        let Some(meant) = meant(puzzle) else { continue };
        let LockLeft { left, .. } = row;
        if minutes(left.nothing) < meant {
            let message = format!(
                "all {} codes of {} are tried in {}, and \"{}\" is meant to take {meant:.0} minutes",
                left.nothing,
                lock.name,
                time_to_try(left.nothing),
                puzzle.title
            );
            let draft = Draft::new(Anchor::Lock(lock.id.clone()), message);
            sink.add(draft.help("use a lock with more wheels"));
            continue;
        }
        let mut before = left.nothing;
        for (step, left) in Step::ALL.iter().zip(left.steps).take(2) {
            let hint = hints.get(&(&puzzle.id, *step));
            let Some(hint) = hint.filter(|_| left < before && minutes(left) < meant) else { continue };
            before = left;
            // What gives the code itself is told by `hint-says-it`.
            let code = facts.party.puzzle(&puzzle.id).map_or("", |laid| laid.answer.as_str());
            if says(hint.text, &lock.kind, &crate::codes::as_set(&lock.kind, code)).is_some() {
                continue;
            }
            let codes = if left == 1 { "1 code".to_owned() } else { format!("{left} codes") };
            let message =
                format!("the {} of \"{}\" leaves {codes}, which are tried in {}", step.word(), puzzle.title, time_to_try(left));
            let draft = Draft::new(hint.anchor.clone(), message);
            let draft = draft.help("say where to look or what to do, and nothing of the code");
            sink.add(mends::with_drafted(facts, draft, hint));
        }
    }
}

/// How many minutes a puzzle is meant to take: the author's, else the middle of what its mechanic says.
fn meant(puzzle: &Puzzle) -> Option<f64> {
    puzzle.minutes.or_else(|| {
        let (least, most) = mechanics::find(&puzzle.mechanic).ok()?.meta().minutes;
        Some(f64::midpoint(f64::from(least), f64::from(most)))
    })
}
