//! A key card as large as half a sheet, for signs that are too fine for a bookmark.

use super::{Draw, Entry, KeyWords, middle_square};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Frame, Piece, Role, TextRun, mm};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Pt, Rect, Size};

/// The frame on which it stands, and the slot for all but its title.
pub const FRAME: (&str, &str) = ("portrait", "body");
/// How much larger than a card it is: a frame of 75 × 105 mm becomes 120 × 168 mm, half a sheet.
const GROWN: f64 = 1.6;
/// Signs above one another before a further column is begun.
const ROWS: usize = 7;
/// The part of the body that is for the table; the rule stands below.
const TABLE: f64 = 0.92;

/// Where the table stands in the body.
#[must_use]
pub fn table_in(body: Rect) -> Rect {
    Rect { h: body.h * TABLE, ..body }
}

/// The key card: letter or digit, and beside it the sign, in squares of 12 mm and more.
///
/// # Errors
/// When the theme lacks the frame or a slot, or a sign cannot be drawn.
pub fn chart(cx: &Dressing<'_>, words: &KeyWords<'_>, key: &[Entry], draw: &Draw<'_>) -> Hinted<Piece> {
    let (name, slot) = FRAME;
    let frame = grown(&*cx.frame(name)?);
    let mut face = Face::on(&frame, words.alt);
    cx.title(&mut face, &frame, name, words.title)?;
    let body = cx.slot(&frame, name, slot)?;
    table(cx, &mut face, table_in(body), key, draw)?;
    let foot = Rect { y: body.y + body.h * TABLE, h: body.h * (1.0 - TABLE), ..body };
    let from = cx.at(PuzzleField::Setup);
    face.text(TextRun::new(foot, Role::Text, Rich::plain(words.rule), Pt::new(13.0), cx.colour("ink"), from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(words.part, "", face))
}

/// The frame, larger.
fn grown(frame: &Frame) -> Frame {
    let rect = |r: Rect| Rect { x: r.x * GROWN, y: r.y * GROWN, w: r.w * GROWN, h: r.h * GROWN };
    Frame {
        size: Size { w: frame.size.w * GROWN, h: frame.size.h * GROWN },
        svg: frame.svg.clone(),
        slots: frame.slots.iter().map(|(name, slot)| (name.clone(), rect(*slot))).collect(),
        shapes: std::collections::BTreeMap::new(),
        outline: None,
    }
}

#[expect(clippy::cast_precision_loss, reason = "a key card has at most a few dozen lines")]
fn table(cx: &Dressing<'_>, face: &mut Face, slot: Rect, key: &[Entry], draw: &Draw<'_>) -> Hinted<()> {
    let columns = key.len().div_ceil(ROWS).max(1);
    let rows = key.len().div_ceil(columns).max(1);
    let gap = mm(2.4);
    let width = (slot.w - gap * (columns - 1) as f64) / columns as f64;
    let height = (slot.h / rows as f64).min(mm(24.0));
    let symbol = (width * 0.34).min(mm(12.0));
    let mut lines = Drawing::new(Size { w: slot.w, h: slot.h });
    let pen = Pen::line(cx.colour("line"), mm(0.2));
    for (index, entry) in key.iter().enumerate() {
        let (x, y) = ((width + gap) * (index / rows) as f64, height * (index % rows) as f64);
        let cell = Rect { x: slot.x + x, y: slot.y + y, w: symbol, h: height }.inset(mm(0.3));
        let run = TextRun::new(
            cell,
            Role::Code,
            Rich::plain(entry.symbol),
            Pt::new(20.0),
            cx.colour("ink"),
            cx.at(PuzzleField::Setup),
        );
        face.text(run.at_least(Pt::new(14.0)));
        let sign = Rect { x: slot.x + x + symbol, w: width - symbol, y: slot.y + y, h: height }.inset(mm(0.5));
        let sign = middle_square(sign);
        face.art(draw(&entry.sign, Size { w: sign.w, h: sign.h })?, sign, "");
        if index % rows > 0 {
            lines.line((x, y), (x + width, y), pen);
        }
    }
    face.art(lines.svg(), slot, "");
    Ok(())
}
