use std::collections::BTreeMap;
use std::path::Path;

use super::open::{Opened, find_theme};
use super::place::empty;
use super::plays::save_plays;
use super::theme_copy::bring_theme;
use crate::diag::{Anchor, Hinted, Level, PuzzleField, Trouble};
use crate::files::{Disk, Files as _, VPath};
use crate::ids::ThemeId;
use crate::kit::file::write_kit;
use crate::kit::{Kit, LevelChange, Plays, Puzzle};
use crate::limits;
use crate::party::{Party, follow_drafts};
use crate::redress::{Leftover, Mended, leftovers, mend_all, redress_as};
use crate::theme::{Loaded, load_pictures};

/// A kit that was put into another theme.
#[derive(Clone)]
pub struct Redone {
    /// The kit in its new theme, as if it were opened; nothing is written yet.
    pub opened: Opened,
    /// What could not be taken over, and what to do about it.
    pub troubles: Vec<Trouble>,
    /// What the old season left behind.
    pub leftovers: Vec<Leftover>,
    /// The places that were mended by rule.
    pub mended: Vec<Mended>,
}

/// Puts an opened kit into another theme, found as for [`super::open`]. With `mend` what the old season left behind is
/// replaced by slots and new words where that can be done by rule. `symbols` is the author's choice: old names to new.
///
/// # Errors
/// When there is no such theme, it cannot be read, or the choice cannot be had ([`redress_as`]).
pub fn redone(opened: &Opened, theme: &ThemeId, mend: bool, symbols: &BTreeMap<String, String>) -> Hinted<Redone> {
    let (mut loaded, fonts) = find_theme(opened.files.as_ref(), theme)?;
    let mut fresh = redress_as(&opened.kit, &opened.theme.theme, &loaded.theme, symbols)?;
    follow_drafts((&opened.kit, &opened.theme), &mut fresh.kit, &loaded);
    let (mut kit, mended) = if mend { mended(&fresh.kit, &loaded) } else { (fresh.kit.clone(), Vec::new()) };
    follow_drafts((&fresh.kit, &loaded), &mut kit, &loaded);
    load_pictures(&mut loaded, opened.files.as_ref(), &kit);
    let leftovers = leftovers(&kit);
    let opened = Opened { kit, theme: loaded, fonts, ..opened.clone() };
    Ok(Redone { opened, troubles: fresh.troubles, leftovers, mended })
}

/// A kit with every leftover mended that can be by rule, as far as its puzzles bear it: a setup that could not be laid out
/// any more, or would have another number of readings, stays as it was, and its leftovers stay with it. With it each
/// place that changed.
#[must_use]
pub fn mended(kit: &Kit, theme: &Loaded) -> (Kit, Vec<Mended>) {
    let (mut fresh, mut places) = mend_all(kit, &theme.theme);
    let setups = |puzzle: &Puzzle| {
        let of = |change: &Option<LevelChange>| change.as_ref().and_then(|change| change.setup.clone());
        (puzzle.answer.clone(), puzzle.setup.clone(), of(&puzzle.gentle), of(&puzzle.stiff))
    };
    let changed: Vec<Puzzle> = kit
        .puzzles
        .iter()
        .filter(|old| fresh.puzzle(&old.id).is_some_and(|new| setups(new) != setups(old)))
        .cloned()
        .collect();
    let only = |kit: &Kit| {
        let mut kit = kit.clone();
        kit.puzzles.retain(|puzzle| changed.iter().any(|known| known.id == puzzle.id));
        kit
    };
    let (before, after) = (only(kit), only(&fresh));
    for level in Level::ALL {
        // A palette that cannot be read is told by the proof.
        let (Ok(old), Ok(new)) = (Party::new(&before, theme, level), Party::new(&after, theme, level)) else {
            continue;
        };
        for puzzle in &changed {
            let verdict = |party: &Party| party.puzzle(&puzzle.id).and_then(|laid| laid.verdict);
            if verdict(&old) == verdict(&new) {
                continue;
            }
            if let Some(spoilt) = fresh.puzzles.iter_mut().find(|known| known.id == puzzle.id) {
                spoilt.setup = puzzle.setup.clone();
                spoilt.answer.clone_from(&puzzle.answer);
                let of_it =
                    [PuzzleField::Setup, PuzzleField::Answer].map(|field| Anchor::Puzzle(puzzle.id.clone(), field));
                places.retain(|place| !of_it.contains(&place.anchor));
                for (change, was) in [(&mut spoilt.gentle, &puzzle.gentle), (&mut spoilt.stiff, &puzzle.stiff)] {
                    if let Some(change) = change {
                        change.setup = was.as_ref().and_then(|was| was.setup.clone());
                    }
                }
            }
        }
    }
    (fresh, places)
}

/// Saves a kit in a folder that is empty or not there yet, with the pictures and themes that it brings. The kit file is
/// written last, so that a folder with one is whole.
///
/// # Errors
/// When the folder is not empty or cannot be written.
pub fn save_in(opened: &Opened, folder: &Path) -> Hinted<()> {
    let disk = Disk::new(folder);
    empty(folder)?;
    for path in opened.files.list(&VPath::root())? {
        if ["art/", "themes/", "fonts/"].iter().any(|top| path.as_str().starts_with(top)) {
            disk.write(&path, &opened.files.read(&path, limits::PICTURE_BYTES)?)?;
        }
    }
    // A theme of the author's folder goes along, so that the kit opens elsewhere.
    bring_theme(opened.files.as_ref(), &opened.kit.theme, &disk)?;
    let file = VPath::new("kit.ron")?;
    save_plays(&disk, &file, &opened.kit.plays, &Plays::default())?;
    disk.write(&file, write_kit(&opened.kit)?.as_bytes())
}
