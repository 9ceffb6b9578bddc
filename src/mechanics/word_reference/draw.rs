//! The sheet with the text and the list, drawn and read back.

use super::{LIST, Lead, TEXT, Take, View, texts};
use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::proof::{Printed, lanes, middle};
use crate::face::{Face, Piece, Role, TextRun, mm};
use crate::mechanics::fixed::{self, Initials};
use crate::mechanics::{Dressing, front, paper};
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// The columns' names and their shares of the width.
const COLUMNS: [(&str, f64); 3] = [("paragraph", 0.44), ("line", 0.26), ("word", 0.30)];
/// The shares in large print, in which the longest name needs more.
const LARGE: [f64; 3] = [0.535, 0.195, 0.27];
/// Highest row.
const ROW: f64 = 20.0;

pub(super) fn text(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let rule = if view.counting { texts::counting(&view.text) } else { String::new() };
    let words = fixed::Words {
        part: TEXT,
        title: cx.name("text-title", "A night to remember"),
        alt: "A sheet with a text:",
        rule: &rule,
        initials: Initials::Plain,
    };
    fixed::sheet(cx, &words, &view.text)
}

#[expect(clippy::cast_precision_loss, reason = "two dozen rows")]
pub(super) fn list(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("bookmark")?;
    let mut face = Face::on(&frame, format!("A list of {} rows with three numbers each", view.leads.len()));
    cx.title(&mut face, &frame, "bookmark", cx.name("list-title", "Where to look"))?;
    let slot = |name: &str| cx.slot(&frame, "bookmark", name);
    let (table, foot) = paper::cleared_bookmark(cx, &mut face, slot("table")?, slot("foot")?);
    let rows = view.leads.len() + usize::from(view.columns);
    let height = (table.h / rows.max(1) as f64).min(mm(ROW));
    let air = mm(if cx.large() { 0.25 } else { 0.5 });
    let shares = if cx.large() { LARGE } else { COLUMNS.map(|(_, share)| share) };
    let mut lines = Drawing::new(Size { w: table.w, h: table.h });
    let pen = Pen::line(cx.colour("line"), mm(0.2));
    let mut put = |row: usize, cells: [String; 3], role: Role, most: f64| {
        let (mut x, y) = (table.x, table.y + height * row as f64);
        for (cell, share) in cells.into_iter().zip(shares) {
            let rect = Rect { x, y, w: table.w * share, h: height }.inset(air);
            let run =
                TextRun::new(rect, role, Rich::plain(cell), Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
            face.text(run);
            x += table.w * share;
        }
        if row > 0 {
            lines.line((Mm::ZERO, height * row as f64), (table.w, height * row as f64), pen);
        }
    };
    if view.columns {
        put(0, COLUMNS.map(|(name, _)| name.to_owned()), Role::Text, 11.0);
    }
    for (index, lead) in view.leads.iter().enumerate() {
        put(index + usize::from(view.columns), lead.map(|number| number.to_string()), Role::Code, 22.0);
    }
    face.art(lines.svg(), table, "");
    let rule = Rich::plain(view.take.map_or("", texts::take_rule));
    face.text(TextRun::new(foot, Role::Text, rule, Pt::new(11.0), cx.colour("ink"), cx.at(PuzzleField::Setup)));
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(LIST, "", face))
}

pub(super) fn reread(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let (text, counting) = fixed::reread(printed, TEXT, cx, texts::COUNTING)?;
    let list = front(printed, LIST)?;
    let table = paper::bookmark(cx, cx.slot_on(list, "bookmark", "table")?, Rect::default()).0;
    let cells = list.texts_in(table);
    let number = |text: &str| text.trim().parse::<u8>().ok();
    let size = cells.iter().find(|cell| number(&cell.text).is_some()).map_or(mm(3.0), |cell| cell.size.to_mm());
    let mut leads: Vec<Lead> = Vec::new();
    let mut columns = false;
    for y in lanes(cells.iter().map(|cell| cell.y), size / 2.0) {
        let mut row: Vec<_> = cells.iter().filter(|cell| (cell.y - y).get().abs() < size.get() / 2.0).collect();
        row.sort_by(|a, b| middle(a.rect).0.get().total_cmp(&middle(b.rect).0.get()));
        let words: Vec<&str> = row.iter().map(|cell| cell.text.trim()).collect();
        let numbers: Option<Vec<u8>> = words.iter().map(|word| number(word)).collect();
        match (numbers.as_deref(), words.as_slice()) {
            (Some([paragraph, line, word]), _) => leads.push([*paragraph, *line, *word]),
            (_, names) if leads.is_empty() && names.iter().eq(COLUMNS.iter().map(|(name, _)| name)) => columns = true,
            _ => return Err(Trouble::new(format!("the list has the row \"{}\", not three numbers", words.join(" ")))),
        }
    }
    let take = Take::ALL.into_iter().find(|take| list.says(texts::take_rule(*take)));
    Ok(View { text, leads, columns, counting, take })
}
