//! Edits by hand: each gesture is one step, and each step is taken back.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, pos2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use inklatch::app::App;
use inklatch::diag::Level;
use inklatch::kit::LevelChange;

use super::{SETTLE, click, demo, press, rest, small, window};

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

/// Evenings that run long at several levels have one cause: one finding names the levels, leads to the play time, and one
/// step mends them all.
#[test]
fn evenings_too_long_at_all_levels_are_one_finding_at_the_play_time() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    opened.kit.minutes = 5;
    let mut harness = window(opened, false);
    rest(&mut harness);
    let long = |harness: &Harness<'_, App>| -> Vec<String> {
        let labels = harness.get_all_by_role(Role::Button).filter_map(|node| node.accesskit_node().label());
        labels.filter(|label| label.contains("simulated evenings")).collect()
    };
    let found = long(&harness);
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(["gentle", "standard", "stiff"].iter().all(|level| found[0].contains(level)), "{found:?}");
    click(&mut harness, Role::Button, &found[0]);
    harness.run_steps(SETTLE);
    assert!(harness.get_by_role_and_label(Role::SpinButton, "Play time").is_focused());
    let fix = harness.get_all_by_role(Role::Button).filter_map(|node| node.accesskit_node().label());
    let fix = fix.into_iter().find(|label| label.starts_with("State ")).expect("the finding has a fix");
    let steps = harness.state().steps();
    click(&mut harness, Role::Button, &fix);
    assert_eq!(harness.state().steps(), steps + 1);
    rest(&mut harness);
    assert_eq!(long(&harness), [""; 0]);
}

/// What a level changes besides stays when its own hints are emptied or its own setup is given up.
#[test]
fn a_level_keeps_its_minutes_when_its_hints_and_setup_go() {
    let folder = tempfile::tempdir().unwrap();
    let mut opened = small(folder.path());
    let puzzle = &mut opened.kit.puzzles[0];
    puzzle.minutes = Some(8.0);
    let setup = Some(puzzle.setup.clone());
    puzzle.gentle = Some(LevelChange { setup, minutes: Some(6.0), ..LevelChange::default() });
    puzzle.hints_mut(Level::Gentle).nudge = "N".into();
    let title = puzzle.title.clone();
    let mut harness = window(opened, false);
    let minutes = |harness: &Harness<'_, App>| harness.state().kit().puzzles[0].gentle.as_ref()?.minutes;
    click(&mut harness, Role::Button, &title);
    harness.get_all_by_role_and_label(Role::Button, "gentle level").next().unwrap().click();
    harness.run_steps(SETTLE);
    harness.get_by_role_and_label(Role::MultilineTextInput, "Nudge").focus();
    harness.run_steps(2);
    press(&mut harness, Modifiers::COMMAND, Key::End);
    press(&mut harness, Modifiers::NONE, Key::Backspace);
    assert_eq!(harness.state().kit().puzzles[0].gentle.as_ref().unwrap().hints, None);
    assert_eq!(minutes(&harness), Some(6.0));
    click(&mut harness, Role::Link, "Go to the puzzle");
    let own = harness.get_by_role_and_label(Role::CheckBox, "The gentle level has a setup of its own");
    own.click_accesskit();
    harness.run_steps(SETTLE);
    assert_eq!(harness.state().kit().puzzles[0].gentle.as_ref().unwrap().setup, None);
    assert_eq!(minutes(&harness), Some(6.0));
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
fn things_are_added_and_removed_in_one_step_each() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    for (add, remove) in [
        ("Add a spot", "Remove this spot"),
        ("Add a box", "Remove this box"),
        ("Add a prop", "Remove this prop"),
        ("Add a lock", "Remove this lock"),
    ] {
        let before = harness.state().kit().clone();
        let steps = harness.state().steps();
        harness.get_by_role_and_label(Role::Button, add).scroll_to_me();
        harness.run_steps(SETTLE);
        click(&mut harness, Role::Button, add);
        assert_ne!(*harness.state().kit(), before, "{add}");
        // What is found of the new thing moves the button: that must have come before it is aimed at.
        rest(&mut harness);
        harness.get_by_role_and_label(Role::Button, remove).scroll_to_me();
        harness.run_steps(SETTLE);
        click(&mut harness, Role::Button, remove);
        assert_eq!(*harness.state().kit(), before, "{remove}");
        assert_eq!(harness.state().steps(), steps + 2);
    }
}

