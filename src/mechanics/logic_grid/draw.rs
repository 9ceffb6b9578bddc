//! The sheet: statements, the table to tick, the list of what is asked.

use super::{SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::script::capital;
use crate::theme::LARGE_PRINT;
use crate::units::{Mm, Pt, Rect, Size};

/// The largest cell of the table: a cross or a tick is made without care.
const CELL: Mm = Mm::new(13.0);
/// Most and least room for the names beside the table: some fifteen and six letters of the largest type.
const NAMES: (Mm, Mm) = (Mm::new(32.0), Mm::new(15.0));
/// Most room for them in large print.
const LARGE_NAMES: Mm = Mm::new(38.0);
/// Greatest size of the names beside the table.
const NAME: Pt = Pt::new(13.0);
/// Greatest sizes of the statements: large where they are few.
const STATEMENT: (Pt, Pt) = (Pt::new(16.0), Pt::new(13.0));
/// The share of the sheet's height under which statements count as few.
const FEW: f64 = 0.16;
/// The most of the sheet's height that statements take. In large print they take what they need.
const LIST: f64 = 0.3;
/// The least row of the table beside the words in large print: names of 16 points stand in it.
const LARGE_CELL: Mm = Mm::new(6.2);

/// The sheet; in large print, where its table would have too narrow rows beside the words, one for each of the two.
pub(super) fn sheets(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let size = view
        .size()
        .ok_or_else(|| Trouble::new("the kinds are not whole").hint("lay the puzzle out again from its setup"))?;
    let alt = format!("{}: statements, and a table to tick. {}", capital(texts::name(cx)), texts::order(view));
    let title = cx.name("statements-title", "Who, what and when");
    let (mut face, slot) = paper::sheet(cx, "board", title, alt)?;

    let rule = Rich::plain(texts::rule(view));
    let top = Rect { h: paper::told_height(cx, &rule, slot.w, slot.h * 0.075), ..slot };
    paper::words(&mut face, cx, top, rule, 13.0);
    let numbered: Vec<String> = texts::statements(view)
        .iter()
        .enumerate()
        .map(|(index, text)| format!("{}. {}", index + 1, kept(view, text)))
        .collect();
    // Statements begin as far from the frame as a column stands from the next; in large print room is dear.
    let air = mm(if cx.large() { 1.0 } else { 4.0 });
    let w = slot.w / 2.0 - mm(2.0) - air;
    let columns = |at: usize| [&numbered[..at], &numbered[at..]];
    let high_at =
        |at: usize, size| columns(at).map(|part| paper::height(cx, part, w, size)).into_iter().fold(Mm::ZERO, Mm::max);
    // Parted where both columns stand about as high: statements of two lines count as such.
    let (mut half, mut least) = (numbered.len(), high_at(numbered.len(), STATEMENT.1));
    for at in (1..numbered.len()).rev() {
        let high = high_at(at, STATEMENT.1);
        if high < least {
            (half, least) = (at, high);
        }
    }
    let high = |size| high_at(half, size);
    let few = cx.large() || high(STATEMENT.0) < slot.h * FEW;
    let points = if few { STATEMENT.0 } else { STATEMENT.1 };
    let most = if cx.large() { slot.h } else { slot.h * LIST - mm(2.0) };
    let list = Rect { y: top.bottom() + mm(2.0), h: high(points).min(most), ..slot };
    for (index, part) in columns(half).into_iter().enumerate() {
        let column = Rect { x: list.x + air + (w + mm(4.0)) * index as f64, w, ..list };
        paper::lines(&mut face, cx, column, part, points.get());
    }
    let order = Rich::plain(kept(view, &texts::order(view)));
    let h = paper::told_height(cx, &order, slot.w, slot.h * 0.075);
    let bottom = Rect { y: slot.bottom() - h, h, ..slot };
    paper::words(&mut face, cx, bottom, order, 14.0);
    let table_at = Rect { y: list.bottom() + mm(2.0), h: bottom.y - list.bottom() - mm(4.0), ..slot };
    let table = Table::fit(table_at, view, cx, (size.kinds, size.items));
    if !cx.large() || table.cell >= LARGE_CELL {
        table.draw(&mut face, cx, view);
        return Ok(vec![cx.piece(SHEET, "", face)]);
    }
    let alt = format!("{}: a table to tick.", capital(texts::name(cx)));
    let (mut other, slot) = paper::sheet(cx, "board", title, alt)?;
    Table::fit(slot, view, cx, (size.kinds, size.items)).draw(&mut other, cx, view);
    let table = Piece { id: format!("{}-table", cx.puzzle), ..cx.piece(SHEET, "the table", other) };
    Ok(vec![cx.piece(SHEET, "the statements", face), table])
}

/// The table at its place: every thing against every thing of the other kinds.
struct Table {
    kinds: usize,
    items: usize,
    /// Width of the names beside it, height of those above.
    names: Mm,
    cell: Mm,
    /// Where its first cell begins.
    from: (Mm, Mm),
}

impl Table {
    fn fit(slot: Rect, view: &View, cx: &Dressing<'_>, (kinds, items): (usize, usize)) -> Self {
        let count = ((kinds - 1) * items) as f64;
        let names = room(view, cx);
        let cell = ((slot.w - names) / count).min((slot.h - names) / count).min(CELL);
        // The table stands in the middle of what the sheet has left.
        let free = (slot.w - names - cell * count, slot.h - names - cell * count);
        let from = (slot.x + free.0 / 2.0 + names, slot.y + free.1 / 2.0 + names);
        Self { kinds, items, names, cell, from }
    }

    /// Across, all kinds but the first; down, the first, then the others from the last, so that each pair of kinds meets
    /// once.
    fn draw(&self, face: &mut Face, cx: &Dressing<'_>, view: &View) {
        let Self { kinds, items, names, cell, from: (x0, y0) } = *self;
        let blocks = kinds - 1;
        let across: Vec<usize> = (1..kinds).collect();
        let down: Vec<usize> = std::iter::once(0).chain((2..kinds).rev()).collect();
        let count = (blocks * items) as f64;
        let at =
            |row: usize, col: usize| Rect { x: x0 + cell * col as f64, y: y0 + cell * row as f64, w: cell, h: cell };
        let side = cell * count;
        let mut drawing = Drawing::new(Size { w: side, h: side });
        let (thin, thick) = (Pen::line(cx.colour("line"), mm(0.2)), Pen::line(cx.colour("ink"), mm(0.6)));
        for row in 0..blocks {
            for col in 0..blocks - row {
                let (x, y, w) = (cell * (col * items) as f64, cell * (row * items) as f64, cell * items as f64);
                for line in 1..items {
                    let along = cell * line as f64;
                    drawing.line((x + along, y), (x + along, y + w), thin);
                    drawing.line((x, y + along), (x + w, y + along), thin);
                }
                drawing.rect(Rect { x, y, w, h: w }, Mm::ZERO, thick);
            }
        }
        face.art(drawing.svg(), Rect { x: x0, y: y0, w: side, h: side }, String::new());
        for (block, kind) in down.iter().enumerate() {
            for thing in 0..items {
                let y = at(block * items + thing, 0).y;
                let name = Rect { x: x0 - names, y, w: names - mm(1.5), h: cell };
                paper::row_to_right(face, cx, name, Rich::plain(view.thing((*kind, thing))), NAME.get());
            }
        }
        for (block, kind) in across.iter().enumerate() {
            for thing in 0..items {
                let x = at(0, block * items + thing).x;
                let name = Rect { x, y: y0 - names, w: cell, h: names - mm(1.5) };
                paper::upward(face, cx, name, Rich::plain(view.thing((*kind, thing))), NAME.get());
            }
        }
    }
}

/// Room for the longest name beside the table.
fn room(view: &View, cx: &Dressing<'_>) -> Mm {
    let size = if cx.large() { LARGE_PRINT } else { NAME };
    let things = view.kinds.iter().enumerate().flat_map(|(kind, of)| (0..of.things.len()).map(move |at| (kind, at)));
    let longest = things.map(|thing| view.thing(thing).chars().count()).max().unwrap_or(0);
    (size.to_mm() * 0.41 * longest as f64 + mm(3.0)).min(if cx.large() { LARGE_NAMES } else { NAMES.0 }).max(NAMES.1)
}

/// A sentence in which no tag is parted from its symbol: a lone digit at the head of a line reads as a number of its own.
fn kept(view: &View, text: &str) -> String {
    let tag = format!("{} ", view.tag);
    let whole = format!("{}\u{a0}", view.tag);
    text.replace(&tag, &whole).replace(&capital(&tag), &capital(&whole))
}
