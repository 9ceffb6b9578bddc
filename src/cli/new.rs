use std::io::Write;
use std::path::Path;

use super::outcome::{CLEAN, Outcome};
use crate::bundle;
use crate::diag::Trouble;
use crate::files::{Disk, Files as _, VPath};
use crate::script::capital;

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
