//! The things, their tags and the scales, read back from paper.

use super::{ORDER, SHEET, Thing, View, Weighing, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, middle, within};
use crate::mechanics::paper::{drawn_in, single, told};
use crate::mechanics::{Dressing, front};
use crate::units::Rect;

/// Pans nearer in height than this, as a part of the picture's height, stand level to the eye.
const LEVEL: f64 = 0.05;

/// A symbol of the theme where it stands.
struct Seen {
    rect: Rect,
    name: String,
}

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    let looks = cx.looks()?;
    let (mut symbols, mut drawings) = (Vec::new(), Vec::new());
    for (art, rect) in drawn_in(sheet, slot) {
        match looks.named(&sheet.shapes_of(art)).as_slice() {
            [] => drawings.push((art, rect)),
            [name] => symbols.push(Seen { rect, name: (*name).to_owned() }),
            twins => return Err(Trouble::new(format!("one picture may be any of {}", twins.join(", ")))),
        }
    }
    let mut tagged: Vec<(Rect, Thing)> = Vec::new();
    for text in sheet.texts_in(slot) {
        let at = middle(text.rect);
        let Some(tag) = single(text).filter(|_| drawings.iter().any(|(_, rect)| within(*rect, at))) else { continue };
        let above = |seen: &&Seen| seen.rect.x < at.0 && at.0 < seen.rect.right() && seen.rect.y < at.1;
        let near = symbols.iter().filter(above).max_by(|a, b| a.rect.y.get().total_cmp(&b.rect.y.get()));
        let seen = near.ok_or_else(|| Trouble::new(format!("nothing stands over the tag {tag}")))?;
        tagged.push((seen.rect, Thing { symbol: seen.name.clone(), tag }));
    }
    tagged.sort_by(|a, b| a.0.x.get().total_cmp(&b.0.x.get()));
    let mut view = View { things: tagged.iter().map(|(_, thing)| thing.clone()).collect(), weighings: Vec::new() };
    symbols.retain(|seen| !tagged.iter().any(|(rect, _)| *rect == seen.rect));
    for (art, rect) in drawings {
        if let Some(pans) = pans(sheet, art) {
            let on = symbols.iter().filter(|seen| within(rect, middle(seen.rect)));
            view.weighings.push(weighing(&view, rect, pans, &on.collect::<Vec<_>>())?);
        }
    }
    told(sheet, &format!("{} {ORDER}", texts::rule(&view)))?;
    Ok(view)
}

/// The two pans from left to right: the level lines of a picture of scales, of which the lowest is the foot.
fn pans(sheet: &Printed, art: usize) -> Option<[(Dot, Dot); 2]> {
    let level = |(a, b): &(Dot, Dot)| (a.1 - b.1).get().abs() * 100.0 < (a.0 - b.0).get().abs();
    let mut lines: Vec<(Dot, Dot)> =
        sheet.shapes_of(art).into_iter().filter_map(|shape| shape.segment()).filter(level).collect();
    lines.sort_by(|a, b| a.0.1.get().total_cmp(&b.0.1.get()));
    lines.pop()?;
    lines.sort_by(|a, b| a.0.0.get().total_cmp(&b.0.0.get()));
    <[(Dot, Dot); 2]>::try_from(lines).ok()
}

fn weighing(view: &View, scales: Rect, [left, right]: [(Dot, Dot); 2], on: &[&Seen]) -> Hinted<Weighing> {
    let load = |pan: (Dot, Dot)| {
        let over = |seen: &&&Seen| pan.0.0 <= middle(seen.rect).0 && middle(seen.rect).0 <= pan.1.0;
        let at = |seen: &&Seen| view.things.iter().position(|thing| thing.symbol == seen.name);
        let names: Option<Vec<usize>> = on.iter().filter(over).map(at).collect();
        names.ok_or_else(|| Trouble::new("something lies on a pan that has no tag"))
    };
    let (down_left, down_right) = (left.0.1, right.0.1);
    if (down_left - down_right).get().abs() < scales.h.get() * LEVEL {
        return Err(Trouble::new("a picture shows scales that stand level"));
    }
    let left_heavy = down_left > down_right;
    let (lower, upper) = if left_heavy { (load(left)?, load(right)?) } else { (load(right)?, load(left)?) };
    let both: Vec<usize> = lower.iter().copied().filter(|thing| upper.contains(thing)).collect();
    let own = |load: &[usize]| load.iter().copied().filter(|thing| !both.contains(thing)).collect::<Vec<_>>();
    match (own(&lower).as_slice(), own(&upper).as_slice(), both.as_slice()) {
        ([heavier], [lighter], [] | [_]) => {
            Ok(Weighing { heavier: *heavier, lighter: *lighter, left: left_heavy, both: both.first().copied() })
        }
        _ => Err(Trouble::new("a picture does not weigh one thing against one other")),
    }
}
