use resvg::tiny_skia::{Paint, Pixmap, Transform};
use resvg::usvg;

use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::units::{Mm, Rect, Size};

/// A picture in pixels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Raster {
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// Rows from the top: red, green, blue and straight alpha of each pixel.
    pub rgba: Vec<u8>,
}

impl Raster {
    /// The picture as PNG, without any time or comment in it.
    ///
    /// # Errors
    /// When the pixels do not fit width and height.
    pub fn png(&self) -> Hinted<Vec<u8>> {
        let refused =
            |error: png::EncodingError| Trouble::new(format!("the picture cannot be written as PNG: {error}"));
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, self.width, self.height);
        encoder.set_color(png::ColorType::Rgba);
        encoder.set_depth(png::BitDepth::Eight);
        // Line art on flat grounds: rows repeat, so the lightest search for what was there before, without a filter that
        // hides it, gives smaller files in an eighth of the time of the encoder's own fast way.
        encoder.set_deflate_compression(png::DeflateCompression::Level(1));
        encoder.set_filter(png::Filter::NoFilter);
        let mut writer = encoder.write_header().map_err(refused)?;
        writer.write_image_data(&self.rgba).map_err(refused)?;
        writer.finish().map_err(refused)?;
        Ok(bytes)
    }

    /// The same picture half as wide and high: each pixel is the mean of four. An odd last row or column is left out.
    #[must_use]
    pub fn halved(&self) -> Self {
        let (width, height) = (self.width / 2, self.height / 2);
        let row = self.width as usize * 4;
        let mut rgba = Vec::with_capacity(width as usize * height as usize * 4);
        for rows in self.rgba.chunks_exact((row * 2).max(1)) {
            let (upper, lower) = rows.split_at(row);
            for (a, b) in upper.chunks_exact(8).zip(lower.chunks_exact(8)) {
                let pixels = [&a[..4], &a[4..], &b[..4], &b[4..]];
                let alpha: u32 = pixels.iter().map(|pixel| u32::from(pixel[3])).sum();
                for channel in 0..3 {
                    // Colours count by how much of them is seen.
                    let sum: u32 = pixels.iter().map(|pixel| u32::from(pixel[channel]) * u32::from(pixel[3])).sum();
                    rgba.push(u8::try_from((sum + alpha / 2).checked_div(alpha).unwrap_or(0)).unwrap_or(u8::MAX));
                }
                rgba.push(u8::try_from((alpha + 2) / 4).unwrap_or(u8::MAX));
            }
        }
        Self { width, height, rgba }
    }

    pub(super) fn from_pixmap(pixmap: Pixmap) -> Self {
        let (width, height) = (pixmap.width(), pixmap.height());
        let mut rgba = pixmap.take();
        // Most pixels are either full or empty, and those are the same with and without their alpha multiplied in.
        for pixel in rgba.chunks_exact_mut(4) {
            if let [r, g, b, a] = pixel
                && *a != 0
                && *a != u8::MAX
            {
                for c in [r, g, b] {
                    let straight = (u16::from(*c) * 255 + u16::from(*a) / 2) / u16::from(*a);
                    *c = u8::try_from(straight).unwrap_or(u8::MAX);
                }
            }
        }
        Self { width, height, rgba }
    }
}

/// A cleaned SVG picture (`face::clean_svg`) alone, `side` pixels along its longer side.
///
/// # Errors
/// When it cannot be drawn.
pub fn picture(svg: &str, side: u32) -> Hinted<Raster> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default())
        .map_err(|error| Trouble::new(format!("the picture cannot be drawn: {error}")))?;
    let (w, h) = (f64::from(tree.size().width()), f64::from(tree.size().height()));
    let size = Size { w: Mm::new(w), h: Mm::new(h) };
    let mut pixmap = blank(size, f64::from(side) / w.max(h).max(1.0))?;
    draw(svg, &mut pixmap)?;
    Ok(Raster::from_pixmap(pixmap))
}

/// An empty picture of `size`.
pub(super) fn blank(size: Size, px_per_mm: f64) -> Hinted<Pixmap> {
    let (width, height) = (pixels(size.w.get() * px_per_mm), pixels(size.h.get() * px_per_mm));
    let most = limits::RASTER_PIXELS;
    if u64::from(width) * u64::from(height) > most {
        return Err(Trouble::new(format!("a picture of {width} × {height} pixels is too large"))
            .hint(format!("at most {most} pixels can be drawn; ask for fewer to the millimetre")));
    }
    Pixmap::new(width, height).ok_or_else(|| Trouble::new("a picture of no size cannot be drawn"))
}

/// Draws an SVG that the engine wrote over a picture of the same shape.
pub(super) fn draw(svg: &str, onto: &mut Pixmap) -> Hinted<()> {
    let whole = (onto.width(), onto.height());
    draw_part(svg, onto, whole, (0, 0))
}

