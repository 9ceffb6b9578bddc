//! Lines of text kept as pictures: a keystroke changes one or two of a letter's forty lines, and drawing is most of
//! what a preview costs.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use rayon::prelude::*;
use resvg::tiny_skia::{Pixmap, PixmapPaint, Transform};
use typst::layout::{Frame, FrameItem, Point};
use typst::text::TextItem;
use typst::utils::hash128;
use typst_layout::{Page, PagedDocument};

use super::raster::draw_part;
use crate::diag::Hinted;
use crate::limits;

/// Pixels added round the ink of a line, for the soft edges of its letters.
const EDGE: f64 = 2.0;

/// Pictures of lines by all that they depend on, each with the round in which it was last used.
#[derive(Default)]
pub(super) struct KeptLines {
    kept: Mutex<Shelf>,
}

#[derive(Default)]
struct Shelf {
    round: u64,
    pixels: u64,
    lines: BTreeMap<u128, (u64, Arc<Strip>)>,
}

/// A line's ink on transparent ground, and where it lies in the picture.
struct Strip {
    left: i32,
    top: i32,
    picture: Pixmap,
}

/// A run of text at its place on the page.
struct Placed<'a> {
    at: Point,
    text: &'a TextItem,
}

impl KeptLines {
    /// Draws the words of the document's first page over `onto`, a picture of the whole page. `false`, and nothing
    /// drawn, if the page holds more than upright text: then it must be drawn as a whole.
    ///
    /// # Errors
    /// When a line cannot be drawn.
    pub(super) fn draw(&self, document: &PagedDocument, onto: &mut Pixmap) -> Hinted<bool> {
        let Some(page) = document.pages().first() else { return Ok(false) };
        let mut placed = Vec::new();
        if !upright(&page.frame, Point::zero(), &mut placed) {
            return Ok(false);
        }
        let strips: Vec<Option<Arc<Strip>>> =
            placed.par_iter().map(|line| self.strip(page, line, onto.width(), onto.height())).collect::<Hinted<_>>()?;
        for strip in strips.iter().flatten() {
            let paint = PixmapPaint::default();
            onto.draw_pixmap(strip.left, strip.top, strip.picture.as_ref(), &paint, Transform::identity(), None);
        }
        self.tidy();
        Ok(true)
    }

    /// The line's picture; none where the line leaves no ink on the page.
    fn strip(&self, page: &Page, line: &Placed<'_>, width: u32, height: u32) -> Hinted<Option<Arc<Strip>>> {
        let key = key(line, page, width, height);
        if let Ok(mut shelf) = self.kept.lock() {
            let round = shelf.round;
            if let Some((used, strip)) = shelf.lines.get_mut(&key) {
                *used = round;
                return Ok(Some(strip.clone()));
            }
        }
        let size = page.frame.size();
        let (sx, sy) = (f64::from(width) / size.x.to_pt(), f64::from(height) / size.y.to_pt());
        // The engine's box runs upwards: its `min` may lie below its `max`.
        let ink = line.text.bbox();
        let (ink_top, ink_bottom) = (ink.min.y.min(ink.max.y), ink.min.y.max(ink.max.y));
        let span = |low: f64, high: f64, most: u32| whole(low - EDGE, most).zip(whole(high + EDGE, most));
        let across = span((line.at.x + ink.min.x).to_pt() * sx, (line.at.x + ink.max.x).to_pt() * sx, width);
        let down = span((line.at.y + ink_top).to_pt() * sy, (line.at.y + ink_bottom).to_pt() * sy, height);
        let (Some((left, right)), Some((top, bottom))) = (across, down) else { return Ok(None) };
        let Some(mut picture) = Pixmap::new(right.saturating_sub(left), bottom.saturating_sub(top)) else {
            return Ok(None);
        };
        let mut frame = Frame::soft(size);
        frame.push(line.at, FrameItem::Text(line.text.clone()));
        let svg = typst_svg::svg(&Page { frame, ..page.clone() }, &typst_svg::SvgOptions::default());
        draw_part(&svg, &mut picture, (width, height), (left, top))?;
        let (Ok(left), Ok(top)) = (i32::try_from(left), i32::try_from(top)) else { return Ok(None) };
        let strip = Arc::new(Strip { left, top, picture });
        if let Ok(mut shelf) = self.kept.lock() {
            let round = shelf.round;
            shelf.pixels += strip.pixels();
            if let Some((_, old)) = shelf.lines.insert(key, (round, strip.clone())) {
                shelf.pixels -= old.pixels();
            }
        }
        Ok(Some(strip))
    }

    /// Ends a round. Beyond the bound, all lines are forgotten that this and the last rounds did not use.
    fn tidy(&self) {
        let Ok(mut shelf) = self.kept.lock() else { return };
        let shelf = &mut *shelf;
        if shelf.pixels > limits::KEPT_LINE_PIXELS {
            let oldest = shelf.round.saturating_sub(ROUNDS_KEPT);
            shelf.lines.retain(|_, (used, _)| *used > oldest);
            shelf.pixels = shelf.lines.values().map(|(_, strip)| strip.pixels()).sum();
        }
        shelf.round += 1;
    }
}

/// Rounds for which a line is kept without use when room is short.
const ROUNDS_KEPT: u64 = 8;

impl Strip {
    fn pixels(&self) -> u64 {
        u64::from(self.picture.width()) * u64::from(self.picture.height())
    }
}

/// All texts of a frame, if it holds nothing else that is drawn, and all stand upright and unclipped.
fn upright<'a>(frame: &'a Frame, at: Point, found: &mut Vec<Placed<'a>>) -> bool {
    frame.items().all(|(place, item)| match item {
        FrameItem::Group(group) => {
            group.clip.is_none()
                && group.transform.is_only_translate()
                && upright(&group.frame, at + *place + Point::new(group.transform.tx, group.transform.ty), found)
        }
        FrameItem::Text(text) => {
            found.push(Placed { at: at + *place, text });
            text.stroke.is_none()
        }
        FrameItem::Shape(..) | FrameItem::Image(..) => false,
        FrameItem::Link(..) | FrameItem::Tag(_) => true,
    })
}

/// All that the line's picture depends on, and no more: where in the source a letter came from changes with every
/// keystroke before it.
fn key(line: &Placed<'_>, page: &Page, width: u32, height: u32) -> u128 {
    let text = line.text;
    let glyphs: Vec<_> = text
        .glyphs
        .iter()
        .map(|glyph| (glyph.id, glyph.x_advance, glyph.x_offset, glyph.y_advance, glyph.y_offset))
        .collect();
    hash128(&(line.at, &text.font, text.size, &text.fill, glyphs, page.frame.size(), width, height))
}

/// The whole pixel at or below a place, within the picture; none for what is no number.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the picture")]
fn whole(place: f64, most: u32) -> Option<u32> {
    place.is_finite().then(|| place.floor().clamp(0.0, f64::from(most)) as u32)
}
