//! Which part of a kit is in sight.

use std::borrow::Cow;

use super::Wanted;
use crate::app::session::Selection;
use crate::diag::{Anchor, PuzzleField};
use crate::face::{Audience, Layer, Piece};
use crate::kit::Kit;

/// The kit with those puzzles only that what is wanted needs: laying out and reading the others would make a
/// keystroke wait for nothing. No puzzle's arrangement depends on another puzzle.
pub(super) fn narrowed<'a>(kit: &'a Kit, wanted: &Wanted) -> Cow<'a, Kit> {
    let only = match wanted {
        Wanted::Pieces(_) | Wanted::Sheets(..) | Wanted::SideBySide(..) => return Cow::Borrowed(kit),
        Wanted::Of(Selection::Puzzle(id) | Selection::Hints(id) | Selection::Readings(id), _) => Some(id),
        Wanted::Nothing | Wanted::Gallery(_) | Wanted::Letter(..) | Wanted::Specimens(_) | Wanted::Of(..) => None,
    };
    let mut kit = kit.clone();
    kit.puzzles.retain(|puzzle| Some(&puzzle.id) == only);
    Cow::Owned(kit)
}

/// Whether a piece belongs to what is in hand: some of its words come from there, or its name says so.
pub(super) fn belongs(piece: &Piece, selection: &Selection) -> bool {
    let words_from = |wanted: &dyn Fn(&Anchor) -> bool| {
        let faces = std::iter::once(&piece.front).chain(&piece.back);
        faces.flat_map(|face| &face.layers).any(|layer| match layer {
            Layer::Text(run) => wanted(&run.from),
            Layer::Art(_) => false,
        })
    };
    match selection {
        Selection::Hints(id) => {
            words_from(&|from| matches!(from, Anchor::Puzzle(of, PuzzleField::Hint(..)) if of == id))
        }
        Selection::Puzzle(id) | Selection::Readings(id) => {
            piece.audience != Audience::Hints
                && (piece.group == id.as_str()
                    || piece.id.strip_prefix(id.as_str()).is_some_and(|rest| !rest.is_empty())
                    || words_from(
                        &|from| matches!(from, Anchor::Puzzle(of, field) if of == id && !matches!(field, PuzzleField::Hint(..))),
                    ))
        }
        Selection::Prop(id) => piece.group.strip_prefix("prop-") == Some(id.as_str()),
        other => words_from(&|from| Selection::of(from) == *other),
    }
}
