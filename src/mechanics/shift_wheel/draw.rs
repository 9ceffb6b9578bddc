//! The two discs and the card with the message.

use super::{MESSAGE, View, WHEEL, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Outline, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::{Rich, parse};
use crate::units::{Mm, Pt, Rect, Size};

/// Diameter of the larger disc: 30 symbols stand 11 mm apart.
const OUTER: Mm = Mm::new(120.0);
/// Diameter of the smaller disc; it leaves the larger one's ring free.
const INNER: Mm = Mm::new(92.0);
/// Height of a ring.
const RING: Mm = Mm::new(12.0);
/// Diameter of the hole for the fastener (that of usual fasteners; common practice, no source).
const HOLE: Mm = Mm::new(4.0);

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    Ok(vec![disc(view, cx, false)?, disc(view, cx, true)?, message(view, cx)?])
}

#[expect(clippy::cast_precision_loss, reason = "a ring has at most thirty symbols")]
fn disc(view: &View, cx: &Dressing<'_>, inner: bool) -> Hinted<Piece> {
    let (diameter, name) = if inner { (INNER, "inner") } else { (OUTER, "outer") };
    let size = Size { w: diameter, h: diameter };
    let (radius, ink) = (diameter / 2.0, cx.colour("ink"));
    let mut face = Face::new(size, format!("The {name} disc of a wheel, with a ring of letters or digits"));
    face.outline = Outline::Round;
    let mut drawing = Drawing::new(size);
    let line = Pen::line(cx.colour("line"), mm(0.3));
    drawing.circle(radius, radius, radius - mm(0.3), line);
    drawing.circle(radius, radius, radius - RING, line);
    drawing.circle(radius, radius, HOLE / 2.0, line);
    let at = |turns: f64, far: Mm| {
        let (sin, cos) = (turns * std::f64::consts::TAU).sin_cos();
        (radius + far * sin, radius - far * cos)
    };
    let count = view.ring.len().max(1) as f64;
    let mut runs = Vec::new();
    for (index, symbol) in view.ring.iter().enumerate() {
        let turns = index as f64 / count;
        let edge = turns + 0.5 / count;
        drawing.line(at(edge, radius - mm(0.4)), at(edge, radius - RING), line);
        // The inner disc keeps its rim for the start mark.
        let (x, y) = at(turns, radius - RING * if inner { 0.58 } else { 0.5 });
        let half = mm(3.6);
        let rect = Rect { x: x - half, y: y - half, w: half * 2.0, h: half * 2.0 };
        let text = Rich::plain(*symbol);
        let run = TextRun::new(rect, Role::Code, text, Pt::new(16.0), ink, cx.at(PuzzleField::Setup));
        runs.push(run.at_least(Pt::new(11.0)).turned(turns * 360.0));
    }
    if inner {
        let mark = [at(0.0, radius - mm(0.6)), at(-0.011, radius - mm(4.0)), at(0.011, radius - mm(4.0))];
        drawing.polygon(&mark, Pen::fill(ink));
    }
    face.art(drawing.svg(), Rect::of(size), if inner { "start mark at the first of the ring" } else { "" });
    if inner && !cx.mark.is_empty() {
        let side = mm(12.0);
        let under = Rect { x: radius - side / 2.0, y: radius + mm(9.0), w: side, h: side };
        face.art(cx.symbol(cx.mark)?, under, format!("mark: {}", cx.mark));
    }
    runs.into_iter().for_each(|run| face.text(run));
    let mut piece = cx.piece(WHEEL, &format!("{name} disc"), face);
    piece.id = format!("{}-{name}-disc", cx.puzzle);
    piece.measured = true;
    Ok(piece)
}

fn message(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("landscape")?;
    let mut face = Face::on(&frame, "A card with a message in large letters or digits");
    cx.title(&mut face, &frame, "landscape", cx.name("message-title", "Turn the wheel"))?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let head = Rect { h: body.h * 0.24, ..body };
    face.text(TextRun::new(head, Role::Text, parse(&view.text), Pt::new(14.0), ink, from.clone()));
    let middle = Rect { y: body.y + body.h * 0.26, h: body.h * 0.34, ..body };
    let spaced: Vec<String> = view.message.iter().map(char::to_string).collect();
    let run = TextRun::new(middle, Role::Code, Rich::plain(spaced.join(" ")), Pt::new(30.0), ink, from.clone());
    face.text(run.at_least(Pt::new(12.0)));
    let foot = Rect { y: body.y + body.h * 0.62, h: body.h * 0.38, ..body };
    face.text(TextRun::new(foot, Role::Text, Rich::plain(texts::rule(view)), Pt::new(12.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(MESSAGE, "", face))
}