#[test]
fn another_arrangement_is_one_step_and_another_face() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    click(&mut harness, Role::Button, "Add a puzzle");
    rest(&mut harness);
    for button in ["Cut strips", "Make a puzzle of it"] {
        harness.get_by_role_and_label(Role::Button, button).click_accesskit();
        harness.run_steps(SETTLE);
    }
    rest(&mut harness);
    let pieces = |harness: &Harness<'_, App>| {
        let kit = harness.state().kit();
        let theme = inklatch::theme::load_builtin(&kit.theme).unwrap();
        let party = inklatch::party::Party::new(kit, &theme, Level::Standard).unwrap();
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

#[test]
fn an_id_is_changed_everywhere_in_one_step() {
    let mut harness = window(demo(), false);
    rest(&mut harness);
    let before = harness.state().kit().clone();
    press(&mut harness, Modifiers::COMMAND, Key::Num2);
    let lock = before.locks[0].name.clone();
    harness.get_all_by_role_and_label(Role::Button, &lock).next().unwrap().click();
    harness.run_steps(SETTLE);
    let id = |harness: &mut Harness<'_, App>, text: &str| {
        harness.get_by_role_and_label(Role::TextInput, "Id").focus();
        harness.run_steps(2);
        press(harness, Modifiers::NONE, Key::End);
        harness.get_by_role_and_label(Role::TextInput, "Id").type_text(text);
        harness.run_steps(3);
    };
    // What cannot be an id is said beside the field, and nothing happens.
    id(&mut harness, " Two");
    assert!(harness.query_by_role_and_label(Role::Button, "Change it everywhere").is_none());
    assert_eq!(*harness.state().kit(), before);
    // The buttons may stand below the fold, where a screen reader finds them all the same.
    let act = |harness: &mut Harness<'_, App>, name: &str| {
        harness.get_by_role_and_label(Role::Button, name).click_accesskit();
        harness.run_steps(SETTLE);
    };
    act(&mut harness, "Keep the id as it is");
    id(&mut harness, "-two");
    act(&mut harness, "Change it everywhere");
    let kit = harness.state().kit();
    let new = format!("{}-two", before.locks[0].id);
    assert_eq!(kit.locks[0].id.as_str(), new);
    assert_eq!(kit.puzzles[0].opens.as_str(), new);
    // It stays in hand.
    assert!(harness.query_by_role_and_label(Role::TextInput, "Id").is_some());
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert_eq!(*harness.state().kit(), before);
}

/// The keyboard never goes out of sight: the fields scroll to what Tab has come to.
#[test]
fn what_has_the_keyboard_is_in_sight() {
    let mut harness = window(demo(), false);
    harness.set_size(eframe::egui::vec2(900.0, 560.0));
    press(&mut harness, Modifiers::COMMAND, Key::Num5);
    click(&mut harness, Role::Button, "Bundle");
    rest(&mut harness);
    harness.get_by_role_and_label(Role::TextInput, "Folder").focus();
    harness.run_steps(SETTLE);
    for _ in 0..3 {
        press(&mut harness, Modifiers::NONE, Key::Tab);
        harness.run_steps(SETTLE * 3);
        let focused = harness.get_by(|node| node.is_focused());
        let rect = focused.rect();
        let strip = harness.get_by_role_and_label(Role::Button, "Hide the findings").rect();
        assert!(rect.min.y > 58.0 && rect.max.y < strip.min.y, "{rect:?} is out of sight, above {strip:?}");
    }
}
