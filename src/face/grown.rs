//! Faces made larger, and parts of faces, for pieces that are printed on several sheets.

use super::{Art, Face, Layer, Outline, TextRun};
use crate::units::{Mm, Pt, Rect, Size};

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
        let layers = self.layers.iter().filter(|layer| part.meets(reach(layer))).map(|layer| match layer {
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
            folds: Vec::new(),
            alt: self.alt.clone(),
            clipped: true,
        }
    }
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
}
