use std::sync::Arc;

use super::{Builtin, Files, VPath};
use crate::diag::{Hinted, Trouble};
use crate::limits;

/// The fonts at hand: bundled ones, a theme's own, and on request those of the system.
#[derive(Clone, Debug)]
pub struct FontBook {
    db: Arc<fontdb::Database>,
}

impl FontBook {
    /// Whether the other is this very book, or a copy of it.
    #[must_use]
    pub fn is(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.db, &other.db)
    }

    /// The bundled fonts of `assets/fonts`.
    ///
    /// # Errors
    /// When a bundled file cannot be read.
    pub fn bundled() -> Hinted<Self> {
        let mut db = fontdb::Database::new();
        let files = Builtin::new();
        for path in files.list(&VPath::new("assets/fonts")?)? {
            if is_font(&path) {
                db.load_font_data(files.read(&path, limits::FONT_BYTES)?);
            }
        }
        Ok(Self { db: Arc::new(db) })
    }

    /// These fonts and those that `files` holds below `folder`.
    ///
    /// # Errors
    /// When a file cannot be read or is no font.
    pub fn with_folder(&self, files: &dyn Files, folder: &VPath) -> Hinted<Self> {
        let mut db = (*self.db).clone();
        for path in files.list(folder)?.into_iter().filter(is_font) {
            let bytes = files.read(&path, limits::FONT_BYTES)?;
            let before = db.len();
            db.load_font_data(bytes);
            if db.len() == before {
                return Err(Trouble::new("this is no font that can be read")
                    .at(path.to_string())
                    .hint("use an OpenType or TrueType file (.otf, .ttf)"));
            }
        }
        Ok(Self { db: Arc::new(db) })
    }

    /// These fonts and those of the system.
    #[must_use]
    pub fn with_system(&self) -> Self {
        let mut db = (*self.db).clone();
        db.load_system_fonts();
        Self { db: Arc::new(db) }
    }

    /// These fonts; and the system's too where one of the `families` is not among these: to name a font is to
    /// ask for it.
    #[must_use]
    pub fn for_families<'a>(&self, families: impl IntoIterator<Item = &'a str>) -> Self {
        let known = self.families();
        let has = |family: &str| known.iter().any(|name| name.to_lowercase() == family.to_lowercase());
        if families.into_iter().all(has) { self.clone() } else { self.with_system() }
    }

    /// The font database.
    #[must_use]
    pub const fn db(&self) -> &Arc<fontdb::Database> {
        &self.db
    }

    /// All family names, sorted, each once.
    #[must_use]
    pub fn families(&self) -> Vec<String> {
        let mut names: Vec<String> =
            self.db.faces().filter_map(|face| face.families.first().map(|(name, _)| name.clone())).collect();
        names.sort();
        names.dedup();
        names
    }
}

fn is_font(path: &VPath) -> bool {
    matches!(path.extension().as_str(), "ttf" | "otf" | "ttc" | "otc")
}
