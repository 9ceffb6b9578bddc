use std::io::Write;

use super::outcome::{CLEAN, Outcome};
use crate::bundle::author_themes;
use crate::files::{Disk, Files as _, VPath};
use crate::ids::ThemeId;
use crate::theme;

/// Lists the themes: the author's own, then the built-in ones.
pub(super) fn themes(out: &mut dyn Write) -> Outcome {
    if let Some(folder) = author_themes() {
        let disk = Disk::new(&folder);
        for path in disk.list(&VPath::root())? {
            let Some(id) = path.as_str().strip_suffix("/theme.ron").and_then(ThemeId::new) else { continue };
            let own = Disk::new(folder.join(id.as_str()));
            match theme::load(&own, id.as_str()) {
                Ok(loaded) => writeln!(out, "{id}    {} (your own)\n    {}", loaded.theme.name, loaded.theme.about)?,
                // One theme that cannot be read must not hide the others.
                Err(trouble) => writeln!(out, "{id}    cannot be read: {trouble}")?,
            }
        }
    }
    for id in theme::builtin_ids() {
        let loaded = theme::load_builtin(&id)?;
        writeln!(out, "{id}    {} (built in)\n    {}", loaded.theme.name, loaded.theme.about)?;
    }
    writeln!(out, "\n`inklatch explain theme` describes the file. Put your own into themes/ of a kit")?;
    if let Some(folder) = author_themes() {
        writeln!(out, "or into {}.", folder.display())?;
    }
    Ok(CLEAN)
}
