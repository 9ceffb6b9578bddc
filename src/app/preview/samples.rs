//! A picture of every mechanic: what is printed of its sample, side by side.

use std::sync::Arc;

use crate::diag::{Hinted, Trouble};
use crate::face::{Audience, Face, Layer, Piece};
use crate::kit::Kit;
use crate::mechanics::sample::{Facts, sample};
use crate::mechanics::{AnyMechanic, MECHANICS};
use crate::party::{Fits, enlarged};
use crate::theme::{Edition, Loaded, Palette};
use crate::units::{Mm, Size};

/// Width of a row of pieces, if no piece is wider.
const ROW: Mm = Mm::new(200.0);
/// Room about every piece.
const GAP: Mm = Mm::new(5.0);
/// Pieces shown of one sample: with more, none can be told.
const MOST: usize = 10;

/// A sample's picture with what the mechanic takes.
type Made = Hinted<(Piece, Facts)>;

/// Samples, kept as long as theme, palette and edition stay.
#[derive(Default)]
pub(super) struct Samples {
    of: Option<(Arc<Loaded>, Palette, Edition)>,
    made: Arc<Vec<Made>>,
}

/// The id of a sample's picture.
#[must_use]
pub fn sample_id(mechanic: &str) -> String {
    // No piece of a kit has a colon in its id.
    format!("sample:{mechanic}")
}

impl Samples {
    /// The samples in the kit's look; those that were made are kept, and none are when `stop` says that something newer
    /// waits.
    pub fn of(
        &mut self,
        theme: &Arc<Loaded>,
        kit: &Kit,
        edition: Edition,
        fits: Fits<'_>,
        stop: &dyn Fn() -> bool,
    ) -> Hinted<Arc<Vec<Made>>> {
        let palette = Palette::new(&theme.theme.palette, &kit.look.palette)?.in_edition(edition);
        let same = self.of.as_ref().is_some_and(|(of, looks, in_edition)| {
            Arc::ptr_eq(of, theme) && *looks == palette && *in_edition == edition
        });
        if !same {
            let mut made = Vec::new();
            for mechanic in MECHANICS {
                if stop() {
                    return Ok(Arc::default());
                }
                made.push(picture(*mechanic, theme, &palette, edition, fits));
            }
            self.made = Arc::new(made);
            self.of = Some((theme.clone(), palette, edition));
        }
        Ok(self.made.clone())
    }
}

fn picture(mechanic: &dyn AnyMechanic, theme: &Loaded, palette: &Palette, edition: Edition, fits: Fits<'_>) -> Made {
    let meta = mechanic.meta();
    let sample = sample(mechanic, theme, palette).map_err(|trouble| trouble.at(meta.name))?;
    let printed: Vec<&Piece> = sample.pieces.iter().filter(|piece| piece.audience == Audience::Players).collect();
    let printed = if printed.is_empty() { sample.pieces.iter().collect() } else { printed };
    let mut shown: Vec<Piece> = printed.into_iter().take(MOST).cloned().collect();
    if edition == Edition::LargePrint {
        shown = enlarged(&shown, fits)?;
    }
    let pieces: Vec<&Piece> = shown.iter().collect();
    let first = pieces.first().ok_or_else(|| {
        Trouble::new(format!("{} prints nothing", meta.name)).hint("`inklatch mechanics` tells of it")
    })?;
    let front = side_by_side(&pieces, format!("A sample of {}: guests {}.", meta.name, meta.guests));
    let piece = Piece {
        id: sample_id(meta.id),
        label: meta.name.to_owned(),
        audience: Audience::Players,
        front,
        back: None,
        copies: 1,
        ..(*first).clone()
    };
    Ok((piece, sample.facts))
}

/// The fronts of pieces in rows, as they might lie on a table.
fn side_by_side(pieces: &[&Piece], alt: String) -> Face {
    let shown = || pieces.iter().take(MOST).map(|piece| &piece.front);
    let width = shown().map(|face| face.size.w).fold(ROW, Mm::max);
    let mut face = Face::new(Size { w: Mm::ZERO, h: Mm::ZERO }, alt);
    let (mut x, mut y, mut row) = (GAP, GAP, Mm::ZERO);
    for front in shown() {
        if x > GAP && x + front.size.w > width + GAP {
            (x, y, row) = (GAP, y + row + GAP, Mm::ZERO);
        }
        for layer in &front.layers {
            let mut layer = layer.clone();
            match &mut layer {
                Layer::Art(art) => art.rect = art.rect.moved(x, y),
                Layer::Text(run) => run.rect = run.rect.moved(x, y),
            }
            face.layers.push(layer);
        }
        x = x + front.size.w + GAP;
        row = row.max(front.size.h);
        face.size = Size { w: face.size.w.max(x), h: y + row + GAP };
    }
    face
}
