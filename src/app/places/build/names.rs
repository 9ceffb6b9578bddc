//! What a puzzle calls its own parts and prints over them, in place of the theme's words.

use std::collections::BTreeMap;

use eframe::egui::{CollapsingHeader, Ui};

use crate::app::ctx::Ctx;
use crate::app::tokens::GAP_S;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::Puzzle;
use crate::mechanics::Meta;
use crate::script::capital;

/// Fields for the names of a puzzle's parts and the titles of its sheets; folded away, and open where one is its own.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, meta: &Meta) -> bool {
    let none = BTreeMap::new();
    let words = cx.doc.theme.theme.dressings.get(meta.id).unwrap_or(&none);
    let part = |key: &str| meta.parts.iter().find(|part| part.key == key);
    let more = words.keys().map(String::as_str).filter(|key| part(key).is_none());
    let keys: Vec<&str> = meta.parts.iter().map(|part| part.key).chain(more).collect();
    let heads_here = |to: &Anchor| matches!(to, Anchor::Puzzle(id, PuzzleField::Name(_)) if *id == puzzle.id);
    let folded = CollapsingHeader::new("Names and titles of its own")
        .id_salt((&puzzle.id, "names"))
        .default_open(!puzzle.names.is_empty())
        .open(cx.session.jump.as_ref().is_some_and(heads_here).then_some(true));
    let mut changed = false;
    folded.show(ui, |ui| {
        ui.quiet("What its parts are called, and what is printed over them. Empty: the theme's words.");
        ui.add_space(GAP_S);
        for key in keys {
            let usual = words.get(key).map_or_else(|| part(key).map_or("", |part| part.name), String::as_str);
            let help = if usual.is_empty() { String::new() } else { format!("The theme: {usual}") };
            let mut name = puzzle.names.get(key).cloned().unwrap_or_default();
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Name(key.to_owned()));
            if Field::new(&capital(&key.replace('-', " "))).help(&help).at(at).line(ui, cx, &mut name) {
                changed = true;
                if name.trim().is_empty() {
                    puzzle.names.remove(key);
                } else {
                    puzzle.names.insert(key.to_owned(), name);
                }
            }
        }
    });
    changed
}