/// Draws the part of an SVG that begins at the pixel `corner` of a picture of the `whole` page over `onto`.
pub(super) fn draw_part(svg: &str, onto: &mut Pixmap, whole: (u32, u32), corner: (u32, u32)) -> Hinted<()> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default())
        .map_err(|error| Trouble::new(format!("the page cannot be drawn: {error}")))?;
    #[expect(clippy::cast_precision_loss, reason = "within RASTER_PIXELS")]
    let [w, h, x, y] = [whole.0, whole.1, corner.0, corner.1].map(|pixels| pixels as f32);
    let scale = Transform::from_scale(w / tree.size().width(), h / tree.size().height());
    paint(tree.root(), scale.post_translate(-x, -y), onto);
    Ok(())
}

/// Draws an SVG into a place of a picture with so many pixels to the millimetre, turned by degrees about its middle.
pub(super) fn paste(svg: &str, (rect, turn): (Rect, f64), px_per_mm: f64, onto: &mut Pixmap) -> Hinted<()> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default())
        .map_err(|error| Trouble::new(format!("the picture cannot be drawn: {error}")))?;
    #[expect(clippy::cast_possible_truncation, reason = "pixels of a page")]
    let px = |mm: Mm| (mm.get() * px_per_mm) as f32;
    let (x, y, w, h) = (px(rect.x), px(rect.y), px(rect.w), px(rect.h));
    #[expect(clippy::cast_possible_truncation, reason = "degrees")]
    let turned = Transform::from_rotate_at(turn as f32, x + w / 2.0, y + h / 2.0);
    let placed = turned.pre_translate(x, y).pre_scale(w / tree.size().width(), h / tree.size().height());
    paint(tree.root(), placed, onto);
    Ok(())
}

/// Draws what is in a group. Pictures within the picture are drawn straight onto it: the library gives each a layer of
/// the whole picture's size, and a page has many.
fn paint(group: &usvg::Group, at: Transform, onto: &mut Pixmap) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) if !inner.should_isolate() => paint(inner, at.pre_concat(inner.transform()), onto),
            usvg::Node::Image(image) if !image.is_visible() => {}
            usvg::Node::Image(image) => match image.kind() {
                usvg::ImageKind::SVG(tree) => paint(tree.root(), at, onto),
                _ => node_at(node, at, onto),
            },
            _ => node_at(node, at, onto),
        }
    }
}

/// Draws a node where it stands; the library would move it to the picture's corner.
fn node_at(node: &usvg::Node, at: Transform, onto: &mut Pixmap) {
    match (node.abs_layer_bounding_box(), node) {
        (Some(bounds), _) => {
            resvg::render_node(node, at.pre_translate(bounds.x(), bounds.y()), &mut onto.as_mut());
        }
        (None, usvg::Node::Path(path)) => straight(path, at, onto),
        (None, _) => {}
    }
}

/// Draws a line straight across or down: it has no area without its stroke, and the library leaves it out.
fn straight(path: &usvg::Path, at: Transform, onto: &mut Pixmap) {
    let Some(stroke) = path.stroke().filter(|_| path.is_visible()) else { return };
    // A shade from one colour to another has no area to spread over either.
    let usvg::Paint::Color(colour) = stroke.paint() else { return };
    let mut paint = Paint { anti_alias: path.rendering_mode().use_shape_antialiasing(), ..Paint::default() };
    paint.set_color_rgba8(colour.red, colour.green, colour.blue, stroke.opacity().to_u8());
    onto.stroke_path(path.data(), &paint, &stroke.to_tiny_skia(), at, None);
}

/// Whole pixels, at least one; what is no number is one.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the range of u32")]
fn pixels(value: f64) -> u32 {
    value.round().clamp(1.0, f64::from(u32::MAX)) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_picture_is_the_mean_of_its_pixels() {
        let of = |pixels: [[u8; 4]; 6]| pixels.concat();
        let rgba = [
            of([[255, 0, 0, 255], [255, 0, 0, 255], [0, 0, 0, 0], [9, 9, 9, 255], [1, 1, 1, 255], [7, 7, 7, 7]]),
            of([[0, 0, 255, 255], [0, 0, 255, 255], [0, 0, 0, 0], [9, 9, 9, 255], [3, 3, 3, 255], [7, 7, 7, 7]]),
        ];
        let picture = Raster { width: 6, height: 2, rgba: rgba.concat() };
        let half = picture.halved();
        assert_eq!((half.width, half.height), (3, 1));
        assert_eq!(half.rgba, [128, 0, 128, 255, 9, 9, 9, 128, 2, 2, 2, 131]);
    }
}
