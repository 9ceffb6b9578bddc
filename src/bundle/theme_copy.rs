use std::path::Path;

use super::open::{Below, author_theme, author_themes};
use super::place::empty;
use super::themes::kit_themes;
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Disk, Files, VPath};
use crate::ids::ThemeId;
use crate::kit::file::{nearest, rewrite};
use crate::limits;
use crate::script::title_case;
use crate::theme;

/// Copies a theme of the author's folder into the kit's own `themes/`, so that the kit opens elsewhere; its file is
/// written last, so that a folder with one is whole. Nothing is copied when the kit has that theme or the author has not.
///
/// # Errors
/// When a file cannot be read or written.
pub fn bring_theme(from: &dyn Files, id: &ThemeId, kit: &dyn Files) -> Hinted<()> {
    let Some(source) = author_theme(from, id) else { return Ok(()) };
    let (to, file) = (VPath::new("themes")?.join(id.as_str())?, VPath::new("theme.ron")?);
    let mut paths = source.list(&VPath::root())?;
    paths.sort_by_key(|path| *path == file);
    for path in paths {
        kit.write(&to.join(path.as_str())?, &source.read(&path, limits::FONT_BYTES)?)?;
    }
    Ok(())
}

/// Copies a theme into the kit's own `themes/`, under a new name, and answers its id. The theme is found as for
/// [`super::find_theme`]; its file is written last, so that a folder with one is whole.
///
/// # Errors
/// When the name makes no id or is taken, the theme is nowhere to be found, or the folder cannot be written.
pub fn copy_theme(kit: &dyn Files, id: &ThemeId, name: &str) -> Hinted<ThemeId> {
    let new = ThemeId::from_text(name);
    if kit_themes(kit).contains(&new) || theme::builtin_ids().contains(&new) {
        return Err(Trouble::new(format!("there is a theme `{new}` already")).hint("choose another name"));
    }
    let folder = VPath::new("themes")?;
    let file = VPath::new("theme.ron")?;
    let own = Below { files: kit, folder: folder.join(id.as_str())? };
    let author = author_themes().map(|folder| Disk::new(folder.join(id.as_str())));
    let builtin = Builtin::below(folder.join(id.as_str())?);
    let found = [Some(&own as &dyn Files), author.as_ref().map(|disk| disk as &dyn Files), Some(&builtin)];
    let source = found.into_iter().flatten().find(|files| files.exists(&file));
    let source = source.ok_or_else(|| Trouble::new(format!("there is no theme `{id}`")))?;
    copy(source, id, &Below { files: kit, folder: folder.join(new.as_str())? }, &new, name.trim())?;
    Ok(new)
}

/// Writes a whole theme into a folder that is empty or not there yet, to begin from. `from` is the id of a theme that the
/// program carries or that lies in the author's theme folder, or the folder of any other theme. The new theme is called
/// as its folder; answers its id.
///
/// # Errors
/// When the folder is not empty or its name cannot be a theme's, there is no theme `from`, or the disk refuses.
pub fn begin_theme(from: &str, folder: &Path) -> Hinted<ThemeId> {
    let shown = folder.display().to_string();
    let name = folder.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let new = ThemeId::new(&name).ok_or_else(|| {
        Trouble::new(format!("\"{name}\" cannot be the name of a theme, and a theme is called as its folder"))
            .at(shown.clone())
            .hint(format!("small letters, digits and hyphens make one: {}", ThemeId::from_text(&name)))
    })?;
    if theme::builtin_ids().contains(&new) {
        return Err(Trouble::new(format!("the program carries a theme `{new}` already"))
            .at(shown)
            .hint(format!("give the folder another name: my-{new}")));
    }
    let disk = Disk::new(folder);
    empty(folder)?;
    let fresh = !folder.exists();
    let begun = write_theme(from, &disk, &new, &title_case(&name.replace('-', " ")));
    if begun.is_err() && fresh {
        // Half a theme would be in the way of the next try; that it may stay behind is no second error.
        let _ = disk.remove_folder(&VPath::root());
    }
    begun.map(|()| new)
}

/// Finds the theme `from` and copies it.
fn write_theme(from: &str, disk: &Disk, new: &ThemeId, title: &str) -> Hinted<()> {
    let file = VPath::new("theme.ron")?;
    let there = Disk::new(from);
    let own = author_themes().map(|themes| Disk::new(themes.join(from))).filter(|disk| disk.exists(&file));
    let known = theme::builtin_ids();
    match (ThemeId::new(from), own) {
        (Some(id), Some(own)) => copy(&own, &id, disk, new, title)?,
        (Some(id), None) if known.contains(&id) => {
            copy(&Builtin::below(VPath::new("themes")?.join(from)?), &id, disk, new, title)?;
        }
        _ if there.exists(&file) => copy(&there, &ThemeId::from_text(from), disk, new, title)?,
        _ => {
            let names: Vec<&str> = known.iter().map(ThemeId::as_str).collect();
            let mut trouble = Trouble::new(format!("there is no theme `{from}` to begin from"));
            if let Some(near) = nearest(from, &names) {
                trouble = trouble.hint(format!("did you mean `{near}`?"));
            }
            return Err(trouble.hint(format!("name one of {}, or the folder of a theme", names.join(", "))));
        }
    }
    Ok(())
}

/// Copies all files of a theme; the theme file comes last, so that a folder with one is whole.
fn copy(source: &dyn Files, id: &ThemeId, to: &dyn Files, new: &ThemeId, name: &str) -> Hinted<()> {
    let file = VPath::new("theme.ron")?;
    let text = source.read_text(&file, limits::RON_BYTES)?;
    let old = theme::load(source, id.as_str())?.theme;
    let mut theme = old.clone();
    for path in source.list(&VPath::root())?.iter().filter(|path| **path != file) {
        to.write(path, &source.read(path, limits::FONT_BYTES)?)?;
    }
    theme.begun_from = Some(theme.id);
    theme.id = new.clone();
    name.clone_into(&mut theme.name);
    to.write(&file, rewrite(&text, &old, &theme)?.as_bytes())
}
