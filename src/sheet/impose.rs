use std::collections::BTreeMap;

use super::pack::{Item, Spot, pack};
use super::parted::parts;
use super::room::{LABEL_AIR, Room, folds};
use super::{Duplex, Paper, Placed, Sheet};
use super::{alone, labels};
use crate::diag::{Hinted, Trouble};
use crate::face::{Audience, Outline, Piece, Stock};
use crate::limits;
use crate::units::{Mm, Rect, Size};

/// Height of the page's head: one line of 7.5 pt and air.
pub const HEAD: Mm = Mm::new(5.5);
/// Height of the page's foot: the check bar, or one line.
pub const FOOT: Mm = Mm::new(7.0);
/// Least distance between two pieces, enough for a label and for scissors.
pub const GUTTER: Mm = Mm::new(5.0);
/// Height of a label below its piece, the air between them included.
pub const LABEL: Mm = Mm::new(3.8);
/// Distance of a label from the corners, where the cut marks stand.
const LABEL_INSET: Mm = Mm::new(1.2);
/// A size counts as a page's when it differs by no more.
const SAME: f64 = 0.5;

/// The part of a page for pieces with their labels: between head and foot, inside the printer's margin.
#[must_use]
pub fn content(paper: Paper) -> Rect {
    Room::of(false).content(paper)
}

/// The largest piece that a page takes with its cut line and label.
#[must_use]
pub fn largest(paper: Paper) -> Size {
    Room::of(false).largest(paper)
}

/// Lays the pieces for one audience onto sheets, copies and all.
///
/// A piece of the size of the page, or of its safe part, has a sheet of its own without cut line, head or foot: the
/// letter. Pieces with a back come last, each of their sheets followed by one with the backs, for a printer that turns
/// the paper over its long edge.
///
/// # Errors
/// When a piece is larger than the page takes; when there are too many.
pub fn impose(pieces: &[Piece], paper: Paper, audience: Audience, title: &str) -> Hinted<Vec<Sheet>> {
    impose_for(pieces, paper, audience, title, &Duplex::default())
}

/// As [`impose`], for a printer that turns the paper, and shifts it, in its own way.
///
/// # Errors
/// As there.
pub fn impose_for(
    pieces: &[Piece],
    paper: Paper,
    audience: Audience,
    title: &str,
    duplex: &Duplex,
) -> Hinted<Vec<Sheet>> {
    let mine = || pieces.iter().filter(|piece| piece.audience == audience && piece.copies > 0);
    let heading = format!("{title} · {}", for_whom(audience));
    let total: usize = mine().map(|piece| usize::from(piece.copies)).sum();
    if total > limits::PLACED {
        return Err(Trouble::new(format!("{total} pieces are too many to print at once"))
            .hint(format!("at most {} can be; ask for fewer copies", limits::PLACED)));
    }
    let large = mine().any(|piece| piece.large);
    let room = Room::of(large);
    let parted: Vec<Piece> = mine().flat_map(|piece| on_sheets(piece, paper, room)).collect();
    let mut sheets = Vec::new();
    let (mut single, mut double) = (Vec::new(), Vec::new());
    for (at, piece) in parted.iter().enumerate() {
        let copies = usize::from(piece.copies);
        if let Some(rect) = whole_page(piece.front.size, paper, room) {
            for _ in 0..copies {
                sheets.push(page(piece, rect, paper, title));
            }
        } else if !takes(room.largest(paper), piece.front.size) && alone::alone(piece, paper, room) {
            for _ in 0..copies {
                sheets.extend(alone::sheet(piece, paper, room, &heading));
            }
        } else {
            fits(piece, paper, room)?;
            let side = if piece.back.is_some() { &mut double } else { &mut single };
            side.extend(std::iter::repeat_n(at, copies));
        }
    }
    let head = Head { words: &heading, large };
    // One sheet goes through the printer on one kind of paper.
    for stock in Stock::ALL {
        let own = |side: &[usize]| -> Vec<&Piece> {
            side.iter().filter_map(|at| parted.get(*at)).filter(|piece| piece.stock == stock).collect()
        };
        sheets.extend(lay(&own(&single), paper, head)?);
        for sheet in lay(&own(&double), paper, head)? {
            let back = back_of(&sheet, pieces, duplex);
            sheets.extend([sheet, back]);
        }
    }
    if sheets.len() > limits::SHEETS {
        return Err(Trouble::new(format!("{} sheets are too many to print at once", sheets.len()))
            .hint(format!("at most {} can be; ask for fewer copies", limits::SHEETS)));
    }
    Ok(sheets)
}

/// What stands at the head of a run of sheets, and how large.
#[derive(Clone, Copy)]
struct Head<'a> {
    words: &'a str,
    large: bool,
}

/// A piece as it is printed: itself, or in parts where it is large print and larger than a sheet.
fn on_sheets(piece: &Piece, paper: Paper, room: Room) -> Vec<Piece> {
    let whole = whole_page(piece.front.size, paper, room).is_some();
    let fits = whole || takes(room.largest(paper), piece.front.size) || alone::alone(piece, paper, room);
    if !piece.large || fits || piece.back.is_some() {
        return vec![piece.clone()];
    }
    parts(piece, room.largest(paper))
}

