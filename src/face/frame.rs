use std::collections::BTreeMap;
use std::sync::Arc;

use resvg::usvg;

use crate::diag::{Hinted, Trouble};
use crate::theme::Palette;
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
        let mut outline = None;
        let mut open = vec![tree.root()];
        while let Some(group) = open.pop() {
            for node in group.children() {
                if let Some(name) = node.id().strip_prefix("slot-") {
                    let b = node.abs_bounding_box();
                    let rect = Rect { x: mm(b.x()), y: mm(b.y()), w: mm(b.width()), h: mm(b.height()) };
                    slots.insert(name.to_owned(), rect);
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
        Ok(Self { size, svg: write(&tree), slots, outline })
    }

    /// A slot's place.
    #[must_use]
    pub fn slot(&self, name: &str) -> Option<Rect> {
        self.slots.get(name).copied()
    }
}

/// An SVG picture in the palette's colours, rewritten so that nothing but shapes is left: no scripts, no
/// references outside, no text, no style sheets.
///
/// # Errors
/// When the text is no SVG or has no size.
pub fn clean_svg(svg: &str, palette: &Palette) -> Hinted<Arc<str>> {
    Ok(write(&parse(svg, palette)?))
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

fn write(tree: &usvg::Tree) -> Arc<str> {
    Arc::from(tree.to_string(&usvg::WriteOptions {
        use_single_quote: false,
        indent: usvg::Indent::None,
        attributes_indent: usvg::Indent::None,
        ..usvg::WriteOptions::default()
    }))
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
