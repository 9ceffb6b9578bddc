use resvg::usvg;
use resvg::usvg::tiny_skia_path::PathSegment;

use super::{Contour, Dot, PrintedArt, PrintedShape, box_about};
use crate::limits;
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// Straight lines for one curve: on a circle drawn as four curves the error is half a hundredth of its radius.
const STEPS: u8 = 8;

/// Where a picture stands: its own units (CSS pixels) to millimetres on the piece, as an affine map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Factors of x for the new x and y.
    pub x: (f64, f64),
    /// Factors of y for the new x and y.
    pub y: (f64, f64),
    /// What is added, in millimetres.
    pub origin: (f64, f64),
}

impl Place {
    /// The place that a picture of `w` × `h` units has when it fills a rectangle.
    #[must_use]
    pub fn filling(rect: Rect, w: f64, h: f64) -> Self {
        Self { x: (rect.w.get() / w, 0.0), y: (0.0, rect.h.get() / h), origin: (rect.x.get(), rect.y.get()) }
    }

    /// A point of the picture on the piece.
    #[must_use]
    pub fn at(self, x: f64, y: f64) -> Dot {
        let map = |fx: f64, fy: f64, add: f64| Mm::new(fx * x + fy * y + add);
        (map(self.x.0, self.y.0, self.origin.0), map(self.x.1, self.y.1, self.origin.1))
    }

    /// The place of something that stands in the picture by a transform of its own.
    fn within(self, inner: usvg::Transform) -> Self {
        let [sx, ky, kx, sy, tx, ty] = [inner.sx, inner.ky, inner.kx, inner.sy, inner.tx, inner.ty].map(f64::from);
        let turn = |x: f64, y: f64| (self.x.0 * x + self.y.0 * y, self.x.1 * x + self.y.1 * y);
        let (add_x, add_y) = turn(tx, ty);
        Self { x: turn(sx, ky), y: turn(kx, sy), origin: (self.origin.0 + add_x, self.origin.1 + add_y) }
    }

    /// By how much lengths grow: the root of the factor of areas.
    fn scale(self) -> f64 {
        (self.x.0 * self.y.1 - self.x.1 * self.y.0).abs().sqrt()
    }
}

/// The outlines of a picture at its place, in drawing order; `art` and `order` number the picture and its first
/// outline. At most [`limits::TRACED`] outlines are taken.
#[must_use]
pub fn trace(tree: &usvg::Tree, place: Place, art: usize, order: usize) -> (PrintedArt, Vec<PrintedShape>) {
    let size = tree.size();
    let (w, h) = (f64::from(size.width()), f64::from(size.height()));
    let corners = [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)].map(|(x, y)| place.at(x, y));
    let mut tracer = Tracer { place, art, order, shapes: Vec::new(), pixels: None };
    tracer.group(tree.root(), 1.0);
    let rect = box_about(corners).unwrap_or_default();
    (PrintedArt { rect, pixels: tracer.pixels }, tracer.shapes)
}

struct Tracer {
    place: Place,
    art: usize,
    order: usize,
    shapes: Vec<PrintedShape>,
    pixels: Option<(u32, u32, Mm)>,
}

impl Tracer {
    fn group(&mut self, group: &usvg::Group, above: f32) {
        let opacity = above * group.opacity().get();
        for node in group.children() {
            match node {
                usvg::Node::Group(inner) => self.group(inner, opacity),
                usvg::Node::Path(path) => self.path(path, opacity),
                usvg::Node::Text(text) => self.group(text.flattened(), opacity),
                usvg::Node::Image(image) => self.image(image, opacity),
            }
        }
    }

    fn path(&mut self, path: &usvg::Path, opacity: f32) {
        let fill = path.fill().and_then(|fill| mixed(fill.paint(), opacity * fill.opacity().get()));
        let stroke = path.stroke();
        let ink = stroke.and_then(|stroke| mixed(stroke.paint(), opacity * stroke.opacity().get()));
        if !path.is_visible() || (fill.is_none() && ink.is_none()) || self.shapes.len() >= limits::TRACED {
            return;
        }
        let Some(data) = path.data().clone().transform(path.abs_transform()) else { return };
        let contours = self.contours(&data);
        let Some(rect) = box_about(contours.iter().flat_map(|contour| contour.points.iter().copied())) else { return };
        let inner = path.abs_transform();
        let inner_scale = f64::from(inner.sx * inner.sy - inner.kx * inner.ky).abs().sqrt();
        let width = |stroke: &usvg::Stroke| Mm::new(f64::from(stroke.width().get()) * inner_scale * self.place.scale());
        let shape = PrintedShape {
            contours,
            rect,
            fill,
            stroke: ink.zip(stroke.map(width)),
            dashed: stroke.is_some_and(|stroke| stroke.dasharray().is_some()),
            art: self.art,
            order: self.order + self.shapes.len(),
        };
        self.shapes.push(shape);
    }

