//! Tests of `app`: the window is driven by the roles and names that a screen reader hears.

#[path = "app/drawn.rs"]
mod drawn;
#[path = "app/season.rs"]
mod season;

use std::path::Path;
use std::time::{Duration, Instant};

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, ViewportEvent, ViewportId, pos2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use inklatch::app::App;
use inklatch::bundle::{Opened, open, scaffold};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::file::write_kit;
use inklatch::mechanics::MECHANICS;

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
            ("Prove", &["Findings", "Flow"]),
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

#[test]
fn typing_into_the_letter_changes_the_kit_and_undo_takes_it_back() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    let before = harness.state().kit().letter.closing.clone();
    harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::NONE, Key::End);
    harness.get_by_role_and_label(Role::TextInput, "Closing").type_text(" indeed");
    harness.run_steps(3);
    let after = harness.state().kit().letter.closing.clone();
    assert_eq!(after, format!("{before} indeed"));
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(harness.state().kit().letter.closing, before);
    press(&mut harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert_eq!(harness.state().kit().letter.closing, after);
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    harness.get_by_role_and_label(Role::TextInput, "Signature").focus();
    harness.run_steps(2);
    harness.get_by_role_and_label(Role::TextInput, "Signature").type_text("x");
    harness.run_steps(3);
    // A change after an undo leaves nothing to make again.
    let now = harness.state().kit().letter.clone();
    press(&mut harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert_eq!(harness.state().kit().letter, now);
}

/// A keystroke must be on the page before the next one. The bound is loose, so that a busy machine passes.
#[test]
fn a_keystroke_is_soon_on_the_page() {
    let mut harness = window(demo(), false);
    rest(&mut harness);
    harness.get_by_role_and_label(Role::TextInput, "Closing").focus();
    harness.run_steps(2);
    let mut taken = Vec::new();
    for letter in ["a", "b", "c", "d", "e"] {
        harness.get_by_role_and_label(Role::TextInput, "Closing").type_text(letter);
        let start = Instant::now();
        harness.step();
        while !harness.state().drawn() {
            std::thread::sleep(Duration::from_millis(1));
            harness.step();
        }
        taken.push(start.elapsed());
        std::thread::sleep(Duration::from_millis(400));
    }
    taken.sort();
    println!("a keystroke is on the page after {taken:?}");
    assert!(taken[taken.len() / 2] < Duration::from_millis(500), "{taken:?}");
}

#[test]
fn a_drag_over_many_frames_is_one_step() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    click(&mut harness, Role::Button, "Title and guests");
    let minutes = harness.state().kit().minutes;
    harness.get_by_role_and_label(Role::SpinButton, "Play time").scroll_to_me();
    harness.run_steps(SETTLE);
    let from = harness.get_by_role_and_label(Role::SpinButton, "Play time").rect().center();
    harness.drag_at(from);
    harness.run_steps(2);
    let mut seen = Vec::new();
    for step in 1..=12_u8 {
        harness.hover_at(pos2(from.x + 6.0 * f32::from(step), from.y));
        harness.run_steps(2);
        seen.push(harness.state().kit().minutes);
    }
    seen.dedup();
    assert!(seen.len() > 2, "the number followed the pointer: {seen:?}");
    harness.drop_at(pos2(from.x + 72.0, from.y));
    harness.run_steps(3);
    assert_eq!(harness.state().steps(), 1);
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(harness.state().kit().minutes, minutes);
}

#[test]
fn a_finding_leads_to_its_field_and_its_fix_is_one_step() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    let puzzle = opened.kit.puzzles.first_mut().unwrap();
    puzzle.hints.method.clear();
    let title = puzzle.title.clone();
    let mut harness = window(opened, false);
    rest(&mut harness);
    let found = harness
        .get_all_by_role(Role::Button)
        .filter_map(|node| node.accesskit_node().label())
        .find(|label| label.starts_with("warns:") && label.contains("method"));
    let found = found.expect("a missing hint is a finding");
    click(&mut harness, Role::Button, &found);
    assert!(harness.get_by_role_and_label(Role::MultilineTextInput, "Method").is_focused());
    assert!(harness.query_all_by_label(&title).next().is_some());
    let fix = harness
        .get_all_by_role(Role::Button)
        .filter_map(|node| node.accesskit_node().label())
        .find(|label| label.contains("draft") && !label.starts_with("Take the draft of"));
    let steps = harness.state().steps();
    click(&mut harness, Role::Button, &fix.expect("the finding has a fix"));
    assert_eq!(harness.state().steps(), steps + 1);
    assert!(!harness.state().kit().puzzles[0].hints.method.is_empty());
}

