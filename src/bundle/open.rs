use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::plays::plays_beside;
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Disk, Files, FontBook, VPath, open_folder};
use crate::ids::ThemeId;
use crate::kit::Kit;
use crate::kit::file::{nearest, read_kit};
use crate::limits;
use crate::theme::{self, Loaded};

/// The demo kits that the program carries, by name; the first is meant where none is named.
pub const DEMO_KITS: [&str; 2] = ["the-stopped-clock", "the-harbour-regatta"];
/// Where they lie among the carried files.
const KITS: &str = "assets/kits";
/// The kit file of a folder.
const KIT_FILE: &str = "kit.ron";

/// A kit, opened: the file read, its theme and fonts found.
#[derive(Clone)]
pub struct Opened {
    /// The folder that holds the kit file.
    pub files: Arc<dyn Files>,
    /// The kit file in that folder.
    pub file: VPath,
    /// Where the folder is on disk; none for the built-in demo kit, which can only be saved elsewhere.
    pub folder: Option<PathBuf>,
    /// The kit.
    pub kit: Kit,
    /// Its theme.
    pub theme: Loaded,
    /// The bundled fonts and the theme's own.
    pub fonts: FontBook,
}

/// The files of a carried demo kit; none where there is no kit of this name.
///
/// # Errors
/// When the name is no path, which none of [`DEMO_KITS`] brings about.
pub(super) fn demo(name: &str) -> Hinted<Option<Builtin>> {
    let known = DEMO_KITS.iter().find(|known| **known == name);
    known.map(|known| Ok(Builtin::below(VPath::new(KITS)?.join(known)?))).transpose()
}

/// Opens a kit: a folder, the `kit.ron` in it, a demo kit's name where nothing on disk is called so, or with no path
/// the first demo kit.
///
/// # Errors
/// When there is no kit, it cannot be read, or its theme is nowhere to be found.
pub fn open(path: Option<&Path>) -> Hinted<Opened> {
    let name = match path {
        // A bundle that was exported here bears its kit's name, and holds no kit.
        Some(path) if path.is_file() || path.join(KIT_FILE).exists() => None,
        Some(path) => path.to_str(),
        None => DEMO_KITS.first().copied(),
    };
    if let Some(files) = name.map(demo).transpose()?.flatten() {
        return open_in(Arc::new(files), VPath::new(KIT_FILE)?);
    }
    match path {
        Some(path) => {
            let (disk, file) = open_folder(path).map_err(|trouble| match path.to_str() {
                Some(name) => near_demo(trouble, name),
                None => trouble,
            })?;
            let folder = disk.root().to_owned();
            // What is said of the file itself is said with its folder: there may be many kits.
            let own = file.as_str().to_owned();
            let mut opened = open_in(Arc::new(disk), file).map_err(|trouble| within(trouble, &folder, &own))?;
            opened.folder = Some(folder);
            Ok(opened)
        }
        None => Err(Trouble::new("the program carries no demo kit").hint("name the folder of a kit")),
    }
}

/// Adds the demo kit that was meant, if a name is near enough to one.
fn near_demo(mut trouble: Trouble, name: &str) -> Trouble {
    if let Some(near) = nearest(name, &DEMO_KITS) {
        trouble.hints.insert(0, format!("did you mean `{near}`?"));
    }
    trouble
}

/// A trouble of the kit file or its plays, whose place begins with the folder.
fn within(trouble: Trouble, folder: &Path, file: &str) -> Trouble {
    let place = trouble.place.map(|place| {
        let own = place.starts_with(file) || place.starts_with(super::plays::PLAYS_FILE);
        if own { folder.join(&place).display().to_string() } else { place }
    });
    Trouble { place, ..trouble }
}

/// Opens a demo kit, whatever lies on disk.
///
/// # Errors
/// When the program carries none of this name.
pub fn open_demo(name: &str) -> Hinted<Opened> {
    let files = demo(name)?.ok_or_else(|| Trouble::new(format!("the program carries no kit `{name}`")))?;
    open_in(Arc::new(files), VPath::new(KIT_FILE)?)
}

/// Opens the kit `file` in a folder of any sort.
///
/// # Errors
/// As [`open`].
pub fn open_in(files: Arc<dyn Files>, file: VPath) -> Hinted<Opened> {
    let text = files.read_text(&file, limits::RON_BYTES)?;
    let mut kit = read_kit(&text, file.as_str())?;
    kit.plays = plays_beside(files.as_ref(), &file)?;
    let (mut theme, fonts) = find_theme(files.as_ref(), &kit.theme)?;
    theme::load_pictures(&mut theme, files.as_ref(), &kit);
    Ok(Opened { files, file, folder: None, kit, theme, fonts })
}

