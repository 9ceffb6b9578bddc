//! The board, the rule card and the host's template, read back from paper.

use super::{FIELD, Kind, Rule, Shape, View, shape};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::proof::{Look, Looks, Printed, PrintedShape, apart, lanes, middle, nearest, squeezed};
use crate::mechanics::{Dressing, front};
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// Breadth at which the outlines are drawn to know them by.
const KNOWN: Mm = Mm::new(20.0);
/// A stroke from this width on is thick, in millimetres on the field.
const THICK: f64 = 0.5;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let book = Book::new()?;
    let board = front(printed, "board")?;
    let mut shapes = board_shapes(board, cx, &book)?;
    pulls(front(printed, "template")?, board, cx, &mut shapes)?;
    Ok(View { shapes, rule: rule(front(printed, "card")?, cx, &book)? })
}

/// The outlines by their look.
struct Book {
    looks: Looks,
    /// Breadth of the drawn outline, as a part of the breadth that it is given.
    wide: Vec<(Kind, f64)>,
}

impl Book {
    fn new() -> Hinted<Self> {
        let (mut looks, mut wide) = (Looks::new(), Vec::new());
        let half = KNOWN / 2.0;
        for kind in Kind::ALL {
            let size = Size { w: KNOWN, h: KNOWN };
            let mut drawing = Drawing::new(size);
            shape::draw(&mut drawing, kind, (half, half), KNOWN, Pen::fill(Colour::BLACK));
            let look = Look::of_svg(&drawing.svg(), size)?;
            wide.push((kind, look.size().w.get() / KNOWN.get()));
            looks.add(kind.plain(), look.bare());
        }
        Ok(Self { looks, wide })
    }

    fn kind(&self, shape: &PrintedShape) -> Option<(Kind, f64)> {
        let look = Look::of(&[shape])?.bare();
        let name = self.looks.like(&look).first().copied()?;
        self.wide.iter().copied().find(|(kind, _)| kind.plain() == name)
    }
}

/// The field on the paper: its middle, and its scale.
fn field(board: &Printed, cx: &Dressing<'_>) -> Hinted<(Mm, Mm, f64)> {
    let slot = cx.slot_on(board, "board", "field")?;
    let scale = (slot.w.get() / FIELD.w.get()).min(slot.h.get() / FIELD.h.get());
    let (x, y) = middle(slot);
    Ok((x, y, scale))
}

fn board_shapes(board: &Printed, cx: &Dressing<'_>, book: &Book) -> Hinted<Vec<Shape>> {
    let (x, y, scale) = field(board, cx)?;
    let slot = cx.slot_on(board, "board", "field")?;
    let mut taken: Vec<&PrintedShape> = Vec::new();
    let mut shapes = Vec::new();
    for text in board.texts_in(slot) {
        let under = board.shapes.iter().filter(|shape| shape.order < text.order && shape.covers(middle(text.rect)));
        let owner = under.max_by_key(|shape| shape.order);
        let known = owner.and_then(|shape| Some((shape, book.kind(shape)?)));
        let Some((owner, (kind, wide))) = known else {
            return Err(Trouble::new(format!("{} stands on no shape of the board", text.text)));
        };
        if taken.iter().any(|shape| shape.order == owner.order) {
            return Err(Trouble::new(format!("a shape of the board carries {} and another number", text.text)));
        }
        taken.push(owner);
        let at = spot(owner, kind);
        shapes.push(Shape {
            x: (at.0 - x) / scale,
            y: (at.1 - y) / scale,
            across: owner.rect.w / (scale * wide),
            kind,
            number: text.text.trim().to_owned(),
            pulls: false,
        });
    }
    // The drawing that holds the numbered shapes holds no others.
    let art = taken.first().map(|shape| shape.art);
    let bare = board.shapes.iter().filter(|shape| Some(shape.art) == art && book.kind(shape).is_some());
    if bare.count() != taken.len() {
        return Err(Trouble::new("a shape of the board carries no number"));
    }
    Ok(shapes)
}

