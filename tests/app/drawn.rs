//! The drawn flow in the window: nodes by role and name, joined by a drag and by keyboard, each one step to undo.

use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use inklatch::app::App;
use inklatch::kit::Place;

use super::{Modifiers, SETTLE, click, press, rest, small, window};

fn flow_of(harness: &mut Harness<'_, App>) {
    click(harness, Role::Tab, "Build");
    click(harness, Role::Button, "Flow");
    rest(harness);
}

fn at(harness: &Harness<'_, App>, name: &str) -> eframe::egui::Pos2 {
    harness.get_by_label_contains(name).rect().center()
}

fn spot(name: &str) -> Place {
    Place::Spot(inklatch::ids::SpotId::new(name).unwrap())
}

#[test]
fn a_drag_joins_two_nodes_in_one_step() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    flow_of(&mut harness);
    harness.check_accessibility();
    let before = harness.state().kit().props[0].place.clone();
    assert_ne!(before, spot("shelf"));
    let (from, to) = (at(&harness, "prop the biscuits"), at(&harness, "spot the shelf"));
    harness.drag_at(from);
    harness.run_steps(2);
    harness.hover_at(from + (to - from) / 2.0);
    harness.run_steps(2);
    harness.hover_at(to);
    harness.run_steps(2);
    harness.drop_at(to);
    harness.run_steps(SETTLE);
    assert_eq!(harness.state().kit().props[0].place, spot("shelf"));
    assert_eq!(harness.state().steps(), 1);
    harness.get_by_label("Laid at the shelf: the biscuits.");
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(harness.state().kit().props[0].place, before);
}

#[test]
fn two_nodes_are_joined_by_keyboard_and_a_refusal_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), true);
    flow_of(&mut harness);
    for (from, to) in [("prop the biscuits", "spot the table"), ("spot the shelf", "spot the table")] {
        harness.get_by_label_contains(from).focus();
        harness.run_steps(2);
        press(&mut harness, Modifiers::NONE, Key::J);
        harness.get_by_label_contains(to).focus();
        harness.run_steps(2);
        press(&mut harness, Modifiers::NONE, Key::J);
        rest(&mut harness);
    }
    assert_eq!(harness.state().kit().props[0].place, spot("table"));
    assert_eq!(harness.state().steps(), 1);
    harness.get_by_label_contains("Two spots cannot be joined.");
}

#[test]
fn a_click_goes_to_the_fields_and_the_words_say_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    flow_of(&mut harness);
    click(&mut harness, Role::Button, "In words");
    harness.get_by_label("The end can be reached, in 1 round.");
    harness.check_accessibility();
    click(&mut harness, Role::Button, "Drawn");
    harness.get_by_label_contains("lock the padlock").click();
    harness.run_steps(SETTLE);
    // The field of the lock's name.
    harness.get_by_role_and_label(Role::TextInput, "Name");
}
