use serde::Serialize;
use typst::layout::{Frame, FrameItem, Point, Transform};
use typst::visualize::{Color, Paint};
use typst_layout::PagedDocument;

use super::{MissingGlyph, SetDoc, SetFace};
use crate::diag::Anchor;
use crate::theme::Colour;
use crate::units::{Mm, Pt};

/// A stretch of text as it was laid out: what a reader of the page finds, whatever was asked for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SetText {
    /// The characters.
    pub text: String,
    /// Where its baseline begins, from the page's left.
    pub x: Mm,
    /// Where its baseline begins, from the page's top.
    pub y: Mm,
    /// How long its baseline is.
    pub width: Mm,
    /// Degrees clockwise by which it is turned.
    pub turn: f64,
    /// Its size.
    pub size: Pt,
    /// The family that drew it.
    pub family: String,
    /// Its colour, if it is a plain one.
    pub ink: Option<Colour>,
    /// Characters for which the family has no shape, so that its sign for a missing one stands there.
    pub lost: String,
}

impl SetFace {
    /// The text as it was laid out, in drawing order.
    #[must_use]
    pub fn words(&self) -> Vec<SetText> {
        words(&self.document, 0)
    }
}

impl SetDoc {
    /// The text of a page, counted from 0, as it was laid out, in drawing order.
    #[must_use]
    pub fn words(&self, page: usize) -> Vec<SetText> {
        words(&self.document, page)
    }
}

/// Characters on the pages that no family of the lettering could draw.
pub(super) fn lost(document: &PagedDocument) -> Vec<MissingGlyph> {
    let mut missing = Vec::new();
    for page in 0..document.pages().len() {
        for word in words(document, page) {
            missing.extend(word.lost.chars().map(|text| MissingGlyph {
                family: word.family.clone(),
                text,
                from: Anchor::Kit,
                words: word.text.clone(),
                piece: String::new(),
            }));
        }
    }
    missing.sort();
    missing.dedup();
    missing
}

fn words(document: &PagedDocument, page: usize) -> Vec<SetText> {
    let mut found = Vec::new();
    if let Some(page) = document.pages().get(page) {
        walk(&page.frame, Transform::identity(), &mut found);
    }
    found
}

fn walk(frame: &Frame, transform: Transform, found: &mut Vec<SetText>) {
    for (at, item) in frame.items() {
        match item {
            FrameItem::Group(group) => {
                let inner = transform.pre_concat(Transform::translate(at.x, at.y)).pre_concat(group.transform);
                walk(&group.frame, inner, found);
            }
            FrameItem::Text(text) => {
                let start = at.transform(transform);
                let end = Point::new(at.x + text.width(), at.y).transform(transform);
                let (dx, dy) = ((end.x - start.x).to_pt(), (end.y - start.y).to_pt());
                found.push(SetText {
                    text: text.text.to_string(),
                    x: Pt::new(start.x.to_pt()).to_mm(),
                    y: Pt::new(start.y.to_pt()).to_mm(),
                    width: Pt::new(dx.hypot(dy)).to_mm(),
                    turn: if dx == 0.0 && dy == 0.0 { 0.0 } else { dy.atan2(dx).to_degrees() },
                    size: Pt::new(text.size.to_pt()),
                    family: text.font.font().info().family.clone(),
                    ink: match &text.fill {
                        Paint::Solid(colour) => Some(plain(colour)),
                        _ => None,
                    },
                    lost: text
                        .glyphs
                        .iter()
                        .filter(|glyph| glyph.id == 0)
                        .filter_map(|glyph| text.text.get(glyph.range()))
                        .collect(),
                });
            }
            _ => {}
        }
    }
}

fn plain(colour: &Color) -> Colour {
    let [r, g, b, _] = colour.to_vec4_u8();
    Colour { r, g, b }
}
