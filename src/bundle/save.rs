use crate::diag::{Hinted, Trouble};
use crate::files::{Files, VPath};
use crate::kit::Kit;
use crate::kit::file::{from_ron, rewrite, to_ron, write_kit};
use crate::kit::ron_merge::comments;
use crate::limits;
use crate::theme::Theme;

use super::Opened;
use super::plays::save_plays;

/// Where a kit file is kept, before one that lacks some of its comments takes its place.
const WITH_COMMENTS: &str = "kit-with-comments.ron";

/// A kit's place on disk, and what is known of the file there.
pub struct Saving<'a> {
    /// The folder.
    pub files: &'a dyn Files,
    /// The kit file in it.
    pub file: &'a VPath,
    /// The file's text as it was read or written last; none when it could not be read.
    pub known: Option<&'a str>,
    /// The kit as it was read or written last.
    pub saved: &'a Kit,
    /// The place in words, for errors.
    pub place: &'a str,
}

/// Saves a kit where it lies and answers the text written.
///
/// The file keeps its layout and its comments where nothing changed; one that would lose a comment is first kept under
/// another name.
///
/// # Errors
/// When the folder cannot be written or somebody else has changed the file meanwhile; the file there is then as it
/// was.
pub fn save(kit: &Kit, saving: &Saving<'_>) -> Hinted<String> {
    let Saving { files, file, known, saved, place } = saving;
    let now = files.read_text(file, limits::RON_BYTES).ok();
    if let (Some(now), Some(known)) = (&now, known)
        && now != known
    {
        return Err(Trouble::new("the file has been changed by another program since it was opened")
            .at(*place)
            .hint("save the kit in another folder, or open it anew to take those changes over"));
    }
    save_plays(*files, file, &kit.plays, &saved.plays)?;
    let only_plays = || Kit { plays: saved.plays.clone(), ..kit.clone() } == **saved;
    if let Some(known) = known
        && kit.plays != saved.plays
        && only_plays()
    {
        // A kit file whose kit has not changed keeps its comments.
        return Ok((*known).to_owned());
    }
    // The file there is what the kit was read from, or, where it could not be read, is written anew.
    let text = match &now {
        Some(there) if known.is_some() => rewrite(there, *saved, kit)?,
        _ => write_kit(kit)?,
    };
    if let Some(now) = now.filter(|now| loses_comments(now, &text)) {
        files.write(&VPath::new(WITH_COMMENTS)?, now.as_bytes())?;
    }
    files.write(file, text.as_bytes())?;
    Ok(text)
}

/// Saves a theme file of the kit's own, where nobody else has changed it since its text was `known`. It keeps its layout and
/// comments as a kit file does.
///
/// # Errors
/// When the folder cannot be written or somebody else has changed the file meanwhile; the file there is then as it was.
pub fn save_theme(files: &dyn Files, file: &VPath, theme: &Theme, known: &str) -> Hinted<()> {
    let now = files.read_text(file, limits::RON_BYTES).ok();
    if now.as_deref().is_some_and(|now| now != known) {
        return Err(Trouble::new("the theme's file has been changed by another program while it was changed here")
            .at(file.to_string())
            .hint("take the file's version under Dress, Theme, or save the kit in another folder"));
    }
    let text = match from_ron::<Theme>(known, file.as_str()) {
        Ok(before) => rewrite(known, &before, theme)?,
        Err(_) => to_ron(theme)?,
    };
    if now.is_some_and(|now| loses_comments(&now, &text)) {
        let aside = file.as_str().strip_suffix(file.file_name()).unwrap_or_default();
        files.write(&VPath::new(&format!("{aside}theme-with-comments.ron"))?, known.as_bytes())?;
    }
    files.write(file, text.as_bytes())
}

/// Saves a changed copy of an opened kit in its place, and says where that is.
///
/// # Errors
/// As [`save`]; and when the kit has no place on disk, as the demo kit that the program carries.
pub fn save_changed(opened: &Opened, kit: &Kit) -> Hinted<String> {
    let Some(folder) = &opened.folder else {
        return Err(Trouble::new("the built-in demo kit cannot be changed in its place")
            .hint("name a kit of your own; `inklatch new FOLDER` makes one"));
    };
    let place = folder.join(opened.file.as_str()).display().to_string();
    let known = opened.files.read_text(&opened.file, limits::RON_BYTES).ok();
    let saving = Saving {
        files: opened.files.as_ref(),
        file: &opened.file,
        known: known.as_deref(),
        saved: &opened.kit,
        place: &place,
    };
    save(kit, &saving)?;
    Ok(place)
}

/// Whether a comment of the file that is there does not stand in the text that takes its place.
fn loses_comments(there: &str, text: &str) -> bool {
    let mut left = comments(text);
    left.sort_unstable();
    comments(there).iter().any(|comment| match left.binary_search(comment) {
        Ok(at) => {
            left.remove(at);
            false
        }
        Err(_) => true,
    })
}
