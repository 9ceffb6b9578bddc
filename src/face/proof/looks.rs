use std::collections::BTreeMap;

use resvg::usvg;

use super::{Place, PrintedShape, box_about, trace};
use crate::diag::{Hinted, Trouble};
use crate::theme::Colour;
use crate::units::{Rect, Size};

/// How a drawing looks, whatever its size and place: outlines as parts of its larger side, fills and strokes in grey.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    parts: Vec<Part>,
}

#[derive(Clone, Debug, PartialEq)]
struct Part {
    contours: Vec<Vec<(f64, f64)>>,
    fill: Option<f64>,
    stroke: Option<(f64, f64)>,
    dashed: bool,
}

/// How far points of like drawings may lie apart, as a part of the larger side: a printed drawing of 10 mm is then
/// the same to a fifth of a millimetre.
const SAME_PLACE: f64 = 0.02;
/// How far fills of like drawings may lie apart in lightness, 0 to 1.
const SAME_GREY: f64 = 0.08;

impl Look {
    /// The look of shapes in drawing order; none of none.
    #[must_use]
    pub fn of(shapes: &[&PrintedShape]) -> Option<Self> {
        let all = shapes.iter().flat_map(|shape| &shape.contours).flat_map(|contour| contour.points.iter().copied());
        let about = box_about(all)?;
        let side = about.w.get().max(about.h.get());
        if side <= 0.0 {
            return None;
        }
        let grey = |colour: Colour| f64::from(colour.grey().r) / 255.0;
        let parts = shapes.iter().map(|shape| Part {
            contours: shape
                .contours
                .iter()
                .map(|contour| {
                    let relative = |(x, y): &super::Dot| {
                        (
                            ((*x - about.x).get() - about.w.get() / 2.0) / side,
                            ((*y - about.y).get() - about.h.get() / 2.0) / side,
                        )
                    };
                    contour.points.iter().map(relative).collect()
                })
                .collect(),
            fill: shape.fill.map(grey),
            stroke: shape.stroke.map(|(colour, width)| (grey(colour), width.get() / side)),
            dashed: shape.dashed,
        });
        Some(Self { parts: parts.collect() })
    }

    /// The look of an SVG that fills a rectangle of this size.
    ///
    /// # Errors
    /// When it cannot be read, or draws nothing.
    pub fn of_svg(svg: &str, size: Size) -> Hinted<Self> {
        let tree = usvg::Tree::from_str(svg, &usvg::Options::default())
            .map_err(|error| Trouble::new(format!("a drawing cannot be read: {error}")))?;
        let (w, h) = (f64::from(tree.size().width()), f64::from(tree.size().height()));
        let (_, shapes) = trace(&tree, Place::filling(Rect::of(size), w, h), 0, 0);
        let shapes: Vec<&PrintedShape> = shapes.iter().collect();
        Self::of(&shapes).ok_or_else(|| Trouble::new("a drawing is empty"))
    }

    /// Whether two drawings are the same to the eye in grey.
    #[must_use]
    pub fn same(&self, other: &Self) -> bool {
        let near = |a: f64, b: f64, by: f64| (a - b).abs() <= by;
        let line = |a: &Vec<(f64, f64)>, b: &Vec<(f64, f64)>| {
            let same = |(a, b): (&(f64, f64), &(f64, f64))| near(a.0, b.0, SAME_PLACE) && near(a.1, b.1, SAME_PLACE);
            a.len() == b.len() && a.iter().zip(b).all(same)
        };
        let part = |a: &Part, b: &Part| {
            let fill = match (a.fill, b.fill) {
                (None, None) => true,
                (Some(a), Some(b)) => near(a, b, SAME_GREY),
                _ => false,
            };
            let stroke = match (a.stroke, b.stroke) {
                (None, None) => true,
                (Some(a), Some(b)) => near(a.0, b.0, SAME_GREY) && near(a.1, b.1, SAME_PLACE),
                _ => false,
            };
            fill && stroke
                && a.dashed == b.dashed
                && a.contours.len() == b.contours.len()
                && a.contours.iter().zip(&b.contours).all(|(a, b)| line(a, b))
        };
        self.parts.len() == other.parts.len() && self.parts.iter().zip(&other.parts).all(|(a, b)| part(a, b))
    }
}

/// Drawings by name, against which printed ones are held.
#[derive(Clone, Debug, Default)]
pub struct Looks(BTreeMap<String, Look>);

impl Looks {
    /// An empty book of drawings.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a drawing by name.
    pub fn add(&mut self, name: impl Into<String>, look: Look) {
        self.0.insert(name.into(), look);
    }

    /// The names of the drawings that look like these shapes, sorted: more than one when the drawings are twins.
    #[must_use]
    pub fn named(&self, shapes: &[&PrintedShape]) -> Vec<&str> {
        let Some(look) = Look::of(shapes) else { return Vec::new() };
        self.0.iter().filter(|(_, known)| known.same(&look)).map(|(name, _)| name.as_str()).collect()
    }
}
