//! A piece of large print that leaves no room for a label below it: a sheet of its own, before it is parted.

use super::room::{LABEL_AIR, Room, folds};
use super::{Paper, Placed, Sheet};
use crate::face::Piece;
use crate::units::{Mm, Rect, Size};

/// Least width of a column beside the piece that takes its label, and the check bar.
const COLUMN: Mm = Mm::new(50.0);
/// Air between the piece and that column.
const AIR: Mm = Mm::new(6.0);
/// Height of the words over a check bar in such a column: six lines of 16 points.
const BAR_WORDS: Mm = Mm::new(48.0);

/// How a piece lies that has a sheet to itself: its size on the page, and whether it is turned.
fn lies(piece: &Piece, paper: Paper, room: Room) -> Option<(Size, bool)> {
    let (size, page) = (piece.front.size, room.page(paper));
    let takes = |size: Size| size.w.get() <= page.w.get() + 1e-6 && size.h.get() <= page.h.get() + 1e-6;
    [(size, false), (Size { w: size.h, h: size.w }, true)].into_iter().find(|(size, _)| takes(*size))
}

/// Whether a piece needs a sheet to itself, and has room on it.
pub(super) fn alone(piece: &Piece, paper: Paper, room: Room) -> bool {
    piece.large && piece.back.is_none() && lies(piece, paper, room).is_some()
}

/// The sheet of such a piece. Its name stands in the head; what to do with it stands beside it, or else below it, or is
/// only told by the piece itself.
pub(super) fn sheet(piece: &Piece, paper: Paper, room: Room, heading: &str) -> Option<Sheet> {
    let (size, turned) = lies(piece, paper, room)?;
    let safe = paper.safe();
    let top = safe.bottom() - room.page(paper).h;
    let beside = safe.w - size.w - AIR;
    let below = safe.bottom() - top - size.h;
    let column = Rect { x: safe.right() - beside, y: top, w: beside, h: size.h };
    let x = if beside >= COLUMN { safe.x } else { safe.x + (safe.w - size.w) / 2.0 };
    let rect = Rect { x, y: top, w: size.w, h: size.h };
    let foot = Rect { x: safe.x, y: safe.bottom() - room.bar.h, w: room.bar.w, h: room.bar.h };
    let bar = if below >= room.bar.h {
        Some(foot)
    } else if beside >= COLUMN && size.h >= (room.bar.h + BAR_WORDS) * 2.0 {
        Some(Rect { x: column.x, y: rect.bottom() - room.bar.h, w: room.bar.w, h: room.bar.h })
    } else {
        None
    };
    let label_rect = if beside >= COLUMN {
        Rect { h: size.h / 2.0, ..column }
    } else if below >= room.label + bar.map_or(Mm::ZERO, |bar| bar.h) {
        Rect { y: rect.bottom() + LABEL_AIR, h: room.label - LABEL_AIR, ..rect }
    } else {
        Rect::default()
    };
    let name = piece.label.split(':').next().unwrap_or(&piece.label).to_lowercase();
    Some(Sheet {
        paper,
        audience: piece.audience,
        heading: format!("{heading} · {name}"),
        placed: vec![Placed {
            piece: piece.id.clone(),
            face: piece.front.clone(),
            rect,
            turned,
            back: false,
            over: false,
            label: piece.label.clone(),
            label_rect,
            cut: true,
        }],
        folds: folds(&piece.front, rect, turned).collect(),
        check_bar: bar.filter(|_| piece.measured),
        large: true,
        stock: Some(piece.stock),
    })
}
