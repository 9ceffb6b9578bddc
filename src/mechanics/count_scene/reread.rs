//! The scene and the list, read back from paper.

use super::{FIELD, LIST, SCENE, Thing, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Contour, Looks, Printed, PrintedShape, apart, middle};
use crate::mechanics::pictures::{single, standing};
use crate::mechanics::{Dressing, front};
use crate::units::Rect;

/// Degrees by which a thing may lean and still be taken for itself.
const LEAN: i8 = 12;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let (scene, card) = (front(printed, SCENE)?, front(printed, LIST)?);
    let looks = cx.looks()?;
    let list = list(card, cx, &looks)?;
    let mut view =
        View { text: String::new(), things: things(scene, cx, &looks)?, list, ring_rule: false, say_order: false };
    for (ring_rule, say_order) in [(true, true), (true, false), (false, true), (false, false)] {
        (view.ring_rule, view.say_order) = (ring_rule, say_order);
        if card.says(&texts::rule(&view)) {
            return Ok(view);
        }
    }
    Err(Trouble::new("the list does not say how things are counted"))
}

/// The pictures of the list, by the letters before them.
fn list(card: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Vec<String>> {
    let body = cx.slot_on(card, "portrait", "body")?;
    let mut lines: Vec<(char, String)> = Vec::new();
    let texts = card.texts_in(body);
    for (name, rect) in standing(card, body, looks) {
        let at = middle(rect);
        let level = texts.iter().filter(|text| text.text.trim().chars().count() == 1);
        let before = level.filter(|text| {
            text.rect.right() <= rect.x && (middle(text.rect).1 - at.1).get().abs() < rect.h.get() / 2.0
        });
        let nearest = before.max_by(|a, b| a.rect.x.get().total_cmp(&b.rect.x.get()));
        let letter = nearest.ok_or_else(|| Trouble::new(format!("the {name} on the list has no letter")))?;
        lines.push((single(letter)?, name));
    }
    lines.sort();
    if lines.iter().zip('a'..).any(|((letter, _), wanted)| *letter != wanted) {
        return Err(Trouble::new("the lines of the list are not lettered one after another"));
    }
    Ok(lines.into_iter().map(|(_, name)| name).collect())
}

fn things(scene: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Vec<Thing>> {
    let slot = cx.slot_on(scene, "board", "field")?;
    let scale = (slot.w.get() / FIELD.w.get()).min(slot.h.get() / FIELD.h.get());
    let (left, top) = (slot.x + (slot.w - FIELD.w * scale) / 2.0, slot.y + (slot.h - FIELD.h * scale) / 2.0);
    // Rings are round, drawn in outline only, and as large as a thing.
    let ring = |shape: &&PrintedShape| {
        let (w, h) = (shape.rect.w.get(), shape.rect.h.get());
        shape.fill.is_none()
            && shape.stroke.is_some()
            && (w - h).abs() < 0.1
            && w > 5.0
            && shape.contours.iter().all(|c| c.closed)
    };
    let rings: Vec<Rect> = scene.shapes.iter().filter(ring).map(|shape| shape.rect).collect();
    let mut things = Vec::new();
    for (art, rect) in scene.arts_in(slot) {
        let Some((picture, lean)) = leaning(&scene.shapes_of(art), rect, looks) else { continue };
        let at = middle(rect);
        let (sin, cos) = f64::from(lean.abs()).to_radians().sin_cos();
        let side = rect.w / (sin + cos);
        let ringed = rings.iter().any(|ring| apart(middle(*ring), at).get() < 0.5 && ring.w > side);
        let across = if ringed { side / 0.74 } else { side };
        things.push(Thing {
            picture,
            x: (at.0 - left) / scale,
            y: (at.1 - top) / scale,
            across: across / scale,
            lean,
            ringed,
        });
    }
    Ok(things)
}

/// What a drawing is, and by how much it leans.
fn leaning(shapes: &[&PrintedShape], about: Rect, looks: &Looks) -> Option<(String, i8)> {
    (-LEAN..=LEAN).find_map(|lean| {
        let straight: Vec<PrintedShape> = shapes.iter().map(|shape| turned_back(shape, about, lean)).collect();
        let straight: Vec<&PrintedShape> = straight.iter().collect();
        looks.named(&straight).first().map(|name| ((*name).to_owned(), lean))
    })
}

/// A shape turned back by so many degrees about the middle of a rectangle.
fn turned_back(shape: &PrintedShape, about: Rect, lean: i8) -> PrintedShape {
    let (x0, y0) = middle(about);
    let (sin, cos) = (-f64::from(lean)).to_radians().sin_cos();
    let contours = shape
        .contours
        .iter()
        .map(|contour| Contour {
            points: contour
                .points
                .iter()
                .map(|(x, y)| {
                    let (dx, dy) = (*x - x0, *y - y0);
                    (x0 + dx * cos - dy * sin, y0 + dx * sin + dy * cos)
                })
                .collect(),
            closed: contour.closed,
        })
        .collect();
    PrintedShape { contours, ..shape.clone() }
}
