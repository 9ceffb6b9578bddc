use std::path::Path;

use super::open::{Opened, find_theme};
use crate::diag::{Hinted, Trouble};
use crate::files::{Disk, Files as _, VPath};
use crate::ids::ThemeId;
use crate::kit::file::write_kit;
use crate::limits;
use crate::redress::{Leftover, leftovers, mend_all, redress};
use crate::theme::load_pictures;

/// A kit that was put into another theme.
#[derive(Clone)]
pub struct Redone {
    /// The kit in its new theme, as if it were opened; nothing is written yet.
    pub opened: Opened,
    /// What could not be taken over, and what to do about it.
    pub troubles: Vec<Trouble>,
    /// What the old season left behind.
    pub leftovers: Vec<Leftover>,
}

/// Puts an opened kit into another theme, found as for [`super::open`]. With `mend` what the old season left behind is
/// replaced by slots and new words where that can be done by rule.
///
/// # Errors
/// When there is no such theme, or it cannot be read.
pub fn redone(opened: &Opened, theme: &ThemeId, mend: bool) -> Hinted<Redone> {
    let (mut loaded, fonts) = find_theme(opened.files.as_ref(), theme)?;
    let fresh = redress(&opened.kit, &opened.theme.theme, &loaded.theme);
    let kit = if mend { mend_all(&fresh.kit, &loaded.theme) } else { fresh.kit };
    load_pictures(&mut loaded, opened.files.as_ref(), &kit);
    let leftovers = leftovers(&kit);
    let opened = Opened { kit, theme: loaded, fonts, ..opened.clone() };
    Ok(Redone { opened, troubles: fresh.troubles, leftovers })
}

/// Saves a kit in a folder that is empty or not there yet, with the pictures and themes that it brings. The kit file is
/// written last, so that a folder with one is whole.
///
/// # Errors
/// When the folder is not empty or cannot be written.
pub fn save_in(opened: &Opened, folder: &Path) -> Hinted<()> {
    let disk = Disk::new(folder);
    if let Some(first) = disk.list(&VPath::root())?.first() {
        return Err(Trouble::new(format!("the folder is not empty: it holds {first}"))
            .at(folder.display().to_string())
            .hint("name a folder that is empty or not there yet"));
    }
    for path in opened.files.list(&VPath::root())? {
        if ["art/", "themes/", "fonts/"].iter().any(|top| path.as_str().starts_with(top)) {
            disk.write(&path, &opened.files.read(&path, limits::PICTURE_BYTES)?)?;
        }
    }
    disk.write(&VPath::new("kit.ron")?, write_kit(&opened.kit)?.as_bytes())
}
