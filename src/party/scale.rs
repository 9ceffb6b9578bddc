use std::sync::Arc;

use crate::face::{Art, Face, Frame, Layer, Outline};
use crate::units::{Rect, Size};

/// A frame made larger or smaller, evenly.
pub(super) struct Scaled {
    frame: Arc<Frame>,
    factor: f64,
}

impl Scaled {
    /// The frame as large as it can be within `room`.
    pub fn within(frame: Arc<Frame>, room: Size) -> Self {
        let factor = (room.w.get() / frame.size.w.get()).min(room.h.get() / frame.size.h.get());
        let factor = if factor.is_finite() && factor > 0.0 { factor } else { 1.0 };
        Self { frame, factor }
    }

    pub fn size(&self) -> Size {
        Size { w: self.frame.size.w * self.factor, h: self.frame.size.h * self.factor }
    }

    pub fn slot(&self, name: &str) -> Option<Rect> {
        let rect = self.frame.slot(name)?;
        let f = self.factor;
        Some(Rect { x: rect.x * f, y: rect.y * f, w: rect.w * f, h: rect.h * f })
    }

    /// An empty face on the frame.
    pub fn face(&self, alt: String) -> Face {
        let mut face = Face::new(self.size(), alt);
        if let Some(outline) = &self.frame.outline {
            face.outline = Outline::Path(outline.clone()).grown(self.factor);
        }
        face.layers.push(Layer::Art(self.art(Rect::of(self.size()))));
        face
    }

    /// The frame's art at a place.
    pub fn art(&self, rect: Rect) -> Art {
        Art { svg: self.frame.svg.clone(), rect, turn: 0.0, alt: String::new() }
    }
}
