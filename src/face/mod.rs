//! Faces: what is drawn on one side of a printed piece, as plain data at true size.
//!
//! A [`Face`] says what stands where; it knows neither type setting nor files. `print` sets it.

mod alike;
pub mod draw;
mod frame;
mod grown;
mod ink;
mod joint;
mod line_work;
mod order;
mod pictures;
mod piece;
pub mod proof;
mod prose;
mod usual;

use std::sync::Arc;

use serde::Serialize;

pub use alike::Glance;
pub use frame::{Frame, clean_svg};
pub use grown::reach;
pub use ink::inked;
pub use joint::Joint;
pub use pictures::Pictures;
pub use piece::{Audience, Piece, Stock};
pub use prose::prose;
pub use usual::{EXAMPLE, UsualFrame, UsualSlot, usual_frames};

use crate::diag::Anchor;
use crate::script::Rich;
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// One side of a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Face {
    /// True size of the bounding box of the cut line.
    pub size: Size,
    /// The cut line.
    pub outline: Outline,
    /// What is drawn, lowest first.
    pub layers: Vec<Layer>,
    /// Where the piece is folded.
    pub folds: Vec<Line>,
    /// What the face shows, in words, for those who cannot see it. No answers: guests' readers say it aloud.
    pub alt: String,
    /// Whether what reaches over its edges is cut off: a part of a face that is printed on several sheets.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub clipped: bool,
}

/// A straight line from point to point.
pub type Line = ((Mm, Mm), (Mm, Mm));

/// The cut line of a face.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outline {
    /// The whole rectangle.
    Rect,
    /// The ellipse inscribed in the rectangle.
    Round,
    /// SVG path data in millimetres, from the face's top left.
    Path(String),
}

/// Something drawn.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Layer {
    /// A picture without text.
    Art(Art),
    /// Text, set as large as fits.
    Text(TextRun),
}

/// A picture at its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Art {
    /// SVG without text, scripts or outside references ([`clean_svg`]).
    pub svg: Arc<str>,
    /// Where it stands; it is scaled to fill the rectangle.
    pub rect: Rect,
    /// Degrees clockwise about the rectangle's middle.
    pub turn: f64,
    /// What it shows, in words; empty for mere ornament.
    pub alt: String,
}

/// Text at its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TextRun {
    /// Where it must fit, wholly.
    pub rect: Rect,
    /// The lettering role: `text`, `display`, `hand` or `code`.
    pub role: Role,
    /// The words.
    pub text: Rich,
    /// Least size; text that does not fit at this size overflows, which is a finding.
    pub least: Pt,
    /// Greatest size; the largest that fits is taken.
    pub most: Pt,
    /// Across.
    pub align: Align,
    /// Down.
    pub valign: Valign,
    /// Colour.
    pub ink: Colour,
    /// Degrees clockwise about the rectangle's middle.
    pub turn: f64,
    /// Whether its lines stand as they are written: none is broken anew, whatever the size.
    pub whole_lines: bool,
    /// Where the words come from, for findings.
    pub from: Anchor,
    /// A shape within the rectangle that the words must not leave: its corners in the face's millimetres. Lines then
    /// follow its outline. A turned run has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub within: Option<Arc<[(Mm, Mm)]>>,
    /// Whether it may be left out where it does not fit in large print: the piece's label says it as well.
    #[serde(skip)]
    pub spare: bool,
    /// Whether its letters are drawn by their outlines alone: letters of a hand's height in the low-ink edition.
    #[serde(skip)]
    pub outlined: bool,
}

/// A lettering role.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// Running text.
    Text,
    /// Titles and signs.
    Display,
    /// Written by hand.
    Hand,
    /// Digits and letters to be read without doubt.
    Code,
}

impl Role {
    /// The key in `lettering`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::Display => "display",
            Self::Hand => "hand",
            Self::Code => "code",
        }
    }
}

/// Alignment across.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Align {
    /// Left.
    Left,
    /// Centred.
    Centre,
    /// Right.
    Right,
}

/// Alignment down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Valign {
    /// Top.
    Top,
    /// Middle.
    Middle,
    /// Bottom.
    Bottom,
}

