use eframe::egui::{Align, ComboBox, Layout, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::preview::Wanted;
use crate::app::session::{Selection, Tab};
use crate::app::switches::{edition_name, level_ui, paper_ui};
use crate::app::widgets::{Mark, UiExt as _, mark_ui};
use crate::theme::Edition;
use crate::theme::colour::Eyes;

/// Below this width there is no room for the heading beside the switch of level or paper.
const NARROW: f32 = 350.0;

/// What stands on the desk, and how it is looked at.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, wanted: &Wanted, done: bool) {
    let narrow = ui.available_width() < NARROW;
    let waiting = |ui: &mut Ui| {
        if !done {
            mark_ui(ui, Mark::Waiting, 12.0).on_hover_text("being drawn");
        }
    };
    // In a narrow window the switch takes the heading's place, so that the piece keeps its room.
    if narrow && has_switch(cx, wanted) {
        switch_ui(ui, cx, wanted);
    } else {
        ui.horizontal(|ui| {
            ui.strong_small(heading(wanted));
            waiting(ui);
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| switch_ui(ui, cx, wanted));
        });
    }
    if *wanted != Wanted::Nothing {
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().interact_size.y = 26.0;
            ui.spacing_mut().button_padding.y = 3.0;
            if wanted.in_editions() && !in_column(cx) {
                edition_ui(ui, cx, narrow);
            }
            eyes_ui(ui, cx, narrow);
            if narrow {
                waiting(ui);
            }
        });
    }
}

const fn heading(wanted: &Wanted) -> &'static str {
    match wanted {
        Wanted::Nothing => "The kit at a glance",
        Wanted::Sheets(..) => "The sheets",
        Wanted::Letter(..) => "The letter as printed",
        Wanted::Gallery(_) => "A sample in this theme",
        Wanted::Of(..) | Wanted::Pieces(_) => "As printed",
        Wanted::SideBySide(..) => "Before and after",
        Wanted::Specimens(_) => "The kit's own words in each font",
    }
}

/// Whether paper, level and edition are chosen in the column beside the desk.
fn in_column(cx: &Ctx<'_>) -> bool {
    cx.session.tab == Tab::Print && cx.session.selection(cx.kit) != Selection::Bundle
}

/// Whether there is a switch beside the heading.
fn has_switch(cx: &Ctx<'_>, wanted: &Wanted) -> bool {
    match wanted {
        Wanted::Letter(..) | Wanted::Sheets(..) | Wanted::Pieces(_) | Wanted::SideBySide(..) => !in_column(cx),
        Wanted::Of(..) => cx.session.tab != Tab::Prove,
        Wanted::Nothing | Wanted::Gallery(_) | Wanted::Specimens(_) => false,
    }
}

/// The switch of the paper or of the level, whichever changes what is shown.
fn switch_ui(ui: &mut Ui, cx: &Ctx<'_>, wanted: &Wanted) {
    if !has_switch(cx, wanted) {
        return;
    }
    match wanted {
        Wanted::Letter(..) | Wanted::Sheets(..) => paper_ui(ui, cx),
        _ => level_ui(ui, cx),
    }
}

/// A choice of the edition that is looked at.
fn edition_ui(ui: &mut Ui, cx: &Ctx<'_>, narrow: bool) {
    let now = cx.session.edition;
    if !narrow {
        ui.quiet("Edition");
    }
    let chosen = ComboBox::from_id_salt("edition").selected_text(edition_name(now)).width(98.0).show_ui(ui, |ui| {
        for edition in Edition::ALL {
            let row = ui.selectable_label(edition == now, edition_name(edition)).on_hover_text(edition.about());
            if row.clicked() {
                cx.send(Command::Edition(edition));
            }
        }
    });
    chosen.response.accessible_name("Edition looked at").on_hover_text(now.about());
}

/// A choice of the eyes through which the desk is looked at.
fn eyes_ui(ui: &mut Ui, cx: &Ctx<'_>, narrow: bool) {
    let now = cx.session.eyes;
    if !narrow {
        ui.quiet("Eyes");
    }
    let chosen = ComboBox::from_id_salt("eyes").selected_text(now.name()).width(98.0).show_ui(ui, |ui| {
        for eyes in Eyes::ALL {
            if ui.selectable_label(eyes == now, eyes.name()).on_hover_text(eyes.words()).clicked() {
                cx.send(Command::Eyes(eyes));
            }
        }
    });
    chosen.response.accessible_name("Seen with these eyes").on_hover_text(format!("As it looks {}", now.words()));
}
