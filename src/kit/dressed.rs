use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Look;
use crate::files::VPath;
use crate::ids::ThemeId;

/// What a kit brought along when it was put into another theme: what to watch for, and how to go back.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Dressed {
    /// The theme that it wore before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<ThemeId>,
    /// The kit's own look in the theme before, put back when it returns there.
    pub look: Look,
    /// Symbols that were changed: the old name and the new.
    pub symbols: BTreeMap<String, String>,
    /// Telling colours that were changed: the old name and the new.
    pub colours: BTreeMap<String, String>,
    /// Words of the seasons before, which the kit should no longer say.
    pub old_words: Vec<OldWord>,
    /// Pictures of the kit's own that were there before.
    pub old_pictures: Vec<VPath>,
    /// Old words and pictures that the author wants to keep.
    pub kept: Vec<Kept>,
    /// Hints in the author's own words that named what a puzzle showed before it got another code or theme. One that is
    /// written anew is forgotten; one that still holds may be taken out of this list.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub old_hints: Vec<OldHint>,
}

/// A hint that may speak of an earlier arrangement of its puzzle.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OldHint {
    /// Where it stands: "puzzle sign, standard giveaway".
    pub at: String,
    /// The hint as it was written then.
    pub text: String,
    /// What it says that stood there before, and does not now.
    pub says: Vec<String>,
}

/// A word of a season before.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OldWord {
    /// One of them, as the old theme said it: "clock tower".
    pub one: String,
    /// Several, where the old theme said so.
    #[serde(default)]
    pub many: String,
    /// The slot that it filled; empty when it filled none.
    #[serde(default)]
    pub slot: String,
    /// The new name of the symbol or the colour that was called so; empty when none was.
    #[serde(default)]
    pub now: String,
    /// Which theme said it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub theme: Option<ThemeId>,
}

/// Something old that the author wants to keep.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kept {
    /// Where it stands: "letter", "puzzle cat, title".
    pub at: String,
    /// The old word, or the path of the picture.
    pub what: String,
}

impl Dressed {
    /// Whether there is nothing to remember.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether the author keeps this here.
    #[must_use]
    pub fn keeps(&self, at: &str, what: &str) -> bool {
        self.kept.iter().any(|kept| kept.at == at && kept.what == what)
    }
}
