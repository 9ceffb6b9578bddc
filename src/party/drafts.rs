use super::old_hints::{gone, shown_again};
use super::{LaidPuzzle, Party};
use crate::diag::{Anchor, Level, PuzzleField, Step};
use crate::kit::{Kit, OldHint, Puzzle};
use crate::theme::Loaded;

/// Gives each hint that was the mechanic's draft, word for word, the draft of the puzzle as it stands in `new`: other
/// answers, arrangements and themes make other drafts, and a hint that names what lay there before leads astray. Hints in
/// the author's own words stay; those that name what lay there before are remembered in [`crate::kit::Dressed::old_hints`].
pub fn follow_drafts((old, old_theme): (&Kit, &Loaded), new: &mut Kit, theme: &Loaded) {
    still_written(old, new);
    let dressed = old.theme != new.theme;
    let stays = |kit: &Kit, other: &Kit| {
        let mut kit = kit.clone();
        kit.puzzles.retain(|puzzle| other.puzzle(&puzzle.id).is_some_and(|known| dressed || known != puzzle));
        kit
    };
    let (before, after) = (stays(old, new), stays(new, old));
    for level in [Level::Standard, Level::Gentle, Level::Stiff] {
        // A palette that cannot be read is told by the proof.
        let (Ok(before), Ok(after)) = (Party::new(&before, old_theme, level), Party::new(&after, theme, level)) else {
            continue;
        };
        for was in &before.puzzles {
            let Some(is) = after.puzzle(&was.id) else { continue };
            shown_again(&mut new.dressed.old_hints, was, is);
            for step in Step::ALL {
                let Some(puzzle) = new.puzzle_mut(&was.id) else { continue };
                let (draft, todays) = (was.drafted.step(step).trim(), is.drafted.step(step).trim());
                let taken = !draft.is_empty() && was.hints.step(step).trim() == draft;
                if !taken {
                    remember(new, was, is, (level, step));
                    continue;
                }
                // Levels without a text of their own have the standard level's, which comes first.
                if !todays.is_empty() && puzzle.hints_at(level).step(step).trim() != todays {
                    todays.clone_into(puzzle.hints_mut(level).step_mut(step));
                }
            }
        }
    }
}

/// Remembers a hint in the author's own words that says what is gone.
fn remember(new: &mut Kit, was: &LaidPuzzle, is: &LaidPuzzle, (level, step): (Level, Step)) {
    let says = gone(new, was, is, step);
    let Some(puzzle) = new.puzzle(&is.id).filter(|_| !says.is_empty()) else { return };
    let at = place(puzzle, level, step);
    let text = puzzle.hints_at(level).step(step).trim().to_owned();
    match new.dressed.old_hints.iter_mut().find(|known| known.at == at) {
        Some(known) if known.text == text => {
            known.says.extend(says);
            known.says.sort();
            known.says.dedup();
        }
        Some(known) => *known = OldHint { at, text, says },
        None => new.dressed.old_hints.push(OldHint { at, text, says }),
    }
}

/// Where the text of a hint at a level is written, in words.
fn place(puzzle: &Puzzle, level: Level, step: Step) -> String {
    let own = puzzle.change(level).and_then(|change| change.hints.as_ref());
    let own = own.is_some_and(|hints| !hints.step(step).trim().is_empty());
    let level = if own { level } else { Level::Standard };
    Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(level, step)).to_string()
}

/// Forgets what is remembered of hints that were written anew since; where a word in one was exchanged on the way from
/// `old`, it is still the same hint.
fn still_written(old: &Kit, new: &mut Kit) {
    if new.dressed.old_hints.is_empty() {
        return;
    }
    let texts = |kit: &Kit| -> Vec<(String, String)> {
        let levels = [Level::Standard, Level::Gentle, Level::Stiff];
        let steps = levels.iter().flat_map(|level| Step::ALL.map(|step| (*level, step)));
        let of = |puzzle: &Puzzle| {
            steps
                .clone()
                .map(|(level, step)| (place(puzzle, level, step), puzzle.hints_at(level).step(step).trim().to_owned()))
                .collect::<Vec<_>>()
        };
        kit.puzzles.iter().flat_map(of).collect()
    };
    let (before, now) = (texts(old), texts(new));
    let text =
        |list: &[(String, String)], at: &str| list.iter().find(|(known, _)| known == at).map(|(_, text)| text.clone());
    new.dressed.old_hints.retain_mut(|record| {
        let (Some(was), Some(is)) = (text(&before, &record.at), text(&now, &record.at)) else { return false };
        let same = record.text == was || record.text == is;
        record.text = is;
        same
    });
}
