//! The panels, on a sheet or a card each.

use super::{Dot, PANEL, PANELS, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::sketch::{jitter, with_text};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Greatest breadth of a panel.
const BROAD: Mm = Mm::new(80.0);
/// How many panels stand on a sheet in large print, and how much larger their numbers are.
const LARGE_PANELS: usize = 2;
const LARGER: f64 = 1.35;
/// What is left free beside the rule towards the frame.
const MARGIN: Mm = Mm::new(5.0);
/// Radius of a dot.
const DOT: Mm = Mm::new(0.9);
/// Breadth and height of the room for a number of two digits.
const NUMBER: (Mm, Mm) = (Mm::new(5.6), Mm::new(4.0));
/// Where the middle of a number may stand from its dot: on eight sides, the first that is free.
const SIDES: [(f64, f64); 8] =
    [(3.4, -2.2), (3.9, 0.0), (-3.4, -2.2), (-3.9, 0.0), (3.4, 2.3), (-3.4, 2.3), (0.0, -3.2), (0.0, 3.3)];

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    if view.loose {
        return cards(view, cx);
    }
    let on_one = if cx.large() { LARGE_PANELS } else { view.panels.len() };
    let shares: Vec<&[Vec<Dot>]> = view.panels.chunks(on_one.max(1)).collect();
    let of = shares.len();
    shares.into_iter().enumerate().map(|(at, share)| sheet(view, cx, share, (at, of))).collect()
}

/// One of the sheets: which of how many, with the panels on it.
fn sheet(view: &View, cx: &Dressing<'_>, panels: &[Vec<Dot>], (at, of): (usize, usize)) -> Hinted<Piece> {
    let rule = texts::rule(view);
    let alt = format!("{}: {} panels of numbered dots. {rule}", capital(texts::name(cx)), view.panels.len());
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("panels-title", "Dot to dot"), alt)?;
    let words = with_text(&view.text, &rule);
    let usual = slot.h * if view.text.is_empty() { 0.1 } else { 0.155 };
    let inner = Rect { x: slot.x + MARGIN, w: slot.w - MARGIN * 2.0, ..slot };
    let told = Rect { h: paper::told_height(cx, &words, inner.w, usual), ..inner };
    paper::words(&mut face, cx, told, words, 14.0);
    let space = Rect { y: told.bottom() + mm(1.0), h: slot.h - told.h - mm(1.0), ..slot };
    // As many panels side by side as make them largest.
    let count = panels.len().max(1);
    let cell = |across: usize| Size { w: space.w / across as f64, h: space.h / count.div_ceil(across) as f64 };
    let by = if cx.large() { LARGER } else { 1.0 };
    let broad = |across: usize| breadth(cell(across), by);
    let across = (1..=count).reduce(|best, next| if broad(next) > broad(best) { next } else { best }).unwrap_or(1);
    let Size { w, h } = cell(across);
    let first = if cx.large() { at * LARGE_PANELS } else { 0 };
    for (index, dots) in panels.iter().enumerate() {
        // A last row that is not full stands in the middle.
        let in_row =
            if index / across == (count - 1) / across { count - (count - 1) / across * across } else { across };
        let left = (space.w - w * in_row as f64) / 2.0;
        let place =
            Rect { x: space.x + left + w * (index % across) as f64, y: space.y + h * (index / across) as f64, w, h };
        panel(&mut face, cx, place, dots, Some(first + index + 1), (view, by));
    }
    if of == 1 {
        return Ok(cx.piece(PANELS, "", face));
    }
    let mut piece = cx.piece(PANELS, &format!("sheet {} of {of}", at + 1), face);
    piece.id = format!("{}-{PANELS}-{}", cx.puzzle, at + 1);
    Ok(piece)
}

fn cards(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = Vec::new();
    for (index, dots) in view.panels.iter().enumerate() {
        let title = format!("Panel {}", index + 1);
        let alt = format!("{title} of {}: numbered dots. {}", texts::name(cx), texts::short_rule(view));
        let (mut face, slot) = paper::sheet(cx, "portrait", &title, alt)?;
        let told = Rect { h: slot.h * 0.13, ..slot };
        paper::words(&mut face, cx, told, Rich::plain(texts::short_rule(view)), 11.0);
        let place = Rect { y: told.bottom(), h: slot.h - told.h, ..slot };
        panel(&mut face, cx, place, dots, None, (view, 1.0));
        let mut piece = cx.piece(PANELS, &format!("panel {}", index + 1), face);
        piece.id = format!("{}-{PANELS}-{}", cx.puzzle, index + 1);
        pieces.push(piece);
    }
    Ok(pieces)
}

/// Height of a panel's head with its number.
const HEAD: Mm = Mm::new(6.0);
/// Air about a panel.
const AIR: Mm = Mm::new(1.5);

/// How broad a panel is in a cell of this size.
fn breadth(cell: Size, by: f64) -> Mm {
    let ratio = f64::from(PANEL.0) / f64::from(PANEL.1);
    (cell.w - AIR * 2.0).min((cell.h - HEAD - AIR * 2.0) * ratio).min(BROAD * by)
}

