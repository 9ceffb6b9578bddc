use eframe::egui::{TextEdit, Ui, vec2};

use crate::app::ctx::{Command, Ctx};
use crate::app::widgets::UiExt as _;
use crate::ids::{KitId, slug};
use crate::kit::edit::{Edit, Facts};

/// The name that the kit's files bear, to be written anew; what its title would make of it is at hand.
pub fn file_name_ui(ui: &mut Ui, cx: &Ctx<'_>, draft: &mut Option<String>) {
    let mut text = draft.clone().unwrap_or_else(|| slug(&cx.say(&cx.kit.title)));
    ui.horizontal_wrapped(|ui| {
        let label = ui.strong_small("Name of the kit's files");
        ui.make_room(230.0);
        let field = TextEdit::singleline(&mut text).desired_width(220.0).margin(vec2(10.0, 7.0));
        if ui.add(field).labelled_by(label.id).changed() {
            *draft = Some(text.clone());
        }
        let id = KitId::from_text(&text);
        if id == cx.kit.id {
            ui.quiet("as it is");
        } else if ui.lesser(!text.trim().is_empty(), &format!("Name them {id}"), "Name the kit's files so").clicked() {
            cx.send(Command::Step(vec![Edit::Facts(Box::new(Facts { id, ..Facts::of(cx.kit) }))]));
            *draft = None;
        }
    });
}
