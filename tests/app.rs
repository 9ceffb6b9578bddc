//! Tests of `app`: the window is driven by the roles and names that a screen reader hears.

#[path = "app/desk.rs"]
mod desk;
#[path = "app/drawn.rs"]
mod drawn;
#[path = "app/editing.rs"]
mod editing;
#[path = "app/files.rs"]
mod files;
#[path = "app/forms.rs"]
mod forms;
#[path = "app/gallery.rs"]
mod gallery;
#[path = "app/rehearsal.rs"]
mod rehearsal;
#[path = "app/room.rs"]
mod room;
#[path = "app/season.rs"]
mod season;

use std::path::Path;
use std::time::{Duration, Instant};

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use inklatch::app::App;
use inklatch::bundle::{Opened, open, scaffold};
use inklatch::files::{Disk, Files as _, VPath};

/// Frames after which every view has settled.
const SETTLE: usize = 6;
/// The longest wait for the workers; a loaded machine is slow.
const PATIENCE: Duration = Duration::from_secs(120);

fn demo() -> Opened {
    open(None).unwrap()
}

/// A small kit in a folder of its own.
fn small(folder: &Path) -> Opened {
    let text = scaffold("A Small Kit").unwrap();
    Disk::new(folder).write(&VPath::new("kit.ron").unwrap(), text.as_bytes()).unwrap();
    open(Some(folder)).unwrap()
}

fn window(opened: Opened, dark: bool) -> Harness<'static, App> {
    let mut harness = Harness::builder()
        .with_size([1360.0, 860.0])
        .with_accessibility_check(false)
        .build_eframe(|cx| App::plain(&cx.egui_ctx, opened, dark));
    harness.run_steps(SETTLE);
    harness
}

/// Lets the workers finish and the views show it.
fn rest(harness: &mut Harness<'_, App>) {
    let start = Instant::now();
    while !harness.state().at_rest() {
        assert!(start.elapsed() < PATIENCE, "the workers did not come to rest");
        std::thread::sleep(Duration::from_millis(10));
        harness.step();
    }
    harness.run_steps(SETTLE);
}

fn press(harness: &mut Harness<'_, App>, modifiers: Modifiers, key: Key) {
    harness.key_press_modifiers(modifiers, key);
    harness.run_steps(3);
}

fn click(harness: &mut Harness<'_, App>, role: Role, name: &str) {
    harness.get_by_role_and_label(role, name).click();
    harness.run_steps(SETTLE);
}

#[test]
fn every_place_draws_in_both_themes_and_names_its_controls() {
    for dark in [false, true] {
        let mut harness = window(demo(), dark);
        rest(&mut harness);
        for (place, rows) in [
            ("Write", ["Letter", "Title and guests", "Play levels"].as_slice()),
            ("Build", &["How it ends"]),
            ("Dress", &["Theme", "Palette", "Lettering", "Pictures", "Words", "Dressings", "Leftovers"]),
            ("Prove", &["Findings", "Flow", "Rehearsal", "Plays"]),
            ("Print", &["Sheets", "Pieces", "Bundle"]),
        ] {
            click(&mut harness, Role::Tab, place);
            for row in rows {
                let row = harness.get_all_by_role_and_label(Role::Button, row).next().unwrap();
                row.click();
                harness.run_steps(SETTLE);
                harness.check_accessibility();
            }
        }
    }
}

#[test]
fn both_demo_kits_open_from_the_menu() {
    let mut harness = window(demo(), false);
    for title in ["The Harbour Regatta", "The Stopped Clock"] {
        click(&mut harness, Role::Button, "Kit");
        click(&mut harness, Role::Button, &format!("Open {title}"));
        rest(&mut harness);
        assert_eq!(harness.state().kit().title, title);
    }
}

#[test]
fn every_item_of_the_outline_can_be_taken_in_hand() {
    let mut harness = window(demo(), false);
    let kit = harness.state().kit().clone();
    let titles: Vec<String> = kit.puzzles.iter().map(|puzzle| puzzle.title.clone()).collect();
    let names = kit.locks.iter().map(|lock| lock.name.clone()).chain(kit.boxes.iter().map(|item| item.name.clone()));
    let things: Vec<String> =
        names.chain(kit.spots.iter().map(|s| s.name.clone())).chain(kit.props.iter().map(|p| p.name.clone())).collect();
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    for name in titles.iter().chain(&things) {
        let row = harness.get_all_by_role_and_label(Role::Button, name).next().unwrap();
        row.click();
        harness.run_steps(SETTLE);
        harness.check_accessibility();
    }
}

/// What is typed comes onto the page by itself, with no other action; how soon, `cargo bench` measures.
#[test]
fn a_keystroke_is_drawn_on_the_page() {
    let mut harness = window(demo(), false);
    rest(&mut harness);
    harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
    harness.run_steps(2);
    for letter in ["a", "b", "c"] {
        harness.get_by_role_and_label(Role::TextInput, "Closing").type_text(letter);
        harness.step();
        rest(&mut harness);
        assert!(harness.state().kit().letter.closing.ends_with(letter) && harness.state().drawn(), "{letter}");
    }
}

#[test]
fn at_200_percent_every_place_still_draws_within_the_window() {
    let mut harness = window(demo(), false);
    harness.set_size(eframe::egui::vec2(720.0, 450.0));
    harness.run_steps(SETTLE);
    for place in ["Write", "Build", "Dress", "Prove", "Print"] {
        click(&mut harness, Role::Tab, place);
        harness.check_accessibility();
        for name in ["Write", "Print"] {
            let tab = harness.get_by_role_and_label(Role::Tab, name).rect();
            let menu = harness.get_by_role_and_label(Role::Button, "Kit").rect();
            assert!(tab.min.x >= 0.0 && tab.max.x <= menu.min.x, "{name} {tab:?} meets {menu:?}");
            assert!(menu.max.x <= 720.0);
        }
    }
}
