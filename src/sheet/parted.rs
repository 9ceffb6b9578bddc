//! Pieces that are larger than a sheet, parted over several: where to cut, and what each part is called.
//!
//! A piece is cut into bands, and each band into parts at places of its own, so that a cut finds its way past texts and
//! pictures. A title over which no cut finds a way is moved to the part on which most of it stood.

use crate::face::{Face, Layer, Piece, TextRun, reach};
use crate::units::{Mm, Pt, Rect, Size};

/// Layers that cover more of a piece than this, width by width and height by height, are its ground: every cut crosses
/// them.
const GROUND: f64 = 0.6;
/// Places of a cut that are tried besides the edges of what it is to spare.
const PLACES: u8 = 40;
/// How far a cut keeps away from what it spares, where there is room.
const CLEAR: Mm = Mm::new(0.6);
/// What it costs to cut through a text, and through a picture.
const COST: (usize, usize) = (4, 1);
/// Parts slimmer than this are made only where that spares more than [`SLIM_COST`]: they are easily lost.
const SLIM: Mm = Mm::new(45.0);
const SLIM_COST: usize = 12;
/// Width of a character in parts of its size, rather too much than too little (whether a text fits beside a cut), and
/// about right (how large a title may then be).
const CHARACTER: (f64, f64) = (0.62, 0.5);
/// Height of a line in parts of its size.
const LINE: f64 = 1.4;
/// Air between a moved title and the cut.
const BESIDE: Mm = Mm::new(3.0);

/// The parts of a piece, band by band, each no larger than `most`; to be joined edge to edge.
pub(super) fn parts(piece: &Piece, most: Size) -> Vec<Piece> {
    let lying = Size { w: most.h, h: most.w };
    let ways = [(most, false), (most, true), (lying, false), (lying, true)];
    let made = ways.into_iter().map(|(most, upright)| bands(&piece.front, most, upright));
    // Few parts, then few things cut; of two ways alike the one that leaves the sheets upright.
    let Some(bands) = made.min_by_key(|bands| (bands.iter().map(Vec::len).sum::<usize>(), cost(&piece.front, bands)))
    else {
        return vec![piece.clone()];
    };
    let face = beside_cuts(&piece.front, &bands);
    let total: usize = bands.iter().map(Vec::len).sum();
    let (grid, row) = (bands.len() > 1 && total > bands.len(), upright(&bands));
    let parts = bands.iter().enumerate().flat_map(|(band, parts)| parts.iter().map(move |part| (band + 1, *part)));
    parts
        .enumerate()
        .map(|(at, (band, rect))| {
            let place = if grid { format!(", {} {band}", if row { "column" } else { "row" }) } else { String::new() };
            Piece {
                label: format!("{}, part {} of {total}{place}: join the edges", piece.label, at + 1),
                front: face.part(rect),
                ..piece.clone()
            }
        })
        .collect()
}

/// Whether bands stand side by side.
fn upright(bands: &[Vec<Rect>]) -> bool {
    match (bands.first().and_then(|band| band.first()), bands.get(1).and_then(|band| band.first())) {
        (Some(first), Some(second)) => second.x > first.x,
        _ => false,
    }
}

/// The parts in bands from side to side, or upright ones from top to bottom.
fn bands(face: &Face, most: Size, upright: bool) -> Vec<Vec<Rect>> {
    let whole = Rect::of(face.size);
    cuts(face, whole, most, upright)
        .into_iter()
        .map(|band| cuts(face, band, most, !upright).into_iter().collect())
        .collect()
}

/// What all cuts go through.
fn cost(face: &Face, bands: &[Vec<Rect>]) -> usize {
    let parts = || bands.iter().flatten();
    let cut = |layer: &&Layer| !ground(face, layer) && parts().all(|part| !part.holds(reach(layer)));
    face.layers.iter().filter(cut).map(weight).sum()
}

const fn weight(layer: &Layer) -> usize {
    match layer {
        Layer::Text(_) => COST.0,
        Layer::Art(_) => COST.1,
    }
}

