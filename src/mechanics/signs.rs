//! Rows of drawn signs, and the card that says what each of them stands for: what several ciphers share.

mod chart;
mod reread;

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::kit::LockKind;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::{Dressing, paper};
use crate::readings::tokens::{self, Cue, Mark, Order};
use crate::readings::{Budget, Readings};
use crate::script::{Rich, parse};
use crate::units::{Pt, Rect, Size};

/// A line of a key card: a sign, and the letter or digit that it stands for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// The letter or digit.
    pub symbol: char,
    /// The sign's name; the mechanic knows how to draw it.
    pub sign: String,
}

pub use chart::chart;
pub use reread::{chart_by, key_by, reread_key, reread_row, row_by};

/// One way in which guests may take the signs of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// The way in words.
    pub label: &'static str,
    /// The signs, first to last.
    pub signs: Vec<String>,
}

/// Draws the sign of this name into a rectangle of this size.
pub type Draw<'a> = dyn Fn(&str, Size) -> Hinted<Arc<str>> + 'a;

/// The alphabet of an answer: all digits or all letters A to Z.
///
/// # Errors
/// When the answer mixes them, or holds other letters.
pub fn alphabet(symbols: &[char]) -> Hinted<Vec<char>> {
    if symbols.iter().all(char::is_ascii_digit) {
        return Ok(('0'..='9').collect());
    }
    if symbols.iter().all(char::is_ascii_uppercase) {
        return Ok(('A'..='Z').collect());
    }
    Err(Trouble::new("this puzzle gives digits only or letters A to Z only, and the answer holds something else")
        .hint("write an answer of digits, or one of the letters A to Z"))
}

/// Every answer that the key gives for a row, by every way in which the row may be taken.
#[must_use]
pub fn read(ways: &[Way], key: &[Entry], lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    for way in ways {
        let mut marks = Vec::new();
        let mut cues = Vec::new();
        for (index, sign) in way.signs.iter().enumerate() {
            let first = marks.len();
            let on_key = key.iter().filter(|entry| entry.sign == *sign);
            marks
                .extend(on_key.map(|entry| Mark::new(format!("sign {} is {}", index + 1, entry.symbol), entry.symbol)));
            cues.push(Cue { label: format!("sign {}", index + 1), marks: (first..marks.len()).collect() });
        }
        if cues.is_empty() {
            continue;
        }
        let found = tokens::read(&marks, &Order::Cued(cues), lock, budget);
        for reading in found.list {
            all.add(lock, &reading.answer, format!("{}: {}", way.label, reading.why));
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
    if let Some(way) = ways.first() {
        for (index, sign) in way.signs.iter().enumerate() {
            if !key.iter().any(|entry| entry.sign == *sign) {
                all.remarks.push(format!("sign {} of the row is not on the key card", index + 1));
            }
        }
    }
    all
}

/// Rows of a key card above one another before a further column is begun.
const ROWS: usize = 13;

/// What stands on a key card beside its table.
#[derive(Clone, Copy, Debug)]
pub struct KeyWords<'a> {
    /// The part's key.
    pub part: &'static str,
    /// The title.
    pub title: &'a str,
    /// The order rule; the foot of the frame takes about fifty letters.
    pub rule: &'a str,
    /// Whether signs are drawn for a square, and must not be stretched.
    pub square: bool,
    /// What the card shows, for those who cannot see it.
    pub alt: &'a str,
}

/// The key card on the frame `bookmark`: letter or digit, and beside it the sign.
///
/// # Errors
/// When the theme lacks the frame or a slot, or a sign cannot be drawn.
pub fn key_card(cx: &Dressing<'_>, words: &KeyWords<'_>, key: &[Entry], draw: &Draw<'_>) -> Hinted<Piece> {
    let frame = cx.frame("bookmark")?;
    let mut face = Face::on(&frame, words.alt);
    cx.title(&mut face, &frame, "bookmark", words.title)?;
    let slot = |name: &str| cx.slot(&frame, "bookmark", name);
    let (rows, foot) = paper::cleared_bookmark(cx, &mut face, slot("table")?, slot("foot")?);
    table(cx, &mut face, rows, key, words.square, draw)?;
    let from = cx.at(PuzzleField::Setup);
    face.text(TextRun::new(foot, Role::Text, Rich::plain(words.rule), Pt::new(11.0), cx.colour("ink"), from));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(words.part, "", face))
}

#[expect(clippy::cast_precision_loss, reason = "a key card has at most a few dozen lines")]
fn table(cx: &Dressing<'_>, face: &mut Face, slot: Rect, key: &[Entry], square: bool, draw: &Draw<'_>) -> Hinted<()> {
    let columns = key.len().div_ceil(ROWS).max(1);
    let rows = key.len().div_ceil(columns).max(1);
    let gap = mm(2.4);
    let width = (slot.w - gap * (columns - 1) as f64) / columns as f64;
    // Few rows spread over the card.
    let height = (slot.h / rows as f64).min(mm(18.0));
    let symbol = (width * 0.36).min(mm(9.0));
    let mut lines = Drawing::new(Size { w: slot.w, h: slot.h });
    let pen = Pen::line(cx.colour("line"), mm(0.2));
    for (index, entry) in key.iter().enumerate() {
        let (x, y) = ((width + gap) * (index / rows) as f64, height * (index % rows) as f64);
        let cell = Rect { x: slot.x + x, y: slot.y + y, w: symbol, h: height }.inset(mm(0.4));
        let run = TextRun::new(
            cell,
            Role::Code,
            Rich::plain(entry.symbol),
            Pt::new(16.0),
            cx.colour("ink"),
            cx.at(PuzzleField::Setup),
        );
        face.text(run.at_least(Pt::new(10.0)));
        let sign = Rect { x: cell.x + symbol, w: width - symbol, y: slot.y + y, h: height }.inset(mm(0.6));
        let sign = if square { middle_square(sign) } else { sign };
        face.art(draw(&entry.sign, Size { w: sign.w, h: sign.h })?, sign, "");
        if index % rows > 0 {
            lines.line((x, y), (x + width, y), pen);
        }
    }
    face.art(lines.svg(), slot, "");
    Ok(())
}

