//! Contact sheets: pieces side by side on pages for a screen.

use std::sync::Arc;

use super::veil::Shown;
use crate::diag::{Anchor, Hinted};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Face, Outline, Role, TextRun, Valign};
use crate::print::{Pasted, Press, Raster};
use crate::script::{Rich, capital};
use crate::theme::{Colour, Palette};
use crate::units::{Mm, Pt, Rect, Size};

/// A page of the listing's pictures, in millimetres; four to three is what shops show whole (common practice, no source).
pub(super) const PAGE: Size = Size::mm(240.0, 180.0);
/// Air at the edges and between pieces.
const AIR: Mm = Mm::new(7.0);
/// Height of the head with the title.
const HEAD: Mm = Mm::new(15.0);
/// Height of a name below a piece.
const NAME: Mm = Mm::new(5.5);
/// Rows of pieces on a page.
const ROWS: usize = 3;
/// A piece of this height is shown as high as its row; smaller ones a little smaller, so that all can be seen.
const TALL: f64 = 150.0;
/// The least height of a piece, in parts of its row.
const LEAST: f64 = 0.5;

/// Least width of a piece with its name.
const CELL: Mm = Mm::new(27.0);

/// A piece at its place on a page: which, and where.
pub(super) type Laid = (usize, Rect);

/// Lays pieces out in rows, page by page, in their order.
pub(super) fn lay(sizes: &[Size]) -> Vec<Vec<Laid>> {
    let row_height = (PAGE.h - HEAD - AIR * 2.0) / f64::from(u8::try_from(ROWS).unwrap_or(1));
    let (tall, wide) = (row_height - NAME - AIR * 0.5, PAGE.w - AIR * 2.0);
    let shown = |size: &Size| {
        let height = tall * (size.h.get() / TALL).sqrt().clamp(LEAST, 1.0);
        let scale = (height.get() / size.h.get()).min(wide.get() * 0.42 / size.w.get());
        Size { w: size.w * scale, h: size.h * scale }
    };
    let mut rows: Vec<(Mm, Vec<(usize, Size)>)> = Vec::new();
    for (at, size) in sizes.iter().map(shown).enumerate() {
        let take = size.w.max(CELL) + AIR;
        match rows.last_mut() {
            Some((used, row)) if *used + take - AIR <= wide => {
                *used += take;
                row.push((at, size));
            }
            _ => rows.push((take, vec![(at, size)])),
        }
    }
    rows.chunks(ROWS)
        .map(|rows| {
            let mut page = Vec::new();
            for (number, (used, row)) in (0_u8..).zip(rows) {
                let top = HEAD + AIR + row_height * f64::from(number);
                let mut x = (PAGE.w - (*used - AIR)) / 2.0;
                for (at, size) in row {
                    let cell = size.w.max(CELL);
                    page.push((
                        *at,
                        Rect { x: x + (cell - size.w) / 2.0, y: top + tall - size.h, w: size.w, h: size.h },
                    ));
                    x = x + cell + AIR;
                }
            }
            page
        })
        .collect()
}

/// A page in the making: what is set in type, and the pieces that lie on it.
#[derive(Clone, Debug)]
pub(super) struct Page {
    /// Ground and words.
    pub face: Face,
    /// Pieces with their shadows, the undermost first.
    pub pieces: Vec<Pasted>,
}

impl Page {
    /// An empty page on its ground.
    pub(super) fn new(about: impl Into<String>, palette: &Palette) -> Self {
        let mut face = Face::new(PAGE, about);
        face.art(ground(PAGE, palette), Rect::of(PAGE), "");
        Self { face, pieces: Vec::new() }
    }

    /// The page in pixels.
    ///
    /// # Errors
    /// When it cannot be set or drawn.
    pub(super) fn raster(&self, press: &Press, px_per_mm: f64) -> Hinted<Raster> {
        press.face(&self.face)?.raster_under(&self.pieces, px_per_mm)
    }
}

