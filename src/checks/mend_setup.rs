//! Mends of a setup: one field put back to what the mechanic's default has, where that leaves one reading.

use super::{Facts, Finding, Fix, FixKind, mends, trying};
use crate::diag::{Anchor, Level};
use crate::kit::edit::Edit;
use crate::kit::file::nearest;
use crate::kit::{Puzzle, RawSetup};
use crate::mechanics;
use crate::party::Trial;
use crate::readings::Verdict;

/// The single field of the puzzle's setup that, put back to its default, leaves the author's answer as the only
/// reading: an order that is stated again, a mark that is drawn again. Only choices are looked at (`true`, a name),
/// never what the author wrote.
pub(super) fn one_field(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.puzzle(id)?;
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
pub(super) fn with_setup(mut puzzle: Puzzle, level: Level, setup: RawSetup) -> Puzzle {
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
    let puzzle = facts.puzzle(id)?;
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

/// The single choice of the puzzle's setup that, put back to its default, takes a finding away.
pub(super) fn field_back(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.puzzle(id)?;
    let level = finding.level.unwrap_or(facts.party.level);
    let default = RawSetup::new(&mechanics::find(&puzzle.mechanic).ok()?.default_setup().ok()?).ok()?;
    let setup = puzzle.setup_at(level);
    let names = default.field_names();
    // A flag that the default leaves off may be what is wanted.
    let values = names.iter().flat_map(|name| {
        let own = default.field(name).filter(|value| is_choice(value));
        let turned = own.and_then(|own| match own {
            "true" => Some("false"),
            "false" => Some("true"),
            _ => None,
        });
        own.into_iter().chain(turned).map(move |value| (name, value))
    });
    let mends = values.filter(|(name, value)| setup.field(name) != Some(*value)).filter_map(|(name, value)| {
        let changed = setup.with_field(name, value)?;
        let title = format!("Set `{name}` to `{value}` in the setup");
        Some(trying::ask(title, vec![Edit::Puzzle(Box::new(with_setup(puzzle.clone(), level, changed)))]))
    });
    trying::sound(facts, finding, mends)
}

/// A field of the setup that the mechanic does not know under the nearest name that it knows, or taken out; else
/// another code that the mechanic can carry.
pub(super) fn accepted(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let puzzle = facts.puzzle(id)?;
    let level = finding.level.unwrap_or(facts.party.level);
    let default = RawSetup::new(&mechanics::find(&puzzle.mechanic).ok()?.default_setup().ok()?).ok()?;
    let (setup, known) = (puzzle.setup_at(level), default.field_names());
    let strange: Vec<String> = setup.field_names().into_iter().filter(|name| !known.contains(name)).collect();
    let put = |title: String, changed: RawSetup| {
        trying::ask(title, vec![Edit::Puzzle(Box::new(with_setup(puzzle.clone(), level, changed)))])
    };
    let mends = strange.iter().flat_map(|name| {
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        let near = nearest(name, &known).filter(|near| setup.field(near).is_none());
        let near = near.and_then(|near| Some(put(format!("Write `{near}` for `{name}`"), setup.renamed(name, near)?)));
        let out = setup.without_field(name).map(|changed| put(format!("Take `{name}` out of the setup"), changed));
        near.into_iter().chain(out)
    });
    trying::sound(facts, finding, mends.collect::<Vec<Fix>>()).or_else(|| mends::other_code(facts, finding))
}
