//! Tabs that are glued, and the marks by which two pages are joined: what is said on a tab is hidden once it is glued.

use super::Bench;
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Role};
use crate::script::Rich;
use crate::theme::Colour;
use crate::units::{Mm, Rect, Size};

/// Width of a character and height of a line at 9 pt, generously, to choose words that fit.
const SAID: (f64, f64) = (1.95, 4.4);
/// Size in points of what is said on a tab.
const SAID_PT: f64 = 9.0;
/// Half the height of a joining mark, and its distance from the edge.
const MARK: (f64, f64) = (1.8, 6.5);

impl Bench<'_> {
    /// Draws a tab: hatched, with the longest of these sayings that fits, along its longer side.
    pub(super) fn tab(&self, face: &mut Face, rect: Rect, sayings: &[String]) {
        let size = Size { w: rect.w, h: rect.h };
        let mut drawing = Drawing::new(size);
        drawing.hatch(Rect::of(size), self.cx.colour("soft"));
        face.art(drawing.svg(), rect, String::new());
        let upright = rect.h > rect.w;
        let (long, short) = if upright { (rect.h, rect.w) } else { (rect.w, rect.h) };
        let room = Size { w: long - Mm::new(2.0), h: short - Mm::new(0.8) };
        if let Some(saying) = sayings.iter().find(|saying| holds(room, saying)) {
            let place =
                Rect { x: rect.x + (rect.w - room.w) / 2.0, y: rect.y + (rect.h - room.h) / 2.0, w: room.w, h: room.h };
            let run = self.run(place, Role::Code, Rich::plain(saying.clone()), SAID_PT);
            face.text(run.turned(if upright { 270.0 } else { 0.0 }).spare());
        }
    }

    /// The marks of a join at `x`: halves of two diamonds, which are whole when the pages lie right. The half lies left
    /// of `x` or right of it.
    pub(super) fn join_marks(&self, face: &mut Face, x: Mm, height: Mm, left: bool) {
        let (half, from_edge) = (Mm::new(MARK.0), Mm::new(MARK.1).min(height * 0.3));
        let tip = if left { x - half } else { x + half };
        let mut drawing = Drawing::new(face.size);
        for y in [from_edge, height - from_edge] {
            drawing.polygon(&[(x, y - half), (tip, y), (x, y + half)], Pen::fill(self.cx.colour("line")));
        }
        face.art(drawing.svg(), Rect::of(face.size), String::new());
    }

    /// The line up to which the next page is laid over a tab.
    pub(super) fn lay_line(&self, face: &mut Face, x: Mm, height: Mm) {
        let mut drawing = Drawing::new(face.size);
        drawing.line((x, Mm::ZERO), (x, height), Pen::line(self.cx.colour("line"), Mm::new(0.2)));
        face.art(drawing.svg(), Rect::of(face.size), String::new());
    }

    /// Draws a hole to be punched about this middle.
    pub(super) fn hole(&self, face: &mut Face, x: Mm, y: Mm, diameter: f64) {
        hole(face, self.cx.colour("line"), (x, y), diameter);
    }
}

/// Draws a hole to be punched about this middle: its true size, with a cross where the punch goes.
pub(in crate::party) fn hole(face: &mut Face, colour: Colour, (x, y): (Mm, Mm), diameter: f64) {
    let mut drawing = Drawing::new(face.size);
    let line = Pen::line(colour, Mm::new(0.2));
    drawing.circle(x, y, Mm::new(diameter / 2.0), line);
    let arm = Mm::new(diameter * 0.22);
    drawing.line((x - arm, y), (x + arm, y), line);
    drawing.line((x, y - arm), (x, y + arm), line);
    face.art(drawing.svg(), Rect::of(face.size), format!("a hole of {diameter} mm"));
}

/// Whether a saying fits at its size, by a generous count of its lines.
fn holds(room: Size, saying: &str) -> bool {
    let (across, down) = SAID;
    let per_line = (room.w.get() / across).floor();
    if saying.split_whitespace().any(|word| super::ratio(word.chars().count()) > per_line) {
        return false;
    }
    let lines = (room.h.get() / down).floor();
    let count = super::ratio(saying.chars().count());
    // A line that is broken between words is on average four characters short.
    if count <= per_line { lines >= 1.0 } else { per_line > 8.0 && (count / (per_line - 4.0)).ceil() <= lines }
}