/// A page of pieces, with a head.
///
/// # Errors
/// When a piece cannot be set.
pub(super) fn page(laid: &[Laid], shown: &[Shown], head: &str, palette: &Palette, press: &Press) -> Hinted<Page> {
    let mut page = Page::new(head, palette);
    let ink = palette.get("ink");
    let rect = Rect { x: AIR, y: AIR * 0.6, w: PAGE.w - AIR * 2.0, h: HEAD - AIR * 0.6 };
    page.face.text(words(rect, Role::Display, head, 24.0, ink));
    for (at, rect) in laid {
        let Some(piece) = shown.get(*at) else { continue };
        put(&mut page, piece, *rect, 0.0, palette, press)?;
        // A name may lean out a little into the air at both sides.
        let wide = (rect.w + AIR).max(CELL + AIR * 0.8);
        let room = Rect { x: rect.x + (rect.w - wide) / 2.0, y: rect.bottom() + Mm::new(0.8), w: wide, h: NAME };
        page.face.text(words(room, Role::Text, &capital(&piece.label), 9.5, ink).aligned(Align::Centre, Valign::Top));
    }
    Ok(page)
}

/// Puts a piece onto a page: its shadow, its paper, its front, turned by some degrees.
pub(super) fn put(
    page: &mut Page,
    piece: &Shown,
    rect: Rect,
    turn: f64,
    palette: &Palette,
    press: &Press,
) -> Hinted<()> {
    let shadow = rect.moved(Mm::new(0.7), Mm::new(0.9));
    let ink = palette.get("ink");
    let mut at = |svg: Arc<str>, rect: Rect| page.pieces.push(Pasted { svg, rect, turn });
    at(shape(&piece.face, Pen::fill(mixed(palette.get("soft"), ink, 0.22))), shadow);
    at(shape(&piece.face, Pen::fill(Colour::WHITE)), rect);
    let set = press.face(&piece.face).map_err(|trouble| trouble.at(format!("piece {}", piece.piece)))?;
    at(set.svg().into(), rect);
    Ok(())
}

/// The shape of a face's paper.
fn shape(face: &Face, pen: Pen) -> Arc<str> {
    let mut drawing = Drawing::new(face.size);
    match &face.outline {
        Outline::Rect => drawing.rect(Rect::of(face.size), Mm::ZERO, pen),
        Outline::Round => {
            let (w, h) = (face.size.w, face.size.h);
            drawing.circle(w / 2.0, h / 2.0, w.min(h) / 2.0, pen);
        }
        Outline::Path(data) => drawing.path(data, pen),
    }
    drawing.svg()
}

/// The ground of a page.
fn ground(size: Size, palette: &Palette) -> Arc<str> {
    let mut drawing = Drawing::new(size);
    drawing.rect(Rect::of(size), Mm::ZERO, Pen::fill(mixed(palette.get("soft"), palette.get("paper"), 0.35)));
    drawing.svg()
}

/// Text on a page of the listing.
pub(super) fn words(rect: Rect, role: Role, text: &str, size: f64, ink: Colour) -> TextRun {
    let run = TextRun::new(rect, role, Rich::plain(text), Pt::new(size), ink, Anchor::Kit);
    run.aligned(Align::Centre, Valign::Middle).at_least(Pt::new(size * 0.4))
}

/// A colour with a part of another mixed in.
pub(super) fn mixed(a: Colour, b: Colour, part: f64) -> Colour {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between two bytes")]
    let mix = |a: u8, b: u8| (f64::from(a) * (1.0 - part) + f64::from(b) * part).round() as u8;
    Colour { r: mix(a.r, b.r), g: mix(a.g, b.g), b: mix(a.b, b.b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_stand_apart_and_on_their_page() {
        let sizes: Vec<Size> =
            (1..40_u16).map(|n| Size::mm(20.0 + f64::from(n * 7 % 97), 25.0 + f64::from(n * 31 % 180))).collect();
        let pages = lay(&sizes);
        let order: Vec<usize> = pages.iter().flatten().map(|(at, _)| *at).collect();
        assert_eq!(order, (0..sizes.len()).collect::<Vec<_>>());
        for page in &pages {
            for (n, (at, rect)) in page.iter().enumerate() {
                assert!(Rect::of(PAGE).inset(AIR * 0.9).holds(*rect), "{rect:?}");
                assert!(page.iter().skip(n + 1).all(|(_, other)| !other.meets(*rect)));
                let (is, was) = (rect.w.get() / rect.h.get(), sizes[*at].w.get() / sizes[*at].h.get());
                assert!((is / was - 1.0).abs() < 1e-9, "a piece keeps its shape");
            }
        }
    }
}
