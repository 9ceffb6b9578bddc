use super::print::{self, DISC};
use super::{Band, Counter, JAR, ORDER_CARD, Pattern, View};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::Drawing;
use crate::face::proof::{Look, Looks, Printed, PrintedShape, lines, middle};
use crate::mechanics::words::colour_named;
use crate::mechanics::{Dressing, front, told};
use crate::theme::Colour;
use crate::theme::colour::Eyes;
use crate::units::{Mm, Rect, Size};

/// Colours nearer than this (CIEDE2000) are one colour to the eye side by side; two prints of one ink lie within it
/// (common practice in print: 2 to 3; from memory).
const ONE_COLOUR: f64 = 3.0;

/// The card and the counters from paper; counters that are not printed from what the host is told to write.
pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let looks = signs()?;
    let mut view = View {
        bands: Vec::new(),
        counters: Vec::new(),
        card: None,
        baseline: true,
        discs: false,
        lid_mm: 0.0,
        lid_title: String::new(),
        card_title: String::new(),
        card_text: String::new(),
    };
    if printed.iter().any(|side| side.part == ORDER_CARD) {
        view.bands = card(front(printed, ORDER_CARD)?, cx, &looks)?;
        view.card = Some((0..view.bands.len()).collect());
    }
    let discs: Vec<&Printed> = printed.iter().filter(|side| side.part == JAR && side.size.w < DISC * 1.01).collect();
    view.discs = !discs.is_empty();
    for side in discs {
        disc(side, &looks, &mut view)?;
    }
    for step in told(printed) {
        by_hand(step, cx, &mut view)?;
    }
    Ok(view)
}

/// How the patterns' signs look.
fn signs() -> Hinted<Looks> {
    let mut looks = Looks::new();
    let size = Size::mm(10.0, 10.0);
    for pattern in Pattern::ALL {
        let mut drawing = Drawing::new(size);
        print::sign(&mut drawing, pattern, (Mm::new(5.0), Mm::new(5.0)), Mm::new(3.0), Colour::BLACK);
        looks.add(pattern.word(), Look::of_svg(&drawing.svg(), size)?.bare());
    }
    Ok(looks)
}

/// The pattern that some shapes draw: none of no shapes.
fn pattern(shapes: &[&PrintedShape], looks: &Looks) -> Hinted<Option<Pattern>> {
    let Some(look) = Look::of(shapes) else { return Ok(None) };
    let look = look.bare();
    let found = looks.like(&look);
    let pattern = Pattern::ALL.into_iter().find(|pattern| found == [pattern.word()]);
    pattern.map(Some).ok_or_else(|| Trouble::new("a sign is none of the patterns' signs"))
}

