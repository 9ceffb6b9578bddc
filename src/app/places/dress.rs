mod dressings;
mod leftovers;
mod lettering;
mod palette;
mod pictures;
mod theme;
mod words;

use eframe::egui::{Button, Ui};

pub use pictures::Thumbs;

use crate::app::ctx::Ctx;
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::widgets::UiExt as _;
use crate::kit::Look;
use crate::kit::edit::Edit;

/// The look and the words.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    match cx.session.selection(cx.kit) {
        Selection::Theme => ui.column("theme", |ui| theme::ui(ui, cx, locals)),
        Selection::Leftovers => ui.column("leftovers", |ui| leftovers::ui(ui, cx, locals)),
        Selection::Lettering => ui.column("lettering", |ui| lettering::ui(ui, cx, locals)),
        Selection::Pictures => ui.column("pictures", |ui| pictures::ui(ui, cx, locals)),
        Selection::Words => ui.column("words", |ui| words::ui(ui, cx, locals)),
        Selection::Dressings => ui.column("dressings", |ui| dressings::ui(ui, cx)),
        _ => ui.column("palette", |ui| palette::ui(ui, cx, locals)),
    }
}

/// The kit's look after a change.
fn look(cx: &Ctx<'_>, change: impl FnOnce(&mut Look)) -> Edit {
    let mut look = cx.kit.look.clone();
    change(&mut look);
    Edit::Look(Box::new(look))
}

/// Whether changes go into the theme rather than into this kit alone; asked where the theme is one of the kit's own.
fn holds_ui(ui: &mut Ui, cx: &Ctx<'_>, kit_only: &mut bool) -> bool {
    if !cx.doc.own_theme() {
        ui.quiet("A change here holds for this kit only; the theme keeps its own.");
        ui.add_space(6.0);
        return false;
    }
    ui.horizontal(|ui| {
        ui.quiet("Changes go into");
        for (only, words) in [(false, "the theme"), (true, "this kit only")] {
            if ui.add(Button::selectable(*kit_only == only, words)).clicked() {
                *kit_only = only;
            }
        }
    });
    ui.add_space(6.0);
    !*kit_only
}

/// What is said where only a theme of the kit's own can be changed.
fn begin_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let name = &cx.doc.theme.theme.name;
    ui.horizontal_wrapped(|ui| {
        ui.quiet(&format!("{name} is not a theme of this kit's own, so it stays as it is."));
        if ui.lesser(true, "Begin one of your own", "").clicked() {
            cx.send(crate::app::ctx::Command::Select(Selection::Theme));
        }
    });
    ui.add_space(6.0);
}