/// Whether a sheet takes a piece of this size, turned or not.
fn takes(most: Size, size: Size) -> bool {
    let takes = |w: Mm, h: Mm| w.get() <= most.w.get() + 1e-6 && h.get() <= most.h.get() + 1e-6;
    takes(size.w, size.h) || takes(size.h, size.w)
}

const fn for_whom(audience: Audience) -> &'static str {
    match audience {
        Audience::Players => "for the guests",
        Audience::Hints => "hint tokens, for the host",
        Audience::Host => "for the host only",
    }
}

/// Where a piece of the page's own size stands, if it has that size.
fn whole_page(size: Size, paper: Paper, room: Room) -> Option<Rect> {
    let same = |rect: Rect| (rect.w.get() - size.w.get()).abs() <= SAME && (rect.h.get() - size.h.get()).abs() <= SAME;
    let (safe, below) = (paper.safe(), room.page(paper));
    let below = Rect { y: safe.bottom() - below.h, h: below.h, ..safe };
    [below, safe, Rect::of(paper.size())].into_iter().find(|rect| same(*rect)).map(|rect| Rect {
        w: size.w,
        h: size.h,
        ..rect
    })
}

fn page(piece: &Piece, rect: Rect, paper: Paper, title: &str) -> Sheet {
    // A piece that fills the page to its top leaves no room for a head.
    let headed = rect.y > paper.safe().y;
    let placed = Placed {
        piece: piece.id.clone(),
        face: piece.front.clone(),
        rect,
        turned: false,
        back: false,
        over: false,
        // A place of no size: the name is not printed, it only says what the page is.
        label: piece.label.clone(),
        label_rect: Rect::default(),
        cut: false,
    };
    Sheet {
        paper,
        audience: piece.audience,
        heading: if headed {
            format!("{title} · {} · {}", piece.label.to_lowercase(), for_whom(piece.audience))
        } else {
            String::new()
        },
        placed: vec![placed],
        folds: Vec::new(),
        check_bar: None,
        large: piece.large,
        stock: Some(piece.stock),
    }
}

/// Holds that a sheet of this paper takes a piece, whole or, in large print, in parts.
///
/// # Errors
/// When it is too large; the hint says how large it may be.
pub fn holds(piece: &Piece, paper: Paper) -> Hinted<()> {
    let room = Room::of(piece.large);
    if piece.large && piece.back.is_none() || whole_page(piece.front.size, paper, room).is_some() {
        return Ok(());
    }
    fits(piece, paper, room)
}

fn fits(piece: &Piece, paper: Paper, room: Room) -> Hinted<()> {
    let (size, most) = (piece.front.size, room.largest(paper));
    if takes(most, size) {
        return Ok(());
    }
    let mm = |mm: Mm| (mm.get() * 10.0).round() / 10.0;
    Err(Trouble::new(format!(
        "\"{}\" is {} × {} mm, too large for one {} sheet, turned or not",
        piece.label,
        mm(size.w),
        mm(size.h),
        paper.word()
    ))
    .at(format!("piece {}", piece.id))
    .hint(format!("make it at most {} × {} mm, or two pieces that are joined", mm(most.w), mm(most.h))))
}

/// What a label needs below a piece beyond the room that every label has, for the piece upright and turned.
struct Below {
    upright: Mm,
    turned: Mm,
}

fn below(piece: &Piece, room: Room, large: bool) -> Below {
    let more = |side: Mm| if large { labels::more_below(&piece.label, label_width(side, room)) } else { Mm::ZERO };
    Below { upright: more(piece.front.size.w), turned: more(piece.front.size.h) }
}

/// How wide a label may be below a piece of this width.
fn label_width(side: Mm, room: Room) -> Mm {
    side - (LABEL_INSET - room.lean) * 2.0
}

fn lay(pieces: &[&Piece], paper: Paper, head: Head<'_>) -> Hinted<Vec<Sheet>> {
    let room = Room::of(head.large);
    let mut groups: BTreeMap<&str, usize> = BTreeMap::new();
    let items: Vec<Item> = pieces
        .iter()
        .map(|piece| {
            let name = if piece.group.is_empty() { piece.id.as_str() } else { piece.group.as_str() };
            let next = groups.len();
            let (size, below) = (piece.front.size, below(piece, room, head.large));
            // Upright or turned, its label finds what it needs below it.
            let with_label = Size { w: size.w + below.turned, h: size.h + below.upright };
            let size = if takes(room.largest(paper), with_label) { with_label } else { size };
            Item { size, group: *groups.entry(name).or_insert(next) }
        })
        .collect();
    let spots = pack(&items, room.largest(paper), room.gutter, true)?;
    let mut sheets: BTreeMap<usize, Vec<(&Piece, Spot)>> = BTreeMap::new();
    for (piece, spot) in pieces.iter().zip(&spots) {
        let Size { w, h } = piece.front.size;
        let (w, h) = if spot.turned { (h, w) } else { (w, h) };
        sheets.entry(spot.page).or_default().push((piece, Spot { rect: Rect { w, h, ..spot.rect }, ..*spot }));
    }
    Ok(sheets.into_values().map(|spots| sheet(spots, paper, head)).collect())
}

