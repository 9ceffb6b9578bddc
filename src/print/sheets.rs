//! Sheets as the template reads them; lengths in millimetres.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use super::data::{FaceData, Gather};
use crate::face::{Face, Outline, Role};
use crate::sheet::{Placed, SAFE_MARGIN, Sheet, cut_marks};
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// All sheets; each face stands once, however often it is placed.
#[derive(Serialize)]
pub(super) struct SheetsData {
    margin: f64,
    faces: Vec<FaceData>,
    sheets: Vec<SheetData>,
}

#[derive(Serialize)]
struct SheetData {
    w: f64,
    h: f64,
    paper: &'static str,
    heading: String,
    placed: Vec<PlacedData>,
    folds: Vec<[f64; 4]>,
    marks: Vec<[f64; 4]>,
    bar: Option<[f64; 4]>,
}

#[derive(Serialize)]
struct PlacedData {
    face: usize,
    rect: [f64; 4],
    /// Degrees clockwise.
    turn: f64,
    label: String,
    label_rect: [f64; 4],
    cut: Option<CutData>,
}

/// A cut line: a rectangle, an ellipse, or a drawing of the path with the air around it.
#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
enum CutData {
    Rect,
    Round,
    Path { file: String, air: f64 },
}

/// Colour of cut lines: grey enough to be forgotten, dark enough for scissors.
const CUT_INK: Colour = Colour { r: 0x8C, g: 0x8C, b: 0x8C };
/// Width of cut lines: a quarter point.
const CUT_WIDTH: Mm = Mm::new(0.088);
/// Air around a drawn cut line, so that the line's own width is not cut off.
const CUT_AIR: Mm = Mm::new(0.5);

pub(super) fn data(sheets: &[Sheet], gather: &mut Gather<'_>) -> SheetsData {
    let mut faces = Faces { known: BTreeMap::new(), data: Vec::new() };
    let sheets = sheets
        .iter()
        .map(|sheet| SheetData {
            w: sheet.paper.size().w.get(),
            h: sheet.paper.size().h.get(),
            paper: if sheet.paper == crate::sheet::Paper::A4 { "A4" } else { "Letter" },
            heading: sheet.heading.clone(),
            placed: sheet.placed.iter().map(|placed| self::placed(placed, &mut faces, gather)).collect(),
            folds: sheet.folds.iter().map(line).collect(),
            marks: cut_marks(sheet).iter().map(line).collect(),
            bar: sheet.check_bar.map(rect),
        })
        .collect();
    SheetsData { margin: SAFE_MARGIN.get(), faces: faces.data, sheets }
}

/// Faces met so far, by piece and side. Two pieces of one id that differ (a mistake elsewhere) are kept apart.
struct Faces<'a> {
    known: BTreeMap<(&'a str, bool), Vec<(&'a Face, usize)>>,
    data: Vec<FaceData>,
}

impl<'a> Faces<'a> {
    fn number(&mut self, placed: &'a Placed, gather: &mut Gather<'_>) -> usize {
        let known = self.known.entry((&placed.piece, placed.back)).or_default();
        if let Some((_, number)) = known.iter().find(|(face, _)| **face == placed.face) {
            return *number;
        }
        let number = self.data.len();
        known.push((&placed.face, number));
        self.data.push(gather.face(&placed.face, &placed.piece, true));
        number
    }
}

fn placed<'a>(placed: &'a Placed, faces: &mut Faces<'a>, gather: &mut Gather<'_>) -> PlacedData {
    gather.label(&placed.label, Role::Code);
    PlacedData {
        face: faces.number(placed, gather),
        rect: rect(placed.rect),
        turn: match (placed.turned, placed.back) {
            (false, _) => 0.0,
            (true, false) => -90.0,
            (true, true) => 90.0,
        } + if placed.over { 180.0 } else { 0.0 },
        label: placed.label.clone(),
        label_rect: rect(placed.label_rect),
        cut: placed.cut.then(|| cut(&placed.face, gather)),
    }
}

fn cut(face: &Face, gather: &mut Gather<'_>) -> CutData {
    match &face.outline {
        Outline::Rect => CutData::Rect,
        Outline::Round => CutData::Round,
        Outline::Path(data) => CutData::Path { file: gather.file(&outline(data, face.size)), air: CUT_AIR.get() },
    }
}

/// The cut line of a path outline, as a drawing.
fn outline(data: &str, size: Size) -> Arc<str> {
    let safe: String = data.chars().filter(|c| c.is_ascii_alphanumeric() || " .,-+\n\t".contains(*c)).collect();
    let (air, w, h) = (CUT_AIR.get(), size.w.get(), size.h.get());
    let (dw, dh) = (w + 2.0 * air, h + 2.0 * air);
    Arc::from(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{dw}mm\" height=\"{dh}mm\" \
         viewBox=\"-{air} -{air} {dw} {dh}\"><path d=\"{safe}\" fill=\"none\" stroke=\"{CUT_INK}\" \
         stroke-width=\"{}\" stroke-linejoin=\"round\"/></svg>",
        CUT_WIDTH.get()
    ))
}

fn rect(rect: Rect) -> [f64; 4] {
    [rect.x.get(), rect.y.get(), rect.w.get(), rect.h.get()]
}

fn line(line: &(Mm, Mm, Mm, Mm)) -> [f64; 4] {
    [line.0.get(), line.1.get(), line.2.get(), line.3.get()]
}
