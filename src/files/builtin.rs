use include_dir::{Dir, include_dir};

use super::{Files, VPath};
use crate::diag::{Hinted, Trouble};

static THEMES: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/themes");
static FONTS: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/assets/fonts");
static KITS: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/assets/kits");
static PRINT: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/assets/print");

/// The folders that are carried, each with the path under which it is found.
const CARRIED: &[(&str, &Dir<'static>)] =
    &[("themes", &THEMES), ("assets/fonts", &FONTS), ("assets/kits", &KITS), ("assets/print", &PRINT)];

/// What the program carries within itself: themes, fonts, demo kits and page templates, to be read only.
#[derive(Clone, Debug, Default)]
pub struct Builtin {
    below: VPath,
}

impl Builtin {
    /// Everything.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The part below `folder`, as a folder of its own.
    #[must_use]
    pub const fn below(folder: VPath) -> Self {
        Self { below: folder }
    }

    fn find(&self, path: &VPath) -> Option<&'static [u8]> {
        let full = self.below.join(path.as_str()).ok()?;
        CARRIED.iter().find_map(|(top, dir)| {
            let rest = full.below(&VPath::new(top).ok()?)?;
            dir.get_file(rest.as_str()).map(include_dir::File::contents)
        })
    }
}

impl Files for Builtin {
    fn read(&self, path: &VPath, most: u64) -> Hinted<Vec<u8>> {
        let bytes =
            self.find(path).ok_or_else(|| Trouble::new("the program carries no such file").at(path.to_string()))?;
        super::disk::within(bytes.len() as u64, most, path)?;
        Ok(bytes.to_vec())
    }

    fn write(&self, path: &VPath, _: &[u8]) -> Hinted<()> {
        Err(Trouble::new("what the program carries within itself cannot be changed")
            .at(path.to_string())
            .hint("save it to a folder of your own"))
    }

    fn list(&self, folder: &VPath) -> Hinted<Vec<VPath>> {
        let full = self.below.join(folder.as_str())?;
        let mut found: Vec<VPath> = CARRIED
            .iter()
            .flat_map(|(top, dir)| files(dir).into_iter().map(move |path| format!("{top}/{path}")))
            .filter_map(|path| VPath::new(&path).ok())
            .filter(|path| path.below(&full).is_some())
            .filter_map(|path| path.below(&self.below))
            .collect();
        found.sort();
        Ok(found)
    }

    fn exists(&self, path: &VPath) -> bool {
        self.find(path).is_some()
    }
}

fn files(dir: &Dir<'static>) -> Vec<String> {
    let mut open = vec![dir];
    let mut found = Vec::new();
    while let Some(dir) = open.pop() {
        found.extend(dir.files().filter_map(|file| file.path().to_str()).map(|path| path.replace('\\', "/")));
        open.extend(dir.dirs());
    }
    found
}
