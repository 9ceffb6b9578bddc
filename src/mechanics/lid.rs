//! The disc for a jar's lid, at its true diameter.

use crate::diag::{Hinted, PuzzleField};
use crate::face::{Art, Face, Layer, Outline, Piece, Role, TextRun};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// A disc of `diameter_mm` on the frame `disc`, which is scaled so that its square becomes the disc's.
///
/// # Errors
/// When the theme lacks the frame or its slot `body`.
pub fn disc(cx: &Dressing<'_>, part: &str, label: &str, diameter_mm: f64, text: &Rich, alt: &str) -> Hinted<Piece> {
    let frame = cx.frame("disc")?;
    let slot = cx.slot(&frame, "disc", "body")?;
    let size = Size::mm(diameter_mm, diameter_mm);
    let scale = diameter_mm / frame.size.w.get().max(1.0);
    let scaled = |rect: Rect| Rect { x: rect.x * scale, y: rect.y * scale, w: rect.w * scale, h: rect.h * scale };
    let mut face = Face::new(size, alt);
    face.outline = Outline::Round;
    face.layers.push(Layer::Art(Art {
        svg: frame.svg.clone(),
        rect: Rect { x: Mm::ZERO, y: Mm::ZERO, w: frame.size.w * scale, h: frame.size.h * scale },
        turn: 0.0,
        alt: String::new(),
    }));
    let run = TextRun::new(
        scaled(slot),
        Role::Display,
        text.clone(),
        Pt::new(26.0),
        cx.colour("ink"),
        cx.at(PuzzleField::Setup),
    );
    face.text(run);
    if let (false, Some(slot)) = (cx.mark.is_empty(), frame.slot("mark")) {
        face.art(cx.symbol(cx.mark)?, scaled(slot), format!("mark: {}", cx.mark));
    }
    let mut piece = cx.piece(part, label, face);
    piece.id = format!("{}-lid", cx.puzzle);
    piece.measured = true;
    Ok(piece)
}
