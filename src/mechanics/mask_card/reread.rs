//! The square and the card, read back from paper: the card is laid on the square as guests do.

use super::{Cell, Corner, GRID, MASK, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Lattice, Printed, PrintedShape, middle};
use crate::mechanics::front;
use crate::theme::Colour;
use crate::units::{Mm, Rect};

pub(super) fn view(printed: &[Printed]) -> Hinted<View> {
    let (grid, mask) = (front(printed, GRID)?, front(printed, MASK)?);
    let (ground, card) = (Ground::of(grid, "square")?, Ground::of(mask, "card")?);
    if (ground.rect.w - card.rect.w).get().abs() > card.rect.w.get() * 0.01 {
        return Err(Trouble::new("the card is not as large as the square"));
    }
    if ground.corner != card.corner {
        return Err(Trouble::new("the corners of card and square do not match"));
    }
    let symbols = grid.texts_in(ground.rect);
    let places: Vec<Rect> = symbols.iter().map(|text| text.rect).collect();
    let size = symbols.first().map_or(Mm::new(3.0), |text| text.size.to_mm());
    let lattice = Lattice::of(&places, size / 2.0);
    let mut rows: Vec<Vec<char>> = vec![vec![' '; lattice.cols.len()]; lattice.rows.len()];
    for text in symbols {
        let mut chars = text.text.trim().chars();
        let (Some(symbol), None, Some((row, col))) = (chars.next(), chars.next(), lattice.cell(middle(text.rect)))
        else {
            return Err(Trouble::new(format!("the square has \"{}\" where one symbol belongs", text.text)));
        };
        if let Some(cell) = rows.get_mut(row).and_then(|row| row.get_mut(col)) {
            *cell = symbol;
        }
    }
    if rows.len() != lattice.cols.len() || rows.iter().flatten().any(|symbol| *symbol == ' ') {
        return Err(Trouble::new("the square is not filled"));
    }
    let windows = mask.shapes.iter().filter(|shape| shape.dashed);
    let mut windows = windows
        .map(|window| {
            let at = middle(window.rect);
            lying(&lattice, (at.0 - card.rect.x + ground.rect.x, at.1 - card.rect.y + ground.rect.y), window.rect)
        })
        .collect::<Hinted<Vec<Cell>>>()?;
    windows.sort_unstable();
    let corner = ground.corner;
    let turns = (1..=4).rev().find(|turns| grid.says(&texts::rule(corner, *turns)));
    Ok(View { rows: rows.into_iter().map(|row| row.into_iter().collect()).collect(), windows, corner, turns })
}

/// The cell that a window leaves: the symbol's middle must lie well inside it.
fn lying(lattice: &Lattice, at: Dot, window: Rect) -> Hinted<Cell> {
    let near = lattice.cell(at).and_then(|(row, col)| {
        let (x, y) = (*lattice.cols.get(col)?, *lattice.rows.get(row)?);
        let inside = (x - at.0).get().abs() < window.w.get() / 4.0 && (y - at.1).get().abs() < window.h.get() / 4.0;
        Some((u8::try_from(row).ok()?, u8::try_from(col).ok()?)).filter(|_| inside)
    });
    near.ok_or_else(|| Trouble::new("a window of the card lies on no cell of the square"))
}

/// The border of a square, and what its top left corner shows.
struct Ground {
    rect: Rect,
    corner: Corner,
}

impl Ground {
    fn of(side: &Printed, what: &str) -> Hinted<Self> {
        // The border is the one outline of four or five corners that is square, stroked and not filled.
        let points = |shape: &PrintedShape| match shape.contours.as_slice() {
            [line] if line.closed => line.points.len(),
            _ => 0,
        };
        let square = |shape: &&PrintedShape| {
            let (w, h) = (shape.rect.w.get(), shape.rect.h.get());
            shape.fill.is_none()
                && shape.stroke.is_some()
                && !shape.dashed
                && (w - h).abs() < w * 0.01
                && matches!(points(shape), 4 | 5)
        };
        let largest = side.shapes.iter().filter(square).max_by(|a, b| a.rect.w.get().total_cmp(&b.rect.w.get()));
        let Some(border) = largest else {
            return Err(Trouble::new(format!("the {what} has no square border")));
        };
        let (corner_x, corner_y) = (border.rect.x + border.rect.w * 0.1, border.rect.y + border.rect.h * 0.1);
        let mark = |shape: &&PrintedShape| {
            points(shape) == 3
                && shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) > 2.0)
                && border.rect.holds(shape.rect)
        };
        let marks: Vec<Dot> = side.shapes.iter().filter(mark).map(|shape| middle(shape.rect)).collect();
        let corner = match (points(border), marks.as_slice()) {
            (5, []) => Corner::Cut,
            (4, []) => Corner::Plain,
            (4, [(x, y)]) if *x < corner_x && *y < corner_y => Corner::Printed,
            _ => return Err(Trouble::new(format!("the {what}'s corner marks cannot be told"))),
        };
        Ok(Self { rect: border.rect, corner })
    }
}
