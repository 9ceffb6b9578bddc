use std::sync::Arc;

use super::Doc;
use super::own::theme_file;
use crate::bundle::{find_theme, plays_beside};
use crate::diag::{Hinted, Trouble};
use crate::kit::Kit;
use crate::kit::file::read_kit;
use crate::limits;
use crate::theme::{Loaded, load_pictures};

/// What is said of what cannot be read any more.
const LAST_GOOD: &str = "the last good version stands in until it can be read again";

/// What came of a look at the kit's file.
pub enum Reread {
    /// It is as it was.
    Same,
    /// It was read anew.
    Fresh,
    /// It cannot be taken over; the kit that is open stands.
    Behind(Trouble),
}

impl Doc {
    /// Looks whether another program has changed the kit's file, and reads it anew where nothing was changed here.
    pub fn reread_kit(&mut self) -> Reread {
        // A file that is missing for a moment is being written.
        let Ok(text) = self.files.read_text(&self.file, limits::RON_BYTES) else { return Reread::Same };
        if self.folder.is_none() {
            return Reread::Same;
        }
        if self.on_disk.as_ref() == Some(&text) || self.seen.as_ref() == Some(&text) {
            return self.reread_plays();
        }
        self.seen = Some(text.clone());
        let place = self.place();
        if self.kit != self.saved {
            let trouble = Trouble::new("another program has changed the file, and the kit was changed here as well");
            return Reread::Behind(
                trouble.at(place).hint("save the kit in another folder, or open it anew to take those changes over"),
            );
        }
        let read = read_kit(&text, &place)
            .and_then(|kit| Ok(Kit { plays: plays_beside(self.files.as_ref(), &self.file)?, ..kit }));
        match read {
            Ok(kit) => {
                self.kit = kit.clone();
                self.saved = kit;
                self.on_disk = Some(text);
                self.changed();
                Reread::Fresh
            }
            Err(trouble) => Reread::Behind(trouble.hint(LAST_GOOD)),
        }
    }

    /// Takes over plays that another program has written down, where nothing was changed here. A file that cannot be read
    /// is told when the kit is opened or a play is saved.
    fn reread_plays(&mut self) -> Reread {
        match plays_beside(self.files.as_ref(), &self.file) {
            Ok(plays) if self.kit == self.saved && plays != self.saved.plays => {
                self.kit.plays.clone_from(&plays);
                self.saved.plays = plays;
                self.changed();
                Reread::Fresh
            }
            _ => Reread::Same,
        }
    }

    /// Reads the theme and the kit's own pictures anew, after another program has changed something. What cannot be read
    /// any more stays as it was, and is told. Answers whether anything is another now.
    pub fn reread_theme(&mut self) -> bool {
        let before = self.theme_behind.take();
        let known = self.themes.clone();
        self.find_themes();
        let read = self.files_now().and_then(|files| find_theme(files.as_ref(), &self.worn));
        match read {
            Ok((mut theme, fonts)) => {
                self.keep_last_good(&mut theme);
                load_pictures(&mut theme, self.files.as_ref(), &self.kit);
                self.own_pictures = super::list_pictures(self.files.as_ref());
                self.theme_behind = self.changed_twice();
                let same = same(&theme, &self.theme) && fonts.families() == self.fonts.families();
                if !same {
                    self.theme = Arc::new(theme);
                    self.fonts = fonts;
                    self.revision += 1;
                }
                !same || known != self.themes || before.is_some() != self.theme_behind.is_some()
            }
            Err(trouble) => {
                self.theme_behind = Some(trouble.hint(LAST_GOOD));
                true
            }
        }
    }

    /// Gives up what was changed here in the file of the theme worn, and takes the one on disk.
    pub fn take_theme_file(&mut self) {
        self.edited.remove(&self.worn);
        self.reread_theme();
        self.unsaved = self.kit != self.saved || !self.edited.is_empty();
    }

    /// Pictures that cannot be read now, but could before, stay.
    fn keep_last_good(&self, theme: &mut Loaded) {
        let file = &theme.theme;
        let named = file.frames.values().chain(file.ornaments.values()).chain(file.symbols.values());
        let lost: Vec<_> = named.filter(|path| !theme.art.contains_key(*path)).cloned().collect();
        for path in lost {
            if let Some(last) = self.theme.art.get(&path) {
                theme.art.insert(path, last.clone());
            }
        }
        let missing = std::mem::take(&mut theme.missing);
        theme.missing = missing.into_iter().map(|trouble| trouble.hint(LAST_GOOD)).collect();
    }

    /// What is said when the file of the theme worn was changed here and elsewhere.
    fn changed_twice(&self) -> Option<Trouble> {
        let edited = self.edited.get(&self.worn)?;
        let file = theme_file(&self.worn).ok()?;
        let now: Hinted<String> = self.files.read_text(&file, limits::RON_BYTES);
        let changed = now.is_ok_and(|now| now != edited.text);
        changed.then(|| {
            Trouble::new("another program has changed this file, and it was changed here as well")
                .at(file.to_string())
                .hint("what was changed here is shown, and saving will not write over the other's work")
        })
    }
}

fn same(one: &Loaded, other: &Loaded) -> bool {
    one.theme == other.theme
        && one.art == other.art
        && one.pictures == other.pictures
        && one.missing == other.missing
        && one.left_out == other.left_out
        && one.lost_pictures == other.lost_pictures
        && one.less_pictures == other.less_pictures
}
