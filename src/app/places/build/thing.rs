use eframe::egui::{Checkbox, Ui};

use super::preparing::amount_ui;
use super::printed::printed_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::places::item::{place_choices, remove_ui};
use crate::app::session::Selection;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::Anchor;
use crate::ids::{BoxId, LockId, PropId, SpotId};
use crate::kit::edit::Edit;
use crate::kit::material::{DEFERS, MATERIALS, material};
use crate::kit::{BoxDef, Form, HowMany, Place, Prop, PropRole};

/// First width and height of a box label, in millimetres.
const LABEL: (f64, f64) = (95.0, 58.0);

/// A spot in the room.
pub fn spot_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &SpotId) {
    let Some(spot) = cx.kit.spot(id) else { return };
    let mut spot = spot.clone();
    ui.title(&cx.say(&spot.name));
    ui.lede("A place in the room where things lie openly.");
    let mut changed = Field::new("Name")
        .help("As the host reads it: the mantelpiece.")
        .at(Anchor::Spot(id.clone()))
        .line(ui, cx, &mut spot.name);
    changed |= Field::new("For the host").salt(id).text(ui, cx, 3, &mut spot.about);
    changed |= ui.checkbox(&mut spot.person, "It is a person, such as a helper").changed();
    if spot.person {
        ui.quiet("Nobody is searched: what lies here is with them, and the guide says so.");
    }
    if changed {
        cx.edit(Edit::Spot(Box::new(spot)));
    }
    lies_ui(ui, cx, &Place::Spot(id.clone()));
    remove_ui(ui, cx, &Selection::Spot(id.clone()), "Remove this spot");
}

/// A box, shut by its locks.
pub fn box_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &BoxId) {
    let Some(item) = cx.kit.box_def(id) else { return };
    let mut item = item.clone();
    ui.title(&cx.say(&item.name));
    ui.lede("It opens when all its locks are open; with none it is never shut.");
    let mut changed = Field::new("Name").at(Anchor::Box(id.clone())).line(ui, cx, &mut item.name);
    let places: Vec<_> = place_choices(cx).into_iter().filter(|(place, _)| *place != Place::Box(id.clone())).collect();
    let lost = "a place that is not in the kit";
    changed |= Field::new("Where it stands").salt(id).pick(ui, cx, &mut item.place, &places, lost);
    changed |= Field::new("What will do as this box").salt(id).line(ui, cx, &mut item.about);
    changed |= printed_as_ui(ui, cx, &mut item);
    ui.section("Locks on it");
    for lock in &cx.kit.locks {
        let mut on = item.locks.contains(&lock.id);
        let elsewhere = cx.kit.box_of(&lock.id).filter(|other| other.id != *id);
        let words = match elsewhere {
            Some(other) => format!("{}  (now on {})", cx.say(&lock.name), cx.say(&other.name)),
            None => cx.say(&lock.name),
        };
        if ui.add(Checkbox::new(&mut on, words)).changed() {
            changed = true;
            if on {
                item.locks.push(lock.id.clone());
            } else {
                item.locks.retain(|other| *other != lock.id);
            }
        }
    }
    changed |= ui.checkbox(&mut item.hasp, "They hang on a hasp, which holds up to six padlocks").changed();
    ui.section("Label");
    let mut labelled = item.label.is_some();
    if ui.checkbox(&mut labelled, "Print a label for it").changed() {
        item.label = labelled.then_some(LABEL);
        changed = true;
    }
    if let Some((width, height)) = &mut item.label {
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = GAP_M;
            for (name, value) in [("Width", width), ("Height", height)] {
                ui.vertical(|ui| {
                    ui.set_max_width(124.0);
                    changed |= Field::new(name).salt(id).number(ui, cx, value, 30.0..=190.0, "mm");
                });
            }
        });
    }
    if changed {
        match with_envelope(cx, &item) {
            Some(prop) => cx.send(Command::Step(vec![Edit::Box(Box::new(item)), Edit::Prop(Box::new(prop))])),
            None => cx.edit(Edit::Box(Box::new(item))),
        }
    }
    lies_ui(ui, cx, &Place::Box(id.clone()));
    remove_ui(ui, cx, &Selection::Box(id.clone()), "Remove this box");
}

