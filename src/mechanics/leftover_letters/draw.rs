//! The sheet with the letters and the list.

use super::{ORDER, SHEET, View, texts};
use crate::diag::Hinted;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Piece, mm};
use crate::mechanics::work::counted;
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// The highest row of the list, and the most columns.
const ROW: Mm = Mm::new(8.0);
const COLUMNS: usize = 5;
/// Breadth of a letter and height of a line, in the size of its type, and the white beside a word.
const LETTER: f64 = 0.62;
const LINE: f64 = 1.3;
const BESIDE: Mm = Mm::new(4.0);

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!(
        "{}: a square of letters and {} to find in it. {ORDER}",
        capital(texts::name(cx)),
        counted(view.words.len(), "word")
    );
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("letters-title", "Find the words"), alt)?;
    let rule = Rich::plain(format!("{} {ORDER}", texts::rule(view)));
    let top = Rect { h: paper::told_height(cx, &rule, slot.w, slot.h * 0.09), ..slot };
    paper::words(&mut face, cx, top, rule, 14.0);

    let list = Rect { y: slot.y + slot.h * 0.8, h: slot.h * 0.2, ..slot };
    let columns = columns(&view.words, list);
    let each = view.words.len().div_ceil(columns).max(1);
    let width = list.w / columns as f64;
    for (index, part) in view.words.chunks(each).enumerate() {
        let height = (list.h / each as f64).min(ROW);
        for (row, word) in part.iter().enumerate() {
            let at = Rect { x: list.x + width * index as f64, y: list.y + height * row as f64, w: width, h: height };
            paper::symbol(&mut face, cx, at.inset(mm(0.4)), word, 14.0);
        }
    }

    let space = Rect { y: top.bottom() + mm(2.0), h: list.y - top.bottom() - mm(5.0), ..slot };
    let cols = view.rows.iter().map(Vec::len).max().unwrap_or(0);
    let grid = paper::Grid::fit(space, view.rows.len(), cols, mm(14.0));
    let mut drawing = Drawing::new(Size { w: grid.rect.w, h: grid.rect.h });
    drawing.rect(Rect::of(Size { w: grid.rect.w, h: grid.rect.h }), mm(0.0), Pen::line(cx.colour("line"), mm(0.4)));
    for (row, line) in view.rows.iter().enumerate() {
        for (col, letter) in line.iter().enumerate() {
            let cell = grid.at(row, col);
            match letter {
                Some(letter) => {
                    let most = grid.cell.to_pt().get() * 0.62;
                    paper::symbol(&mut face, cx, cell.inset(grid.cell * 0.06), &letter.to_string(), most);
                }
                // An ornament that cannot be taken for a letter.
                None => {
                    let (x, y) = (cell.x - grid.rect.x + cell.w / 2.0, cell.y - grid.rect.y + cell.h / 2.0);
                    drawing.circle(x, y, mm(0.6), Pen::fill(cx.colour("line")));
                }
            }
        }
    }
    face.art(drawing.svg(), grid.rect, String::new());
    Ok(cx.piece(SHEET, "", face))
}

/// As many columns of words as let their type be largest: long words ask for few, many words for many.
fn columns(words: &[String], list: Rect) -> usize {
    let longest = words.iter().map(|word| word.chars().count()).max().unwrap_or(1).max(1);
    let size = |columns: usize| {
        let rows = words.len().div_ceil(columns).max(1);
        let by_width = (list.w / columns as f64 - BESIDE) / (longest as f64 * LETTER);
        let by_height = (list.h / rows as f64).min(ROW) / LINE;
        by_width.min(by_height)
    };
    let mut best = 1;
    for tried in 2..=COLUMNS.min(words.len()) {
        // Of equals the more columns, which leave more white below.
        if size(tried) >= size(best) {
            best = tried;
        }
    }
    best
}
