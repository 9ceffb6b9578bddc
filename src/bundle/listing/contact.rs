//! Contact sheets: pieces side by side on pages for a screen.

use std::sync::Arc;

use super::veil::Shown;
use crate::diag::{Anchor, Hinted};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Face, Frame, Outline, Role, TextRun, Valign, clean_svg};
use crate::print::{Pasted, Press, Raster};
use crate::script::{Rich, capital, typographic};
use crate::theme::{Colour, Palette};
use crate::units::{Mm, Pt, Rect, Size};

/// At the foot of a page on which a piece is veiled.
const SEALED: &str = "What is under seal is kept for the party.";

/// A page of the listing's pictures, in millimetres; four to three is what shops show whole (common practice, no source).
pub(super) const PAGE: Size = Size::mm(240.0, 180.0);
/// Air at the edges and between pieces.
const AIR: Mm = Mm::new(7.0);
/// Height of the head with the title.
const HEAD: Mm = Mm::new(22.0);
/// Height of the line at the foot.
const FOOT: Mm = Mm::new(6.0);
/// Height of a name below a piece.
const NAME: Mm = Mm::new(6.5);
/// Rows of pieces on a page.
const ROWS: usize = 3;
/// A piece of this height is shown as high as its row; smaller ones a little smaller, so that all can be seen.
const TALL: f64 = 150.0;
/// The least height of a piece, in parts of its row.
const LEAST: f64 = 0.5;
/// How much larger than that a page with few pieces shows them.
const GROWN: f64 = 1.6;
/// Least width of a piece with its name.
const CELL: Mm = Mm::new(27.0);

/// A cell at its place on a page: which, and where.
pub(super) type Laid = (usize, Rect);

/// Pieces of one kind, one behind another, with a name below them.
pub(super) struct Cell {
    name: String,
    /// Which pieces, the foremost first, and where each stands in the cell, at true size.
    pieces: Vec<(usize, Rect)>,
    /// What they take together.
    pub(super) size: Size,
}

/// The pieces in cells, in the order in which each kind first comes.
pub(super) fn cells(shown: &[Shown]) -> Vec<Cell> {
    let mut kinds: Vec<(&str, Vec<usize>)> = Vec::new();
    for (at, piece) in shown.iter().enumerate() {
        match kinds.iter_mut().find(|(kind, _)| *kind == piece.kind) {
            Some((_, all)) => all.push(at),
            None => kinds.push((&piece.kind, vec![at])),
        }
    }
    kinds.into_iter().filter_map(|(_, all)| cell(shown, &all)).collect()
}

fn cell(shown: &[Shown], all: &[usize]) -> Option<Cell> {
    let first = shown.get(*all.first()?)?;
    let size = first.face.size;
    // Strips stand below one another, so that all their words are read; of other pieces a corner is enough.
    let step = if size.w > size.h * 2.6 { (Mm::ZERO, size.h * 1.14) } else { (size.w * 0.15, size.h * -0.07) };
    let mut pieces: Vec<(usize, Rect)> = Vec::new();
    for (n, at) in (0_u8..).zip(all) {
        let size = shown.get(*at)?.face.size;
        pieces.push((*at, Rect { x: step.0 * f64::from(n), y: step.1 * f64::from(n), w: size.w, h: size.h }));
    }
    let top = pieces.iter().map(|(_, rect)| rect.y).fold(Mm::ZERO, Mm::min);
    for (_, rect) in &mut pieces {
        rect.y = rect.y - top;
    }
    let size = Size {
        w: pieces.iter().map(|(_, rect)| rect.right()).fold(Mm::ZERO, Mm::max),
        h: pieces.iter().map(|(_, rect)| rect.bottom()).fold(Mm::ZERO, Mm::max),
    };
    let name = match first.alike {
        // A token stands for all of them.
        many if many > 1 && all.len() > 1 => format!("{} ({many})", capital(&first.label)),
        _ => capital(&first.label),
    };
    Some(Cell { name, pieces, size })
}

