//! The square of letters and the list, read back from paper.

use super::{ORDER, SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Lattice, Printed, PrintedText, middle, within};
use crate::mechanics::paper::{drawn_in, single, told};
use crate::mechanics::{Dressing, front};
use crate::units::{Mm, Rect};

/// Rows and columns stand further apart than this, as a part of the size of their letters.
const APART: f64 = 0.5;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    let (art, rect) = drawn_in(sheet, slot)
        .into_iter()
        .max_by(|a, b| a.1.w.get().total_cmp(&b.1.w.get()))
        .ok_or_else(|| Trouble::new("no square is drawn on the sheet"))?;
    let inside: Vec<&PrintedText> = sheet.texts_in(rect);
    let dots: Vec<Rect> =
        sheet.shapes_of(art).into_iter().filter(|shape| shape.fill.is_some()).map(|shape| shape.rect).collect();
    let size = inside.first().map_or(Mm::ZERO, |text| text.size.to_mm());
    let places: Vec<Rect> = inside.iter().map(|text| text.rect).chain(dots.iter().copied()).collect();
    let cells = Lattice::of(&places, size * APART);
    even(&cells.rows, rect.y, rect.bottom())?;
    even(&cells.cols, rect.x, rect.right())?;
    let mut rows: Vec<Vec<Option<char>>> = vec![vec![None; cells.cols.len()]; cells.rows.len()];
    for text in &inside {
        let (Some(letter), Some((row, col))) = (single(text), cells.cell(middle(text.rect))) else {
            return Err(Trouble::new(format!("\"{}\" stands in the square", text.text)));
        };
        if rows[row][col].replace(letter).is_some() {
            return Err(Trouble::new(format!("two letters stand in row {}, column {}", row + 1, col + 1)));
        }
    }
    if inside.len() + dots.len() != cells.rows.len() * cells.cols.len() {
        return Err(Trouble::new("a cell of the square has neither a letter nor a dot, or both"));
    }
    let listed = |text: &&PrintedText| within(slot, middle(text.rect)) && text.rect.y > rect.bottom();
    let mut words: Vec<String> = sheet.texts.iter().filter(listed).map(|text| text.text.trim().to_owned()).collect();
    words.sort_unstable();
    let view = View { rows, words };
    told(sheet, &format!("{} {ORDER}", texts::rule(&view)))?;
    Ok(view)
}

/// Rows or columns must stand evenly from one edge to the other, else one of them is missing.
#[expect(clippy::cast_precision_loss, reason = "a square has at most twenty rows")]
fn even(lanes: &[Mm], from: Mm, to: Mm) -> Hinted<()> {
    let step = (to - from).get() / lanes.len().max(1) as f64;
    let stands = |(index, at): (usize, &Mm)| ((*at - from).get() - step * (index as f64 + 0.5)).abs() < step * 0.3;
    if lanes.iter().enumerate().all(stands) {
        return Ok(());
    }
    Err(Trouble::new("the letters do not stand in even rows and columns"))
}
