//! The clocks, a card each, and the card with their order.

use super::{CLOCKS, Clock, ORDER_CARD, View, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::{Paragraph, Rich, Span, capital, parse};
use crate::units::{Mm, Pt, Rect, Size};

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = Vec::new();
    for (index, clock) in view.clocks.iter().enumerate() {
        let mut piece = cx.piece(CLOCKS, &clock.name, face(view, clock, cx)?);
        piece.id = format!("{}-clock-{}", cx.puzzle, index + 1);
        pieces.push(piece);
    }
    if view.has_card() {
        pieces.push(order_card(view, cx)?);
    }
    Ok(pieces)
}

/// A point on a circle, so many twelfths of a turn from the top.
fn at(middle: (Mm, Mm), twelfths: f64, far: Mm) -> (Mm, Mm) {
    let (sin, cos) = (twelfths * 30.0).to_radians().sin_cos();
    (middle.0 + far * sin, middle.1 - far * cos)
}

fn face(view: &View, clock: &Clock, cx: &Dressing<'_>) -> Hinted<Face> {
    let frame = cx.frame("square")?;
    let mut face = Face::on(&frame, format!("A clock, named {}", clock.name));
    cx.title(&mut face, &frame, "square", &capital(&clock.name))?;
    let body = cx.slot(&frame, "square", "body")?;
    let side = body.w.min(body.h);
    let dial = Rect { x: body.x + (body.w - side) / 2.0, y: body.y + (body.h - side) / 2.0, w: side, h: side };
    let (radius, middle) = (side / 2.0, (side / 2.0, side / 2.0));
    let ink = cx.colour("ink");
    let mut drawing = Drawing::new(Size { w: side, h: side });
    drawing.circle(middle.0, middle.1, radius - mm(0.4), Pen::line(ink, mm(0.5)));
    let figures = radius - mm(4.4);
    for hour in 1..=12_u8 {
        let turn = f64::from(hour);
        let tick = Pen::line(cx.colour("line"), mm(0.4));
        drawing.line(at(middle, turn, radius - mm(0.6)), at(middle, turn, radius - mm(2.0)), tick);
        let (x, y) = at(middle, turn, figures);
        let half = mm(2.4);
        let rect = Rect { x: dial.x + x - half, y: dial.y + y - half, w: half * 2.0, h: half * 2.0 };
        let text = Rich::plain(hour.to_string());
        face.text(TextRun::new(rect, Role::Code, text, Pt::new(10.0), ink, cx.at(PuzzleField::Setup)));
    }
    let long = figures - mm(3.0);
    let hands = [(0.0, long, mm(0.7)), (f64::from(clock.hour), long * view.hour_hand, mm(1.5))];
    for (turn, length, width) in hands {
        drawing.line(middle, at(middle, turn, length), Pen::line(ink, width));
    }
    drawing.circle(middle.0, middle.1, mm(1.3), Pen::fill(ink));
    face.art(drawing.svg(), dial, "");
    cx.draw_mark(&mut face, &frame)?;
    Ok(face)
}

fn order_card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let paragraph =
        |text: String, strong| Paragraph { spans: vec![Span { text, strong, emph: false, end_of_line: false }] };
    let mut body = parse(&view.text);
    if !view.order.is_empty() {
        body.paragraphs.push(paragraph(view.order.join(", "), true));
    }
    let rule = texts::rule(view);
    if !rule.is_empty() {
        body.paragraphs.push(paragraph(rule.clone(), false));
    }
    let title = cx.name("order-title", "The round");
    let alt = format!("A card, {title}. {rule}");
    Ok(cx.piece(ORDER_CARD, "", cx.card("portrait", title, &body, &alt)?))
}
