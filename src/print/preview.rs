use std::sync::{Arc, Mutex};

use resvg::tiny_skia::{Pixmap, PixmapPaint, Transform};

use super::raster::{Raster, draw};
use super::report::{Fit, MissingGlyph};
use super::{Press, set};
use crate::diag::Hinted;
use crate::face::{Art, Face, Layer};
use crate::limits;
use crate::units::Size;

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
    /// A face in pixels, quickly: where all its art lies below all its text, the art's picture is kept from the
    /// last time and only the words are set anew.
    ///
    /// # Errors
    /// As [`Press::face`], and when the picture would have too many pixels.
    pub fn preview(&self, face: &Face, px_per_mm: f64) -> Hinted<Preview> {
        let art: Vec<Art> = face
            .layers
            .iter()
            .map_while(|layer| match layer {
                Layer::Art(art) => Some(art.clone()),
                Layer::Text(_) => None,
            })
            .collect();
        let layered = face.layers.iter().skip(art.len()).all(|layer| matches!(layer, Layer::Text(_)));
        if !layered || art.is_empty() {
            let set = self.face(face)?;
            return Ok(Preview { raster: set.raster(px_per_mm)?, fits: set.fits, missing: set.missing });
        }
        let ground = Ground { art, size: face.size, px_per_mm };
        let picture = self.kept().get(&ground, || {
            let layers = ground.art.iter().cloned().map(Layer::Art).collect();
            let below = self.face(&Face { layers, ..face.clone() })?;
            draw(&below.svg(), face.size, px_per_mm)
        })?;
        let words = self.words(face)?;
        let mut pixmap = (*picture).clone();
        let size = set::size(&words.document, 0).unwrap_or(face.size);
        let text = draw(&words.svg(), size, px_per_mm)?;
        pixmap.draw_pixmap(0, 0, text.as_ref(), &PixmapPaint::default(), Transform::identity(), None);
        Ok(Preview { raster: Raster::from_pixmap(pixmap), fits: words.fits, missing: words.missing })
    }
}