/// Lays cells out in rows, page by page, in their order: rows of about the same width, pages of about as many rows, and
/// all as large as their page has room for.
pub(super) fn lay(sizes: &[Size]) -> Vec<Vec<Laid>> {
    let wide = PAGE.w - AIR * 2.0;
    let high = PAGE.h - HEAD - AIR - FOOT;
    let tall = high / f64::from(u8::try_from(ROWS).unwrap_or(1)) - NAME - AIR * 0.5;
    let shown: Vec<Size> = sizes
        .iter()
        .map(|size| {
            let height = tall * (size.h.get() / TALL).sqrt().clamp(LEAST, 1.0);
            let scale = (height.get() / size.h.get()).min(wide.get() * 0.36 / size.w.get());
            Size { w: size.w * scale, h: size.h * scale }
        })
        .collect();
    let fewest = rows(&shown, wide).len();
    // The narrowest rows that are no more.
    let (mut least, mut most) = (Mm::ZERO, wide);
    for _ in 0..20 {
        let middle = (least + most) / 2.0;
        if rows(&shown, middle).len() > fewest { least = middle } else { most = middle }
    }
    let rows = rows(&shown, most);
    let pages = rows.len().div_ceil(ROWS).max(1);
    let mut rest = rows.as_slice();
    let mut laid = Vec::new();
    for page in 0..pages {
        let take = rest.len().div_ceil(pages - page);
        let (mine, others) = rest.split_at(take);
        rest = others;
        if !mine.is_empty() {
            laid.push(lay_page(mine, &shown, wide, high));
        }
    }
    laid
}

/// The rows of cells that keep within a width.
fn rows(shown: &[Size], wide: Mm) -> Vec<Vec<usize>> {
    let mut rows: Vec<(Mm, Vec<usize>)> = Vec::new();
    for (at, size) in shown.iter().enumerate() {
        let take = size.w.max(CELL) + AIR;
        match rows.last_mut() {
            Some((used, row)) if *used + take - AIR <= wide => {
                *used += take;
                row.push(at);
            }
            _ => rows.push((take, vec![at])),
        }
    }
    rows.into_iter().map(|(_, row)| row).collect()
}

fn lay_page(rows: &[Vec<usize>], shown: &[Size], wide: Mm, high: Mm) -> Vec<Laid> {
    let size =
        |at: &usize, scale: f64| shown.get(*at).map_or(Size::default(), |s| Size { w: s.w * scale, h: s.h * scale });
    let count = |n: usize| f64::from(u16::try_from(n).unwrap_or(u16::MAX));
    let cells =
        |row: &[usize], scale: f64| row.iter().map(|at| size(at, scale).w.max(CELL)).fold(Mm::ZERO, |a, b| a + b);
    let tallest = |row: &[usize], scale: f64| row.iter().map(|at| size(at, scale).h).fold(Mm::ZERO, Mm::max);
    let fits = |scale: f64| {
        let height = rows.iter().map(|row| tallest(row, scale) + NAME).fold(Mm::ZERO, |a, b| a + b);
        height + AIR * 0.6 * count(rows.len() - 1) <= high
            && rows.iter().all(|row| cells(row, scale) + AIR * count(row.len() - 1) <= wide)
    };
    let mut scale = GROWN;
    while scale > 1.0 && !fits(scale) {
        scale -= 0.02;
    }
    let heights: Vec<Mm> = rows.iter().map(|row| tallest(row, scale) + NAME).collect();
    let spare = high - heights.iter().fold(Mm::ZERO, |a, b| a + *b);
    let between = spare / count(rows.len() + 1);
    let mut y = HEAD + between;
    let mut page = Vec::new();
    for (row, height) in rows.iter().zip(&heights) {
        let spare = wide - cells(row, scale);
        let gap = (spare / count(row.len())).min(AIR * 3.0).max(AIR);
        let used = cells(row, scale) + gap * count(row.len() - 1);
        let mut x = (PAGE.w - used) / 2.0;
        for at in row {
            let Size { w, h } = size(at, scale);
            let cell = w.max(CELL);
            page.push((*at, Rect { x: x + (cell - w) / 2.0, y: y + *height - NAME - h, w, h }));
            x = x + cell + gap;
        }
        y = y + *height + between;
    }
    page
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

/// What a page of pieces says besides their names.
pub(super) struct Head<'a> {
    /// The kit's title.
    pub(super) title: &'a str,
    /// The theme's divider, if it has one.
    pub(super) divider: Option<&'a str>,
}