/// Draws a panel, with dots and numbers `by` so much larger.
fn panel(
    face: &mut Face,
    cx: &Dressing<'_>,
    place: Rect,
    dots: &[Dot],
    number: Option<usize>,
    (view, by): (&View, f64),
) {
    let head = if number.is_some() { HEAD } else { Mm::ZERO };
    let room = Size { w: place.w, h: place.h + HEAD - head };
    let w = breadth(room, by);
    let h = w * (f64::from(PANEL.1) / f64::from(PANEL.0));
    let rect = Rect { x: place.x + (place.w - w) / 2.0, y: place.y + head + (place.h - head - h) / 2.0, w, h };
    if let Some(number) = number {
        let title = Rect { y: rect.y - head, h: head, ..rect };
        paper::words(face, cx, title, Rich::plain(format!("Panel {number}")), 13.0);
    }
    let mut drawing = Drawing::new(Size { w, h });
    let (ink, line) = (cx.colour("ink"), cx.colour("line"));
    let edge = Rect::of(Size { w, h }).inset(mm(0.3));
    drawing.rect(edge, mm(2.5), Pen { fill: Some(cx.colour("paper")), ..Pen::line(line, mm(0.4)) });
    if view.baseline {
        ground(&mut drawing, Size { w, h }, cx);
    }
    let at = |dot: &Dot| (w * (f64::from(dot.x) / f64::from(PANEL.0)), w * (f64::from(dot.y) / f64::from(PANEL.0)));
    let middles: Vec<(Mm, Mm)> = dots.iter().map(at).collect();
    for (x, y) in &middles {
        drawing.circle(*x, *y, DOT * by, Pen::fill(ink));
    }
    face.art(drawing.svg(), rect, String::new());
    let mut taken: Vec<Rect> = middles.iter().map(|(x, y)| about(*x, *y, DOT * by * 2.0, DOT * by * 2.0)).collect();
    for (dot, (x, y)) in dots.iter().zip(&middles) {
        let Some(number) = dot.number else { continue };
        let text = number.to_string();
        let (nw, nh) = (NUMBER.0 * by * if text.len() > 1 { 1.0 } else { 0.64 }, NUMBER.1 * by);
        let inside = Rect::of(Size { w, h }).inset(mm(0.6));
        let spot = |(dx, dy): &(f64, f64)| {
            let dx = if text.len() > 1 { *dx } else { *dx * 0.76 };
            about(*x + mm(dx * by), *y + mm(*dy * by), nw, nh)
        };
        let free = |rect: &Rect| inside.holds(*rect) && taken.iter().all(|other| !other.meets(*rect));
        // Where no side is free the one is taken that lies on the least.
        let crowd = |rect: &Rect| taken.iter().filter(|other| other.meets(*rect)).count();
        // A number must stand clearly nearer to its own dot than to any other.
        let mine = |rect: &Rect| {
            let own = gap((*x, *y), *rect).get() + 0.4;
            middles.iter().all(|other| other == &(*x, *y) || gap(*other, *rect).get() > own)
        };
        let within: Vec<Rect> = SIDES.iter().map(spot).filter(|rect| inside.holds(*rect)).collect();
        let own: Vec<Rect> = within.iter().copied().filter(mine).collect();
        let sides = if own.is_empty() { within } else { own };
        let best = sides.iter().find(|rect| free(rect)).or_else(|| sides.iter().min_by_key(|rect| crowd(rect)));
        let best = best.copied().unwrap_or_else(|| about(*x, *y, nw, nh));
        taken.push(best);
        paper::symbol(face, cx, best.moved(rect.x, rect.y), &text, 10.5);
    }
}

/// How far a point is from a rectangle.
fn gap((x, y): (Mm, Mm), to: Rect) -> Mm {
    let (dx, dy) = (x - x.max(to.x).min(to.right()), y - y.max(to.y).min(to.bottom()));
    Mm::new(dx.get().hypot(dy.get()))
}

fn about(x: Mm, y: Mm, w: Mm, h: Mm) -> Rect {
    Rect { x: x - w / 2.0, y: y - h / 2.0, w, h }
}

/// A line of ground with a few tufts: this side is down.
fn ground(drawing: &mut Drawing, size: Size, cx: &Dressing<'_>) {
    let (y, left, right) = (size.h - mm(2.6), mm(3.0), size.w - mm(3.0));
    drawing.line((left, y), (right, y), Pen::line(cx.colour("ink"), mm(0.5)));
    let mut x = left + mm(1.5);
    for tuft in 0..40_usize {
        if x > right - mm(1.5) {
            break;
        }
        let (lean, far) = jitter(tuft, 0, 7);
        drawing.line((x, y), (x - mm(1.2 + 0.3 * lean), y + mm(1.4)), Pen::line(cx.colour("line"), mm(0.35)));
        x += mm(3.2 + far);
    }
}