#[test]
fn a_setup_that_is_no_ron_leaves_the_kit_alone() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    let before = harness.state().kit().clone();
    harness.get_by_role_and_label(Role::DisclosureTriangle, "The same as text").click_accesskit();
    harness.run_steps(SETTLE);
    let field = || "Setup in RON";
    harness.get_by_role_and_label(Role::MultilineTextInput, field()).focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::COMMAND, Key::End);
    harness.get_by_role_and_label(Role::MultilineTextInput, field()).type_text("(");
    harness.run_steps(3);
    assert_eq!(*harness.state().kit(), before);
    assert!(harness.query_all_by_label_contains("this is no RON yet").next().is_some());
    press(&mut harness, Modifiers::NONE, Key::Backspace);
    assert!(harness.query_all_by_label_contains("this is no RON yet").next().is_none());
}

#[test]
fn a_setup_is_changed_in_its_form_and_the_rest_of_its_text_stays() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    let before = harness.state().kit().puzzles[0].setup.ron().to_owned();
    let title = "Card title";
    harness.get_by_role_and_label(Role::TextInput, title).focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::COMMAND, Key::End);
    harness.get_by_role_and_label(Role::TextInput, title).type_text("!");
    harness.run_steps(3);
    let after = harness.state().kit().puzzles[0].setup.ron().to_owned();
    assert_ne!(after, before);
    let kept: Vec<&str> = after.lines().filter(|line| !line.contains("card_title")).collect();
    assert!(before.lines().filter(|line| !line.contains("card_title")).eq(kept), "{before}\n{after}");
    for (button, words) in
        [("Add one to Other words", "other_words: [\"\"]"), ("Remove Other words 1", "other_words: []")]
    {
        harness.get_by_role_and_label(Role::Button, button).click_accesskit();
        harness.run_steps(SETTLE);
        let ron: String = harness.state().kit().puzzles[0].setup.ron().split_whitespace().collect();
        assert!(ron.replace(",]", "]").contains(&words.replace(' ', "")), "{ron}");
    }
}

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
    click(&mut harness, Role::Button, "Save here");
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
fn things_are_added_and_removed_in_one_step_each() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    for (add, remove) in [
        ("Add a spot", "Remove this spot"),
        ("Add a box", "Remove this box"),
        ("Add a prop", "Remove this prop"),
        ("Add a lock", "Remove this lock"),
        ("Add a puzzle", "Remove this puzzle"),
    ] {
        let before = harness.state().kit().clone();
        let steps = harness.state().steps();
        harness.get_by_role_and_label(Role::Button, add).scroll_to_me();
        harness.run_steps(SETTLE);
        click(&mut harness, Role::Button, add);
        assert_ne!(*harness.state().kit(), before, "{add}");
        harness.get_by_role_and_label(Role::Button, remove).scroll_to_me();
        harness.run_steps(SETTLE);
        click(&mut harness, Role::Button, remove);
        assert_eq!(*harness.state().kit(), before, "{remove}");
        assert_eq!(harness.state().steps(), steps + 2);
    }
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
    assert_eq!(disk.read_text(&kept, 1 << 20).unwrap(), commented);
    assert_eq!(open(Some(folder.path())).unwrap().kit, *harness.state().kit());
    // Another program writes the file: saving refuses, and leaves that file as it is.
    let theirs = disk.read_text(&file, 1 << 20).unwrap().replace("A Small Kit", "Another Title");
    type_x(&mut harness);
    disk.write(&file, theirs.as_bytes()).unwrap();
    press(&mut harness, Modifiers::COMMAND, Key::S);
    assert!(harness.query_all_by_label_contains("changed by another program").next().is_some());
    assert_eq!(disk.read_text(&file, 1 << 20).unwrap(), theirs);
    assert_eq!(disk.read_text(&kept, 1 << 20).unwrap(), commented);
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

