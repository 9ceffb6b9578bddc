//! The scene, near things before far ones over rolling ground, and the list.

use std::fmt::Write as _;

use super::{FIELD, LIST, SCENE, Thing, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Art, Face, Layer, Piece, mm};
use crate::mechanics::picture_key::alike;
use crate::mechanics::sketch::{jitter, with_text};
use crate::mechanics::{Dressing, paper};
use crate::script::capital;
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut kinds: Vec<&str> = view.things.iter().map(|thing| thing.picture.as_str()).collect();
    kinds.extend(view.list.iter().map(String::as_str));
    kinds.sort_unstable();
    kinds.dedup();
    alike::refuse(&kinds, cx)?;
    Ok(vec![scene(view, cx)?, list(view, cx)?])
}

fn scene(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!("{}: a scene of many things, {} in all", capital(texts::scene(cx)), view.things.len());
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("scene-title", "So much going on"), alt)?;
    let scale = (slot.w.get() / FIELD.w.get()).min(slot.h.get() / FIELD.h.get());
    let (w, h) = (FIELD.w * scale, FIELD.h * scale);
    let rect = Rect { x: slot.x + (slot.w - w) / 2.0, y: slot.y + (slot.h - h) / 2.0, w, h };
    face.art(ground(rect, cx), rect, String::new());
    let rings = Pen::line(cx.colour("ink"), mm(0.7));
    let mut drawing = Drawing::new(face.size);
    for thing in &view.things {
        let (x, y) = (rect.x + thing.x * scale, rect.y + thing.y * scale);
        let across = thing.across * scale;
        put(&mut face, thing, (x, y), across, cx)?;
        if thing.ringed {
            drawing.circle(x, y, across * 0.54, rings);
        }
    }
    let whole = Rect::of(face.size);
    face.art(drawing.svg(), whole, String::new());
    Ok(cx.piece(SCENE, "", face))
}

/// A thing at its place. A ringed one is drawn smaller, within its ring.
fn put(face: &mut Face, thing: &Thing, (x, y): (Mm, Mm), across: Mm, cx: &Dressing<'_>) -> Hinted<()> {
    let side = if thing.ringed { across * 0.74 } else { across };
    let rect = Rect { x: x - side / 2.0, y: y - side / 2.0, w: side, h: side };
    face.layers.push(Layer::Art(Art {
        svg: cx.symbol(&thing.picture)?,
        rect,
        turn: f64::from(thing.lean),
        alt: String::new(),
    }));
    Ok(())
}

/// Bands of rolling ground or water; what they are the theme's things say.
fn ground(rect: Rect, cx: &Dressing<'_>) -> std::sync::Arc<str> {
    const BANDS: usize = 7;
    /// Radius of the corners.
    const CORNER: f64 = 3.0;
    let size = Size { w: rect.w, h: rect.h };
    let mut drawing = Drawing::new(size);
    let (paper, soft, line) = (cx.colour("paper"), cx.colour("soft"), cx.colour("line"));
    drawing.rect(Rect::of(size), mm(3.0), Pen::fill(mix(paper, soft, 0.35)));
    for band in 0..BANDS {
        let top = size.h * (0.07 + 0.88 * (band as f64 / BANDS as f64));
        let tint = if band % 2 == 0 { soft } else { mix(paper, soft, 0.5) };
        let crest = crest(size, top, band);
        let mut fill = crest.clone();
        // Round below, as the frame is.
        let (w, h) = (size.w.get(), size.h.get() - 0.3);
        let _ = write!(
            fill,
            " L{w} {:.3} A{CORNER} {CORNER} 0 0 1 {:.3} {h:.3} L{CORNER} {h:.3} A{CORNER} {CORNER} 0 0 1 0 {:.3} Z",
            h - CORNER,
            w - CORNER,
            h - CORNER
        );
        drawing.path(&fill, Pen::fill(tint));
        drawing.path(&crest, Pen::line(line, mm(0.3)));
    }
    drawing.rect(Rect::of(size).inset(mm(0.25)), mm(3.0), Pen::line(cx.colour("ink"), mm(0.5)));
    drawing.svg()
}

/// A rolling line from edge to edge.
fn crest(size: Size, top: Mm, band: usize) -> String {
    const WAVES: usize = 5;
    let step = size.w / WAVES as f64;
    let height = |at: usize| {
        let (up, _) = jitter(band, at, 3);
        top + mm(3.2) * up
    };
    let mut path = format!("M0 {:.3}", height(0).get());
    for wave in 0..WAVES {
        let (x0, x1) = (step * wave as f64, step * (wave + 1) as f64);
        let (y0, y1) = (height(wave), height(wave + 1));
        // Level at both ends, so that wave follows wave without a corner.
        let third = step * 0.45;
        let _ = write!(
            path,
            " C{:.3} {:.3} {:.3} {:.3} {:.3} {:.3}",
            (x0 + third).get(),
            y0.get(),
            (x1 - third).get(),
            y1.get(),
            x1.get(),
            y1.get()
        );
    }
    path
}

/// A colour so far on the way from one to another.
fn mix(from: Colour, to: Colour, share: f64) -> Colour {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between two bytes")]
    let part = |a: u8, b: u8| (f64::from(a) + (f64::from(b) - f64::from(a)) * share).round() as u8;
    Colour { r: part(from.r, to.r), g: part(from.g, to.g), b: part(from.b, to.b) }
}

fn list(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let rule = texts::rule(view);
    let title = cx.name("list-title", "To be counted");
    let alt = format!("{}: {} pictures, each with a line for a number. {rule}", capital(title), view.list.len());
    let (mut face, slot) = paper::sheet(cx, "portrait", title, alt)?;
    let share = if view.text.is_empty() { 0.3 } else { 0.42 };
    let told = Rect { h: slot.h * share, ..slot };
    paper::words(&mut face, cx, told, with_text(&view.text, &rule), 11.5);
    let rest = Rect { y: told.bottom() + mm(1.0), h: slot.h - told.h - mm(1.0), ..slot };
    let count = view.list.len().max(1);
    let columns = if count > 4 { 2 } else { 1 };
    let rows = count.div_ceil(columns);
    let (w, h) = (rest.w / columns as f64, (rest.h / rows as f64).min(mm(15.0)));
    let mut lines = Drawing::new(face.size);
    for (index, picture) in view.list.iter().enumerate() {
        // Down the first column, then down the second.
        let (x, y) = (rest.x + w * (0.06 + (index / rows) as f64), rest.y + h * (index % rows) as f64);
        let side = h.min(w * 0.5) * 0.9;
        let letter = Rect { x, y, w: w * 0.16, h };
        paper::symbol(&mut face, cx, letter, &paper::place_letter(index).to_string(), 13.0);
        let at = Rect { x: x + w * 0.18, y: y + (h - side) / 2.0, w: side, h: side };
        face.art(cx.symbol(picture)?, at, picture.clone());
        let from = at.right() + mm(2.0);
        let y = y + h * 0.74;
        lines.line(
            (from, y),
            ((x + w * 0.92 - mm(1.5)).min(from + mm(16.0)), y),
            Pen::line(cx.colour("line"), mm(0.35)),
        );
    }
    let whole = Rect::of(face.size);
    face.art(lines.svg(), whole, String::new());
    Ok(cx.piece(LIST, "", face))
}
