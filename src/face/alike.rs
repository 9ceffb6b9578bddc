//! Whether two pictures can be told apart at the size at which they are printed.

use resvg::{tiny_skia, usvg};

use crate::diag::{Hinted, Trouble};

/// Pixels of a picture's side in the comparison: about what an eye at arm's length makes of 8 mm (estimate; common
/// practice, no source).
const SIDE: u32 = 32;
/// Least share of the inked area in which two pictures must differ (estimate; common practice, no source).
const LEAST_DIFFERENCE: f64 = 0.08;

/// A picture as it looks in grey, small.
#[derive(Clone, Debug, PartialEq)]
pub struct Glance {
    dark: Vec<f64>,
}

impl Glance {
    /// Looks at an SVG picture ([`super::clean_svg`]).
    ///
    /// # Errors
    /// When it cannot be drawn.
    pub fn of(svg: &str) -> Hinted<Self> {
        let broken =
            || Trouble::new("the picture cannot be drawn").hint("save it again as plain SVG with a width and height");
        let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).map_err(|_| broken())?;
        let mut pixels = tiny_skia::Pixmap::new(SIDE, SIDE).ok_or_else(broken)?;
        pixels.fill(tiny_skia::Color::WHITE);
        #[expect(clippy::cast_precision_loss, reason = "32 is exact")]
        let side = SIDE as f32;
        let scale = side / tree.size().width().max(tree.size().height()).max(1.0);
        resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut pixels.as_mut());
        // Luma weights of ITU-R BT.601, as grey printing takes them.
        let dark = |p: &tiny_skia::PremultipliedColorU8| {
            1.0 - (0.299 * f64::from(p.red()) + 0.587 * f64::from(p.green()) + 0.114 * f64::from(p.blue())) / 255.0
        };
        Ok(Self { dark: pixels.pixels().iter().map(dark).collect() })
    }

    /// The share of the area inked in either in which the two differ, 0 to 1.
    #[must_use]
    pub fn difference(&self, other: &Self) -> f64 {
        let pairs = || self.dark.iter().zip(&other.dark);
        let apart: f64 = pairs().map(|(a, b)| (a - b).abs()).sum();
        let either: f64 = pairs().map(|(a, b)| a.max(*b)).sum();
        if either > 0.0 { apart / either } else { 0.0 }
    }

    /// Whether the two may be taken for each other in print.
    #[must_use]
    pub fn alike(&self, other: &Self) -> bool {
        self.difference(other) < LEAST_DIFFERENCE
    }
}
