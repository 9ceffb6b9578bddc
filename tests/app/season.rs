//! The window and the season: eyes, slots, leftovers, a theme that another program changes.

use std::time::Instant;

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use inklatch::bundle::{copy_theme, open, scaffold};
use inklatch::diag::{Anchor, PuzzleField};
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
    let fresh = inklatch::bundle::redone(&demo, &ThemeId::new("harbour").unwrap(), false, &Default::default()).unwrap();
    assert!(!fresh.leftovers.is_empty());
    inklatch::bundle::save_in(&fresh.opened, folder.path()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Leftovers");
    harness.check_accessibility();
    click(&mut harness, Role::Button, "Mend all that a rule can mend");
    let left = inklatch::redress::leftovers(harness.state().kit());
    // What is left has no rule, or stands in a setup that would not bear it.
    let ruled = |at: &inklatch::redress::Leftover| at.by_rule;
    let in_setup = |at: &inklatch::redress::Leftover| matches!(at.anchor, Anchor::Puzzle(_, PuzzleField::Setup));
    assert!(left.len() < fresh.leftovers.len() && left.iter().all(|leftover| !ruled(leftover) || in_setup(leftover)));
    assert_eq!(harness.state().steps(), 1);
    // What changed is told: how many places, and each of them.
    assert!(harness.query_all_by_label_contains("places are mended").next().is_some());
    assert!(harness.query_all_by_label_contains("Mended by rule").next().is_some());
    click(&mut harness, Role::Button, "Close the list of what was mended");
    assert!(harness.query_all_by_label_contains("Mended by rule").next().is_none());
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

/// A small kit that wears a theme of its own, a copy of `plain`.
fn own_theme(folder: &std::path::Path) -> egui_kittest::Harness<'static, inklatch::app::App> {
    let disk = Disk::new(folder);
    let own = copy_theme(&disk, &ThemeId::new("plain").unwrap(), "Our Own").unwrap();
    let mut kit = inklatch::kit::file::read_kit(&scaffold("A Small Kit").unwrap(), "kit.ron").unwrap();
    kit.theme = own;
    disk.write(&path("kit.ron"), inklatch::kit::file::write_kit(&kit).unwrap().as_bytes()).unwrap();
    let mut harness = window(open(Some(folder)).unwrap(), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    harness
}

fn saved_theme(folder: &std::path::Path) -> inklatch::theme::Theme {
    let below = Disk::new(folder.join("themes/our-own"));
    inklatch::theme::load(&below, "our-own").unwrap().theme
}

fn retype(harness: &mut egui_kittest::Harness<'_, inklatch::app::App>, role: Role, name: &str, text: &str) {
    harness.get_by_role_and_label(role, name).focus();
    harness.run_steps(2);
    press(harness, Modifiers::COMMAND, Key::A);
    harness.get_by_role_and_label(role, name).type_text(text);
    harness.run_steps(4);
}

#[test]
fn a_theme_is_made_in_the_window() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = own_theme(folder.path());
    let before = saved_theme(folder.path());
    let kit = harness.state().kit().clone();
    for row in ["Theme", "Palette", "Lettering", "Pictures", "Words", "Dressings"] {
        click(&mut harness, Role::Button, row);
        harness.check_accessibility();
    }
    click(&mut harness, Role::Button, "Palette");
    retype(&mut harness, Role::TextInput, "ink in hex", "#102030");
    click(&mut harness, Role::Button, "Theme");
    retype(&mut harness, Role::TextInput, "Name of the theme", "The Old Observatory");
    assert_eq!(saved_theme(folder.path()), before, "nothing is written before it is saved");
    assert_eq!(*harness.state().kit(), kit, "the kit itself has no other colours");
    press(&mut harness, Modifiers::COMMAND, Key::S);
    let saved = saved_theme(folder.path());
    assert_eq!((saved.palette["ink"].as_str(), saved.name.as_str()), ("#102030", "The Old Observatory"));
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    press(&mut harness, Modifiers::COMMAND, Key::S);
    assert_eq!(saved_theme(folder.path()), before);
    rest(&mut harness);
}

