//! Labels of slim pieces: what is too long to stand below runs up along a side, or in large print takes more lines.

use super::Placed;
use super::impose::LABEL;
use super::room::LABEL_AIR;
use crate::units::{Mm, Rect};

/// Width of a character of a label, at the least size in which a label is set (a guess, rather too much than too little).
const CHARACTER: Mm = Mm::new(0.8);
/// What a label may lean out at either side.
const LEAN: Mm = Mm::new(2.0);
/// Distance of a label from the corners, where the cut marks stand.
const INSET: Mm = Mm::new(2.6);

/// Lines for which a sheet of large print leaves room below every piece.
const LINES: usize = 2;
/// Width of a character and height of a line of a label in large print (guesses, rather too much than too little).
const LARGE: (Mm, Mm) = (Mm::new(2.9), Mm::new(6.6));

/// How much more room a label in large print needs below a piece, when it may be so wide.
pub(super) fn more_below(label: &str, wide: Mm) -> Mm {
    let (character, line) = LARGE;
    let (mut lines, mut filled) = (1_usize, Mm::ZERO);
    for word in label.split_whitespace() {
        let long = character * f64::from(u16::try_from(word.chars().count()).unwrap_or(u16::MAX));
        if filled > Mm::ZERO && filled + character + long > wide {
            lines += 1;
            filled = long;
        } else {
            filled = filled + character + long;
        }
    }
    line * f64::from(u16::try_from(lines.saturating_sub(LINES)).unwrap_or(u16::MAX))
}

/// Moves each label that is too long for the width of an upright piece to the piece's right or left side, where nothing
/// stands; within `content`, the part of the page for pieces.
pub(super) fn beside_slim(placed: &mut [Placed], content: Rect) {
    for at in 0..placed.len() {
        let Some(own) = placed.get(at) else { continue };
        let rect = own.rect;
        let long = CHARACTER * f64::from(u16::try_from(own.label.chars().count()).unwrap_or(u16::MAX));
        if rect.h <= rect.w || long <= rect.w + LEAN * 2.0 {
            continue;
        }
        let wide = LABEL - LABEL_AIR;
        let side = |x: Mm| Rect { x, y: rect.y + INSET, w: wide, h: rect.h - INSET * 2.0 };
        let free = |label: &Rect| {
            let others = placed.iter().enumerate().filter(|(other, _)| *other != at);
            content.holds(*label)
                && others.into_iter().all(|(_, p)| !p.rect.meets(*label) && !p.label_rect.meets(*label))
        };
        let sides = [side(rect.right() + LABEL_AIR), side(rect.x - LABEL_AIR - wide)];
        if let (Some(found), Some(own)) = (sides.into_iter().find(free), placed.get_mut(at)) {
            own.label_rect = found;
        }
    }
}
