//! The row of signs and the key card, read back from paper.

use super::{Entry, chart, start_mark};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Look, Looks, Printed, PrintedShape, apart, middle, nearest};
use crate::mechanics::{Dressing, front, paper};
use crate::units::{Rect, Size};

/// What stands on the card with the row of signs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadRow {
    /// The names of the signs, left to right; `?` for one that is in no book of drawings.
    pub signs: Vec<String>,
    /// Whether the start mark stands before the first.
    pub start: bool,
    /// The words above and below the row.
    pub text: String,
}

/// The name of the sign that these outlines draw; none where they draw none.
pub type Name<'a> = dyn Fn(&[&PrintedShape]) -> Option<String> + 'a;

/// The name of a sign that nothing known looks like.
const UNKNOWN: &str = "?";

/// Reads a card that `row_card` drew: every drawing in the frame's body is a sign or the start mark.
///
/// # Errors
/// When there is no such card, or the signs do not stand in one row.
pub fn reread_row(printed: &[Printed], part: &str, cx: &Dressing<'_>, looks: &Looks) -> Hinted<ReadRow> {
    row_by(printed, part, cx, &|shapes| looks.named(shapes).first().map(|name| (*name).to_owned()))
}

/// Reads a card as [`reread_row`] does, with signs that are told by their own geometry.
///
/// # Errors
/// As there.
pub fn row_by(printed: &[Printed], part: &str, cx: &Dressing<'_>, name: &Name<'_>) -> Hinted<ReadRow> {
    let card = front(printed, part)?;
    let body = cx.slot_on(card, "landscape", "body")?;
    let start = Look::of_svg(&start_mark(cx), Size::mm(6.0, 6.0))?;
    let mut signs: Vec<(Rect, String)> = Vec::new();
    let mut mark: Option<Rect> = None;
    for (art, rect) in card.arts_in(body) {
        let shapes = card.shapes_of(art);
        if Look::of(&shapes).is_some_and(|look| look.same(&start)) {
            mark = Some(rect);
            continue;
        }
        signs.push((rect, name(&shapes).unwrap_or_else(|| UNKNOWN.to_owned())));
    }
    signs.sort_by(|a, b| a.0.x.get().total_cmp(&b.0.x.get()));
    let level = |a: Rect, b: Rect| (middle(a).1 - middle(b).1).get().abs() < a.h.get() / 2.0;
    if signs.windows(2).any(|pair| matches!(pair, [a, b] if !level(a.0, b.0) || a.0.right() > b.0.x)) {
        return Err(Trouble::new("the signs do not stand in one row"));
    }
    let first = signs.first().map(|(rect, _)| *rect);
    let start = mark.is_some_and(|mark| first.is_some_and(|first| mark.right() <= first.x && level(first, mark)));
    let text = card.blocks_in(body).iter().map(|block| block.text()).collect::<Vec<_>>().join(" ");
    Ok(ReadRow { signs: signs.into_iter().map(|(_, name)| name).collect(), start, text })
}

/// Reads a card that `key_card` drew: every single character in the frame's table, with the sign to its right.
///
/// # Errors
/// When there is no such card, or a character has no sign beside it.
pub fn reread_key(printed: &[Printed], part: &str, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Vec<Entry>> {
    key_by(printed, part, cx, &|shapes| looks.named(shapes).first().map(|name| (*name).to_owned()))
}

/// Reads a card as [`reread_key`] does, with signs that are told by their own geometry.
///
/// # Errors
/// As there.
pub fn key_by(printed: &[Printed], part: &str, cx: &Dressing<'_>, name: &Name<'_>) -> Hinted<Vec<Entry>> {
    let card = front(printed, part)?;
    entries(card, paper::bookmark(cx, cx.slot_on(card, "bookmark", "table")?, Rect::default()).0, name)
}

/// Reads a card that `chart` drew, in the same way.
///
/// # Errors
/// As there.
pub fn chart_by(printed: &[Printed], part: &str, cx: &Dressing<'_>, name: &Name<'_>) -> Hinted<Vec<Entry>> {
    let card = front(printed, part)?;
    entries(card, chart::table_in(cx.slot_on(card, chart::FRAME.0, chart::FRAME.1)?), name)
}

fn entries(card: &Printed, table: Rect, name: &Name<'_>) -> Hinted<Vec<Entry>> {
    let arts = card.arts_in(table);
    let mut entries: Vec<(usize, Entry)> = Vec::new();
    for text in card.texts_in(table) {
        let mut symbols = text.text.trim().chars();
        let (Some(symbol), None) = (symbols.next(), symbols.next()) else {
            return Err(Trouble::new(format!("the key card has \"{}\" where one letter or digit belongs", text.text)));
        };
        let at = middle(text.rect);
        let beside = arts.iter().filter(|(_, rect)| middle(*rect).0 > at.0 && at.1 > rect.y && at.1 < rect.bottom());
        let Some((art, rect)) = nearest(at, beside, |(_, rect)| *rect) else {
            return Err(Trouble::new(format!("the key card has no sign beside {symbol}")));
        };
        // Between a sign and its character nothing else stands.
        if entries.iter().any(|(known, _)| known == art) || apart(at, middle(*rect)) > table.w {
            return Err(Trouble::new(format!("it cannot be told which sign on the key card {symbol} belongs to")));
        }
        let sign = name(&card.shapes_of(*art)).unwrap_or_else(|| UNKNOWN.to_owned());
        entries.push((*art, Entry { symbol, sign }));
    }
    if entries.len() != arts.len() {
        return Err(Trouble::new(format!("the key card has {} signs for {} characters", arts.len(), entries.len())));
    }
    Ok(entries.into_iter().map(|(_, entry)| entry).collect())
}
