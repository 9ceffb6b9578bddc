//! The square of letters and the card with the message.

use super::{MESSAGE, Message, SQUARE, View, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::{Rich, parse};
use crate::units::{Pt, Rect, Size};

#[expect(clippy::cast_precision_loss, reason = "six rows and columns")]
pub(super) fn square(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("portrait")?;
    let mut face = Face::on(&frame, "A square of letters; each row and each column has a digit");
    cx.title(&mut face, &frame, "portrait", cx.name("square-title", "Rows and columns"))?;
    let body = cx.slot(&frame, "portrait", "body")?;
    let side = body.w.min(body.h) / (view.rows.len().max(view.columns.len()) + 1) as f64;
    let (left, top) = (body.x + (body.w - side * 6.0) / 2.0, body.y + (body.h - side * 6.0) / 2.0);
    let mut drawing = Drawing::new(Size { w: side * 6.0, h: side * 6.0 });
    let pen = Pen::line(cx.colour("line"), mm(0.25));
    let mut set = |face: &mut Face, column: usize, row: usize, text: String, heading: bool| {
        let at = Rect { x: side * column as f64, y: side * row as f64, w: side, h: side };
        let fill = if heading { Pen { fill: Some(cx.colour("soft")), ..pen } } else { pen };
        drawing.rect(at, mm(0.0), fill);
        let mut rich = Rich::plain(text);
        rich.paragraphs.iter_mut().flat_map(|p| p.spans.iter_mut()).for_each(|span| span.strong = heading);
        let rect = at.moved(left, top).inset(mm(0.8));
        let run = TextRun::new(rect, Role::Code, rich, Pt::new(17.0), cx.colour("ink"), cx.at(PuzzleField::Setup));
        face.text(run);
    };
    // Fills lie below the text that is set on them: the drawing goes in before the runs do.
    let mut texts = Face::new(face.size, "");
    for (index, digit) in view.columns.iter().enumerate() {
        set(&mut texts, index + 1, 0, digit.to_string(), true);
    }
    for (row, (digit, cells)) in view.rows.iter().zip(&view.cells).enumerate() {
        set(&mut texts, 0, row + 1, digit.to_string(), true);
        for (column, cell) in cells.iter().enumerate() {
            let letters: Vec<String> = cell.chars().map(String::from).collect();
            set(&mut texts, column + 1, row + 1, letters.join("/"), false);
        }
    }
    let at = Rect { x: left, y: top, w: side * 6.0, h: side * 6.0 };
    face.art(drawing.svg(), at, "");
    face.layers.extend(texts.layers);
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(SQUARE, "", face))
}

pub(super) fn message(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("landscape")?;
    let (large, alt, rule) = match &view.message {
        Message::Word(word) => (word.clone(), "A card with a word in large letters", texts::WORD_RULE),
        Message::Pairs(pairs) => (pairs.join("  "), "A card with pairs of digits", texts::PAIR_RULE),
    };
    let mut face = Face::on(&frame, alt);
    cx.title(&mut face, &frame, "landscape", cx.name("message-title", "Row and column"))?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let head = Rect { h: body.h * 0.26, ..body };
    face.text(TextRun::new(head, Role::Text, parse(&view.text), Pt::new(14.0), ink, from.clone()));
    let middle = Rect { y: body.y + body.h * 0.28, h: body.h * 0.44, ..body };
    let run = TextRun::new(middle, Role::Code, Rich::plain(large), Pt::new(32.0), ink, from.clone());
    face.text(run.at_least(Pt::new(12.0)));
    let foot = Rect { y: body.y + body.h * 0.74, h: body.h * 0.26, ..body };
    let rule = if view.rule { rule } else { "" };
    face.text(TextRun::new(foot, Role::Text, Rich::plain(rule), Pt::new(12.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(MESSAGE, "", face))
}