fn sheet(mut spots: Vec<(&Piece, Spot)>, paper: Paper, head: Head<'_>) -> Sheet {
    let room = Room::of(head.large);
    let (safe, content) = (paper.safe(), room.content(paper));
    // Reading order: from the top, then from the left.
    spots.sort_by(|(_, a), (_, b)| {
        a.rect.y.get().total_cmp(&b.rect.y.get()).then(a.rect.x.get().total_cmp(&b.rect.x.get()))
    });
    let used = spots.iter().map(|(_, spot)| spot.rect.right()).fold(Mm::ZERO, Mm::max);
    let (dx, dy) = (content.x + (content.w - used) / 2.0, content.y);
    let folds =
        spots.iter().flat_map(|(piece, spot)| folds(&piece.front, spot.rect.moved(dx, dy), spot.turned)).collect();
    let mut placed: Vec<Placed> = spots
        .iter()
        .map(|(piece, spot)| {
            let rect = spot.rect.moved(dx, dy);
            let below = below(piece, room, head.large);
            let more = if spot.turned { below.turned } else { below.upright };
            Placed {
                piece: piece.id.clone(),
                face: piece.front.clone(),
                rect,
                turned: spot.turned,
                back: false,
                over: false,
                label: piece.label.clone(),
                label_rect: Rect {
                    x: rect.x + LABEL_INSET - room.lean,
                    y: rect.bottom() + LABEL_AIR,
                    w: label_width(rect.w, room),
                    h: room.label - LABEL_AIR + more,
                },
                cut: true,
            }
        })
        .collect();
    if !head.large {
        labels::beside_slim(&mut placed, content);
    }
    let measured = spots.iter().any(|(piece, _)| piece.measured);
    let bar = Rect { x: safe.x, y: safe.bottom() - room.bar.h, w: room.bar.w, h: room.bar.h };
    Sheet {
        paper,
        audience: spots.first().map_or(Audience::Players, |(piece, _)| piece.audience),
        heading: head.words.to_owned(),
        placed,
        folds,
        check_bar: measured.then_some(bar),
        large: head.large,
        stock: spots.first().map(|(piece, _)| piece.stock),
    }
}

/// The sheet behind a sheet: each back behind its front.
fn back_of(front: &Sheet, pieces: &[Piece], duplex: &Duplex) -> Sheet {
    let page = front.paper.size();
    let placed = front
        .placed
        .iter()
        .filter_map(|placed| {
            let back = pieces.iter().find(|piece| piece.id == placed.piece)?.back.clone()?;
            Some(Placed {
                face: back,
                rect: duplex.behind(page, placed.rect),
                back: true,
                over: !duplex.upright(page),
                label: String::new(),
                label_rect: Rect::default(),
                cut: false,
                ..placed.clone()
            })
        })
        .collect();
    Sheet {
        paper: front.paper,
        audience: front.audience,
        heading: format!(
            "{} · backs of the sheet before: print two-sided, {}",
            front.heading,
            duplex.words(front.paper)
        ),
        placed,
        folds: Vec::new(),
        check_bar: None,
        large: front.large,
        stock: None,
    }
}

/// Short lines in the gutters that carry on the edges of rectangular pieces, for a ruler or a paper cutter: from
/// point to point. They touch neither pieces nor labels and stay inside the printer's margin.
#[must_use]
pub fn cut_marks(sheet: &Sheet) -> Vec<(Mm, Mm, Mm, Mm)> {
    const AIR: Mm = Mm::new(0.5);
    const LENGTH: Mm = Mm::new(1.8);
    let safe = sheet.paper.safe();
    let mut marks = Vec::new();
    for placed in sheet.placed.iter().filter(|placed| placed.cut && placed.face.outline == Outline::Rect) {
        let r = placed.rect;
        for (x, out) in [(r.x, -1.0), (r.right(), 1.0)] {
            for (y, down) in [(r.y, -1.0), (r.bottom(), 1.0)] {
                let (from, to) = (AIR, AIR + LENGTH);
                marks.push((x + from * out, y, x + to * out, y));
                marks.push((x, y + from * down, x, y + to * down));
            }
        }
    }
    let clear = |(x1, y1, x2, y2): &(Mm, Mm, Mm, Mm)| {
        let rect = Rect { x: x1.min(*x2), y: y1.min(*y2), w: x1.max(*x2) - x1.min(*x2), h: y1.max(*y2) - y1.min(*y2) };
        safe.holds(rect)
            && sheet
                .placed
                .iter()
                .all(|p| !touches(p.rect, rect) && (p.label.is_empty() || !touches(p.label_rect, rect)))
    };
    marks.retain(clear);
    marks
}

/// Whether a line, as a rectangle without width, runs through or along `rect`.
fn touches(rect: Rect, line: Rect) -> bool {
    line.x <= rect.right() && rect.x <= line.right() && line.y <= rect.bottom() && rect.y <= line.bottom()
}
