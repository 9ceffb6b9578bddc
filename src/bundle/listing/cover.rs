//! The cover picture: title, a few facts, and a handful of pieces.

use super::contact::{PAGE, Page, mixed, ornament, put, within, words};
use super::veil::Shown;
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Frame, Role};
use crate::party::Party;
use crate::print::Press;
use crate::theme::Loaded;
use crate::units::{Mm, Rect, Size};

/// Where pieces lie about the letter, from the undermost: the middle, the greatest width and height, the turn.
const UNDER: [Place; 4] = [
    (154.0, 43.0, 50.0, 66.0, -8.0),
    (213.0, 42.0, 46.0, 62.0, 7.0),
    (219.0, 106.0, 38.0, 60.0, -5.0),
    (147.0, 108.0, 38.0, 60.0, 6.0),
];
/// The middle of the letter, which lies in their midst.
const LETTER: Place = (184.0, 86.0, 74.0, 100.0, 1.5);
/// Where pieces lie over the foot of the letter.
const OVER: [Place; 2] = [(157.0, 151.0, 56.0, 42.0, -6.0), (209.0, 152.0, 54.0, 42.0, 5.0)];
/// The part of the page that looks like the cover of a book.
const PANEL: Mm = Mm::new(124.0);

/// Greatest scale of a piece; that of the letter is 0.39.
const LARGEST: f64 = 0.58;

type Place = (f64, f64, f64, f64, f64);

/// The cover of a kit: `lines` stand below its title.
///
/// # Errors
/// When a piece or the theme's art cannot be set.
pub(super) fn cover(party: &Party, theme: &Loaded, shown: &[Shown], lines: &[String], press: &Press) -> Hinted<Page> {
    let palette = &party.palette;
    let mut whole = Page::new(format!("Cover of {}", party.script.title), palette);
    let page = &mut whole.face;
    let mut panel = Drawing::new(PAGE);
    let left = Rect { x: Mm::ZERO, y: Mm::ZERO, w: PANEL, h: PAGE.h };
    panel.rect(left, Mm::ZERO, Pen::fill(palette.get("paper")));
    panel.line((left.right(), Mm::ZERO), (left.right(), PAGE.h), Pen::line(palette.get("accent"), Mm::new(0.9)));
    page.art(panel.svg(), Rect::of(PAGE), "");
    book(page, party, theme, lines, left.inset(Mm::new(3.5)))?;

    // The letter first, then one piece of each kind: bare ones before those that are veiled.
    let mut picked: Vec<&Shown> = Vec::new();
    for piece in shown.iter().skip(1) {
        if picked.iter().all(|other| other.kind != piece.kind) {
            picked.push(piece);
        }
    }
    picked.sort_by(|a, b| a.veiled.cmp(&b.veiled).then(area(b.face.size).total_cmp(&area(a.face.size))));
    for place in UNDER {
        lay_one(&mut whole, &mut picked, place, party, press)?;
    }
    if let Some(letter) = shown.first() {
        lay(&mut whole, letter, LETTER, party, press)?;
    }
    for place in OVER {
        lay_one(&mut whole, &mut picked, place, party, press)?;
    }
    Ok(whole)
}

/// The theme's book cover with the kit's title, and what it is.
fn book(page: &mut Face, party: &Party, theme: &Loaded, lines: &[String], room: Rect) -> Hinted<()> {
    let palette = &party.palette;
    let Some(svg) = theme.frame("cover") else { return Ok(()) };
    let frame = Frame::read(svg, palette).map_err(|trouble| trouble.at("frame cover"))?;
    let stands = within(room, frame.size);
    let scale = stands.w.get() / frame.size.w.get();
    let slot = |name: &str| {
        let own = frame.slot(name)?;
        Some(Rect { x: stands.x + own.x * scale, y: stands.y + own.y * scale, w: own.w * scale, h: own.h * scale })
    };
    page.art(frame.svg.clone(), stands, "");
    let ink = palette.get("ink");
    if let Some(title) = slot("title") {
        page.text(words(title, Role::Display, &party.script.title, 46.0, ink));
    }
    if let Some(body) = slot("body") {
        let each = body.h / f64::from(u8::try_from(lines.len().max(1)).unwrap_or(u8::MAX));
        for (n, line) in (0_u8..).zip(lines) {
            let room = Rect { y: body.y + each * f64::from(n), h: each, ..body };
            page.text(words(room, Role::Text, line, 16.0, mixed(ink, palette.get("paper"), 0.1)));
        }
    }
    if let (Some(mark), Some(seal)) = (slot("mark"), theme.ornament("seal")) {
        ornament(page, seal, mark, palette).map_err(|trouble| trouble.at("ornament seal"))?;
    }
    Ok(())
}

/// Lays the first piece that is as wide or as high as its place asks for, or else the first.
fn lay_one(page: &mut Page, picked: &mut Vec<&Shown>, place: Place, party: &Party, press: &Press) -> Hinted<()> {
    let wide = |w: f64, h: f64| w > h;
    let like = |piece: &&Shown| wide(piece.face.size.w.get(), piece.face.size.h.get()) == wide(place.2, place.3);
    let at = picked.iter().position(like).unwrap_or(0);
    if at < picked.len() {
        lay(page, picked.remove(at), place, party, press)?;
    }
    Ok(())
}

fn lay(page: &mut Page, piece: &Shown, (x, y, w, h, turn): Place, party: &Party, press: &Press) -> Hinted<()> {
    let cell = Rect { x: Mm::new(x - w / 2.0), y: Mm::new(y - h / 2.0), w: Mm::new(w), h: Mm::new(h) };
    // No piece looks larger beside the letter than it is by more than half.
    let size = piece.face.size;
    let most = Size { w: size.w * LARGEST, h: size.h * LARGEST };
    let cell = Rect {
        x: cell.x + (cell.w - cell.w.min(most.w)) / 2.0,
        y: cell.y + (cell.h - cell.h.min(most.h)) / 2.0,
        w: cell.w.min(most.w),
        h: cell.h.min(most.h),
    };
    put(page, piece, within(cell, size), turn, &party.palette, press)
}

fn area(size: Size) -> f64 {
    size.w.get() * size.h.get()
}
