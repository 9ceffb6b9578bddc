//! Mends that several checks offer.

use std::collections::BTreeMap;

use super::ladder::{self, Hint};
use super::{Draft, Facts, Finding, Fix, FixKind};
use crate::codes::{as_set, says};
use crate::diag::{Anchor, PuzzleField, Step};
use crate::ids::PuzzleId;
use crate::kit::LockKind;
use crate::kit::edit::Edit;
use crate::propose::{Wish, propose};

/// Likeness from which two texts are nearly the same: one minus the share of characters to change (common
/// practice, no source).
pub(super) const ALIKE: f64 = 0.85;

/// Whether two texts say nearly the same.
pub(super) fn alike(a: &str, b: &str) -> bool {
    let (a, b) = (a.to_lowercase(), b.to_lowercase());
    least_likeness(&a, &b) && strsim::normalized_levenshtein(&a, &b) >= ALIKE
}

/// Whether two texts can be alike by their characters alone: one that stands in one of them oftener than in the other
/// has to be changed, so most pairs are told apart without looking at the order.
fn least_likeness(a: &str, b: &str) -> bool {
    let mut surplus: BTreeMap<char, i64> = BTreeMap::new();
    a.chars().for_each(|c| *surplus.entry(c).or_default() += 1);
    b.chars().for_each(|c| *surplus.entry(c).or_default() -= 1);
    let more: i64 = surplus.values().filter(|n| **n > 0).sum();
    let fewer: i64 = -surplus.values().filter(|n| **n < 0).sum::<i64>();
    let most = a.chars().count().max(b.chars().count());
    more.max(fewer) as f64 <= (1.0 - ALIKE) * most as f64 + 1.0
}

/// Another code for the puzzle that a finding is about.
pub(super) fn other_code(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let puzzle = match (&finding.subject, &finding.anchor) {
        (Some(id), _) | (None, Anchor::Puzzle(id, _)) => id,
        _ => return None,
    };
    code_of(facts, puzzle)
}

fn code_of(facts: &Facts<'_>, puzzle: &PuzzleId) -> Option<Fix> {
    // No code goes with those of others that are unsound themselves; the proposal for one puzzle takes them as given.
    let proposal = propose(facts.kit, facts.theme, &Wish::only(facts.kit, puzzle)).ok()?;
    let change = proposal.changes.first()?;
    let title = facts.puzzle(puzzle).map_or_else(|| puzzle.to_string(), |puzzle| facts.party.say(&puzzle.title));
    let title = format!("Set the answer of \"{title}\" to {}", change.new);
    Some(Fix { title, kind: FixKind::Ask, edits: proposal.edits(facts.kit, facts.theme) })
}

/// Adds the mechanic's draft of a hint as a mend, where it is sound: it tells nothing of any code, and is like no other
/// step of the ladder.
pub(super) fn with_drafted(facts: &Facts<'_>, draft: Draft, hint: &Hint<'_>) -> Draft {
    let Some(laid) = facts.party.puzzle(&hint.puzzle.id) else { return draft };
    let Anchor::Puzzle(_, PuzzleField::Hint(level, step)) = hint.anchor else { return draft };
    let drafted = laid.drafted.step(step).trim();
    let others = Step::ALL.into_iter().filter(|other| *other != step).map(|other| laid.hints.step(other));
    if drafted.is_empty()
        || drafted == hint.text
        || others.into_iter().any(|other| alike(other, drafted))
        || tells(facts, drafted)
    {
        return draft;
    }
    let mended = ladder::with_step(hint.puzzle.clone(), level, step, drafted.to_owned());
    draft.fix("Take the mechanic's draft", FixKind::Ask, vec![Edit::Puzzle(Box::new(mended))])
}

/// Whether a text tells anything of the code of any puzzle.
fn tells(facts: &Facts<'_>, text: &str) -> bool {
    facts.kit.puzzles.iter().zip(&facts.party.puzzles).any(|(puzzle, laid)| {
        let lock = facts.lock(&puzzle.opens).filter(|lock| lock.kind != LockKind::Key);
        lock.is_some_and(|lock| says(text, &lock.kind, &as_set(&lock.kind, &laid.answer)).is_some())
    })
}
