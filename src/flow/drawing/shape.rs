//! The outline of each kind of node, so that kinds differ by shape and not by colour alone.

use super::{Kind, Rect};

/// How far corners are cut, slanted or rounded.
const CUT: f64 = 11.0;
/// Points of a quarter of a round corner.
const ARC: [(f64, f64); 5] = [(0.0, 1.0), (0.383, 0.924), (0.707, 0.707), (0.924, 0.383), (1.0, 0.0)];

/// The outline of a node in `rect`, as a convex polygon.
///
/// A spot is a stadium, a box a plain rectangle, a lock has a narrow round top, a puzzle is a leaf with one corner folded, a tool points
/// to both sides, a key to the right, another prop leans, and the finish is a shield with its point down.
#[must_use]
pub fn outline(kind: Kind, rect: Rect) -> Vec<(f64, f64)> {
    let Rect { x, y, w, h } = rect;
    let (right, foot, middle) = (x + w, y + h, y + h / 2.0);
    match kind {
        Kind::Spot => rounded(rect, [h / 2.0; 4]),
        Kind::Box => vec![(x, y), (right, y), (right, foot), (x, foot)],
        Kind::Lock => rounded(rect, [h / 2.0, h / 2.0, 2.0, 2.0]),
        Kind::Puzzle => vec![(x, y), (right - CUT, y), (right, y + CUT), (right, foot), (x, foot)],
        Kind::Tool => {
            vec![(x + CUT, y), (right - CUT, y), (right, middle), (right - CUT, foot), (x + CUT, foot), (x, middle)]
        }
        Kind::Key => vec![(x, y), (right - 1.6 * CUT, y), (right, middle), (right - 1.6 * CUT, foot), (x, foot)],
        Kind::Thing => vec![(x + CUT, y), (right, y), (right - CUT, foot), (x, foot)],
        Kind::Finish => vec![(x, y), (right, y), (right, foot - CUT), (x + w / 2.0, foot), (x, foot - CUT)],
    }
}

/// Lines drawn inside the outline: the lid of a box, the folded corner of a puzzle, the second edge of the finish.
#[must_use]
pub fn strokes(kind: Kind, rect: Rect) -> Vec<Vec<(f64, f64)>> {
    let Rect { x, y, w, h } = rect;
    match kind {
        Kind::Box => vec![vec![(x, y + 6.0), (x + w, y + 6.0)]],
        Kind::Finish => {
            let inner = Rect { x: x + 3.0, y: y + 3.0, w: w - 6.0, h: h - 6.5 };
            let mut line = outline(Kind::Finish, inner);
            line.extend(line.first().copied());
            vec![line]
        }
        Kind::Puzzle => vec![vec![(x + w - CUT, y), (x + w - CUT, y + CUT), (x + w, y + CUT)]],
        Kind::Spot | Kind::Lock | Kind::Tool | Kind::Key | Kind::Thing => Vec::new(),
    }
}

/// A rectangle with rounded corners, clockwise from the upper left.
fn rounded(rect: Rect, radii: [f64; 4]) -> Vec<(f64, f64)> {
    let Rect { x, y, w, h } = rect;
    let corners = [(x, y, 1.0, 1.0), (x + w, y, -1.0, 1.0), (x + w, y + h, -1.0, -1.0), (x, y + h, 1.0, -1.0)];
    let mut points = Vec::new();
    for (at, ((cx, cy, dx, dy), r)) in corners.into_iter().zip(radii).enumerate() {
        let corner = ARC.map(|(s, c)| (cx + dx * r * (1.0 - s), cy + dy * r * (1.0 - c)));
        // Each corner is walked clockwise, so every second one from its other end.
        if at % 2 == 0 {
            points.extend(corner.iter().rev().map(|p| (p.0, p.1)));
        } else {
            points.extend(corner);
        }
    }
    points
}
