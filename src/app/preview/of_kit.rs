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
        Wanted::Of(Selection::Lock(id), _) => kit.puzzle_of(id).map(|puzzle| &puzzle.id),
        Wanted::Nothing | Wanted::Gallery(_) | Wanted::Letter(..) | Wanted::Specimens(_) | Wanted::Of(..) => None,
    };
    let mut kit = kit.clone();
    kit.puzzles.retain(|puzzle| Some(&puzzle.id) == only);
    Cow::Owned(kit)
}

/// The pieces that belong to what is in hand; the tag of a lock before those of its puzzle.
pub(super) fn belonging<'a>(pieces: &'a [Piece], kit: &Kit, selection: &Selection) -> Vec<&'a Piece> {
    let of = |selection: &Selection| pieces.iter().filter(|piece| belongs(piece, kit, selection)).collect::<Vec<_>>();
    let Selection::Lock(id) = selection else { return of(selection) };
    let tag = format!("lock-tag-{id}");
    let mut found: Vec<&Piece> = pieces.iter().filter(|piece| piece.id == tag).collect();
    found.extend(kit.puzzle_of(id).into_iter().flat_map(|puzzle| of(&Selection::Puzzle(puzzle.id.clone()))));
    found
}

/// Whether what stands at a place is what is in hand, or the puzzle of the lock that is.
pub(super) fn concerns(anchor: &Anchor, kit: &Kit, selection: &Selection) -> bool {
    let at = Selection::of(anchor);
    let Selection::Lock(id) = selection else { return at == *selection };
    at == *selection || kit.puzzle_of(id).is_some_and(|puzzle| at == Selection::Puzzle(puzzle.id.clone()))
}

/// Whether a piece belongs to what is in hand: some of its words come from there, or its name says so.
fn belongs(piece: &Piece, kit: &Kit, selection: &Selection) -> bool {
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
        // A box that is a printed envelope, with its label.
        Selection::Box(id) => {
            let envelope = kit.box_def(id).and_then(|item| item.printed.as_ref());
            piece.group.strip_prefix("prop-").is_some_and(|prop| envelope.is_some_and(|id| id.as_str() == prop))
                || words_from(&|from| Selection::of(from) == *selection)
        }
        other => words_from(&|from| Selection::of(from) == *other),
    }
}