/// Which of the kit's envelopes a box is; true when it changed.
fn printed_as_ui(ui: &mut Ui, cx: &Ctx<'_>, item: &mut BoxDef) -> bool {
    let envelope = |prop: &&Prop| prop.printed.as_ref().is_some_and(|spec| spec.form == Form::Envelope);
    let free = |prop: &&Prop| cx.kit.as_box(prop).is_none_or(|of| of.id == item.id);
    let envelopes = cx.kit.props.iter().filter(envelope).filter(free);
    let mut choices = vec![(None, "None: it is bought or found at home".to_owned())];
    choices.extend(envelopes.map(|prop| (Some(prop.id.clone()), cx.say(&prop.name))));
    if choices.len() == 1 && item.printed.is_none() {
        return false;
    }
    let lost = item.printed.as_ref().map(|id| format!("{id}, which is no envelope of the kit")).unwrap_or_default();
    let help = "An envelope that the kit prints: it then wears the marks of the locks, and nothing is bought.";
    let id = item.id.clone();
    Field::new("Printed as").help(help).salt(&id).pick(ui, cx, &mut item.printed, &choices, &lost)
}

/// The envelope that a box is, laid where the box stands; none where it lies there already.
fn with_envelope(cx: &Ctx<'_>, item: &BoxDef) -> Option<Prop> {
    let prop = cx.kit.prop(item.printed.as_ref()?)?;
    (prop.place != item.place).then(|| Prop { place: item.place.clone(), ..prop.clone() })
}

/// The roles of a prop, without what belongs to one alone.
fn role_choices(cx: &Ctx<'_>) -> Vec<(PropRole, String)> {
    let mut choices = vec![
        (PropRole::Tool, "A tool that some puzzle needs".to_owned()),
        (PropRole::Decoration, "Decoration that is no clue".to_owned()),
        (PropRole::Decoy, "Decoration that may be taken for a clue".to_owned()),
        (PropRole::Treat, "What the party ends with".to_owned()),
    ];
    choices.extend(
        cx.kit.locks.iter().map(|lock| (PropRole::Key(lock.id.clone()), format!("The key of {}", cx.say(&lock.name)))),
    );
    choices
}

/// A prop.
pub fn prop_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PropId) {
    let Some(prop) = cx.kit.prop(id) else { return };
    let mut prop = prop.clone();
    ui.title(&cx.say(&prop.name));
    ui.lede("A thing at a spot or in a box that belongs to no puzzle: bought, found at home, or printed.");
    let mut changed = Field::new("Name").at(Anchor::Prop(id.clone())).line(ui, cx, &mut prop.name);
    let lost = "the key of a lock that is not in the kit";
    changed |= Field::new("What it is for").salt(id).pick(ui, cx, &mut prop.role, &role_choices(cx), lost);
    changed |= Field::new("Where it lies").salt(id).pick(
        ui,
        cx,
        &mut prop.place,
        &place_choices(cx),
        "a place that is not in the kit",
    );
    let mut materials = vec![(String::new(), "None of the list".to_owned())];
    materials.extend(MATERIALS.iter().map(|material| (material.id.to_owned(), material.name.to_owned())));
    let otherwise = format!("{}, which the list does not have", prop.material);
    changed |= Field::new("Material").help("For the shopping list and the cautions.").salt(id).pick(
        ui,
        cx,
        &mut prop.material,
        &materials,
        &otherwise,
    );
    if let Some(material) = material(&prop.material)
        && !material.caution.is_empty()
    {
        ui.group_card(|ui| {
            ui.strong_small("Caution");
            ui.label(material.caution);
            ui.quiet(material.source);
            ui.quiet(DEFERS);
        });
        ui.add_space(8.0);
    }
    let unit = material(&prop.material).map_or("piece", |material| material.unit);
    let usual = if prop.role == PropRole::Treat { "one for each guest" } else { "one" };
    changed |= amount_ui(ui, cx, id.as_str(), &mut prop.amount, usual, unit);
    changed |= ui.checkbox(&mut prop.used_up, "One party uses it up").changed();
    if prop.used_up {
        let again = if prop.printed.is_some() { "printed" } else { "bought" };
        ui.quiet(&format!("It is cut, written on or taken home: the guide has it {again} again for the next group."));
    }
    if prop.printed.is_none() {
        changed |= ui.checkbox(&mut prop.made, "A step of the preparation makes it").changed();
        if prop.made {
            ui.quiet("The shopping list has what the step takes, and not the thing itself.");
        }
    }
    changed |= Field::new("For the host").salt(id).text(ui, cx, 3, &mut prop.about);
    changed |= printed_ui(ui, cx, &mut prop);
    if changed {
        cx.edit(Edit::Prop(Box::new(prop)));
    }
    remove_ui(ui, cx, &Selection::Prop(id.clone()), "Remove this prop");
}

