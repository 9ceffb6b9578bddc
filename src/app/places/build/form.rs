//! A setup as a form: a control for each field, made from the shape of the mechanic's own setup.

use eframe::egui::{Align, Checkbox, Response, RichText, Ui};
use serde_json::Value;

use super::faults::Fault;
use crate::app::ctx::Ctx;
use crate::app::tokens::GAP_S;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::Anchor;
use crate::limits;
use crate::mechanics::form::{Choice, FormField, Shape};
use crate::script::capital;

/// Texts longer than this are shown on several lines.
const LINE_CHARS: usize = 56;

/// The form of a setup; true when its data changed. What is found stands at its row, or at the foot when it speaks of none.
/// `salt` tells one puzzle's form from another's.
pub fn ui(
    ui: &mut Ui,
    cx: &Ctx<'_>,
    fields: &[FormField],
    data: &mut Value,
    (anchor, faults): (&Anchor, &[Fault]),
    salt: &str,
) -> bool {
    let mut changed = false;
    // Who follows a finding comes to the row that it speaks of.
    let aim = faults.iter().find_map(|fault| fields.iter().position(|field| fault.row.as_ref() == Some(&field.name)));
    if fields.is_empty() {
        ui.quiet("This mechanic has nothing to choose.");
    }
    for (at, field) in fields.iter().enumerate() {
        let Some(value) = data.get_mut(&field.name) else { continue };
        let place = Place {
            label: label(&field.name),
            help: &field.help,
            anchor: (at == aim.unwrap_or(0)).then_some(anchor),
            salt: format!("{salt}/{}", field.name),
            unit: if field.name.ends_with("_mm") { "mm" } else { "" },
        };
        changed |= shape_ui(ui, cx, &field.shape, value, &place);
        let here: Vec<&Fault> = faults.iter().filter(|fault| fault.row.as_ref() == Some(&field.name)).collect();
        here.iter().for_each(|fault| fault.ui(ui));
        if !here.is_empty() {
            ui.add_space(GAP_S);
        }
    }
    let told = |fault: &Fault| fields.iter().any(|field| fault.row.as_ref() == Some(&field.name));
    faults.iter().filter(|fault| !told(fault)).for_each(|fault| fault.ui(ui));
    changed
}

/// Where in the form a control stands.
struct Place<'a> {
    label: String,
    help: &'a str,
    /// The place in the kit, for the control that takes the keyboard when a finding is followed.
    anchor: Option<&'a Anchor>,
    salt: String,
    unit: &'static str,
}

impl Place<'_> {
    fn field(&self) -> Field<'_> {
        let field = Field::new(&self.label).help(self.help).salt(&self.salt);
        match self.anchor {
            Some(anchor) => field.goes(anchor.clone()),
            None => field,
        }
    }

    fn inner(&self, name: &str) -> Place<'static> {
        let salt = format!("{}/{name}", self.salt);
        Place { label: label(name), help: "", anchor: None, salt, unit: if name.ends_with("_mm") { "mm" } else { "" } }
    }
}

/// Gives the keyboard to a control that is no [`Field`], when a finding is followed to it.
fn arrive(cx: &Ctx<'_>, response: &Response, place: &Place<'_>) {
    if place.anchor.is_some_and(|anchor| cx.arrives(anchor)) {
        response.request_focus();
        response.scroll_to_me(Some(Align::Center));
    }
}

fn shape_ui(ui: &mut Ui, cx: &Ctx<'_>, shape: &Shape, value: &mut Value, place: &Place<'_>) -> bool {
    match shape {
        Shape::Switch => switch_ui(ui, cx, value, place),
        Shape::Text => text_ui(ui, cx, value, place),
        Shape::Letter => letter_ui(ui, cx, value, place),
        Shape::Whole(least, most) => {
            let mut number = value.as_i64().unwrap_or(*least);
            let changed = place.field().number(ui, cx, &mut number, *least..=*most, place.unit);
            if changed {
                *value = Value::from(number);
            }
            changed
        }
        Shape::Number => {
            let mut number = value.as_f64().unwrap_or_default();
            let changed =
                place.field().number(ui, cx, &mut number, -limits::FORM_NUMBER..=limits::FORM_NUMBER, place.unit);
            if changed {
                *value = Value::from(number);
            }
            changed
        }
        Shape::Choice(choices) => choice_ui(ui, cx, choices, value, place),
        Shape::List(inner) => list_ui(ui, cx, inner, value, place),
        Shape::Group(fields) => {
            let mut changed = false;
            for field in fields {
                if let Some(value) = value.get_mut(&field.name) {
                    changed |= shape_ui(ui, cx, &field.shape, value, &place.inner(&field.name));
                }
            }
            changed
        }
        Shape::Maybe(inner) => maybe_ui(ui, cx, inner, value, place),
    }
}

fn switch_ui(ui: &mut Ui, cx: &Ctx<'_>, value: &mut Value, place: &Place<'_>) -> bool {
    let mut on = value.as_bool().unwrap_or_default();
    let response = ui.add(Checkbox::new(&mut on, &place.label));
    arrive(cx, &response, place);
    let changed = response.changed();
    if !place.help.is_empty() {
        ui.scope(|ui| {
            ui.visuals_mut().indent_has_left_vline = false;
            ui.indent(&place.salt, |ui| ui.quiet(place.help));
        });
    }
    ui.add_space(GAP_S);
    if changed {
        *value = Value::Bool(on);
    }
    changed
}