#[test]
fn a_picture_is_replaced_and_a_bad_one_refused() {
    let folder = tempfile::tempdir().unwrap();
    let elsewhere = tempfile::tempdir().unwrap();
    let drawn = Disk::new(elsewhere.path());
    let square = |inner: &str| {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"24mm\" height=\"24mm\" viewBox=\"0 0 24 24\">{inner}</svg>"
        )
    };
    let write = |name: &str, svg: &str| drawn.write(&path(name), svg.as_bytes()).unwrap();
    write("comet.svg", &square("<circle class=\"f-ink\" cx=\"8\" cy=\"8\" r=\"5\"/>"));
    write("frame.svg", &square("<rect id=\"slot-title\" x=\"2\" y=\"2\" width=\"9\" height=\"9\" fill=\"none\"/>"));
    write("bomb.svg", &format!("<!DOCTYPE svg [<!ENTITY a \"b\">]>{}", square("")));
    let mut harness = own_theme(folder.path());
    click(&mut harness, Role::Button, "Pictures");
    let mut replace = |which: &str, file: &str| {
        // The row may be out of sight.
        harness.get_by_role_and_label(Role::Button, &format!("Replace the {which}")).click_accesskit();
        harness.run_steps(6);
        let place = elsewhere.path().join(file).display().to_string();
        harness.get_by_role_and_label(Role::TextInput, &format!("SVG picture for the {which}")).type_text(&place);
        harness.run_steps(2);
        click(&mut harness, Role::Button, "Take it");
        harness.query_all_by_label_contains("the picture before stands").next().is_none()
    };
    assert!(!replace("frame square", "frame.svg"), "a frame without its slots was taken");
    assert!(!replace("symbol star", "bomb.svg"), "a picture that declares entities was taken");
    assert!(!replace("symbol star", "no-such.svg"));
    assert!(replace("symbol star", "comet.svg"));
    harness.check_accessibility();
    press(&mut harness, Modifiers::COMMAND, Key::S);
    let star = saved_theme(folder.path()).symbols["star"].clone();
    assert_eq!(star.as_str(), "art/comet.svg");
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    press(&mut harness, Modifiers::COMMAND, Key::S);
    assert_ne!(saved_theme(folder.path()).symbols["star"], star);
}

#[test]
fn a_kit_that_another_program_changes_is_read_anew() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = own_theme(folder.path());
    rest(&mut harness);
    let file = path("kit.ron");
    let disk = Disk::new(folder.path());
    let good = disk.read_text(&file, 1 << 20).unwrap();
    let mut wait = |words: &str| {
        let start = Instant::now();
        while harness.query_all_by_label_contains(words).next().is_none() {
            assert!(start.elapsed() < PATIENCE, "\"{words}\" did not come about");
            std::thread::sleep(std::time::Duration::from_millis(10));
            harness.step();
        }
    };
    disk.write(&file, &good.as_bytes()[..good.len() / 2]).unwrap();
    wait("the last good version stands in");
    disk.write(&file, good.replace("A Small Kit", "A Kit From Elsewhere").as_bytes()).unwrap();
    wait("it was read anew");
    assert_eq!(harness.state().kit().title, "A Kit From Elsewhere");
}

/// The demo kit on disk, in a theme of its own begun from the one that it wears.
fn begun_theme(folder: &std::path::Path) -> ThemeId {
    let disk = Disk::new(folder);
    let mut kit = open(None).unwrap().kit;
    let own = copy_theme(&disk, &kit.theme, "Our Own").unwrap();
    kit.theme = own.clone();
    disk.write(&path("kit.ron"), inklatch::kit::file::write_kit(&kit).unwrap().as_bytes()).unwrap();
    own
}

#[test]
fn a_symbol_is_renamed_in_the_theme_and_in_the_kit_and_removed_when_nothing_uses_it() {
    let folder = tempfile::tempdir().unwrap();
    let own = begun_theme(folder.path());
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    let before = harness.state().kit().clone();
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Pictures");
    rest(&mut harness);
    // The row may be out of sight.
    let push = |harness: &mut egui_kittest::Harness<'_, inklatch::app::App>, name: &str| {
        harness.get_by_role_and_label(Role::Button, name).click_accesskit();
        harness.run_steps(6);
    };
    push(&mut harness, "Rename the symbol drum");
    retype(&mut harness, Role::TextInput, "New name", "hour gong");
    push(&mut harness, "Rename drum so");
    harness.check_accessibility();
    let kit = harness.state().kit();
    assert_eq!(kit.locks.iter().find(|lock| lock.id.as_str() == "drum-lock").unwrap().mark, "hour gong");
    // The key's name says the old one: that is a leftover, which a rule can mend.
    let left = inklatch::redress::leftovers(kit);
    assert!(left.iter().any(|left| left.word.now == "hour gong" && left.by_rule), "{left:?}");
    // One step takes it all back; a symbol that nothing uses can go.
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(*harness.state().kit(), before);
    push(&mut harness, "Remove the symbol skate");
    press(&mut harness, Modifiers::COMMAND, Key::S);
    rest(&mut harness);
    let file = path("themes").join(own.as_str()).unwrap().join("theme.ron").unwrap();
    let text = Disk::new(folder.path()).read_text(&file, 1 << 20).unwrap();
    assert!(text.contains("\"drum\"") && !text.contains("\"skate\":") && text.contains("begun_from"), "{text}");
}

