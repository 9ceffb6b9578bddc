//! The panels, read back from paper: dots as small filled shapes, each number with the dot that it stands nearest to.

use super::{Dot, PANEL, PANELS, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, PrintedShape, apart, middle};
use crate::mechanics::Dressing;
use crate::theme::Colour;
use crate::units::{Mm, Rect};

/// A dot is narrower than this share of its panel.
const SMALL: f64 = 0.06;
/// The least contrast at which a dot is seen (estimate; common practice, no source).
const SEEN: f64 = 1.5;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheets: Vec<&Printed> = printed.iter().filter(|side| side.part == PANELS && !side.back).collect();
    let Some(first) = sheets.first() else { return Err(Trouble::new("no panels are printed")) };
    let mut panels: Vec<(u32, Vec<Dot>, bool)> = Vec::new();
    for sheet in &sheets {
        for (art, rect) in sheet.arts.iter().map(|art| art.rect).enumerate() {
            let shapes = sheet.shapes_of(art);
            let spots: Vec<Rect> = shapes.iter().filter(|shape| dot(shape, rect)).map(|shape| shape.rect).collect();
            // The frame may have a dot or two, and stands about everything.
            if spots.is_empty() || rect.w > sheet.size.w * 0.95 {
                continue;
            }
            let ground = shapes.iter().filter_map(|shape| shape.segment()).any(|(from, to)| {
                let level = (from.1 - to.1).get().abs() < 0.3 && (to.0 - from.0).get().abs() > rect.w.get() * 0.6;
                level && from.1 > rect.y + rect.h * 0.8
            });
            panels.push((number_of(sheet, rect)?, dots(sheet, rect, &spots)?, ground));
        }
    }
    panels.sort_by_key(|(number, _, _)| *number);
    if panels.iter().zip(1_u32..).any(|((number, _, _), wanted)| *number != wanted) {
        return Err(Trouble::new("the panels are not numbered one after another"));
    }
    let baseline = panels.iter().all(|(_, _, ground)| *ground);
    let mut view = View {
        text: String::new(),
        step: 1,
        panels: panels.into_iter().map(|(_, dots, _)| dots).collect(),
        loose: true,
        baseline,
    };
    for step in 1..=u16::from(crate::limits::COUNT_STEP) {
        view.step = step;
        for loose in [true, false] {
            view.loose = loose;
            let rule = if loose { texts::short_rule(&view) } else { texts::rule(&view) };
            if sheets.iter().all(|sheet| sheet.says(&rule)) {
                return Ok(view);
            }
        }
    }
    // Without its rule a sheet cannot be solved.
    Err(Trouble::new(format!("the sheet `{}` does not say how its dots are joined", first.piece))
        .hint(cx.puzzle.to_string()))
}

/// Whether a shape is a dot of a panel.
fn dot(shape: &PrintedShape, panel: Rect) -> bool {
    let (w, h) = (shape.rect.w.get(), shape.rect.h.get());
    let small = w < panel.w.get() * SMALL && h < panel.w.get() * SMALL && w > 0.0 && (w / h - 1.0).abs() < 0.2;
    small && shape.fill.is_some_and(|fill| fill.contrast(Colour::WHITE) >= SEEN)
}

/// The number of a panel: above it on a sheet, in the title of a card.
fn number_of(sheet: &Printed, panel: Rect) -> Hinted<u32> {
    let head = Rect { x: panel.x, y: panel.y - panel.h * 0.2, w: panel.w, h: panel.h * 0.2 };
    let above = sheet.blocks_in(head);
    let all = sheet.blocks_in(Rect::of(sheet.size));
    let number = |text: String| text.strip_prefix("Panel ").and_then(|rest| rest.trim().parse().ok());
    let near = above.iter().find_map(|block| number(block.text()));
    near.or_else(|| all.iter().find_map(|block| number(block.text())))
        .ok_or_else(|| Trouble::new("a panel of dots has no number"))
}

/// How far a point is from a rectangle.
fn gap(from: (Mm, Mm), to: Rect) -> f64 {
    let x = from.0.max(to.x).min(to.right());
    let y = from.1.max(to.y).min(to.bottom());
    apart(from, (x, y)).get()
}

fn dots(sheet: &Printed, panel: Rect, spots: &[Rect]) -> Hinted<Vec<Dot>> {
    let mut numbers: Vec<Option<u16>> = vec![None; spots.len()];
    for text in sheet.texts_in(panel) {
        let number: u16 = text
            .text
            .trim()
            .parse()
            .map_err(|_| Trouble::new(format!("a panel has \"{}\" where a number belongs", text.text)))?;
        let mut far: Vec<(usize, f64)> =
            spots.iter().enumerate().map(|(at, spot)| (at, gap(middle(*spot), text.rect))).collect();
        far.sort_by(|a, b| a.1.total_cmp(&b.1));
        let nearest = far.first().copied().ok_or_else(|| Trouble::new("a panel has numbers and no dots"))?;
        // A hair's difference does not tell one dot from the next.
        if far.get(1).is_some_and(|second| second.1 < nearest.1 + 0.15) {
            return Err(Trouble::new(format!("the number {number} stands between two dots")));
        }
        if numbers.get_mut(nearest.0).is_none_or(|slot| slot.replace(number).is_some()) {
            return Err(Trouble::new(format!("two numbers, one of them {number}, stand at one dot")));
        }
    }
    let share = |length: Mm| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within a panel")]
        let value = (length.get() / panel.w.get() * f64::from(PANEL.0)).round().clamp(0.0, f64::from(PANEL.1)) as u16;
        value
    };
    let place = |spot: &Rect| (share(middle(*spot).0 - panel.x), share(middle(*spot).1 - panel.y));
    let mut dots: Vec<Dot> = spots
        .iter()
        .zip(numbers)
        .map(|(spot, number)| (place(spot), number))
        .map(|((x, y), number)| Dot { x, y, number })
        .collect();
    dots.sort_by_key(|dot| (dot.y, dot.x));
    Ok(dots)
}