/// The middle about which a shape was drawn; a star's and a triangle's box lies off it.
fn spot(shape: &PrintedShape, kind: Kind) -> (Mm, Mm) {
    let (x, y) = middle(shape.rect);
    let half = shape.rect.h / 2.0;
    let off = match kind {
        // Tops at -1, feet at 0.74, 0.809 and 0.98 of half the breadth.
        Kind::Triangle => 0.13 / 0.87,
        Kind::Star => 0.0955 / 0.9045,
        Kind::Drop => 0.01 / 0.99,
        _ => 0.0,
    };
    (x, y + half * off)
}

/// Marks the shapes behind which the template puts washers: thick rings on the board seen from behind.
fn pulls(template: &Printed, board: &Printed, cx: &Dressing<'_>, shapes: &mut [Shape]) -> Hinted<()> {
    let (x, y, scale) = field(board, cx)?;
    for ring in template.shapes.iter().filter(|shape| !shape.dashed) {
        if ring.stroke.is_none_or(|(_, width)| width.get() < THICK * scale) {
            continue;
        }
        let at = middle(ring.rect);
        // Seen from behind, left is right.
        let on_field = ((board.size.w - at.0 - x) / scale, (at.1 - y) / scale);
        let found = shapes.iter_mut().find(|shape| apart((shape.x, shape.y), on_field) < Mm::new(1.0));
        let Some(shape) = found else {
            return Err(Trouble::new("the template has a ring where the board has no shape"));
        };
        let number = nearest(at, &template.texts_in(ring.rect), |text| text.rect).map(|text| text.text.trim());
        if number != Some(shape.number.as_str()) {
            return Err(Trouble::new(format!(
                "the template writes {} where the board has {}",
                number.unwrap_or("nothing"),
                shape.number
            )));
        }
        shape.pulls = true;
    }
    Ok(())
}

/// What the card says of the order, and the outlines that it draws.
fn rule(card: &Printed, cx: &Dressing<'_>, book: &Book) -> Hinted<Option<Rule>> {
    let body = cx.slot_on(card, "landscape", "body")?;
    let mut drawn: Vec<(Rect, Kind)> =
        card.shapes_in(body).into_iter().filter_map(|shape| Some((shape.rect, book.kind(shape)?.0))).collect();
    let words = card.words();
    if words.contains("in the order of the shapes below, from left to right") {
        let tall = drawn.first().map_or(Mm::ZERO, |(rect, _)| rect.h);
        let rows = lanes(drawn.iter().map(|(rect, _)| middle(*rect).1), tall / 2.0);
        if rows.len() > 1 && !words.contains("the top row first") {
            return Err(Trouble::new("the card does not say which row of shapes comes first"));
        }
        let row = |rect: &Rect| rows.iter().position(|y| (middle(*rect).1 - *y).get().abs() <= tall.get() / 2.0);
        drawn.sort_by(|a, b| row(&a.0).cmp(&row(&b.0)).then(a.0.x.get().total_cmp(&b.0.x.get())));
        for (rect, kind) in &drawn {
            let below = card.texts.iter().filter(|text| text.rect.y > middle(*rect).1);
            let label = nearest((middle(*rect).0, rect.bottom()), below, |text| text.rect);
            let label = label.map(|text| squeezed(&text.text)).unwrap_or_default();
            if !squeezed(kind.name(cx)).contains(&label) {
                return Err(Trouble::new(format!("the card calls a {} \"{label}\"", kind.plain())));
            }
        }
        return Ok(Some(Rule::Kinds(drawn.into_iter().map(|(_, kind)| kind).collect())));
    }
    if words.contains("from the top of the board to the bottom") {
        return Ok(Some(Rule::Rows));
    }
    Ok(words.contains("from the smallest shape to the largest").then_some(Rule::Sizes))
}
