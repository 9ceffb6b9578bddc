//! Tent cards and envelopes.

use super::cards::shows;
use super::flags::shaped;
use super::ground::{Ground, paste};
use super::{Bench, told};
use crate::diag::Hinted;
use crate::face::{Face, Piece, Role};
use crate::limits;
use crate::party::labels::row;
use crate::party::notes::joined;
use crate::units::{Mm, Rect, Size};

/// How much wider and higher an envelope is than what it takes: ISO 269 gives 9 to 14 mm to folded sheets of ISO 216,
/// of whose A series it is made; 5 mm take cards and letters folded by hand (common practice, no source).
const LOOSE: f64 = 5.0;
/// How far below the mouth the back ends, so that fingers get in.
const MOUTH: f64 = 3.0;
/// Least and greatest height of the flap that closes, and its part of the height.
const FLAP: (f64, f64, f64) = (18.0, 60.0, 0.42);
/// How far tabs and flap are cut in at their corners.
const TAPER: f64 = 5.0;
/// The part of an envelope's words that the marks of its locks take, below them.
const MARKS: f64 = 0.34;

/// Tent cards, to be read from both sides.
pub(super) fn tents(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let Size { w, h } = bench.size;
    let count = bench.spec.texts().count();
    let mut pieces = Vec::new();
    for (at, text) in bench.spec.texts().enumerate() {
        let mut face = Face::new(Size { w, h: h * 2.0 }, shows(bench, text));
        let back = if bench.spec.back.trim().is_empty() { text } else { &bench.spec.back };
        // The far side stands on its head on the sheet, so that it is upright when the card stands.
        for (text, top, over) in [(back, Mm::ZERO, true), (text, h, false)] {
            let mut side = Face::new(bench.size, String::new());
            let ground = bench.ground(&mut side, &["tent"], Rect::of(bench.size))?;
            bench.words(&mut side, ground, &bench.rich(text), Role::Display, 60.0);
            paste(&mut face, &side, (Mm::ZERO, top), over);
        }
        face.folds.push(((Mm::ZERO, h), (w, h)));
        let (part, number) = if count == 1 {
            (String::new(), String::new())
        } else {
            ((at + 1).to_string(), format!("{} of {count}, ", at + 1))
        };
        pieces.push(bench.piece(&part, &format!("{number}fold on the dashed line to stand"), face));
    }
    Ok(pieces)
}

/// The measures of an envelope: its front, the flap above it, the back below it, the tabs beside it.
struct Cut {
    front: Rect,
    back: Mm,
    tab: Mm,
}

impl Cut {
    fn new(bench: &Bench<'_>) -> Self {
        let (loose, tab) = (Mm::new(LOOSE), Mm::new(bench.spec.tab_width()));
        let Size { w, h } = Size { w: bench.size.w + loose, h: bench.size.h + loose };
        let back = h - Mm::new(MOUTH);
        let (least, most, part) = FLAP;
        // The flap gives way first where the sheet is short.
        let room = (limits::PROP_PAGE.1 - (h + back).get()).max(least);
        let flap = Mm::new((h.get() * part).clamp(least, most).min(room));
        Self { front: Rect { x: tab, y: flap, w, h }, back, tab }
    }

    fn size(&self) -> Size {
        Size { w: self.front.w + self.tab * 2.0, h: self.front.bottom() + self.back }
    }

    /// The cut line, from the flap's left foot round.
    fn line(&self) -> Vec<(Mm, Mm)> {
        let (f, cut) = (self.front, Mm::new(TAPER).min(self.front.h * 0.2));
        let (left, right, bottom) = (f.x, f.right(), f.bottom() + self.back);
        let (outer, slim) = (self.size().w, Mm::new(1.0));
        vec![
            (left, f.y),
            (left + f.w * 0.14, Mm::ZERO),
            (right - f.w * 0.14, Mm::ZERO),
            (right, f.y),
            (outer, f.y + cut),
            (outer, f.bottom() - cut),
            (right, f.bottom()),
            (right - slim, bottom),
            (left + slim, bottom),
            (left, f.bottom()),
            (Mm::ZERO, f.bottom() - cut),
            (Mm::ZERO, f.y + cut),
        ]
    }
}

/// An envelope, flat: what is printed is its outside.
pub(super) fn envelope(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let cut = Cut::new(bench);
    let (f, size) = (cut.front, cut.size());
    let mut face = Face::new(size, shows(bench, &bench.spec.text));
    shaped(&mut face, &cut.line());
    let ground: Ground = bench.ground(&mut face, &["envelope"], f)?;
    let text = bench.rich(&bench.spec.text);
    let mut words = joined(ground.title, ground.body);
    if !bench.marks.is_empty() {
        let room = Rect { y: words.bottom() - words.h * MARKS, h: words.h * MARKS, ..words };
        words.h = words.h * (1.0 - MARKS);
        for (mark, rect) in bench.marks.iter().zip(row(room, bench.marks.len())) {
            face.art(bench.cx.symbol(mark)?, rect, format!("mark: {mark}"));
        }
    }
    if !text.is_empty() {
        face.text(bench.run(words, Role::Hand, text, 34.0));
    }
    // Folded down over the back, the flap stands on its head.
    let side = (f.y * 0.62).min(Mm::new(26.0));
    let seal = Rect { x: f.x + (f.w - side) / 2.0, y: f.y * 0.16, w: side, h: side };
    bench.seal(&mut face, seal, 180.0)?;
    let (inset, height) = (Mm::new(TAPER), f.h - Mm::new(TAPER * 2.0));
    let first = [
        "1. Fold both tabs back. 2. Put glue on the tabs.".to_owned(),
        "1. Fold back. 2. Put glue here.".to_owned(),
        "1. Fold. 2. Glue.".to_owned(),
        "Glue".to_owned(),
    ];
    let second = [
        "3. Fold the lower half up behind, onto both tabs.".to_owned(),
        "3. Fold the lower half up.".to_owned(),
        "3. Fold up.".to_owned(),
        "Glue".to_owned(),
    ];
    for (x, said) in [(Mm::ZERO, &first), (f.right(), &second)] {
        let rect = Rect { x: x + Mm::new(0.6), y: f.y + inset, w: cut.tab - Mm::new(1.2), h: height };
        bench.tab(&mut face, rect, said);
    }
    let across = |y: Mm| ((f.x, y), (f.right(), y));
    let down = |x: Mm| ((x, f.y), (x, f.bottom()));
    face.folds.extend([across(f.y), across(f.bottom()), down(f.x), down(f.right())]);
    let label = format!(
        "takes {}\u{a0}×\u{a0}{}\u{a0}mm; fold back on the dashed lines, glue the tabs, fill, fold the flap over",
        told(bench.size.w),
        told(bench.size.h)
    );
    Ok(vec![bench.piece("", &label, face)])
}
