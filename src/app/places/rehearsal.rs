//! The rehearsed evenings: the chance, the spread, where groups wait; and the plays that correct them.

mod log;
mod puzzles;
mod spread;

use eframe::egui::{Grid, RichText, ScrollArea, Ui};

pub use log::PlayDraft;

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::switches::level_ui;
use crate::app::widgets::{Mark, UiExt as _};
use crate::diag::Level;
use crate::rehearse::{Opens, Rehearsal, compared, minutes, outline, percent};
use crate::script::capital;

/// Widest column of a table: longer titles take a second line.
const TITLE: f32 = 230.0;
/// Least width at which the levels stand side by side.
const ABREAST: f32 = 440.0;

/// Chances below and above which a level is told of, as the checks do.
const FAIR: std::ops::RangeInclusive<f64> = 0.6..=0.98;

/// What simulated groups make of the kit.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Rehearsal");
    ui.lede(
        "Simulated groups play the kit, of the sizes that it is for. All of it is estimates: yours, or a mechanic's usual minutes, \
         until plays have corrected them.",
    );
    if !cx.derived.proven() {
        ui.chip(Mark::Waiting, "being rehearsed");
        return;
    }
    chances_ui(ui, cx);
    ui.add_space(10.0);
    level_ui(ui, cx);
    let Some(rehearsal) = cx.derived.rehearsal(cx.session.level) else {
        ui.add_space(10.0);
        ui.quiet("At this level the end cannot be reached, so there is nothing to rehearse.");
        if ui.link("See the findings").clicked() {
            cx.send(Command::Select(Selection::Findings));
        }
        return;
    };
    ui.section("How long the evenings are");
    spread::ui(ui, cx, rehearsal);
    if let Some(line) = compared(cx.kit, cx.session.level, rehearsal) {
        ui.label(line);
    }
    sizes_ui(ui, rehearsal);
    ui.section("Where groups wait");
    for line in outline(cx.kit, rehearsal).iter().skip(2) {
        ui.label(cx.say(line));
    }
    ui.section("Puzzle by puzzle");
    puzzles::ui(ui, cx, rehearsal);
    ui.section("Tokens");
    puzzles::tokens_ui(ui, cx, rehearsal);
    ui.section("By the clock");
    past_ui(ui, cx, rehearsal);
    ui.add_space(10.0);
    if ui.link("Write a play down").on_hover_text("Real evenings correct the estimates").clicked() {
        cx.send(Command::Select(Selection::Plays));
    }
}

/// The plays that were written down, and one more.
pub fn plays_ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    log::ui(ui, cx, &mut locals.play);
}

/// The chance at each level, side by side where there is room.
fn chances_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    if ui.available_width() < ABREAST {
        for level in Level::ALL {
            chance_ui(ui, cx, level);
        }
        return;
    }
    ui.columns(Level::ALL.len(), |columns| {
        for (ui, level) in columns.iter_mut().zip(Level::ALL) {
            chance_ui(ui, cx, level);
        }
    });
}

fn chance_ui(ui: &mut Ui, cx: &Ctx<'_>, level: Level) {
    ui.group_card(|ui| {
        ui.strong_small(&capital(level.word()));
        let Some(rehearsal) = cx.derived.rehearsal(level) else {
            ui.quiet("no end in reach");
            return;
        };
        ui.label(RichText::new(percent(rehearsal.chance)).size(24.0).color(cx.tokens.ink));
        ui.quiet(&format!("done within {:.0} min", rehearsal.stated));
        let (mark, words) = match rehearsal.chance {
            low if low < *FAIR.start() => (Mark::Warns, "a long evening"),
            high if high > *FAIR.end() => (Mark::Notes, "a short evening"),
            _ => (Mark::Good, "fits"),
        };
        ui.chip(mark, words);
    });
}

/// A table under its heads, moved sideways where the window is too narrow for it.
fn table_ui(ui: &mut Ui, name: &str, heads: &[&str], rows: impl FnOnce(&mut Ui)) {
    let width = ui.available_width();
    ScrollArea::horizontal().id_salt((name, "sideways")).show(ui, |ui| {
        let title = (width * 0.38).clamp(110.0, TITLE);
        let grid = Grid::new(name).num_columns(heads.len()).max_col_width(title).min_col_width(24.0);
        grid.spacing([if width < ABREAST { 10.0 } else { 22.0 }, 4.0]).striped(true).show(ui, |ui| {
            for head in heads {
                ui.strong_small(head);
            }
            ui.end_row();
            rows(ui);
        });
    });
}

/// The same by the number of guests.
fn sizes_ui(ui: &mut Ui, rehearsal: &Rehearsal) {
    if rehearsal.sizes.len() < 2 {
        return;
    }
    ui.add_space(6.0);
    table_ui(ui, "rehearsal by guests", &["Guests", "Done in time", "Half are done after"], |ui| {
        for size in &rehearsal.sizes {
            ui.label(size.guests.to_string());
            ui.label(percent(size.chance));
            ui.label(format!("{} min", minutes(size.median)));
            ui.end_row();
        }
    });
}

/// By which minute what is open.
fn past_ui(ui: &mut Ui, cx: &Ctx<'_>, rehearsal: &Rehearsal) {
    ui.quiet("By which minute half of the groups, and nine in ten, have a lock or a box open. The host guide has this table.");
    table_ui(ui, "rehearsal by the clock", &["Half by", "Nine in ten by", "Open by then"], |ui| {
        for past in rehearsal.past.iter().take(puzzles::ROWS) {
            ui.label(format!("{:.0} min", past.half));
            ui.label(past.slow.map_or_else(|| "–".to_owned(), |slow| format!("{slow:.0} min")));
            let (name, to) = match &past.opens {
                Opens::Lock(id) => (cx.kit.lock(id).map(|lock| &lock.name), Selection::Lock(id.clone())),
                Opens::Box(id) => (cx.kit.box_def(id).map(|item| &item.name), Selection::Box(id.clone())),
            };
            // What was removed since is gone in the next proof.
            let name = name.map_or_else(String::new, |name| capital(&cx.say(name)));
            if ui.link(name).clicked() {
                cx.send(Command::Select(to));
            }
            ui.end_row();
        }
    });
}