fn text_ui(ui: &mut Ui, cx: &Ctx<'_>, value: &mut Value, place: &Place<'_>) -> bool {
    let Value::String(text) = value else { return false };
    // The kind of control is kept by the name, so that it does not change under the hand that types.
    let long = place.label.to_lowercase().contains("text") || place.label == "Note";
    if long || text.contains('\n') {
        let rows = text.chars().count().div_ceil(LINE_CHARS).clamp(1, 6);
        place.field().text(ui, cx, rows, text)
    } else {
        place.field().line(ui, cx, text)
    }
}

fn letter_ui(ui: &mut Ui, cx: &Ctx<'_>, value: &mut Value, place: &Place<'_>) -> bool {
    let Value::String(letter) = value else { return false };
    let mut text = letter.clone();
    if !place.field().line(ui, cx, &mut text) {
        return false;
    }
    // The letter typed last counts; a field emptied on the way to another letter changes nothing yet.
    let typed = text.chars().find(|c| !letter.contains(*c)).or_else(|| text.chars().last());
    typed.is_some_and(|typed| {
        let typed = typed.to_string();
        let changed = typed != *letter;
        *letter = typed;
        changed
    })
}

fn choice_ui(ui: &mut Ui, cx: &Ctx<'_>, choices: &[Choice], value: &mut Value, place: &Place<'_>) -> bool {
    let now = choices.iter().position(|choice| choice.is(value));
    let words: Vec<(Option<usize>, String)> =
        choices.iter().enumerate().map(|(at, choice)| (Some(at), label(&choice.name))).collect();
    let mut picked = now;
    let mut changed = place.field().pick(ui, cx, &mut picked, &words, "not known");
    let Some(choice) = picked.and_then(|at| choices.get(at)) else { return changed };
    if changed {
        *value = choice.blank();
    }
    if let (Some(inside), Some(value)) = (&choice.inside, value.get_mut(&choice.name)) {
        ui.indent(&place.salt, |ui| {
            let inner = match inside {
                Shape::Group(_) => place.inner(""),
                _ => place.inner(&choice.name),
            };
            changed |= shape_ui(ui, cx, inside, value, &inner);
        });
    }
    changed
}

fn maybe_ui(ui: &mut Ui, cx: &Ctx<'_>, inner: &Shape, value: &mut Value, place: &Place<'_>) -> bool {
    let mut on = Value::Bool(!value.is_null());
    let mut changed = switch_ui(ui, cx, &mut on, place);
    if changed {
        *value = if on == Value::Bool(true) { inner.blank() } else { Value::Null };
    }
    if !value.is_null() {
        ui.indent(&place.salt, |ui| {
            let place = Place { help: "", salt: format!("{}/it", place.salt), label: place.label.clone(), ..*place };
            changed |= shape_ui(ui, cx, inner, value, &place);
        });
    }
    changed
}

fn list_ui(ui: &mut Ui, cx: &Ctx<'_>, inner: &Shape, value: &mut Value, place: &Place<'_>) -> bool {
    let Value::Array(entries) = value else { return false };
    let mut changed = false;
    ui.strong_small(&place.label);
    if !place.help.is_empty() {
        ui.quiet(place.help);
    }
    if entries.is_empty() {
        ui.quiet("None.");
    }
    let mut gone = None;
    for (at, entry) in entries.iter_mut().enumerate() {
        let name = format!("{} {}", place.label, at + 1);
        let remove = format!("Remove {name}");
        let inner_place =
            Place { label: name, help: "", anchor: None, salt: format!("{}/{at}", place.salt), unit: place.unit };
        if matches!(inner, Shape::Group(_)) {
            ui.group_card(|ui| {
                ui.horizontal(|ui| {
                    ui.label(RichText::new(&inner_place.label).strong());
                    if ui.lesser(true, "Remove", &remove).clicked() {
                        gone = Some(at);
                    }
                });
                changed |= shape_ui(ui, cx, inner, entry, &inner_place);
            });
        } else {
            changed |= shape_ui(ui, cx, inner, entry, &inner_place);
            if ui.lesser(true, "Remove", &remove).clicked() {
                gone = Some(at);
            }
        }
    }
    if let Some(at) = gone {
        entries.remove(at);
        changed = true;
    }
    let more = entries.len() < limits::FORM_ENTRIES;
    let add = ui.lesser(more, "Add one", &format!("Add one to {}", place.label));
    arrive(cx, &add, place);
    if add.clicked() {
        entries.push(inner.blank());
        changed = true;
    }
    ui.add_space(GAP_S);
    changed
}

/// A field's name in the kit file as words: `say_order`, `lid_mm` and `by-lines` as "Say order", "Lid", "By lines".
pub fn label(name: &str) -> String {
    if name == "cols" {
        return "Columns".to_owned();
    }
    let mut words = String::new();
    for c in name.strip_suffix("_mm").unwrap_or(name).chars() {
        if c == '_' || c == '-' {
            words.push(' ');
        } else if c.is_uppercase() && !words.is_empty() {
            words.push(' ');
            words.extend(c.to_lowercase());
        } else {
            words.extend(c.to_lowercase());
        }
    }
    capital(&words)
}

#[cfg(test)]
mod tests {
    use super::label;

    #[test]
    fn names_become_words() {
        for (name, words) in [
            ("say_order", "Say order"),
            ("lid_mm", "Lid"),
            ("by-lines", "By lines"),
            ("cols", "Columns"),
            ("LongWay", "Long way"),
            ("", ""),
        ] {
            assert_eq!(label(name), words);
        }
    }
}
