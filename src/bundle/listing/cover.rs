//! The cover picture: title, a few facts, and a handful of pieces.

use super::contact::{PAGE, Page, mixed, put, words};
use super::veil::Shown;
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Role, Valign, clean_svg};
use crate::party::Party;
use crate::print::Press;
use crate::theme::Loaded;
use crate::units::{Mm, Rect, Size};

/// Where pieces lie beside the letter, from the undermost: the middle, the greatest width and height, the turn.
const FAN: [(f64, f64, f64, f64, f64); 6] = [
    (143.0, 46.0, 46.0, 62.0, -8.0),
    (213.0, 45.0, 43.0, 59.0, 7.0),
    (221.0, 106.0, 36.0, 52.0, -4.0),
    (134.0, 106.0, 36.0, 52.0, 5.0),
    (145.0, 152.0, 58.0, 40.0, -5.0),
    (207.0, 153.0, 58.0, 40.0, 5.0),
];
/// The middle of the letter, which lies in their midst.
const LETTER: (f64, f64, f64, f64, f64) = (178.0, 86.0, 66.0, 94.0, 1.5);

/// The cover of a kit: `lines` stand below its title.
///
/// # Errors
/// When a piece or the theme's art cannot be set.
pub(super) fn cover(party: &Party, theme: &Loaded, shown: &[Shown], lines: &[String], press: &Press) -> Hinted<Page> {
    let palette = &party.palette;
    let mut whole = Page::new(format!("Cover of {}", party.script.title), palette);
    let page = &mut whole.face;
    let mut panel = Drawing::new(PAGE);
    let left = Rect { x: Mm::ZERO, y: Mm::ZERO, w: Mm::new(112.0), h: PAGE.h };
    panel.rect(left, Mm::ZERO, Pen::fill(palette.get("paper")));
    panel.line((left.right(), Mm::ZERO), (left.right(), PAGE.h), Pen::line(palette.get("accent"), Mm::new(0.9)));
    page.art(panel.svg(), Rect::of(PAGE), "");

    let ink = palette.get("ink");
    let column = Rect { x: Mm::new(12.0), w: Mm::new(88.0), ..left };
    let title = Rect { y: Mm::new(26.0), h: Mm::new(62.0), ..column };
    page.text(words(title, Role::Display, &party.script.title, 58.0, ink).aligned(Align::Centre, Valign::Bottom));
    let mut y = Mm::new(93.0);
    if let Some(svg) = theme.ornament("divider") {
        let svg = clean_svg(svg, palette).map_err(|trouble| trouble.at("ornament divider"))?;
        let size = crate::face::Frame::read(&svg, palette)?.size;
        let rect = within(Rect { x: column.x + Mm::new(10.0), y, w: Mm::new(68.0), h: Mm::new(11.0) }, size);
        page.art(svg, rect, "");
        y += Mm::new(14.0);
    }
    for line in lines {
        let room = Rect { y, h: Mm::new(9.0), ..column };
        page.text(words(room, Role::Text, line, 17.0, mixed(ink, palette.get("paper"), 0.1)));
        y += Mm::new(9.5);
    }

    // Bare pieces first; those that are veiled fill the places that are left.
    let others = || shown.iter().skip(1);
    let mut picked: Vec<&Shown> = others().filter(|piece| !piece.veiled).collect();
    picked.sort_by(|a, b| area(b.face.size).total_cmp(&area(a.face.size)));
    picked.extend(others().filter(|piece| piece.veiled));
    for (piece, place) in picked.into_iter().zip(FAN) {
        lay(&mut whole, piece, place, party, press)?;
    }
    if let Some(letter) = shown.first() {
        lay(&mut whole, letter, LETTER, party, press)?;
    }
    Ok(whole)
}

fn lay(
    page: &mut Page,
    piece: &Shown,
    (x, y, w, h, turn): (f64, f64, f64, f64, f64),
    party: &Party,
    press: &Press,
) -> Hinted<()> {
    let cell = Rect { x: Mm::new(x - w / 2.0), y: Mm::new(y - h / 2.0), w: Mm::new(w), h: Mm::new(h) };
    put(page, piece, within(cell, piece.face.size), turn, &party.palette, press)
}

fn area(size: Size) -> f64 {
    size.w.get() * size.h.get()
}

/// The largest rectangle of a size's shape in the middle of a cell.
fn within(cell: Rect, size: Size) -> Rect {
    let scale = (cell.w.get() / size.w.get()).min(cell.h.get() / size.h.get());
    let (w, h) = (size.w * scale, size.h * scale);
    Rect { x: cell.x + (cell.w - w) / 2.0, y: cell.y + (cell.h - h) / 2.0, w, h }
}
