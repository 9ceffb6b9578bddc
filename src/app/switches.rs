//! The switches of what is looked at: play level, paper, edition.

use eframe::egui::{Button, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::widgets::UiExt as _;
use crate::diag::Level;
use crate::script::capital;
use crate::sheet::Paper;
use crate::theme::Edition;

/// The list in the order in which it must be added so that it reads from left to right.
fn in_reading_order<T, const N: usize>(ui: &Ui, mut list: [T; N]) -> [T; N] {
    if ui.layout().prefer_right_to_left() {
        list.reverse();
    }
    list
}

/// Width of a switch of three words, about.
const SWITCH: f32 = 226.0;

/// Width of the name of a switch.
const NAME: f32 = 52.0;

/// As [`level_ui`], with its name, from which it is not parted.
pub fn named_level_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.make_room(NAME + SWITCH);
    ui.horizontal(|ui| {
        ui.strong_small("Level");
        level_ui(ui, cx);
    });
}

/// A switch of the play level looked at.
pub fn level_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.make_room(SWITCH);
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        ui.spacing_mut().button_padding.x = 9.0;
        for level in in_reading_order(ui, Level::ALL) {
            let chosen = cx.session.level == level;
            let button = Button::selectable(chosen, capital(level.word()));
            if ui.add(button).accessible_name(format!("{} level", level.word())).clicked() && !chosen {
                cx.send(Command::Level(level));
            }
        }
    });
}

/// The paper looked at.
pub fn paper_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        for paper in in_reading_order(ui, Paper::ALL) {
            let chosen = cx.session.paper == paper;
            let button = Button::selectable(chosen, paper_name(paper));
            if ui.add(button).clicked() && !chosen {
                cx.send(Command::Paper(paper));
            }
        }
    });
}

/// The edition in which sheets and pieces are looked at.
pub fn edition_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        for edition in in_reading_order(ui, Edition::ALL) {
            let chosen = cx.session.edition == edition;
            let button = Button::selectable(chosen, edition_name(edition));
            if ui.add(button).on_hover_text(edition.about()).clicked() && !chosen {
                cx.send(Command::Edition(edition));
            }
        }
    });
}

/// The name of an edition, as it begins a line.
#[must_use]
pub fn edition_name(edition: Edition) -> String {
    capital(&edition.word().replace('-', " "))
}

/// The name of a paper, as it is sold.
#[must_use]
pub const fn paper_name(paper: Paper) -> &'static str {
    match paper {
        Paper::Letter => "US Letter",
        Paper::A4 => "A4",
    }
}
