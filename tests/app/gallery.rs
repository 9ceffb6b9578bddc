//! The gallery of mechanics.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use inklatch::app::App;
use inklatch::mechanics::MECHANICS;

use super::{SETTLE, click, press, rest, small, window};

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
    click(&mut harness, Role::Button, "Add a puzzle");
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
        click(&mut harness, Role::Button, "Add a puzzle");
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
