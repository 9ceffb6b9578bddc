//! What a printed prop stands on: a frame of the theme where one has the shape, else a border with the theme's corners,
//! which goes round any size.

use super::Bench;
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Art, Face, Frame, Layer, Role, TextRun, Valign};
use crate::kit::Form;
use crate::party::notes::joined;
use crate::script::Rich;
use crate::theme::Edition;
use crate::units::{Mm, Pt, Rect, Size};

/// By how much of its proportions a frame may be stretched: less than the eye sees on a drawn ornament.
const STRETCH: f64 = 0.04;
/// The same for frames of things whose size is free: leaves, snow and waves bear more than a book's cover.
const FREE_STRETCH: f64 = 0.14;
const FREE: &[&str] = &["flag", "tent", "envelope"];
/// Distance of the border from the edge: scissors may be off by a millimetre.
const BORDER: Mm = Mm::new(2.2);
/// Distance of a corner from the edge: inside the border.
const CORNER_AT: Mm = Mm::new(3.4);
/// Least and greatest side of a corner, and its part of the shorter side; on a flag, whose letter wants the room.
const CORNER: (f64, f64, f64) = (5.0, 26.0, 0.22);
const FLAG_CORNER: f64 = 0.15;
/// Texts up to this many characters are centred; longer ones are set flush left, which is easier to read.
const CENTRED_CHARS: usize = 160;

/// Where words stand on a ground.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ground {
    pub title: Rect,
    pub body: Rect,
    /// Where in its place the body stands: right below the title, where nothing is drawn between them.
    pub valign: Valign,
}

impl Bench<'_> {
    /// Draws a ground into `rect`: the first of these frames of the theme that has the rectangle's proportions, else a
    /// border with corners.
    pub(super) fn ground(&self, face: &mut Face, frames: &[&str], rect: Rect) -> Hinted<Ground> {
        for name in frames.iter().filter(|name| self.cx.theme.frame(name).is_some()) {
            let frame = self.cx.frame(name)?;
            let stretch = if FREE.contains(name) { FREE_STRETCH } else { STRETCH };
            if fits(&frame, rect, stretch) {
                return Ok(on_frame(face, &frame, rect));
            }
        }
        let inner = self.border(face, rect)?;
        // As much air above the title as the few words below it usually leave.
        let title = Rect { y: inner.y + inner.h * 0.12, h: inner.h * 0.38, ..inner };
        let body = Rect { y: inner.y + inner.h * 0.6, h: inner.h * 0.4, ..inner };
        Ok(Ground { title, body, valign: Valign::Top })
    }

    /// Draws a border round `rect` with the theme's corners, and answers what is left within.
    pub(super) fn border(&self, face: &mut Face, rect: Rect) -> Hinted<Rect> {
        let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
        let own = Rect::of(Size { w: rect.w, h: rect.h });
        let radius = Mm::new(1.2);
        drawing.rect(own.inset(BORDER), radius, Pen::line(self.cx.colour("ink"), Mm::new(0.35)));
        drawing.rect(own.inset(BORDER - Mm::new(0.9)), radius, Pen::line(self.cx.colour("line"), Mm::new(0.15)));
        face.art(drawing.svg(), rect, String::new());
        let side = corner(rect, self.spec.form);
        self.corners(face, rect, side, 4)?;
        // Words keep off the corners along the longer side, where they have the room.
        let (far, near) = (CORNER_AT + side + Mm::new(0.8), BORDER + Mm::new(2.6));
        let (x, y) = if rect.w >= rect.h { (far, near) } else { (near, far) };
        Ok(Rect { x: rect.x + x, y: rect.y + y, w: rect.w - x * 2.0, h: rect.h - y * 2.0 })
    }

    /// Draws a border through these corners, the first two of which stand at the top, and the theme's corners there;
    /// answers what is left of `rect`, the part above the fork.
    pub(super) fn forked(&self, face: &mut Face, rect: Rect, line: &[(Mm, Mm)]) -> Hinted<Rect> {
        let mut drawing = Drawing::new(face.size);
        drawing.polygon(line, Pen::line(self.cx.colour("ink"), Mm::new(0.35)));
        face.art(drawing.svg(), Rect::of(face.size), String::new());
        let side = corner(rect, self.spec.form);
        self.corners(face, rect, side, 2)?;
        let far = CORNER_AT + side + Mm::new(0.8);
        let near = BORDER + Mm::new(2.6);
        Ok(Rect { x: rect.x + far, y: rect.y + near, w: rect.w - far * 2.0, h: rect.h - near * 2.0 })
    }

    /// The theme's corner in the first so many corners of `rect`, clockwise from the upper left, turned.
    fn corners(&self, face: &mut Face, rect: Rect, side: Mm, count: usize) -> Hinted<()> {
        let Some(svg) = self.cx.ornament("corner")? else { return Ok(()) };
        let (left, top) = (rect.x + CORNER_AT, rect.y + CORNER_AT);
        let (right, bottom) = (rect.right() - CORNER_AT - side, rect.bottom() - CORNER_AT - side);
        let all = [(left, top, 0.0), (right, top, 90.0), (right, bottom, 180.0), (left, bottom, 270.0)];
        for (x, y, turn) in all.into_iter().take(count) {
            let rect = Rect { x, y, w: side, h: side };
            face.layers.push(Layer::Art(Art { svg: svg.clone(), rect, turn, alt: String::new() }));
        }
        Ok(())
    }

    /// The theme's seal in the middle of `rect`, as large as fits.
    pub(super) fn seal(&self, face: &mut Face, rect: Rect, turn: f64) -> Hinted<()> {
        let Some(svg) = self.cx.ornament("seal")? else { return Ok(()) };
        let side = rect.w.min(rect.h);
        let rect = Rect { x: rect.x + (rect.w - side) / 2.0, y: rect.y + (rect.h - side) / 2.0, w: side, h: side };
        face.layers.push(Layer::Art(Art { svg, rect, turn, alt: String::new() }));
        Ok(())
    }

    /// The theme's divider in the middle of `rect`, as wide as fits.
    pub(super) fn divider(&self, face: &mut Face, rect: Rect) -> Hinted<()> {
        let Some(svg) = self.cx.ornament("divider")? else { return Ok(()) };
        // Dividers are 60 by 5 mm.
        let w = rect.w.min(rect.h * 12.0);
        let h = w / 12.0;
        let place = Rect { x: rect.x + (rect.w - w) / 2.0, y: rect.y + (rect.h - h) / 2.0, w, h };
        face.art(svg, place, String::new());
        Ok(())
    }

    /// A run of this prop's words in ink.
    pub(super) fn run(&self, rect: Rect, role: Role, text: Rich, most: f64) -> TextRun {
        TextRun::new(rect, role, text, Pt::new(most), self.cx.colour("ink"), self.at.clone())
    }

    /// A letter as large as a hand: drawn by its outline where little ink is wanted.
    pub(super) fn letter(&self, rect: Rect, letter: char, most: f64) -> TextRun {
        let outlined = self.cx.palette.edition() == Edition::LowInk;
        self.run(rect, Role::Display, Rich::plain(letter.to_string()), most).outlined(outlined)
    }

    /// Sets a text on a ground: the first of several paragraphs as a title, an only one as large as fits; none at all
    /// leaves a line to write on.
    pub(super) fn words(&self, face: &mut Face, ground: Ground, text: &Rich, role: Role, most: f64) {
        let whole = joined(ground.title, ground.body);
        if text.is_empty() {
            face.art(self.line_to_write_on(whole), whole, "a line to write on");
            return;
        }
        let (title, body) = parted(text);
        match body {
            Some(body) => {
                face.text(self.run(ground.title, Role::Display, title, most));
                let long = body.text().chars().count() > CENTRED_CHARS;
                let align = if long { Align::Left } else { Align::Centre };
                face.text(self.run(ground.body, Role::Text, body, most.min(18.0)).aligned(align, ground.valign));
            }
            None => face.text(self.run(whole, role, title, most)),
        }
    }

    fn line_to_write_on(&self, rect: Rect) -> std::sync::Arc<str> {
        let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
        let y = rect.h * 0.66;
        let inset = rect.w * 0.04;
        drawing.line((inset, y), (rect.w - inset, y), Pen::line(self.cx.colour("ink"), Mm::new(0.3)));
        drawing.svg()
    }
}

