use std::collections::BTreeMap;

use resvg::usvg;

use super::{Contour, Dot, Place, PrintedShape, box_about, middle, trace};
use crate::diag::{Hinted, Trouble};
use crate::theme::Colour;
use crate::units::{Rect, Size};

/// How a drawing looks, whatever its size and place: outlines as parts of its larger side, fills and strokes in grey.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    parts: Vec<Part>,
    size: Size,
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
            contours: shape.contours.iter().map(|contour| stepped(contour, middle(about), side)).collect(),
            fill: shape.fill.map(grey),
            stroke: shape.stroke.map(|(colour, width)| (grey(colour), width.get() / side)),
            dashed: shape.dashed,
        });
        Some(Self { parts: parts.collect(), size: Size { w: about.w, h: about.h } })
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

    /// How large the drawing is, outlines only; it plays no part in the comparison.
    #[must_use]
    pub const fn size(&self) -> Size {
        self.size
    }

    /// The same drawing without fills and strokes: only its outlines.
    #[must_use]
    pub fn bare(mut self) -> Self {
        for part in &mut self.parts {
            (part.fill, part.stroke, part.dashed) = (None, None, false);
        }
        self
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

/// Points taken of each contour.
const STEPS: u16 = 64;

/// A contour in even steps along its length, from its first point, about a middle and in parts of `side`. However many
/// points a curve was given (that hangs on the size at which it was drawn), the steps are the same.
fn stepped(contour: &Contour, about: Dot, side: f64) -> Vec<(f64, f64)> {
    let mut points: Vec<(f64, f64)> =
        contour.points.iter().map(|(x, y)| ((*x - about.0).get() / side, (*y - about.1).get() / side)).collect();
    if let (true, Some(first)) = (contour.closed, points.first().copied()) {
        points.push(first);
    }
    let legs = || points.iter().zip(points.iter().skip(1));
    let far = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).hypot(a.1 - b.1);
    let step = legs().map(far).sum::<f64>() / f64::from(STEPS);
    let mut steps = Vec::with_capacity(usize::from(STEPS));
    let mut walked = 0.0;
    for (a, b) in legs() {
        let leg = far((a, b));
        // The rest of the step before, then whole steps, as long as they lie on this leg.
        while steps.len() < usize::from(STEPS) {
            #[expect(clippy::cast_precision_loss, reason = "at most STEPS")]
            let on = step * steps.len() as f64 - walked;
            if on > leg {
                break;
            }
            let part = if leg > 0.0 { on / leg } else { 0.0 };
            steps.push((a.0 + (b.0 - a.0) * part, a.1 + (b.1 - a.1) * part));
        }
        walked += leg;
    }
    steps
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
        Look::of(shapes).map(|look| self.like(&look)).unwrap_or_default()
    }

    /// The names of the drawings that look like this one, sorted.
    #[must_use]
    pub fn like(&self, look: &Look) -> Vec<&str> {
        self.0.iter().filter(|(_, known)| known.same(look)).map(|(name, _)| name.as_str()).collect()
    }
}
