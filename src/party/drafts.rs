use super::Party;
use crate::diag::{Level, Step};
use crate::kit::Kit;
use crate::theme::Loaded;

/// Gives each hint that was the mechanic's draft, word for word, the draft of the puzzle as it stands in `new`: other
/// answers, arrangements and themes make other drafts, and a hint that names what lay there before leads astray. Hints in
/// the author's own words stay.
pub fn follow_drafts((old, old_theme): (&Kit, &Loaded), new: &mut Kit, theme: &Loaded) {
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
            let (Some(is), Some(puzzle)) = (after.puzzle(&was.id), new.puzzle_mut(&was.id)) else { continue };
            for step in Step::ALL {
                let (draft, todays) = (was.drafted.step(step).trim(), is.drafted.step(step).trim());
                let taken = !draft.is_empty() && was.hints.step(step).trim() == draft;
                // Levels without a text of their own have the standard level's, which comes first.
                if taken && !todays.is_empty() && puzzle.hints_at(level).step(step).trim() != todays {
                    todays.clone_into(puzzle.hints_mut(level).step_mut(step));
                }
            }
        }
    }
}
