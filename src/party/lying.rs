//! What lies in a place, and how large it is as it lies there.

use super::Party;
use crate::face::{Audience, Line, Piece};
use crate::ids::{NoteId, PropId, PuzzleId};
use crate::kit::{Kit, Place, Printed};
use crate::mechanics;
use crate::units::{Mm, Size};

impl Party {
    /// The guests' pieces that lie in a place: parts of puzzles, notes, what props are printed as. What hangs on locks does
    /// not.
    pub fn lying<'a, 'k>(&'a self, kit: &'k Kit, place: &'k Place) -> impl Iterator<Item = &'a Piece> + use<'a, 'k> {
        let guests = self.pieces.iter().filter(|piece| piece.audience == Audience::Players);
        guests.filter(move |piece| {
            let puzzle = PuzzleId::new(&piece.group).and_then(|id| self.positions.puzzle(kit, &id));
            let of_puzzle = puzzle.is_some_and(|puzzle| {
                let hung =
                    mechanics::find(&puzzle.mechanic).is_ok_and(|known| known.on_locks().contains(&&*piece.part));
                !hung && puzzle.parts.get(&piece.part) == Some(place)
            });
            let note = NoteId::new(&piece.id).and_then(|id| self.positions.note(kit, &id));
            let prop = piece.group.strip_prefix("prop-").and_then(PropId::new);
            let prop = prop.and_then(|id| self.positions.prop(kit, &id));
            of_puzzle || note.is_some_and(|note| note.place == *place) || prop.is_some_and(|prop| prop.place == *place)
        })
    }
}

/// Width and height of a piece folded at its fold lines: the widest and the highest part between two of them.
#[must_use]
pub fn folded(piece: &Piece) -> Size {
    let (size, folds) = (piece.front.size, &piece.front.folds);
    let span = |most: Mm, mut at: Vec<Mm>| {
        at.extend([Mm::ZERO, most]);
        at.sort_by(|a, b| a.get().total_cmp(&b.get()));
        let gaps = at.iter().zip(at.iter().skip(1)).map(|(from, to)| *to - *from);
        gaps.fold(Mm::ZERO, Mm::max)
    };
    let level = |line: &&Line| (line.0.1 - line.1.1).get().abs() < 0.1;
    let across = folds.iter().filter(level).map(|line| line.0.1).collect();
    let down = folds.iter().filter(|line| !level(line)).map(|line| line.0.0).collect();
    Size { w: span(size.w, down), h: span(size.h, across) }
}

/// Whether something of this size goes into a printed envelope, either way round.
#[must_use]
pub fn goes_into(size: Size, spec: &Printed) -> bool {
    // A hair more is rounding, not paper.
    let (w, h) = (spec.size.0 + 0.01, spec.size.1 + 0.01);
    let fits = |a: Mm, b: Mm| a.get() <= w && b.get() <= h;
    fits(size.w, size.h) || fits(size.h, size.w)
}
