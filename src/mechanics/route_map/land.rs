//! The ground of a map: an island with its coast, hills and waves, as old charts show them. It carries no meaning.

use std::fmt::Write as _;

use crate::face::draw::{Drawing, Pen};
use crate::face::mm;
use crate::mechanics::Dressing;
use crate::mechanics::sketch::jitter;
use crate::units::{Mm, Size};

/// How a coast runs.
#[derive(Clone, Copy, Debug)]
pub(super) struct Shape {
    /// Its corners.
    corners: usize,
    /// How far they are from the middle at the most, and by how much they lie in or out, as shares of half the map.
    out: f64,
    sway: f64,
    /// The power of the rounded square that it follows: the greater, the squarer.
    power: i32,
}

/// An island amid the sea.
pub(super) const ISLAND: Shape = Shape { corners: 22, out: 0.97, sway: 0.075, power: 4 };
/// One that reaches into the corners of the map, under all roads: as many corners as lie on the diagonals too.
pub(super) const BROAD: Shape = Shape { corners: 24, out: 0.99, sway: 0.012, power: 24 };

/// The island in a map of this size.
#[derive(Clone, Copy, Debug)]
pub(super) struct Land {
    pub(super) size: Size,
    pub(super) shape: Shape,
    /// Tells islands apart.
    pub(super) of: usize,
}

impl Land {
    /// A corner of the coast, or of a line along it, `wide` times as far out.
    fn corner(self, index: usize, wide: f64) -> (f64, f64) {
        let Shape { corners, out, sway, power } = self.shape;
        let index = index % corners;
        let (by, _) = jitter(index, self.of, 11);
        let angle = std::f64::consts::TAU * index as f64 / corners as f64;
        let (sin, cos) = angle.sin_cos();
        // A rounded square fills a map better than a circle: a power of the sines says how far out it is.
        let square = (sin.powi(power) + cos.powi(power)).powf(-f64::from(power).recip());
        let out = (out - sway + sway * by) * square * wide;
        let (w, h) = (self.size.w.get() / 2.0, self.size.h.get() / 2.0);
        (w + w * out * cos, h + h * out * sin)
    }

    /// The coast as a smooth closed line (Catmull and Rom's cubic as Bézier pieces; from memory).
    fn coast(self, wide: f64) -> String {
        let corners = self.shape.corners;
        let at = |index: usize| self.corner(index, wide);
        // A cubic stays among its four points: none of them lies outside the map.
        let (w, h) = (self.size.w.get(), self.size.h.get());
        let within = |(x, y): (f64, f64)| (x.clamp(0.0, w.max(0.0)), y.clamp(0.0, h.max(0.0)));
        let (x, y) = within(at(0));
        let mut path = format!("M{x:.3} {y:.3}");
        for index in 0..corners {
            let (p0, p1, p2, p3) = (at(index + corners - 1), at(index), at(index + 1), at(index + 2));
            let (ax, ay) = within((p1.0 + (p2.0 - p0.0) / 6.0, p1.1 + (p2.1 - p0.1) / 6.0));
            let (bx, by) = within((p2.0 - (p3.0 - p1.0) / 6.0, p2.1 - (p3.1 - p1.1) / 6.0));
            let (x, y) = within(p2);
            let _ = write!(path, " C{ax:.3} {ay:.3} {bx:.3} {by:.3} {x:.3} {y:.3}");
        }
        path.push_str(" Z");
        path
    }

    /// Whether what is `reach` to all sides of a point lies on land, or on the sea; none where the coast may cross it.
    fn holds(self, x: f64, y: f64, reach: f64) -> Option<bool> {
        let Shape { out, sway, power, .. } = self.shape;
        let (w, h) = (self.size.w.get() / 2.0, self.size.h.get() / 2.0);
        let far = |by: f64| {
            let away = |at: f64, half: f64| ((at - half).abs() + by).max(0.0) / half;
            (away(x, w).powi(power) + away(y, h).powi(power)).powf(f64::from(power).recip())
        };
        // The coast lies between these, with the lines along it.
        let (least, most) = ((out - 2.0 * sway) * 0.96, out * 1.05);
        if far(reach) < least { Some(true) } else { (far(-reach) > most).then_some(false) }
    }

