use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::Doc;
use crate::bundle::{
    ThemeNamed, ThemeSource, author_themes, bring_theme, copy_theme, find_theme, save_theme, take_picture, theme_names,
};
use crate::diag::{Hinted, Trouble};
use crate::files::{Disk, Files, Over, VPath};
use crate::ids::ThemeId;
use crate::kit::file::{from_ron, to_ron};
use crate::limits;
use crate::theme::{Palette, PictureKind, Theme, ThemeEdit, edit, read_picture};

/// A theme file of the kit's own that was changed here and is not saved yet.
pub(super) struct Edited {
    /// As it was changed.
    pub theme: Theme,
    /// As it was read.
    pub disk: Theme,
    /// The text that was read.
    pub text: String,
}

/// The file of a theme of the kit's own.
pub(super) fn theme_file(id: &ThemeId) -> Hinted<VPath> {
    VPath::new("themes")?.join(id.as_str())?.join("theme.ron")
}

impl Doc {
    /// Notes which themes are at hand, and where the one worn lies.
    pub(super) fn find_themes(&mut self) {
        self.themes = theme_names(self.files.as_ref());
        let id = self.kit.theme.as_str();
        self.theme_folder = match self.source() {
            ThemeSource::Kit => self.folder.as_ref().map(|folder| folder.join("themes").join(id)),
            ThemeSource::Author => author_themes().map(|folder| folder.join(id)),
            ThemeSource::Builtin => None,
        };
    }

    /// The themes at hand: the kit's own, the author's, the built-in ones.
    #[must_use]
    pub fn themes(&self) -> &[ThemeNamed] {
        &self.themes
    }

    /// Where the theme worn comes from.
    #[must_use]
    pub fn source(&self) -> ThemeSource {
        let worn = self.themes.iter().find(|known| known.id == self.kit.theme);
        worn.map_or(ThemeSource::Builtin, |known| known.source)
    }

    /// What a theme is called; its id where it is not at hand or its file cannot be read.
    #[must_use]
    pub fn theme_name(&self, id: &ThemeId) -> String {
        let known = self.themes.iter().find(|known| known.id == *id);
        known.and_then(|known| known.name.clone()).unwrap_or_else(|| id.to_string())
    }

    /// Whether the theme worn is one of the kit's own, and so can be changed here.
    #[must_use]
    pub fn own_theme(&self) -> bool {
        self.folder.is_some() && self.source() == ThemeSource::Kit
    }

    /// Copies the theme worn from the author's folder into the kit's own `themes/`, so that the kit opens elsewhere.
    ///
    /// # Errors
    /// When the kit has no folder yet, or a file cannot be read or written.
    pub fn bring_theme(&mut self) -> Hinted<()> {
        if self.folder.is_none() {
            return Err(Trouble::new("the kit lies in no folder yet").hint("save it first; its themes lie beside it"));
        }
        bring_theme(self.files.as_ref(), &self.worn, self.files.as_ref())?;
        self.find_themes();
        Ok(())
    }

    /// The theme that is loaded: the one that the kit names, unless that one cannot be read.
    #[must_use]
    pub const fn worn(&self) -> &ThemeId {
        &self.worn
    }

    /// Whether the file of the theme worn was changed here and is not saved yet.
    #[must_use]
    pub fn theme_edited(&self) -> bool {
        self.edited.contains_key(&self.worn)
    }

    /// The folder on disk from which the theme comes; none for a built-in one.
    #[must_use]
    pub fn theme_folder(&self) -> Option<&Path> {
        self.theme_folder.as_deref()
    }

    /// The folders in which other programs may change what is open here, each with whether all below it counts.
    #[must_use]
    pub fn watched(&self) -> Vec<(PathBuf, bool)> {
        let art = self.folder.as_ref().map(|folder| (folder.join("art"), true));
        let kit = self.folder.as_ref().map(|folder| (folder.clone(), false));
        let theme = self.theme_folder.as_ref().map(|folder| (folder.clone(), true));
        // A theme that the author makes meanwhile is to be listed.
        let author = author_themes().map(|folder| (folder, true));
        kit.into_iter().chain(art).chain(theme).chain(author).collect()
    }

    /// The kit's folder with the themes as they were changed here.
    pub(super) fn files_now(&self) -> Hinted<Arc<dyn Files>> {
        if self.edited.is_empty() {
            return Ok(self.files.clone());
        }
        let mut over = BTreeMap::new();
        for (id, edited) in &self.edited {
            over.insert(theme_file(id)?, to_ron(&edited.theme)?.into_bytes());
        }
        Ok(Arc::new(Over::new(self.files.clone(), over)))
    }

