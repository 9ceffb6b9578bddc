//! The sheet: the things with their tags, and the pictures of scales.

use super::{ORDER, SHEET, View, Weighing, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Weighings side by side.
const ACROSS: usize = 2;
/// Width and height of the largest picture of scales.
const LARGEST: (Mm, Mm) = (Mm::new(84.0), Mm::new(58.0));
/// From the middle of a beam to its end, in the width of the picture.
const REACH: f64 = 0.29;
/// How far an end of a beam stands over or under its middle, in the height of the picture.
const DROP: f64 = 0.1;

pub(super) fn sheet(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!(
        "{}: {} things with tags, and pictures of scales. {} {ORDER}",
        capital(texts::name(cx)),
        view.things.len(),
        texts::rule(view)
    );
    let (mut face, slot) = paper::sheet(cx, "board", cx.name("scales-title", "Heavy and light"), alt)?;
    let top = Rect { h: slot.h * 0.08, ..slot };
    paper::words(&mut face, cx, top, Rich::plain(format!("{} {ORDER}", texts::rule(view))), 15.0);

    let row = Rect { y: top.bottom() + mm(2.0), h: mm(40.0), ..slot };
    let width = row.w / view.things.len().max(1) as f64;
    for (index, thing) in view.things.iter().enumerate() {
        let x = row.x + width * index as f64;
        let side = mm(23.0).min(width - mm(2.0));
        let picture = Rect { x: x + (width - side) / 2.0, y: row.y + mm(23.0) - side, w: side, h: side };
        face.art(cx.symbol(&thing.symbol)?, picture, format!("the {}", thing.symbol));
        let tag = Rect { x: x + (width - mm(15.0)) / 2.0, y: row.y + mm(25.0), w: mm(15.0), h: mm(13.0) };
        let mut drawing = Drawing::new(Size { w: tag.w, h: tag.h });
        let edge = Rect::of(Size { w: tag.w, h: tag.h }).inset(mm(0.4));
        drawing.rect(edge, mm(2.0), Pen::line(cx.colour("ink"), mm(0.5)));
        face.art(drawing.svg(), tag, String::new());
        paper::symbol(&mut face, cx, tag.inset(mm(1.2)), &thing.tag.to_string(), 28.0);
    }

    let space = Rect { y: row.bottom() + mm(4.0), h: slot.bottom() - row.bottom() - mm(4.0), ..slot };
    let rows = view.weighings.len().div_ceil(ACROSS).max(1);
    let (w, h) = (space.w / ACROSS as f64, (space.h / rows as f64).min(LARGEST.1 + mm(4.0)));
    let above = (space.h - h * rows as f64) / 2.0;
    for (index, weighing) in view.weighings.iter().enumerate() {
        // Scales that have a row to themselves stand in its middle.
        let here = ACROSS.min(view.weighings.len() - index / ACROSS * ACROSS);
        let left = (space.w - w * here as f64) / 2.0;
        let (x, y) = (left + w * (index % ACROSS) as f64, above + h * (index / ACROSS) as f64);
        let size = Size { w: (w - mm(4.0)).min(LARGEST.0), h: (h - mm(4.0)).min(LARGEST.1) };
        let at = Rect { x: space.x + x + (w - size.w) / 2.0, y: space.y + y, w: size.w, h: size.h };
        scales(&mut face, cx, at, view, *weighing)?;
    }
    Ok(cx.piece(SHEET, "", face))
}

/// A beam on a post, a pan standing on either end; the heavier side is lower by a fifth of the height.
fn scales(face: &mut Face, cx: &Dressing<'_>, at: Rect, view: &View, weighing: Weighing) -> Hinted<()> {
    let mut drawing = Drawing::new(Size { w: at.w, h: at.h });
    let colour = cx.colour("ink");
    let (ink, pan_line) = (Pen::line(colour, mm(0.9)), Pen::line(colour, mm(1.2)));
    let (middle, drop, reach, foot) = (at.w / 2.0, at.h * DROP, at.w * REACH, at.h - mm(1.0));
    let pivot = at.h * 0.6;
    let (left_end, right_end) = if weighing.left { (pivot + drop, pivot - drop) } else { (pivot - drop, pivot + drop) };
    let post = [(middle, pivot), (middle + mm(3.0), foot), (middle - mm(3.0), foot)];
    drawing.polygon(&post, Pen::fill(colour));
    drawing.line((middle - mm(11.0), foot), (middle + mm(11.0), foot), pan_line);
    drawing.line((middle - reach, left_end), (middle + reach, right_end), ink);
    drawing.circle(middle, pivot, mm(1.8), Pen::fill(colour));
    let (left, right) =
        if weighing.left { (weighing.heavier, weighing.lighter) } else { (weighing.lighter, weighing.heavier) };
    // Two on a pan must stay on their half of the picture.
    let widest = (at.w * (0.5 - REACH)).min(reach) - mm(3.5);
    let side = if weighing.both.is_some() { (at.h * 0.34).min(widest) } else { at.h * 0.34 };
    for (x, end, thing) in [(middle - reach, left_end, left), (middle + reach, right_end, right)] {
        let on_pan: Vec<usize> = [Some(thing), weighing.both].into_iter().flatten().collect();
        let wide = side * on_pan.len() as f64;
        // What is weighed stands on its pan, the pan on a stem so long that the slanting beam stays under it.
        let half = wide * 0.5 + mm(1.0);
        let pan = end - half * (drop.get() / reach.get()) - mm(2.0);
        drawing.line((x, end), (x, pan), ink);
        drawing.circle(x, end, mm(1.1), Pen::fill(colour));
        drawing.line((x - half, pan), (x + half, pan), pan_line);
        for (step, thing) in on_pan.into_iter().enumerate() {
            let thing = view.things.get(thing).ok_or_else(|| {
                Trouble::new("a weighing shows a thing that is not listed")
                    .hint("lay the puzzle out again from its setup")
            })?;
            let top = (pan - side - mm(0.6)).max(Mm::ZERO);
            let left = x - wide / 2.0 + side * step as f64;
            let picture = Rect { x: at.x + left, y: at.y + top, w: side, h: side }.inset(mm(0.3));
            face.art(cx.symbol(&thing.symbol)?, picture, format!("the {}", thing.symbol));
        }
    }
    face.art(drawing.svg(), at, String::new());
    Ok(())
}
