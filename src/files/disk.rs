//! A folder on disk. Only this file of the program touches the disk and the clock.
#![expect(clippy::disallowed_methods, reason = "the one door to the disk and the clock")]

use std::fs;
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use super::{Files, VPath};
use crate::diag::{Hinted, Trouble};

/// A folder on disk.
#[derive(Clone, Debug)]
pub struct Disk {
    root: PathBuf,
}

impl Disk {
    /// The folder at `root`; it need not be there yet.
    pub fn new(root: impl Into<PathBuf>) -> Self {
        Self { root: root.into() }
    }

    /// Where the folder is.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The real path of a file: the only place where a virtual path becomes one.
    #[must_use]
    pub fn real(&self, path: &VPath) -> PathBuf {
        if path.as_str().is_empty() { self.root.clone() } else { self.root.join(path.as_str()) }
    }

    /// Refuses a file to which a link leads out of the folder: a kit or a theme from elsewhere reads nothing but
    /// what came with it.
    fn inside(&self, real: &Path) -> Hinted<()> {
        // What is not there is told by whoever opens it.
        let (Ok(root), Ok(whole)) = (fs::canonicalize(&self.root), fs::canonicalize(real)) else { return Ok(()) };
        if whole.starts_with(root) {
            return Ok(());
        }
        Err(Trouble::new("this is a link that leads out of the folder")
            .at(real.display().to_string())
            .hint("put the file itself here"))
    }

    /// Renames a finished folder into its place. An older one there moves aside first and is removed last,
    /// so that at every moment a whole folder stands under the name or beside it.
    ///
    /// # Errors
    /// When the disk refuses; the older folder is then put back.
    pub fn replace_folder(&self, fresh: &VPath, place: &VPath) -> Hinted<()> {
        let (from, to) = (self.real(fresh), self.real(place));
        let aside = to.with_extension("old");
        let refused = |error: &io::Error| trouble(error, "cannot move the finished folder into place", &to);
        if aside.exists() {
            fs::remove_dir_all(&aside).map_err(|error| refused(&error))?;
        }
        let had_one = to.exists();
        if had_one {
            fs::rename(&to, &aside).map_err(|error| refused(&error))?;
        }
        if let Err(error) = fs::rename(&from, &to) {
            if had_one {
                fs::rename(&aside, &to).map_err(|error| refused(&error))?;
            }
            return Err(refused(&error));
        }
        if had_one {
            fs::remove_dir_all(&aside).map_err(|error| refused(&error))?;
        }
        Ok(())
    }

    /// Writes one file of a folder that is not in its place yet: without the temporary file and the wait for the
    /// disk of [`Files::write`], since [`Disk::replace_folder`] makes the whole folder appear at once.
    ///
    /// # Errors
    /// When the disk refuses; part of the file may then be there.
    pub fn write_unsynced(&self, path: &VPath, bytes: &[u8]) -> Hinted<()> {
        let real = self.real(path);
        let folder = real.parent().unwrap_or(&self.root).to_owned();
        fs::create_dir_all(&folder).map_err(|error| trouble(&error, "cannot make the folder", &folder))?;
        fs::write(&real, bytes).map_err(|error| trouble(&error, "cannot write the file", &real))
    }

    /// Removes the root where nothing is in it; where that fails, an empty folder is no harm.
    pub fn remove_empty_root(&self) {
        let _ = fs::remove_dir(&self.root);
    }

    /// Removes a folder and all in it; a missing one is no error.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn remove_folder(&self, folder: &VPath) -> Hinted<()> {
        let path = self.real(folder);
        match fs::remove_dir_all(&path) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => {
                Err(trouble(&error, "cannot remove the folder", &path))
            }
            _ => Ok(()),
        }
    }
}

impl Files for Disk {
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>> {
        let real = self.real(path);
        self.inside(&real)?;
        let file = fs::File::open(&real).map_err(|error| trouble(&error, "cannot read the file", &real))?;
        let size = file.metadata().map_err(|error| trouble(&error, "cannot read the file", &real))?.len();
        within(size, most, path)?;
        let mut bytes = Vec::new();
        // The size is asked of the file, not believed: a pipe or a growing file is cut at the bound.
        file.take(most + 1).read_to_end(&mut bytes).map_err(|error| trouble(&error, "cannot read the file", &real))?;
        within(bytes.len() as u64, most, path)?;
        Ok(bytes)
    }

