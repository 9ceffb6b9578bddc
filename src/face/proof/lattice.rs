use super::{Dot, PrintedShape, middle};
use crate::units::{Mm, Rect};

/// Rows and columns in which things stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lattice {
    /// The rows' middles, from the top.
    pub rows: Vec<Mm>,
    /// The columns' middles, from the left.
    pub cols: Vec<Mm>,
}

impl Lattice {
    /// The rows and columns of things: middles nearer to one another than `apart` are one row or column.
    #[must_use]
    pub fn of(places: &[Rect], apart: Mm) -> Self {
        let at = places.iter().map(|rect| middle(*rect));
        Self { rows: lanes(at.clone().map(|at| at.1), apart), cols: lanes(at.map(|at| at.0), apart) }
    }

    /// The cells between ruled lines: each row and column lies between two neighbouring lines.
    #[must_use]
    pub fn between(lines: &(Vec<Mm>, Vec<Mm>)) -> Self {
        let middles = |lines: &[Mm]| {
            lines.windows(2).filter_map(|pair| Some((*pair.first()? + *pair.last()?) / 2.0)).collect::<Vec<_>>()
        };
        Self { rows: middles(&lines.0), cols: middles(&lines.1) }
    }

    /// The row and column nearest to a point.
    #[must_use]
    pub fn cell(&self, at: Dot) -> Option<(usize, usize)> {
        Some((nearest(&self.rows, at.1)?, nearest(&self.cols, at.0)?))
    }
}

fn nearest(lanes: &[Mm], at: Mm) -> Option<usize> {
    let far = |lane: &Mm| (*lane - at).get().abs();
    lanes.iter().enumerate().min_by(|a, b| far(a.1).total_cmp(&far(b.1))).map(|(index, _)| index)
}

/// Values that lie near one another as one each: their means, rising. A value joins the lane before it when it is
/// nearer than `apart` to that lane's last.
#[must_use]
pub fn lanes(values: impl IntoIterator<Item = Mm>, apart: Mm) -> Vec<Mm> {
    let mut sorted: Vec<Mm> = values.into_iter().collect();
    sorted.sort_by(|a, b| a.get().total_cmp(&b.get()));
    let mut lanes: Vec<Vec<Mm>> = Vec::new();
    for value in sorted {
        match lanes.last_mut() {
            Some(lane) if lane.last().is_some_and(|last| value - *last < apart) => lane.push(value),
            _ => lanes.push(vec![value]),
        }
    }
    #[expect(clippy::cast_precision_loss, reason = "a handful of values")]
    let mean = |lane: &Vec<Mm>| lane.iter().fold(Mm::ZERO, |sum, value| sum + *value) / lane.len().max(1) as f64;
    lanes.iter().map(mean).collect()
}

/// The places of straight level lines, from the top, and of upright ones, from the left, each told once; lines nearer
/// than `apart` are one.
#[must_use]
pub fn ruled<'a>(shapes: impl IntoIterator<Item = &'a PrintedShape>, apart: Mm) -> (Vec<Mm>, Vec<Mm>) {
    let (mut level, mut upright) = (Vec::new(), Vec::new());
    for (from, to) in shapes.into_iter().filter_map(PrintedShape::segment) {
        let (dx, dy) = ((to.0 - from.0).get().abs(), (to.1 - from.1).get().abs());
        // A hundredth of its length off level is level to the eye.
        if dy * 100.0 < dx {
            level.push(from.1);
        } else if dx * 100.0 < dy {
            upright.push(from.0);
        }
    }
    (lanes(level, apart), lanes(upright, apart))
}
