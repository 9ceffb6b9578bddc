//! The clocks and their order, read back from paper: where the hands point, by the figures round the dial.

use super::{CLOCKS, Clock, ORDER_CARD, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Dot, Printed, PrintedShape, PrintedText, apart, middle};
use crate::mechanics::Dressing;
use crate::units::{Mm, Rect};

/// Hands of which the shorter is more than this share of the longer are of one length.
const EQUAL: f64 = 0.97;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let mut view =
        View { clocks: Vec::new(), hour_hand: 0.0, order: Vec::new(), say_twelve: false, text: String::new() };
    for side in printed.iter().filter(|side| side.part == CLOCKS && !side.back) {
        let title = cx.slot_on(side, "square", "title")?;
        let name = side.blocks_in(title).iter().map(Block::text).collect::<Vec<_>>().join(" ");
        let (hour, share) = time(side, cx.slot_on(side, "square", "body")?)?;
        view.clocks.push(Clock { name, hour });
        view.hour_hand = view.hour_hand.max(share);
    }
    if let Some(card) = printed.iter().find(|side| side.part == ORDER_CARD && !side.back) {
        let body = cx.slot_on(card, "portrait", "body")?;
        let words = card.blocks_in(body).iter().map(Block::text).collect::<Vec<_>>().join(" ");
        read_card(&mut view, &words);
    }
    Ok(view)
}

/// The hour, and the short hand's length as a share of the long one's.
fn time(side: &Printed, body: Rect) -> Hinted<(u8, f64)> {
    let round = |shape: &&&PrintedShape| {
        let (w, h) = (shape.rect.w.get(), shape.rect.h.get());
        shape.fill.is_none() && shape.stroke.is_some() && (w - h).abs() < 0.2 && w > body.h.get() * 0.5
    };
    let shapes = side.shapes_in(body);
    let dial = shapes.iter().find(round).ok_or_else(|| Trouble::new("a clock card shows no dial"))?;
    let centre = middle(dial.rect);
    let mut hands: Vec<(Mm, Dot)> = Vec::new();
    for (a, b) in shapes.iter().filter_map(|shape| shape.segment()) {
        if apart(a, centre).get() < 0.3 {
            hands.push((apart(a, b), b));
        } else if apart(b, centre).get() < 0.3 {
            hands.push((apart(a, b), a));
        }
    }
    hands.sort_by(|a, b| a.0.get().total_cmp(&b.0.get()));
    let [short, long] = hands.as_slice() else {
        return Err(Trouble::new(format!("a clock has {} hands, not two", hands.len())));
    };
    let share = short.0.get() / long.0.get().max(f64::EPSILON);
    let figures = side.texts_in(dial.rect);
    let (minute, hour) = (figure(&figures, centre, long.1)?, figure(&figures, centre, short.1)?);
    match (minute, hour) {
        (12, hour) => Ok((hour, share)),
        // Of two like hands the one at 12 gives the minutes.
        (hour, 12) if share > EQUAL => Ok((hour, share)),
        _ => Err(Trouble::new("a clock does not stand at a full hour")),
    }
}

/// The figure to which a hand points.
fn figure(figures: &[&PrintedText], centre: Dot, tip: Dot) -> Hinted<u8> {
    let direction = |at: Dot| (at.1 - centre.1).get().atan2((at.0 - centre.0).get());
    let pointed = direction(tip);
    let off = |text: &&&PrintedText| {
        let turn = (direction(middle(text.rect)) - pointed).abs();
        turn.min(std::f64::consts::TAU - turn)
    };
    let nearest = figures.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    let nearest = nearest.ok_or_else(|| Trouble::new("a dial has no figures"))?;
    // Half an hour is 15 degrees; a third of that is a hand that points between two figures.
    if off(&nearest).to_degrees() > 5.0 {
        return Err(Trouble::new("a hand points between two figures"));
    }
    nearest.text.trim().parse().map_err(|_| Trouble::new(format!("a dial has \"{}\" for a figure", nearest.text)))
}

/// The names in their order, and what the rule says.
fn read_card(view: &mut View, words: &str) {
    let names: Vec<String> = view.clocks.iter().map(|clock| clock.name.clone()).collect();
    for (listed, say_twelve) in [(true, true), (true, false), (false, true)] {
        view.order = if listed { names.clone() } else { Vec::new() };
        view.say_twelve = say_twelve;
        if let Some((before, _)) = words.split_once(&texts::rule(view)) {
            view.order = if listed { last_names(before, &names) } else { Vec::new() };
            return;
        }
    }
    (view.order, view.say_twelve) = (Vec::new(), false);
}

/// The names with which a text ends, commas between them.
fn last_names(text: &str, names: &[String]) -> Vec<String> {
    let lower = |name: &str| name.trim().to_lowercase();
    let mut found = Vec::new();
    for piece in text.split(',').rev() {
        let piece = lower(piece);
        if let Some(name) = names.iter().find(|name| lower(name) == piece) {
            found.push(name.clone());
            continue;
        }
        // The first name of the list may stand after words of the story.
        let ends = |name: &&String| piece.ends_with(&format!(" {}", lower(name)));
        found.extend(names.iter().filter(ends).max_by_key(|name| name.len()).cloned());
        break;
    }
    found.reverse();
    found
}
