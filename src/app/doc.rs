mod own;
mod reread;

pub use reread::Reread;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::app::change::{Change, Target};
use crate::bundle::{Opened, Saving, ThemeNamed, open, open_demo, plays_beside, save, save_plays};
use crate::diag::{Hinted, Trouble};
use crate::files::{Disk, Files, FontBook, VPath};
use crate::ids::ThemeId;
use crate::kit::Kit;
use crate::kit::edit::apply;
use crate::kit::file::write_kit;
use crate::limits;
use crate::theme::{Loaded, load_pictures};

/// The kit file of a folder.
const KIT_FILE: &str = "kit.ron";
/// The open kit with its theme and the place where it is kept.
pub struct Doc {
    /// The kit as it stands, edits included.
    pub kit: Kit,
    /// The theme in force.
    pub theme: Arc<Loaded>,
    /// The fonts at hand.
    pub fonts: FontBook,
    /// The folder on disk; none for the demo kit that the program carries.
    pub folder: Option<PathBuf>,
    /// What is wrong with the theme that the kit names, when the one before it still stands in.
    pub theme_trouble: Option<Trouble>,
    /// What keeps the theme from being as it is on disk, where another program has changed it.
    pub theme_behind: Option<Trouble>,
    /// Goes up with every change, so that what is computed can say which state it belongs to.
    pub revision: u64,
    /// The folder on disk from which the theme comes; none for a built-in one.
    theme_folder: Option<PathBuf>,
    /// The themes at hand: the kit's own, the author's, the built-in ones.
    themes: Vec<ThemeNamed>,
    /// The theme that is loaded.
    worn: ThemeId,
    /// Files of the kit's own themes as they were changed here, until they are saved.
    edited: BTreeMap<ThemeId, own::Edited>,
    files: Arc<dyn Files>,
    file: VPath,
    saved: Kit,
    /// The kit file's text as it was read or written last.
    on_disk: Option<String>,
    /// The kit's own pictures that are loaded.
    pictures: BTreeSet<VPath>,
    /// The pictures that lie in the kit's folder, as they were when it was opened or saved.
    own_pictures: Vec<VPath>,
    unsaved: bool,
    /// The kit file's text that was looked at last and not taken over.
    seen: Option<String>,
}

/// The pictures in a kit's `art/`; none when the folder cannot be listed.
fn list_pictures(files: &dyn Files) -> Vec<VPath> {
    let found = VPath::new("art").and_then(|folder| files.list(&folder)).unwrap_or_default();
    found.into_iter().filter(|path| matches!(path.extension().as_str(), "svg" | "png" | "jpg" | "jpeg")).collect()
}

/// The pictures that a kit names.
fn pictures(kit: &Kit) -> BTreeSet<VPath> {
    kit.notes.iter().filter_map(|note| note.picture.clone()).collect()
}

impl Doc {
    /// An opened kit.
    #[must_use]
    pub fn new(opened: Opened) -> Self {
        let Opened { files, file, folder, kit, theme, fonts } = opened;
        let mut doc = Self {
            saved: kit.clone(),
            on_disk: files.read_text(&file, limits::RON_BYTES).ok(),
            pictures: pictures(&kit),
            own_pictures: list_pictures(files.as_ref()),
            kit,
            theme: Arc::new(theme),
            fonts,
            folder,
            theme_trouble: None,
            theme_folder: None,
            theme_behind: None,
            themes: Vec::new(),
            worn: ThemeId::from_text(""),
            edited: BTreeMap::new(),
            revision: 1,
            files,
            file,
            unsaved: false,
            seen: None,
        };
        doc.worn = doc.kit.theme.clone();
        doc.find_themes();
        doc
    }

    /// Opens a kit on disk.
    ///
    /// # Errors
    /// As [`open`].
    pub fn open(path: &Path) -> Hinted<Self> {
        open(Some(path)).map(Self::new)
    }

    /// Opens a demo kit that the program carries.
    ///
    /// # Errors
    /// When there is none of this name.
    pub fn demo(name: &str) -> Hinted<Self> {
        open_demo(name).map(Self::new)
    }

