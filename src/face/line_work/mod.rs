//! Pictures reduced to line work, for an edition that needs little ink.
//!
//! A filled area becomes white with an outline that lies wholly inside it, so that no silhouette grows and a line that
//! is thinner than two strokes stays as it was. Areas in a colour of grounds vanish, unless they are what tells a
//! detail from the dark area around it. Strokes are thinned, and the hairlines of a frame's shading left out. Pictures
//! from a camera are lightened.

mod parts;

use std::fmt::Write as _;
use std::sync::Arc;

use resvg::usvg::roxmltree::{Document, Node};

use crate::diag::{Hinted, Trouble};
use crate::theme::{Colour, Palette};
use parts::{Extent, Map, wide};

/// How wide outlines are.
#[derive(Clone, Copy, Debug)]
pub(super) enum Outline {
    /// For a picture that is printed at its own size: in millimetres.
    Fixed,
    /// For a picture that is printed at many sizes, and is known again by its looks: in parts of its larger side.
    Share,
}

/// Width of outlines in millimetres: what a home printer still draws sharply in grey (common practice, no source).
const FIXED_MM: f64 = 0.26;
/// Width of outlines as a part of the larger side: a quarter of a millimetre on a mark of 10 mm.
const SHARE: f64 = 0.024;
/// Strokes wider than this many outlines are thinned to it.
const THICKEST: f64 = 2.0;
/// How wide a stroke still is, in parts of its width.
const THINNED: f64 = 0.75;
/// Strokes of a frame below this width, in millimetres, are shading and left out: a home printer draws them as wide as
/// the next wider ones, or as dots (common practice, no source).
const HAIR_MM: f64 = 0.14;
/// Units of a written picture (CSS pixels) in a millimetre.
const PX_PER_MM: f64 = 96.0 / 25.4;
/// A colour this close to white is one of grounds: contrast (WCAG 2.2) below 1.9; the palest tints of lines have 3.
const LIGHT: f64 = 1.9;
/// How much of a picture made of pixels is left.
const PICTURE_OPACITY: f64 = 0.45;

/// A picture that was written by the SVG library, as line work.
///
/// # Errors
/// When it is not what the library writes, which no picture brings about.
pub(super) fn line_work(svg: &str, palette: &Palette, outline: Outline, side_px: f64) -> Hinted<Arc<str>> {
    let document = Document::parse(svg)
        .map_err(|error| Trouble::new(format!("the picture cannot be reduced to line work: {error}")))?;
    let width = match outline {
        Outline::Fixed => FIXED_MM * PX_PER_MM,
        Outline::Share => SHARE * side_px,
    };
    let mut worker =
        Worker { svg, out: String::with_capacity(svg.len()), at: 0, palette, width, darks: Vec::new(), clips: 0 };
    worker.walk(document.root_element(), Within { opacity: 1.0, map: Map::NONE }, matches!(outline, Outline::Share));
    worker.out.push_str(svg.get(worker.at..).unwrap_or_default());
    Ok(Arc::from(worker.out))
}

struct Worker<'a> {
    svg: &'a str,
    out: String,
    /// How far the text has been taken over.
    at: usize,
    palette: &'a Palette,
    /// Width of an outline, in the picture's units.
    width: f64,
    /// Where dark areas were drawn.
    darks: Vec<Extent>,
    clips: usize,
}

/// What the groups about an element do to it.
#[derive(Clone, Copy)]
struct Within {
    opacity: f64,
    map: Map,
}