    fn image(&mut self, image: &usvg::Image, opacity: f32) {
        if let usvg::ImageKind::SVG(tree) = image.kind() {
            // The nested tree's transforms lead to its own corner only.
            let outer = self.place;
            self.place = outer.within(image.abs_transform());
            self.group(tree.root(), opacity);
            self.place = outer;
            return;
        }
        let b = image.abs_bounding_box();
        let (left, right) = (self.place.at(b.x().into(), b.y().into()), self.place.at(b.right().into(), b.y().into()));
        let wide = super::apart(left, right);
        let size = image.size();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels of a picture, whole")]
        let (w, h) = (size.width() as u32, size.height() as u32);
        let coarser = |(known, _, at): (u32, u32, Mm)| {
            f64::from(w) / wide.get().max(f64::EPSILON) < f64::from(known) / at.get().max(f64::EPSILON)
        };
        if self.pixels.is_none_or(coarser) {
            self.pixels = Some((w, h, wide));
        }
    }

    fn contours(&self, path: &usvg::tiny_skia_path::Path) -> Vec<Contour> {
        let mut done: Vec<Contour> = Vec::new();
        let mut open = Contour::default();
        let mut last = (0.0, 0.0);
        let point = |p: usvg::tiny_skia_path::Point| (f64::from(p.x), f64::from(p.y));
        for segment in path.segments() {
            match segment {
                PathSegment::MoveTo(p) => {
                    done.push(std::mem::take(&mut open));
                    last = point(p);
                    open.points.push(self.place.at(last.0, last.1));
                }
                PathSegment::LineTo(p) => {
                    last = point(p);
                    open.points.push(self.place.at(last.0, last.1));
                }
                PathSegment::QuadTo(a, p) => {
                    let (from, a, to) = (last, point(a), point(p));
                    self.curve(&mut open, |t| {
                        let s = 1.0 - t;
                        let f = |from: f64, a: f64, to: f64| s * s * from + 2.0 * s * t * a + t * t * to;
                        (f(from.0, a.0, to.0), f(from.1, a.1, to.1))
                    });
                    last = to;
                }
                PathSegment::CubicTo(a, b, p) => {
                    let (from, a, b, to) = (last, point(a), point(b), point(p));
                    self.curve(&mut open, |t| {
                        let s = 1.0 - t;
                        let f = |from: f64, a: f64, b: f64, to: f64| {
                            s * s * s * from + 3.0 * s * s * t * a + 3.0 * s * t * t * b + t * t * t * to
                        };
                        (f(from.0, a.0, b.0, to.0), f(from.1, a.1, b.1, to.1))
                    });
                    last = to;
                }
                PathSegment::Close => open.closed = true,
            }
        }
        done.push(open);
        done.retain(|contour| contour.points.len() > 1);
        done
    }

    fn curve(&self, open: &mut Contour, at: impl Fn(f64) -> (f64, f64)) {
        for step in 1..=STEPS {
            let (x, y) = at(f64::from(step) / f64::from(STEPS));
            open.points.push(self.place.at(x, y));
        }
    }
}

/// The colour of a paint as it looks on white paper; none where it is all but clear.
fn mixed(paint: &usvg::Paint, opacity: f32) -> Option<Colour> {
    let stops = |stops: &[usvg::Stop]| {
        let mut sum = [0.0_f64; 3];
        for stop in stops {
            let c = stop.color();
            for (sum, part) in sum.iter_mut().zip([c.red, c.green, c.blue]) {
                *sum += f64::from(part);
            }
        }
        #[expect(clippy::cast_precision_loss, reason = "a handful of stops")]
        let count = stops.len().max(1) as f64;
        sum.map(|part| part / count)
    };
    let rgb = match paint {
        usvg::Paint::Color(c) => [c.red, c.green, c.blue].map(f64::from),
        usvg::Paint::LinearGradient(gradient) => stops(gradient.stops()),
        usvg::Paint::RadialGradient(gradient) => stops(gradient.stops()),
        usvg::Paint::Pattern(_) => [128.0; 3],
    };
    let opacity = f64::from(opacity);
    if opacity < 0.02 {
        return None;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the range of u8")]
    let [r, g, b] = rgb.map(|part| (part * opacity + 255.0 * (1.0 - opacity)).round().clamp(0.0, 255.0) as u8);
    Some(Colour { r, g, b })
}
