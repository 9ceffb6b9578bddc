//! Proof: what a reader of the paper finds on one side of a printed piece.
//!
//! A [`Printed`] is filled from the laid-out page (`print`): runs of text with place, size and colour, outlines of
//! all that is drawn with fill and stroke. It holds nothing of the [`Face`](super::Face) and nothing of the puzzle's
//! view, so that a view read back from it proves what is printed. Lengths are millimetres from the piece's top left.
//!
//! Not modelled: clip paths and masks of the art (what they hide counts as drawn), and pixels of raster pictures.

mod lattice;
mod looks;
mod trace;
mod words;

use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

pub use lattice::{Lattice, lanes, ruled};
pub use looks::{Look, Looks};
pub use trace::{Place, trace};
pub use words::{Block, Line, blocks, lines, squeezed};

use super::{Frame, Piece};

/// A point, in millimetres from the top left.
pub type Dot = (Mm, Mm);

/// One side of a piece, as it is printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Printed {
    /// The piece's id: which sheet of paper it is.
    pub piece: String,
    /// The part of the puzzle that the piece is.
    pub part: String,
    /// Whether it is the back.
    pub back: bool,
    /// True size.
    pub size: Size,
    /// Text, in drawing order.
    pub texts: Vec<PrintedText>,
    /// Outlines, in drawing order.
    pub shapes: Vec<PrintedShape>,
    /// The placed pictures to which the outlines belong ([`PrintedShape::art`]), in drawing order. The first is
    /// usually the theme's frame.
    pub arts: Vec<PrintedArt>,
}

/// A stretch of text in one style on one line.
#[derive(Clone, Debug, PartialEq)]
pub struct PrintedText {
    /// The characters.
    pub text: String,
    /// Where its baseline begins, from the left.
    pub x: Mm,
    /// Where its baseline begins, from the top.
    pub y: Mm,
    /// How long its baseline is.
    pub width: Mm,
    /// Degrees clockwise by which it is turned, above -180 to 180.
    pub turn: f64,
    /// Its size.
    pub size: Pt,
    /// The family that drew it.
    pub family: String,
    /// Whether it is bold.
    pub bold: bool,
    /// Whether it is slanted.
    pub italic: bool,
    /// Its colour, if it is a plain one.
    pub ink: Option<Colour>,
    /// The box about its ink.
    pub rect: Rect,
    /// Its glyphs in order: the characters that each draws, and the box about its ink; a blank's box has no height.
    pub glyphs: Vec<(String, Rect)>,
    /// Characters for which the family has no shape, so that its sign for a missing one stands there.
    pub lost: String,
    /// Its place in the drawing order of texts and shapes together.
    pub order: usize,
}

/// Something filled or stroked.
#[derive(Clone, Debug, PartialEq)]
pub struct PrintedShape {
    /// Its outline: curves are taken as eight straight lines each.
    pub contours: Vec<Contour>,
    /// The box about its outline, without the stroke's width.
    pub rect: Rect,
    /// What fills it: a gradient counts as the mean of its stops, what is half clear as it looks on white.
    pub fill: Option<Colour>,
    /// What strokes it: colour and width.
    pub stroke: Option<(Colour, Mm)>,
    /// Whether the stroke is dashed.
    pub dashed: bool,
    /// Which of [`Printed::arts`] it belongs to.
    pub art: usize,
    /// Its place in the drawing order of texts and shapes together.
    pub order: usize,
}

/// A connected line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Contour {
    /// Its points.
    pub points: Vec<Dot>,
    /// Whether the last is joined to the first.
    pub closed: bool,
}

/// A picture at its place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PrintedArt {
    /// The box in which it stands, empty margins and all.
    pub rect: Rect,
    /// Pixels across and down of the coarsest raster picture in it, with the width at which that is printed.
    pub pixels: Option<(u32, u32, Mm)>,
}

/// The part of [`Printed::told`].
pub const TOLD: &str = "preparation";
/// Distance of its lines.
const LINE: Mm = Mm::new(10.0);

/// The least contrast (WCAG 2.2) at which a letter is seen at all; what is comfortable is another check's business
/// (estimate; common practice, no source).
const SEEN: f64 = 1.5;

impl Printed {
    /// An empty side of `piece`, of this size.
    #[must_use]
    pub fn new(piece: &Piece, back: bool, size: Size) -> Self {
        Self { piece: piece.id.clone(), part: piece.part.clone(), back, size, ..Self::default() }
    }

