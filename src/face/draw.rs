//! Small drawings made by code: rings, bands, rows of cells, as SVG in millimetres.

use std::fmt::Write as _;
use std::sync::Arc;

use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// A drawing in the making. All numbers are millimetres from its top left.
#[derive(Clone, Debug)]
pub struct Drawing {
    size: Size,
    body: String,
}

/// How a shape is drawn.
#[derive(Clone, Copy, Debug, Default)]
pub struct Pen {
    /// Fill, if any.
    pub fill: Option<Colour>,
    /// Stroke colour and width, if any.
    pub stroke: Option<(Colour, Mm)>,
    /// Dashes: length of ink, length of gap.
    pub dash: Option<(Mm, Mm)>,
}

impl Pen {
    /// Filled, not outlined.
    #[must_use]
    pub const fn fill(colour: Colour) -> Self {
        Self { fill: Some(colour), stroke: None, dash: None }
    }

    /// Outlined, not filled.
    #[must_use]
    pub const fn line(colour: Colour, width: Mm) -> Self {
        Self { fill: None, stroke: Some((colour, width)), dash: None }
    }

    /// The same pen, dashed.
    #[must_use]
    pub const fn dashed(mut self, ink: Mm, gap: Mm) -> Self {
        self.dash = Some((ink, gap));
        self
    }

    fn attributes(self) -> String {
        let mut out = match self.fill {
            Some(fill) => format!(" fill=\"{fill}\""),
            None => " fill=\"none\"".into(),
        };
        if let Some((colour, width)) = self.stroke {
            // Writing to a String cannot fail, here and below.
            let _ = write!(out, " stroke=\"{colour}\" stroke-width=\"{}\"", n(width));
        }
        if let Some((ink, gap)) = self.dash {
            let _ = write!(out, " stroke-dasharray=\"{} {}\"", n(ink), n(gap));
        }
        out
    }
}

impl Drawing {
    /// An empty drawing.
    #[must_use]
    pub const fn new(size: Size) -> Self {
        Self { size, body: String::new() }
    }

    /// A rectangle with corners rounded by `radius`.
    pub fn rect(&mut self, rect: Rect, radius: Mm, pen: Pen) {
        let (x, y, w, h) = (n(rect.x), n(rect.y), n(rect.w), n(rect.h));
        let _ = write!(
            self.body,
            "<rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" rx=\"{}\"{}/>",
            n(radius),
            pen.attributes()
        );
    }

    /// A circle.
    pub fn circle(&mut self, x: Mm, y: Mm, r: Mm, pen: Pen) {
        let _ = write!(self.body, "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>", n(x), n(y), n(r), pen.attributes());
    }

    /// A straight line.
    pub fn line(&mut self, from: (Mm, Mm), to: (Mm, Mm), pen: Pen) {
        let _ = write!(
            self.body,
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\" stroke-linecap=\"round\"{}/>",
            n(from.0),
            n(from.1),
            n(to.0),
            n(to.1),
            pen.attributes()
        );
    }

    /// A closed polygon.
    pub fn polygon(&mut self, points: &[(Mm, Mm)], pen: Pen) {
        let points: Vec<String> = points.iter().map(|(x, y)| format!("{},{}", n(*x), n(*y))).collect();
        let _ = write!(
            self.body,
            "<polygon points=\"{}\" stroke-linejoin=\"round\"{}/>",
            points.join(" "),
            pen.attributes()
        );
    }

    /// SVG path data in millimetres.
    pub fn path(&mut self, data: &str, pen: Pen) {
        let safe: String = data.chars().filter(|c| c.is_ascii_alphanumeric() || " .,-+".contains(*c)).collect();
        let _ = write!(self.body, "<path d=\"{safe}\" stroke-linejoin=\"round\"{}/>", pen.attributes());
    }

    /// The drawing as SVG.
    #[must_use]
    pub fn svg(&self) -> Arc<str> {
        let (w, h) = (n(self.size.w), n(self.size.h));
        Arc::from(format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">{}</svg>",
            self.body
        ))
    }
}

/// A number to a thousandth of a millimetre, without trailing zeros.
fn n(value: Mm) -> String {
    let text = format!("{:.3}", value.get());
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".into() } else { text.into() }
}
