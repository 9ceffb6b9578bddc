use std::path::{Path, PathBuf};

use super::open::DEMO_KITS;
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Disk, Files as _, VPath};
use crate::ids::KitId;
use crate::kit::file::{nearest, read_kit};
use crate::limits;
use crate::script::capital;

/// The fresh kit, below the carried files.
const FRESH: &str = "assets/kits/fresh/kit.ron";
/// Its title and id, as they stand in that file.
const TITLE: &str = "title: \"A Fresh Kit\"";
const ID: &str = "id: \"a-fresh-kit\"";

/// The text of a fresh `kit.ron` with this title: one box, one lock, one puzzle, sound as it stands, with
/// comments that say what to change.
///
/// # Errors
/// When the carried file cannot be read, which no title brings about.
pub fn scaffold(title: &str) -> Hinted<String> {
    let text = Builtin::new().read_text(&VPath::new(FRESH)?, limits::RON_BYTES)?;
    let quoted = format!("title: \"{}\"", title.replace('\\', "\\\\").replace('"', "\\\""));
    let id = format!("id: \"{}\"", KitId::from_text(title));
    let text = text.replacen(TITLE, &quoted, 1).replacen(ID, &id, 1);
    read_kit(&text, "kit.ron")?;
    Ok(text)
}

/// The text of a demo kit, to be changed into a kit of one's own.
///
/// # Errors
/// When the program carries no kit of this name; the hint names those that it does.
pub fn scaffold_from(demo: &str) -> Hinted<String> {
    let files = super::open::demo(demo)?.ok_or_else(|| {
        let mut trouble = Trouble::new(format!("the program carries no kit `{demo}`"));
        if let Some(near) = nearest(demo, &DEMO_KITS) {
            trouble = trouble.hint(format!("did you mean `{near}`?"));
        }
        trouble.hint(format!("its kits are {}", DEMO_KITS.join(" and ")))
    })?;
    files.read_text(&VPath::new("kit.ron")?, limits::RON_BYTES)
}

/// Makes a fresh kit, or a copy of a demo kit, in a folder that is empty or not there yet, and answers its file. Without a
/// title it is called after the folder.
///
/// # Errors
/// When the folder is a file, holds something or cannot be written, or the program carries no such demo kit.
pub fn begin(folder: &Path, title: Option<&str>, from: Option<&str>) -> Hinted<PathBuf> {
    let named = folder.file_name().map(|name| name.to_string_lossy().replace(['-', '_'], " "));
    let title = title.map(str::trim).filter(|title| !title.is_empty()).map(str::to_owned);
    let title = title.or_else(|| named.map(|name| capital(&name))).unwrap_or_else(|| "A Fresh Kit".into());
    let refused = |what: String| {
        Trouble::new(what).at(folder.display().to_string()).hint("name a folder that is empty or not there yet")
    };
    if folder.exists() && !folder.is_dir() {
        return Err(refused("this is a file, not a folder".into()));
    }
    let disk = Disk::new(folder);
    if let Some(first) = disk.list(&VPath::root())?.first() {
        return Err(refused(format!("the folder is not empty: it holds {first}")));
    }
    let file = VPath::new("kit.ron")?;
    let text = from.map_or_else(|| scaffold(&title), scaffold_from)?;
    disk.write(&file, text.as_bytes())?;
    Ok(disk.real(&file))
}
