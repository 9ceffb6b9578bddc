use eframe::egui::{Rect, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use super::table_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::places::puzzle_title;
use crate::app::session::Selection;
use crate::app::widgets::UiExt as _;
use crate::rehearse::{OfPuzzle, Rehearsal, minutes, percent};

/// Rows of a table of what was rehearsed: those for which the end waits longest; more are not looked at.
pub(super) const ROWS: usize = 80;

/// A bar for each puzzle: nine in ten, half, one in ten; below it what it does to the evening.
pub(super) fn ui(ui: &mut Ui, cx: &Ctx<'_>, rehearsal: &Rehearsal) {
    ui.quiet(
        "The bar goes from the quickest tenth of the groups to the slowest, with a tick at half of them. The end waits for a \
         puzzle when nothing else could have been done sooner.",
    );
    let mut shown: Vec<&OfPuzzle> = rehearsal.puzzles.iter().collect();
    let left_out = shown.len().saturating_sub(ROWS);
    if left_out > 0 {
        shown.sort_by(|a, b| b.holds.total_cmp(&a.holds));
        shown.truncate(ROWS);
    }
    let longest = shown.iter().map(|puzzle| puzzle.minutes.slow).fold(1.0, f64::max);
    let worst = shown.iter().map(|puzzle| puzzle.holds).fold(0.0, f64::max);
    for puzzle in shown {
        ui.add_space(6.0);
        row_ui(ui, cx, puzzle, longest, puzzle.holds > 0.0 && puzzle.holds >= worst);
    }
    if left_out > 0 {
        ui.quiet(&format!("{left_out} more, for which the end waits less, are left out."));
    }
}

fn row_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &OfPuzzle, longest: f64, worst: bool) {
    let spread = puzzle.minutes;
    let title = puzzle_title(cx, &puzzle.puzzle);
    ui.horizontal(|ui| {
        if ui.link(title.as_str()).clicked() {
            cx.send(Command::Select(Selection::Puzzle(puzzle.puzzle.clone())));
        }
        if worst {
            ui.chip(crate::app::widgets::Mark::Notes, "holds groups up most");
        }
    });
    let told = format!("{} min; {} to {}", minutes(spread.median), minutes(spread.quick), minutes(spread.slow));
    ui.horizontal(|ui| {
        let width = (ui.available_width() - 150.0).max(80.0);
        bar_ui(ui, cx, (width, longest), puzzle, &format!("{title}: {told}"));
        ui.label(told);
    });
    ui.quiet(&format!(
        "The end waits for it in {} of the evenings, {} min on the average. Minutes from {}.",
        percent(puzzle.critical),
        minutes(puzzle.holds),
        puzzle.estimate.source.words()
    ));
}

fn bar_ui(ui: &mut Ui, cx: &Ctx<'_>, (width, longest): (f32, f64), puzzle: &OfPuzzle, name: &str) {
    let t = cx.tokens;
    let (rect, response) = ui.allocate_exact_size(vec2(width, 18.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, name));
    let x = |minutes: f64| rect.left() + rect.width() * (minutes / longest) as f32;
    let spread = puzzle.minutes;
    let painter = ui.painter();
    painter.hline(rect.x_range(), rect.center().y, Stroke::new(1.0, t.line));
    let body = Rect::from_min_max(pos2(x(spread.quick), rect.top() + 3.0), pos2(x(spread.slow), rect.bottom() - 3.0));
    painter.rect_filled(body, 3, t.accent_soft);
    painter.rect_stroke(body, 3, Stroke::new(1.5, t.accent), eframe::egui::StrokeKind::Inside);
    painter.vline(x(spread.median), rect.y_range(), Stroke::new(3.0, t.accent));
}

/// The tokens of each puzzle, step by step.
pub(super) fn tokens_ui(ui: &mut Ui, cx: &Ctx<'_>, rehearsal: &Rehearsal) {
    ui.quiet("How many of each go in an evening, on the average; and how often the host sits down with the guests.");
    table_ui(ui, "tokens in an evening", &["Puzzle", "Nudge", "Method", "Giveaway", "Host"], |ui| {
        for puzzle in rehearsal.puzzles.iter().take(ROWS) {
            ui.label(puzzle_title(cx, &puzzle.puzzle));
            for tokens in puzzle.tokens {
                ui.label(if tokens < 0.005 { "–".to_owned() } else { format!("{tokens:.2}") });
            }
            ui.end_row();
        }
    });
}
