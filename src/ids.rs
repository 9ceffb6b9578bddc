//! Names of things in a kit: short, stable, kebab-case, one type for each kind of thing.

use std::fmt;

use serde::{Deserialize, Serialize};

/// Longest id in characters: it must fit file names and finding lines.
pub const ID_CHARS: usize = 64;

/// Whether `text` can be an id: lower-case letters, digits and single hyphens, starting with a letter.
#[must_use]
pub fn is_id(text: &str) -> bool {
    text.len() <= ID_CHARS
        && text.starts_with(|c: char| c.is_ascii_lowercase())
        && !text.ends_with('-')
        && !text.contains("--")
        && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
}

/// An id made from free text: `"The Oak Chest"` becomes `the-oak-chest`; never empty.
#[must_use]
pub fn slug(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        if c.is_ascii_alphanumeric() {
            out.push(c.to_ascii_lowercase());
        } else if !out.is_empty() && !out.ends_with('-') {
            out.push('-');
        }
        if out.len() >= ID_CHARS {
            break;
        }
    }
    let out = out.trim_matches('-');
    if out.starts_with(|c: char| c.is_ascii_lowercase()) {
        out.to_owned()
    } else {
        format!("x-{out}").trim_end_matches('-').to_owned()
    }
}

macro_rules! id {
    ($($name:ident: $doc:literal),* $(,)?) => {$(
        #[doc = $doc]
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        #[serde(transparent)]
        pub struct $name(String);

        impl $name {
            /// The id, if `text` has the shape of one ([`is_id`]).
            #[must_use]
            pub fn new(text: &str) -> Option<Self> {
                is_id(text).then(|| Self(text.to_owned()))
            }

            /// An id made from free text ([`slug`]).
            #[must_use]
            pub fn from_text(text: &str) -> Self {
                Self(slug(text))
            }

            /// The id as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let text = String::deserialize(deserializer)?;
                Self::new(&text).ok_or_else(|| {
                    serde::de::Error::custom(format!(
                        "\"{text}\" cannot be an id: write lower-case letters, digits and single hyphens, for example \"{}\"",
                        slug(&text)
                    ))
                })
            }
        }
    )*};
}

id! {
    KitId: "A kit.",
    ThemeId: "A theme; also the name of its folder.",
    PuzzleId: "A puzzle of a kit.",
    LockId: "A lock of a kit.",
    BoxId: "A box of a kit.",
    SpotId: "A spot in the room.",
    PropId: "A prop of a kit.",
    NoteId: "One of the smaller texts of a kit: note, sign, closing card.",
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slugs_are_ids() {
        for text in ["The Oak Chest", "  --  ", "7 bells", "ärger", "x", "a--b", "É"] {
            assert!(is_id(&slug(text)), "{text:?} gave {:?}", slug(text));
        }
    }
}
