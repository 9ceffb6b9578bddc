//! The keypad and the card with the word, read back from paper.

use super::{KEYPAD, Key, View, WORD, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Printed, PrintedShape};
use crate::mechanics::{Dressing, front};
use crate::units::Rect;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let pad = front(printed, KEYPAD)?;
    let body = cx.slot_on(pad, "portrait", "body")?;
    // A key is an outline without fill with one digit in it.
    let outline = |shape: &&PrintedShape| shape.fill.is_none() && shape.stroke.is_some();
    let mut keys = Vec::new();
    let mut seen = 0;
    for shape in pad.shapes_in(body).into_iter().filter(outline) {
        let within = pad.texts_in(shape.rect);
        let (mut digit, mut letters) = (None, String::new());
        for text in &within {
            let said = text.text.trim();
            match said.chars().next() {
                Some(symbol) if said.len() == 1 && symbol.is_ascii_digit() => digit = Some(symbol),
                _ => letters.push_str(said),
            }
        }
        let Some(digit) = digit else { continue };
        if letters.chars().any(|letter| !letter.is_ascii_uppercase()) {
            return Err(Trouble::new(format!("the key {digit} bears \"{letters}\"")));
        }
        seen += within.len();
        keys.push(Key { digit, letters });
    }
    if seen != pad.texts_in(body).len() {
        return Err(Trouble::new("something on the keypad stands on no key, or on two"));
    }
    let card = front(printed, WORD)?;
    let body = cx.slot_on(card, "landscape", "body")?;
    let middle = Rect { y: body.y + body.h * 0.27, h: body.h * 0.48, ..body };
    let words = card.blocks_in(middle).iter().map(Block::text).collect();
    Ok(View { keys, words, text: String::new(), rule: card.says(texts::RULE) })
}