    /// Loads a theme; the one before it stays when that fails.
    pub(super) fn load_theme(&mut self, id: &ThemeId) {
        match self.files_now().and_then(|files| find_theme(files.as_ref(), id)) {
            Ok((theme, fonts)) => {
                self.theme = Arc::new(theme);
                self.worn = id.clone();
                self.fonts = fonts;
                self.pictures.clear();
                self.theme_trouble = None;
                self.theme_behind = None;
                self.find_themes();
            }
            Err(trouble) => self.theme_trouble = Some(trouble),
        }
    }

    /// Changes a theme of the kit's own, and answers what takes it back.
    pub(super) fn edit_theme(&mut self, id: &ThemeId, change: &ThemeEdit) -> Option<ThemeEdit> {
        let mut edited = match self.edited.remove(id) {
            Some(edited) => edited,
            None => {
                let file = theme_file(id).ok()?;
                let text = self.files.read_text(&file, limits::RON_BYTES).ok()?;
                let disk: Theme = from_ron(&text, file.as_str()).ok()?;
                Edited { theme: disk.clone(), disk, text }
            }
        };
        let back = edit(&mut edited.theme, change.clone());
        if back.is_some() && self.worn == *id {
            let loaded = Arc::make_mut(&mut self.theme);
            loaded.theme = edited.theme.clone();
            if let ThemeEdit::Picture(_, _, Some(path)) = change
                && !loaded.art.contains_key(path)
                && let Ok(place) = VPath::new("themes").and_then(|at| at.join(id.as_str())?.join(path.as_str()))
            {
                match read_picture(self.files.as_ref(), &place) {
                    Ok((svg, left_out)) => {
                        loaded.art.insert(path.clone(), svg);
                        loaded.left_out.extend(left_out.into_iter().map(|less| less.at(place.to_string())));
                    }
                    Err(trouble) => loaded.missing.push(trouble.at(place.to_string())),
                }
            }
        }
        if edited.theme != edited.disk {
            self.edited.insert(id.clone(), edited);
        }
        back
    }

    /// Begins a theme of the kit's own as a copy of the one worn, and answers its id.
    ///
    /// # Errors
    /// When the kit has no folder yet, there is a theme of that name, or the folder cannot be written.
    pub fn start_theme(&mut self, name: &str) -> Hinted<ThemeId> {
        if self.folder.is_none() {
            return Err(Trouble::new("the kit lies in no folder yet").hint("save it first; its themes lie beside it"));
        }
        let files = self.files_now()?;
        let id = copy_theme(files.as_ref(), &self.worn, name)?;
        self.find_themes();
        Ok(id)
    }

    /// Copies a picture from anywhere on disk into the theme worn, and answers the change that puts it in its place and
    /// what will be left out of it.
    ///
    /// # Errors
    /// As [`take_picture`].
    pub fn take_picture(&self, kind: PictureKind, name: &str, file: &Path) -> Hinted<(ThemeEdit, Vec<Trouble>)> {
        let palette = Palette::new(&self.theme.theme.palette, &self.kit.look.palette)?;
        let unread = || Trouble::new("this is no file").at(file.display().to_string()).hint("name an SVG picture");
        let folder = file.parent().ok_or_else(unread)?;
        let inner = VPath::new(file.file_name().and_then(|name| name.to_str()).ok_or_else(unread)?)?;
        let from = Disk::new(folder);
        let taken = take_picture(self.files.as_ref(), &self.worn, (kind, name), (&from, &inner), &palette)?;
        Ok((ThemeEdit::Picture(kind, name.to_owned(), Some(taken.path)), taken.left_out))
    }

    /// Saves the themes that were changed here.
    pub(super) fn save_themes(&mut self) -> Hinted<()> {
        while let Some((id, mut edited)) = self.edited.pop_first() {
            // A comma at the end of a list is being typed; nothing stands behind it yet.
            edited.theme.season_words.retain(|word| !word.trim().is_empty());
            edited.theme.languages.retain(|code| !code.trim().is_empty());
            if let Err(trouble) = save_theme(self.files.as_ref(), &theme_file(&id)?, &edited.theme, &edited.text) {
                self.edited.insert(id, edited);
                return Err(trouble);
            }
        }
        Ok(())
    }
}