/// The bands in the order of the card: for each swatch the sign, the name and the sign's word beside it.
fn card(card: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Vec<Band>> {
    let body = cx.slot_on(card, "portrait", "body")?;
    let in_list = card.shapes_in(body);
    let mut swatches: Vec<&PrintedShape> = in_list
        .iter()
        .copied()
        .filter(|shape| shape.fill.is_some() && shape.stroke.is_some() && shape.rect.w > shape.rect.h * 1.5)
        .collect();
    swatches.sort_by(|a, b| a.rect.y.get().total_cmp(&b.rect.y.get()));
    let row_of = |at: Mm| {
        let far = |shape: &&PrintedShape| (middle(shape.rect).1 - at).get().abs();
        let near = swatches.iter().enumerate().min_by(|a, b| far(a.1).total_cmp(&far(b.1)));
        near.filter(|(_, shape)| far(shape) < shape.rect.h.get()).map(|(index, _)| index)
    };
    let right = swatches.iter().map(|shape| shape.rect.right()).fold(Mm::ZERO, Mm::max);
    let mut bands = Vec::new();
    for (index, swatch) in swatches.iter().enumerate() {
        let beside = |rect: Rect| rect.x > right && row_of(middle(rect).1) == Some(index);
        let drawn: Vec<&PrintedShape> = in_list.iter().copied().filter(|shape| beside(shape.rect)).collect();
        let pattern = pattern(&drawn, looks)?;
        let texts: Vec<_> = card.texts_in(body).into_iter().filter(|text| beside(text.rect)).collect();
        let words: Vec<String> = lines(&texts).into_iter().map(|line| line.text).collect();
        let name = match (words.as_slice(), pattern) {
            ([name], None) => name,
            ([name, word], Some(pattern)) if word == pattern.word() => name,
            _ => return Err(Trouble::new(format!("row {} of the card reads \"{}\"", index + 1, words.join(" ")))),
        };
        let colour = swatch.fill.unwrap_or(Colour::WHITE);
        if !is_called(colour, name, cx) {
            return Err(Trouble::new(format!("what the card calls {name} is {colour}")));
        }
        bands.push(Band { name: name.clone(), colour, pattern });
    }
    Ok(bands)
}

/// Whether a colour on paper is the one that the theme gives this name; on a grey print, whether it is as light.
fn is_called(colour: Colour, name: &str, cx: &Dressing<'_>) -> bool {
    let theme: Vec<(&str, Colour)> =
        cx.theme.theme.colours.iter().filter_map(|(name, hex)| Some((name.as_str(), Colour::parse(hex)?))).collect();
    let Ok(wanted) = colour_named(name, &theme) else { return false };
    let grey = colour.r == colour.g && colour.g == colour.b;
    Eyes::Full.difference(colour, if grey { wanted.grey() } else { wanted }) < ONE_COLOUR
}

/// A printed counter: its ring's colour, its sign, its digit.
fn disc(side: &Printed, looks: &Looks, view: &mut View) -> Hinted<()> {
    let half = side.size.w / 2.0;
    // The widest stroke is the band; the sign stands below the digit, within the ring.
    let thick = |shape: &&PrintedShape| shape.stroke.map_or(0.0, |(_, width)| width.get());
    let ring =
        side.shapes.iter().filter(|shape| thick(shape) > half.get() * 0.1).max_by(|a, b| thick(a).total_cmp(&thick(b)));
    let below = Rect { x: half * 0.4, y: half * 1.26, w: half * 1.2, h: half * 0.5 };
    let pattern = pattern(&side.shapes_in(below), looks)?;
    let text = side.texts.iter().map(|text| text.text.trim()).collect::<String>();
    let digit_foot = side.texts.iter().map(|text| text.rect.bottom()).fold(Mm::ZERO, Mm::max);
    let lined = side.shapes.iter().filter_map(PrintedShape::segment).any(|(from, to)| {
        from.1 > digit_foot && from.1 < below.y && (from.1 - to.1).get().abs() < 0.1 && from.0 < half && to.0 > half
    });
    view.baseline &= lined || text.is_empty();
    let band = ring.and_then(|ring| ring.stroke).map(|(colour, _)| {
        let same = |band: &Band| band.pattern == pattern && Eyes::Full.difference(band.colour, colour) < ONE_COLOUR;
        match view.bands.iter().position(same) {
            Some(known) => known,
            None => {
                view.bands.push(Band { name: format!("band {}", view.bands.len() + 1), colour, pattern });
                view.bands.len() - 1
            }
        }
    });
    view.counters.push(Counter { band, text, count: 1 });
    Ok(())
}

/// The digits that the host writes on counters with bands of their own.
fn by_hand(step: &str, cx: &Dressing<'_>, view: &mut View) -> Hinted<()> {
    let Some(list) = step.strip_prefix("Write the digits: ") else { return Ok(()) };
    for item in list.split(" band") {
        let Some((before, band)) = item.split_once(" on one with ") else { continue };
        let (before, line) = match before.strip_suffix(" with a line beneath") {
            Some(before) => (before, true),
            None => (before, false),
        };
        let text = before.rsplit(' ').next().unwrap_or_default().to_owned();
        view.baseline &= line || !crate::readings::tokens::turns(&text);
        let band = match band.strip_prefix("the ") {
            None => None,
            Some(name) => Some(match view.bands.iter().position(|band| band.name == name) {
                Some(known) => known,
                None => {
                    view.bands.push(Band {
                        name: name.to_owned(),
                        colour: colour_named(name, &[]).unwrap_or(cx.colour("paper")),
                        pattern: None,
                    });
                    view.bands.len() - 1
                }
            }),
        };
        view.counters.push(Counter { band, text, count: 1 });
    }
    Ok(())
}
