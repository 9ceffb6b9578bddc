use super::texts::{book_name, note_name};
use super::{BOOK, NOTE, View};
use crate::diag::{Hinted, PuzzleField};
use crate::face::{Face, Piece, Role, TextRun};
use crate::mechanics::Dressing;
use crate::script::capital;
use crate::script::{Rich, parse};
use crate::units::{Mm, Pt, Rect};

/// The jacket of the book that is written in.
pub(super) fn jacket(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("cover")?;
    let mut face = Face::on(&frame, format!("the jacket of {}", book_name(cx)));
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let title = cx.slot(&frame, "cover", "title")?;
    let run = TextRun::new(title, Role::Display, parse(&view.jacket_title), Pt::new(48.0), ink, from.clone());
    face.text(run.at_least(Pt::new(18.0)));
    let body = cx.slot(&frame, "cover", "body")?;
    face.text(TextRun::new(body, Role::Text, parse(&view.jacket_text), Pt::new(20.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(BOOK, "jacket", face))
}

/// The note: the author's words, and below them the order rule.
pub(super) fn note(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("note")?;
    let mut face = Face::on(&frame, format!("{}: in what order to read", capital(note_name(cx))));
    cx.title(&mut face, &frame, "note", &view.note_title)?;
    let body = cx.slot(&frame, "note", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    // A page number stays beside its word.
    let rule = view.rule().replace("(page ", "(page\u{a0}");
    // The longer text gets the larger share of the note, within limits that leave either readable.
    let (words, told) = (view.note_text.chars().count(), rule.chars().count());
    let share = (words as f64 / (words + told).max(1) as f64).clamp(0.0, 1.0);
    let share = if words == 0 || told == 0 { share } else { share.clamp(0.3, 0.7) };
    let air = if words == 0 || told == 0 { Mm::ZERO } else { Mm::new(1.2) };
    let top = Rect { h: body.h * share - air, ..body };
    let below = Rect { y: body.y + body.h * share + air, h: body.h * (1.0 - share) - air, ..body };
    face.text(TextRun::new(top, Role::Text, parse(&view.note_text), Pt::new(15.0), ink, from.clone()));
    let mut told = Rich::plain(rule);
    told.paragraphs.iter_mut().flat_map(|paragraph| &mut paragraph.spans).for_each(|span| span.strong = true);
    face.text(TextRun::new(below, Role::Text, told, Pt::new(13.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(NOTE, "", face))
}
