use std::io::Write;
use std::path::Path;

use super::outcome::{CLEAN, Outcome};
use crate::bundle;
use crate::diag::Trouble;
use crate::files::{Disk, Files as _, VPath};
use crate::script::capital;

/// Makes a theme in an empty folder: a copy of another, to begin from.
pub(super) fn theme(folder: &Path, from: &str, out: &mut dyn Write) -> Outcome {
    let id = bundle::begin_theme(from, folder)?;
    let shown = folder.display();
    writeln!(out, "made the theme {id} in {shown}: theme.ron, art/ and, where it brings its own, fonts/")?;
    writeln!(out, "look it through:  inklatch themes {shown}")?;
    writeln!(out, "where its slots stand, and what is printed on each frame:  inklatch explain frames")?;
    let below_kit = folder.parent().filter(|themes| themes.ends_with("themes")).and_then(Path::parent);
    if below_kit.is_some_and(|kit| kit.join("kit.ron").exists()) {
        writeln!(out, "wear it:          write theme: \"{id}\" in the kit's kit.ron, or put the kit into it with")?;
    } else {
        writeln!(out, "put it into themes/ of a kit, or for all kits into your theme folder")?;
        if let Some(own) = bundle::author_themes() {
            writeln!(out, "({}); then put a kit into it with", own.display())?;
        }
    }
    writeln!(out, "                  inklatch redress KIT --theme {id} --out DIR")?;
    Ok(CLEAN)
}

/// Makes a fresh kit, or a copy of a demo kit, in an empty folder.
pub(super) fn run(folder: &Path, title: Option<&str>, from: Option<&str>, out: &mut dyn Write) -> Outcome {
    let named = folder.file_name().map(|name| name.to_string_lossy().replace(['-', '_'], " "));
    let title = title.map(str::trim).filter(|title| !title.is_empty()).map(str::to_owned);
    let title = title.or_else(|| named.map(|name| capital(&name))).unwrap_or_else(|| "A Fresh Kit".into());
    let disk = Disk::new(folder);
    if folder.exists() && !folder.is_dir() {
        return Err(Trouble::new("this is a file, not a folder")
            .at(folder.display().to_string())
            .hint("name a folder that is empty or not there yet")
            .into());
    }
    if let Some(first) = disk.list(&VPath::root())?.first() {
        return Err(Trouble::new(format!("the folder is not empty: it holds {first}"))
            .at(folder.display().to_string())
            .hint("name a folder that is empty or not there yet")
            .into());
    }
    let file = VPath::new("kit.ron")?;
    let text = from.map_or_else(|| bundle::scaffold(&title), bundle::scaffold_from)?;
    disk.write(&file, text.as_bytes())?;
    writeln!(out, "made {}", disk.real(&file).display())?;
    let shown = folder.display();
    writeln!(out, "open it:   inklatch {shown}")?;
    writeln!(out, "prove it:  inklatch check {shown}")?;
    writeln!(out, "print it:  inklatch export {shown}")?;
    Ok(CLEAN)
}
