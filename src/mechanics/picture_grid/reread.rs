//! The panels, read back from paper.

use super::glyphs::Shows;
use super::{ORDER, Panel, SHEET, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Lattice, Printed, middle, ruled};
use crate::mechanics::paper::{drawn_in, told};
use crate::mechanics::{Dressing, front};
use crate::units::{Mm, Rect};

/// Lines closer than this are one.
const ONE_LINE: Mm = Mm::new(0.5);

/// A panel's grid where it stands.
struct Grid {
    rect: Rect,
    cells: Lattice,
    number: Option<usize>,
    /// The numbers beside each row with their places from left to right, and above each column from the top.
    rows: Vec<Vec<(f64, usize)>>,
    cols: Vec<Vec<(f64, usize)>>,
    given: Vec<(usize, usize)>,
}

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    let mut grids: Vec<Grid> = drawn_in(sheet, slot).into_iter().map(|(art, rect)| grid(sheet, art, rect)).collect();
    for text in sheet.texts_in(slot) {
        let at = middle(text.rect);
        let words = text.text.trim();
        if let Some(number) = words.strip_prefix("Panel ").and_then(|number| number.parse().ok()) {
            // Its grid is the nearest below.
            let below =
                |grid: &&mut Grid| grid.rect.y > at.1 && at.0 > grid.rect.x - grid.rect.w && at.0 < grid.rect.right();
            let near = grids.iter_mut().filter(below).min_by(|a, b| far(at, a.rect).total_cmp(&far(at, b.rect)));
            if near.is_some_and(|grid| grid.number.replace(number).is_some()) {
                return Err(Trouble::new("two numbers stand over one panel"));
            }
        } else if let Ok(run) = words.parse() {
            place(&mut grids, at, run)?;
        }
    }
    grids.sort_by_key(|grid| grid.number);
    if grids.iter().enumerate().any(|(index, grid)| grid.number != Some(index + 1)) {
        return Err(Trouble::new("the panels are not numbered 1, 2, 3 and so on"));
    }
    told(sheet, ORDER)?;
    let shows = Shows::ALL.into_iter().find(|shows| sheet.says(&format!("Each panel shows {}.", shows.one())));
    let shows = shows.ok_or_else(|| Trouble::new("the sheet does not say what the panels show"))?;
    Ok(View { panels: grids.into_iter().map(panel).collect(), shows })
}

fn grid(sheet: &Printed, art: usize, rect: Rect) -> Grid {
    let drawn = sheet.shapes_of(art);
    let cells = Lattice::between(&ruled(drawn.iter().copied(), ONE_LINE));
    let filled = drawn.iter().filter(|shape| shape.fill.is_some());
    let given = filled.filter_map(|shape| cells.cell(middle(shape.rect))).collect();
    let (rows, cols) = (vec![Vec::new(); cells.rows.len()], vec![Vec::new(); cells.cols.len()]);
    Grid { rect, cells, number: None, rows, cols, given }
}

/// How far a point lies from a rectangle's top left corner.
fn far(at: Dot, rect: Rect) -> f64 {
    (at.0 - rect.x).get().hypot((at.1 - rect.y).get())
}

/// Puts a number beside the row or above the column that it belongs to: of the nearest grid to its right or below.
fn place(grids: &mut [Grid], at: Dot, run: usize) -> Hinted<()> {
    let mut best: Option<(f64, usize, bool)> = None;
    for (index, grid) in grids.iter().enumerate() {
        let beside = at.1 > grid.rect.y && at.1 < grid.rect.bottom() && at.0 < grid.rect.x;
        let above = at.0 > grid.rect.x && at.0 < grid.rect.right() && at.1 < grid.rect.y;
        let apart = if beside { grid.rect.x - at.0 } else { grid.rect.y - at.1 }.get();
        if (beside || above) && best.is_none_or(|(so_far, _, _)| apart < so_far) {
            best = Some((apart, index, beside));
        }
    }
    let lost = || Trouble::new(format!("the number {run} stands beside no row and above no column"));
    let (apart, index, beside) = best.ok_or_else(lost)?;
    let grid = grids.get_mut(index).ok_or_else(lost)?;
    let (row, col) = grid.cells.cell(at).ok_or_else(lost)?;
    let line = if beside { grid.rows.get_mut(row) } else { grid.cols.get_mut(col) };
    // The nearest to the grid is the last.
    line.ok_or_else(lost)?.push((-apart, run));
    Ok(())
}

fn panel(grid: Grid) -> Panel {
    let runs = |lines: Vec<Vec<(f64, usize)>>| {
        let line = |mut line: Vec<(f64, usize)>| {
            line.sort_by(|a, b| a.0.total_cmp(&b.0));
            line.into_iter().map(|(_, run)| run).filter(|run| *run > 0).collect()
        };
        lines.into_iter().map(line).collect()
    };
    Panel { rows: runs(grid.rows), cols: runs(grid.cols), given: grid.given }
}
