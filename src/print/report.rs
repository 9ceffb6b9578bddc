//! What type setting says about a face: at which size its text came to stand, and what its fonts lack.

use std::collections::BTreeMap;
use std::sync::Mutex;

use serde::{Deserialize, Serialize};
use typst::foundations::{NativeElement as _, Selector};
use typst::introspection::{Introspector as _, MetadataElem};
use typst_layout::PagedDocument;

use super::fonts::Reach;
use super::shaped::Shaped;
use crate::diag::Anchor;
use crate::limits;
use crate::units::{Mm, Pt};

/// How one run of text came out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// Where the words come from.
    pub from: Anchor,
    /// The size at which it is set.
    pub size: Pt,
    /// The least size that it may have.
    pub least: Pt,
    /// Whether it leaves its rectangle even at the least size.
    pub overflows: bool,
    /// The height that it takes, ink included.
    pub height: Mm,
    /// Its first words.
    pub words: String,
    /// The piece that it stands on; empty for a face set alone.
    pub piece: String,
}

/// A character that the family of its lettering role cannot draw. It is set in another family of the lettering, or
/// as that family's sign for a missing character when none has it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct MissingGlyph {
    /// The family.
    pub family: String,
    /// The character.
    pub text: char,
    /// Where the words come from.
    pub from: Anchor,
    /// The first words of the run.
    pub words: String,
    /// The piece that it stands on; empty for a face set alone.
    pub piece: String,
}

/// A run of the job at hand; the engine answers by its number.
pub(super) struct RunNote {
    pub(super) from: Anchor,
    pub(super) least: Pt,
    pub(super) words: String,
    pub(super) piece: String,
    /// How far its ink reaches above and below, in parts of the size.
    pub(super) reach: Reach,
    /// All that its measures depend on.
    pub(super) key: String,
    /// What is known from an earlier time.
    pub(super) known: Option<Measured>,
}

/// What the template found out about a run: size in points, lengths in whole micrometres, written as millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Measured {
    size: f64,
    width: f64,
    height: f64,
    overflows: bool,
}

impl Measured {
    /// What is known of a run that was set in a shape beforehand.
    pub(super) const fn of_shape(shaped: &Shaped) -> Self {
        Self { size: shaped.size, width: shaped.width, height: shaped.height, overflows: shaped.overflows }
    }
}

/// An answer of the template.
#[derive(Deserialize)]
struct Answer {
    n: usize,
    #[serde(flatten)]
    measured: Measured,
}

/// Measures of runs seen before. A kit's pieces are set many times over (proof, two papers, three levels, while
/// its author types); measuring is most of the work, and it depends on nothing but the run and the fonts.
///
/// Invariant: what is given from here is to the bit what measuring again would give, so the pages are the same.
#[derive(Default)]
pub(super) struct Memory {
    known: Mutex<BTreeMap<String, Measured>>,
}

impl Memory {
    pub(super) fn get(&self, key: &str) -> Option<Measured> {
        self.known.lock().ok()?.get(key).copied()
    }

    fn learn(&self, key: &str, measured: Measured) {
        if let Ok(mut known) = self.known.lock() {
            if known.len() >= limits::KEPT_FITS {
                known.clear();
            }
            known.insert(key.to_owned(), measured);
        }
    }
}

/// How each run came out, by what was known and by what the template told.
pub(super) fn fits(document: &PagedDocument, runs: &[RunNote], memory: &Memory) -> Vec<Fit> {
    let mut found: Vec<Option<Measured>> = runs.iter().map(|run| run.known).collect();
    if found.iter().any(Option::is_none) {
        for content in document.introspector().query(&Selector::Elem(MetadataElem::ELEM, None)) {
            let Some(element) = content.to_packed::<MetadataElem>() else { continue };
            let answer = serde_json::to_value(&element.value).and_then(serde_json::from_value::<Answer>);
            let Ok(Answer { n, measured }) = answer else { continue };
            if let (Some(run), Some(slot)) = (runs.get(n), found.get_mut(n)) {
                memory.learn(&run.key, measured);
                *slot = Some(measured);
            }
        }
    }
    runs.iter().zip(found).filter_map(|(run, measured)| Some(fit(run, measured?))).collect()
}

fn fit(run: &RunNote, measured: Measured) -> Fit {
    let size = Pt::new(measured.size);
    Fit {
        from: run.from.clone(),
        size,
        least: run.least,
        overflows: measured.overflows,
        height: Mm::new(measured.height) + (size * (run.reach.above + run.reach.below)).to_mm(),
        words: run.words.clone(),
        piece: run.piece.clone(),
    }
}
