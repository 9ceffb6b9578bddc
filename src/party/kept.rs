use std::collections::BTreeMap;
use std::sync::Arc;

use super::depends::{Key, Shared};
use super::laid::Made;
use crate::face::Pictures;
use crate::ids::PuzzleId;
use crate::theme::Palette;

/// Puzzles that were laid out before, so that an edit lays out anew only what it changes.
///
/// A puzzle is the same when everything is the same that goes into it: see `depends`. All that is kept belongs to one
/// theme; whoever changes the theme begins with an empty store. What one pass over a kit did not use is forgotten at
/// the end of the next.
#[derive(Debug, Default)]
pub struct Kept {
    shared: Option<Shared>,
    /// The theme's pictures, and the palette in which they were read.
    pictures: Option<(Palette, Arc<Pictures>)>,
    entries: BTreeMap<PuzzleId, Vec<Entry>>,
    pass: u64,
}

#[derive(Debug)]
struct Entry {
    key: Key,
    made: Made,
    pass: u64,
}

impl Kept {
    /// Begins a pass: forgets what the last one did not use.
    pub fn begin(&mut self) {
        let last = self.pass;
        self.entries.retain(|_, list| {
            list.retain(|entry| entry.pass == last);
            !list.is_empty()
        });
        self.pass += 1;
    }

    /// The theme's pictures in this palette.
    pub(super) fn pictures(&mut self, palette: &Palette) -> Arc<Pictures> {
        let known = self.pictures.take().filter(|(of, _)| of == palette);
        let (_, pictures) = self.pictures.insert(known.unwrap_or_else(|| (palette.clone(), Arc::default())));
        pictures.clone()
    }

    /// Says what all puzzles share from now on; a change in it makes all that is kept worthless.
    pub(super) fn share(&mut self, shared: Shared) {
        if self.shared.as_ref() != Some(&shared) {
            self.shared = Some(shared);
            self.entries.clear();
        }
    }

    /// The puzzle as it was laid out with this key.
    pub(super) fn get(&mut self, id: &PuzzleId, key: &Key) -> Option<Made> {
        let pass = self.pass;
        let entry = self.entries.get_mut(id)?.iter_mut().find(|entry| entry.key == *key)?;
        entry.pass = pass;
        Some(entry.made.clone())
    }

    /// Keeps a puzzle.
    pub(super) fn put(&mut self, id: &PuzzleId, key: Key, made: &Made) {
        let entry = Entry { key, made: made.clone(), pass: self.pass };
        self.entries.entry(id.clone()).or_default().push(entry);
    }
}