    fn write(&self, path: &VPath, bytes: &[u8]) -> Hinted<()> {
        let real = self.real(path);
        let folder = real.parent().unwrap_or(&self.root).to_owned();
        fs::create_dir_all(&folder).map_err(|error| trouble(&error, "cannot make the folder", &folder))?;
        let mut name = real.file_name().unwrap_or_default().to_owned();
        name.push(".part");
        let part = folder.join(name);
        let result = (|| {
            let mut file = fs::File::create(&part)?;
            file.write_all(bytes)?;
            file.sync_all()?;
            fs::rename(&part, &real)
        })();
        result.map_err(|error| {
            // What is left of the temporary file is of no use; that it may stay behind is no second error.
            let _ = fs::remove_file(&part);
            trouble(&error, "cannot write the file", &real)
        })
    }

    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>> {
        let mut found = Vec::new();
        let mut open = vec![folder.clone()];
        while let Some(folder) = open.pop() {
            let real = self.real(&folder);
            let entries = match fs::read_dir(&real) {
                Ok(entries) => entries,
                Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
                Err(error) => return Err(trouble(&error, "cannot list the folder", &real)),
            };
            for entry in entries {
                let entry = entry.map_err(|error| trouble(&error, "cannot list the folder", &real))?;
                // A name that no virtual path can have (not UTF-8, odd characters) is no file of a kit.
                let Some(path) = entry.file_name().to_str().and_then(|name| folder.join(name).ok()) else { continue };
                // Links are not followed: they could lead out of the folder or in a ring.
                match entry.file_type() {
                    Ok(kind) if kind.is_dir() => open.push(path),
                    Ok(kind) if kind.is_file() => found.push(path),
                    _ => {}
                }
            }
        }
        found.sort();
        Ok(found)
    }

    fn exists(&self, path: &VPath) -> bool {
        self.real(path).is_file()
    }
}

/// Opens what an author names as a kit: a folder, or the `kit.ron` in it. Answers the folder and the file's path.
///
/// # Errors
/// When neither is there.
pub fn open_folder(path: &Path) -> Hinted<(Disk, VPath)> {
    let (folder, file) = if path.is_dir() {
        (path.to_owned(), "kit.ron".to_owned())
    } else {
        let file = path.file_name().and_then(|name| name.to_str()).unwrap_or("kit.ron").to_owned();
        (path.parent().map(Path::to_owned).unwrap_or_default(), file)
    };
    let folder = if folder.as_os_str().is_empty() { PathBuf::from(".") } else { folder };
    let disk = Disk::new(folder);
    let file = VPath::new(&file)?;
    // A folder that may not be looked into is another thing than one without a kit.
    if let Err(error) = fs::metadata(disk.real(&file))
        && error.kind() == io::ErrorKind::PermissionDenied
    {
        return Err(trouble(&error, "cannot read the folder", disk.root()));
    }
    if !disk.exists(&file) {
        return Err(Trouble::new("there is no kit here")
            .at(disk.real(&file).display().to_string())
            .hint("name a folder with a kit.ron in it, or the kit.ron itself")
            .hint("`inklatch new FOLDER` makes a fresh kit"));
    }
    Ok((disk, file))
}

/// Today as year, month and day, by the system's clock in UTC.
#[must_use]
pub fn today() -> (i32, u8, u8) {
    let days = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |time| time.as_secs() / 86_400);
    civil(i64::try_from(days).unwrap_or(0))
}

/// The calendar date of a count of days since 1970-01-01 in the proleptic Gregorian calendar, after
/// H. Hinnant, "chrono-compatible low-level date algorithms", `civil_from_days` (from memory).
fn civil(days: i64) -> (i32, u8, u8) {
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let doe = z.rem_euclid(146_097);
    let yoe = (doe - doe / 1_460 + doe / 36_524 - doe / 146_096) / 365;
    let doy = doe - (365 * yoe + yoe / 4 - yoe / 100);
    let mp = (5 * doy + 2) / 153;
    let day = doy - (153 * mp + 2) / 5 + 1;
    let month = if mp < 10 { mp + 3 } else { mp - 9 };
    let year = yoe + era * 400 + i64::from(month <= 2);
    (i32::try_from(year).unwrap_or(0), u8::try_from(month).unwrap_or(1), u8::try_from(day).unwrap_or(1))
}

/// Refuses a file that is larger than allowed.
pub(super) fn within(size: u64, most: u64, path: &VPath) -> Hinted<()> {
    if size <= most {
        return Ok(());
    }
    Err(Trouble::new(format!("the file has {size} bytes, more than the {most} allowed"))
        .at(path.to_string())
        .hint("make it smaller: save the picture with fewer points or pixels, or split the text"))
}

/// An error of the disk in words, with what can be done.
fn trouble(error: &io::Error, what: &str, path: &Path) -> Trouble {
    use io::ErrorKind as K;
    let hint = match error.kind() {
        K::NotFound => "check the name; nothing is there",
        K::PermissionDenied if what.contains("read") || what.contains("list") => {
            "ask for the right to read it, or name another place"
        }
        K::PermissionDenied => "choose another folder, or ask for the right to write there",
        K::StorageFull | K::QuotaExceeded => "free some space on the disk; what was there before is untouched",
        K::NotADirectory => "a part of this path is a file, not a folder; choose another",
        K::ReadOnlyFilesystem => "the disk can only be read; choose another folder",
        _ => "try another folder or disk",
    };
    Trouble::new(format!("{what}: {error}")).at(path.display().to_string()).hint(hint)
}

#[cfg(test)]
mod tests {
    use super::civil;

    /// Dates by `date -u -d @N` (GNU coreutils).
    #[test]
    fn days_become_dates() {
        assert_eq!(civil(0), (1970, 1, 1));
        assert_eq!(civil(19_782), (2024, 2, 29));
        assert_eq!(civil(20_782), (2026, 11, 25));
    }
}
