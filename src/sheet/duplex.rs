use super::Paper;
use crate::units::{Mm, Rect, Size};

/// Over which edge the printer turns the paper (IPP "two-sided-long-edge" and "two-sided-short-edge", RFC 8011, 5.2.8).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turn {
    /// As a page of a book, where the page is upright.
    #[default]
    LongEdge,
    /// As a page of a wall calendar, where the page is upright.
    ShortEdge,
}

/// How a printer prints two-sided.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Duplex {
    /// Over which edge it turns the paper.
    pub turn: Turn,
    /// How far to the right of its place a back comes to lie, seen through the paper from the front; left is below 0.
    pub right: Mm,
    /// How far below its place, seen in the same way; above is below 0.
    pub down: Mm,
}

impl Duplex {
    /// Whether the paper turns about an upright line: left and right change sides, and a cut-out piece that is turned
    /// like a page shows its back upright. Else top and bottom change sides, and backs must stand on their heads.
    #[must_use]
    pub fn upright(&self, page: Size) -> bool {
        let portrait = page.h >= page.w;
        portrait == (self.turn == Turn::LongEdge)
    }

    /// Where the back of what stands at `front` must be printed on the page behind, the printer's shift taken back.
    #[must_use]
    pub fn behind(&self, page: Size, front: Rect) -> Rect {
        if self.upright(page) {
            Rect { x: page.w - front.right() + self.right, y: front.y - self.down, ..front }
        } else {
            Rect { x: front.x - self.right, y: page.h - front.bottom() + self.down, ..front }
        }
    }

    /// What the head of a sheet of backs says.
    pub(super) fn words(&self, paper: Paper) -> &'static str {
        if self.upright(paper.size()) { "turned over the long edge" } else { "turned over the short edge" }
    }
}
