//! Opening, saving, and what must not be lost.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, ViewportEvent, ViewportId};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use inklatch::app::App;
use inklatch::bundle::open;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::file::write_kit;

use super::{click, demo, press, small, window};

#[test]
fn saving_asks_for_a_folder_and_closing_asks_about_changes() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(demo(), false);
    press(&mut harness, Modifiers::COMMAND, Key::S);
    let field = "Folder to save the kit in";
    harness.get_by_role_and_label(Role::TextInput, field).focus();
    harness.run_steps(2);
    let place = folder.path().join("mine");
    harness.get_by_role_and_label(Role::TextInput, field).type_text(&place.display().to_string());
    harness.run_steps(2);
    press(&mut harness, Modifiers::NONE, Key::Enter);
    let again = open(Some(&place)).unwrap();
    assert_eq!(write_kit(&again.kit).unwrap(), write_kit(harness.state().kit()).unwrap());

    harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
    harness.run_steps(2);
    harness.get_by_role_and_label(Role::TextInput, "Closing").type_text("x");
    harness.run_steps(3);
    let window = harness.input_mut().viewports.entry(ViewportId::ROOT).or_default();
    window.events.push(ViewportEvent::Close);
    harness.run_steps(3);
    assert!(harness.query_by_role_and_label(Role::Button, "Close without saving").is_some());
    click(&mut harness, Role::Button, "Stay");
    assert!(harness.query_by_role_and_label(Role::Button, "Close without saving").is_none());
    press(&mut harness, Modifiers::COMMAND, Key::S);
    let again = open(Some(&place)).unwrap();
    assert_eq!(again.kit, *harness.state().kit());
}

/// That it was saved is told without moving what the pointer is at, which a second click would miss.
#[test]
fn keys_work_after_a_click_and_saving_moves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, "the padlock");
    let tag = "Print a tag with its mark, to tie to its shackle";
    let at = harness.get_by_role_and_label(Role::CheckBox, tag).rect();
    for tagged in [false, true, false] {
        click(&mut harness, Role::CheckBox, tag);
        press(&mut harness, Modifiers::COMMAND, Key::S);
        assert!(harness.query_all_by_label_contains("Saved to").next().is_some());
        assert_eq!(harness.get_by_role_and_label(Role::CheckBox, tag).rect(), at);
        assert_eq!(open(Some(folder.path())).unwrap().kit.locks[0].tag, tagged);
    }
    click(&mut harness, Role::Button, "Put away");
    assert!(harness.query_all_by_label_contains("Saved to").next().is_none());
}

#[test]
fn a_folder_that_cannot_be_written_keeps_everything() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a-file");
    let mut harness = window(small(&folder.path().join("kit")), false);
    harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
    harness.run_steps(2);
    harness.get_by_role_and_label(Role::TextInput, "Closing").type_text("x");
    harness.run_steps(2);
    let before = harness.state().kit().clone();
    // A folder below a file can never be made, not even by root.
    Disk::new(folder.path()).write(&VPath::new("a-file").unwrap(), b"x").unwrap();
    press(&mut harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    let field = "Folder to save the kit in";
    harness.get_by_role_and_label(Role::TextInput, field).focus();
    harness.run_steps(2);
    harness.get_by_role_and_label(Role::TextInput, field).type_text(&file.join("x").display().to_string());
    harness.run_steps(2);
    click(&mut harness, Role::Button, "Save here");
    assert!(harness.query_all_by_label_contains("nothing is lost").next().is_some());
    assert_eq!(*harness.state().kit(), before);
}

#[test]
fn what_others_wrote_is_not_overwritten() {
    let folder = tempfile::tempdir().unwrap();
    let disk = Disk::new(folder.path());
    let (file, kept) = (VPath::new("kit.ron").unwrap(), VPath::new("kit-with-comments.ron").unwrap());
    let mut harness = window(small(folder.path()), false);
    let commented = disk.read_text(&file, 1 << 20).unwrap();
    assert!(commented.contains("//"), "the fresh kit explains itself in comments");
    let type_x = |harness: &mut Harness<'_, App>| {
        harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
        harness.run_steps(2);
        harness.get_by_role_and_label(Role::TextInput, "Closing").type_text("x");
        harness.run_steps(3);
    };
    type_x(&mut harness);
    press(&mut harness, Modifiers::COMMAND, Key::S);
    let saved = disk.read_text(&file, 1 << 20).unwrap();
    let comments = |text: &str| text.lines().filter(|line| line.contains("// ")).count();
    assert!(saved != commented && comments(&saved) == comments(&commented), "{saved}");
    assert!(!disk.exists(&kept), "no comment is lost");
    assert_eq!(open(Some(folder.path())).unwrap().kit, *harness.state().kit());
    // Another program writes the file: saving refuses, and leaves that file as it is.
    let theirs = disk.read_text(&file, 1 << 20).unwrap().replace("A Small Kit", "Another Title");
    type_x(&mut harness);
    disk.write(&file, theirs.as_bytes()).unwrap();
    press(&mut harness, Modifiers::COMMAND, Key::S);
    assert!(harness.query_all_by_label_contains("changed by another program").next().is_some());
    assert_eq!(disk.read_text(&file, 1 << 20).unwrap(), theirs);
}

#[test]
fn a_fresh_kit_is_made_in_the_window() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(demo(), false);
    press(&mut harness, Modifiers::COMMAND, Key::N);
    let field = "Folder for the new kit, empty or not there yet";
    let ask = |harness: &mut Harness<'_, App>, place: &std::path::Path| {
        harness.get_by_role_and_label(Role::TextInput, field).focus();
        harness.run_steps(2);
        harness.get_by_role_and_label(Role::TextInput, field).type_text(&place.display().to_string());
        harness.run_steps(2);
        click(harness, Role::Button, "Make it");
    };
    let place = folder.path().join("the-night-ferry");
    ask(&mut harness, &place);
    assert_eq!(harness.state().kit().title, "The night ferry");
    assert_eq!(open(Some(&place)).unwrap().kit, *harness.state().kit());
    assert!(harness.get_by_role_and_label(Role::TextInput, "Title").is_focused(), "a fresh kit wants a title");
    // A folder that holds something is left as it is.
    press(&mut harness, Modifiers::COMMAND, Key::N);
    ask(&mut harness, &place);
    assert!(harness.query_all_by_label_contains("the folder is not empty").next().is_some());
}
