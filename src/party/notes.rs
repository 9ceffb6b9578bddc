use super::Party;
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Audience, Face, Frame, Piece, Role, TextRun, Valign};
use crate::files::VPath;
use crate::ids::PuzzleId;
use crate::kit::NoteKind;
use crate::script::NoteText;
use crate::theme::Loaded;
use crate::units::{Mm, Pt, Rect, Size};

/// Texts up to this many characters are centred; longer ones are set flush left, which is easier to read.
const CENTRED_CHARS: usize = 220;

/// The pieces of the smaller texts: notes, signs, the closing card.
pub(super) fn notes(party: &Party, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    party.script.notes.iter().map(|note| (Anchor::Note(note.id.clone()), piece(party, theme, note))).collect()
}

/// The frame on which a text of this kind stands.
pub(super) const fn frame_of(kind: NoteKind) -> &'static str {
    match kind {
        NoteKind::Note => "note",
        NoteKind::Sign => "landscape",
        NoteKind::Closing => "closing",
    }
}

fn piece(party: &Party, theme: &Loaded, note: &NoteText) -> Hinted<Piece> {
    let frame_name = frame_of(note.kind);
    let (word, most) = match note.kind {
        NoteKind::Note => ("Note", 14.0),
        NoteKind::Sign => ("Sign", 20.0),
        NoteKind::Closing => ("Closing card", 18.0),
    };
    let id = PuzzleId::from_text(note.id.as_str());
    let cx = party.plain_dressing(theme, &id);
    let frame = cx.frame(frame_name)?;
    let title = note.title.text();
    let shown = if title.is_empty() { word.to_owned() } else { format!("{word}: {title}") };
    let mut face = Face::on(&frame, format!("{shown}. {}", note.text.text()));
    let from = Anchor::Note(note.id.clone());
    let ink = cx.colour("ink");
    let title_slot = cx.slot(&frame, frame_name, "title")?;
    let mut body_slot = cx.slot(&frame, frame_name, "body")?;
    if note.title.is_empty() {
        body_slot = joined(title_slot, body_slot);
    }
    if let Some(path) = &note.picture {
        let picture = theme.pictures.get(path).ok_or_else(|| lost(path, theme))?;
        let picture = Frame::read(picture, &party.palette).map_err(|trouble| trouble.at(path.to_string()))?;
        let (place, rest) = beside(body_slot, picture.size);
        face.art(picture.svg, place, "");
        body_slot = rest;
    }
    face.text(TextRun::new(title_slot, Role::Display, note.title.clone(), Pt::new(24.0), ink, from.clone()));
    let text = TextRun::new(body_slot, Role::Text, note.text.clone(), Pt::new(most), ink, from);
    let long = note.text.text().chars().count() > CENTRED_CHARS;
    let align = if long { Align::Left } else { Align::Centre };
    face.text(text.aligned(align, Valign::Middle));
    if note.kind == NoteKind::Closing {
        let slot = cx.slot(&frame, frame_name, "line")?;
        face.art(write_in_line(slot, cx.colour("ink")), slot, "a line to write on");
    }
    let mut label = shown;
    if note.kind == NoteKind::Sign {
        // It belongs to no lock: the seal closes the frame where a mark would stand.
        if let (Some(seal), Some(slot)) = (cx.ornament("seal")?, frame.slot("mark")) {
            face.art(seal, slot, "");
        }
        face = face.tent();
        label.push_str(" (fold it to stand)");
    }
    Ok(Piece {
        id: note.id.to_string(),
        part: String::new(),
        label,
        audience: Audience::Players,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        stock: crate::face::Stock::Card,
        on_a_thing: false,
        large: false,
        group: "notes".into(),
    })
}

/// Why a picture of the kit's own is not there, by its path in the kit.
fn lost(path: &VPath, theme: &Loaded) -> Trouble {
    let (message, hints) = match theme.lost_pictures.get(path) {
        // Its place on this machine is left out: the path in the kit says where.
        Some(known) => (format!("the picture {path} cannot be used: {}", known.message), known.hints.clone()),
        None => (format!("the picture {path} is missing or cannot be read"), Vec::new()),
    };
    Trouble { message, place: None, hints }.hint("put it into the kit's art/ folder, or take it off this text")
}

/// Parts a slot into the place of a picture at its left, which keeps its shape, and what is left for the text.
fn beside(slot: Rect, picture: Size) -> (Rect, Rect) {
    const GAP: Mm = Mm::new(3.0);
    let most = Size { w: slot.w * 0.4, h: slot.h };
    let scale = (most.w.get() / picture.w.get()).min(most.h.get() / picture.h.get());
    let (w, h) = (picture.w * scale, picture.h * scale);
    let place = Rect { x: slot.x, y: slot.y + (slot.h - h) / 2.0, w, h };
    (place, Rect { x: slot.x + w + GAP, w: slot.w - w - GAP, ..slot })
}

/// The rectangle around two.
pub(super) fn joined(a: Rect, b: Rect) -> Rect {
    let (x, y) = (a.x.min(b.x), a.y.min(b.y));
    Rect { x, y, w: a.right().max(b.right()) - x, h: a.bottom().max(b.bottom()) - y }
}

/// A line to write on, near the foot of its slot so that a pen has room above it.
fn write_in_line(slot: Rect, ink: crate::theme::Colour) -> std::sync::Arc<str> {
    let mut drawing = Drawing::new(Size { w: slot.w, h: slot.h });
    let y = slot.h * 0.82;
    drawing.line((Mm::new(0.3), y), (slot.w - Mm::new(0.3), y), Pen::line(ink, Mm::new(0.3)));
    drawing.svg()
}