impl Face {
    /// An empty rectangular face.
    #[must_use]
    pub fn new(size: Size, alt: impl Into<String>) -> Self {
        Self { size, outline: Outline::Rect, layers: Vec::new(), folds: Vec::new(), alt: alt.into(), clipped: false }
    }

    /// A face on a theme's frame: its size, its art, its outline.
    #[must_use]
    pub fn on(frame: &Frame, alt: impl Into<String>) -> Self {
        let art = Art { svg: frame.svg.clone(), rect: Rect::of(frame.size), turn: 0.0, alt: String::new() };
        let outline = frame.outline.clone().map_or(Outline::Rect, Outline::Path);
        Self {
            size: frame.size,
            outline,
            layers: vec![Layer::Art(art)],
            folds: Vec::new(),
            alt: alt.into(),
            clipped: false,
        }
    }

    /// The same face with a blank half above it and a fold between, so that the piece stands like a tent.
    #[must_use]
    pub fn tent(self) -> Self {
        let h = self.size.h;
        self.lowered(h)
    }

    /// The same face with so much blank paper above it and a fold between.
    #[must_use]
    pub fn lowered(mut self, h: Mm) -> Self {
        let w = self.size.w;
        for layer in &mut self.layers {
            let rect = match layer {
                Layer::Art(art) => &mut art.rect,
                Layer::Text(run) => &mut run.rect,
            };
            *rect = rect.moved(Mm::ZERO, h);
        }
        self.size.h += h;
        self.outline = Outline::Rect;
        self.folds = vec![((Mm::ZERO, h), (w, h))];
        self
    }

    /// Adds a picture.
    pub fn art(&mut self, svg: Arc<str>, rect: Rect, alt: impl Into<String>) {
        self.layers.push(Layer::Art(Art { svg, rect, turn: 0.0, alt: alt.into() }));
    }

    /// Adds text.
    pub fn text(&mut self, run: TextRun) {
        if !run.text.is_empty() {
            self.layers.push(Layer::Text(run));
        }
    }

    /// All text runs, lowest first.
    pub fn runs(&self) -> impl Iterator<Item = &TextRun> {
        self.layers.iter().filter_map(|layer| match layer {
            Layer::Text(run) => Some(run),
            Layer::Art(_) => None,
        })
    }
}

impl TextRun {
    /// Centred text in ink, between 9 pt (the least for cards; common practice, no source) and `most`.
    #[must_use]
    pub fn new(rect: Rect, role: Role, text: Rich, most: Pt, ink: Colour, from: Anchor) -> Self {
        Self {
            rect,
            role,
            text,
            least: Pt::new(9.0).min(most),
            most,
            align: Align::Centre,
            valign: Valign::Middle,
            ink,
            turn: 0.0,
            whole_lines: false,
            from,
            within: None,
            spare: false,
            outlined: false,
        }
    }

    /// The same run, drawn by its outlines alone or not.
    #[must_use]
    pub const fn outlined(mut self, outlined: bool) -> Self {
        self.outlined = outlined;
        self
    }

    /// The same run, which may be left out in large print.
    #[must_use]
    pub const fn spare(mut self) -> Self {
        self.spare = true;
        self
    }

    /// The same run, whose lines stand as they are written: it is set so small that the longest fits.
    #[must_use]
    pub const fn whole_lines(mut self) -> Self {
        self.whole_lines = true;
        self
    }

    /// The same run, aligned.
    #[must_use]
    pub const fn aligned(mut self, align: Align, valign: Valign) -> Self {
        self.align = align;
        self.valign = valign;
        self
    }

    /// The same run with another least size.
    #[must_use]
    pub const fn at_least(mut self, least: Pt) -> Self {
        self.least = least;
        self
    }

    /// The same run within a shape.
    #[must_use]
    pub fn within(mut self, shape: Option<Arc<[(Mm, Mm)]>>) -> Self {
        self.within = shape;
        self
    }

    /// The same run, turned by `degrees` clockwise.
    #[must_use]
    pub const fn turned(mut self, degrees: f64) -> Self {
        self.turn = degrees;
        self
    }
}

/// A thin helper for millimetres in face code.
#[must_use]
pub const fn mm(value: f64) -> Mm {
    Mm::new(value)
}
