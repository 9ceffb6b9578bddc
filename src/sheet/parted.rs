//! Pieces that are larger than a sheet, parted over several: where to cut, how the parts are joined, and what each is
//! called.
//!
//! A piece is cut into bands, and each band into parts at places of its own, so that a cut finds its way past texts and
//! pictures. A title over which no cut finds a way is moved to the part on which most of it stood.

use crate::face::{Align, Face, Joint, Layer, Piece, TextRun, Valign, reach};
use crate::units::{Mm, Pt, Rect, Size};

/// Layers that cover more of a piece than this, width by width and height by height, are its ground: every cut crosses
/// them.
const GROUND: f64 = 0.6;
/// Places of a cut that are tried besides the edges of what it is to spare.
const PLACES: u8 = 40;
/// How far a cut keeps away from what it spares, where there is room.
const CLEAR: Mm = Mm::new(0.6);
/// What it costs to cut through a text, and through a picture.
const COST: (usize, usize) = (40, 2);
/// Parts slimmer than this are made only where that spares more than [`SLIM_COST`]: they are easily lost.
const SLIM: Mm = Mm::new(45.0);
const SLIM_COST: usize = 12;
/// Width of a character in parts of its size, rather too much than too little (whether a text fits beside a cut), and
/// about right (how large a title may then be).
const CHARACTER: (f64, f64) = (0.62, 0.5);
/// Height of a line in parts of its size.
const LINE: f64 = 1.4;
/// Width of the tab by which a part is joined to the next (common practice for posters of several sheets, no source).
const TAB: Mm = Mm::new(10.0);
/// Air between a moved title and the cut.
const BESIDE: Mm = Mm::new(3.0);

/// The parts of a piece, band by band, each with its tabs no larger than `most`; and, where no cut finds a way past a
/// text, the words that it goes through, to be read beside the piece.
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
    let all: Vec<Rect> = bands.iter().flatten().copied().collect();
    let (grid, row) = (bands.len() > 1 && all.len() > bands.len(), upright(&bands));
    let named = bands.iter().enumerate().flat_map(|(band, parts)| parts.iter().map(move |part| (band + 1, *part)));
    let parts = named.enumerate().map(|(at, (band, rect))| {
        let place = if grid { format!(", {} {band}", if row { "column" } else { "row" }) } else { String::new() };
        let next = |follows: &dyn Fn(Rect, Rect) -> bool, turned: bool| -> Vec<usize> {
            let pair = |other: Rect| if turned { follows(other, rect) } else { follows(rect, other) };
            (1..).zip(&all).filter(|(_, other)| pair(**other)).map(|(number, _)| number).collect()
        };
        let (right, below) = (next(&beside, false), next(&below, false));
        let (left, above) = (next(&beside, true), next(&self::below, true));
        let joint = Joint {
            tab: TAB,
            right: sayings(&right),
            below: sayings(&below),
            laid: (!left.is_empty(), !above.is_empty()),
        };
        let mut on: Vec<usize> = left.into_iter().chain(above).collect();
        on.sort_unstable();
        let join = match on.as_slice() {
            [] => "begin with it".to_owned(),
            [one] => format!("glue it on the tab of part {one}"),
            several => format!("glue it on the tabs of parts {}", counted(several)),
        };
        Piece {
            label: format!("{}, part {} of {}{place}: {join}", piece.label, at + 1, all.len()),
            front: face.part(rect).joined(&joint),
            ..piece.clone()
        }
    });
    parts.chain(words(piece, &cut_texts(&face, &all), most)).collect()
}

/// Whether the second part follows on the right of the first.
fn beside(first: Rect, second: Rect) -> bool {
    let shared = first.bottom().min(second.bottom()) - first.y.max(second.y);
    (first.right() - second.x).get().abs() < 1e-6 && shared.get() > 1e-6
}

/// Whether the second part follows below the first.
fn below(first: Rect, second: Rect) -> bool {
    let shared = first.right().min(second.right()) - first.x.max(second.x);
    (first.bottom() - second.y).get().abs() < 1e-6 && shared.get() > 1e-6
}

