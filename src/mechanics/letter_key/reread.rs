//! The key card and the card with the name, read back from paper.

use super::{Card, Entry, KEY_CARD, View, WORD_CARD};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Printed, lanes, middle};
use crate::mechanics::{Dressing, front, paper};
use crate::units::{Mm, Rect};

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let key = key(front(printed, KEY_CARD)?, cx)?;
    let (card, words) = words(front(printed, WORD_CARD)?, cx)?;
    let (card_title, card_text, key_title) = (String::new(), String::new(), String::new());
    Ok(View { key, words, card, card_title, card_text, key_title })
}

/// The table row by row: letters and digits take turns.
fn key(side: &Printed, cx: &Dressing<'_>) -> Hinted<Vec<Entry>> {
    let table = paper::bookmark(cx, cx.slot_on(side, "bookmark", "table")?, Rect::default()).0;
    let cells = side.texts_in(table);
    let size = cells.first().map_or(Mm::new(3.0), |cell| cell.size.to_mm());
    let mut key = Vec::new();
    for y in lanes(cells.iter().map(|cell| cell.y), size / 2.0) {
        let mut row: Vec<(Mm, &str)> = cells
            .iter()
            .filter(|cell| (cell.y - y).get().abs() < size.get() / 2.0)
            .map(|cell| (middle(cell.rect).0, cell.text.trim()))
            .collect();
        row.sort_by(|a, b| a.0.get().total_cmp(&b.0.get()));
        for pair in row.chunks(2) {
            let single = |text: &str| text.chars().next().filter(|_| text.chars().count() == 1);
            let entry = match pair {
                [(_, letter), (_, digit)] => single(letter).zip(single(digit)),
                _ => None,
            };
            let Some((letter, digit)) =
                entry.filter(|(letter, digit)| letter.is_alphabetic() && digit.is_ascii_digit())
            else {
                let said: Vec<&str> = pair.iter().map(|(_, text)| *text).collect();
                return Err(Trouble::new(format!(
                    "the key card has \"{}\", not a letter and its digit",
                    said.join(" ")
                )));
            };
            key.push(Entry { letter, digit });
        }
    }
    Ok(key)
}

/// The frame of the card by its size, and the names in the lower part of its body, where all is bold.
fn words(side: &Printed, cx: &Dressing<'_>) -> Hinted<(Card, Vec<String>)> {
    for card in [Card::Note, Card::Portrait, Card::Landscape, Card::Square] {
        let frame = cx.frame(card.frame())?;
        let shape = |w: Mm, h: Mm| w.get() / h.get();
        if (shape(frame.size.w, frame.size.h) - shape(side.size.w, side.size.h)).abs() > 0.01 {
            continue;
        }
        let body = cx.slot_on(side, card.frame(), "body")?;
        let lower = Rect { y: body.y + body.h * 0.44, h: body.h * 0.56, ..body };
        let texts = side.texts_in(lower);
        if !texts.is_empty() && texts.iter().all(|text| text.bold) {
            return Ok((card, side.blocks_in(lower).iter().map(Block::text).collect()));
        }
    }
    Err(Trouble::new("no name stands large on the card"))
}
