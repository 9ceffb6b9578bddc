use std::path::{Path, PathBuf};

use super::manifest::{FILE, Made, Manifest};
use crate::diag::{Hinted, Trouble};
use crate::files::{Disk, Files as _, VPath};
use crate::kit::Kit;
use crate::limits;

/// Where a bundle is put, and where it grows until it is whole.
pub(super) struct Site {
    disk: Disk,
    fresh: VPath,
    place: VPath,
}

impl Site {
    /// The site of a kit's bundle in `out`.
    ///
    /// # Errors
    /// When something stands there that is no bundle of ours: it is not for us to remove.
    pub(super) fn new(out: &Path, kit: &Kit) -> Hinted<Self> {
        let disk = Disk::new(out);
        if out.exists() && !out.is_dir() {
            return Err(Trouble::new("this is a file, not a folder")
                .at(out.display().to_string())
                .hint("name a folder with --out"));
        }
        let id = kit.id.as_str();
        let site = Self { disk, fresh: VPath::new(&format!("{id}.part"))?, place: VPath::new(id)? };
        // The folder that a replaced bundle moves aside to (`Disk::replace_folder`), and the one that grows.
        for path in [site.place.clone(), VPath::new(&format!("{id}.old"))?] {
            site.ours(&path)?;
        }
        Ok(site)
    }

    /// The bundle's folder on disk.
    pub(super) fn folder(&self) -> PathBuf {
        self.disk.real(&self.place)
    }

    /// Holds that a folder is missing, empty, or a bundle with nothing else in it.
    fn ours(&self, folder: &VPath) -> Hinted<()> {
        let real = self.disk.real(folder);
        let refuse = |why: String| {
            Err(Trouble::new(why)
                .at(real.display().to_string())
                .hint("move it away, or export to another folder with --out"))
        };
        if !real.exists() {
            return Ok(());
        }
        if !real.is_dir() {
            return refuse("a file stands where the bundle should go".into());
        }
        let files = self.disk.list(folder)?;
        if files.is_empty() {
            return Ok(());
        }
        let manifest = folder.join(FILE)?;
        let manifest = self.disk.read_text(&manifest, limits::RON_BYTES).ok().and_then(|text| Manifest::parse(&text));
        let Some(manifest) = manifest else {
            return refuse("the folder holds something that is no bundle".into());
        };
        let strange = files.iter().filter_map(|file| file.below(folder)).find(|file| !manifest.holds(file));
        match strange {
            Some(file) => refuse(format!("the folder holds a file that is not of the bundle: {file}")),
            None => Ok(()),
        }
    }

    /// Writes all files beside the place and renames them into it.
    ///
    /// # Errors
    /// When the disk refuses; nothing is then left beside the place, nor a folder that was made for it, and an older bundle
    /// stands as it was.
    pub(super) fn put(&self, files: &[Made], more: &[(&str, &[u8])], still: impl Fn() -> Hinted<()>) -> Hinted<()> {
        let was_there = self.disk.real(&VPath::root()).is_dir();
        // What a killed program left behind.
        self.disk.remove_folder(&self.fresh)?;
        let written = (|| {
            for file in files {
                still()?;
                self.disk.write_unsynced(&self.fresh.join(file.path.as_str())?, &file.bytes)?;
            }
            for (name, bytes) in more {
                self.disk.write_unsynced(&self.fresh.join(name)?, bytes)?;
            }
            still()?;
            self.disk.replace_folder(&self.fresh, &self.place)
        })();
        if written.is_err() {
            // The error that stopped it matters; that its rest may stay behind is no second one.
            let _ = self.disk.remove_folder(&self.fresh);
            if !was_there {
                self.disk.remove_empty_root();
            }
        }
        written
    }
}

/// Makes sure that a folder is empty or not there yet.
///
/// # Errors
/// When it is not, or cannot be looked into.
pub fn empty(folder: &Path) -> Hinted<()> {
    let said = |message: String| {
        let trouble = Trouble::new(message).at(folder.display().to_string());
        Err(trouble.hint("name a folder that is empty or not there yet"))
    };
    if folder.is_file() {
        return said("this is a file, not a folder".to_owned());
    }
    match Disk::new(folder).list(&VPath::root())?.first() {
        Some(first) => said(format!("the folder is not empty: it holds {first}")),
        None => Ok(()),
    }
}
