use eframe::egui::text_edit::TextEditState;
use eframe::egui::{Align, Id, Layout, Rect, Response, Ui, UiBuilder, pos2};

use crate::app::ctx::{Command, Ctx};
use crate::app::widgets::UiExt as _;
use crate::diag::Anchor;
use crate::limits;

/// Offers to make a slot of what is picked in a text field. The button stands beside the field's name, so that nothing
/// moves while the author drags over words.
///
/// A click on the button takes the keyboard from the field; so what was picked last is kept until another field has it.
pub fn picked_ui(ui: &mut Ui, cx: &Ctx<'_>, field: &Response, anchor: &Anchor, name: Rect) {
    let kept = kept(field);
    let Some(word) = ui.data(|data| data.get_temp::<String>(kept)) else { return };
    let row = Rect::from_min_max(
        pos2(name.right() + 12.0, name.center().y - 13.0),
        pos2(field.rect.right(), name.center().y + 13.0),
    );
    let mut beside = ui.new_child(UiBuilder::new().max_rect(row).layout(Layout::right_to_left(Align::Center)));
    let button = beside.lesser(true, &format!("Make “{}” a slot", short(&word)), &format!("Make “{word}” a slot"));
    if button.clicked() {
        cx.send(Command::PickSlot(anchor.clone(), word));
        ui.data_mut(|data| data.remove::<String>(kept));
        return;
    }
    let elsewhere = ui.memory(|memory| memory.focused().is_some_and(|id| id != field.id && id != button.id));
    if elsewhere || field.changed() {
        ui.data_mut(|data| data.remove::<String>(kept));
    }
}

fn kept(field: &Response) -> Id {
    field.id.with("picked")
}

/// Keeps what is picked in a field of this text, for [`picked_ui`].
pub fn keep_picked(ui: &Ui, field: &Response, text: &str) {
    if field.has_focus() {
        let word = picked(ui, field, text);
        ui.data_mut(|data| match word {
            Some(word) => {
                data.insert_temp(kept(field), word);
            }
            None => data.remove::<String>(kept(field)),
        });
    }
}

/// The word or phrase that is picked in a field, if one is that can be a slot.
fn picked(ui: &Ui, field: &Response, text: &str) -> Option<String> {
    let range = TextEditState::load(ui.ctx(), field.id)?.cursor.char_range()?.as_sorted_char_range();
    let (start, end) = (usize::from(range.start), usize::from(range.end));
    if start == end || end - start > limits::SLOT_CHARS * 2 {
        return None;
    }
    let word: String = text.chars().skip(start).take(end - start).collect();
    let word = word.trim();
    let fits = word.chars().any(char::is_alphabetic) && word.chars().count() <= limits::SLOT_CHARS;
    (fits && !word.contains(['{', '}', '\n'])).then(|| word.to_owned())
}

/// As much of a phrase as a button holds.
fn short(word: &str) -> String {
    const MOST: usize = 26;
    if word.chars().count() <= MOST { word.to_owned() } else { word.chars().take(MOST).chain(['…']).collect() }
}
