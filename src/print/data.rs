//! What the templates read: faces and sheets as JSON, text as strings, art as files of their own.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde::Serialize;
use typst::foundations::Bytes;

use super::fonts::{Fonts, Reach, Style};
use super::leading;
use super::report::{Measured, Memory, MissingGlyph, RunNote};
use super::shaped::{Shaped, shaped};
use super::spans::{SpanData, longest, style};
use crate::face::{Align, Art, Face, Layer, Role, TextRun, Valign};
use crate::theme::Colour;
use crate::units::Pt;

/// Text of more characters reads as running text, whose lines are not made alike in length.
const BALANCED_CHARS: usize = 240;
/// Smallest size in points at which anything is set: less is no letter, and no size at all would never end.
const SMALLEST: f64 = 1.0;
/// Greatest size in points: no sheet takes a letter of more than a metre.
const GREATEST: f64 = 3_000.0;
/// Least extent in millimetres of a picture or a face, so that nothing is divided by nothing.
const LEAST_MM: f64 = 0.01;
/// Characters of a run that a report quotes.
const QUOTED_CHARS: usize = 40;

/// A face as the template reads it; lengths in millimetres, sizes in points.
#[derive(Debug, Serialize)]
pub(super) struct FaceData {
    w: f64,
    h: f64,
    layers: Vec<LayerData>,
    clipped: bool,
}

#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
enum LayerData {
    Art(ArtData),
    Text(RunData),
}

#[derive(Debug, Serialize)]
struct ArtData {
    file: String,
    x: f64,
    y: f64,
    w: f64,
    h: f64,
    turn: f64,
    alt: String,
}

#[derive(Debug, Serialize)]
struct RunData {
    n: usize,
    x: f64,
    y: f64,
    w: f64,
    h: f64,
    turn: f64,
    role: Role,
    least: f64,
    most: f64,
    align: Align,
    valign: Valign,
    ink: Colour,
    above: f64,
    below: f64,
    left: f64,
    right: f64,
    balance: bool,
    whole: bool,
    outlined: bool,
    longest: Vec<Vec<SpanData>>,
    paragraphs: Vec<Vec<SpanData>>,
    fit: Option<Measured>,
    /// Its lines, if it is set in a shape.
    shaped: Option<Shaped>,
}

impl RunData {
    /// All that the run's measures depend on, and nothing else.
    fn key(&self, language: &str) -> String {
        let measures = [self.w, self.h, self.least, self.most, self.above, self.below, self.left, self.right];
        let key = (language, self.role, self.align, self.balance, self.whole, measures, &self.paragraphs);
        // What cannot be written is not remembered under a name that another run could have.
        serde_json::to_string(&key).unwrap_or_else(|error| format!("{error} {}", self.n))
    }
}

/// Gathers faces for one job: their art as files, their runs with a number each.
pub(super) struct Gather<'a> {
    fonts: &'a Fonts,
    memory: &'a Memory,
    language: &'a str,
    art: BTreeMap<Arc<str>, String>,
    pub(super) runs: Vec<RunNote>,
    pub(super) missing: Vec<MissingGlyph>,
}

impl<'a> Gather<'a> {
    pub(super) const fn new(fonts: &'a Fonts, memory: &'a Memory, language: &'a str) -> Self {
        Self { fonts, memory, language, art: BTreeMap::new(), runs: Vec::new(), missing: Vec::new() }
    }

    /// A face; without `art`, only its text.
    pub(super) fn face(&mut self, face: &Face, piece: &str, art: bool) -> FaceData {
        let mut layers = Vec::with_capacity(face.layers.len());
        // The face's own words stand in for its lowest picture, which otherwise nobody could read.
        let mut alt = Some(face.alt.as_str());
        for layer in &face.layers {
            match layer {
                Layer::Art(picture) if art => layers.push(LayerData::Art(self.art(picture, alt.take()))),
                Layer::Art(_) => {}
                Layer::Text(run) => layers.push(LayerData::Text(self.run(run, piece))),
            }
        }
        FaceData {
            w: face.size.w.get().max(LEAST_MM),
            h: face.size.h.get().max(LEAST_MM),
            layers,
            clipped: face.clipped,
        }
    }