fn ground(face: &Face, layer: &Layer) -> bool {
    let rect = reach(layer);
    matches!(layer, Layer::Art(_)) && rect.w > face.size.w * GROUND && rect.h > face.size.h * GROUND
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a handful of sheets")]
fn needed(length: Mm, most: Mm) -> usize {
    (length.get() / most.get().max(1.0) - 1e-6).ceil().clamp(1.0, 100.0) as usize
}

/// A part of a face, cut across (side by side) or down (one below another), into as few as go: each cut where it
/// crosses least, near an even share.
fn cuts(face: &Face, within: Rect, most: Size, across: bool) -> Vec<Rect> {
    let (start, end, most) =
        if across { (within.x, within.right(), most.w) } else { (within.y, within.bottom(), most.h) };
    let spared: Vec<(Mm, Mm, usize)> = face
        .layers
        .iter()
        .filter(|layer| !ground(face, layer) && within.meets(reach(layer)))
        .map(|layer| {
            let rect = reach(layer);
            let (from, to) = if across { (rect.x, rect.right()) } else { (rect.y, rect.bottom()) };
            (from - CLEAR, to + CLEAR, weight(layer))
        })
        .collect();
    let parts = needed(end - start, most);
    let mut at = vec![start];
    #[expect(clippy::cast_precision_loss, reason = "a handful of sheets")]
    for left in (1..parts).rev() {
        let last = at.last().copied().unwrap_or(start);
        let low = (end - most * left as f64).max(last);
        let high = last + most;
        let even = last + (end - last) / (left + 1) as f64;
        let places = (0..=PLACES).map(|step| low + (high - low) * (f64::from(step) / f64::from(PLACES)));
        let edges = spared.iter().flat_map(|(from, to, _)| [*from, *to]).filter(|cut| low <= *cut && *cut <= high);
        let cost = |cut: Mm| -> usize {
            let slim = if cut - last < SLIM || end - cut < SLIM { SLIM_COST } else { 0 };
            let through = spared.iter().filter(|(from, to, _)| *from < cut && cut < *to);
            slim + through.map(|(_, _, weight)| weight).sum::<usize>()
        };
        let best = places.chain(edges).map(|cut| (cost(cut), (cut - even).get().abs(), cut)).min_by(|a, b| {
            let near = a.1.total_cmp(&b.1);
            a.0.cmp(&b.0).then(near).then(a.2.get().total_cmp(&b.2.get()))
        });
        at.push(best.map_or(even, |(_, _, cut)| cut));
    }
    at.push(end);
    let part = |pair: &[Mm]| match *pair {
        [from, to] if across => Some(Rect { x: from, w: to - from, ..within }),
        [from, to] => Some(Rect { y: from, h: to - from, ..within }),
        _ => None,
    };
    at.windows(2).filter_map(part).collect()
}

/// The face with every title that a cut would go through beside that cut instead, where it fits there.
fn beside_cuts(face: &Face, bands: &[Vec<Rect>]) -> Face {
    let mut face = face.clone();
    let whole = Rect::of(face.size);
    for layer in &mut face.layers {
        let Layer::Text(run) = layer else { continue };
        let cut = bands.iter().flatten().all(|part| !part.holds(run.rect)) && whole.holds(run.rect);
        if !cut || run.turn != 0.0 || run.within.is_some() || run.whole_lines {
            continue;
        }
        let area = |rect: &Rect| rect.w.get() * rect.h.get();
        let shares = bands.iter().flatten().map(|part| common(*part, run.rect));
        if let Some(rect) = shares.max_by(|a, b| area(a).total_cmp(&area(b))) {
            move_into(run, clear_of_cuts(rect, run.rect));
        }
    }
    face
}

/// Gives a run its new place if it fits there; one of a single line then stays in one.
fn move_into(run: &mut TextRun, rect: Rect) {
    let width = rect.w.to_pt().get().max(1.0);
    let text = run.text.text();
    #[expect(clippy::cast_precision_loss, reason = "the length of a text on a piece")]
    let long = |part: &str| part.chars().count() as f64;
    let lines: f64 =
        text.lines().map(|part| (long(part) * CHARACTER.0 * run.least.get() / width).ceil().max(1.0)).sum();
    if rect.h.to_pt().get() < (lines - 1.0) * LINE * run.least.get() + run.least.get() {
        return;
    }
    run.rect = rect;
    if lines <= 1.0 {
        run.most = run.most.min(Pt::new(width / (long(&text).max(1.0) * CHARACTER.1))).max(run.least);
    }
}

/// What two rectangles share.
fn common(a: Rect, b: Rect) -> Rect {
    let (x, y) = (a.x.max(b.x), a.y.max(b.y));
    let (w, h) = (a.right().min(b.right()) - x, a.bottom().min(b.bottom()) - y);
    Rect { x, y, w: w.max(Mm::ZERO), h: h.max(Mm::ZERO) }
}

/// A share of a rectangle, with air along those sides that are not the rectangle's own.
fn clear_of_cuts(share: Rect, whole: Rect) -> Rect {
    let air = |moved: bool| if moved { BESIDE } else { Mm::ZERO };
    let (left, right) = (air(share.x > whole.x), air(share.right() < whole.right()));
    let (top, foot) = (air(share.y > whole.y), air(share.bottom() < whole.bottom()));
    let size = |length: Mm, a: Mm, b: Mm| (length - a - b).max(Mm::ZERO);
    Rect { x: share.x + left, y: share.y + top, w: size(share.w, left, right), h: size(share.h, top, foot) }
}
