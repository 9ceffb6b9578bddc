use super::{KEY_CARD, RULE, View, WORD_CARD, key_name, word_name};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::capital;
use crate::script::{Rich, parse};
use crate::units::{Mm, Pt, Rect, Size};

/// Rows that stand above one another before a second pair of columns is begun.
const ROWS: usize = 13;

/// The key card: pairs of columns, letter and digit, on the frame `bookmark`.
pub(super) fn key_card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("bookmark")?;
    let mut face = Face::on(&frame, format!("{}: a table that gives each letter a digit", capital(key_name(cx))));
    cx.title(&mut face, &frame, "bookmark", &view.key_title)?;
    let slot = |name: &str| cx.slot(&frame, "bookmark", name);
    let (rows, foot) = paper::cleared_bookmark(cx, &mut face, slot("table")?, slot("foot")?);
    table(view, cx, &mut face, rows);
    let from = cx.at(PuzzleField::Setup);
    face.text(TextRun::new(foot, Role::Text, Rich::plain(RULE), Pt::new(11.0), cx.colour("ink"), from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(KEY_CARD, "", face))
}

fn table(view: &View, cx: &Dressing<'_>, face: &mut Face, slot: Rect) {
    let columns = view.key.len().div_ceil(ROWS).max(1);
    let rows = view.key.len().div_ceil(columns).max(1);
    let gap = mm(3.0);
    let width = (slot.w - gap * (columns - 1) as f64) / columns as f64;
    let height = (slot.h / rows as f64).min(mm(11.0));
    let line = Pen::line(cx.colour("line"), mm(0.2));
    let mut drawing = Drawing::new(Size { w: slot.w, h: slot.h });
    let from = cx.at(PuzzleField::Setup);
    for (index, entry) in view.key.iter().enumerate() {
        let (column, row) = ((index / rows) as f64, (index % rows) as f64);
        let x = (width + gap) * column;
        let y = height * row;
        let half = width / 2.0;
        let cell =
            |x: Mm| Rect { x: slot.x + x + mm(0.6), y: slot.y + y + mm(0.6), w: half - mm(1.2), h: height - mm(1.2) };
        for (x, symbol, strong) in [(x, entry.letter, false), (x + half, entry.digit, true)] {
            let mut text = Rich::plain(symbol);
            text.paragraphs.iter_mut().flat_map(|p| p.spans.iter_mut()).for_each(|span| span.strong = strong);
            let run = TextRun::new(cell(x), Role::Code, text, Pt::new(16.0), cx.colour("ink"), from.clone());
            face.text(run.at_least(Pt::new(10.0)));
        }
        if row > 0.0 {
            drawing.line((x, y), (x + width, y), line);
        }
        drawing.line((x + half, y + mm(1.4)), (x + half, y + height - mm(1.4)), line);
    }
    face.art(drawing.svg(), slot, String::new());
}

/// The card with the name: a line or two of text, then the names, large.
pub(super) fn word_card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let name = view.card.frame();
    let frame = cx.frame(name)?;
    let mut face = Face::on(&frame, format!("{}: a name in large letters", capital(word_name(cx))));
    cx.title(&mut face, &frame, name, &view.card_title)?;
    let body = cx.slot(&frame, name, "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let head = Rect { h: body.h * 0.42, ..body };
    face.text(TextRun::new(head, Role::Text, parse(&view.card_text), Pt::new(15.0), ink, from.clone()));
    let large = Rect { y: body.y + body.h * 0.46, h: body.h * 0.54, ..body };
    let each = large.h / view.words.len().max(1) as f64;
    for (index, word) in view.words.iter().enumerate() {
        let line = Rect { y: large.y + each * index as f64, h: each - mm(1.0), ..large };
        // Letters that must be read without doubt are not left to a theme's display face.
        let run = TextRun::new(line, Role::Text, parse(&format!("**{word}**")), Pt::new(44.0), ink, from.clone());
        face.text(run.at_least(Pt::new(16.0)));
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(WORD_CARD, "", face))
}
