use std::collections::BTreeSet;

use eframe::egui::Ui;

use super::begin_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::widgets::{Field, UiExt as _};
use crate::mechanics::{AnyMechanic, MECHANICS};
use crate::script::capital;
use crate::theme::ThemeEdit;

/// What the theme calls the parts of each mechanic.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Dressings");
    ui.lede("What the theme calls the parts of each mechanic, on pieces and in the host guide.");
    let own = cx.doc.own_theme();
    if !own {
        begin_ui(ui, cx);
    }
    let used: BTreeSet<&str> = cx.kit.puzzles.iter().map(|puzzle| puzzle.mechanic.as_str()).collect();
    type Kinds = Vec<&'static dyn AnyMechanic>;
    let (here, others): (Kinds, Kinds) = MECHANICS.iter().copied().partition(|known| used.contains(known.meta().id));
    for mechanic in here {
        mechanic_ui(ui, cx, mechanic, own);
    }
    ui.section("Mechanics that this kit does not use");
    for mechanic in others {
        ui.collapsing(mechanic.meta().name, |ui| parts_ui(ui, cx, mechanic, own));
    }
}

fn mechanic_ui(ui: &mut Ui, cx: &Ctx<'_>, mechanic: &dyn AnyMechanic, own: bool) {
    ui.section(mechanic.meta().name);
    parts_ui(ui, cx, mechanic, own);
}

/// The parts that must lie somewhere, and what else the theme words already.
fn parts_ui(ui: &mut Ui, cx: &Ctx<'_>, mechanic: &dyn AnyMechanic, own: bool) {
    let meta = mechanic.meta();
    let theme = &cx.doc.theme.theme;
    let mut keys: Vec<(&str, &str)> = meta.parts.iter().map(|part| (part.key, part.name)).collect();
    let more = theme.dressings.get(meta.id).into_iter().flatten();
    for (key, _) in more {
        if !keys.iter().any(|(known, _)| known == key) {
            keys.push((key, ""));
        }
    }
    for (key, plain) in keys {
        let now = theme.dressings.get(meta.id).and_then(|parts| parts.get(key));
        let name = capital(&key.replace('-', " "));
        if !own {
            ui.horizontal(|ui| {
                ui.set_width(ui.available_width());
                ui.strong_small(&name);
                ui.quiet(now.map_or(plain, String::as_str));
            });
            continue;
        }
        let help = if plain.is_empty() { String::new() } else { format!("Without a word of the theme: {plain}") };
        let mut text = now.cloned().unwrap_or_default();
        if Field::new(&name).help(&help).salt((meta.id, key)).line(ui, cx, &mut text) {
            let words = (!text.is_empty()).then_some(text);
            cx.send(Command::ThemeEdit(ThemeEdit::Dressing(meta.id.to_owned(), key.to_owned(), words)));
        }
    }
}
