use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Files, VPath};
use crate::diag::Hinted;

/// A folder with some files as they are to be, not as they are on it: what an author has changed and not saved yet.
/// Writing goes to the folder below.
pub struct Over {
    below: Arc<dyn Files>,
    files: BTreeMap<VPath, Vec<u8>>,
}

impl Over {
    /// The folder `below` with these files in the place of its own.
    #[must_use]
    pub fn new(below: Arc<dyn Files>, files: BTreeMap<VPath, Vec<u8>>) -> Self {
        Self { below, files }
    }
}

impl Files for Over {
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>> {
        match self.files.get(path) {
            Some(bytes) => {
                super::disk::within(bytes.len() as u64, most, path)?;
                Ok(bytes.clone())
            }
            None => self.below.read(path, most),
        }
    }

    fn write(&self, path: &VPath, bytes: &[u8]) -> Hinted<()> {
        self.below.write(path, bytes)
    }

    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>> {
        let mut found = self.below.list(folder)?;
        found.extend(self.files.keys().filter(|path| path.below(folder).is_some()).cloned());
        found.sort();
        found.dedup();
        Ok(found)
    }

    fn exists(&self, path: &VPath) -> bool {
        self.files.contains_key(path) || self.below.exists(path)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::Memory;

    #[test]
    fn what_lies_over_is_read_and_what_is_written_goes_below() {
        let path = |text| VPath::new(text).unwrap();
        let below = Arc::new(Memory::with([(path("a"), vec![1]), (path("x/b"), vec![2])]));
        let over = Over::new(below.clone(), BTreeMap::from([(path("a"), vec![3]), (path("x/c"), vec![4])]));
        assert_eq!(over.read(&path("a"), 9).unwrap(), [3]);
        assert_eq!(over.read(&path("x/b"), 9).unwrap(), [2]);
        assert_eq!(over.list(&path("x")).unwrap(), [path("x/b"), path("x/c")]);
        assert!(over.exists(&path("x/c")) && !below.exists(&path("x/c")));
        over.write(&path("a"), &[5]).unwrap();
        assert_eq!((over.read(&path("a"), 9).unwrap(), below.read(&path("a"), 9).unwrap()), (vec![3], vec![5]));
    }
}