    /// Sea and island.
    pub(super) fn draw(self, drawing: &mut Drawing, cx: &Dressing<'_>) {
        let (paper, soft, ink, line) = (cx.colour("paper"), cx.colour("soft"), cx.colour("ink"), cx.colour("line"));
        drawing.rect(crate::units::Rect::of(self.size), Mm::ZERO, Pen::fill(soft));
        drawing.path(&self.coast(1.035), Pen::line(line, mm(0.2)));
        drawing.path(&self.coast(1.0), Pen { fill: Some(paper), ..Pen::line(ink, mm(0.55)) });
        drawing.path(&self.coast(0.975), Pen::line(line, mm(0.2)).dashed(mm(0.8), mm(0.9)));
    }

    /// A small hill or tree on land, a wave on the sea, about this point; nothing on the coast.
    pub(super) fn mark(self, drawing: &mut Drawing, (x, y): (Mm, Mm), unit: Mm, of: usize, cx: &Dressing<'_>) {
        let pen = Pen::line(cx.colour("line"), mm(0.3));
        let (x, y, u) = (x.get(), y.get(), unit.get());
        let Some(on_land) = self.holds(x, y, u * 0.25) else { return };
        let path = if !on_land {
            // Two waves.
            format!(
                "M{:.3} {y:.3} q{:.3} {:.3} {:.3} 0 q{:.3} {:.3} {:.3} 0",
                x - u * 0.2,
                u * 0.1,
                -u * 0.12,
                u * 0.2,
                u * 0.1,
                -u * 0.12,
                u * 0.2
            )
        } else if of.is_multiple_of(3) {
            // A tree: a trunk and a crown.
            format!(
                "M{x:.3} {:.3} l0 {:.3} M{:.3} {:.3} q{:.3} {:.3} {:.3} 0 Z",
                y,
                u * 0.12,
                x - u * 0.1,
                y,
                u * 0.1,
                -u * 0.36,
                u * 0.2
            )
        } else {
            // Two hills, one before the other.
            format!(
                "M{:.3} {:.3} q{:.3} {:.3} {:.3} 0 M{:.3} {:.3} q{:.3} {:.3} {:.3} {:.3}",
                x - u * 0.2,
                y + u * 0.1,
                u * 0.13,
                -u * 0.32,
                u * 0.26,
                x + u * 0.02,
                y + u * 0.02,
                u * 0.1,
                -u * 0.2,
                u * 0.2,
                u * 0.08
            )
        };
        drawing.path(&path, pen);
    }
}

/// A compass rose: four long points and four short ones, the north half of each inked.
pub(super) fn rose(drawing: &mut Drawing, (x, y): (Mm, Mm), radius: Mm, cx: &Dressing<'_>) {
    let (ink, paper) = (cx.colour("ink"), cx.colour("paper"));
    let outline = Pen { fill: Some(paper), ..Pen::line(ink, mm(0.3)) };
    drawing.circle(x, y, radius * 0.62, Pen::line(cx.colour("line"), mm(0.3)));
    let at = |degrees: f64, far: Mm| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        (x + far * sin, y - far * cos)
    };
    for turn in [1, 3, 5, 7, 0, 2, 4, 6] {
        let angle = f64::from(turn) * 45.0;
        let far = if turn % 2 == 0 { radius } else { radius * 0.55 };
        let waist = radius * 0.2;
        drawing.polygon(&[at(angle, far), at(angle + 45.0, waist), (x, y)], Pen { fill: Some(ink), ..outline });
        drawing.polygon(&[at(angle, far), at(angle - 45.0, waist), (x, y)], outline);
    }
}
