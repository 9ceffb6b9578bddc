//! The signallers, and the two cards.

use std::sync::Arc;

use super::{CARD, KEY_CARD, View, after_sign, texts};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::draw::{Drawing, Pen};
use crate::mechanics::Dressing;
use crate::mechanics::codes::semaphore;
use crate::mechanics::signs::{self, KeyWords, RowWords};
use crate::units::{Mm, Size};

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let draw = |figure: &str, size: Size| -> Hinted<Arc<str>> { Ok(figure_drawn(figure, size, cx)) };
    let rule = texts::rule(view);
    let card = RowWords {
        part: CARD,
        title: cx.name("card-title", "Signals"),
        text: &view.text,
        rule: &rule,
        start: false,
        alt: "A row of figures that hold two flags each",
    };
    let key = KeyWords {
        part: KEY_CARD,
        title: cx.name("key-title", "What arms say"),
        rule: if view.say_front { "Seen from the front." } else { "" },
        square: false,
        alt: "A table that gives a letter or digit for each pair of arms",
    };
    let mut listed = view.key.clone();
    if after_sign(&view.figures).0 {
        listed.push(signs::Entry { symbol: '#', sign: semaphore::NUMERALS.to_owned() });
    }
    Ok(vec![signs::row_card(cx, &card, &view.figures, &draw)?, signs::chart(cx, &key, &listed, &draw)?])
}

/// A point so far from the shoulders, at so many degrees clockwise from straight down as the viewer sees it.
fn at(middle: (Mm, Mm), degrees: f64, far: Mm) -> (Mm, Mm) {
    let (sin, cos) = degrees.to_radians().sin_cos();
    (middle.0 - far * sin, middle.1 + far * cos)
}

/// A figure on its feet with two flags. Trunk and head are lighter than the arms, so that an arm that points down or
/// up still shows.
fn figure_drawn(figure: &str, size: Size, cx: &Dressing<'_>) -> Arc<str> {
    let mut drawing = Drawing::new(size);
    let side = size.w.min(size.h);
    let unit = side / 20.0;
    let middle = (size.w / 2.0, size.h / 2.0 - unit * 1.0);
    let (ink, soft) = (cx.colour("ink"), cx.colour("soft"));
    let body = Pen::fill(cx.colour("line"));
    drawing.circle(middle.0, middle.1 - unit * 3.0, unit * 1.7, body);
    let trunk = [(-1.6, -1.1), (1.6, -1.1), (2.2, 5.4), (-2.2, 5.4)];
    let points: Vec<(Mm, Mm)> = trunk.iter().map(|(x, y)| (middle.0 + unit * *x, middle.1 + unit * *y)).collect();
    drawing.polygon(&points, body);
    for x in [-1.0, 1.0] {
        let foot = (middle.0 + unit * x, middle.1 + unit * 10.0);
        drawing.line((foot.0, middle.1 + unit * 5.0), foot, Pen::line(cx.colour("line"), unit * 1.1));
    }
    let Some((a, b)) = semaphore::angles(figure) else { return drawing.svg() };
    for degrees in [f64::from(a), f64::from(b)] {
        let hand = at(middle, degrees, unit * 5.0);
        let tip = at(middle, degrees, unit * 9.4);
        drawing.line(middle, tip, Pen::line(ink, unit * 0.9));
        // The flag hangs on the outer half of its stick, on the side further round.
        let across = unit * 3.0;
        let turned = degrees + 90.0;
        let (hand_out, tip_out) = (at(hand, turned, across), at(tip, turned, across));
        let outline = Pen { fill: Some(soft), stroke: Some((ink, unit * 0.4)), dash: None };
        drawing.polygon(&[hand, tip, tip_out, hand_out], outline);
        drawing.polygon(&[hand, tip, tip_out], Pen::fill(ink));
    }
    drawing.svg()
}
