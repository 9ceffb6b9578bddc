//! Forms of the window, filled in by hand; and the order in which the keyboard goes through it.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use inklatch::kit::RawSetup;
use inklatch::kit::file::read_plays;

use super::{SETTLE, click, demo, press, rest, small, window};

/// Header, outline, fields, desk, findings.
#[test]
fn the_keyboard_goes_through_the_window_as_it_is_read() {
    let mut harness = window(demo(), false);
    rest(&mut harness);
    let wanted =
        ["Write", "View", "Letter", "Play levels", "Heading", "Signature", "Edition looked at", "Hide the findings"];
    let mut met: Vec<String> = Vec::new();
    for _ in 0..120 {
        press(&mut harness, Modifiers::NONE, Key::Tab);
        let node = harness.query_all(egui_kittest::kittest::By::new().predicate(|node| node.is_focused())).next();
        let name = node.and_then(|node| node.accesskit_node().label()).unwrap_or_default();
        if wanted.contains(&name.as_str()) && !met.contains(&name) {
            met.push(name);
        }
    }
    assert_eq!(met, wanted);
}

#[test]
fn steps_of_the_preparation_are_written_moved_and_removed() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    click(&mut harness, Role::Button, "Title and guests");
    let before = harness.state().kit().clone();
    for _ in 0..2 {
        harness.get_by_role_and_label(Role::Button, "Add a step").click_accesskit();
        harness.run_steps(SETTLE);
    }
    for (nth, name, text) in [
        (0, "What the host does", "Bake the biscuits."),
        (1, "What the host does", "Hang the lights."),
        (0, "What it takes", "string 0.5\nlarge button 2"),
    ] {
        harness_field(&harness, name, nth).focus();
        harness.run_steps(2);
        for c in text.chars() {
            match c {
                '\n' => press(&mut harness, Modifiers::NONE, Key::Enter),
                c => harness_field(&harness, name, nth).type_text(&c.to_string()),
            }
            harness.run_steps(2);
        }
    }
    let steps = &harness.state().kit().preparation;
    assert_eq!(steps[0].what, "Bake the biscuits.");
    assert_eq!(steps[0].takes, [("large button".to_owned(), 2.0), ("string".to_owned(), 0.5)].into());
    for (button, first, count) in [
        ("Step 2 earlier", "Hang the lights.", 2),
        ("Step 1 later", "Bake the biscuits.", 2),
        ("Remove step 1", "Hang the lights.", 1),
    ] {
        harness.get_by_role_and_label(Role::Button, button).click_accesskit();
        harness.run_steps(SETTLE);
        let steps = &harness.state().kit().preparation;
        assert_eq!((steps[0].what.as_str(), steps.len()), (first, count), "{button}");
    }
    while harness.state().steps() > 0 {
        press(&mut harness, Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(*harness.state().kit(), before);
}

fn harness_field<'h>(
    harness: &'h egui_kittest::Harness<'_, inklatch::app::App>,
    name: &'h str,
    nth: usize,
) -> egui_kittest::Node<'h> {
    harness.get_all_by_role_and_label(Role::MultilineTextInput, name).nth(nth).unwrap()
}

/// What whole evenings tell of a puzzle stands beside its minutes.
#[test]
fn the_minutes_of_real_evenings_stand_beside_those_of_the_author() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    let plays = "(format: 1, plays: [(guests: 3, minutes: 90), (guests: 4, minutes: 95), (guests: 4, minutes: 85)])";
    opened.kit.plays = read_plays(plays, "plays.ron").unwrap();
    let mut harness = window(opened, false);
    rest(&mut harness);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    harness.get_by_label_contains("corrected by the whole minutes of 3 plays");
}

#[test]
fn a_fault_in_a_setup_stands_at_its_row() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    let puzzle = opened.kit.puzzles.first_mut().unwrap();
    puzzle.setup = RawSetup::new(&puzzle.setup.ron().replace("\"OWL\"", "\"OWLS\"")).unwrap();
    let mut harness = window(opened, false);
    rest(&mut harness);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    let row = harness.get_by_role_and_label(Role::TextInput, "Word").rect();
    let fault = harness.get_by_label_contains("Each letter of \"Word\" gives one digit").rect();
    assert!(fault.top() > row.top() && fault.top() - row.bottom() < 60.0, "{fault:?} is not below {row:?}");
}

#[test]
fn the_gallery_is_looked_at_in_every_edition() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, "Add a puzzle");
    rest(&mut harness);
    harness.get_by_label("Edition looked at");
}
