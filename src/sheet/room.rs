use super::{FOOT, GUTTER, HEAD, LABEL, Paper};
use crate::face::Face;
use crate::units::{Mm, Rect, Size};

/// Air between a piece and its label.
pub(super) const LABEL_AIR: Mm = Mm::new(0.9);

/// How much room a sheet leaves for what stands beside its pieces.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room {
    /// The page's head.
    head: Mm,
    /// The page's foot.
    foot: Mm,
    /// Between two pieces.
    pub gutter: Mm,
    /// A label below its piece, the air between them included.
    pub label: Mm,
    /// How far a label may reach out on either side of its piece.
    pub lean: Mm,
    /// The check bar.
    pub bar: Size,
}

impl Room {
    /// For sheets whose head and labels are small: they are for the host's hands only.
    const SMALL: Self = Self {
        head: HEAD,
        foot: FOOT,
        gutter: GUTTER,
        label: LABEL,
        lean: Mm::ZERO,
        // 50 mm, a space, 2 in.
        bar: Size::mm(50.0 + 8.0 + 50.8, 5.5),
    };
    /// For large print: two lines of 16 points at the head, two below each piece, two beside the check bar.
    const LARGE: Self = Self {
        head: Mm::new(14.5),
        foot: Mm::new(14.5),
        gutter: Mm::new(16.5),
        label: Mm::new(15.0),
        lean: Mm::new(6.0),
        bar: Size::mm(50.0, 13.0),
    };

    /// The room on a sheet, in large print or not.
    pub(super) const fn of(large: bool) -> Self {
        if large { Self::LARGE } else { Self::SMALL }
    }

    /// The part of a page for pieces with their labels.
    pub(super) fn content(self, paper: Paper) -> Rect {
        let safe = paper.safe();
        Rect { y: safe.y + self.head, h: safe.h - self.head - self.foot, ..safe }
    }

    /// The size of a piece that has a page to itself, below the head.
    pub(super) fn page(self, paper: Paper) -> Size {
        let safe = paper.safe();
        Size { w: safe.w, h: safe.h - self.head }
    }

    /// The largest piece that a page takes.
    pub(super) fn largest(self, paper: Paper) -> Size {
        let content = self.content(paper);
        Size { w: content.w, h: content.h - self.label }
    }
}

/// The folds of a face that lies in `rect` of its page. A turned face lies a quarter turn to the left: its right side is
/// up.
pub(super) fn folds(face: &Face, rect: Rect, turned: bool) -> impl Iterator<Item = (Mm, Mm, Mm, Mm)> + '_ {
    let on_page = move |(x, y): (Mm, Mm)| {
        if turned { (rect.x + y, rect.bottom() - x) } else { (rect.x + x, rect.y + y) }
    };
    face.folds.iter().map(move |(from, to)| {
        let ((x1, y1), (x2, y2)) = (on_page(*from), on_page(*to));
        (x1, y1, x2, y2)
    })
}