#[test]
fn a_theme_begun_from_another_has_its_leftovers_looked_for() {
    let folder = tempfile::tempdir().unwrap();
    let own = begun_theme(folder.path());
    let disk = Disk::new(folder.path());
    let file = path("themes").join(own.as_str()).unwrap().join("theme.ron").unwrap();
    let text = disk.read_text(&file, 1 << 20).unwrap();
    disk.write(&file, text.replace("\"snow\"", "\"warm dusk\"").replace("\"snowed\"", "\"dusky\"").as_bytes()).unwrap();
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    click(&mut harness, Role::Button, "Leftovers");
    assert!(inklatch::redress::leftovers(harness.state().kit()).is_empty());
    click(&mut harness, Role::Button, "Look for words of midwinter");
    rest(&mut harness);
    let left = inklatch::redress::leftovers(harness.state().kit());
    assert!(left.iter().any(|left| left.word.one == "snow" && left.slot), "{left:?}");
    assert!(left.iter().all(|left| left.word.one != "frost"), "a word that stayed is nothing old: {left:?}");
    assert!(harness.query_all_by_label_contains("still speak of Midwinter").next().is_some());
}

#[test]
fn a_picture_that_cannot_be_read_is_told_once() {
    let folder = tempfile::tempdir().unwrap();
    let own = begun_theme(folder.path());
    let mut harness = window(open(Some(folder.path())).unwrap(), false);
    rest(&mut harness);
    let disk = Disk::new(folder.path());
    disk.write(&path("themes").join(own.as_str()).unwrap().join("art/note.svg").unwrap(), b"<svg").unwrap();
    let start = Instant::now();
    while harness.query_all_by_label_contains("cannot be read as SVG").next().is_none() {
        assert!(start.elapsed() < PATIENCE, "it is not told");
        std::thread::sleep(std::time::Duration::from_millis(10));
        harness.step();
    }
    rest(&mut harness);
    let told: Vec<String> =
        harness.query_all_by_label_contains("cannot be read as SVG").map(|node| format!("{node:?}")).collect();
    assert_eq!(told.len(), 1, "{told:#?}");
}

/// The field of a colour goes by the arrow keys alone: it is opened, moved, heard and left without a pointer.
#[test]
fn a_colour_is_chosen_by_the_keyboard() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(super::small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num3);
    let colour = |harness: &egui_kittest::Harness<'_, inklatch::app::App>| {
        harness.state().kit().look.palette.get("accent").cloned()
    };
    harness.get_by_role_and_label(Role::Button, "Colour of accent").focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::NONE, Key::Enter);
    harness.check_accessibility();
    let field = |harness: &egui_kittest::Harness<'_, inklatch::app::App>| {
        let field = harness.get_by_role_and_label(Role::Slider, "Strength and lightness of accent");
        (field.is_focused(), field.value().unwrap())
    };
    let (focused, before) = field(&harness);
    assert!(focused, "the field does not take the keyboard");
    press(&mut harness, Modifiers::NONE, Key::ArrowLeft);
    press(&mut harness, Modifiers::SHIFT, Key::ArrowDown);
    let (focused, after) = field(&harness);
    assert!(focused && before != after, "{before}");
    let first = colour(&harness).unwrap();
    press(&mut harness, Modifiers::NONE, Key::Tab);
    assert!(harness.get_by_role_and_label(Role::Slider, "Hue of accent").is_focused());
    press(&mut harness, Modifiers::SHIFT, Key::ArrowRight);
    assert_ne!(colour(&harness).unwrap(), first);
    press(&mut harness, Modifiers::NONE, Key::Escape);
    assert!(harness.query_by_role_and_label(Role::Slider, "Hue of accent").is_none());
    assert!(harness.get_by_role_and_label(Role::Button, "Colour of accent").is_focused());
}

/// Pieces are looked at in each edition, from their list and from where they are written.
#[test]
fn pieces_are_seen_in_each_edition() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(super::small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num5);
    click(&mut harness, Role::Button, "Pieces");
    rest(&mut harness);
    let seen = |harness: &egui_kittest::Harness<'_, inklatch::app::App>| {
        let shown = harness.query_all_by_label_contains(" mm").map(|node| format!("{:?}", node.rect()));
        shown.collect::<Vec<_>>()
    };
    let usual = seen(&harness);
    click(&mut harness, Role::Button, "Large print");
    rest(&mut harness);
    assert_ne!(seen(&harness), usual, "large print has pieces of the same sizes");
    harness.check_accessibility();
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    rest(&mut harness);
    let choice = harness.get_by_role_and_label(Role::ComboBox, "Edition looked at");
    assert_eq!(choice.value().as_deref(), Some("Large print"));
    click(&mut harness, Role::ComboBox, "Edition looked at");
    click(&mut harness, Role::Button, "Low ink");
    rest(&mut harness);
    assert_eq!(harness.state().steps(), 0);
}
