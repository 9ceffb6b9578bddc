use crate::diag::{Hinted, Trouble};
use crate::files::{Files, VPath};
use crate::kit::Plays;
use crate::kit::file::{read_plays, to_ron};
use crate::limits;

/// The file of plays, beside the kit's.
pub const PLAYS_FILE: &str = "plays.ron";

fn beside(kit_file: &VPath) -> Hinted<VPath> {
    let folder = kit_file.as_str().strip_suffix(kit_file.file_name()).unwrap_or_default();
    VPath::new(&format!("{folder}{PLAYS_FILE}"))
}

/// The plays beside a kit file; none where there is no such file.
///
/// # Errors
/// When the file cannot be read, or a play in it is beyond its bounds.
pub fn plays_beside(files: &dyn Files, kit_file: &VPath) -> Hinted<Plays> {
    let path = beside(kit_file)?;
    if !files.exists(&path) {
        return Ok(Plays::default());
    }
    let read = files.read_text(&path, limits::RON_BYTES).and_then(|text| read_plays(&text, path.as_str()));
    read.map_err(|trouble| {
        trouble.hint("the kit itself is sound: moved elsewhere, this file keeps nobody from opening it")
    })
}

/// Writes the plays beside a kit file, where they are others than those `known` to lie there.
///
/// # Errors
/// When the folder cannot be written, or another program has changed the file meanwhile; it is then as it was.
pub fn save_plays(files: &dyn Files, kit_file: &VPath, plays: &Plays, known: &Plays) -> Hinted<()> {
    if plays == known {
        return Ok(());
    }
    plays.check()?;
    let path = beside(kit_file)?;
    if plays_beside(files, kit_file)? != *known {
        return Err(Trouble::new("the plays have been changed by another program since the kit was opened")
            .at(path.to_string())
            .hint("open the kit anew to take those changes over"));
    }
    files.write(&path, to_ron(plays)?.as_bytes())
}
