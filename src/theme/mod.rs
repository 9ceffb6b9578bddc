//! A theme: the look (palette, lettering, art) and the words of one season.
//!
//! A theme is a folder: `theme.ron`, its pictures in `art/*.svg`, and its own fonts in `fonts/`, if it has any.
//! Built-in themes and an author's own have the same format and are loaded by the same code.
//! The doc comments of the types here are also the text of `inklatch explain theme`.

pub mod colour;
mod edit;
mod edition;
mod guard;
mod lettering;
mod load;
mod palette;
mod pictures;
mod usual;
mod whole;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

pub use colour::Colour;
pub use edit::{PictureKind, ThemeEdit, edit};
pub use edition::{Edition, LARGE_PRINT};
pub use guard::{unknown_roles, vet};
pub use lettering::Lettering;
pub use load::{Loaded, builtin_ids, load, load_builtin, read_picture};
pub use palette::{Palette, ROLES, RoleInfo};
pub use pictures::load_pictures;
pub use usual::{SIZES, Usual, usual, usual_size};

use crate::files::VPath;
use crate::ids::ThemeId;
use crate::kit::WordForms;

/// The newest theme format that this program reads.
pub const FORMAT: u32 = 1;

/// The frames that every theme draws: name, what it is for, the slots that it must have and may have, the pieces of a
/// kit that stand on it beside those of the mechanics.
pub const FRAMES: &[FrameInfo] = &[
    FrameInfo::new("portrait", "an upright card", TEXT),
    FrameInfo::new("landscape", "a card that lies", TEXT).on("notes of the kind sign"),
    FrameInfo::new("square", "a square card", TEXT),
    FrameInfo::new("note", "a smaller text", TEXT).on("notes of the kind note"),
    FrameInfo::new("letterhead", "the head of the story letter", &[])
        .may(&["title"], "without it the heading is set above the letter")
        .on("the letter"),
    FrameInfo::new("letterfoot", "the foot of the story letter", &[]).on("the letter"),
    FrameInfo::new("sign", "a sign with large letters", &["title", "letters", "mark"]),
    FrameInfo::new("bookmark", "a key card in the shape of a bookmark", &["title", "table", "foot", "mark"]),
    FrameInfo::new("cover", "the front of a book jacket", TEXT).on("props of the form cover"),
    FrameInfo::new("disc", "a round lid disc", &["body", "mark"]).on("props of the form disc"),
    FrameInfo::new("label", "a label for a box", TEXT).on("labels of boxes, props of the form label"),
    FrameInfo::new("closing", "the closing card", &["title", "body", "line"]).on("notes of the kind closing"),
    FrameInfo::new("token", "a hint token; its path `outline` is the cut line", &["body", "mark", "dots"])
        .on("all hint tokens"),
    FrameInfo::new("board", "a whole page for one puzzle", &["title", "field", "mark"]),
    FrameInfo::new("tag", "a tag to hang", TEXT)
        .may(&["hole"], "it says where the hole of a printed tag is punched")
        .on("props of the form tag"),
];

/// Slots of a frame for a titled text with a mark.
const TEXT: &[&str] = &["title", "body", "mark"];

/// Frames that a theme may draw for printed props. Where it draws none, or the prop has other proportions, a border with
/// the theme's corners stands in.
pub const MORE_FRAMES: &[FrameInfo] = &[
    FrameInfo::new("flag", "a flag of a banner, about 5 wide to 4 high", &["body"]).on("props of the form banner"),
    FrameInfo::new("tent", "a side of a tent card, about twice as wide as high", &["title", "body"])
        .on("props of the form tent"),
    FrameInfo::new("envelope", "the front of an envelope, about as wide as high", &["body"])
        .on("props of the form envelope"),
    FrameInfo::new("cover-back", "the back of a book cover", &["body"]).on("props of the form cover"),
];

/// A frame that a theme draws.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct FrameInfo {
    /// Key in `frames` of `theme.ron`.
    pub name: &'static str,
    /// What it is for.
    pub about: &'static str,
    /// Its slots: rectangles whose ids are these names after `slot-`.
    pub slots: &'static [&'static str],
    /// Slots that it may have, and what for.
    pub may: (&'static [&'static str], &'static str),
    /// The pieces of a kit that stand on it, beside those of the mechanics; empty for none.
    pub pieces: &'static str,
}

impl FrameInfo {
    const fn new(name: &'static str, about: &'static str, slots: &'static [&'static str]) -> Self {
        Self { name, about, slots, may: (&[], ""), pieces: "" }
    }

    const fn may(self, slots: &'static [&'static str], why: &'static str) -> Self {
        Self { may: (slots, why), ..self }
    }

    const fn on(self, pieces: &'static str) -> Self {
        Self { pieces, ..self }
    }

    /// Every slot that means something on it.
    pub fn all_slots(&self) -> impl Iterator<Item = &'static str> {
        self.slots.iter().chain(self.may.0).copied()
    }
}

/// The lettering roles: what each is for.
pub const LETTERING: &[(&str, &str)] = &[
    ("text", "running text of letters, cards and hints"),
    ("display", "titles and signs"),
    ("hand", "what looks written by hand"),
    ("code", "digits and letters that guests must read without doubt; labels and the host guide"),
];

/// A theme file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Theme {
    /// Format number of the file.
    pub format: u32,
    /// Stable name; also the name of its folder.
    pub id: ThemeId,
    /// Name as shown.
    pub name: String,
    /// The season and mood in a sentence.
    #[serde(default)]
    pub about: String,
    /// Who drew and wrote it, and under what licence.
    pub credit: String,
    /// Colours by role, as `#RRGGBB`: see the list of roles.
    pub palette: BTreeMap<String, String>,
    /// Font families by lettering role: `text`, `display`, `hand`, `code`.
    pub lettering: BTreeMap<String, String>,
    /// Frames by name, each a picture in the theme's folder.
    pub frames: BTreeMap<String, VPath>,
    /// Ornaments by name: `divider`, `corner`, `seal`.
    #[serde(default)]
    pub ornaments: BTreeMap<String, VPath>,
    /// Symbols by name: marks of locks, pictures of legends.
    pub symbols: BTreeMap<String, VPath>,
    /// Colours that carry meaning, by the name that guests read: `"red": "#9C2F2F"`.
    #[serde(default)]
    pub colours: BTreeMap<String, String>,
    /// Words that fill slots.
    #[serde(default)]
    pub words: BTreeMap<String, WordForms>,
    /// Further words by which the season is known, beside [`Theme::words`] and the names of the symbols: "snow", "sledge".
    /// A kit that is put into another theme should no longer say them.
    #[serde(default)]
    pub season_words: Vec<String>,
    /// The theme that it was begun from as a copy, so that a kit's leftovers of that one can be looked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub begun_from: Option<ThemeId>,
    /// Languages that the lettering must be able to write, as ISO 639 codes; `en` when none is named.
    #[serde(default)]
    pub languages: Vec<String>,
    /// What the theme calls the parts of a mechanic: mechanic id, then part name, then words.
    #[serde(default)]
    pub dressings: BTreeMap<String, BTreeMap<String, String>>,
}
