//! What type setting says about a face: at which size its text came to stand, and what its fonts lack.

use serde::Serialize;
use typst::foundations::{NativeElement as _, Selector};
use typst::introspection::{Introspector as _, MetadataElem};
use typst_layout::PagedDocument;

use crate::diag::Anchor;
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

/// What is known of a run before it is set; the engine answers by its number.
pub(super) struct RunNote {
    pub(super) from: Anchor,
    pub(super) least: Pt,
    pub(super) words: String,
    pub(super) piece: String,
}

/// What the template noted for each run: `(n, size, overflows, height)`.
pub(super) fn fits(document: &PagedDocument, runs: &[RunNote]) -> Vec<Fit> {
    let mut found: Vec<Option<Fit>> = runs.iter().map(|_| None).collect();
    for content in document.introspector().query(&Selector::Elem(MetadataElem::ELEM, None)) {
        let Some(element) = content.to_packed::<MetadataElem>() else { continue };
        let Ok(value) = serde_json::to_value(&element.value) else { continue };
        let number = |key: &str| value.get(key).and_then(serde_json::Value::as_f64);
        let n = value.get("n").and_then(serde_json::Value::as_u64).and_then(|n| usize::try_from(n).ok());
        let (Some(n), Some(size), Some(height)) = (n, number("size"), number("height")) else { continue };
        let overflows = value.get("overflows").and_then(serde_json::Value::as_bool).unwrap_or(true);
        if let (Some(note), Some(slot)) = (runs.get(n), found.get_mut(n)) {
            *slot = Some(Fit {
                from: note.from.clone(),
                size: Pt::new(size),
                least: note.least,
                overflows,
                height: Mm::new(height),
                words: note.words.clone(),
                piece: note.piece.clone(),
            });
        }
    }
    found.into_iter().flatten().collect()
}
