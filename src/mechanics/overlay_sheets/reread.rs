//! The sheets read back from paper, and whether their marks lie on one another.

use super::draw::frame;
use super::{OVER, UNDER, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, PrintedShape, apart, box_about, middle, within};
use crate::mechanics::{Dressing, front};
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// Contrast with white from which a cell counts as dark.
const INK: f64 = 3.0;
/// How far marks of the two sheets may lie apart.
const TRUE: Mm = Mm::new(0.1);

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let (under, over) = (front(printed, UNDER)?, front(printed, OVER)?);
    if !under.says(texts::RULE) {
        return Err(Trouble::new("the paper sheet does not say how the clear one is laid on it"));
    }
    let large = cx.frame(frame(true).0)?.size.w.get() / under.size.w.get() < 1.1;
    let (name, slot) = frame(large);
    let slot = cx.slot_on(under, name, slot)?;
    let (below, above) = (sheet(under, slot)?, sheet(over, slot)?);
    let near = |a: &Dot, b: &Dot| apart(*a, *b) < TRUE;
    let same = below.marks.len() == 5
        && above.marks.len() == 5
        && below.marks.iter().zip(&above.marks).all(|(a, b)| near(a, b))
        && near(&middle(below.place), &middle(above.place));
    if !same {
        return Err(Trouble::new("the corner marks of the two sheets do not lie on one another"));
    }
    let view = View { under: below.cells, over: above.cells, large };
    match view.measures() {
        Some(_) => Ok(view),
        None => Err(Trouble::new("the two sheets do not have as many cells each")),
    }
}

struct Sheet {
    cells: Vec<String>,
    place: Rect,
    /// The middles of the four crosses and, last, of the dark corner.
    marks: Vec<Dot>,
}

fn dark(shape: &PrintedShape) -> bool {
    shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= INK)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a sheet has at most a few hundred cells each way"
)]
fn sheet(side: &Printed, slot: Rect) -> Hinted<Sheet> {
    let mut inside: Vec<&PrintedShape> = side.shapes.iter().filter(|shape| within(slot, middle(shape.rect))).collect();
    // The frame's own lines may have their middle in the slot; the dots are many and one drawing.
    let many = |art: usize| inside.iter().filter(|shape| shape.art == art).count();
    if let Some(dots) = (0..side.arts.len()).max_by_key(|art| many(*art)) {
        inside.retain(|shape| shape.art == dots);
    }
    let four = |shape: &&&PrintedShape| matches!(shape.contours.as_slice(), [line] if line.points.len() == 4);
    let cells: Vec<&PrintedShape> = inside.iter().filter(|shape| dark(shape)).filter(four).copied().collect();
    let least = |of: &dyn Fn(Rect) -> Mm| cells.iter().map(|cell| of(cell.rect)).reduce(Mm::min);
    let corners = cells.iter().flat_map(|cell| [(cell.rect.x, cell.rect.y), (cell.rect.right(), cell.rect.bottom())]);
    let (Some(w), Some(h), Some(place)) = (least(&|rect| rect.w), least(&|rect| rect.h), box_about(corners)) else {
        return Err(Trouble::new("a sheet has no dots"));
    };
    let count = |whole: Mm, part: Mm| (whole.get() / part.get().max(0.1)).round().clamp(0.0, 1000.0) as usize;
    let mut grid = vec![vec!['.'; count(place.w, w)]; count(place.h, h)];
    for cell in &cells {
        let (row, col) = (count(cell.rect.y - place.y, h), count(cell.rect.x - place.x, w));
        for at in grid.get_mut(row).into_iter().flatten().skip(col).take(count(cell.rect.w, w)) {
            *at = '#';
        }
    }
    let level = |shape: &&&PrintedShape| shape.segment().is_some_and(|(from, to)| from.1 == to.1);
    let mut marks: Vec<Dot> = inside.iter().filter(level).map(|shape| middle(shape.rect)).collect();
    marks.extend(inside.iter().filter(|shape| dark(shape) && !four(shape)).map(|shape| middle(shape.rect)));
    let cells = grid.into_iter().map(|row| row.into_iter().collect()).collect();
    Ok(Sheet { cells, place, marks })
}
