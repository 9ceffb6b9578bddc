//! The tags and the hasp card, read back from paper.

use super::{CARD, Hole, TAGS, Tag, View, draw, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Looks, Printed, middle, nearest, within};
use crate::mechanics::Dressing;
use crate::units::Rect;

/// The name of a mark that nothing known looks like.
const UNKNOWN: &str = "?";

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let looks = cx.looks()?;
    let tags = printed.iter().filter(|side| side.part == TAGS && !side.back);
    let tags = tags.map(|side| tag(side, cx, &looks)).collect::<Hinted<Vec<Tag>>>()?;
    let Some(card) = printed.iter().find(|side| side.part == CARD) else {
        return Ok(View { tags, holes: Vec::new(), rule: false });
    };
    Ok(View { tags, holes: holes(card, cx, &looks)?, rule: card.says(texts::RULE) })
}

/// The tag is printed on the lower half of its paper.
fn tag(side: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Tag> {
    let frame = cx.frame("tag")?;
    let scale = side.size.w.get() / frame.size.w.get();
    let slot = |name: &str| -> Hinted<Rect> {
        let rect = cx.slot(&frame, "tag", name)?;
        let y = rect.y + draw::printed_at(frame.size.h);
        Ok(Rect { x: rect.x * scale, y: y * scale, w: rect.w * scale, h: rect.h * scale })
    };
    let words = |rect: Rect| side.blocks_in(rect).iter().map(Block::text).collect::<Vec<_>>().join(" ");
    let text = words(slot("body")?);
    if text.is_empty() || text.contains(' ') {
        return Err(Trouble::new(format!("a tag says \"{text}\", not a letter or two")));
    }
    let number = words(slot("title")?).strip_prefix("Hole ").and_then(|number| number.parse().ok());
    // The frame's own picture has its middle elsewhere, or is far larger.
    let place = slot("mark")?;
    let mark =
        side.arts.iter().position(|art| within(place, middle(art.rect)) && art.rect.w.get() < place.w.get() * 1.5);
    let mark = mark.map_or(String::new(), |art| named(side, art, looks));
    Ok(Tag { lock: String::new(), mark, number, text, spare: false })
}

fn named(side: &Printed, art: usize, looks: &Looks) -> String {
    looks.named(&side.shapes_of(art)).first().map_or(UNKNOWN, |name| *name).to_owned()
}

/// Every number on the card's body, with the mark that stands below it.
fn holes(card: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Vec<Hole>> {
    let body = cx.slot_on(card, "landscape", "body")?;
    let numbers: Vec<_> =
        card.texts_in(body).into_iter().filter(|text| text.text.trim().parse::<u8>().is_ok()).collect();
    let mut holes = Vec::new();
    for text in &numbers {
        let number = text.text.trim().parse().unwrap_or(0);
        holes.push((middle(text.rect), Hole { number, mark: String::new() }));
    }
    for (art, rect) in card.arts_in(body).into_iter().filter(|(_, rect)| rect.w.get() < body.w.get() * 0.5) {
        let mark = named(card, art, looks);
        let above: Vec<_> = numbers.iter().filter(|text| middle(text.rect).1 < rect.y).collect();
        let Some(owner) = nearest(middle(rect), above, |text| text.rect) else {
            return Err(Trouble::new("a mark on the hasp card stands below no hole"));
        };
        let at = middle(owner.rect);
        let Some((_, hole)) = holes.iter_mut().find(|(place, _)| *place == at) else { continue };
        if !hole.mark.is_empty() {
            return Err(Trouble::new(format!("two marks stand below hole {}", hole.number)));
        }
        hole.mark = mark;
    }
    Ok(holes.into_iter().map(|(_, hole)| hole).collect())
}
