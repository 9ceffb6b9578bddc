use std::fmt;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};

/// A path inside a folder, with forward slashes; it cannot lead out of the folder.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(transparent)]
pub struct VPath(String);

impl VPath {
    /// The folder itself.
    #[must_use]
    pub const fn root() -> Self {
        Self(String::new())
    }

    /// A path inside the folder.
    ///
    /// # Errors
    /// When the path is absolute, climbs out with `..`, or holds a character that some disk refuses.
    pub fn new(text: &str) -> Hinted<Self> {
        let refuse = |why: &str| {
            Err(Trouble::new(format!("the path \"{text}\" {why}"))
                .hint("write a path inside the kit's own folder, with forward slashes, such as art/map.svg"))
        };
        if text.starts_with('/') || text.contains(':') {
            return refuse("leads out of the folder");
        }
        if text.contains(['\\', '\0', '*', '?', '"', '<', '>', '|']) {
            return refuse("has a character that not every disk allows");
        }
        let mut parts: Vec<&str> = Vec::new();
        for part in text.split('/') {
            match part {
                "" | "." => {}
                ".." => return refuse("climbs out of the folder"),
                part => parts.push(part),
            }
        }
        Ok(Self(parts.join("/")))
    }

    /// A path below this one.
    ///
    /// # Errors
    /// As [`VPath::new`].
    pub fn join(&self, below: &str) -> Hinted<Self> {
        let below = Self::new(below)?;
        Ok(match (self.0.is_empty(), below.0.is_empty()) {
            (true, _) => below,
            (_, true) => self.clone(),
            _ => Self(format!("{}/{}", self.0, below.0)),
        })
    }

    /// The path as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The last part.
    #[must_use]
    pub fn file_name(&self) -> &str {
        self.0.rsplit('/').next().unwrap_or("")
    }

    /// What follows the last dot of the last part, in lower case.
    #[must_use]
    pub fn extension(&self) -> String {
        self.file_name().rsplit_once('.').map(|(_, end)| end.to_ascii_lowercase()).unwrap_or_default()
    }

    /// The path as seen from `folder`, if it lies below it.
    #[must_use]
    pub fn below(&self, folder: &Self) -> Option<Self> {
        if folder.0.is_empty() {
            return Some(self.clone());
        }
        self.0.strip_prefix(&folder.0)?.strip_prefix('/').map(|rest| Self(rest.to_owned()))
    }
}

impl fmt::Display for VPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.0.is_empty() { "." } else { &self.0 })
    }
}

impl<'de> Deserialize<'de> for VPath {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::new(&text).map_err(|trouble| serde::de::Error::custom(trouble.message))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_folder_joined_with_itself_stays() {
        assert_eq!(VPath::new("art").unwrap().join("").unwrap().as_str(), "art");
        assert_eq!(VPath::root().join("art").unwrap().as_str(), "art");
    }

    #[test]
    fn no_path_leads_out() {
        for bad in ["../a", "a/../../b", "/etc/passwd", "C:\\x", "a\\b", "a\0b"] {
            assert!(VPath::new(bad).is_err(), "{bad:?} was taken");
        }
        assert_eq!(VPath::new("./art//map.svg").unwrap().as_str(), "art/map.svg");
    }
}