impl Worker<'_> {
    fn walk(&mut self, node: Node<'_, '_>, within: Within, mark: bool) {
        for child in node.children().filter(Node::is_element) {
            match child.tag_name().name() {
                "g" => {
                    let opacity = within.opacity * number(child, "opacity").unwrap_or(1.0);
                    let map = child.attribute("transform").map_or(within.map, |own| within.map.then(own));
                    self.walk(child, Within { opacity, map }, mark);
                }
                "path" => {
                    let drawn = self.path(child, within, mark);
                    self.replace(child, &drawn);
                }
                "image" => {
                    let range = child.range();
                    let text = self.svg.get(range).unwrap_or_default().to_owned();
                    self.replace(child, &format!("<g opacity=\"{PICTURE_OPACITY}\">{text}</g>"));
                }
                // Definitions draw nothing by themselves.
                _ => {}
            }
        }
    }

    fn replace(&mut self, node: Node<'_, '_>, by: &str) {
        let range = node.range();
        self.out.push_str(self.svg.get(self.at..range.start).unwrap_or_default());
        self.out.push_str(by);
        self.at = range.end;
    }

    /// A path, drawn anew.
    fn path(&mut self, node: Node<'_, '_>, within: Within, mark: bool) -> String {
        let text = self.svg.get(node.range()).unwrap_or_default().to_owned();
        let Some(data) = node.attribute("d") else { return text };
        let (fill, stroke) = (self.fill(node, within.opacity), self.stroke(node, within.opacity));
        if node.attribute("visibility").is_some_and(|visibility| visibility != "visible") {
            return text;
        }
        let mut out = String::new();
        let rule = node.attribute("fill-rule").unwrap_or("nonzero");
        let scale = within.map.scale();
        let width = self.width / scale;
        let edge = stroke.map(|stroke| self.thinned(node, stroke, width));
        let hair = number(node, "stroke-width").unwrap_or(1.0) * scale < HAIR_MM * PX_PER_MM;
        if fill.is_none() && hair && !mark {
            return String::new();
        }
        let shape = |fill: &str, more: &str| format!("<path d=\"{data}\" fill=\"{fill}\" fill-rule=\"{rule}\"{more}/>");
        let extent = Extent::of(data, within.map);
        match fill {
            None => out.push_str(&shape("none", &edge.unwrap_or_default())),
            Some(colour) if colour.contrast(Colour::WHITE) < LIGHT => match edge {
                Some(edge) => out.push_str(&shape("#ffffff", &edge)),
                None => out.push_str(&self.pale(data, rule, (&extent, width), mark)),
            },
            Some(colour) => {
                self.darks.push(extent);
                if let Some(edge) = edge {
                    out.push_str(&shape("#ffffff", &edge));
                } else if wide(data, width * 2.0).is_empty() {
                    out.push_str(&shape(&colour.to_string(), ""));
                } else {
                    self.clips += 1;
                    let (n, width) = (self.clips, width * 2.0);
                    // Writing to a String cannot fail.
                    let _ = write!(
                        out,
                        "<clipPath id=\"line-work-{n}\"><path d=\"{data}\" clip-rule=\"{rule}\"/></clipPath>\
                         <g clip-path=\"url(#line-work-{n})\">{}</g>",
                        shape("#ffffff", &format!(" stroke=\"{colour}\" stroke-width=\"{width:.3}\""))
                    );
                }
            }
        }
        out
    }

    /// An area in a colour of grounds: nothing on white paper, an outline on what was dark.
    fn pale(&self, data: &str, rule: &str, (extent, width): (&Extent, f64), mark: bool) -> String {
        let over = self.darks.iter().any(|dark| dark.meets(extent));
        if !mark && !over {
            return String::new();
        }
        let broad = wide(data, width * 2.0);
        if broad.is_empty() {
            // Thin and light, such as a gleam on a dark pot: the pot is white now.
            return String::new();
        }
        let line = if mark { "ink" } else { "line" };
        let (line, width) = (self.palette.get(line), width * 0.8);
        let stroke = format!("stroke=\"{line}\" stroke-width=\"{width:.3}\" stroke-linejoin=\"round\"");
        format!(
            "<path d=\"{data}\" fill=\"#ffffff\" fill-rule=\"{rule}\"/><path d=\"{broad}\" fill=\"none\" {stroke}/>"
        )
    }

    /// The attributes of a stroke, thinned where it is very thick.
    fn thinned(&self, node: Node<'_, '_>, stroke: Colour, outline: f64) -> String {
        let width = (number(node, "stroke-width").unwrap_or(1.0) * THINNED).min(outline * THICKEST);
        let colour = if stroke.contrast(Colour::WHITE) < LIGHT { self.palette.get("line") } else { stroke };
        let mut out = format!(" stroke=\"{colour}\" stroke-width=\"{width:.3}\"");
        for name in ["stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-dasharray", "stroke-dashoffset"]
        {
            if let Some(value) = node.attribute(name) {
                let _ = write!(out, " {name}=\"{value}\"");
            }
        }
        out
    }

    fn fill(&self, node: Node<'_, '_>, opacity: f64) -> Option<Colour> {
        self.paint(node.attribute("fill").unwrap_or("#000000"), opacity * number(node, "fill-opacity").unwrap_or(1.0))
    }

    fn stroke(&self, node: Node<'_, '_>, opacity: f64) -> Option<Colour> {
        self.paint(node.attribute("stroke")?, opacity * number(node, "stroke-opacity").unwrap_or(1.0))
    }

    /// A paint as it looks on white. What is no plain colour counts as ink: its outline is what is left of it.
    fn paint(&self, paint: &str, opacity: f64) -> Option<Colour> {
        if paint == "none" || opacity < 0.02 {
            return None;
        }
        let colour = Colour::parse(paint).unwrap_or_else(|| self.palette.get("ink"));
        Some(colour.on_white(opacity))
    }
}

fn number(node: Node<'_, '_>, name: &str) -> Option<f64> {
    node.attribute(name)?.parse().ok().filter(|value: &f64| value.is_finite())
}
