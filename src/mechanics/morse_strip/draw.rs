//! The strip and its key card.

use std::sync::Arc;

use super::{KEY_CARD, Look, STRIP, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::Dressing;
use crate::mechanics::codes::morse::{self, DASH, DOT, Run, WITHIN};
use crate::mechanics::signs::{self, KeyWords};
use crate::units::{Mm, Rect, Size};

/// Least length of a unit: shorter, a short sign is hard to tell from a long one (common practice, no source).
const LEAST_UNIT: Mm = Mm::new(1.2);
/// Greatest length of a unit.
const MOST_UNIT: Mm = Mm::new(3.0);
/// Room for the start mark and a gap after it.
const START: Mm = Mm::new(9.0);

/// The strip, on the frame `sign`.
pub(super) fn strip(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("sign")?;
    let slot = cx.slot(&frame, "sign", "letters")?;
    let mut face = Face::on(&frame, "A strip of short and long signs with gaps between them");
    cx.title(&mut face, &frame, "sign", cx.name("strip-title", ""))?;
    let room = if view.start_mark { START } else { mm(0.0) };
    let units = f64::from(morse::length(&view.runs).max(1));
    let unit = ((slot.w - room) / units).min(MOST_UNIT);
    if unit < LEAST_UNIT {
        return Err(Trouble::new("the signs on the strip would be too small to tell apart")
            .hint("take a shorter answer, or draw a wider `slot-letters` into the theme's frame `sign`"));
    }
    let width = unit * units;
    let left = slot.x + (slot.w - room - width) / 2.0;
    if view.start_mark {
        let side = mm(6.0);
        let at = Rect { x: left, y: slot.y + (slot.h - side) / 2.0, w: side, h: side };
        face.art(signs::start_mark(cx), at, "start mark");
    }
    let at = Rect { x: left + room, w: width, ..slot };
    face.art(drawn(&view.runs, view.look, Size { w: at.w, h: at.h }, unit, cx), at, "");
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(STRIP, "", face))
}

pub(super) fn key_card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let longest = view.key.iter().map(|entry| morse::length(&runs(&entry.sign))).max().unwrap_or(1);
    let draw = |sign: &str, size: Size| -> Hinted<Arc<str>> {
        let unit = (size.w / f64::from(longest.max(1))).min(mm(1.6));
        Ok(drawn(&runs(sign), view.look, size, unit, cx))
    };
    let words = KeyWords {
        part: KEY_CARD,
        title: cx.name("key-title", "Short and long"),
        rule: if view.start_mark { texts::RULE } else { texts::NO_MARK },
        square: false,
        alt: "A table that gives a letter or digit for each group of short and long signs",
    };
    signs::key_card(cx, &words, &view.key, &draw)
}

/// Ink and gaps of one group.
fn runs(sign: &str) -> Vec<Run> {
    let mut runs = Vec::new();
    for element in sign.chars() {
        if !runs.is_empty() {
            runs.push(Run { ink: false, units: WITHIN });
        }
        runs.push(Run { ink: true, units: if element == '-' { DASH } else { DOT } });
    }
    runs
}

/// Runs from the left edge, in the middle of the height.
fn drawn(runs: &[Run], look: Look, size: Size, unit: Mm, cx: &Dressing<'_>) -> Arc<str> {
    let mut drawing = Drawing::new(size);
    let ink = cx.colour("ink");
    let middle = size.h / 2.0;
    let height = match look {
        Look::Lamps | Look::Beads => unit,
        Look::Bars => (unit * 4.0).min(size.h * 0.6),
    };
    if look == Look::Beads {
        let end = unit * f64::from(morse::length(runs));
        drawing.line((mm(0.0), middle), (end, middle), Pen::line(cx.colour("line"), mm(0.3)));
    }
    let mut x = mm(0.0);
    for run in runs {
        let w = unit * f64::from(run.units);
        if run.ink {
            let rect = Rect { x, y: middle - height / 2.0, w, h: height };
            let radius = if look == Look::Bars { mm(0.0) } else { height / 2.0 };
            drawing.rect(rect, radius, Pen::fill(ink));
        }
        x += w;
    }
    drawing.svg()
}
