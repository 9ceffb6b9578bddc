//! Sheets as the template reads them; lengths in millimetres.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde::Serialize;

use super::data::{FaceData, Gather};
use crate::face::{Audience, Face, Outline, Role, Stock};
use crate::script::capital;
use crate::sheet::{Paper, Placed, SAFE_MARGIN, Sheet, cut_marks};
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// All sheets; each face stands once, however often it is placed.
#[derive(Serialize)]
pub(super) struct SheetsData {
    margin: f64,
    faces: Vec<FaceData>,
    sheets: Vec<SheetData>,
    divider: Option<DividerData>,
}

/// A page of its own before what guests must not see.
#[derive(Clone, Copy, Debug)]
pub struct Divider<'a> {
    /// What stands on it in large letters.
    pub title: &'a str,
    /// Sentences below.
    pub lines: &'a [String],
}

#[derive(Serialize)]
struct DividerData {
    /// The number of the sheet before which it stands, counted from 0.
    before: usize,
    w: f64,
    h: f64,
    title: String,
    lines: Vec<String>,
}

#[derive(Serialize)]
struct SheetData {
    w: f64,
    h: f64,
    paper: &'static str,
    heading: String,
    /// The sheet's number among those for the same people, counted from 1, and how many these are.
    number: usize,
    of: usize,
    /// The name of the part that begins here, for the bookmarks; empty elsewhere.
    part: &'static str,
    /// The names of the pieces that stand here for the first time, for the bookmarks.
    names: Vec<String>,
    placed: Vec<PlacedData>,
    folds: Vec<[f64; 4]>,
    marks: Vec<[f64; 4]>,
    bar: Option<[f64; 4]>,
    large: bool,
    stock: &'static str,
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

/// Sheets for the same people stand together; `divider`, if there is one, goes before the first that is not for guests.
pub(super) fn data(sheets: &[Sheet], divider: Option<(Divider<'_>, Paper)>, gather: &mut Gather<'_>) -> SheetsData {
    let mut faces = Faces { known: BTreeMap::new(), data: Vec::new() };
    let mut named: BTreeSet<&str> = BTreeSet::new();
    let alike = |sheet: &Sheet| sheets.iter().filter(|other| other.audience == sheet.audience).count();
    let mut number = 0;
    let mut data = Vec::with_capacity(sheets.len());
    for (at, sheet) in sheets.iter().enumerate() {
        let first =
            at.checked_sub(1).and_then(|before| sheets.get(before)).is_none_or(|b| b.audience != sheet.audience);
        number = if first { 1 } else { number + 1 };
        let fresh = sheet.placed.iter().filter(|placed| !placed.label.is_empty() && named.insert(&placed.label));
        let names = fresh.map(|placed| capital(&placed.label)).collect();
        data.push(SheetData {
            w: sheet.paper.size().w.get(),
            h: sheet.paper.size().h.get(),
            paper: if sheet.paper == Paper::A4 { "A4" } else { "Letter" },
            heading: sheet.heading.clone(),
            number,
            of: alike(sheet),
            part: if first { part(sheet.audience) } else { "" },
            names,
            placed: sheet.placed.iter().map(|placed| self::placed(placed, &mut faces, gather)).collect(),
            folds: sheet.folds.iter().map(line).collect(),
            marks: cut_marks(sheet).iter().map(line).collect(),
            bar: sheet.check_bar.map(rect),
            large: sheet.large,
            stock: sheet.stock.map_or("", Stock::words),
        });
    }
    let divider = divider.map(|(divider, paper)| DividerData {
        before: sheets.iter().take_while(|sheet| sheet.audience == Audience::Players).count(),
        w: paper.size().w.get(),
        h: paper.size().h.get(),
        title: divider.title.to_owned(),
        lines: divider.lines.to_vec(),
    });
    SheetsData { margin: SAFE_MARGIN.get(), faces: faces.data, sheets: data, divider }
}

/// What a part of the sheets is called among the bookmarks.
const fn part(audience: Audience) -> &'static str {
    match audience {
        Audience::Players => "Pieces for the room",
        Audience::Hints => "Hint tokens",
        Audience::Host => "The host’s own sheets",
    }
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
