use serde::{Deserialize, Serialize};

/// What a prop is printed as, at its true size: a banner, an envelope, a tag. All lengths are millimetres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Printed {
    /// What is made of the paper.
    pub form: Form,
    /// Width and height; each form says of what. A sheet of either paper takes 197 by 250, turned or not.
    pub size: (f64, f64),
    /// What stands on it, as in a note; a first paragraph with others below it is set as a title. Tent cards, tags and
    /// labels without a text have a line to write on.
    #[serde(default)]
    pub text: String,
    /// Further pieces of the same form and size, each with a text of its own: tent cards, tags, labels, discs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub more: Vec<String>,
    /// The second text: on the other side of a tent card (else it shows the same on both), on the back of a cover.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub back: String,
    /// How many of each piece.
    #[serde(default = "one", skip_serializing_if = "is_one")]
    pub copies: u16,
    /// Diameter of the hole in a tag (6 where none is given, as paper is punched: ISO 838); the flags of a banner have two
    /// such holes where it is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hole: Option<f64>,
    /// Width of the tabs that are glued: how far the joined pages of a strip, a band or a cover overlap, and the side
    /// tabs of an envelope; 12 where none is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tab: Option<f64>,
    /// Thickness of the book that a cover goes round.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub spine: f64,
    /// Width of the flaps that a cover folds in round the boards; 0 for none.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub flaps: f64,
    /// How the flags of a banner end below.
    #[serde(default, skip_serializing_if = "is_straight")]
    pub edge: Edge,
}

/// What is made of a printed prop's paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Form {
    /// Flags to hang in a row, one letter on each; the size is one flag's. 250 by 197 is one letter a page, 197 by 122
    /// two, 122 by 96 four, 96 by 80 six. A space is a flag with the theme's seal.
    Banner,
    /// A strip of this length and height, joined over as many pages as it takes. Letters stand at even distances;
    /// without a text it shows the theme's seal again and again.
    Strip,
    /// A card that is folded to stand, to be read from both sides; the size is one side's.
    Tent,
    /// An envelope for something of this size, which is put in from above.
    Envelope,
    /// A band round a stack of paper, a book or a box: the way round it, and the band's height.
    Band,
    /// A tag with a hole.
    Tag,
    /// A label: the size of the side that it covers.
    #[default]
    Label,
    /// A cover for a book of this width and height.
    Cover,
    /// A disc; the width is its diameter.
    Disc,
}

/// How the flags of a banner end below.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Edge {
    /// In a straight line.
    #[default]
    Straight,
    /// In a point.
    Pointed,
    /// In two points.
    Forked,
}

/// Width of a glued tab where none is given: wide enough for a glue stick (common practice, no source).
const TAB: f64 = 12.0;
/// Hole of a tag where none is given: what a reinforcing ring and a string take; office punches make 5.5 to 6.
const HOLE: f64 = 6.0;

impl Printed {
    /// A fresh one of this form, of a size that fits both papers.
    #[must_use]
    pub fn fresh(form: Form) -> Self {
        let (size, text) = match form {
            Form::Banner => ((122.0, 96.0), "WELCOME"),
            Form::Strip => ((600.0, 60.0), "PLEASE MIND THE STEP"),
            Form::Tent => ((95.0, 50.0), ""),
            Form::Envelope => ((110.0, 100.0), "To be opened together"),
            Form::Band => ((300.0, 45.0), "Keep shut"),
            Form::Tag => ((40.0, 70.0), "Handle with care"),
            Form::Label => ((95.0, 58.0), "A label"),
            Form::Cover => ((130.0, 185.0), "A title"),
            Form::Disc => ((70.0, 70.0), "A lid"),
        };
        let cover = form == Form::Cover;
        Self {
            form,
            size,
            text: text.to_owned(),
            more: Vec::new(),
            back: String::new(),
            copies: 1,
            hole: None,
            tab: None,
            spine: if cover { 20.0 } else { 0.0 },
            flaps: if cover { 50.0 } else { 0.0 },
            edge: Edge::Straight,
        }
    }

    /// Diameter of its holes in millimetres; none where it has none.
    #[must_use]
    pub fn holes(&self) -> Option<f64> {
        match self.form {
            Form::Tag => Some(self.hole.unwrap_or(HOLE)),
            Form::Banner => self.hole,
            _ => None,
        }
    }

    /// Width of its glued tabs in millimetres.
    #[must_use]
    pub fn tab_width(&self) -> f64 {
        self.tab.unwrap_or(TAB)
    }

    /// All its texts in the order of its pieces: the first, then the further ones where the form has such.
    pub fn texts(&self) -> impl Iterator<Item = &str> {
        let more = if self.form.has_more() { self.more.as_slice() } else { &[] };
        std::iter::once(&self.text).chain(more).map(String::as_str)
    }
}

impl Form {
    /// All forms.
    pub const ALL: [Self; 9] = [
        Self::Banner,
        Self::Strip,
        Self::Tent,
        Self::Envelope,
        Self::Band,
        Self::Tag,
        Self::Label,
        Self::Cover,
        Self::Disc,
    ];

    /// What it is called.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Banner => "banner",
            Self::Strip => "strip",
            Self::Tent => "tent card",
            Self::Envelope => "envelope",
            Self::Band => "band",
            Self::Tag => "tag",
            Self::Label => "label",
            Self::Cover => "book cover",
            Self::Disc => "disc",
        }
    }

    /// Whether it may come in several pieces with a text of its own each.
    #[must_use]
    pub const fn has_more(self) -> bool {
        matches!(self, Self::Tent | Self::Tag | Self::Label | Self::Disc)
    }

    /// Whether it has a second text.
    #[must_use]
    pub const fn has_back(self) -> bool {
        matches!(self, Self::Tent | Self::Cover)
    }

    /// Whether it is folded or laid round something, and so printed on plain paper; else on card.
    #[must_use]
    pub const fn is_thin(self) -> bool {
        matches!(self, Self::Strip | Self::Envelope | Self::Band | Self::Cover)
    }

    /// Whether it has tabs that are glued.
    #[must_use]
    pub const fn is_glued(self) -> bool {
        matches!(self, Self::Strip | Self::Envelope | Self::Band | Self::Cover)
    }
}

const fn one() -> u16 {
    1
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks with a reference")]
const fn is_one(copies: &u16) -> bool {
    *copies == 1
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks with a reference")]
fn is_zero(length: &f64) -> bool {
    *length == 0.0
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks with a reference")]
fn is_straight(edge: &Edge) -> bool {
    *edge == Edge::Straight
}
