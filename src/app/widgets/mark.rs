use eframe::egui::{Color32, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, pos2, vec2};

use crate::app::tokens::Tokens;
use crate::app::widgets::UiExt as _;
use crate::diag::Severity;
use crate::readings::Verdict;

/// A small drawn mark; each has a shape of its own, so that colour is never alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A filled square with a bar: stops an export.
    Blocks,
    /// A triangle.
    Warns,
    /// A ring.
    Notes,
    /// A tick.
    Good,
    /// A dotted ring: still being looked at.
    Waiting,
}

impl Mark {
    /// The mark of a severity.
    #[must_use]
    pub const fn severity(severity: Severity) -> Self {
        match severity {
            Severity::Blocks => Self::Blocks,
            Severity::Warns => Self::Warns,
            Severity::Notes => Self::Notes,
        }
    }

    /// The mark of a verdict.
    #[must_use]
    pub const fn verdict(verdict: Option<Verdict>) -> Self {
        match verdict {
            Some(Verdict::One) => Self::Good,
            Some(Verdict::Unproven) => Self::Warns,
            Some(Verdict::Several | Verdict::Other | Verdict::None) | None => Self::Blocks,
        }
    }

    /// Text tone and ground.
    #[must_use]
    pub const fn colours(self, t: &Tokens) -> (Color32, Color32) {
        match self {
            Self::Blocks => (t.blocks, t.blocks_soft),
            Self::Warns => (t.warns, t.warns_soft),
            Self::Notes => (t.notes, t.notes_soft),
            Self::Good => (t.good, t.good_soft),
            Self::Waiting => (t.quiet, t.hover),
        }
    }
}

/// Draws a mark, `size` points across.
pub fn mark_ui(ui: &mut Ui, mark: Mark, size: f32) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(size, size), Sense::hover());
    paint_mark(ui, rect, mark);
    response
}

/// Draws a mark where it takes no room.
pub fn paint_mark(ui: &Ui, rect: Rect, mark: Mark) {
    let (tone, ground) = mark.colours(ui.tokens());
    let at = |x: f32, y: f32| -> Pos2 { pos2(rect.left() + x * rect.width(), rect.top() + y * rect.height()) };
    let pen = Stroke::new(rect.width() * 0.14, tone);
    let painter = ui.painter();
    match mark {
        Mark::Blocks => {
            painter.rect_filled(rect.shrink(rect.width() * 0.04), rect.width() * 0.18, tone);
            painter.line_segment([at(0.25, 0.5), at(0.75, 0.5)], Stroke::new(rect.width() * 0.16, ground));
        }
        Mark::Warns => {
            let points = vec![at(0.5, 0.06), at(0.98, 0.92), at(0.02, 0.92)];
            painter.add(Shape::convex_polygon(points, tone, Stroke::NONE));
            painter.line_segment([at(0.5, 0.38), at(0.5, 0.66)], Stroke::new(rect.width() * 0.13, ground));
            painter.circle_filled(at(0.5, 0.79), rect.width() * 0.07, ground);
        }
        Mark::Notes => {
            painter.circle_stroke(rect.center(), rect.width() * 0.4, pen);
            painter.circle_filled(rect.center(), rect.width() * 0.12, tone);
        }
        Mark::Good => {
            painter.line(vec![at(0.1, 0.55), at(0.4, 0.85), at(0.92, 0.16)], Stroke::new(rect.width() * 0.17, tone));
        }
        Mark::Waiting => {
            for step in 0..6_u8 {
                let turn = f32::from(step) * std::f32::consts::TAU / 6.0;
                let dot = rect.center() + vec2(turn.cos(), turn.sin()) * rect.width() * 0.4;
                painter.circle_filled(dot, rect.width() * 0.08, tone);
            }
        }
    }
}
