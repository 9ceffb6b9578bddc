use std::collections::BTreeMap;
use std::sync::Arc;

use resvg::usvg;

use super::line_work::{Outline as LineWidth, line_work};
use crate::diag::{Hinted, Trouble};
use crate::theme::{Edition, FrameInfo, Palette};
use crate::units::{Mm, Rect, Size};

/// A theme's frame, read: its size, its art in the palette's colours, its slots.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// True size.
    pub size: Size,
    /// Art without slots, cleaned.
    pub svg: Arc<str>,
    /// Slots by name, without the `slot-` of their ids.
    pub slots: BTreeMap<String, Rect>,
    /// Corners of those slots that are no upright rectangles, curves in short straight steps.
    pub shapes: BTreeMap<String, Arc<[(Mm, Mm)]>>,
    /// Path data of the element `outline`, if there is one: the cut line, in millimetres.
    pub outline: Option<String>,
}

/// User units (CSS pixels) in a millimetre: 96 to the inch (CSS Values and Units Level 4, absolute lengths).
const PX_PER_MM: f64 = 96.0 / 25.4;

impl Frame {
    /// Reads a frame. Slots are elements whose id starts with `slot-`; any drawing program can make them.
    ///
    /// # Errors
    /// When the text is no SVG or has no size.
    pub fn read(svg: &str, palette: &Palette) -> Hinted<Self> {
        let tree = parse(svg, palette)?;
        let mm = |px: f32| Mm::new(f64::from(px) / PX_PER_MM);
        let mut slots = BTreeMap::new();
        let mut shapes = BTreeMap::new();
        let mut outline = None;
        let mut open = vec![tree.root()];
        while let Some(group) = open.pop() {
            for node in group.children() {
                if let Some(name) = node.id().strip_prefix("slot-") {
                    let b = node.abs_bounding_box();
                    let rect = Rect { x: mm(b.x()), y: mm(b.y()), w: mm(b.width()), h: mm(b.height()) };
                    slots.insert(name.to_owned(), rect);
                    if let usvg::Node::Path(path) = node
                        && let Some(corners) = shape(path)
                    {
                        shapes.insert(name.to_owned(), corners);
                    }
                }
                match node {
                    usvg::Node::Group(group) => open.push(group),
                    usvg::Node::Path(path) if path.id() == "outline" => {
                        let data = path.data().clone().transform(path.abs_transform());
                        outline = data.map(|data| path_data(&data));
                    }
                    _ => {}
                }
            }
        }
        let size = Size { w: mm(tree.size().width()), h: mm(tree.size().height()) };
        Ok(Self { size, svg: write(&tree, palette, LineWidth::Fixed)?, slots, shapes, outline })
    }

    /// What the frame lacks of what it is for: slots, and the cut line of a token.
    #[must_use]
    pub fn lacks(&self, info: &FrameInfo) -> Vec<Trouble> {
        let name = info.name;
        let slots = info.slots.iter().filter(|slot| self.slot(slot).is_none());
        let mut lacking: Vec<Trouble> = slots
            .map(|slot| {
                Trouble::new(format!("the frame `{name}` has no slot `{slot}`"))
                    .hint(format!("draw a rectangle with the id `slot-{slot}` in it"))
            })
            .collect();
        if name == "token" && self.outline.is_none() {
            let trouble = Trouble::new("the frame `token` has no cut line");
            lacking.push(trouble.hint("give the path of its cut line the id `outline`"));
        }
        lacking
    }

    /// A slot's place.
    #[must_use]
    pub fn slot(&self, name: &str) -> Option<Rect> {
        self.slots.get(name).copied()
    }
}

/// An SVG picture in the palette's colours, as line work where the palette is for little ink, rewritten so that nothing but shapes is left: no scripts, no
/// references outside, no text, no style sheets.
///
/// # Errors
/// When the text is no SVG or has no size.
pub fn clean_svg(svg: &str, palette: &Palette) -> Hinted<Arc<str>> {
    write(&parse(svg, palette)?, palette, LineWidth::Share)
}