/// The names of the cards that the gallery shows.
fn cards(harness: &Harness<'_, App>) -> Vec<&'static str> {
    let shown = |name: &str| harness.query_all_by_role_and_label(Role::Button, name).next().is_some();
    MECHANICS.iter().map(|mechanic| mechanic.meta().name).filter(|name| shown(name)).collect()
}

#[test]
fn the_gallery_shows_every_mechanic_and_filters_them() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, "All mechanics");
    rest(&mut harness);
    harness.check_accessibility();
    assert_eq!(cards(&harness).len(), MECHANICS.len());
    click(&mut harness, Role::CheckBox, "Paper only");
    let paper = cards(&harness);
    assert!(paper.contains(&"Cut strips") && !paper.contains(&"Overlay sheets") && !paper.contains(&"Glow ink"));
    click(&mut harness, Role::CheckBox, "Paper only");
    click(&mut harness, Role::CheckBox, "No tool");
    assert!(!cards(&harness).contains(&"Magnet field") && cards(&harness).contains(&"Overlay sheets"));
    click(&mut harness, Role::CheckBox, "No tool");
    click(&mut harness, Role::CheckBox, "No colours to tell apart");
    assert!(!cards(&harness).contains(&"Banded counters"));
    click(&mut harness, Role::CheckBox, "No colours to tell apart");
    harness.get_by_role_and_label(Role::TextInput, "Search").focus();
    harness.run_steps(2);
    harness.get_by_role_and_label(Role::TextInput, "Search").type_text("pleats");
    harness.run_steps(3);
    assert_eq!(cards(&harness), ["Fold strip"]);
}

#[test]
fn a_card_of_the_gallery_becomes_a_puzzle_that_reads_one_way() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), true);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    for (mechanic, name) in [("cut-strips", "Cut strips"), ("marked-hiding-place", "Marked hiding place")] {
        click(&mut harness, Role::Button, "All mechanics");
        rest(&mut harness);
        // By keyboard: the card takes the focus and is pressed.
        harness.get_by_role_and_label(Role::Button, name).focus();
        harness.run_steps(2);
        press(&mut harness, Modifiers::NONE, Key::Enter);
        harness.run_steps(SETTLE);
        harness.check_accessibility();
        let before = harness.state().steps();
        harness.get_by_role_and_label(Role::Button, "Make a puzzle of it").focus();
        harness.run_steps(2);
        press(&mut harness, Modifiers::NONE, Key::Enter);
        rest(&mut harness);
        assert_eq!(harness.state().steps(), before + 1);
        let kit = harness.state().kit().clone();
        let puzzle = kit.puzzles.iter().find(|puzzle| puzzle.mechanic == mechanic).unwrap();
        assert!(kit.lock(&puzzle.opens).is_some() && kit.puzzle_of(&puzzle.opens).map(|p| &p.id) == Some(&puzzle.id));
        assert!(kit.boxes.iter().any(|item| item.locks.contains(&puzzle.opens)));
        let theme = inklatch::theme::load_builtin(&kit.theme).unwrap();
        let party = inklatch::party::Party::new(&kit, &theme, inklatch::diag::Level::Standard).unwrap();
        assert_eq!(party.puzzle(&puzzle.id).unwrap().verdict, Some(inklatch::readings::Verdict::One), "{mechanic}");
        press(&mut harness, Modifiers::COMMAND, Key::Z);
        assert!(harness.state().kit().puzzles.iter().all(|puzzle| puzzle.mechanic != mechanic));
        press(&mut harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    }
}

#[test]
fn another_arrangement_is_one_step_and_another_face() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, "All mechanics");
    rest(&mut harness);
    for button in ["Cut strips", "Make a puzzle of it"] {
        harness.get_by_role_and_label(Role::Button, button).click_accesskit();
        harness.run_steps(SETTLE);
    }
    rest(&mut harness);
    let pieces = |harness: &Harness<'_, App>| {
        let kit = harness.state().kit();
        let theme = inklatch::theme::load_builtin(&kit.theme).unwrap();
        let party = inklatch::party::Party::new(kit, &theme, inklatch::diag::Level::Standard).unwrap();
        party.pieces.iter().filter(|piece| piece.part == "strips").map(|piece| piece.front.clone()).collect::<Vec<_>>()
    };
    let (first, steps) = (pieces(&harness), harness.state().steps());
    click(&mut harness, Role::Button, "Try another arrangement");
    rest(&mut harness);
    assert_eq!(harness.state().steps(), steps + 1);
    assert_ne!(pieces(&harness), first);
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(pieces(&harness), first);
}