/// A page of pieces, with a head.
///
/// # Errors
/// When a piece cannot be set.
pub(super) fn page(
    laid: &[Laid],
    cells: &[Cell],
    shown: &[Shown],
    head: &Head<'_>,
    palette: &Palette,
    press: &Press,
) -> Hinted<Page> {
    let mut page = Page::new(head.title, palette);
    let ink = palette.get("ink");
    let rect = Rect { x: AIR, y: AIR * 0.7, w: PAGE.w - AIR * 2.0, h: Mm::new(11.0) };
    page.face.text(words(rect, Role::Display, head.title, 24.0, ink));
    if let Some(svg) = head.divider {
        let room = Rect {
            x: PAGE.w / 2.0 - Mm::new(32.0),
            y: rect.bottom() + Mm::new(0.6),
            w: Mm::new(64.0),
            h: Mm::new(5.0),
        };
        ornament(&mut page.face, svg, room, palette)?;
    }
    for (at, rect) in laid {
        let Some(cell) = cells.get(*at) else { continue };
        let scale = rect.w.get() / cell.size.w.get();
        for (piece, own) in cell.pieces.iter().rev() {
            let Some(piece) = shown.get(*piece) else { continue };
            let place =
                Rect { x: rect.x + own.x * scale, y: rect.y + own.y * scale, w: own.w * scale, h: own.h * scale };
            put(&mut page, piece, place, 0.0, palette, press)?;
        }
        // A name may lean out a little into the air at both sides.
        let wide = (rect.w + AIR).max(CELL + AIR * 0.8);
        let room = Rect {
            x: rect.x + (rect.w - wide) / 2.0,
            y: rect.bottom() + Mm::new(1.4),
            w: wide,
            h: NAME - Mm::new(1.0),
        };
        page.face.text(words(room, Role::Text, &cell.name, 10.5, ink).aligned(Align::Centre, Valign::Top));
    }
    let veiled = laid.iter().filter_map(|(at, _)| cells.get(*at)).flat_map(|cell| &cell.pieces);
    if veiled.filter_map(|(piece, _)| shown.get(*piece)).any(|piece| piece.veiled) {
        let room = Rect { x: AIR, y: PAGE.h - AIR - FOOT * 0.6, w: PAGE.w - AIR * 2.0, h: FOOT };
        page.face.text(words(room, Role::Text, SEALED, 10.0, mixed(ink, palette.get("soft"), 0.3)));
    }
    Ok(page)
}

/// Puts an ornament into the middle of a room, as large as fits.
pub(super) fn ornament(face: &mut Face, svg: &str, room: Rect, palette: &Palette) -> Hinted<()> {
    let svg = clean_svg(svg, palette)?;
    let size = Frame::read(&svg, palette)?.size;
    face.art(svg, within(room, size), "");
    Ok(())
}

/// The largest rectangle of a size's shape in the middle of a cell.
pub(super) fn within(cell: Rect, size: Size) -> Rect {
    let scale = (cell.w.get() / size.w.get()).min(cell.h.get() / size.h.get());
    let (w, h) = (size.w * scale, size.h * scale);
    Rect { x: cell.x + (cell.w - w) / 2.0, y: cell.y + (cell.h - h) / 2.0, w, h }
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
    let run = TextRun::new(rect, role, Rich::plain(typographic(text)), Pt::new(size), ink, Anchor::Kit);
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
