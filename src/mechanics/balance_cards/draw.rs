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
const LARGEST: (Mm, Mm) = (Mm::new(80.0), Mm::new(44.0));

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

    let row = Rect { y: top.bottom() + mm(2.0), h: mm(34.0), ..slot };
    let width = row.w / view.things.len().max(1) as f64;
    for (index, thing) in view.things.iter().enumerate() {
        let x = row.x + width * index as f64;
        let side = mm(18.0).min(width - mm(2.0));
        let picture = Rect { x: x + (width - side) / 2.0, y: row.y, w: side, h: side };
        face.art(cx.symbol(&thing.symbol)?, picture, format!("the {}", thing.symbol));
        let tag = Rect { x: x + (width - mm(13.0)) / 2.0, y: row.y + mm(20.0), w: mm(13.0), h: mm(12.0) };
        let mut drawing = Drawing::new(Size { w: tag.w, h: tag.h });
        let edge = Rect::of(Size { w: tag.w, h: tag.h }).inset(mm(0.4));
        drawing.rect(edge, mm(2.0), Pen::line(cx.colour("ink"), mm(0.5)));
        face.art(drawing.svg(), tag, String::new());
        paper::symbol(&mut face, cx, tag.inset(mm(1.2)), &thing.tag.to_string(), 26.0);
    }

    let space = Rect { y: row.bottom() + mm(4.0), h: slot.bottom() - row.bottom() - mm(4.0), ..slot };
    let rows = view.weighings.len().div_ceil(ACROSS).max(1);
    let (w, h) = (space.w / ACROSS as f64, (space.h / rows as f64).min(LARGEST.1 + mm(4.0)));
    for (index, weighing) in view.weighings.iter().enumerate() {
        let (x, y) = (w * (index % ACROSS) as f64, h * (index / ACROSS) as f64);
        let size = Size { w: (w - mm(6.0)).min(LARGEST.0), h: (h - mm(4.0)).min(LARGEST.1) };
        let at = Rect { x: space.x + x + (w - size.w) / 2.0, y: space.y + y, w: size.w, h: size.h };
        scales(&mut face, cx, at, view, *weighing)?;
    }
    Ok(cx.piece(SHEET, "scales", face))
}

/// A beam on a post, a pan at either end; the heavier side hangs lower by a fifth of the height.
fn scales(face: &mut Face, cx: &Dressing<'_>, at: Rect, view: &View, weighing: Weighing) -> Hinted<()> {
    let mut drawing = Drawing::new(Size { w: at.w, h: at.h });
    let (ink, line) = (Pen::line(cx.colour("ink"), mm(0.8)), Pen::line(cx.colour("line"), mm(0.35)));
    let (middle, drop) = (at.w / 2.0, at.h * 0.1);
    let pivot = at.h * 0.56;
    let (left_end, right_end) = if weighing.left { (pivot + drop, pivot - drop) } else { (pivot - drop, pivot + drop) };
    let reach = at.w * 0.3;
    drawing.line((middle, pivot), (middle, at.h - mm(1.0)), ink);
    drawing.line((middle - mm(9.0), at.h - mm(1.0)), (middle + mm(9.0), at.h - mm(1.0)), ink);
    drawing.line((middle - reach, left_end), (middle + reach, right_end), ink);
    drawing.circle(middle, pivot, mm(1.2), Pen::fill(cx.colour("ink")));
    let (left, right) =
        if weighing.left { (weighing.heavier, weighing.lighter) } else { (weighing.lighter, weighing.heavier) };
    let side = at.h * 0.34;
    for (x, end, thing) in [(middle - reach, left_end, left), (middle + reach, right_end, right)] {
        // What is weighed stands on its pan, the pan on the beam's end.
        let pan = end - mm(1.0);
        let on_pan: Vec<usize> = [Some(thing), weighing.both].into_iter().flatten().collect();
        let wide = side * on_pan.len() as f64;
        drawing.line((x, end), (x, pan), line);
        drawing.line((x - wide * 0.5 - mm(1.0), pan), (x + wide * 0.5 + mm(1.0), pan), ink);
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
