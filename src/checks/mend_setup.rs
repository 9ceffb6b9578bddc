//! Mends of a setup: one field put back to what the mechanic's default has, where that leaves one reading.

use super::{Facts, Finding, Fix, FixKind};
use crate::diag::{Anchor, Level};
use crate::kit::edit::Edit;
use crate::kit::{Puzzle, RawSetup};
use crate::mechanics;
use crate::party::Trial;
use crate::readings::Verdict;

/// The single field of the puzzle's setup that, put back to its default, leaves the author's answer as the only
/// reading: an order that is stated again, a mark that is drawn again. Only choices are looked at (`true`, a name),
/// never what the author wrote.
pub(super) fn one_field(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.kit.puzzle(id)?;
    let answer = &facts.party.puzzle(id)?.answer;
    let level = finding.level.unwrap_or(facts.party.level);
    let default = RawSetup::new(&mechanics::find(&puzzle.mechanic).ok()?.default_setup().ok()?).ok()?;
    let setup = puzzle.setup_at(level);
    let trial = Trial::new(facts.kit, facts.theme, level).ok()?;
    let words = &trial.script().words;
    for name in default.field_names() {
        let Some(value) = default.field(&name).filter(|value| is_choice(value)) else { continue };
        if setup.field(&name) == Some(value) {
            continue;
        }
        let Some(changed) = setup.with_field(&name, value) else { continue };
        let Ok(filled) = words.fill_ron(changed.ron()) else { continue };
        let Ok((_, readings)) = trial.lay_setup(puzzle, &filled, answer) else { continue };
        if readings.verdict(answer) == Verdict::One {
            let title = format!("Set `{name}` to `{value}` in the setup");
            let edits = vec![Edit::Puzzle(Box::new(with_setup(puzzle.clone(), level, changed)))];
            return Some(Fix { title, kind: FixKind::Ask, edits });
        }
    }
    None
}

/// Whether a value is a choice among few: true, false, or a name.
fn is_choice(value: &str) -> bool {
    value.starts_with(|c: char| c.is_alphabetic()) && value.chars().all(|c| c.is_alphanumeric() || c == '_')
}

/// The puzzle with another setup in force at a level, written where the one before it was.
fn with_setup(mut puzzle: Puzzle, level: Level, setup: RawSetup) -> Puzzle {
    let change = match level {
        Level::Standard => None,
        Level::Gentle => puzzle.gentle.as_mut(),
        Level::Stiff => puzzle.stiff.as_mut(),
    };
    match change.filter(|change| change.setup.is_some()) {
        Some(change) => change.setup = Some(setup),
        None => puzzle.setup = setup,
    }
    puzzle
}

/// The answer that the puzzle's pieces give, where it is theirs whatever answer is asked for.
pub(super) fn read_answer(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.kit.puzzle(id)?;
    let [reading] = facts.party.puzzle(id)?.readings.list.as_slice() else { return None };
    for level in Level::ALL {
        let trial = Trial::new(facts.kit, facts.theme, level).ok()?;
        if trial.verdict(puzzle, &reading.answer).ok() != Some(Verdict::One) {
            return None;
        }
    }
    let mended = Puzzle { answer: reading.answer.clone(), ..puzzle.clone() };
    let title = format!("Take {} as the answer", reading.answer);
    Some(Fix { title, kind: FixKind::Ask, edits: vec![Edit::Puzzle(Box::new(mended))] })
}
