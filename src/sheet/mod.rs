//! Sheets: pages of paper with pieces placed on them, true to size.

mod alone;
mod duplex;
mod impose;
mod labels;
pub mod pack;
mod parted;
mod room;

use serde::{Deserialize, Serialize};

pub use duplex::{Duplex, Turn};
pub use impose::{FOOT, GUTTER, HEAD, LABEL, content, cut_marks, holds, impose, impose_for, largest};

use crate::face::{Audience, Face, Stock};
use crate::units::{Mm, Rect, Size};
use room::Room;

/// The margin that home printers keep clear at every edge: a quarter inch (common advice for laser and inkjet
/// printers; some need more on glossy paper).
pub const SAFE_MARGIN: Mm = Mm::new(6.35);

/// A paper size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// US Letter, 215.9 × 279.4 mm (8.5 × 11 in, ANSI/ASME Y14.1 size A).
    Letter,
    /// A4, 210 × 297 mm (ISO 216).
    A4,
}

impl Paper {
    /// Both papers.
    pub const ALL: [Self; 2] = [Self::Letter, Self::A4];

    /// Width and height, upright.
    #[must_use]
    pub const fn size(self) -> Size {
        match self {
            Self::Letter => Size::mm(215.9, 279.4),
            Self::A4 => Size::mm(210.0, 297.0),
        }
    }

    /// The word shown and used in file names.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Letter => "letter",
            Self::A4 => "a4",
        }
    }

    /// The part of the page that every home printer reaches.
    #[must_use]
    pub fn safe(self) -> Rect {
        Rect::of(self.size()).inset(SAFE_MARGIN)
    }

    /// The size of that part below the page's head: the size of the letter, which has a page of its own.
    #[must_use]
    pub fn safe_size(self) -> Size {
        let safe = self.safe();
        Size { w: safe.w, h: safe.h - HEAD }
    }

    /// The same, below a head in large print or not.
    #[must_use]
    pub fn page_size(self, large: bool) -> Size {
        Room::of(large).page(self)
    }
}

/// A page with pieces placed on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sheet {
    /// The paper.
    pub paper: Paper,
    /// Whom the sheet is for; pieces of two audiences never share a sheet.
    pub audience: Audience,
    /// What stands at the head of the page, outside all cut lines.
    pub heading: String,
    /// The pieces.
    pub placed: Vec<Placed>,
    /// Folds, as lines from point to point.
    pub folds: Vec<(Mm, Mm, Mm, Mm)>,
    /// Where the check bar stands, if the sheet has pieces whose size matters.
    pub check_bar: Option<Rect>,
    /// Whether head, labels and check bar are set in large print.
    pub large: bool,
    /// What to print it on; none for a back, which is on the sheet before.
    pub stock: Option<Stock>,
}

/// A piece on a page.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Placed {
    /// The piece's id.
    pub piece: String,
    /// What is drawn.
    pub face: Face,
    /// Where its bounding box stands on the page.
    pub rect: Rect,
    /// A quarter turn to the left, to fit; a back is turned to the right, so that it lies behind its front.
    pub turned: bool,
    /// Whether this is the piece's back.
    pub back: bool,
    /// Whether it stands on its head, besides: a back on paper that is turned over its short edge.
    pub over: bool,
    /// The label outside the cut line.
    pub label: String,
    /// Where the label is set; where it has no room, as for a piece that fills its page, it is not. A label higher than
    /// wide runs upwards.
    pub label_rect: Rect,
    /// Whether the cut line is drawn: a piece that fills the page is not cut.
    pub cut: bool,
}
