//! Pieces that are larger than a sheet, parted over several: where to cut, and what each part is called.

use crate::face::{Face, Piece, reach};
use crate::units::{Mm, Rect, Size};

/// Layers that cover more of a piece than this, width by width and height by height, are its ground: every cut crosses
/// them.
const GROUND: f64 = 0.6;
/// Places of a cut that are tried.
const PLACES: u8 = 40;

/// The parts of a piece, row by row, each no larger than `most`; to be joined edge to edge.
pub(super) fn parts(piece: &Piece, most: Size) -> Vec<Piece> {
    let face = &piece.front;
    let (upright, lying) = (most, Size { w: most.h, h: most.w });
    // Few parts, and of two ways that need as many the one that leaves the sheets upright.
    let most = if count(face.size, lying) < count(face.size, upright) { lying } else { upright };
    let columns = cuts(face, most.w, true);
    let rows = cuts(face, most.h, false);
    let total = (columns.len() - 1) * (rows.len() - 1);
    let mut parts = Vec::new();
    for y in rows.windows(2) {
        for x in columns.windows(2) {
            let (&[left, right], &[top, bottom]) = (x, y) else { continue };
            let rect = Rect { x: left, y: top, w: right - left, h: bottom - top };
            let n = parts.len() + 1;
            parts.push(Piece {
                label: format!("{}, part {n} of {total}: join the edges", piece.label),
                front: face.part(rect),
                ..piece.clone()
            });
        }
    }
    parts
}

fn count(size: Size, most: Size) -> usize {
    needed(size.w, most.w) * needed(size.h, most.h)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a handful of sheets")]
fn needed(length: Mm, most: Mm) -> usize {
    (length.get() / most.get().max(1.0) - 1e-6).ceil().clamp(1.0, 100.0) as usize
}

/// Where to cut along one side, both ends among them: each cut where it crosses least, near an even share.
fn cuts(face: &Face, most: Mm, across: bool) -> Vec<Mm> {
    let whole = if across { face.size.w } else { face.size.h };
    let parts = needed(whole, most);
    let mut at = vec![Mm::ZERO];
    #[expect(clippy::cast_precision_loss, reason = "a handful of sheets")]
    for left in (1..parts).rev() {
        let last = at.last().copied().unwrap_or_default();
        let low = (whole - most * left as f64).max(last);
        let high = last + most;
        let even = last + (whole - last) / (left + 1) as f64;
        let place = |step: u8| low + (high - low) * (f64::from(step) / f64::from(PLACES));
        let cost = |cut: Mm| (crossed(face, cut, across), (cut - even).get().abs());
        let best = (0..=PLACES).map(place).min_by(|a, b| {
            let (a, b) = (cost(*a), cost(*b));
            a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
        });
        at.push(best.unwrap_or(even));
    }
    at.push(whole);
    at
}

/// How many texts and pictures a cut goes through; not the ground.
fn crossed(face: &Face, cut: Mm, across: bool) -> usize {
    let through = |rect: Rect| {
        let (from, to) = if across { (rect.x, rect.right()) } else { (rect.y, rect.bottom()) };
        from < cut && cut < to
    };
    let ground = |rect: Rect| rect.w > face.size.w * GROUND && rect.h > face.size.h * GROUND;
    face.layers.iter().map(reach).filter(|rect| through(*rect) && !ground(*rect)).count()
}
