//! The disc for a jar's lid, at its true diameter.

use crate::diag::{Hinted, PuzzleField};
use crate::face::{Art, Face, Layer, Outline, Piece, Role, TextRun};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// What stands on a disc.
#[derive(Clone, Copy, Debug)]
pub struct Words<'a> {
    /// Large; the only text where `text` is empty.
    pub title: &'a Rich,
    /// Smaller, below.
    pub text: &'a Rich,
    /// What the disc is, for those who cannot see it.
    pub alt: &'a str,
}

/// A disc of `diameter_mm` on the frame `disc`, which is scaled so that its square becomes the disc's.
///
/// # Errors
/// When the theme lacks the frame or its slot `body`.
pub fn disc(cx: &Dressing<'_>, part: &str, diameter_mm: f64, words: &Words<'_>) -> Hinted<Piece> {
    let frame = cx.frame("disc")?;
    let slot = cx.slot(&frame, "disc", "body")?;
    let size = Size::mm(diameter_mm, diameter_mm);
    let scale = diameter_mm / frame.size.w.get().max(1.0);
    let scaled = |rect: Rect| Rect { x: rect.x * scale, y: rect.y * scale, w: rect.w * scale, h: rect.h * scale };
    let mut face = Face::new(size, words.alt);
    face.outline = Outline::Round;
    face.layers.push(Layer::Art(Art {
        svg: frame.svg.clone(),
        rect: Rect { x: Mm::ZERO, y: Mm::ZERO, w: frame.size.w * scale, h: frame.size.h * scale },
        turn: 0.0,
        alt: String::new(),
    }));
    let (ink, from, body) = (cx.colour("ink"), cx.at(PuzzleField::Setup), scaled(slot));
    let head = if words.text.is_empty() { body } else { Rect { h: body.h * TITLE, ..body } };
    face.text(TextRun::new(head, Role::Display, words.title.clone(), Pt::new(26.0), ink, from.clone()));
    let below = Rect { y: body.y + body.h * TEXT, h: body.h * (1.0 - TEXT), ..body };
    face.text(TextRun::new(below, Role::Text, words.text.clone(), Pt::new(14.0), ink, from));
    if let (false, Some(slot)) = (cx.mark.is_empty(), frame.slot("mark")) {
        face.art(cx.symbol(cx.mark)?, scaled(slot), format!("mark: {}", cx.mark));
    }
    let mut piece = cx.piece(part, "lid disc", face);
    piece.id = format!("{}-lid", cx.puzzle);
    piece.measured = true;
    piece.on_a_thing = true;
    Ok(piece)
}

/// The title's share of the height, where text stands below it.
const TITLE: f64 = 0.21;
/// Where that text begins, in parts of the height: a line's air below the title.
const TEXT: f64 = 0.26;
