//! The window and the season: eyes, slots, leftovers, a theme that another program changes.

use std::time::Instant;

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use inklatch::bundle::{copy_theme, open, scaffold};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::ids::ThemeId;

use super::{PATIENCE, click, press, rest, window};

fn path(text: &str) -> VPath {
    VPath::new(text).unwrap()
}

#[test]
fn a_picked_word_becomes_a_slot() {
    let folder = tempfile::tempdir().unwrap();
    let mut kit = inklatch::kit::file::read_kit(&scaffold("A Small Kit").unwrap(), "kit.ron").unwrap();
    kit.letter.body = "lighthouse".into();
    let text = inklatch::kit::file::write_kit(&kit).unwrap();
    Disk::new(folder.path()).write(&path("kit.ron"), text.as_bytes()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    harness.get_by_role_and_label(Role::MultilineTextInput, "Story").focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::COMMAND, Key::A);
    click(&mut harness, Role::Button, "Make “lighthouse” a slot");
    click(&mut harness, Role::Button, "Everywhere, 1 place");
    assert_eq!(harness.state().kit().letter.body, "{{ lighthouse }}");
    assert_eq!(harness.state().kit().words["lighthouse"].one, "lighthouse");
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(*harness.state().kit(), kit);
}

#[test]
fn leftovers_are_listed_and_mended() {
    let folder = tempfile::tempdir().unwrap();
    let demo = open(None).unwrap();
    let fresh = inklatch::bundle::redone(&demo, &ThemeId::new("harbour").unwrap(), false).unwrap();
    assert!(!fresh.leftovers.is_empty());
    inklatch::bundle::save_in(&fresh.opened, folder.path()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Leftovers");
    harness.check_accessibility();
    click(&mut harness, Role::Button, "Mend all that a rule can mend");
    let left = inklatch::redress::leftovers(harness.state().kit());
    assert!(left.len() < fresh.leftovers.len() && left.iter().all(|leftover| !leftover.slot && !leftover.replace));
    assert_eq!(harness.state().steps(), 1);
}

#[test]
fn a_theme_that_another_program_breaks_stays_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let disk = Disk::new(folder.path());
    let own = copy_theme(&disk, &ThemeId::new("plain").unwrap(), "Our Own").unwrap();
    assert_eq!(own.as_str(), "our-own");
    let mut kit = inklatch::kit::file::read_kit(&scaffold("A Small Kit").unwrap(), "kit.ron").unwrap();
    kit.theme = own;
    disk.write(&path("kit.ron"), inklatch::kit::file::write_kit(&kit).unwrap().as_bytes()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Theme");
    rest(&mut harness);
    let file = path("themes/our-own/theme.ron");
    let good = disk.read_text(&file, 1 << 20).unwrap();
    let says = |harness: &mut egui_kittest::Harness<'_, inklatch::app::App>, words: &str, wanted: bool| {
        let start = Instant::now();
        while harness.query_all_by_label_contains(words).next().is_some() != wanted {
            assert!(start.elapsed() < PATIENCE, "\"{words}\": {wanted} did not come about");
            std::thread::sleep(std::time::Duration::from_millis(10));
            harness.step();
        }
    };
    disk.write(&file, &good.as_bytes()[..good.len() / 2]).unwrap();
    says(&mut harness, "the last good version stands in", true);
    assert!(harness.query_all_by_label_contains("Our Own").next().is_some());
    disk.write(&file, good.replace("Our Own", "Mended").as_bytes()).unwrap();
    says(&mut harness, "the last good version stands in", false);
    says(&mut harness, "Mended", true);
}

#[test]
fn a_kit_goes_into_another_theme_in_one_step_and_back() {
    let folder = tempfile::tempdir().unwrap();
    let text = inklatch::kit::file::write_kit(&open(None).unwrap().kit).unwrap();
    Disk::new(folder.path()).write(&path("kit.ron"), text.as_bytes()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    let before = harness.state().kit().clone();
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Theme");
    click(&mut harness, Role::ComboBox, "Theme");
    click(&mut harness, Role::Button, "Hive");
    rest(&mut harness);
    assert!(harness.query_all_by_label_contains("(hive)").next().is_some(), "nothing is shown beside the old pieces");
    harness.check_accessibility();
    click(&mut harness, Role::Button, "Put the kit into Hive");
    rest(&mut harness);
    assert_eq!(harness.state().kit().theme.as_str(), "hive");
    assert_eq!(harness.state().steps(), 1);
    let answers = |kit: &inklatch::kit::Kit| kit.puzzles.iter().map(|puzzle| puzzle.answer.clone()).collect::<Vec<_>>();
    assert_ne!(answers(harness.state().kit()), answers(&before));
    assert!(harness.query_all_by_label_contains("still speak of midwinter").next().is_some());
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(*harness.state().kit(), before);
}

#[test]
fn pieces_are_seen_with_other_eyes() {
    let mut harness = window(open(None).unwrap(), false);
    rest(&mut harness);
    for eyes in ["Deutan", "Grey", "Full colour"] {
        click(&mut harness, Role::ComboBox, "Seen with these eyes");
        click(&mut harness, Role::Button, eyes);
        harness.check_accessibility();
        let choice = harness.get_by_role_and_label(Role::ComboBox, "Seen with these eyes");
        assert_eq!(choice.value().as_deref(), Some(eyes));
    }
    assert_eq!(harness.state().steps(), 0);
}
