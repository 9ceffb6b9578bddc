use typst::layout::{Abs, Frame, FrameItem, Point, Transform};
use typst::text::{FontStyle, FontWeight, Glyph, TextItem};
use typst::visualize::{Color, ImageKind, Paint};
use typst_layout::PagedDocument;

use super::{MissingGlyph, SetDoc, SetFace};
use crate::diag::Anchor;
use crate::face::Piece;
use crate::face::proof::{Dot, Place, Printed, PrintedText, box_about, trace};
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect};

impl SetFace {
    /// The text as it was laid out, in drawing order.
    #[must_use]
    pub fn words(&self) -> Vec<PrintedText> {
        words(&self.document, 0)
    }

    /// The face as it was laid out: text and outlines with place, size and colour. `piece` and `back` say which side
    /// of which paper it is; nothing else is taken from the piece.
    #[must_use]
    pub fn printed(&self, piece: &Piece, back: bool) -> Printed {
        let size = super::set::size(&self.document, 0).unwrap_or_default();
        read(&self.document, 0, true, Printed::new(piece, back, size))
    }
}

impl SetDoc {
    /// The text of a page, counted from 0, as it was laid out, in drawing order.
    #[must_use]
    pub fn words(&self, page: usize) -> Vec<PrintedText> {
        words(&self.document, page)
    }
}

/// Characters on the pages that no family of the lettering could draw.
pub(super) fn lost(document: &PagedDocument) -> Vec<MissingGlyph> {
    let mut missing = Vec::new();
    for page in 0..document.pages().len() {
        for word in words(document, page) {
            missing.extend(word.lost.chars().map(|text| MissingGlyph {
                family: word.family.clone(),
                text,
                from: Anchor::Kit,
                words: word.text.clone(),
                piece: String::new(),
            }));
        }
    }
    missing.sort();
    missing.dedup();
    missing
}

/// Millimetres at the foot of the guide's pages where the same stands on each, in large print too.
const FOOT: f64 = 33.0;

/// How far down the emptier of the last two pages there is text, as a part of its height above the foot: the words may end
/// on the one before a picture that has the last for itself.
pub(super) fn last_pages_filled(document: &PagedDocument) -> f64 {
    let pages = document.pages().len();
    (pages.saturating_sub(2)..pages).map(|page| filled(document, page)).fold(1.0, f64::min)
}

fn filled(document: &PagedDocument, page: usize) -> f64 {
    let Some(size) = super::set::size(document, page) else { return 0.0 };
    let high = size.h.get() - FOOT;
    let above = words(document, page).into_iter().map(|text| text.rect.bottom().get()).filter(|bottom| *bottom <= high);
    above.fold(0.0, f64::max) / high.max(1.0)
}

fn words(document: &PagedDocument, page: usize) -> Vec<PrintedText> {
    read(document, page, false, Printed::default()).texts
}

/// Reads a page; without `art`, only its text.
fn read(document: &PagedDocument, page: usize, art: bool, printed: Printed) -> Printed {
    let mut reader = Reader { printed, art, order: 0 };
    if let Some(page) = document.pages().get(page) {
        reader.walk(&page.frame, Transform::identity());
    }
    reader.printed
}

struct Reader {
    printed: Printed,
    art: bool,
    order: usize,
}

impl Reader {
    fn walk(&mut self, frame: &Frame, transform: Transform) {
        for (at, item) in frame.items() {
            match item {
                FrameItem::Group(group) => {
                    let inner = transform.pre_concat(Transform::translate(at.x, at.y)).pre_concat(group.transform);
                    self.walk(&group.frame, inner);
                }
                FrameItem::Text(text) => {
                    self.printed.texts.push(set_text(text, *at, transform, self.order));
                    self.order += 1;
                }
                FrameItem::Image(image, size, _) if self.art => {
                    if let ImageKind::Svg(svg) = image.kind() {
                        let place = place(transform, *at, (size.x / svg.width(), size.y / svg.height()));
                        let (art, shapes) = trace(svg.tree(), place, self.printed.arts.len(), self.order);
                        self.order += shapes.len();
                        self.printed.arts.push(art);
                        self.printed.shapes.extend(shapes);
                    }
                }
                _ => {}
            }
        }
    }
}

