//! Covers for books: front, spine, back and flaps, in one piece where a page takes it, else joined at the back's edge.

use super::cards::shows;
use super::ground::parted;
use super::{Bench, told};
use crate::diag::Hinted;
use crate::face::{Face, Piece, Role};
use crate::limits;
use crate::script::Rich;
use crate::units::{Mm, Rect, Size};

/// Thinner spines bear no words.
const SPINE: f64 = 7.0;

/// The cover of a book. Seen from outside it is, from the left: flap, back, spine, front, flap.
pub(super) fn cover(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let Size { w, h } = bench.size;
    let (spine, flap) = (Mm::new(bench.spec.spine), Mm::new(bench.spec.flaps));
    let whole = flap * 2.0 + w * 2.0 + spine;
    if whole <= Mm::new(limits::PROP_PAGE.1) {
        let mut face = Face::new(Size { w: whole, h }, shows(bench, &bench.spec.text));
        back(bench, &mut face, flap)?;
        front(bench, &mut face, flap + w)?;
        let folds = [flap, flap + w, flap + w + spine, flap + w * 2.0 + spine];
        fold(&mut face, &folds, h);
        return Ok(vec![bench.piece("", &format!("cover for {}, fold on the dashed lines", book(bench)), face)]);
    }
    let tab = Mm::new(bench.spec.tab_width());
    let mut first = Face::new(Size { w: tab + spine + w + flap, h }, shows(bench, &bench.spec.text));
    let wide = told(tab);
    let sayings = [
        format!("Join: glue part 2, the back, over this tab, up to the line. Overlap {wide} mm."),
        format!("Glue part 2 over this tab: {wide} mm"),
        "Glue part 2 here".to_owned(),
        "Part 2".to_owned(),
    ];
    bench.tab(&mut first, Rect { x: Mm::ZERO, y: Mm::ZERO, w: tab, h }, &sayings);
    bench.lay_line(&mut first, tab, h);
    bench.join_marks(&mut first, tab, h, false);
    front(bench, &mut first, tab)?;
    fold(&mut first, &[tab + spine, tab + spine + w], h);
    let mut second = Face::new(Size { w: flap + w, h }, format!("{}, the back", bench.name));
    back(bench, &mut second, flap)?;
    bench.join_marks(&mut second, flap + w, h, true);
    fold(&mut second, &[flap], h);
    let label = format!("part 1 of 2, cover for {}; glue part 2 over the tab, fold on the dashed lines", book(bench));
    Ok(vec![
        bench.piece("1", &label, first),
        bench.piece(
            "2",
            &format!("part 2 of 2, the back; its right edge goes over the tab of part 1, overlap {wide} mm"),
            second,
        ),
    ])
}

fn book(bench: &Bench<'_>) -> String {
    let (w, h) = (told(bench.size.w), told(bench.size.h));
    format!("a book of {w} × {h} × {} mm", told(Mm::new(bench.spec.spine)))
}

/// Folds from top to bottom, where they are not at an edge.
fn fold(face: &mut Face, folds: &[Mm], h: Mm) {
    let mut last = Mm::ZERO;
    for x in folds {
        if *x > last && *x < face.size.w {
            face.folds.push(((*x, Mm::ZERO), (*x, h)));
        }
        last = *x;
    }
}

/// Spine and front, the spine's left edge at `x`.
fn front(bench: &Bench<'_>, face: &mut Face, x: Mm) -> Hinted<()> {
    let Size { w, h } = bench.size;
    let spine = Mm::new(bench.spec.spine);
    let (title, _) = parted(&bench.rich(&bench.spec.text));
    if spine >= Mm::new(SPINE) {
        // From top to bottom, as the title of a book that lies face up is read (ISO 6357, from memory).
        let (long, short) = (h - Mm::new(24.0), spine - Mm::new(3.0));
        let rect = Rect { x: x + (spine - long) / 2.0, y: (h - short) / 2.0, w: long, h: short };
        let words = Rich::plain(title.text());
        face.text(bench.run(rect, Role::Display, words, 26.0).turned(90.0));
    }
    let rect = Rect { x: x + spine, y: Mm::ZERO, w, h };
    side(bench, face, "cover", rect, &bench.spec.text)
}

/// The back, its left edge at `x`.
fn back(bench: &Bench<'_>, face: &mut Face, x: Mm) -> Hinted<()> {
    let Size { w, h } = bench.size;
    side(bench, face, "cover-back", Rect { x, y: Mm::ZERO, w, h }, &bench.spec.back)
}

fn side(bench: &Bench<'_>, face: &mut Face, frame: &str, rect: Rect, text: &str) -> Hinted<()> {
    let before = face.layers.len();
    let mut ground = bench.ground(face, &[frame], rect)?;
    let (text, framed) = (bench.rich(text), face.layers.len() == before + 1);
    if !framed {
        // Where no frame has the book's shape, the seal stands between title and text.
        let inner = crate::party::notes::joined(ground.title, ground.body);
        let middle = Rect { y: inner.y + inner.h * 0.36, h: inner.h * 0.28, ..inner };
        bench.seal(face, middle, 0.0)?;
        ground.title = Rect { h: inner.h * 0.32, ..inner };
        ground.body = Rect { y: inner.y + inner.h * 0.68, h: inner.h * 0.32, ..inner };
    }
    if text.is_empty() {
        return Ok(());
    }
    if frame == "cover-back" {
        face.text(bench.run(ground.body, Role::Text, text, 16.0));
        return Ok(());
    }
    let (title, body) = parted(&text);
    face.text(bench.run(ground.title, Role::Display, title, 48.0));
    if let Some(body) = body {
        face.text(bench.run(ground.body, Role::Text, body, 20.0));
    }
    Ok(())
}