    /// Notes that the kit has changed: asks anew whether it is as saved, and looks for its theme when it names
    /// another.
    pub fn changed(&mut self) {
        self.revision += 1;
        self.unsaved = self.kit != self.saved || !self.edited.is_empty();
        if self.kit.theme == self.worn {
            self.theme_trouble = None;
        } else {
            self.load_theme(&self.kit.theme.clone());
        }
        let pictures = pictures(&self.kit);
        if pictures != self.pictures {
            let theme = Arc::make_mut(&mut self.theme);
            load_pictures(theme, self.files.as_ref(), &self.kit);
            self.pictures = pictures;
        }
    }

    /// The pictures in the kit's own folder.
    #[must_use]
    pub fn own_pictures(&self) -> &[VPath] {
        &self.own_pictures
    }

    /// Whether the kit differs from what is on disk.
    #[must_use]
    pub const fn unsaved(&self) -> bool {
        self.unsaved
    }

    /// Whether the kit has a folder to be saved in.
    #[must_use]
    pub const fn has_place(&self) -> bool {
        self.folder.is_some()
    }

    /// Where the kit is kept, in words.
    #[must_use]
    pub fn place(&self) -> String {
        self.folder.as_ref().map_or_else(
            || "the demo kit, not yet saved anywhere".to_owned(),
            |folder| folder.join(self.file.as_str()).display().to_string(),
        )
    }

    /// Saves the kit where it lies.
    ///
    /// RON that the program writes has no comments: a file that has some is first kept under another name.
    ///
    /// # Errors
    /// When the folder cannot be written or somebody else has changed the file meanwhile; the file there is then
    /// as it was, and the kit stays unsaved.
    pub fn save(&mut self) -> Hinted<()> {
        self.save_themes()?;
        let place = self.place();
        let saving = Saving {
            files: self.files.as_ref(),
            file: &self.file,
            known: self.on_disk.as_deref(),
            saved: &self.saved,
            place: &place,
        };
        let text = save(&self.kit, &saving)?;
        self.saved_as(text);
        Ok(())
    }

    /// Notes what is on disk now.
    fn saved_as(&mut self, text: String) {
        self.on_disk = Some(text);
        self.own_pictures = list_pictures(self.files.as_ref());
        self.find_themes();
        self.saved = self.kit.clone();
        self.unsaved = false;
    }

    /// Saves the kit in another folder, with the pictures and themes that it brings, and goes on there. The
    /// kit file is written last, so that a folder with one is whole.
    ///
    /// # Errors
    /// When there is another kit already, or the folder cannot be written; all stays as it was.
    pub fn save_as(&mut self, folder: &Path) -> Hinted<()> {
        let disk = Disk::new(folder);
        let file = VPath::new(KIT_FILE)?;
        if disk.exists(&file) && self.folder.as_deref() != Some(folder) {
            return Err(Trouble::new("another kit lies in this folder already")
                .at(folder.display().to_string())
                .hint("choose an empty folder, or a new name"));
        }
        let files = self.files_now()?;
        for path in files.list(&VPath::default())? {
            let brought = ["art/", "themes/", "fonts/"].iter().any(|top| path.as_str().starts_with(top));
            if brought && self.folder.as_deref() != Some(folder) {
                disk.write(&path, &files.read(&path, limits::PICTURE_BYTES)?)?;
            }
        }
        let text = write_kit(&self.kit)?;
        let there = plays_beside(&disk, &file)?;
        save_plays(&disk, &file, &self.kit.plays, &there)?;
        disk.write(&file, text.as_bytes())?;
        self.edited.clear();
        self.files = Arc::new(disk);
        self.file = file;
        self.folder = Some(folder.to_owned());
        self.saved_as(text);
        Ok(())
    }

    /// The kit as it would be exported now.
    #[must_use]
    pub fn opened(&self) -> Opened {
        Opened {
            // A theme that cannot be written as RON cannot be kept either; then the folder stands as it is.
            files: self.files_now().unwrap_or_else(|_| self.files.clone()),
            file: self.file.clone(),
            folder: self.folder.clone(),
            kit: self.kit.clone(),
            theme: (*self.theme).clone(),
            fonts: self.fonts.clone(),
        }
    }
}

impl Target for Doc {
    fn apply(&mut self, change: Change) -> Option<Change> {
        match change {
            Change::Kit(edit) => apply(&mut self.kit, edit).map(Change::Kit),
            Change::Theme(id, edit) => self.edit_theme(&id, &edit).map(|back| Change::Theme(id, back)),
        }
    }
}
