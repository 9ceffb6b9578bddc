use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use crate::diag::Hinted;
use crate::face::{Frame, Glance};

/// A theme's frames, symbols and ornaments in the colours of one palette, each read once, however many pieces it stands on.
///
/// Reading a picture takes longer than all the rest of laying a piece out. It belongs to one theme and one palette:
/// whoever changes either begins with an empty one.
#[derive(Debug, Default)]
pub struct Pictures {
    frames: Read<Arc<Frame>>,
    symbols: Read<Arc<str>>,
    ornaments: Read<Arc<str>>,
    glances: Read<Glance>,
}

/// What was read, by name; what could not be read is kept with the reason.
type Read<T> = Mutex<BTreeMap<String, Hinted<T>>>;

impl Pictures {
    /// The frame of this name, as `read` reads it the first time.
    ///
    /// # Errors
    /// As `read`.
    pub fn frame(&self, name: &str, read: impl FnOnce() -> Hinted<Frame>) -> Hinted<Arc<Frame>> {
        once(&self.frames, name, || read().map(Arc::new))
    }

    /// The names of the frames that were asked for, sorted.
    #[must_use]
    pub fn frames_asked(&self) -> Vec<String> {
        self.frames.lock().unwrap_or_else(PoisonError::into_inner).keys().cloned().collect()
    }

    /// The symbol of this name, as `read` reads it the first time.
    ///
    /// # Errors
    /// As `read`.
    pub fn symbol(&self, name: &str, read: impl FnOnce() -> Hinted<Arc<str>>) -> Hinted<Arc<str>> {
        once(&self.symbols, name, read)
    }

    /// The ornament of this name, as `read` reads it the first time.
    ///
    /// # Errors
    /// As `read`.
    pub fn ornament(&self, name: &str, read: impl FnOnce() -> Hinted<Arc<str>>) -> Hinted<Arc<str>> {
        once(&self.ornaments, name, read)
    }

    /// The symbol of this name as it looks in print, as `read` sees it the first time.
    ///
    /// # Errors
    /// As `read`.
    pub fn glance(&self, name: &str, read: impl FnOnce() -> Hinted<Glance>) -> Hinted<Glance> {
        once(&self.glances, name, read)
    }
}

/// Two threads that ask for one picture at the same time may both read it; they get the same.
fn once<T: Clone>(known: &Read<T>, name: &str, read: impl FnOnce() -> Hinted<T>) -> Hinted<T> {
    let lock = || known.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(found) = lock().get(name) {
        return found.clone();
    }
    let found = read();
    lock().insert(name.to_owned(), found.clone());
    found
}
