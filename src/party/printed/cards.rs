//! Tags, labels, discs.

use super::Bench;
use super::ground::{Ground, scaled};
use crate::diag::{Hinted, Trouble};
use crate::face::{Face, Outline, Piece, Role};
use crate::units::{Mm, Rect, Size};

/// Least paper between a hole and the edge.
const EDGE: f64 = 3.0;

/// One piece for each text of a prop.
fn each(bench: &Bench<'_>, label: &str, make: impl Fn(&str) -> Hinted<Face>) -> Hinted<Vec<Piece>> {
    let count = bench.spec.texts().count();
    let part = |at: usize| if count == 1 { String::new() } else { (at + 1).to_string() };
    let said = |at: usize| {
        let number = if count == 1 { String::new() } else { format!("{} of {count}", at + 1) };
        let stop = if number.is_empty() || label.is_empty() { "" } else { ", " };
        format!("{number}{stop}{label}")
    };
    bench.spec.texts().enumerate().map(|(at, text)| Ok(bench.piece(&part(at), &said(at), make(text)?))).collect()
}

/// What a card shows, in words.
pub(super) fn shows(bench: &Bench<'_>, text: &str) -> String {
    let text = bench.plain(text);
    if text.is_empty() { format!("{}, to be written on", bench.name) } else { format!("{}. {text}", bench.name) }
}

/// Labels of exactly this size.
pub(super) fn labels(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    each(bench, "", |text| {
        let mut face = Face::new(bench.size, shows(bench, text));
        let ground = bench.ground(&mut face, &["label"], Rect::of(bench.size))?;
        bench.words(&mut face, ground, &bench.rich(text), Role::Display, 60.0);
        Ok(face)
    })
}

/// Discs of this diameter.
pub(super) fn discs(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let size = Size { w: bench.size.w, h: bench.size.w };
    each(bench, "", |text| {
        let mut face = Face::new(size, shows(bench, text));
        face.outline = Outline::Round;
        let frame = bench.cx.frame("disc")?;
        let rect = Rect::of(size);
        face.art(frame.svg.clone(), rect, String::new());
        let body = scaled(bench.cx.slot(&frame, "disc", "body")?, frame.size, rect);
        let text = bench.rich(text);
        if !text.is_empty() {
            face.text(bench.run(body, Role::Display, text, 60.0));
        }
        Ok(face)
    })
}

/// Tags with a hole.
pub(super) fn tags(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let hole = bench.spec.holes().unwrap_or_default();
    let size = bench.size;
    if hole + EDGE * 2.0 > size.w.get() || hole + EDGE * 2.0 > size.h.get() {
        return Err(Trouble::new(format!("a hole of {hole} mm leaves no edge on a tag of this size"))
            .hint("make the tag larger or the hole smaller"));
    }
    each(bench, &format!("hole of {hole}\u{a0}mm"), |text| {
        let mut face = Face::new(size, shows(bench, text));
        let framed = bench.cx.theme.frame("tag").is_some().then(|| bench.cx.frame("tag")).transpose()?;
        let at = framed.as_ref().and_then(|frame| Some((frame.size, frame.slot("hole")?)));
        let before = face.layers.len();
        let mut ground = bench.ground(&mut face, &["tag"], Rect::of(size))?;
        // A frame is one picture, a border several.
        let (x, y) = match at {
            Some((own, slot)) if face.layers.len() == before + 1 => {
                let slot = scaled(slot, own, Rect::of(size));
                (slot.x + slot.w / 2.0, slot.y + slot.h / 2.0)
            }
            _ => {
                // In the middle of a short side.
                let (off, next) = (Mm::new(hole / 2.0 + EDGE + 2.6), Mm::new(hole + EDGE + 4.1));
                let lying = size.w > size.h;
                ground = if lying { beside(ground, next) } else { below(ground, next) };
                if lying { (off, size.h / 2.0) } else { (size.w / 2.0, off) }
            }
        };
        bench.hole(&mut face, x, y, hole);
        bench.words(&mut face, ground, &bench.rich(text), Role::Display, 40.0);
        Ok(face)
    })
}

/// The same ground with nothing above this height.
fn below(ground: Ground, top: Mm) -> Ground {
    let bottom = ground.body.bottom();
    let first = ground.title.y.max(top);
    let room = (bottom - first).max(Mm::new(1.0));
    Ground {
        title: Rect { y: first, h: room * 0.4, ..ground.title },
        body: Rect { y: first + room * 0.5, h: room * 0.5, ..ground.body },
        ..ground
    }
}

/// The same ground with nothing left of this place.
fn beside(ground: Ground, left: Mm) -> Ground {
    let first = ground.title.x.max(left);
    let moved = |rect: Rect| Rect { x: first, w: (rect.right() - first).max(Mm::new(1.0)), ..rect };
    Ground { title: moved(ground.title), body: moved(ground.body), ..ground }
}
