use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Place;
use crate::files::VPath;
use crate::ids::NoteId;

/// The story letter. Paragraphs are parted by an empty line; `*emphasis*`, `**strong**`, a backslash at a
/// line's end breaks the line; `{{ word }}` is a slot. A slot may ask for forms of its word, one after another: `plural`,
/// `a` ("an owl"), `the`, `cap` (a capital for the first letter, at the start of a sentence), `title` (a capital for each
/// word, in titles and names), `caps`: `{{ word | plural | title }}`.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Letter {
    /// The heading set in the letterhead; may be empty.
    #[serde(default)]
    pub heading: String,
    /// "Dear friends,"
    pub salutation: String,
    /// The story.
    pub body: String,
    /// "In haste,"
    pub closing: String,
    /// Who writes.
    pub signature: String,
    /// Where the letter lies at the start; the host may read it aloud.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
}

/// What a smaller text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum NoteKind {
    /// A note on a card.
    Note,
    /// A sign that is folded to stand like a tent, or hung.
    Sign,
    /// The closing card, with a line on which the host writes where the treat is.
    Closing,
}

/// A smaller text, printed on a piece of its own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// Stable name.
    pub id: NoteId,
    /// What it is.
    pub kind: NoteKind,
    /// Title as printed; may be empty.
    #[serde(default)]
    pub title: String,
    /// Text as printed.
    pub text: String,
    /// A picture beside the text, from the kit's own `art/`: SVG, PNG or JPEG.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<VPath>,
    /// Where it lies.
    pub place: Place,
}

/// The forms of a word that fills a slot.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WordForms {
    /// One of them: "owl". This is what `{{ word }}` prints.
    pub one: String,
    /// Several: "owls"; when empty, "s" or "es" is added.
    #[serde(default)]
    pub many: String,
    /// The article, when it is not the one that the first letter suggests: "an" for "hour".
    #[serde(default)]
    pub article: String,
}

/// A kit's own changes to its theme's look.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Look {
    /// Colours by role, as `#RRGGBB`, in place of the theme's.
    pub palette: BTreeMap<String, String>,
    /// Font families by lettering role (`text`, `display`, `hand`, `code`), in place of the theme's.
    pub lettering: BTreeMap<String, String>,
}
