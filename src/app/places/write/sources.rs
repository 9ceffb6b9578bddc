use std::collections::BTreeSet;

use eframe::egui::Ui;

use crate::app::ctx::Ctx;
use crate::app::widgets::{Field, UiExt as _};
use crate::kit::edit::{Edit, Facts};

/// Minutes that a host is given at first: an afternoon.
const AFTERNOON: u32 = 240;
/// Most minutes to prepare: two weeks.
const MOST: u32 = 14 * 24 * 60;

/// How long the host has to prepare, if the kit says so; whether it changed.
pub(super) fn preparing_ui(ui: &mut Ui, cx: &Ctx<'_>, facts: &mut Facts) -> bool {
    let mut says = facts.prep_minutes.is_some();
    let mut changed = ui.checkbox(&mut says, "Say how long the host has to prepare, drying included").changed();
    if changed {
        facts.prep_minutes = says.then_some(AFTERNOON);
    }
    if let Some(minutes) = &mut facts.prep_minutes {
        changed |= super::narrow(ui, |ui| Field::new("To prepare").number(ui, cx, minutes, 10..=MOST, "min"));
    }
    changed
}

/// Who made what the kit brings itself: one line for each picture, and for each font that is not the theme's.
pub(super) fn sources_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let pictures = cx.kit.notes.iter().filter_map(|note| note.picture.as_ref()).map(|path| path.as_str());
    let fonts = cx.kit.look.lettering.values().map(String::as_str).filter(|family| !family.trim().is_empty());
    let names: BTreeSet<&str> = pictures.chain(fonts).chain(cx.kit.credits.keys().map(String::as_str)).collect();
    if names.is_empty() {
        return;
    }
    ui.section("Sources");
    ui.quiet(
        "Who made the pictures and fonts that this kit brings, and under which licence; \"my own\" will do for yours.",
    );
    for name in names {
        let mut credit = cx.kit.credits.get(name).cloned().unwrap_or_default();
        if Field::new(name).salt(("credit", name)).line(ui, cx, &mut credit) {
            let new = (!credit.is_empty()).then_some(credit);
            cx.edit(Edit::Credit(name.to_owned(), new));
        }
    }
}
