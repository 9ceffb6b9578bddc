use serde::{Deserialize, Serialize};

/// How the printed pieces are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Making {
    /// How the hint tokens are made.
    pub tokens: TokenMake,
    /// How the printer turns the paper for sheets with backs.
    pub flip: Flip,
}

/// How hint tokens are made. In all but the plain way their outside shows nothing but whose they are and which step,
/// so that the host finds the right one and nobody reads along.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum TokenMake {
    /// Words, mark and dots on one side: least paper, least work. They lie where only the host sees them.
    #[default]
    Plain,
    /// Printed on one side, folded back and glued: the words on one face, mark and dots on the other.
    FoldOver,
    /// Printed on both sides by the printer.
    TwoSided,
    /// Folded as above, with a flap that is closed over the words by a sticker.
    Flap,
}

/// How a printer turns paper that it prints on both sides; paper is upright.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Flip {
    /// Over its long edge, as a page of a book: left and right change sides (IPP "two-sided-long-edge", RFC 8011).
    #[default]
    LongEdge,
    /// Over its short edge, as a page of a wall calendar: top and bottom change sides ("two-sided-short-edge").
    ShortEdge,
}

impl TokenMake {
    /// All ways, the simplest first.
    pub const ALL: [Self; 4] = [Self::Plain, Self::FoldOver, Self::TwoSided, Self::Flap];

    /// The word shown.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Plain => "one side",
            Self::FoldOver => "folded over",
            Self::TwoSided => "two-sided",
            Self::Flap => "with a flap",
        }
    }

    /// How the host makes one, in a sentence or two.
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::Plain => "Cut the tokens out.",
            Self::FoldOver => {
                "Cut each pair out as one strip, fold it back on the dashed line so that both pictures look outwards, \
                 glue it, and cut round the shape on the side with the words."
            }
            Self::TwoSided => {
                "Print the sheets on both sides, then cut round the shape on the side with the words. The outside \
                 may lie up to 5 mm off: it has no edge that must meet."
            }
            Self::Flap => {
                "Cut each strip out whole. Fold the picture back on the first dashed line and glue it; fold the flap \
                 up over the words on the second and close it with a sticker."
            }
        }
    }
}

impl Flip {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::LongEdge, Self::ShortEdge];

    /// The words shown.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::LongEdge => "over the long edge",
            Self::ShortEdge => "over the short edge",
        }
    }
}