/// A theme and the fonts that go with it: the kit's own `themes/<id>/`, then the author's theme folder, then
/// the built-in ones.
///
/// # Errors
/// When no place has a theme of this name, or the one found cannot be read.
pub fn find_theme(kit_files: &dyn Files, id: &ThemeId) -> Hinted<(Loaded, FontBook)> {
    let bundled = FontBook::bundled()?;
    let fonts_folder = VPath::new("fonts")?;
    let own = VPath::new("themes")?.join(id.as_str())?;
    if kit_files.exists(&own.join("theme.ron")?) {
        let below = Below { files: kit_files, folder: own };
        let loaded = theme::load(&below, &format!("themes/{id}"))?;
        return Ok((loaded, bundled.with_folder(&below, &fonts_folder)?));
    }
    if let Some(folder) = author_themes() {
        let disk = Disk::new(folder.join(id.as_str()));
        if disk.exists(&VPath::new("theme.ron")?) {
            let loaded = theme::load(&disk, &disk.root().display().to_string())?;
            return Ok((loaded, bundled.with_folder(&disk, &fonts_folder)?));
        }
    }
    let known = theme::builtin_ids();
    if known.contains(id) {
        let below = Builtin::below(VPath::new("themes")?.join(id.as_str())?);
        return Ok((theme::load(&below, id.as_str())?, bundled.with_folder(&below, &fonts_folder)?));
    }
    let names: Vec<&str> = known.iter().map(ThemeId::as_str).collect();
    let mut trouble = Trouble::new(format!("there is no theme `{id}`")).at("theme");
    if let Some(near) = nearest(id.as_str(), &names) {
        trouble = trouble.hint(format!("did you mean `{near}`?"));
    }
    trouble = trouble.hint(format!("built in: {}", names.join(", ")));
    Err(match author_themes() {
        Some(folder) => trouble.hint(format!(
            "or put a folder `{id}` with a theme.ron into the kit's own themes/ or into {}",
            folder.display()
        )),
        None => trouble.hint(format!("or put a folder `{id}` with a theme.ron into the kit's own themes/")),
    })
}

/// The folder of a theme, looked for as [`find_theme`] does.
pub(super) fn theme_files<'a>(kit_files: &'a dyn Files, id: &ThemeId) -> Option<Box<dyn Files + 'a>> {
    let folder = VPath::new("themes").and_then(|themes| themes.join(id.as_str())).ok()?;
    let file = VPath::new("theme.ron").ok()?;
    if kit_files.exists(&folder.join(file.as_str()).ok()?) {
        return Some(Box::new(Below { files: kit_files, folder }));
    }
    if let Some(author) = author_themes() {
        let disk = Disk::new(author.join(id.as_str()));
        if disk.exists(&file) {
            return Some(Box::new(disk));
        }
    }
    theme::builtin_ids().contains(id).then(|| Box::new(Builtin::below(folder)) as Box<dyn Files>)
}

/// The folder of a theme that a kit wears out of the author's theme folder; none where it comes from elsewhere.
pub(super) fn author_theme(kit_files: &dyn Files, id: &ThemeId) -> Option<Disk> {
    let file = VPath::new("theme.ron").ok()?;
    let own = VPath::new("themes").and_then(|themes| themes.join(id.as_str())?.join(file.as_str())).ok()?;
    if kit_files.exists(&own) {
        return None;
    }
    let disk = Disk::new(author_themes()?.join(id.as_str()));
    disk.exists(&file).then_some(disk)
}

/// The author's theme folder: `inklatch/themes` in the user's data folder (XDG Base Directory Specification:
/// `$XDG_DATA_HOME`, absolute, else `$HOME/.local/share`).
#[must_use]
pub fn author_themes() -> Option<PathBuf> {
    let set = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    let data = set("XDG_DATA_HOME").or_else(|| set("HOME").map(|home| home.join(".local/share")))?;
    Some(data.join("inklatch/themes"))
}

/// The part of a folder below another, to be read only.
pub(super) struct Below<'a> {
    pub files: &'a dyn Files,
    pub folder: VPath,
}

impl Files for Below<'_> {
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>> {
        self.files.read(&self.folder.join(path.as_str())?, most)
    }

    fn write(&self, path: &VPath, bytes: &[u8]) -> Hinted<()> {
        self.files.write(&self.folder.join(path.as_str())?, bytes)
    }

    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>> {
        let found = self.files.list(&self.folder.join(folder.as_str())?)?;
        Ok(found.iter().filter_map(|path| path.below(&self.folder)).collect())
    }

    fn exists(&self, path: &VPath) -> bool {
        self.folder.join(path.as_str()).is_ok_and(|path| self.files.exists(&path))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::Memory;

    #[test]
    fn a_folder_below_another_sees_only_itself() {
        let path = |text| VPath::new(text).unwrap();
        let all = Memory::with([(path("themes/x/theme.ron"), vec![1]), (path("kit.ron"), vec![2])]);
        let below = Below { files: &all, folder: path("themes/x") };
        assert!(below.exists(&path("theme.ron")) && !below.exists(&path("kit.ron")));
        assert_eq!(below.list(&VPath::root()).unwrap(), vec![path("theme.ron")]);
    }
}