/// The first paragraph, and the others if there are any.
pub(super) fn parted(text: &Rich) -> (Rich, Option<Rich>) {
    let mut rest = text.clone();
    if rest.paragraphs.len() < 2 {
        return (rest, None);
    }
    let first = rest.paragraphs.remove(0);
    (Rich { paragraphs: vec![first] }, Some(rest))
}

/// Side of a corner on a rectangle.
fn corner(rect: Rect, form: Form) -> Mm {
    let (least, most, part) = CORNER;
    let part = if form == Form::Banner { FLAG_CORNER } else { part };
    Mm::new((rect.w.min(rect.h).get() * part).clamp(least, most))
}

fn fits(frame: &Frame, rect: Rect, stretch: f64) -> bool {
    let own = frame.size.w.get() / frame.size.h.get();
    let asked = rect.w.get() / rect.h.get();
    (asked / own).ln().abs() <= stretch
}

/// A frame that fills `rect`, and its slots there.
fn on_frame(face: &mut Face, frame: &Frame, rect: Rect) -> Ground {
    face.art(frame.svg.clone(), rect, String::new());
    let place = |slot: Rect| scaled(slot, frame.size, rect);
    let body = frame.slot("body").map_or_else(|| rect.inset(CORNER_AT), place);
    Ground { title: frame.slot("title").map_or(body, place), body, valign: Valign::Middle }
}

/// A place of a picture of this size, where the picture fills `rect`.
pub(super) fn scaled(slot: Rect, size: Size, rect: Rect) -> Rect {
    let (fx, fy) = (rect.w.get() / size.w.get(), rect.h.get() / size.h.get());
    Rect { x: rect.x + slot.x * fx, y: rect.y + slot.y * fy, w: slot.w * fx, h: slot.h * fy }
}

/// Puts a face's layers into another at a place, turned by half a turn if `over`.
pub(super) fn paste(into: &mut Face, from: &Face, at: (Mm, Mm), over: bool) {
    let (w, h) = (from.size.w, from.size.h);
    let placed = |rect: Rect| {
        let rect = if over { Rect { x: w - rect.right(), y: h - rect.bottom(), ..rect } } else { rect };
        rect.moved(at.0, at.1)
    };
    let half = if over { 180.0 } else { 0.0 };
    for layer in &from.layers {
        into.layers.push(match layer.clone() {
            Layer::Art(art) => Layer::Art(Art { rect: placed(art.rect), turn: art.turn + half, ..art }),
            Layer::Text(run) => {
                Layer::Text(TextRun { rect: placed(run.rect), turn: run.turn + half, within: None, ..run })
            }
        });
    }
}
