use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

use crate::diag::{Hinted, Level, Trouble};
use crate::face::Stock;
use crate::files::VPath;
use crate::sheet::{Paper, Sheet};
use crate::theme::Edition;

/// The format number of `manifest.json`.
pub const FORMAT: u32 = 1;

/// The program's name in a manifest; by it an older bundle is known, so that only such a folder is replaced.
pub(super) const MADE_BY: &str = "inklatch";

/// What a bundle holds: every file but this one and the zip file, which holds them all.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Manifest {
    /// Format number.
    pub format: u32,
    /// The program.
    pub made_by: String,
    /// Its version.
    pub version: String,
    /// The kit's id.
    pub kit: String,
    /// The kit's title.
    pub title: String,
    /// Who made the kit.
    pub author: String,
    /// What the buyer may do with it.
    pub terms: String,
    /// Whether it was exported although findings blocked it.
    pub forced: bool,
    /// The findings that blocked, if it was forced.
    pub blocking: Vec<String>,
    /// The zip file, if one was asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zip: Option<String>,
    /// The files, sorted by path.
    pub files: Vec<Entry>,
}

/// One file of a bundle.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Path in the bundle.
    pub path: String,
    /// Size in bytes.
    pub bytes: u64,
    /// SHA-256 (FIPS 180-4) in lower-case hexadecimal.
    pub sha256: String,
    /// Pages, of a PDF.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pages: Option<usize>,
    /// The paper it is laid out for, where it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub paper: Option<Paper>,
    /// The play level, where the file belongs to one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub level: Option<Level>,
    /// The edition, where the file belongs to one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub edition: Option<Edition>,
    /// Whom it is for: `players`, `hints`, `host`, or those who think of buying: `listing`.
    pub audience: String,
}

/// A file of a bundle with its bytes.
#[derive(Clone, Debug)]
pub(super) struct Made {
    pub(super) path: VPath,
    pub(super) bytes: Vec<u8>,
    pub(super) pages: Option<usize>,
    pub(super) paper: Option<Paper>,
    pub(super) level: Option<Level>,
    pub(super) edition: Option<Edition>,
    pub(super) audience: &'static str,
    /// Its sheets in the order of their numbers; none where it has no sheets of pieces.
    pub(super) sheets: Vec<SheetOf>,
}

/// A sheet of a document.
#[derive(Clone, Debug)]
pub(super) struct SheetOf {
    /// What it is printed on; none for a back, which is on the sheet before.
    pub(super) stock: Option<Stock>,
    /// What stands at its head.
    pub(super) heading: String,
    /// The pieces on it, in reading order; those that are alike once.
    pub(super) pieces: Vec<Lies>,
}

/// A piece on a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Lies {
    /// Its id.
    pub(super) id: String,
    /// What stands below it.
    pub(super) label: String,
    /// How often it lies there.
    pub(super) count: usize,
}

impl SheetOf {
    pub(super) fn new(sheet: &Sheet) -> Self {
        let mut pieces: Vec<Lies> = Vec::new();
        for placed in &sheet.placed {
            match pieces.iter_mut().find(|lies| lies.id == placed.piece && lies.label == placed.label) {
                Some(lies) => lies.count += 1,
                None => pieces.push(Lies { id: placed.piece.clone(), label: placed.label.clone(), count: 1 }),
            }
        }
        Self { stock: sheet.stock, heading: sheet.heading.clone(), pieces }
    }
}

impl Made {
    pub(super) fn entry(&self) -> Entry {
        Entry {
            path: self.path.to_string(),
            bytes: self.bytes.len() as u64,
            sha256: hex(&Sha256::digest(&self.bytes)),
            pages: self.pages,
            paper: self.paper,
            level: self.level,
            edition: self.edition,
            audience: self.audience.to_owned(),
        }
    }
}

impl Manifest {
    /// The manifest as it stands in the file.
    ///
    /// # Errors
    /// When it cannot be written as JSON, which no manifest brings about.
    pub fn json(&self) -> Hinted<String> {
        serde_json::to_string_pretty(self)
            .map(|text| text + "\n")
            .map_err(|error| Trouble::new(format!("cannot write the manifest: {error}")))
    }

    /// Reads a manifest; none when the text is no manifest of this program.
    #[must_use]
    pub fn parse(json: &str) -> Option<Self> {
        let manifest: Self = serde_json::from_str(json).ok()?;
        (manifest.made_by == MADE_BY).then_some(manifest)
    }

    /// Whether a file of this path belongs to the bundle.
    #[must_use]
    pub fn holds(&self, path: &VPath) -> bool {
        path.as_str() == FILE
            || self.zip.as_deref() == Some(path.as_str())
            || self.files.iter().any(|file| file.path == path.as_str())
    }
}

/// The name of the manifest's file.
pub(super) const FILE: &str = "manifest.json";

fn hex(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let digit = |nibble: u8| DIGITS.get(usize::from(nibble)).map_or('0', |d| char::from(*d));
    bytes.iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// FIPS 180-4 example: SHA-256 of "abc" (NIST, "SHA256.pdf" of the example values).
    #[test]
    fn the_sum_is_sha256() {
        let sum = hex(&Sha256::digest(b"abc"));
        assert_eq!(sum, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}
