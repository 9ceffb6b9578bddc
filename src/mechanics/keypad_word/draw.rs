//! The keypad and the card with the word.

use super::{KEYPAD, View, WORD, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::{Rich, parse};
use crate::units::{Pt, Rect, Size};

/// Columns of the pad; the last key stands alone in the middle of the last row.
const COLUMNS: usize = 3;

#[expect(clippy::cast_precision_loss, reason = "ten keys")]
pub(super) fn keypad(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("portrait")?;
    let mut face = Face::on(&frame, "A keypad with digits, and letters below most of them");
    cx.title(&mut face, &frame, "portrait", cx.name("keypad-title", "Keypad"))?;
    let body = cx.slot(&frame, "portrait", "body")?;
    let rows = view.keys.len().div_ceil(COLUMNS);
    let (w, h) = (body.w / COLUMNS as f64, (body.h / rows.max(1) as f64).min(mm(17.0)));
    let mut drawing = Drawing::new(Size { w: body.w, h: body.h });
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    for (index, key) in view.keys.iter().enumerate() {
        let alone = index / COLUMNS + 1 == rows && view.keys.len() % COLUMNS == 1;
        let column = if alone { 1 } else { index % COLUMNS };
        let cell = Rect { x: w * column as f64, y: h * (index / COLUMNS) as f64, w, h }.inset(mm(1.0));
        drawing.rect(cell, mm(2.0), Pen::line(cx.colour("line"), mm(0.35)));
        let cell = cell.moved(body.x, body.y).inset(mm(0.6));
        let digit = Rect { h: cell.h * 0.56, ..cell };
        let run = TextRun::new(digit, Role::Code, Rich::plain(key.digit), Pt::new(20.0), ink, from.clone());
        face.text(run.at_least(Pt::new(12.0)));
        let below = Rect { y: cell.y + cell.h * 0.56, h: cell.h * 0.44, ..cell };
        let text = Rich::plain(key.letters.as_str());
        face.text(TextRun::new(below, Role::Code, text, Pt::new(12.0), ink, from.clone()));
    }
    face.art(drawing.svg(), body, "");
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(KEYPAD, "", face))
}

#[expect(clippy::cast_precision_loss, reason = "a handful of words")]
pub(super) fn word(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("landscape")?;
    let mut face = Face::on(&frame, "A card with a word in large letters");
    cx.title(&mut face, &frame, "landscape", cx.name("word-title", "Spell it"))?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let head = Rect { h: body.h * 0.26, ..body };
    face.text(TextRun::new(head, Role::Text, parse(&view.text), Pt::new(14.0), ink, from.clone()));
    let large = Rect { y: body.y + body.h * 0.28, h: body.h * 0.46, ..body };
    let each = large.h / view.words.len().max(1) as f64;
    for (index, word) in view.words.iter().enumerate() {
        let line = Rect { y: large.y + each * index as f64, h: each, ..large };
        let run = TextRun::new(line, Role::Code, Rich::plain(word.as_str()), Pt::new(34.0), ink, from.clone());
        face.text(run.at_least(Pt::new(12.0)));
    }
    let foot = Rect { y: body.y + body.h * 0.76, h: body.h * 0.24, ..body };
    let rule = if view.rule { texts::RULE } else { "" };
    face.text(TextRun::new(foot, Role::Text, Rich::plain(rule), Pt::new(12.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(WORD, "", face))
}
