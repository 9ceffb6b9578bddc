//! The strips, and the card that says how they are laid.

use super::{CARD, STRIPS, View, letter, texts};
use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// Length of the longest picture: a strip of it fits on a sheet of either paper, and in a child's hands.
const LONGEST: Mm = Mm::new(150.0);
/// Width of the widest cell.
const CELL: Mm = Mm::new(6.4);
/// Height of the lowest strip: lower ones are hard to cut and to hold (common practice, no source).
const LOWEST: Mm = Mm::new(8.0);
/// Size of a strip's letter in points.
const LETTER: f64 = 10.0;
/// Cells before the picture, at least: in the first of them an arrowhead may stand, in the second the strip's letter.
const CAP: usize = 2;
/// Width of the lock's mark behind the picture, and the least that it takes there, with air.
const MARK: (Mm, Mm) = (Mm::new(6.0), Mm::new(7.0));

/// Width of a cell of a picture that is so many cells long.
#[expect(clippy::cast_precision_loss, reason = "a picture has a few dozen cells each way")]
fn cell_of(across: usize) -> Mm {
    (LONGEST / across.max(1) as f64).min(CELL)
}

/// Cells before the picture, and as many behind it: a strip that is turned must come to lie as it did.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few cells")]
pub(super) fn cap(across: usize) -> usize {
    ((MARK.1 / cell_of(across).get()).get().ceil() as usize).max(CAP)
}

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let (rows, _) = view.measures().ok_or_else(|| {
        Trouble::new("the strips are not all of one size").hint("lay the puzzle out again from its setup")
    })?;
    let mut pieces = vec![card(view, cx)?];
    for (index, strip) in view.strips.iter().enumerate() {
        let drawn = piece(strip, (index, rows), view.arrows, cx)?;
        pieces.push(Piece { id: format!("{}-{STRIPS}-{}", cx.puzzle, index + 1), ..drawn });
    }
    Ok(pieces)
}

#[expect(clippy::cast_precision_loss, reason = "a picture has a few dozen cells each way")]
fn piece(strip: &[String], (index, rows): (usize, usize), arrows: bool, cx: &Dressing<'_>) -> Hinted<Piece> {
    let across = strip.first().map_or(0, String::len);
    let cell = cell_of(across);
    let height = (cell * rows as f64 / super::FINE as f64).max(LOWEST);
    let row = height / rows as f64;
    let cap = cell * cap(across) as f64;
    let size = Size { w: cell * across as f64 + cap * 2.0, h: height };
    let mut drawing = Drawing::new(size);
    let ink = Pen::fill(cx.colour("ink"));
    if arrows {
        // Half the strip high, its point up.
        let (middle, half) = (cell / 2.0 + Mm::new(0.5), (cell * 0.45).min(height * 0.3));
        let (top, foot) = (height / 2.0 - half, height / 2.0 + half);
        drawing.polygon(&[(middle, top), (middle + half, foot), (middle - half, foot)], ink);
    }
    for (at, cells) in strip.iter().enumerate() {
        let mut col = 0;
        for run in cells.chars().collect::<Vec<_>>().chunk_by(|a, b| a == b) {
            if run.first() == Some(&'#') {
                let rect = Rect { x: cap + cell * col as f64, y: row * at as f64, w: cell * run.len() as f64, h: row };
                drawing.rect(rect, Mm::ZERO, ink);
            }
            col += run.len();
        }
    }
    let mut face = Face::new(size, "A strip of a picture that was cut");
    face.art(drawing.svg(), Rect::of(size), "");
    if !cx.mark.is_empty() {
        let side = MARK.0.min(height - Mm::new(1.4));
        let at = Rect { x: size.w - (cap + side) / 2.0, y: (height - side) / 2.0, w: side, h: side };
        face.art(cx.symbol(cx.mark)?, at, format!("mark: {}", cx.mark));
    }
    // Upright on the paper, whichever way up the strip belongs: it tells nothing.
    let place = Rect { x: cell, y: Mm::ZERO, w: cell, h: height };
    let name = letter(index).to_string();
    paper::symbol(&mut face, cx, place, &name, LETTER);
    Ok(cx.piece(STRIPS, &format!("strip {name}"), face))
}

fn card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let rule = texts::rule(view);
    let (mut face, slot) = paper::sheet(cx, "landscape", cx.name("card-title", "In strips"), rule.clone())?;
    let run =
        TextRun::new(slot, Role::Text, Rich::plain(rule), Pt::new(15.0), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run);
    Ok(cx.piece(CARD, "", face))
}
