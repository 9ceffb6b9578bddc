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

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

pub use colour::Colour;
pub use edit::{PictureKind, ThemeEdit, edit};
pub use edition::Edition;
pub use guard::vet;
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

/// The frames that every theme draws: name, what it is for, the slots that it must have.
pub const FRAMES: &[FrameInfo] = &[
    FrameInfo { name: "portrait", about: "an upright card", slots: &["title", "body", "mark"] },
    FrameInfo { name: "landscape", about: "a card that lies", slots: &["title", "body", "mark"] },
    FrameInfo { name: "square", about: "a square card", slots: &["title", "body", "mark"] },
    FrameInfo { name: "note", about: "a smaller text", slots: &["title", "body", "mark"] },
    FrameInfo { name: "letterhead", about: "the head of the story letter", slots: &[] },
    FrameInfo { name: "letterfoot", about: "the foot of the story letter", slots: &[] },
    FrameInfo { name: "sign", about: "a sign with large letters", slots: &["title", "letters", "mark"] },
    FrameInfo {
        name: "bookmark",
        about: "a key card in the shape of a bookmark",
        slots: &["title", "table", "foot", "mark"],
    },
    FrameInfo { name: "cover", about: "the front of a book jacket", slots: &["title", "body", "mark"] },
    FrameInfo { name: "disc", about: "a round lid disc", slots: &["body", "mark"] },
    FrameInfo { name: "label", about: "a label for a box", slots: &["title", "body", "mark"] },
    FrameInfo { name: "closing", about: "the closing card", slots: &["title", "body", "line"] },
    FrameInfo {
        name: "token",
        about: "a hint token; its path `outline` is the cut line",
        slots: &["body", "mark", "dots"],
    },
    FrameInfo { name: "board", about: "a board of numbered shapes", slots: &["title", "field", "mark"] },
    FrameInfo { name: "tag", about: "a tag to hang", slots: &["title", "body", "mark"] },
];

/// Frames that a theme may draw for printed props. Where it draws none, or the prop has other proportions, a border with
/// the theme's corners stands in. A `tag` may have a slot `hole` where its hole is punched.
pub const MORE_FRAMES: &[FrameInfo] = &[
    FrameInfo { name: "flag", about: "a flag of a banner, about 5 wide to 4 high", slots: &["body"] },
    FrameInfo { name: "tent", about: "a side of a tent card, about twice as wide as high", slots: &["title", "body"] },
    FrameInfo { name: "envelope", about: "the front of an envelope, about as wide as high", slots: &["body"] },
    FrameInfo { name: "cover-back", about: "the back of a book cover", slots: &["body"] },
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
