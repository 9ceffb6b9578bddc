//! Banners: a flag for each letter.

use super::Bench;
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Art, Face, Layer, Outline, Piece};
use crate::kit::Edge;
use crate::limits;
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// Height of capitals in parts of the size: most text faces have 0.62 to 0.73, and the size must not be the less for it.
const CAPITAL: f64 = 0.62;
/// Widths of letters in parts of the size, generously: of the widest letters, and of the others.
const WIDE: f64 = 1.05;
const USUAL: f64 = 0.84;
/// Paper above a flag's border that holds its two holes, besides their own size.
const HANG: f64 = 7.0;
/// How far up a flag's point or fork reaches, in parts of its height.
const CUT: f64 = 0.2;

/// The size in points at which every one of these letters stands in its cell: all alike, and as large as fits.
pub(super) fn letter_size(letters: &[char], cell: Size) -> f64 {
    let wide = |c: &char| matches!(c, 'W' | 'M' | 'w' | 'm' | '\u{c6}' | '\u{152}' | '@' | '%' | '&');
    let widest = if letters.iter().any(wide) { WIDE } else { USUAL };
    (cell.h / CAPITAL).min(cell.w / widest).to_pt().get()
}

/// The flags of a banner.
pub(super) fn banner(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let text = bench.plain(&bench.spec.text);
    let letters: Vec<char> = text.chars().collect();
    if letters.is_empty() {
        return Err(Trouble::new("the banner has no letters").hint("write what it says"));
    }
    if letters.len() > limits::PROP_LETTERS {
        return Err(Trouble::new(format!("a banner of {} letters is too long", letters.len()))
            .hint(format!("use at most {}, or two banners", limits::PROP_LETTERS)));
    }
    let count = letters.len();
    let make = |(at, letter): (usize, &char)| {
        let holes = if bench.spec.hole.is_some() { ", punch both holes" } else { "" };
        let label = format!("flag {} of {count}{holes}", at + 1);
        Ok(bench.piece(&(at + 1).to_string(), &label, flag(bench, *letter, &letters)?))
    };
    letters.iter().enumerate().map(make).collect()
}

fn flag(bench: &Bench<'_>, letter: char, all: &[char]) -> Hinted<Face> {
    let size = bench.size;
    let shown = if letter == ' ' { "without a letter".to_owned() } else { format!("with the letter {letter}") };
    let mut face = Face::new(size, format!("A flag {shown}"));
    let hang = bench.spec.hole.map_or(Mm::ZERO, |hole| Mm::new(hole + HANG));
    let below = if bench.spec.edge == Edge::Straight { Mm::ZERO } else { size.h * CUT };
    let panel = Rect { x: Mm::ZERO, y: hang, w: size.w, h: size.h - hang - below };
    if panel.h < Mm::new(limits::PROP_MM.0) {
        return Err(Trouble::new("the holes of the banner leave no room for letters")
            .hint("make the flags higher or the holes smaller"));
    }
    let room = if bench.spec.edge == Edge::Forked {
        // The border goes along the fork: a whole frame above it would end where the cloth goes on.
        bench.forked(&mut face, panel, &fork_line(size, hang, below))?
    } else {
        let ground = bench.ground(&mut face, &["flag"], panel)?;
        crate::party::notes::joined(ground.title, ground.body)
    };
    if letter == ' ' {
        bench.seal(&mut face, room, 0.0)?;
    } else {
        let most = letter_size(all, Size { w: room.w, h: room.h });
        face.text(bench.letter(room, letter, most));
    }
    edge(bench, &mut face, below);
    if let Some(hole) = bench.spec.hole {
        let from_edge = Mm::new(hole / 2.0 + HANG / 2.0);
        for x in [from_edge, size.w - from_edge] {
            bench.hole(&mut face, x, from_edge, hole);
        }
    }
    Ok(face)
}

/// Distance of a forked flag's border from its sides.
const SIDE: Mm = Mm::new(2.2);

/// How far above the cut the line along it runs.
fn above_cut(below: Mm) -> Mm {
    Mm::new(4.0).min(below * 0.4)
}

/// The border of a forked flag: along its top, its sides and its fork.
fn fork_line(Size { w, h }: Size, hang: Mm, below: Mm) -> [(Mm, Mm); 5] {
    let (up, top) = (above_cut(below), hang + SIDE);
    let foot = h - up - (below - up) * (SIDE.get() / (w / 2.0).get());
    [(SIDE, top), (w - SIDE, top), (w - SIDE, foot), (w / 2.0, h - below), (SIDE, foot)]
}

/// Cuts the lower edge; along a point, draws a line.
fn edge(bench: &Bench<'_>, face: &mut Face, below: Mm) {
    let Size { w, h } = face.size;
    let y = h - below;
    let up = above_cut(below);
    let tips = match bench.spec.edge {
        Edge::Straight => return,
        Edge::Pointed => [(w, y), (w / 2.0, h), (Mm::ZERO, y)],
        Edge::Forked => [(w, h), (w / 2.0, y + up), (Mm::ZERO, h)],
    };
    let corners: Vec<(Mm, Mm)> = [(Mm::ZERO, Mm::ZERO), (w, Mm::ZERO)].into_iter().chain(tips).collect();
    shaped(face, &corners);
    if bench.spec.edge == Edge::Pointed {
        let aside = w / 2.0 * (up.get() / below.get());
        let mut drawing = Drawing::new(face.size);
        let pen = Pen::line(bench.cx.colour("ink"), Mm::new(0.35));
        for (from, to) in [((w - aside, y), (w / 2.0, h - up)), ((w / 2.0, h - up), (aside, y))] {
            drawing.line(from, to, pen);
        }
        face.art(drawing.svg(), Rect::of(face.size), String::new());
    }
}

/// Cuts a face along these corners. White paper lies under all of it, so that it shows on any ground.
pub(in crate::party) fn shaped(face: &mut Face, corners: &[(Mm, Mm)]) {
    let mut drawing = Drawing::new(face.size);
    drawing.polygon(corners, Pen::fill(Colour::WHITE));
    let art = Art { svg: drawing.svg(), rect: Rect::of(face.size), turn: 0.0, alt: String::new() };
    face.layers.insert(0, Layer::Art(art));
    face.outline = Outline::Path(path(corners));
}

/// A closed line through these corners, as path data.
fn path(corners: &[(Mm, Mm)]) -> String {
    let mut data = String::new();
    for (at, (x, y)) in corners.iter().enumerate() {
        let sign = if at == 0 { 'M' } else { 'L' };
        data.push_str(&format!("{sign}{:.3} {:.3}", x.get(), y.get()));
    }
    data.push('Z');
    data
}