/// The largest square in the middle of a rectangle.
fn middle_square(rect: Rect) -> Rect {
    let side = rect.w.min(rect.h);
    Rect { x: rect.x + (rect.w - side) / 2.0, y: rect.y + (rect.h - side) / 2.0, w: side, h: side }
}

/// What stands on the card with the row of signs.
#[derive(Clone, Copy, Debug)]
pub struct RowWords<'a> {
    /// The part's key.
    pub part: &'static str,
    /// The title.
    pub title: &'a str,
    /// The author's line above the row, with its markup; may be empty.
    pub text: &'a str,
    /// The order rule below the row; may be empty.
    pub rule: &'a str,
    /// Whether a start mark stands before the first sign.
    pub start: bool,
    /// What the card shows, for those who cannot see it.
    pub alt: &'a str,
}

/// The card with the row of signs, on the frame `landscape`.
///
/// # Errors
/// When the theme lacks the frame or a slot, or a sign cannot be drawn.
pub fn row_card(cx: &Dressing<'_>, words: &RowWords<'_>, signs: &[String], draw: &Draw<'_>) -> Hinted<Piece> {
    let frame = cx.frame("landscape")?;
    let mut face = Face::on(&frame, words.alt);
    cx.title(&mut face, &frame, "landscape", words.title)?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let text = Rect { h: body.h * if words.text.is_empty() { 0.08 } else { 0.26 }, ..body };
    face.text(TextRun::new(text, Role::Text, parse(words.text), Pt::new(14.0), ink, from.clone()));
    let foot = Rect { y: body.y + body.h * 0.72, h: body.h * 0.28, ..body };
    face.text(TextRun::new(foot, Role::Text, Rich::plain(words.rule), Pt::new(12.0), ink, from));
    let middle = Rect { y: text.bottom(), h: foot.y - text.bottom(), ..body };
    row(cx, &mut face, middle, signs, words.start, draw)?;
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(words.part, "", face))
}

/// Room for a start mark before a row.
const START: f64 = 6.0;

/// A row of signs in equal cells, centred, after the start mark.
#[expect(clippy::cast_precision_loss, reason = "a row has at most a dozen signs")]
fn row(cx: &Dressing<'_>, face: &mut Face, slot: Rect, signs: &[String], start: bool, draw: &Draw<'_>) -> Hinted<()> {
    let room = if start { mm(START) } else { mm(0.0) };
    let side = ((slot.w - room) / signs.len().max(1) as f64).min(slot.h);
    let left = slot.x + (slot.w - room - side * signs.len() as f64) / 2.0;
    let y = slot.y + (slot.h - side) / 2.0;
    if start {
        let at = Rect { x: left, y: slot.y + (slot.h - mm(START)) / 2.0, w: mm(START), h: mm(START) };
        face.art(start_mark(cx), at, "start mark");
    }
    for (index, sign) in signs.iter().enumerate() {
        let cell = Rect { x: left + room + side * index as f64, y, w: side, h: side }.inset(side * 0.06);
        face.art(draw(sign, Size { w: cell.w, h: cell.h })?, cell, "");
    }
    Ok(())
}

/// A solid arrowhead, six millimetres wide: the place where reading starts, and the way.
pub fn start_mark(cx: &Dressing<'_>) -> Arc<str> {
    let mut drawing = Drawing::new(Size::mm(START, START));
    drawing.polygon(&[(mm(0.6), mm(0.8)), (mm(4.8), mm(3.0)), (mm(0.6), mm(5.2))], Pen::fill(cx.colour("ink")));
    drawing.svg()
}

/// The one step of preparation that printed cards need.
#[must_use]
pub fn cut_out() -> Vec<PrepStep> {
    vec![PrepStep::printed(vec![
        Need { material: "card-paper", amount: 1.0 },
        Need { material: "scissors", amount: 1.0 },
    ])]
}

/// Places in a row, in words.
const ORDINALS: [&str; 8] = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];

/// "the first means 4, the second 0": how a row is read, for the host's answer page.
#[must_use]
pub fn steps(signs: &[String], key: &[Entry]) -> String {
    let steps: Vec<String> = signs
        .iter()
        .filter_map(|sign| key.iter().find(|entry| entry.sign == *sign))
        .enumerate()
        .map(|(index, entry)| match index {
            0 => format!("the first means {}", entry.symbol),
            _ => format!("the {} {}", ORDINALS.get(index).copied().unwrap_or("next"), entry.symbol),
        })
        .collect();
    steps.join(", ")
}