fn parse(svg: &str, palette: &Palette) -> Hinted<usvg::Tree> {
    let options = usvg::Options {
        style_sheet: Some(palette.style_sheet()),
        // A picture may hold pictures within itself, never point at files.
        image_href_resolver: usvg::ImageHrefResolver {
            resolve_data: usvg::ImageHrefResolver::default_data_resolver(),
            resolve_string: Box::new(|_, _| None),
        },
        ..usvg::Options::default()
    };
    usvg::Tree::from_str(svg, &options).map_err(|error| {
        Trouble::new(format!("the picture cannot be read as SVG: {error}"))
            .hint("save it again as plain SVG from the drawing program, with a width and height")
    })
}

fn write(tree: &usvg::Tree, palette: &Palette, outline: LineWidth) -> Hinted<Arc<str>> {
    let svg = tree.to_string(&usvg::WriteOptions {
        use_single_quote: false,
        indent: usvg::Indent::None,
        attributes_indent: usvg::Indent::None,
        ..usvg::WriteOptions::default()
    });
    match palette.edition() {
        Edition::LowInk => {
            let side = tree.size().width().max(tree.size().height());
            line_work(&svg, palette, outline, f64::from(side))
        }
        Edition::Colour | Edition::LargePrint => Ok(Arc::from(svg)),
    }
}

/// Straight steps of a curve of a slot: each below a millimetre on a card.
const CURVE_STEPS: u8 = 24;

/// The corners of a slot's first closed line, curves in straight steps; none for an upright rectangle.
fn shape(path: &usvg::Path) -> Option<Arc<[(Mm, Mm)]>> {
    use usvg::tiny_skia_path::PathSegment as S;
    let data = path.data().clone().transform(path.abs_transform())?;
    let mut corners: Vec<(f64, f64)> = Vec::new();
    let at = |p: usvg::tiny_skia_path::Point| (f64::from(p.x) / PX_PER_MM, f64::from(p.y) / PX_PER_MM);
    let mix = |a: (f64, f64), b: (f64, f64), t: f64| (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
    let steps = || (1..=CURVE_STEPS).map(|step| f64::from(step) / f64::from(CURVE_STEPS));
    for segment in data.segments() {
        let last = corners.last().copied();
        match (segment, last) {
            (S::MoveTo(p), None) | (S::LineTo(p), Some(_)) => corners.push(at(p)),
            (S::QuadTo(a, p), Some(from)) => corners.extend(steps().map(|t| {
                let (a, p) = (at(a), at(p));
                mix(mix(from, a, t), mix(a, p, t), t)
            })),
            (S::CubicTo(a, b, p), Some(from)) => corners.extend(steps().map(|t| {
                let (a, b, p) = (at(a), at(b), at(p));
                let (ab, bc) = (mix(from, a, t), mix(b, p, t));
                let middle = mix(a, b, t);
                mix(mix(ab, middle, t), mix(middle, bc, t), t)
            })),
            _ => break,
        }
    }
    let (left, right) = corners.iter().fold((f64::MAX, f64::MIN), |(l, r), (x, _)| (l.min(*x), r.max(*x)));
    let (top, bottom) = corners.iter().fold((f64::MAX, f64::MIN), |(t, b), (_, y)| (t.min(*y), b.max(*y)));
    let near = |a: f64, b: f64| (a - b).abs() < 0.01;
    let upright =
        corners.iter().all(|(x, y)| (near(*x, left) || near(*x, right)) && (near(*y, top) || near(*y, bottom)));
    (!upright && corners.len() > 2).then(|| corners.iter().map(|(x, y)| (Mm::new(*x), Mm::new(*y))).collect())
}

/// Path data in millimetres.
fn path_data(path: &usvg::tiny_skia_path::Path) -> String {
    use std::fmt::Write as _;
    use usvg::tiny_skia_path::PathSegment as S;
    let mm = |px: f32| (f64::from(px) / PX_PER_MM * 1000.0).round() / 1000.0;
    let mut out = String::new();
    for segment in path.segments() {
        // Writing to a String cannot fail.
        let _ = match segment {
            S::MoveTo(p) => write!(out, "M{} {}", mm(p.x), mm(p.y)),
            S::LineTo(p) => write!(out, "L{} {}", mm(p.x), mm(p.y)),
            S::QuadTo(a, p) => write!(out, "Q{} {} {} {}", mm(a.x), mm(a.y), mm(p.x), mm(p.y)),
            S::CubicTo(a, b, p) => {
                write!(out, "C{} {} {} {} {} {}", mm(a.x), mm(a.y), mm(b.x), mm(b.y), mm(p.x), mm(p.y))
            }
            S::Close => write!(out, "Z"),
        };
    }
    out
}