    /// What the host guide tells the host to do for a puzzle, step by step, for what is made by hand and not printed:
    /// the sentences in the order in which the guide prints them, one on each line.
    #[must_use]
    pub fn told(steps: impl IntoIterator<Item = String>) -> Self {
        let mut told = Self { piece: TOLD.into(), part: TOLD.into(), size: Size::mm(150.0, 0.0), ..Self::default() };
        for (order, text) in steps.into_iter().enumerate() {
            let y = told.size.h + LINE;
            told.size.h = y + LINE;
            let rect = Rect { x: Mm::ZERO, y: y - LINE / 2.0, w: told.size.w, h: LINE / 2.0 };
            told.texts.push(PrintedText {
                text,
                x: Mm::ZERO,
                y,
                width: told.size.w,
                turn: 0.0,
                size: Pt::new(12.0),
                family: String::new(),
                bold: false,
                italic: false,
                ink: Some(Colour::BLACK),
                rect,
                glyphs: Vec::new(),
                lost: String::new(),
                order,
            });
        }
        told
    }

    /// A slot of the frame that the piece stands on, at the piece's printed scale.
    #[must_use]
    pub fn slot(&self, frame: &Frame, name: &str) -> Option<Rect> {
        let slot = frame.slot(name)?;
        let (across, down) = (self.size.w.get() / frame.size.w.get(), self.size.h.get() / frame.size.h.get());
        Some(Rect { x: slot.x * across, y: slot.y * down, w: slot.w * across, h: slot.h * down })
    }

    /// The texts whose middle lies in a rectangle, in drawing order.
    #[must_use]
    pub fn texts_in(&self, rect: Rect) -> Vec<&PrintedText> {
        self.texts.iter().filter(|text| within(rect, middle(text.rect))).collect()
    }

    /// The shapes whose box lies in a rectangle, in drawing order.
    #[must_use]
    pub fn shapes_in(&self, rect: Rect) -> Vec<&PrintedShape> {
        self.shapes.iter().filter(|shape| rect.holds(shape.rect)).collect()
    }

    /// The shapes of a placed picture, in drawing order.
    #[must_use]
    pub fn shapes_of(&self, art: usize) -> Vec<&PrintedShape> {
        self.shapes.iter().filter(|shape| shape.art == art).collect()
    }

    /// The placed pictures whose middle lies in a rectangle and that are smaller than it: number and place.
    #[must_use]
    pub fn arts_in(&self, rect: Rect) -> Vec<(usize, Rect)> {
        let smaller = |art: Rect| art.w.get() * art.h.get() < 0.99 * rect.w.get() * rect.h.get();
        let placed = self.arts.iter().map(|art| art.rect).enumerate();
        placed.filter(|(_, art)| within(rect, middle(*art)) && smaller(*art)).collect()
    }

    /// The blocks of text in a rectangle, from the top down.
    #[must_use]
    pub fn blocks_in(&self, rect: Rect) -> Vec<Block> {
        blocks(&self.texts_in(rect))
    }

    /// All words of the piece, block by block from the top down, with single spaces.
    #[must_use]
    pub fn words(&self) -> String {
        let all: Vec<&PrintedText> = self.texts.iter().collect();
        let blocks: Vec<String> = blocks(&all).iter().map(Block::text).collect();
        blocks.join(" ")
    }

    /// Whether a block of the piece says this sentence, wherever its lines break.
    #[must_use]
    pub fn says(&self, sentence: &str) -> bool {
        let all: Vec<&PrintedText> = self.texts.iter().collect();
        let wanted = squeezed(sentence);
        blocks(&all).iter().any(|block| block.text().contains(&wanted))
    }

    /// The colour under a point as far as it was drawn before `order`: the topmost fill, else white paper.
    #[must_use]
    pub fn ground(&self, at: Dot, order: usize) -> Colour {
        let under = |shape: &&PrintedShape| shape.order < order && shape.fill.is_some() && shape.covers(at);
        let top = self.shapes.iter().filter(under).max_by_key(|shape| shape.order);
        top.and_then(|shape| shape.fill).unwrap_or(Colour::WHITE)
    }

    /// The same side without text that nobody sees: in the colour of its ground, or under something filled.
    #[must_use]
    pub fn seen(&self) -> Self {
        let seen = |text: &PrintedText| {
            let at = middle(text.rect);
            let ink = text.ink.unwrap_or(Colour::BLACK);
            let over = self.shapes.iter().any(|shape| {
                shape.order > text.order && shape.fill.is_some() && shape.rect.meets(text.rect) && shape.covers(at)
            });
            !over && ink.contrast(self.ground(at, text.order)) >= SEEN
        };
        Self { texts: self.texts.iter().filter(|text| seen(text)).cloned().collect(), ..self.clone() }
    }

