use std::sync::{Arc, Mutex};

use resvg::tiny_skia::Pixmap;

use super::Press;
use super::raster::{Raster, blank, draw};
use super::report::{Fit, MissingGlyph};
use crate::diag::Hinted;
use crate::face::{Art, Face, Layer};
use crate::limits;
use crate::units::{Mm, Rect, Size};

/// A face for the window: pixels, and what type setting said.
#[derive(Clone, Debug)]
pub struct Preview {
    /// The face on transparent ground.
    pub raster: Raster,
    /// How each run of text came out, lowest first.
    pub fits: Vec<Fit>,
    /// Characters that the fonts lack.
    pub missing: Vec<MissingGlyph>,
}

/// Pictures of art kept while words change, oldest first.
#[derive(Default)]
pub(super) struct Kept {
    pictures: Mutex<Vec<(Ground, Arc<Pixmap>)>>,
}

/// The art of a face at a scale.
#[derive(Clone, PartialEq)]
struct Ground {
    art: Vec<Art>,
    size: Size,
    px_per_mm: f64,
}

impl Kept {
    /// The art's picture. Another thread may draw the same at the same time: the results are equal.
    fn get(&self, ground: &Ground, make: impl FnOnce() -> Hinted<Pixmap>) -> Hinted<Arc<Pixmap>> {
        if let Ok(mut pictures) = self.pictures.lock()
            && let Some(at) = pictures.iter().position(|(kept, _)| kept == ground)
        {
            let entry = pictures.remove(at);
            let picture = entry.1.clone();
            pictures.push(entry);
            return Ok(picture);
        }
        let picture = Arc::new(make()?);
        if let Ok(mut pictures) = self.pictures.lock() {
            pictures.push((ground.clone(), picture.clone()));
            let pixels = |p: &Pixmap| u64::from(p.width()) * u64::from(p.height());
            let mut total: u64 = pictures.iter().map(|(_, picture)| pixels(picture)).sum();
            while total > limits::KEPT_PIXELS && pictures.len() > 1 {
                let (_, oldest) = pictures.remove(0);
                total -= pixels(&oldest);
            }
        }
        Ok(picture)
    }
}

impl Press {
    /// A face in pixels, quickly: where no art covers text, the art's picture is kept from the last time, and so are
    /// the lines that came out as before; only what changed is drawn anew.
    ///
    /// # Errors
    /// As [`Press::face`], and when the picture would have too many pixels.
    pub fn preview(&self, face: &Face, px_per_mm: f64) -> Hinted<Preview> {
        let Some(art) = ground(face) else {
            let set = self.face(face)?;
            return Ok(Preview { raster: set.raster(px_per_mm)?, fits: set.fits, missing: set.missing });
        };
        let ground = Ground { art, size: face.size, px_per_mm };
        let picture = self.kept().get(&ground, || {
            let layers = ground.art.iter().cloned().map(Layer::Art).collect();
            let below = self.face(&Face { layers, ..face.clone() })?;
            let mut pixmap = blank(face.size, px_per_mm)?;
            draw(&below.svg(), &mut pixmap)?;
            Ok(pixmap)
        })?;
        let words = self.words(face)?;
        let mut pixmap = (*picture).clone();
        if !self.inner.lines.draw(&words.document, &mut pixmap)? {
            draw(&words.svg(), &mut pixmap)?;
        }
        Ok(Preview { raster: Raster::from_pixmap(pixmap), fits: words.fits, missing: words.missing })
    }
}

/// All art of a face, if it may be drawn before all of its text: no picture that comes later lies over a text.
fn ground(face: &Face) -> Option<Vec<Art>> {
    let mut texts: Vec<Rect> = Vec::new();
    let mut art = Vec::new();
    for layer in &face.layers {
        match layer {
            Layer::Text(run) => texts.push(turned(run.rect, run.turn)),
            Layer::Art(picture) => {
                let over = turned(picture.rect, picture.turn);
                if texts.iter().any(|text| text.meets(over)) {
                    return None;
                }
                art.push(picture.clone());
            }
        }
    }
    (!art.is_empty()).then_some(art)
}

/// What a rectangle may cover when it is turned about its middle: itself, or a square about its diagonal.
fn turned(rect: Rect, turn: f64) -> Rect {
    if turn == 0.0 {
        return rect;
    }
    let half = Mm::new(rect.w.get().hypot(rect.h.get()) / 2.0);
    let (x, y) = (rect.x + rect.w / 2.0, rect.y + rect.h / 2.0);
    Rect { x: x - half, y: y - half, w: half * 2.0, h: half * 2.0 }
}
