//! Rows: boxes side by side on shelves, each as high as its first box.

use super::{Ground, Lot, Slab};

#[derive(Clone, Copy)]
struct Row {
    page: usize,
    y: i64,
    h: i64,
    used: i64,
}

/// Lays boxes into rows, each into the first row that takes it. With `lying`, boxes are turned where that fits.
pub(super) fn lay(order: &[Slab], ground: Ground, lying: bool) -> Vec<Lot> {
    let mut rows: Vec<Row> = Vec::new();
    // For each page, where its next row would begin.
    let mut filled: Vec<i64> = Vec::new();
    let mut lots = Vec::with_capacity(order.len());
    for b in order {
        let upright = (b.w, b.h, false);
        let turned = (b.h, b.w, true);
        let (first, second) = if lying { (turned, upright) } else { (upright, turned) };
        let mut ways = [Some(first), ground.turn.then_some(second)];
        if lying && !ground.turn {
            ways = [Some(upright), None];
        }
        let ways = || ways.iter().flatten().copied().filter(|(w, h, _)| ground.takes(*w, *h));
        let in_row = ways().find_map(|(w, h, turned)| {
            let at = rows.iter().position(|row| h <= row.h && row.used + w <= ground.w)?;
            Some((at, w, turned))
        });
        if let Some((at, w, turned)) = in_row
            && let Some(row) = rows.get_mut(at)
        {
            lots.push(Lot { at: b.at, page: row.page, x: row.used, y: row.y, turned });
            row.used += w;
            continue;
        }
        let Some((w, h, turned)) = ways().next() else { continue };
        let page = filled.iter().position(|y| y + h <= ground.h).unwrap_or(filled.len());
        if page == filled.len() {
            filled.push(0);
        }
        if let Some(y) = filled.get_mut(page) {
            rows.push(Row { page, y: *y, h, used: w });
            lots.push(Lot { at: b.at, page, x: 0, y: *y, turned });
            *y += h;
        }
    }
    lots
}
