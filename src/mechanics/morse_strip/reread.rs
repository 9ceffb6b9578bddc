//! The strip and its key, read back from paper: how long ink and gaps are.

use super::{KEY_CARD, Look, STRIP, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Look as Drawn, Printed, PrintedShape};
use crate::mechanics::codes::morse::Run;
use crate::mechanics::{Dressing, front, signs};
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// Contrast with white from which a sign counts as ink.
const INK: f64 = 3.0;
/// How far a length may be off a whole number of units, in units.
const OFF: f64 = 0.25;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let strip = front(printed, STRIP)?;
    let slot = cx.slot_on(strip, "sign", "letters")?;
    let start = Drawn::of_svg(&signs::start_mark(cx), Size::mm(6.0, 6.0))?;
    let (mut mark, mut ink): (Option<Rect>, Vec<Rect>) = (None, Vec::new());
    for art in 0..strip.arts.len() {
        let shapes = strip.shapes_of(art);
        let shapes: Vec<&PrintedShape> = shapes.into_iter().filter(|shape| slot.holds(shape.rect)).collect();
        match shapes.first() {
            Some(first) if Drawn::of(&shapes).is_some_and(|look| look.same(&start)) => mark = Some(first.rect),
            _ => ink.extend(shapes.iter().filter(|shape| inked(shape)).map(|shape| shape.rect)),
        }
    }
    ink.sort_by(|a, b| a.x.get().total_cmp(&b.x.get()));
    let unit = unit(&ink).ok_or_else(|| Trouble::new("the strip has no signs"))?;
    let runs = runs(&ink, unit).ok_or_else(|| Trouble::new("lengths on the strip are no whole numbers of units"))?;
    let start_mark = mark.is_some_and(|mark| ink.first().is_some_and(|first| mark.right() <= first.x));

    let card = front(printed, KEY_CARD)?;
    if start_mark != card.says(texts::RULE) {
        return Err(Trouble::new("the key card and the strip do not agree whether there is a start mark"));
    }
    let table = cx.slot_on(card, "bookmark", "table")?;
    // All groups of the key have one unit; one group alone, a long sign say, would not tell it.
    let units = card.arts_in(table).into_iter().filter_map(|(art, _)| self::unit(&level(&card.shapes_of(art))));
    let unit = units.reduce(Mm::min).ok_or_else(|| Trouble::new("the key card has no signs"))?;
    let group = |shapes: &[&PrintedShape]| {
        let runs = self::runs(&level(shapes), unit)?;
        Some(runs.iter().filter(|run| run.ink).map(|run| if run.units < 2 { '.' } else { '-' }).collect())
    };
    let key = signs::key_by(printed, KEY_CARD, cx, &group)?;
    Ok(View { runs, look: Look::Lamps, start_mark, key })
}

fn inked(shape: &PrintedShape) -> bool {
    shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= INK)
}

/// The signs of one drawing, left to right.
fn level(shapes: &[&PrintedShape]) -> Vec<Rect> {
    let mut ink: Vec<Rect> = shapes.iter().filter(|shape| inked(shape)).map(|shape| shape.rect).collect();
    ink.sort_by(|a, b| a.x.get().total_cmp(&b.x.get()));
    ink
}

/// The shortest length of ink or gap.
fn unit(ink: &[Rect]) -> Option<Mm> {
    let gaps = ink.windows(2).filter_map(|pair| Some(pair.last()?.x - pair.first()?.right()));
    ink.iter().map(|rect| rect.w).chain(gaps).reduce(Mm::min).filter(|unit| unit.get() > 0.0)
}

fn runs(ink: &[Rect], unit: Mm) -> Option<Vec<Run>> {
    let units = |length: Mm| {
        let units = length.get() / unit.get();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held between 1 and 250")]
        let whole = units.round().clamp(1.0, 250.0) as u8;
        ((units - f64::from(whole)).abs() <= OFF).then_some(whole)
    };
    let mut runs = Vec::new();
    let mut end: Option<Mm> = None;
    for rect in ink {
        if let Some(end) = end {
            runs.push(Run { ink: false, units: units(rect.x - end)? });
        }
        runs.push(Run { ink: true, units: units(rect.w)? });
        end = Some(rect.right());
    }
    Some(runs)
}
