//! The outlines of a board, each told from the others by its form alone, in grey and without colour.

use serde::{Deserialize, Serialize};

use crate::face::draw::{Drawing, Pen};
use crate::mechanics::Dressing;
use crate::units::{Mm, Rect};

/// An outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A circle.
    Circle,
    /// A square on its side.
    Square,
    /// A triangle, point up.
    Triangle,
    /// A square on its corner, taller than wide.
    Diamond,
    /// Six sides, two of them upright.
    Hexagon,
    /// Five points.
    Star,
    /// An upright cross with thick arms.
    Cross,
    /// A drop, point up.
    Drop,
}

impl Kind {
    /// All outlines.
    pub const ALL: [Self; 8] =
        [Self::Circle, Self::Square, Self::Triangle, Self::Diamond, Self::Hexagon, Self::Star, Self::Cross, Self::Drop];

    /// The plain word; also the key of the theme's own word for it.
    #[must_use]
    pub const fn plain(self) -> &'static str {
        match self {
            Self::Circle => "circle",
            Self::Square => "square",
            Self::Triangle => "triangle",
            Self::Diamond => "diamond",
            Self::Hexagon => "hexagon",
            Self::Star => "star",
            Self::Cross => "cross",
            Self::Drop => "drop",
        }
    }

    /// The theme's word for it.
    pub(super) fn name<'a>(self, cx: &Dressing<'a>) -> &'a str {
        cx.name(self.plain(), self.plain())
    }

    /// Corners in units of half the breadth, from the middle, `y` downwards; none for what is round.
    const fn corners(self) -> &'static [(f64, f64)] {
        match self {
            Self::Circle | Self::Drop => &[],
            Self::Square => &[(-0.78, -0.78), (0.78, -0.78), (0.78, 0.78), (-0.78, 0.78)],
            Self::Triangle => &[(0.0, -1.0), (1.0, 0.74), (-1.0, 0.74)],
            Self::Diamond => &[(0.0, -1.0), (0.78, 0.0), (0.0, 1.0), (-0.78, 0.0)],
            Self::Hexagon => &[(0.0, -1.0), (0.87, -0.5), (0.87, 0.5), (0.0, 1.0), (-0.87, 0.5), (-0.87, -0.5)],
            Self::Star => &[
                (0.0, -1.0),
                (0.325, -0.4475),
                (0.951, -0.309),
                (0.526, 0.171),
                (0.588, 0.809),
                (0.0, 0.553),
                (-0.588, 0.809),
                (-0.526, 0.171),
                (-0.951, -0.309),
                (-0.325, -0.4475),
            ],
            Self::Cross => &[
                (-0.42, -0.95),
                (0.42, -0.95),
                (0.42, -0.42),
                (0.95, -0.42),
                (0.95, 0.42),
                (0.42, 0.42),
                (0.42, 0.95),
                (-0.42, 0.95),
                (-0.42, 0.42),
                (-0.95, 0.42),
                (-0.95, -0.42),
                (-0.42, -0.42),
            ],
        }
    }

    /// Where a number stands inside: middle's height, half width and half height, in units of half the breadth.
    const fn inside(self) -> (f64, f64, f64) {
        match self {
            Self::Circle => (0.0, 0.72, 0.6),
            Self::Square => (0.0, 0.7, 0.62),
            Self::Triangle => (0.24, 0.42, 0.44),
            Self::Diamond => (0.0, 0.44, 0.44),
            Self::Hexagon => (0.0, 0.74, 0.58),
            Self::Star => (0.06, 0.46, 0.44),
            Self::Cross => (0.0, 0.62, 0.42),
            Self::Drop => (0.26, 0.52, 0.5),
        }
    }
}

/// Draws an outline about a middle.
pub(super) fn draw(drawing: &mut Drawing, kind: Kind, (x, y): (Mm, Mm), across: Mm, pen: Pen) {
    let half = across / 2.0;
    match kind {
        Kind::Circle => drawing.circle(x, y, half * 0.96, pen),
        Kind::Drop => drawing.path(&drop(x, y, half), pen),
        _ => {
            let corners: Vec<(Mm, Mm)> =
                kind.corners().iter().map(|(dx, dy)| (x + half * *dx, y + half * *dy)).collect();
            drawing.polygon(&corners, pen);
        }
    }
}

/// A drop: from the point down both flanks into a round belly.
fn drop(x: Mm, y: Mm, half: Mm) -> String {
    let at = |dx: f64, dy: f64| format!("{:.3} {:.3}", (x + half * dx).get(), (y + half * dy).get());
    format!(
        "M{} C{} {} {} C{} {} {} C{} {} {} C{} {} {} Z",
        at(0.0, -1.0),
        at(0.1, -0.6),
        at(0.72, -0.2),
        at(0.72, 0.27),
        at(0.72, 0.68),
        at(0.4, 0.98),
        at(0.0, 0.98),
        at(-0.4, 0.98),
        at(-0.72, 0.68),
        at(-0.72, 0.27),
        at(-0.72, -0.2),
        at(-0.1, -0.6),
        at(0.0, -1.0),
    )
}

/// Where the number of an outline stands.
pub(super) fn number_slot(kind: Kind, (x, y): (Mm, Mm), across: Mm) -> Rect {
    let half = across / 2.0;
    let (dy, w, h) = kind.inside();
    Rect { x: x - half * w, y: y + half * (dy - h), w: half * (2.0 * w), h: half * (2.0 * h) }
}
