use std::io::Write;
use std::path::Path;

use super::outcome::{CLEAN, Outcome};
use crate::bundle;

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
    let file = bundle::begin(folder, title, from)?;
    writeln!(out, "made {}", file.display())?;
    let shown = folder.display();
    writeln!(out, "open it:   inklatch {shown}")?;
    writeln!(out, "prove it:  inklatch check {shown}")?;
    writeln!(out, "print it:  inklatch export {shown}")?;
    Ok(CLEAN)
}
