//! Build: puzzles, locks, boxes, spots, props, and how the party ends.

mod drawn;
mod form;
pub mod fresh;
mod gallery;
mod lock;
mod printed;
mod puzzle;
mod setup;
mod thing;

use eframe::egui::{RichText, Ui};

pub use drawn::{Drawn, facts_ui, never_ui};
pub use gallery::Sought;
pub use setup::SetupDraft;

use crate::app::ctx::{Command, Ctx};
use crate::app::desk::Desk;
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::tokens::GAP_L;
use crate::app::widgets::UiExt as _;
use crate::kit::Place;
use crate::kit::edit::Edit;

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

/// All places of the kit, with their words.
#[must_use]
pub fn place_choices(cx: &Ctx<'_>) -> Vec<(Place, String)> {
    let kit = cx.kit;
    let spots = kit.spots.iter().map(|spot| (Place::Spot(spot.id.clone()), format!("At {}", cx.say(&spot.name))));
    let boxes = kit.boxes.iter().map(|item| (Place::Box(item.id.clone()), format!("In {}", cx.say(&item.name))));
    spots.chain(boxes).collect()
}

/// The way to remove what is in hand. It needs no question: one step of undo brings it back.
pub fn remove_ui(ui: &mut Ui, cx: &Ctx<'_>, selection: &Selection, words: &str) {
    let Some(item) = selection.item() else { return };
    ui.add_space(GAP_L);
    let button = eframe::egui::Button::new(RichText::new(words).color(cx.tokens.blocks));
    let hint = "What refers to it becomes a finding; Undo brings it back";
    if ui.add(button).on_hover_text(hint).clicked() {
        cx.send(Command::Step(vec![Edit::Remove(item)]));
    }
}
