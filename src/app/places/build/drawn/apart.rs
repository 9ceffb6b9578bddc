use eframe::egui::Ui;

use crate::app::ctx::{Command, Ctx};
use crate::app::places::build::Drawn;
use crate::app::widgets::{Field, UiExt as _};
use crate::flow::facts::thing_words;
use crate::kit::edit::Edit;
use crate::kit::{Apart, Lying};
use crate::script::capital;

/// The pairs that must not lie at one place, and a way to add one.
pub(super) fn ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn) {
    ui.section("Must lie apart");
    ui.quiet("Pairs of things that must not lie at one spot or in one box. Some puzzles add pairs of their own.");
    for (at, pair) in cx.kit.apart.iter().enumerate() {
        let words =
            capital(&cx.say(&format!("{} and {}", thing_words(cx.kit, &pair.one), thing_words(cx.kit, &pair.other))));
        let words = if pair.together { format!("{words} may lie together") } else { words };
        ui.horizontal_wrapped(|ui| {
            ui.label(&words);
            if ui.lesser(true, "Take off", &format!("Take off the list: {words}")).clicked() {
                let mut pairs = cx.kit.apart.clone();
                pairs.remove(at);
                cx.send(Command::Step(vec![Edit::Apart(pairs)]));
            }
        });
    }
    let choices = choices(cx);
    let lost = "a thing that is not in the kit";
    let mut one = local.one.clone().unwrap_or(Lying::Letter);
    let mut other = local.other.clone().unwrap_or(Lying::Letter);
    Field::new("One thing").pick(ui, cx, &mut one, &choices, lost);
    Field::new("The other").pick(ui, cx, &mut other, &choices, lost);
    let known = cx
        .kit
        .apart
        .iter()
        .any(|pair| (pair.one == one && pair.other == other) || (pair.one == other && pair.other == one));
    if ui.add_enabled(one != other && !known, eframe::egui::Button::new("Keep them apart")).clicked() {
        let mut pairs = cx.kit.apart.clone();
        pairs.push(Apart { one: one.clone(), other: other.clone(), why: String::new(), together: false });
        cx.send(Command::Step(vec![Edit::Apart(pairs)]));
    }
    (local.one, local.other) = (Some(one), Some(other));
}

/// Everything that lies somewhere, with its words.
fn choices(cx: &Ctx<'_>) -> Vec<(Lying, String)> {
    let kit = cx.kit;
    let mut things = vec![Lying::Letter];
    things.extend(kit.notes.iter().map(|note| Lying::Note(note.id.clone())));
    things.extend(kit.props.iter().map(|prop| Lying::Prop(prop.id.clone())));
    things.extend(kit.boxes.iter().map(|item| Lying::Box(item.id.clone())));
    for puzzle in &kit.puzzles {
        things.extend(puzzle.parts.keys().map(|part| Lying::Part(puzzle.id.clone(), part.clone())));
    }
    things
        .into_iter()
        .map(|thing| {
            let words = capital(&cx.say(&thing_words(kit, &thing)));
            (thing, words)
        })
        .collect()
}