    /// The same side from a printer that has no colours.
    #[must_use]
    pub fn grey(&self) -> Self {
        let mut grey = self.clone();
        for text in &mut grey.texts {
            text.ink = text.ink.map(Colour::grey);
        }
        for shape in &mut grey.shapes {
            shape.fill = shape.fill.map(Colour::grey);
            shape.stroke = shape.stroke.map(|(colour, width)| (colour.grey(), width));
        }
        grey
    }

    /// The same side printed at another scale, such as 0.94 by a printer that fits pages into its margins.
    #[must_use]
    pub fn scaled(&self, by: f64) -> Self {
        let mut scaled = self.clone();
        scaled.size = Size { w: self.size.w * by, h: self.size.h * by };
        for text in &mut scaled.texts {
            (text.x, text.y, text.width) = (text.x * by, text.y * by, text.width * by);
            text.size = text.size * by;
            text.rect = larger(text.rect, by);
            text.glyphs.iter_mut().for_each(|(_, rect)| *rect = larger(*rect, by));
        }
        for shape in &mut scaled.shapes {
            shape.rect = larger(shape.rect, by);
            shape.stroke = shape.stroke.map(|(colour, width)| (colour, width * by));
            for point in shape.contours.iter_mut().flat_map(|contour| &mut contour.points) {
                *point = (point.0 * by, point.1 * by);
            }
        }
        for art in &mut scaled.arts {
            art.rect = larger(art.rect, by);
            art.pixels = art.pixels.map(|(w, h, wide)| (w, h, wide * by));
        }
        scaled
    }
}

impl PrintedShape {
    /// Whether a point lies inside the outline (even-odd).
    #[must_use]
    pub fn covers(&self, at: Dot) -> bool {
        if !within(self.rect, at) {
            return false;
        }
        let (x, y) = (at.0.get(), at.1.get());
        let mut inside = false;
        for contour in &self.contours {
            let next = contour.points.iter().cycle().skip(1);
            for (a, b) in contour.points.iter().zip(next) {
                let (ax, ay, bx, by) = (a.0.get(), a.1.get(), b.0.get(), b.1.get());
                if (ay > y) != (by > y) && x < (bx - ax) * (y - ay) / (by - ay) + ax {
                    inside = !inside;
                }
            }
        }
        inside
    }

    /// The shape as a single straight line, if it is one.
    #[must_use]
    pub fn segment(&self) -> Option<(Dot, Dot)> {
        match self.contours.as_slice() {
            [Contour { points, closed: false }] => match points.as_slice() {
                [from, to] => Some((*from, *to)),
                _ => None,
            },
            _ => None,
        }
    }
}

/// The text or shape nearest to a point, by the middle of its box.
#[must_use]
pub fn nearest<'a, T>(to: Dot, all: impl IntoIterator<Item = &'a T>, rect: impl Fn(&T) -> Rect) -> Option<&'a T> {
    all.into_iter().min_by(|a, b| apart(to, middle(rect(a))).get().total_cmp(&apart(to, middle(rect(b))).get()))
}

/// The middle of a rectangle.
#[must_use]
pub fn middle(rect: Rect) -> Dot {
    (rect.x + rect.w / 2.0, rect.y + rect.h / 2.0)
}

/// How far two points are apart.
#[must_use]
pub fn apart(a: Dot, b: Dot) -> Mm {
    Mm::new((a.0 - b.0).get().hypot((a.1 - b.1).get()))
}

/// Whether a point lies in a rectangle, its edges counted.
#[must_use]
pub fn within(rect: Rect, at: Dot) -> bool {
    at.0 >= rect.x && at.0 <= rect.right() && at.1 >= rect.y && at.1 <= rect.bottom()
}

/// The box about points; none about none.
#[must_use]
pub fn box_about(points: impl IntoIterator<Item = Dot>) -> Option<Rect> {
    let mut points = points.into_iter();
    let (x, y) = points.next()?;
    let (mut x0, mut y0, mut x1, mut y1) = (x, y, x, y);
    for (x, y) in points {
        (x0, y0, x1, y1) = (x0.min(x), y0.min(y), x1.max(x), y1.max(y));
    }
    Some(Rect { x: x0, y: y0, w: x1 - x0, h: y1 - y0 })
}

fn larger(rect: Rect, by: f64) -> Rect {
    Rect { x: rect.x * by, y: rect.y * by, w: rect.w * by, h: rect.h * by }
}
