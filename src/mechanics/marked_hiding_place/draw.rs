//! The tags and the note.

use super::{Thing, View};
use crate::diag::{Hinted, PuzzleField};
use crate::face::{Face, Piece, Role, TextRun};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect};

/// Height of the word under a sign.
const WORD: Mm = Mm::new(9.0);

/// A tag for each thing. Tags carry no lock mark: a guest could take it for the tag's sign.
pub(super) fn tags(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = Vec::new();
    for (index, thing) in view.things.iter().enumerate() {
        let piece = cx.piece("things", &format!("tag with {}", thing.word), tag(thing, cx)?);
        pieces.push(Piece { id: format!("{}-tag-{}", cx.puzzle, index + 1), ..piece });
    }
    Ok(pieces)
}

fn tag(thing: &Thing, cx: &Dressing<'_>) -> Hinted<Face> {
    let frame = cx.frame("tag")?;
    let body = cx.slot(&frame, "tag", "body")?;
    let mut face = Face::on(&frame, format!("A tag with a sign: {}.", thing.word));
    // Without a title of the theme's own the word stands in its place, and the sign gets the room.
    let title = cx.name("tag-title", "");
    let word_height = if title.is_empty() { Mm::ZERO } else { WORD.min(body.h / 3.0) };
    cx.title(&mut face, &frame, "tag", if title.is_empty() { &thing.word } else { title })?;
    let side = body.w.min(body.h - word_height);
    let picture =
        Rect { x: body.x + (body.w - side) / 2.0, y: body.y + (body.h - word_height - side) / 2.0, w: side, h: side };
    face.art(cx.symbol(&thing.sign)?, picture, thing.word.clone());
    if !title.is_empty() {
        let below = Rect { y: body.bottom() - word_height, h: word_height, ..body };
        let words = Rich::plain(thing.word.clone());
        let run = TextRun::new(below, Role::Text, words, Pt::new(15.0), cx.colour("ink"), cx.at(PuzzleField::Setup));
        face.text(run);
    }
    Ok(face)
}

pub(super) fn note(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let title = cx.name("note-title", "Where to look");
    let face = cx.card("note", title, &Rich::plain(view.note.clone()), &format!("A note, {title}: {}", view.note))?;
    Ok(cx.piece("note", "", face))
}