/// The map from a picture's units, each `unit` wide and high, to millimetres on the page.
fn place(transform: Transform, at: Point, unit: (Abs, Abs)) -> Place {
    let mm = |abs: Abs| Pt::new(abs.to_pt()).to_mm().get();
    let origin = at.transform(transform);
    let (w, h) = (mm(unit.0), mm(unit.1));
    Place {
        x: (transform.sx.get() * w, transform.ky.get() * w),
        y: (transform.kx.get() * h, transform.sy.get() * h),
        origin: (mm(origin.x), mm(origin.y)),
    }
}

fn set_text(text: &TextItem, at: Point, transform: Transform, order: usize) -> PrintedText {
    let dot = |x: Abs, y: Abs| -> Dot {
        let point = Point::new(at.x + x, at.y + y).transform(transform);
        (Pt::new(point.x.to_pt()).to_mm(), Pt::new(point.y.to_pt()).to_mm())
    };
    let (start, end) = (dot(Abs::zero(), Abs::zero()), dot(text.width(), Abs::zero()));
    let (dx, dy) = ((end.0 - start.0).get(), (end.1 - start.1).get());
    let mut pen = Abs::zero();
    let mut glyphs = Vec::with_capacity(text.glyphs.len());
    for glyph in &text.glyphs {
        let drawn = text.text.get(glyph.range()).unwrap_or_default().to_owned();
        glyphs.push((drawn, ink_box(text, glyph, pen, &dot)));
        pen += glyph.x_advance.at(text.size);
    }
    let corners = |rect: &Rect| [(rect.x, rect.y), (rect.right(), rect.bottom())];
    let inked = glyphs.iter().filter(|(_, rect)| rect.h > Mm::ZERO).flat_map(|(_, rect)| corners(rect));
    let info = text.font.font().info();
    PrintedText {
        text: text.text.to_string(),
        x: start.0,
        y: start.1,
        width: Mm::new(dx.hypot(dy)),
        turn: if dx == 0.0 && dy == 0.0 { 0.0 } else { dy.atan2(dx).to_degrees() },
        size: Pt::new(text.size.to_pt()),
        family: info.family.clone(),
        bold: info.variant.weight >= FontWeight::SEMIBOLD,
        italic: info.variant.style != FontStyle::Normal,
        ink: match &text.fill {
            Paint::Solid(colour) => Some(plain(colour)),
            _ => None,
        },
        rect: box_about(inked).or_else(|| box_about([start, end])).unwrap_or_default(),
        lost: text
            .glyphs
            .iter()
            .filter(|glyph| glyph.id == 0)
            .filter_map(|glyph| text.text.get(glyph.range()))
            .collect(),
        glyphs,
        order,
    }
}

/// The box about a glyph's ink on the page; for a blank, its stretch of the baseline.
fn ink_box(text: &TextItem, glyph: &Glyph, pen: Abs, dot: &impl Fn(Abs, Abs) -> Dot) -> Rect {
    let face = text.font.ttf();
    // The id's type has no name here: any glyph's id is taken and given this one's number.
    let bounds = text.text.chars().chain([' ', 'a']).find_map(|c| face.glyph_index(c)).and_then(|mut id| {
        id.0 = glyph.id;
        face.glyph_bounding_box(id)
    });
    let em = |units: i16| text.font.to_em(units).at(text.size);
    let (left, up) = (pen + glyph.x_offset.at(text.size), glyph.y_offset.at(text.size));
    let Some(b) = bounds else {
        return box_about([dot(left, Abs::zero()), dot(left + glyph.x_advance.at(text.size), Abs::zero())])
            .unwrap_or_default();
    };
    let (x0, x1, y0, y1) = (left + em(b.x_min), left + em(b.x_max), -(up + em(b.y_max)), -(up + em(b.y_min)));
    box_about([dot(x0, y0), dot(x1, y0), dot(x1, y1), dot(x0, y1)]).unwrap_or_default()
}

fn plain(colour: &Color) -> Colour {
    let [r, g, b, _] = colour.to_vec4_u8();
    Colour { r, g, b }
}
