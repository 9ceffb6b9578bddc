//! Build: puzzles, locks, boxes, spots, props, and how the party ends.

mod drawn;
mod faults;
mod form;
pub mod fresh;
mod gallery;
mod lock;
mod names;
mod preparing;
mod printed;
mod puzzle;
mod setup;
mod thing;

use eframe::egui::Ui;

pub use drawn::{Drawn, facts_ui, never_ui};
pub use gallery::Sought;
pub use preparing::own_steps_ui;
pub use setup::SetupDraft;

use crate::app::ctx::Ctx;
use crate::app::desk::Desk;
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::widgets::UiExt as _;

/// The fields of what is in hand.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals, desk: &mut Desk) {
    match cx.session.selection(cx.kit) {
        Selection::Gallery(id) => ui.column("gallery", |ui| gallery::ui(ui, cx, &id, &mut locals.gallery, desk)),
        Selection::Puzzle(id) => ui.column("puzzle", |ui| puzzle::ui(ui, cx, &id, &mut locals.setup)),
        Selection::Lock(id) => ui.column("lock", |ui| lock::ui(ui, cx, &id)),
        Selection::Box(id) => ui.column("box", |ui| thing::box_ui(ui, cx, &id)),
        Selection::Spot(id) => ui.column("spot", |ui| thing::spot_ui(ui, cx, &id)),
        Selection::Prop(id) => ui.column("prop", |ui| thing::prop_ui(ui, cx, &id)),
        Selection::Drawn => drawn::ui(ui, cx, &mut locals.drawn),
        _ => ui.column("finish", |ui| thing::finish_ui(ui, cx)),
    }
}
