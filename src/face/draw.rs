//! Small drawings made by code: rings, bands, rows of cells, as SVG in millimetres.

use std::fmt::{self, Write as _};
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
        let _ =
            write!(self.body, "<rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" rx=\"{}\"{}/>", n(radius), pen);
    }

    /// A circle.
    pub fn circle(&mut self, x: Mm, y: Mm, r: Mm, pen: Pen) {
        let _ = write!(self.body, "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>", n(x), n(y), n(r), pen);
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
            pen
        );
    }

    /// Lines over a rectangle, from its upper edge or its right one down to the left, as on a tab that glue goes on.
    pub fn hatch(&mut self, rect: Rect, colour: Colour) {
        const APART: f64 = 3.0;
        let (w, h) = (rect.w.get(), rect.h.get());
        let on = |(x, y): (f64, f64)| (rect.x + Mm::new(x), rect.y + Mm::new(y));
        let mut at = APART;
        while at < w + h {
            let from = if at <= w { (at, 0.0) } else { (w, at - w) };
            let to = if at <= h { (0.0, at) } else { (at - h, h) };
            self.line(on(from), on(to), Pen::line(colour, Mm::new(0.3)));
            at += APART;
        }
    }

    /// A closed polygon.
    pub fn polygon(&mut self, points: &[(Mm, Mm)], pen: Pen) {
        // Writing to a String cannot fail, here and below.
        self.body.push_str("<polygon points=\"");
        for (at, (x, y)) in points.iter().enumerate() {
            let gap = if at > 0 { " " } else { "" };
            let _ = write!(self.body, "{gap}{},{}", n(*x), n(*y));
        }
        let _ = write!(self.body, "\" stroke-linejoin=\"round\"{pen}/>");
    }

    /// SVG path data in millimetres.
    pub fn path(&mut self, data: &str, pen: Pen) {
        let safe: String = data.chars().filter(|c| c.is_ascii_alphanumeric() || " .,-+".contains(*c)).collect();
        let _ = write!(self.body, "<path d=\"{safe}\" stroke-linejoin=\"round\"{pen}/>");
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

/// The attributes of a shape that is drawn with the pen.
impl fmt::Display for Pen {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.fill {
            Some(fill) => write!(f, " fill=\"{fill}\"")?,
            None => f.write_str(" fill=\"none\"")?,
        }
        if let Some((colour, width)) = self.stroke {
            write!(f, " stroke=\"{colour}\" stroke-width=\"{}\"", n(width))?;
        }
        if let Some((ink, gap)) = self.dash {
            write!(f, " stroke-dasharray=\"{} {}\"", n(ink), n(gap))?;
        }
        Ok(())
    }
}

/// A number to a thousandth of a millimetre, without trailing zeros.
const fn n(value: Mm) -> Thousandths {
    Thousandths((value.get() * 1000.0).round() as i64)
}

/// Thousandths of a millimetre, written as millimetres. Whole numbers are written several times as fast as broken ones,
/// and drawings are made of thousands.
struct Thousandths(i64);

impl fmt::Display for Thousandths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let (whole, part) = (self.0.unsigned_abs() / 1000, self.0.unsigned_abs() % 1000);
        match (part, part % 10, part % 100) {
            (0, ..) => write!(f, "{sign}{whole}"),
            (_, _, 0) => write!(f, "{sign}{whole}.{}", part / 100),
            (_, 0, _) => write!(f, "{sign}{whole}.{:02}", part / 10),
            _ => write!(f, "{sign}{whole}.{part:03}"),
        }
    }
}
