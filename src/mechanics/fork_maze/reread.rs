//! The maze, read back from paper: walls as drawn lines between corners, signs by the cell in which they stand.

use super::{Floor, SHEET, Side, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Lattice, Printed, PrintedShape, lanes, middle};
use crate::mechanics::pictures::{single, standing};
use crate::mechanics::{Dressing, front};
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// The least contrast at which a wall is seen (estimate; common practice, no source).
const SEEN: f64 = 1.5;

/// The corners between which walls stand, counted in rows and columns of corners.
struct Walls {
    lattice: Lattice,
    standing: Vec<((usize, usize), (usize, usize))>,
}

/// Neighbouring cells without a wall between them, and holes in the outer wall.
type Open = (Vec<(usize, usize)>, Vec<(usize, Side)>);

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let field = cx.slot_on(sheet, "board", "field")?;
    let walls = walls(sheet, field)?;
    let corners = &walls.lattice;
    let (rows, cols) = (corners.rows.len().saturating_sub(1), corners.cols.len().saturating_sub(1));
    let cells = Lattice::between(&(corners.rows.clone(), corners.cols.clone()));
    let cell = |rect: Rect| cells.cell(middle(rect)).map(|(row, col)| row * cols + col);
    let inside = corners.rows.first().zip(corners.rows.last()).zip(corners.cols.first().zip(corners.cols.last()));
    let Some(((top, bottom), (left, right))) = inside else { return Err(Trouble::new("the sheet shows no maze")) };
    let maze = Rect { x: *left, y: *top, w: *right - *left, h: *bottom - *top };

    let pictures: Vec<(String, usize)> =
        standing(sheet, maze, &cx.looks()?).into_iter().filter_map(|(name, rect)| Some((name, cell(rect)?))).collect();
    let mut symbols = Vec::new();
    for text in sheet.texts_in(maze) {
        let symbol = single(text)?;
        symbols.push((cell(text.rect).unwrap_or_default(), symbol));
    }
    symbols.sort_unstable();
    let (passages, gates) = open(&walls, rows, cols);
    let mut view = View {
        text: String::new(),
        cols,
        rows,
        passages,
        gates,
        start: (0, String::new()),
        goal: (0, String::new()),
        floor: Floor::Symbols(symbols.clone()),
        say_order: true,
    };
    // Which picture is the start and which the goal, and what is noted, the sheet says in words.
    for (start, start_cell) in &pictures {
        for (goal, goal_cell) in pictures.iter().filter(|(goal, _)| goal != start) {
            view.start = (*start_cell, start.clone());
            view.goal = (*goal_cell, goal.clone());
            let mut marks: Vec<&str> = pictures.iter().map(|(name, _)| name.as_str()).collect();
            marks.retain(|name| name != start && name != goal);
            marks.sort_unstable();
            marks.dedup();
            view.floor = match marks.as_slice() {
                [] => Floor::Symbols(symbols.clone()),
                [mark, ..] => {
                    let mut cells: Vec<usize> =
                        pictures.iter().filter(|(name, _)| name == mark).map(|(_, cell)| *cell).collect();
                    cells.sort_unstable();
                    Floor::Waymarks((*mark).to_owned(), cells)
                }
            };
            for say_order in [true, false] {
                view.say_order = say_order;
                if sheet.says(&texts::rule(&view)) {
                    if marks.len() > 1 || (!marks.is_empty() && !symbols.is_empty()) {
                        return Err(Trouble::new("the maze shows more than its rule speaks of"));
                    }
                    return Ok(view);
                }
            }
        }
    }
    Err(Trouble::new("the sheet does not say from which of its pictures to which the way leads"))
}

/// The walls: of all pictures on the sheet the one with the most straight lines.
fn walls(sheet: &Printed, field: Rect) -> Hinted<Walls> {
    let seen = |shape: &&&PrintedShape| shape.stroke.is_some_and(|(ink, _)| ink.contrast(Colour::WHITE) >= SEEN);
    let lines = |art: usize| -> Vec<_> {
        let shapes = sheet.shapes_of(art);
        let inside = shapes.iter().filter(seen).filter(|shape| field.holds(shape.rect));
        inside.filter_map(|shape| shape.segment()).collect()
    };
    let all = (0..sheet.arts.len()).map(lines).max_by_key(Vec::len).unwrap_or_default();
    // The frames of most themes have a few straight lines; a maze has dozens.
    let mut lengths: Vec<Mm> = all.iter().map(|(a, b)| crate::face::proof::apart(*a, *b)).collect();
    lengths.sort_by(|a, b| a.get().total_cmp(&b.get()));
    let cell = lengths.get(lengths.len() / 2).copied().unwrap_or_default();
    if cell.get() < 1.0 {
        return Err(Trouble::new("the sheet shows no walls"));
    }
    let ends = || all.iter().flat_map(|(a, b)| [*a, *b]);
    let lattice =
        Lattice { rows: lanes(ends().map(|at| at.1), cell * 0.3), cols: lanes(ends().map(|at| at.0), cell * 0.3) };
    let mut standing: Vec<((usize, usize), (usize, usize))> = all
        .iter()
        .filter_map(|(a, b)| Some((lattice.cell(*a)?, lattice.cell(*b)?)))
        .map(|(a, b)| (a.min(b), a.max(b)))
        .collect();
    standing.sort_unstable();
    standing.dedup();
    Ok(Walls { lattice, standing })
}

/// Where no wall stands: between cells, and in the outer wall.
fn open(walls: &Walls, rows: usize, cols: usize) -> Open {
    // A line may span several corners.
    let shut = |from: (usize, usize), to: (usize, usize)| {
        walls.standing.iter().any(|(a, b)| {
            let level = a.0 == b.0 && a.0 == from.0 && from.0 == to.0 && a.1 <= from.1 && to.1 <= b.1;
            let upright = a.1 == b.1 && a.1 == from.1 && from.1 == to.1 && a.0 <= from.0 && to.0 <= b.0;
            level || upright
        })
    };
    let (mut passages, mut gates) = (Vec::new(), Vec::new());
    for row in 0..rows {
        for col in 0..cols {
            let here = row * cols + col;
            let sides = [
                (Side::Up, (row, col), (row, col + 1), row == 0, None),
                (Side::Left, (row, col), (row + 1, col), col == 0, None),
                (Side::Right, (row, col + 1), (row + 1, col + 1), col + 1 == cols, Some(here + 1)),
                (Side::Down, (row + 1, col), (row + 1, col + 1), row + 1 == rows, Some(here + cols)),
            ];
            for (side, from, to, outer, next) in sides {
                if shut(from, to) {
                    continue;
                }
                if outer {
                    gates.push((here, side));
                } else if let Some(next) = next {
                    passages.push((here, next));
                }
            }
        }
    }
    passages.sort_unstable();
    (passages, gates)
}
