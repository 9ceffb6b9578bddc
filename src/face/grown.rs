//! Faces made larger, and parts of faces, for pieces that are printed on several sheets.

use std::sync::Arc;

use super::draw::{Drawing, Pen};
use super::{Art, Face, Layer, Line, Outline, TextRun};
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// Colour and width of a cut line that is drawn into a part: those of the cut lines on sheets.
const CUT: (Colour, Mm) = (Colour { r: 0x8C, g: 0x8C, b: 0x8C }, Mm::new(0.09));

impl Outline {
    /// The same line, evenly larger.
    #[must_use]
    pub fn grown(&self, factor: f64) -> Self {
        match self {
            Self::Rect => Self::Rect,
            Self::Round => Self::Round,
            Self::Path(data) => Self::Path(grown_path(data, factor)),
        }
    }

    /// The line as a picture of this size; none of a plain rectangle.
    fn drawn(&self, size: Size) -> Option<Arc<str>> {
        let pen = Pen::line(CUT.0, CUT.1);
        let mut drawing = Drawing::new(size);
        match self {
            Self::Rect => return None,
            Self::Round => {
                let (w, h) = (size.w.get(), size.h.get());
                let (rx, ry) = (w / 2.0, h / 2.0);
                drawing.path(&format!("M0 {ry}A{rx} {ry} 0 1 1 {w} {ry}A{rx} {ry} 0 1 1 0 {ry}Z"), pen);
            }
            Self::Path(data) => drawing.path(data, pen),
        }
        Some(drawing.svg())
    }
}

impl Face {
    /// The same face, evenly larger: places, pictures, folds, cut line. No text is set below `least`, and none larger
    /// than in proportion, unless that is below `least`.
    #[must_use]
    pub fn grown(&self, factor: f64, least: Pt) -> Self {
        let point = |(x, y): (Mm, Mm)| (x * factor, y * factor);
        let layer = |layer: &Layer| match layer {
            Layer::Art(art) => Layer::Art(Art { rect: grown(art.rect, factor), ..art.clone() }),
            Layer::Text(run) => Layer::Text(TextRun {
                rect: grown(run.rect, factor),
                least,
                most: (run.most * factor).max(least),
                within: run.within.as_ref().map(|shape| shape.iter().copied().map(point).collect()),
                ..run.clone()
            }),
        };
        Self {
            size: Size { w: self.size.w * factor, h: self.size.h * factor },
            outline: self.outline.grown(factor),
            layers: self.layers.iter().map(layer).collect(),
            folds: self.folds.iter().map(|(from, to)| (point(*from), point(*to))).collect(),
            alt: self.alt.clone(),
            clipped: self.clipped,
        }
    }

    /// What of the face lies in `part`, as a face of its own. What reaches over its edges is cut off there.
    #[must_use]
    pub fn part(&self, part: Rect) -> Self {
        let moved = |rect: Rect| rect.moved(-part.x, -part.y);
        // The part is cut along its own edges; where the whole is not a rectangle, its line is drawn besides.
        let cut_line = self
            .outline
            .drawn(self.size)
            .map(|svg| Layer::Art(Art { svg, rect: Rect::of(self.size), turn: 0.0, alt: String::new() }));
        let layers =
            self.layers.iter().filter(|layer| part.meets(reach(layer))).chain(&cut_line).map(|layer| match layer {
                Layer::Art(art) => Layer::Art(Art { rect: moved(art.rect), ..art.clone() }),
                Layer::Text(run) => Layer::Text(TextRun {
                    rect: moved(run.rect),
                    within: run
                        .within
                        .as_ref()
                        .map(|shape| shape.iter().map(|(x, y)| (*x - part.x, *y - part.y)).collect()),
                    ..run.clone()
                }),
            });
        Self {
            size: Size { w: part.w, h: part.h },
            outline: Outline::Rect,
            layers: layers.collect(),
            folds: self.folds.iter().filter_map(|line| within(*line, part)).collect(),
            alt: self.alt.clone(),
            clipped: true,
        }
    }
}

/// What of a line lies in a rectangle, from the rectangle's top left (Liang and Barsky 1984).
fn within(((x1, y1), (x2, y2)): Line, part: Rect) -> Option<Line> {
    let (dx, dy) = ((x2 - x1).get(), (y2 - y1).get());
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    let sides = [
        (-dx, (x1 - part.x).get()),
        (dx, (part.right() - x1).get()),
        (-dy, (y1 - part.y).get()),
        (dy, (part.bottom() - y1).get()),
    ];
    for (towards, room) in sides {
        if towards == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if towards < 0.0 {
            from = from.max(room / towards);
        } else {
            to = to.min(room / towards);
        }
    }
    let at = |t: f64| (x1 + Mm::new(dx * t) - part.x, y1 + Mm::new(dy * t) - part.y);
    (from < to).then(|| (at(from), at(to)))
}

/// What a layer may cover: its rectangle, or a square about it where it is turned.
#[must_use]
pub fn reach(layer: &Layer) -> Rect {
    let (rect, turn) = match layer {
        Layer::Art(art) => (art.rect, art.turn),
        Layer::Text(run) => (run.rect, run.turn),
    };
    if turn == 0.0 {
        return rect;
    }
    let half = Mm::new(rect.w.get().hypot(rect.h.get()) / 2.0);
    let (x, y) = (rect.x + rect.w / 2.0, rect.y + rect.h / 2.0);
    Rect { x: x - half, y: y - half, w: half * 2.0, h: half * 2.0 }
}

fn grown(rect: Rect, factor: f64) -> Rect {
    Rect { x: rect.x * factor, y: rect.y * factor, w: rect.w * factor, h: rect.h * factor }
}

/// Path data with every number multiplied. The data is that of a frame: absolute commands, plain numbers.
fn grown_path(data: &str, factor: f64) -> String {
    let mut out = String::new();
    let mut number = String::new();
    let flush = |number: &mut String, out: &mut String| {
        if let Ok(value) = number.parse::<f64>() {
            out.push_str(&((value * factor * 1000.0).round() / 1000.0).to_string());
        }
        number.clear();
    };
    for c in data.chars() {
        if c.is_ascii_digit() || c == '.' || c == '-' {
            number.push(c);
        } else {
            flush(&mut number, &mut out);
            out.push(c);
        }
    }
    flush(&mut number, &mut out);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_grows_evenly() {
        assert_eq!(grown_path("M1 2L-3.5 4Z", 2.0), "M2 4L-7 8Z");
    }

    #[test]
    fn a_part_keeps_folds_and_cut_line() {
        let mut face = Face::new(Size::mm(100.0, 60.0), "");
        face.outline = Outline::Path("M0 30L50 0L100 30L50 60Z".into());
        face.folds = vec![((Mm::ZERO, Mm::new(20.0)), (Mm::new(100.0), Mm::new(20.0)))];
        let part = face.part(Rect::mm(40.0, 10.0, 60.0, 50.0));
        assert_eq!(part.folds, vec![((Mm::ZERO, Mm::new(10.0)), (Mm::new(60.0), Mm::new(10.0)))]);
        assert!(matches!(&part.layers[..], [Layer::Art(art)] if art.rect == Rect::mm(-40.0, -10.0, 100.0, 60.0)));
        assert!(face.part(Rect::mm(0.0, 30.0, 100.0, 30.0)).folds.is_empty());
    }
}