/// How the party ends.
pub fn finish_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("How it ends");
    ui.lede("The box that must open, the card that lies in it, the treat, and your own part.");
    let mut finish = cx.kit.finish.clone();
    let boxes: Vec<_> = cx.kit.boxes.iter().map(|item| (item.id.clone(), cx.say(&item.name))).collect();
    let notes: Vec<_> = cx
        .kit
        .notes
        .iter()
        .map(|note| {
            let name = if note.title.is_empty() { note.id.to_string() } else { cx.say(&note.title) };
            (note.id.clone(), name)
        })
        .collect();
    let (no_box, no_card) =
        (format!("{}, which is not in the kit", finish.opens), format!("{}, which is not in the kit", finish.card));
    let mut changed = Field::new("The last box").at(Anchor::Finish).pick(ui, cx, &mut finish.opens, &boxes, &no_box);
    changed |= Field::new("The closing card").pick(ui, cx, &mut finish.card, &notes, &no_card);
    changed |= Field::new("The treat").help("For the host's shopping list; allergens are the host's to check.").line(
        ui,
        cx,
        &mut finish.treat,
    );
    let unit = if matches!(finish.amount, HowMany::All(_)) { "piece" } else { "portion" };
    changed |= amount_ui(ui, cx, "treat", &mut finish.amount, "one for each guest", unit);
    changed |= Field::new("What you do when the last box opens")
        .help("For the host guide; empty where guests need nothing but the card.")
        .text(ui, cx, 2, &mut finish.cue);
    if changed {
        cx.edit(Edit::Finish(Box::new(finish)));
    }
}

/// All that lies at a place, as links.
fn lies_ui(ui: &mut Ui, cx: &Ctx<'_>, place: &Place) {
    ui.section("What lies here");
    let kit = cx.kit;
    let mut rows: Vec<(String, Selection)> = Vec::new();
    if kit.letter.place.as_ref() == Some(place) {
        rows.push(("the letter".into(), Selection::Letter));
    }
    for item in kit.boxes.iter().filter(|item| item.place == *place) {
        rows.push((cx.say(&item.name), Selection::Box(item.id.clone())));
    }
    for puzzle in &kit.puzzles {
        for (part, _) in puzzle.parts.iter().filter(|(_, at)| *at == place) {
            let words = format!("{}: {}", puzzle.title, part.replace('-', " "));
            rows.push((words, Selection::Puzzle(puzzle.id.clone())));
        }
    }
    for note in kit.notes.iter().filter(|note| note.place == *place) {
        let name = if note.title.is_empty() { note.id.to_string() } else { cx.say(&note.title) };
        rows.push((name, Selection::Note(note.id.clone())));
    }
    for prop in kit.props.iter().filter(|prop| prop.place == *place) {
        rows.push((cx.say(&prop.name), Selection::Prop(prop.id.clone())));
    }
    if rows.is_empty() {
        ui.quiet("Nothing yet.");
    }
    for (words, to) in rows {
        if ui.link(words).clicked() {
            cx.send(Command::Select(to));
        }
    }
    if let Place::Box(id) = place {
        locks_ui(ui, cx, id);
    }
}

fn locks_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &BoxId) {
    let Some(item) = cx.kit.box_def(id) else { return };
    let missing: Vec<&LockId> = item.locks.iter().filter(|lock| cx.kit.lock(lock).is_none()).collect();
    for lock in missing {
        ui.horizontal(|ui| {
            ui.label(format!("\"{lock}\" hangs on it and is no lock of the kit"));
            if ui.button(format!("Take {lock} off")).clicked() {
                let mut fresh = item.clone();
                fresh.locks.retain(|other| other != lock);
                cx.send(Command::Step(vec![Edit::Box(Box::new(fresh))]));
            }
        });
    }
}
