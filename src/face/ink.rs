//! How much ink a picture takes, and how fine its pixels are.

use resvg::{tiny_skia, usvg};

use super::proof::{Place, trace};
use super::{Art, Face, Layer};
use crate::units::MM_PER_INCH;

/// Pixels of a picture's larger side when its ink is looked at: a share needs no sharpness.
const SIDE: f32 = 96.0;

impl Face {
    /// All pictures, lowest first.
    pub fn arts(&self) -> impl Iterator<Item = &Art> {
        self.layers.iter().filter_map(|layer| match layer {
            Layer::Art(art) => Some(art),
            Layer::Text(_) => None,
        })
    }

    /// The share of the face that its pictures cover with ink, 0 to 1: how far they are from white paper, in the mean.
    /// `share` is asked for the share of each picture by itself ([`inked`]). Text is left out: it is never much.
    #[must_use]
    pub fn inked(&self, share: impl Fn(&str) -> f64) -> f64 {
        let area = |art: &Art| art.rect.w.get() * art.rect.h.get();
        let whole = self.size.w.get() * self.size.h.get();
        let ink: f64 = self.arts().map(|art| share(&art.svg) * area(art)).sum();
        if whole > 0.0 { (ink / whole).min(1.0) } else { 0.0 }
    }
}

impl Art {
    /// Pixels to the inch in print of the coarsest picture made of pixels in it; none in a drawing.
    #[must_use]
    pub fn dots_per_inch(&self) -> Option<f64> {
        // Reading a drawing takes long, and nearly all are drawings.
        if !self.svg.contains("<image") {
            return None;
        }
        let tree = usvg::Tree::from_str(&self.svg, &usvg::Options::default()).ok()?;
        let (w, h) = (f64::from(tree.size().width()), f64::from(tree.size().height()));
        let (art, _) = trace(&tree, Place::filling(self.rect, w, h), 0, 0);
        let (across, _, wide) = art.pixels?;
        (wide.get() > 0.0).then(|| f64::from(across) / wide.get() * MM_PER_INCH)
    }
}

/// The share of a picture's box that it covers with ink, 0 to 1; nothing of one that cannot be drawn.
#[must_use]
pub fn inked(svg: &str) -> f64 {
    let Ok(tree) = usvg::Tree::from_str(svg, &usvg::Options::default()) else { return 0.0 };
    let (w, h) = (tree.size().width(), tree.size().height());
    let scale = SIDE / w.max(h).max(1.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and SIDE")]
    let pixels = |side: f32| (side * scale).round().clamp(1.0, SIDE) as u32;
    let Some(mut picture) = tiny_skia::Pixmap::new(pixels(w), pixels(h)) else { return 0.0 };
    picture.fill(tiny_skia::Color::WHITE);
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut picture.as_mut());
    let pixels = picture.pixels();
    // Each of the three inks takes from one part of the light.
    let ink = |p: &tiny_skia::PremultipliedColorU8| {
        1.0 - (f64::from(p.red()) + f64::from(p.green()) + f64::from(p.blue())) / (3.0 * 255.0)
    };
    #[expect(clippy::cast_precision_loss, reason = "fewer than ten thousand pixels")]
    let share = pixels.iter().map(ink).sum::<f64>() / pixels.len().max(1) as f64;
    share
}
