//! Large print: pieces so large that no text of theirs stands under 16 points.
//!
//! Only type setting knows at which size a text fits, so it is handed in ([`Fits`]). A piece grows evenly, so that a
//! puzzle is the same puzzle; pieces that belong together grow alike. A piece that goes onto a thing keeps its size: it
//! loses the words that do not fit on it and comes with a copy to read them from. So does a piece that is folded and would
//! become larger than a sheet: it stays whole.

use rayon::prelude::*;

use super::Party;
use crate::diag::Hinted;
use crate::face::{Face, Layer, Piece, TextRun};
use crate::limits;
use crate::theme::LARGE_PRINT;
use crate::units::{Pt, Rect};

/// The least size of large print.
pub const LARGE: Pt = LARGE_PRINT;

/// How much larger pieces are tried, in turn: few steps, so that pieces of one kit come in few sizes. The last takes
/// text of 5 points to 16.
const STEPS: &[f64] = &[1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.5, 2.8, 3.2];

/// Says of each run of a face whether it fits its place at its least size.
pub type Fits<'a> = &'a (dyn Fn(&Face) -> Hinted<Vec<bool>> + Sync);

/// How the ids of copies end.
const TO_READ: &str = "-to-read";

/// Whether a piece is a copy from which words are read that do not fit on a thing.
#[must_use]
pub fn is_copy(piece: &Piece) -> bool {
    piece.large && piece.id.ends_with(TO_READ)
}

impl Party {
    /// Puts the large pieces into the place of the usual ones.
    ///
    /// # Errors
    /// When a face cannot be set.
    pub fn enlarge(&mut self, fits: Fits<'_>) -> Hinted<()> {
        self.pieces = enlarged(&self.pieces, fits)?;
        Ok(())
    }
}

/// Pieces in large print.
///
/// # Errors
/// When a face cannot be set.
pub fn enlarged(pieces: &[Piece], fits: Fits<'_>) -> Hinted<Vec<Piece>> {
    let own = pieces.par_iter().map(|piece| factor(&bare(piece), fits)).collect::<Hinted<Vec<f64>>>()?;
    let alike = |one: &Piece, other: &Piece| {
        one.group == other.group
            && !other.on_a_thing
            && (one.front.size == other.front.size || one.measured && other.measured)
    };
    let large = |(piece, factor): (&Piece, &f64)| -> Hinted<Vec<Piece>> {
        if piece.on_a_thing {
            return kept(piece, 1.0, *factor, fits);
        }
        let together = pieces.iter().zip(&own).filter(|(other, _)| alike(piece, other));
        let factor = together.map(|(_, factor)| *factor).fold(*factor, f64::max);
        let most = most(piece);
        if factor > most {
            return kept(piece, most, factor, fits);
        }
        let mut piece = grown(piece, factor);
        prune(&mut piece, fits, |run| run.spare)?;
        Ok(vec![piece])
    };
    let made = pieces.par_iter().zip(&own).map(large).collect::<Hinted<Vec<_>>>()?;
    Ok(made.into_iter().flatten().collect())
}

/// The least step at which all words of a piece fit; the greatest when they fit at none.
fn factor(piece: &Piece, fits: Fits<'_>) -> Hinted<f64> {
    let faces = || std::iter::once(&piece.front).chain(&piece.back);
    for step in STEPS {
        let mut all = true;
        for face in faces() {
            all &= fits(&face.grown(*step, LARGE))?.into_iter().all(|fits| fits);
        }
        if all {
            return Ok(*step);
        }
    }
    Ok(STEPS.last().copied().unwrap_or(1.0))
}

/// How large a piece may become: a folded one no larger than a sheet of either paper.
fn most(piece: &Piece) -> f64 {
    let folded = std::iter::once(&piece.front).chain(&piece.back).any(|face| !face.folds.is_empty());
    let (w, h) = (piece.front.size.w.get(), piece.front.size.h.get());
    let (across, down) = limits::PROP_PAGE;
    let within = |w: f64, h: f64| (across / w).min(down / h);
    if folded { within(w, h).max(within(h, w)).max(1.0) } else { f64::INFINITY }
}

fn grown(piece: &Piece, factor: f64) -> Piece {
    Piece {
        front: piece.front.grown(factor, LARGE),
        back: piece.back.as_ref().map(|back| back.grown(factor, LARGE)),
        large: true,
        ..piece.clone()
    }
}

/// A piece without the runs that its label says as well.
fn bare(piece: &Piece) -> Piece {
    let mut piece = piece.clone();
    for face in std::iter::once(&mut piece.front).chain(&mut piece.back) {
        face.layers.retain(|layer| !matches!(layer, Layer::Text(run) if run.spare));
    }
    piece
}

/// Takes those runs off a piece that do not fit and may go.
fn prune(piece: &mut Piece, fits: Fits<'_>, may_go: impl Fn(&TextRun) -> bool) -> Hinted<()> {
    for face in std::iter::once(&mut piece.front).chain(&mut piece.back) {
        if !face.runs().any(&may_go) {
            continue;
        }
        let mut fitting = fits(face)?.into_iter();
        face.layers.retain(|layer| match layer {
            Layer::Art(_) => true,
            Layer::Text(run) => fitting.next().unwrap_or(false) || !may_go(run),
        });
    }
    Ok(())
}

/// Gives words that stayed on a face the room of those above and below them that went.
fn spread(face: &mut Face, before: &Face) {
    let lie_in_line = |a: &TextRun, b: &TextRun| a.rect.x == b.rect.x && a.rect.w == b.rect.w && a.turn == 0.0;
    let stayed: Vec<Rect> = face.runs().map(|run| run.rect).collect();
    for gone in before.runs().filter(|run| run.turn == 0.0 && !stayed.contains(&run.rect)) {
        let left = face.layers.iter_mut().find_map(|layer| match layer {
            Layer::Text(run) if lie_in_line(run, gone) => Some(run),
            Layer::Text(_) | Layer::Art(_) => None,
        });
        if let Some(run) = left {
            let (top, end) = (run.rect.y.min(gone.rect.y), run.rect.bottom().max(gone.rect.bottom()));
            run.rect = Rect { y: top, h: end - top, ..run.rect };
        }
    }
}

/// A piece at a size that it must not pass, without the words that do not fit on it, and a copy to read them from; the
/// piece alone where they fit.
fn kept(piece: &Piece, most: f64, factor: f64, fits: Fits<'_>) -> Hinted<Vec<Piece>> {
    let mut thing = grown(piece, most);
    if factor <= most {
        prune(&mut thing, fits, |run| run.spare)?;
        return Ok(vec![thing]);
    }
    prune(&mut thing, fits, |_| true)?;
    spread(&mut thing.front, &grown(piece, most).front);
    // Whoever reads the paper reads the copy.
    thing.part = format!("{}-without-words", piece.part);
    let mut copy = Piece {
        id: format!("{}{TO_READ}", piece.id),
        label: format!("{}, to read beside it", piece.label),
        measured: false,
        on_a_thing: false,
        ..grown(&bare(piece), factor)
    };
    // It is not folded: it may be parted.
    std::iter::once(&mut copy.front).chain(&mut copy.back).for_each(|face| face.folds.clear());
    Ok(vec![thing, copy])
}
