use std::collections::BTreeSet;

use eframe::egui::Ui;

use crate::app::ctx::Ctx;
use crate::app::places::build::own_steps_ui;
use crate::app::widgets::{Field, UiExt as _};
use crate::kit::Day;
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

/// What the host says at the start, and does before, of the author's own; whether it changed.
pub(super) fn hosting_ui(ui: &mut Ui, cx: &Ctx<'_>, facts: &mut Facts) -> bool {
    ui.section("For the host");
    let mut opening = facts.opening.join("\n");
    let help =
        "One to a line, in place of the line about what is in play. The rules of every party follow by themselves.";
    let mut changed = false;
    if Field::new("What you say at the start").help(help).text(ui, cx, 3, &mut opening) {
        facts.opening = if opening.is_empty() { Vec::new() } else { opening.split('\n').map(str::to_owned).collect() };
        changed = true;
    }
    ui.quiet("Steps of the preparation that belong to no puzzle: baking, hanging lights, asking helpers.");
    changed | own_steps_ui(ui, cx, "kit", &mut facts.preparation)
}

/// What a buyer wants to know besides: rough cost, and which printing of the kit it is; whether it changed.
pub(super) fn handing_over_ui(ui: &mut Ui, cx: &Ctx<'_>, facts: &mut Facts) -> bool {
    ui.section("For those who buy it");
    let help = "In words and a currency: \"about 45 dollars, most of it locks\". May be empty.";
    let mut changed = Field::new("What all that must be bought costs").help(help).line(ui, cx, &mut facts.cost);
    let revision = &mut facts.revision;
    let help = "What this printing of the kit is called: \"2\", \"spring 2027\". May be empty.";
    changed |= Field::new("Revision").help(help).line(ui, cx, &mut revision.name);
    changed |= day_ui(ui, cx, &mut revision.day);
    let mut changes = revision.changes.join("\n");
    let help = "One to a line: what somebody who has the last revision wants to know.";
    if Field::new("What changed since the last revision").help(help).text(ui, cx, 3, &mut changes) {
        revision.changes =
            if changes.is_empty() { Vec::new() } else { changes.split('\n').map(str::to_owned).collect() };
        changed = true;
    }
    changed
}

/// The day of the revision. What is no day yet stays in the field and out of the kit.
fn day_ui(ui: &mut Ui, cx: &Ctx<'_>, day: &mut Option<Day>) -> bool {
    let id = ui.make_persistent_id("revision-day");
    let known = day.map(|day| day.to_string()).unwrap_or_default();
    let mut text = ui.data(|data| data.get_temp::<String>(id)).unwrap_or_else(|| known.clone());
    let help = "Year, month, day: \"2027-01-31\". With it every PDF is made for archives as well (PDF/A).";
    let typed = Field::new("Day of the revision").help(help).line(ui, cx, &mut text);
    match Day::parse(&text) {
        Err(wrong) if !text.is_empty() => {
            ui.quiet(&wrong);
            ui.data_mut(|data| data.insert_temp(id, text));
            false
        }
        found => {
            ui.data_mut(|data| data.remove_temp::<String>(id));
            let found = found.ok();
            let changed = typed && *day != found;
            if changed {
                *day = found;
            }
            changed
        }
    }
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
