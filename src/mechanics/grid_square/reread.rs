//! The square and the card with the message, read back from paper.

use super::{MESSAGE, Message, SQUARE, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Lattice, Printed, middle};
use crate::mechanics::{Dressing, front};
use crate::units::{Mm, Rect};

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let side = front(printed, SQUARE)?;
    let all = side.texts_in(cx.slot_on(side, "portrait", "body")?);
    let places: Vec<Rect> = all.iter().map(|text| text.rect).collect();
    let size = all.first().map_or(Mm::new(4.0), |text| text.size.to_mm());
    let lattice = Lattice::of(&places, size / 2.0);
    let mut table: Vec<Vec<String>> = vec![vec![String::new(); lattice.cols.len()]; lattice.rows.len()];
    for text in all {
        let place = lattice.cell(middle(text.rect));
        let cell = place.and_then(|(row, col)| table.get_mut(row).and_then(|row| row.get_mut(col)));
        if let Some(cell) = cell {
            cell.push_str(text.text.trim());
        }
    }
    // Headings stand in the first row and the first column, whose corner is empty.
    let digit = |text: &String| text.chars().next().filter(|digit| digit.is_ascii_digit() && text.len() == 1);
    let mut rows = table.iter();
    let head = rows.next().filter(|head| head.first().is_some_and(String::is_empty));
    let columns: Option<Vec<char>> = head.map(|head| head.iter().skip(1).map(digit).collect()).unwrap_or_default();
    let left: Option<Vec<char>> = rows.clone().map(|row| row.first().and_then(digit)).collect();
    let Some((columns, left)) = columns.zip(left) else {
        return Err(Trouble::new("a row or column of the square has no digit"));
    };
    let cells = rows.map(|row| row.iter().skip(1).map(|cell| cell.replace('/', "")).collect()).collect();
    let card = front(printed, MESSAGE)?;
    let body = cx.slot_on(card, "landscape", "body")?;
    let large = Rect { y: body.y + body.h * 0.27, h: body.h * 0.46, ..body };
    let said = card.blocks_in(large).iter().map(Block::text).collect::<Vec<_>>().join(" ");
    let pair = |word: &&str| word.len() == 2 && word.chars().all(|c| c.is_ascii_digit());
    let words: Vec<&str> = said.split(' ').collect();
    let (message, rule) = if words.iter().all(pair) {
        (Message::Pairs(words.into_iter().map(str::to_owned).collect()), texts::PAIR_RULE)
    } else {
        (Message::Word(said.clone()), texts::WORD_RULE)
    };
    Ok(View { rows: left, columns, cells, message, text: String::new(), rule: card.says(rule) })
}