/// What may be said on the tab onto which these parts are glued, the longest first.
fn sayings(parts: &[usize]) -> Vec<String> {
    let name = match parts {
        [] => return Vec::new(),
        [one] => format!("part {one}"),
        several => format!("parts {}", counted(several)),
    };
    let wide = TAB.get();
    vec![
        format!("Glue {name} over this tab, up to the line. Overlap {wide} mm."),
        format!("Glue {name} over this tab: {wide} mm"),
        format!("Glue {name} here"),
        name,
        counted(parts),
    ]
}

/// "1, 2 and 3".
fn counted(numbers: &[usize]) -> String {
    let words: Vec<String> = numbers.iter().map(usize::to_string).collect();
    match words.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
        None => String::new(),
    }
}

/// The texts of a face that no part holds whole.
fn cut_texts(face: &Face, parts: &[Rect]) -> Vec<TextRun> {
    let whole = |run: &TextRun| parts.iter().any(|part| part.holds(reach(&Layer::Text(run.clone()))));
    face.runs().filter(|run| !whole(run)).cloned().collect()
}

/// Pieces with the words that cuts go through, paragraph by paragraph one below another.
fn words(piece: &Piece, cut: &[TextRun], most: Size) -> Vec<Piece> {
    let mut pages: Vec<Face> = Vec::new();
    let paragraphs = cut.iter().flat_map(|run| {
        run.text.paragraphs.iter().map(|paragraph| {
            let mut one = run.clone();
            one.text.paragraphs = vec![paragraph.clone()];
            one
        })
    });
    for run in paragraphs {
        let h =
            Mm::new(lines_of(&run, most.w - BESIDE * 2.0) * LINE * run.least.to_mm().get()).min(most.h - BESIDE * 2.0);
        if pages.last().is_none_or(|page| page.size.h + h + BESIDE > most.h) {
            pages.push(Face::new(Size { w: most.w, h: BESIDE }, piece.front.alt.clone()));
        }
        let Some(page) = pages.last_mut() else { continue };
        let rect = Rect { x: BESIDE, y: page.size.h, w: most.w - BESIDE * 2.0, h };
        page.size.h = rect.bottom() + BESIDE;
        let set = TextRun { rect, most: run.least, turn: 0.0, within: None, whole_lines: false, ..run.clone() };
        page.text(set.aligned(Align::Left, Valign::Top));
    }
    let label = format!("{}, words to read beside it", piece.label);
    let pages = pages.into_iter().map(|front| Piece { label: label.clone(), front, measured: false, ..piece.clone() });
    pages.collect()
}

/// How many lines a text takes at its least size in a column, rather too many than too few.
fn lines_of(run: &TextRun, width: Mm) -> f64 {
    let width = width.to_pt().get().max(1.0);
    let text = run.text.text();
    #[expect(clippy::cast_precision_loss, reason = "the length of a text on a piece")]
    let long = |part: &str| part.chars().count() as f64;
    text.lines().map(|part| (long(part) * CHARACTER.0 * run.least.get() / width).ceil().max(1.0)).sum()
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
    // All parts but the last have a tab.
    ((length - TAB).get() / (most - TAB).get().max(1.0) - 1e-6).ceil().clamp(1.0, 100.0) as usize
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
        let low = (end - TAB - (most - TAB) * left as f64).max(last);
        let high = last + most - TAB;
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
    let (width, lines) = (rect.w.to_pt().get().max(1.0), lines_of(run, rect.w));
    if rect.h.to_pt().get() < (lines - 1.0) * LINE * run.least.get() + run.least.get() {
        return;
    }
    run.rect = rect;
    if lines <= 1.0 {
        #[expect(clippy::cast_precision_loss, reason = "a title")]
        let long = run.text.text().chars().count().max(1) as f64;
        run.most = run.most.min(Pt::new(width / (long * CHARACTER.1))).max(run.least);
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
