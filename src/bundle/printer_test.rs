//! A sheet and its back, to see how far a printer's two sides are apart.

use std::sync::Arc;

use crate::diag::Anchor;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Audience, Face, Role, Stock, TextRun, Valign};
use crate::script::Rich;
use crate::sheet::{Duplex, Paper, Placed, Sheet};
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// Length of a scale from its middle, in millimetres: no home printer is off by more.
const REACH: u8 = 10;

/// The two pages: a cross with scales, and behind it a cross that ought to lie on it. The setting for the shift is in
/// force, so that the test shows what is still amiss.
pub(super) fn sheets(paper: Paper, duplex: &Duplex, title: &str, large: bool) -> [Sheet; 2] {
    let (safe, size) = (paper.safe(), paper.page_size(large));
    let rect = Rect { y: safe.bottom() - size.h, h: size.h, ..safe };
    let front = placed(front(size, large), rect, false, false);
    let back = placed(back(size, large), duplex.behind(paper.size(), rect), true, !duplex.upright(paper.size()));
    let heading = format!("{title} · printer test, for the host");
    // The back is turned with the paper, and its words may stand where a head would.
    let back = Sheet { stock: None, ..sheet(paper, back, String::new(), large) };
    [sheet(paper, front, heading, large), back]
}

fn sheet(paper: Paper, placed: Placed, heading: String, large: bool) -> Sheet {
    Sheet {
        paper,
        audience: Audience::Host,
        heading,
        placed: vec![placed],
        folds: Vec::new(),
        check_bar: None,
        large,
        stock: Some(Stock::Plain),
    }
}

fn placed(face: Face, rect: Rect, back: bool, over: bool) -> Placed {
    Placed {
        piece: "printer-test".into(),
        face,
        rect,
        turned: false,
        back,
        over,
        label: String::new(),
        label_rect: Rect::default(),
        cut: false,
    }
}

fn words(face: &mut Face, rect: Rect, most: f64, valign: Valign, text: &str) {
    let run = TextRun::new(rect, Role::Text, Rich::plain(text), Pt::new(most), Colour::BLACK, Anchor::Kit);
    face.text(run.aligned(Align::Centre, valign));
}

fn front(size: Size, large: bool) -> Face {
    let (text, number) = if large { (16.0, 16.0) } else { (13.0, 9.0) };
    let mut face = Face::new(size, "A cross with scales of millimetres to the right, left, top and bottom");
    let (x, y) = (size.w / 2.0, size.h / 2.0);
    face.art(scales(size), Rect::of(size), "");
    let wide = Rect { x: Mm::ZERO, y: Mm::ZERO, w: size.w, h: size.h };
    let upper = Rect { h: y - Mm::new(30.0), ..wide };
    words(
        &mut face,
        upper.inset(Mm::new(12.0)),
        text,
        Valign::Middle,
        "Front. Print this sheet and the next as one, on both sides, at 100 %. Hold the paper against a lamp with \
         this side towards you, and read off on the scales where the middle of the cross on the back lies.",
    );
    let lower = Rect { y: y + Mm::new(30.0), h: size.h - y - Mm::new(30.0), ..wide };
    words(
        &mut face,
        lower.inset(Mm::new(12.0)),
        text,
        Valign::Middle,
        "Right and down count as they are, left and up with a minus before them. Write both numbers into the field \
         for the printer’s shift (in the window: Print, Bundle; on the command line: the option shift), add them \
         to what stands there, and print again: the crosses now meet. Up to 5 mm do not matter for tokens.",
    );
    for step in [-10.0_f64, 10.0] {
        let sign = if step < 0.0 { "\u{2212}" } else { "" };
        let text = format!("{sign}{}", step.abs());
        let grown = number / 9.0;
        let at = |cx: Mm, cy: Mm| Rect {
            x: cx - Mm::new(3.0) * grown,
            y: cy - Mm::new(2.0) * grown,
            w: Mm::new(6.0) * grown,
            h: Mm::new(4.0) * grown,
        };
        words(&mut face, at(x + Mm::new(step), y - Mm::new(3.5) - Mm::new(2.0) * grown), number, Valign::Middle, &text);
        words(&mut face, at(x - Mm::new(3.5) - Mm::new(3.0) * grown, y + Mm::new(step)), number, Valign::Middle, &text);
    }
    face
}

/// Two scales with a tick for each millimetre, a longer one for each five.
fn scales(size: Size) -> Arc<str> {
    let mut drawing = Drawing::new(size);
    let (x, y) = (size.w / 2.0, size.h / 2.0);
    let pen = Pen::line(Colour::BLACK, Mm::new(0.15));
    let reach = Mm::new(f64::from(REACH));
    drawing.line((x - reach, y), (x + reach, y), pen);
    drawing.line((x, y - reach), (x, y + reach), pen);
    for step in 1..=REACH {
        let long = Mm::new(if step % 5 == 0 { 3.0 } else { 1.5 });
        for sign in [-1.0, 1.0] {
            let off = Mm::new(f64::from(step) * sign);
            drawing.line((x + off, y - long), (x + off, y), pen);
            drawing.line((x - long, y + off), (x, y + off), pen);
        }
    }
    drawing.svg()
}

fn back(size: Size, large: bool) -> Face {
    let mut face = Face::new(size, "A cross in a circle");
    let mut drawing = Drawing::new(size);
    let (x, y) = (size.w / 2.0, size.h / 2.0);
    let pen = Pen::line(Colour::BLACK, Mm::new(0.4));
    let arm = Mm::new(14.0);
    drawing.line((x - arm, y), (x + arm, y), pen);
    drawing.line((x, y - arm), (x, y + arm), pen);
    drawing.circle(x, y, Mm::new(3.0), pen);
    face.art(drawing.svg(), Rect::of(size), "");
    let room = Rect { x: Mm::ZERO, y: Mm::new(20.0), w: size.w, h: Mm::new(20.0) };
    words(&mut face, room, if large { 16.0 } else { 13.0 }, Valign::Middle, "Back of the sheet before");
    face
}
