//! How large a box must be inside, by what lies in it.

use super::Source;
use super::words::list;
use crate::face::{Piece, Stock};
use crate::kit::{BoxDef, Place, PropRole};
use crate::units::Mm;

/// Longer than this, a sheet of plain paper goes into a box folded once.
const FLAT: f64 = 200.0;
/// Sizes are told in steps of so many millimetres, the next one up.
const STEP: f64 = 5.0;

/// What a box must take, in words; empty where nothing lies in it.
pub(super) fn inside(source: &Source<'_>, item: &BoxDef) -> String {
    let kit = &source.opened.kit;
    let here = Place::Box(item.id.clone());
    let (mut paper, mut folded) = ((0.0_f64, 0.0_f64), false);
    for piece in source.party.lying(kit, &here) {
        let (long, short) = flat(piece);
        folded |= folds(piece);
        paper = (paper.0.max(long), paper.1.max(short));
    }
    let up = |mm: f64| (mm / STEP).ceil() * STEP;
    let mut holds = Vec::new();
    if paper.0 > 0.0 {
        let once = if folded { " (sheets of plain paper folded once)" } else { "" };
        holds.push(format!("a card of {} × {} mm lying flat{once}", up(paper.0), up(paper.1)));
    }
    let things = kit.props.iter().filter(|prop| prop.place == here && prop.printed.is_none());
    holds.extend(things.filter(|prop| !matches!(prop.role, PropRole::Key(_))).map(|prop| source.say(&prop.name)));
    holds.extend(kit.boxes.iter().filter(|other| other.place == here).map(|other| source.say(&other.name)));
    if holds.is_empty() { String::new() } else { format!("inside it takes {}", list(&holds)) }
}

/// Whether a piece goes into a box folded once.
fn folds(piece: &Piece) -> bool {
    piece.stock == Stock::Plain && !piece.measured && piece.front.size.w.max(piece.front.size.h).get() > FLAT
}

/// The longer and the shorter side of a piece as it lies in a box, in millimetres.
fn flat(piece: &Piece) -> (f64, f64) {
    let (w, h) = (piece.front.size.w.max(Mm::ZERO).get(), piece.front.size.h.max(Mm::ZERO).get());
    let (long, short) = (w.max(h), w.min(h));
    let (a, b) = if folds(piece) { (long / 2.0, short) } else { (long, short) };
    (a.max(b), a.min(b))
}
