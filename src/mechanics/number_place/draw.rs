//! The sheet with the grid.

use super::{SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::{Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::Rich;
use crate::script::capital;
use crate::units::Rect;

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let places = view
        .places()
        .ok_or_else(|| Trouble::new("the grid is not whole").hint("lay the puzzle out again from its setup"))?;
    let frame = if view.large { "board" } else { "portrait" };
    let rules = view.rules();
    let alt =
        format!("{}: a grid of {} rows, some cells filled. {}", capital(texts::name(cx)), places.size, rules.join(" "));
    let (mut face, slot) = paper::sheet(cx, frame, cx.name("grid-title", "Number place"), alt)?;

    let told = slot.h * if view.large { 0.1 } else { 0.24 };
    let top = Rect { h: told * 0.62, ..slot };
    let below = Rect { y: slot.y + slot.h - told * 0.38, h: told * 0.38, ..slot };
    let most = if view.large { 15.0 } else { 11.0 };
    paper::words(&mut face, cx, top, Rich::plain(rules[0].as_str()), most);
    paper::words(&mut face, cx, below, Rich::plain(rules[1].as_str()), most);

    let space = Rect { y: slot.y + top.h + mm(1.0), h: slot.h - told - mm(2.0), ..slot };
    let grid = paper::Grid::fit(space, places.size, places.size, mm(24.0));
    grid.draw(&mut face, cx, (places.box_rows, places.box_cols));
    let pt = grid.cell.to_pt().get();
    for (row, line) in view.rows.iter().enumerate() {
        for (col, symbol) in line.iter().enumerate().filter_map(|(col, cell)| cell.map(|symbol| (col, symbol))) {
            paper::symbol(&mut face, cx, grid.at(row, col).inset(grid.cell * 0.08), &symbol.to_string(), pt * 0.7);
        }
    }
    for (index, (row, col)) in view.marks.iter().enumerate() {
        let cell = grid.at(*row, *col);
        // The mark stands in the corner, so that the cell keeps room for the symbol.
        let corner = Rect {
            x: cell.x + mm(0.4),
            y: cell.y + mm(0.2),
            w: mm(4.2).max(cell.w * 0.3),
            h: mm(4.2).max(cell.h * 0.3),
        };
        paper::symbol(&mut face, cx, corner, &paper::place_letter(index).to_string(), (pt * 0.3).max(9.5));
    }
    Ok(cx.piece(SHEET, "", face))
}
