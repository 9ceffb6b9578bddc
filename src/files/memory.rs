use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use super::{Files, VPath};
use crate::diag::{Hinted, Trouble};

/// A folder in memory.
#[derive(Debug, Default)]
pub struct Memory {
    files: Mutex<BTreeMap<VPath, Vec<u8>>>,
}

impl Memory {
    /// An empty folder.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// A folder with these files.
    #[must_use]
    pub fn with(files: impl IntoIterator<Item = (VPath, Vec<u8>)>) -> Self {
        Self { files: Mutex::new(files.into_iter().collect()) }
    }

    /// All files with their bytes, sorted.
    #[must_use]
    pub fn into_files(self) -> BTreeMap<VPath, Vec<u8>> {
        self.files.into_inner().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Files for Memory {
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>> {
        let files = self.files.lock().unwrap_or_else(PoisonError::into_inner);
        let bytes = files.get(path).ok_or_else(|| Trouble::new("the file is missing").at(path.to_string()))?;
        super::disk::within(bytes.len() as u64, most, path)?;
        Ok(bytes.clone())
    }

    fn write(&self, path: &VPath, bytes: &[u8]) -> Hinted<()> {
        self.files.lock().unwrap_or_else(PoisonError::into_inner).insert(path.clone(), bytes.to_vec());
        Ok(())
    }

    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>> {
        let files = self.files.lock().unwrap_or_else(PoisonError::into_inner);
        Ok(files.keys().filter(|path| path.below(folder).is_some()).cloned().collect())
    }

    fn exists(&self, path: &VPath) -> bool {
        self.files.lock().unwrap_or_else(PoisonError::into_inner).contains_key(path)
    }
}
