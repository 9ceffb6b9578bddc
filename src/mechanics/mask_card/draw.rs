//! The square and the card, both of one size.

use super::{Cell, Corner, GRID, MASK, View, texts};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Outline, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// The frame of the square.
const FRAME: &str = "board";
/// Width of the rim about the cells: the card must hold together beyond its outermost windows.
const RIM: Mm = Mm::new(4.5);
/// Height of the rule below the square.
const RULE: Mm = Mm::new(44.0);
/// Side of the largest cell: a window that size is quickly cut, and its letter read from a step away.
const CELL: Mm = Mm::new(18.0);
/// Legs of the corner mark, and of the corner that is cut off.
const MARK: Mm = Mm::new(4.0);
const CUT: Mm = Mm::new(4.2);
/// A window is smaller than its cell by this on every side, so that its card may lie a little askew.
const WINDOW: f64 = 0.06;

/// The outer size of both, and the side of a cell.
#[derive(Clone, Copy, Debug)]
struct Plan {
    outer: Mm,
    cell: Mm,
    at: (Mm, Mm),
}

fn plan(view: &View, cx: &Dressing<'_>) -> Hinted<Plan> {
    let frame = cx.frame(FRAME)?;
    let body = cx.slot(&frame, FRAME, "field")?;
    let most = body.w.min(body.h - RULE);
    let cell = ((most - RIM * 2.0) / f64::from(view.side().max(1))).min(CELL);
    let outer = cell * f64::from(view.side().max(1)) + RIM * 2.0;
    // Square and rule stand in the middle of the sheet together.
    let above = (body.h - outer - RULE) / 2.0;
    Ok(Plan { outer, cell, at: (body.x + (body.w - outer) / 2.0, body.y + above) })
}

impl Plan {
    /// A cell's place within the square.
    fn cell(self, (row, col): Cell) -> Rect {
        let (x, y) = (RIM + self.cell * f64::from(col), RIM + self.cell * f64::from(row));
        Rect { x, y, w: self.cell, h: self.cell }
    }

    /// The corners of the square, drawn in by a little; the first is cut off where the card's is.
    fn border(self, corner: Corner) -> Vec<(Mm, Mm)> {
        let (near, far) = (mm(0.2), self.outer - mm(0.2));
        let mut points = match corner {
            Corner::Cut => vec![(near, CUT), (CUT, near)],
            Corner::Printed | Corner::Plain => vec![(near, near)],
        };
        points.extend([(far, near), (far, far), (near, far)]);
        points
    }

    /// The border and, where there is one, the mark in its top left corner.
    fn ground(self, corner: Corner, cx: &Dressing<'_>) -> Drawing {
        let mut drawing = Drawing::new(Size { w: self.outer, h: self.outer });
        drawing.polygon(&self.border(corner), Pen::line(cx.colour("ink"), mm(0.4)));
        if corner == Corner::Printed {
            let (near, far) = (mm(0.6), mm(0.6) + MARK);
            drawing.polygon(&[(near, near), (far, near), (near, far)], Pen::fill(cx.colour("ink")));
        }
        drawing
    }
}

pub(super) fn grid(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let plan = plan(view, cx)?;
    let frame = cx.frame(FRAME)?;
    let body = cx.slot(&frame, FRAME, "field")?;
    let mut face = Face::on(&frame, "A square of letters or digits in rows and columns");
    cx.title(&mut face, &frame, FRAME, cx.name("grid-title", "Too much to read"))?;
    let mut drawing = plan.ground(view.corner, cx);
    let thin = Pen::line(cx.colour("line"), mm(0.2));
    let (start, end) = (RIM, plan.outer - RIM);
    for at in 0..=view.side() {
        let along = RIM + plan.cell * f64::from(at);
        drawing.line((start, along), (end, along), thin);
        drawing.line((along, start), (along, end), thin);
    }
    let square = Rect { x: plan.at.0, y: plan.at.1, w: plan.outer, h: plan.outer };
    face.art(drawing.svg(), square, "");
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    for (row, line) in (0_u8..).zip(&view.rows) {
        for (col, symbol) in (0_u8..).zip(line.chars()) {
            let rect = plan.cell((row, col)).inset(plan.cell * 0.1).moved(plan.at.0, plan.at.1);
            face.text(TextRun::new(rect, Role::Code, Rich::plain(symbol), Pt::new(28.0), ink, from.clone()));
        }
    }
    let air = mm(4.0);
    let side = mm(16.0);
    let below = Rect { x: body.x + side, y: square.bottom() + air, w: body.w - side * 2.0, h: RULE - air };
    let rule = view.turns.map_or_else(String::new, |turns| texts::rule(view.corner, turns));
    face.text(TextRun::new(below, Role::Text, Rich::plain(rule), Pt::new(15.0), ink, from));
    cx.draw_mark(&mut face, &frame)?;
    let mut piece = cx.piece(GRID, "", face);
    piece.measured = true;
    Ok(piece)
}

pub(super) fn mask(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let plan = plan(view, cx)?;
    let mut face = Face::new(Size { w: plan.outer, h: plan.outer }, "A square card with windows");
    if view.corner == Corner::Cut {
        let (far, cut) = (plan.outer.get(), CUT.get());
        face.outline = Outline::Path(format!("M0 {cut}L{cut} 0L{far} 0L{far} {far}L0 {far}Z"));
    }
    let mut drawing = plan.ground(view.corner, cx);
    let (line, ground) = (cx.colour("line"), cx.colour("soft"));
    for window in &view.windows {
        let rect = plan.cell(*window).inset(plan.cell * WINDOW);
        drawing.rect(rect, Mm::ZERO, Pen::fill(ground));
        let cross = Pen::line(line, mm(0.2));
        drawing.line((rect.x, rect.y), (rect.right(), rect.bottom()), cross);
        drawing.line((rect.right(), rect.y), (rect.x, rect.bottom()), cross);
        drawing.rect(rect, Mm::ZERO, Pen::line(cx.colour("ink"), mm(0.3)).dashed(mm(1.2), mm(0.8)));
    }
    face.art(drawing.svg(), Rect::of(face.size), "");
    // An upright picture would show how a card without a mark lies, and half of it would be cut away elsewhere.
    if let (Corner::Printed, false, Some(cell)) = (view.corner, cx.mark.is_empty(), spare(view)) {
        face.art(cx.symbol(cx.mark)?, plan.cell(cell).inset(plan.cell * 0.22), format!("mark: {}", cx.mark));
    }
    let label =
        if view.corner == Corner::Cut { "cut out the windows, cut off the corner" } else { "cut out the windows" };
    let mut piece = cx.piece(MASK, label, face);
    piece.measured = true;
    Ok(piece)
}

/// A cell for the lock's mark, as far from all windows as any; of several the last.
fn spare(view: &View) -> Option<Cell> {
    let side = view.side();
    let cells = (0..side).flat_map(|row| (0..side).map(move |col| (row, col)));
    let far = |cell: &Cell| {
        let steps = view.windows.iter().map(|(row, col)| row.abs_diff(cell.0).max(col.abs_diff(cell.1)));
        steps.min().unwrap_or(side)
    };
    cells.filter(|cell| !view.windows.contains(cell)).max_by_key(far)
}
