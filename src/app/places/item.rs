//! What every item in hand has: where it may lie, its id, and the way to remove it.

use eframe::egui::{Id, RichText, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::session::Selection;
use crate::app::tokens::GAP_L;
use crate::app::widgets::{Field, UiExt as _};
use crate::kit::edit::{Edit, Item};
use crate::kit::{Place, rename};

/// All places of the kit, with their words.
#[must_use]
pub fn place_choices(cx: &Ctx<'_>) -> Vec<(Place, String)> {
    let kit = cx.kit;
    let spots = kit.spots.iter().map(|spot| (Place::Spot(spot.id.clone()), format!("At {}", cx.say(&spot.name))));
    let boxes = kit.boxes.iter().map(|item| (Place::Box(item.id.clone()), format!("In {}", cx.say(&item.name))));
    spots.chain(boxes).collect()
}

/// The id of what is in hand, and the ways to change it and to remove the whole. Removing needs no question: one step
/// of undo brings it back.
pub fn remove_ui(ui: &mut Ui, cx: &Ctx<'_>, selection: &Selection, words: &str) {
    let Some(item) = selection.item() else { return };
    id_ui(ui, cx, &item);
    ui.add_space(GAP_L);
    let button = eframe::egui::Button::new(RichText::new(words).color(cx.tokens.blocks));
    let hint = "What refers to it becomes a finding; Undo brings it back";
    if ui.add(button).on_hover_text(hint).clicked() {
        cx.send(Command::Step(vec![Edit::Remove(item)]));
    }
}

/// The id, which is changed wherever it stands or not at all: what is typed is kept apart until then.
fn id_ui(ui: &mut Ui, cx: &Ctx<'_>, item: &Item) {
    ui.section("In the kit file");
    let kept = Id::unique(("id of", format!("{item:?}")));
    let mut typed: String = ui.data(|data| data.get_temp(kept)).unwrap_or_else(|| item.id().to_owned());
    let help = match item {
        Item::Puzzle(_) => {
            "Its short name there and in the names of exported files; what refers to it follows. Under another, chance \
             arranges the puzzle anew."
        }
        _ => "Its short name there; what refers to it follows.",
    };
    Field::new("Id").help(help).salt(kept).line(ui, cx, &mut typed);
    if typed != item.id() {
        ui.horizontal_wrapped(|ui| match rename(cx.kit, item, typed.trim()) {
            Ok(edits) => {
                if ui.secondary("Change it everywhere").on_hover_text("In one step, which Undo takes back").clicked() {
                    cx.send(Command::Step(edits));
                    if let Some(renamed) = item.with_id(typed.trim()) {
                        cx.send(Command::Select(Selection::of_item(renamed)));
                    }
                    item.id().clone_into(&mut typed);
                }
            }
            Err(trouble) => ui.trouble(&trouble),
        });
        if ui.lesser(true, "Keep the old id", "Keep the id as it is").clicked() {
            item.id().clone_into(&mut typed);
        }
    }
    ui.data_mut(|data| {
        if typed == item.id() {
            data.remove::<String>(kept);
        } else {
            data.insert_temp(kept, typed);
        }
    });
}
