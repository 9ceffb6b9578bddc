use std::path::Path;

use super::open::{Below, author_themes};
use crate::checks::{Finding, theme_findings};
use crate::diag::Hinted;
use crate::files::{Builtin, Disk, Files, FontBook, VPath};
use crate::ids::ThemeId;
use crate::kit::file::from_ron;
use crate::limits;
use crate::theme::{self, Loaded, Theme};

/// Where a theme was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ThemeSource {
    /// In the kit's own `themes/`.
    Kit,
    /// In the author's theme folder.
    Author,
    /// Carried by the program.
    Builtin,
}

impl ThemeSource {
    /// In words: "built in".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Kit => "the kit's own",
            Self::Author => "your own",
            Self::Builtin => "built in",
        }
    }
}

/// A theme that was found, read, and looked through.
#[derive(Clone, Debug)]
pub struct ThemeFound {
    /// Its id: the name of its folder.
    pub id: ThemeId,
    /// Where it was found.
    pub source: ThemeSource,
    /// The theme, or why it cannot be read.
    pub loaded: Hinted<Loaded>,
    /// What is wrong with it, what blocks first.
    pub findings: Vec<Finding>,
}

/// A theme at hand, by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThemeNamed {
    /// Its id: the name of its folder.
    pub id: ThemeId,
    /// What it calls itself; none when its file cannot be read.
    pub name: Option<String>,
    /// Where it was found.
    pub source: ThemeSource,
}

/// The names of all themes at hand, in the order of [`themes`]. Folders that cannot be listed are left out.
#[must_use]
pub fn theme_names(kit: &dyn Files) -> Vec<ThemeNamed> {
    let mut named: Vec<ThemeNamed> = Vec::new();
    let mut take = |id: ThemeId, source, files: &dyn Files, folder: Hinted<VPath>| {
        if named.iter().any(|known| known.id == id) {
            return;
        }
        let read = || -> Hinted<String> {
            let file = folder?.join("theme.ron")?;
            Ok(from_ron::<Theme>(&files.read_text(&file, limits::RON_BYTES)?, file.as_str())?.name)
        };
        let name = read().ok();
        named.push(ThemeNamed { id, name, source });
    };
    let inner = |id: &ThemeId| VPath::new("themes").and_then(|folder| folder.join(id.as_str()));
    for id in kit_themes(kit) {
        let folder = inner(&id);
        take(id, ThemeSource::Kit, kit, folder);
    }
    if let Some(disk) = author_themes().map(Disk::new) {
        for id in ids(&disk, &VPath::root()).unwrap_or_default() {
            let folder = VPath::new(id.as_str());
            take(id, ThemeSource::Author, &disk, folder);
        }
    }
    for id in theme::builtin_ids() {
        let folder = inner(&id);
        take(id, ThemeSource::Builtin, &Builtin::new(), folder);
    }
    named
}

/// Every theme at hand, each looked through: those in the kit's own `themes/`, the author's, the built-in ones. Of two
/// with one id the first is used, and only that one is answered.
///
/// # Errors
/// When a folder cannot be listed or a bundled font cannot be read. A theme that cannot be read is no error: it is
/// answered with the reason.
pub fn themes(kit: Option<&dyn Files>) -> Hinted<Vec<ThemeFound>> {
    let fonts = FontBook::bundled()?;
    let mut found: Vec<ThemeFound> = Vec::new();
    let take = |found: &mut Vec<ThemeFound>, id: ThemeId, source, files: &dyn Files| {
        if !found.iter().any(|known| known.id == id) {
            found.push(look(id, source, files, &fonts));
        }
    };
    if let Some(files) = kit {
        let folder = VPath::new("themes")?;
        for id in ids(files, &folder)? {
            let own = Below { files, folder: folder.join(id.as_str())? };
            take(&mut found, id, ThemeSource::Kit, &own);
        }
    }
    if let Some(folder) = author_themes() {
        for id in ids(&Disk::new(&folder), &VPath::root())? {
            let own = Disk::new(folder.join(id.as_str()));
            take(&mut found, id, ThemeSource::Author, &own);
        }
    }
    for id in theme::builtin_ids() {
        let own = Builtin::below(VPath::new("themes")?.join(id.as_str())?);
        take(&mut found, id, ThemeSource::Builtin, &own);
    }
    Ok(found)
}

/// The theme in a folder of its own on disk, looked through.
///
/// # Errors
/// When a bundled font cannot be read.
pub fn theme_in(folder: &Path) -> Hinted<ThemeFound> {
    let name = folder.file_name().and_then(|name| name.to_str()).unwrap_or("theme");
    let id = ThemeId::new(name).unwrap_or_else(|| ThemeId::from_text(name));
    Ok(look(id, ThemeSource::Author, &Disk::new(folder), &FontBook::bundled()?))
}

/// The ids of the theme folders below a folder.
fn ids(files: &dyn Files, folder: &VPath) -> Hinted<Vec<ThemeId>> {
    let listed = files.list(folder)?;
    let inner = listed.iter().filter_map(|path| path.below(folder));
    Ok(inner.filter_map(|path| path.as_str().strip_suffix("/theme.ron").and_then(ThemeId::new)).collect())
}

fn look(id: ThemeId, source: ThemeSource, files: &dyn Files, bundled: &FontBook) -> ThemeFound {
    let read = theme::load(files, id.as_str())
        .and_then(|loaded| Ok((loaded, bundled.with_folder(files, &VPath::new("fonts")?)?)));
    match read {
        Ok((loaded, fonts)) => {
            let findings = theme_findings(&loaded, &fonts, files, Some(id.as_str()));
            ThemeFound { id, source, loaded: Ok(loaded), findings }
        }
        Err(trouble) => ThemeFound { id, source, loaded: Err(trouble), findings: Vec::new() },
    }
}

/// The ids of the themes in a kit's own folder.
#[must_use]
pub fn kit_themes(kit: &dyn Files) -> Vec<ThemeId> {
    VPath::new("themes").and_then(|folder| ids(kit, &folder)).unwrap_or_default()
}
