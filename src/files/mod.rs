//! The one door to the disk, to fonts and to the date.
//!
//! Everything else of the program sees files through [`Files`], by paths that cannot leave their folder
//! ([`VPath`]). [`Disk`] is a folder, [`Memory`] serves tests and previews, [`Builtin`] is what the program
//! carries within itself.

mod builtin;
mod disk;
mod fonts;
mod memory;
mod over;
mod vpath;
mod watch;

pub use builtin::Builtin;
pub use disk::{Disk, open_folder, today};
pub use fonts::FontBook;
pub use memory::Memory;
pub use over::Over;
pub use vpath::VPath;
pub use watch::Watch;

use crate::diag::Hinted;

/// A folder of files.
pub trait Files: Send + Sync {
    /// The bytes of a file of at most `most` bytes.
    ///
    /// # Errors
    /// When it is missing, unreadable or larger.
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>>;

    /// Writes a file whole or not at all: a temporary file, synced, then renamed over the old one.
    ///
    /// # Errors
    /// When the folder cannot be written or the disk is full; the old file is then untouched.
    fn write(&self, path: &VPath, bytes: &[u8]) -> Hinted<()>;

    /// Every file below `folder`, sorted.
    ///
    /// # Errors
    /// When the folder cannot be read; a missing one is empty.
    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>>;

    /// Whether the file is there.
    fn exists(&self, path: &VPath) -> bool;

    /// A file as text.
    ///
    /// # Errors
    /// As [`Files::read`], and when it is not UTF-8.
    fn read_text(&self, path: &VPath, most: u64) -> Hinted<String> {
        let bytes = self.read(path, most)?;
        String::from_utf8(bytes).map_err(|error| {
            crate::diag::Trouble::new(format!(
                "the file is not text in UTF-8: byte {} does not fit",
                error.utf8_error().valid_up_to()
            ))
            .at(path.to_string())
            .hint("save it as UTF-8 in the editor that made it")
        })
    }
}
