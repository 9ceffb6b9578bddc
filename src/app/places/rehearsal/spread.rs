use eframe::egui::{Align2, FontId, Rect, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use crate::app::ctx::Ctx;
use crate::app::widgets::UiExt as _;
use crate::rehearse::{Bar, Rehearsal, minutes, percent};

/// Height of the drawn bars, and of the scale below them.
const HEIGHT: (f32, f32) = (120.0, 24.0);
/// Least width of one label of the scale.
const LABEL: f32 = 34.0;

/// The spread of the evenings, drawn and in words.
pub(super) fn ui(ui: &mut Ui, cx: &Ctx<'_>, rehearsal: &Rehearsal) {
    let t = cx.tokens;
    let words = format!(
        "Half of the groups are done after {} minutes, one in ten after {}, nine in ten after {}.",
        minutes(rehearsal.end.median),
        minutes(rehearsal.end.quick),
        minutes(rehearsal.end.slow)
    );
    ui.label(&words);
    ui.quiet(&format!(
        "{} simulated evenings; {} of them end within {:.0} minutes, give or take {:.0} points.",
        rehearsal.runs,
        percent(rehearsal.chance),
        rehearsal.stated,
        (rehearsal.error * 200.0).ceil()
    ));
    let (Some(first), Some(last)) = (rehearsal.bars.first(), rehearsal.bars.last()) else { return };
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT.0 + HEIGHT.1), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, format!("The evenings by their minutes. {words}")));
    // Room at the right for the stated time, where all evenings end before it.
    let (from, to) = (first.from, last.to.max(rehearsal.stated.min(last.to * 2.0)));
    let x = |minute: f64| rect.left() + rect.width() * ((minute - from) / (to - from).max(f64::MIN_POSITIVE)) as f32;
    let floor = rect.top() + HEIGHT.0;
    let most = rehearsal.bars.iter().map(|bar| bar.evenings).max().unwrap_or(1).max(1) as f32;
    let painter = ui.painter();
    for bar in &rehearsal.bars {
        let top = floor - (HEIGHT.0 - 16.0) * bar.evenings as f32 / most;
        let body = Rect::from_min_max(pos2(x(bar.from) + 1.0, top), pos2(x(bar.to) - 1.0, floor));
        let late = bar.from >= rehearsal.stated;
        // What is late has its own tone and an edge: colour is never alone.
        if late {
            painter.rect_filled(body, 2, t.warns_soft);
            painter.rect_stroke(body, 2, Stroke::new(1.5, t.warns), eframe::egui::StrokeKind::Inside);
        } else {
            painter.rect_filled(body, 2, t.accent);
        }
    }
    painter.hline(rect.x_range(), floor, Stroke::new(1.0, t.edge));
    let font = FontId::proportional(12.5);
    let mut free = f32::NEG_INFINITY;
    for bar in rehearsal.bars.iter().chain([&Bar { from: last.to, ..*last }]) {
        let at = x(bar.from);
        if at < free || at > rect.right() - 4.0 {
            continue;
        }
        let side = if at < rect.left() + 8.0 { Align2::LEFT_TOP } else { Align2::CENTER_TOP };
        painter.text(pos2(at, floor + 4.0), side, format!("{:.0}", bar.from), font.clone(), t.quiet);
        free = at + LABEL;
    }
    if (from..=to).contains(&rehearsal.stated) {
        let at = x(rehearsal.stated).min(rect.right() - 1.0);
        painter.vline(at, rect.top()..=floor, Stroke::new(2.0, t.ink));
        let text = format!("stated: {:.0} min", rehearsal.stated);
        let (place, side) = if at > rect.center().x {
            (pos2(at - 6.0, rect.top()), Align2::RIGHT_TOP)
        } else {
            (pos2(at + 6.0, rect.top()), Align2::LEFT_TOP)
        };
        painter.text(place, side, text, font, t.ink);
    }
    let under =
        response.hover_pos().and_then(|at| rehearsal.bars.iter().find(|bar| (x(bar.from)..x(bar.to)).contains(&at.x)));
    if let Some(bar) = under {
        let share = percent(bar.evenings as f64 / rehearsal.runs.max(1) as f64);
        response.on_hover_text(format!("{:.0} to {:.0} min: {} evenings, {share}", bar.from, bar.to, bar.evenings));
    }
}