    /// Looks whether the role's family can draw a label.
    pub(super) fn label(&mut self, text: &str, role: Role) {
        for c in self.fonts.lacks(role, Style::default(), &text.chars().collect()) {
            let missing = MissingGlyph {
                family: self.fonts.family(role).to_owned(),
                text: c,
                from: crate::diag::Anchor::Kit,
                words: text.chars().take(QUOTED_CHARS).collect(),
                piece: String::new(),
            };
            if !self.missing.contains(&missing) {
                self.missing.push(missing);
            }
        }
    }

    /// The file that holds this SVG.
    pub(super) fn file(&mut self, svg: &Arc<str>) -> String {
        let next = self.art.len();
        self.art.entry(svg.clone()).or_insert_with(|| format!("/art/{next}.svg")).clone()
    }

    /// All files of the job's art.
    pub(super) fn files(&self) -> BTreeMap<String, Bytes> {
        self.art
            .iter()
            .map(|(svg, file)| (file.trim_start_matches('/').to_owned(), Bytes::from_string(svg.clone())))
            .collect()
    }

    fn art(&mut self, art: &Art, face_alt: Option<&str>) -> ArtData {
        let alt = if art.alt.is_empty() { face_alt.unwrap_or_default() } else { &art.alt };
        ArtData {
            file: self.file(&art.svg),
            x: art.rect.x.get(),
            y: art.rect.y.get(),
            w: art.rect.w.get().max(LEAST_MM),
            h: art.rect.h.get().max(LEAST_MM),
            turn: if art.turn.is_finite() { art.turn } else { 0.0 },
            alt: alt.to_owned(),
        }
    }

    fn run(&mut self, run: &TextRun, piece: &str) -> RunData {
        let n = self.runs.len();
        let text = run.text.text();
        let words: String = text.chars().take(QUOTED_CHARS).collect();
        let reach = self.look(run, piece, &words);
        let mut data = RunData {
            n,
            x: run.rect.x.get(),
            y: run.rect.y.get(),
            w: run.rect.w.get().max(0.0),
            h: run.rect.h.get().max(0.0),
            turn: if run.turn.is_finite() { run.turn } else { 0.0 },
            role: run.role,
            least: run.least.min(run.most).get().clamp(SMALLEST, GREATEST),
            most: run.most.get().clamp(SMALLEST, GREATEST),
            align: run.align,
            valign: run.valign,
            ink: run.ink,
            above: reach.above,
            below: reach.below,
            left: reach.left,
            right: reach.right,
            balance: run.align == Align::Centre && !run.whole_lines && text.chars().count() <= BALANCED_CHARS,
            whole: run.whole_lines,
            outlined: run.outlined,
            longest: longest(self.fonts, run),
            paragraphs: run
                .text
                .paragraphs
                .iter()
                .map(|paragraph| paragraph.spans.iter().map(SpanData::of).collect())
                .collect(),
            fit: None,
            shaped: shaped(self.fonts, run, reach, leading(run.role)),
        };
        let key = data.key(self.language);
        data.fit = match &data.shaped {
            Some(shaped) => Some(Measured::of_shape(shaped)),
            None => self.memory.get(&key),
        };
        self.runs.push(RunNote {
            from: run.from.clone(),
            least: Pt::new(data.least),
            words,
            piece: piece.to_owned(),
            reach,
            key,
            known: data.fit,
        });
        data
    }

    /// How far the run's ink reaches, and which of its characters its family lacks.
    fn look(&mut self, run: &TextRun, piece: &str, words: &str) -> Reach {
        let mut texts: BTreeMap<Style, String> = BTreeMap::new();
        for span in run.text.paragraphs.iter().flat_map(|paragraph| &paragraph.spans) {
            let text = texts.entry(style(span)).or_default();
            // A span's edge may be a line's edge.
            text.push(' ');
            text.push_str(&span.text);
        }
        let mut reach = Reach::default();
        for (style, text) in &texts {
            reach = reach.max(self.fonts.reach(run.role, *style, text));
            let chars: BTreeSet<char> = text.chars().collect();
            let chars = &chars;
            for text in self.fonts.lacks(run.role, *style, chars) {
                self.missing.push(MissingGlyph {
                    family: self.fonts.family(run.role).to_owned(),
                    text,
                    from: run.from.clone(),
                    words: words.to_owned(),
                    piece: piece.to_owned(),
                });
            }
        }
        reach
    }
}
