//! The grid, read back from paper.

use super::{SHEET, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Lattice, Printed, PrintedShape, middle, ruled};
use crate::mechanics::paper::{drawn_in, place_letter, single, told};
use crate::mechanics::{Dressing, front};
use crate::units::Mm;

/// Sheets wider than this are boards, at any scale at which a printer may fit them.
const BOARD: Mm = Mm::new(120.0);
/// Lines closer than this are one.
const ONE_LINE: Mm = Mm::new(0.5);

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let large = sheet.size.w > BOARD;
    let slot = if large { cx.slot_on(sheet, "board", "field")? } else { cx.slot_on(sheet, "portrait", "body")? };
    let (art, rect) = drawn_in(sheet, slot)
        .into_iter()
        .max_by_key(|(art, _)| sheet.shapes_of(*art).len())
        .ok_or_else(|| Trouble::new("no grid is drawn on the sheet"))?;
    let drawn = sheet.shapes_of(art);
    let lines = ruled(drawn.iter().copied(), ONE_LINE);
    let grid = Lattice::between(&lines);
    let mut view = View { symbols: symbols(sheet)?, rows: Vec::new(), marks: Vec::new(), large };
    view.rows = vec![vec![None; grid.cols.len()]; grid.rows.len()];
    let mut marks: Vec<(char, (usize, usize))> = Vec::new();
    for text in sheet.texts_in(rect) {
        let (Some(symbol), Some((row, col))) = (single(text), grid.cell(middle(text.rect))) else {
            return Err(Trouble::new(format!("\"{}\" stands in the grid", text.text)));
        };
        if symbol.is_lowercase() {
            marks.push((symbol, (row, col)));
        } else if view.rows[row][col].replace(symbol).is_some() {
            return Err(Trouble::new(format!("two symbols stand in row {}, column {}", row + 1, col + 1)));
        }
    }
    marks.sort_unstable();
    if marks.iter().enumerate().any(|(index, (letter, _))| *letter != place_letter(index)) {
        return Err(Trouble::new("the marks in the grid are not a, b, c and so on, once each"));
    }
    view.marks = marks.into_iter().map(|(_, cell)| cell).collect();
    for rule in view.rules() {
        told(sheet, &rule)?;
    }
    boxes(&view, &drawn, &lines)?;
    Ok(view)
}

/// The symbols that the rule names.
fn symbols(sheet: &Printed) -> Hinted<Vec<char>> {
    let words = sheet.words();
    let named = words.split_once(" box must hold ").and_then(|(_, rest)| rest.split_once(", each once"));
    let Some((named, _)) = named else { return Err(Trouble::new("the sheet does not say what the cells hold")) };
    Ok(named.split(' ').filter_map(|word| word.chars().next()).collect())
}

/// The thick lines must part the boxes that the rule speaks of.
fn boxes(view: &View, drawn: &[&PrintedShape], lines: &(Vec<Mm>, Vec<Mm>)) -> Hinted<()> {
    let Some(places) = view.places() else { return Ok(()) };
    let width = |shape: &PrintedShape| shape.stroke.map_or(0.0, |(_, width)| width.get());
    let (least, most) = drawn.iter().fold((f64::MAX, 0.0_f64), |so_far, shape| {
        let width = width(shape);
        (so_far.0.min(width), so_far.1.max(width))
    });
    let thick = drawn.iter().copied().filter(|shape| width(shape) > (least + most) / 2.0);
    let heavy = ruled(thick, ONE_LINE);
    let every = |all: &[Mm], heavy: &[Mm], step: usize| {
        let wanted: Vec<Mm> = all.iter().copied().step_by(step).collect();
        wanted.len() == heavy.len() && wanted.iter().zip(heavy).all(|(a, b)| (*a - *b).get().abs() < ONE_LINE.get())
    };
    if every(&lines.0, &heavy.0, places.box_rows) && every(&lines.1, &heavy.1, places.box_cols) {
        return Ok(());
    }
    Err(Trouble::new("the thick lines do not part the boxes of the grid"))
}
