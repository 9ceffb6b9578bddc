//! The rehearsal and the plays, as a screen reader meets them.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::file::read_plays;

use super::{SETTLE, click, demo, press, rest, small, window};

#[test]
fn the_rehearsal_tells_the_chance_the_spread_and_what_holds_groups_up() {
    for dark in [false, true] {
        let mut harness = window(demo(), dark);
        rest(&mut harness);
        press(&mut harness, Modifiers::COMMAND, Key::Num4);
        click(&mut harness, Role::Button, "Rehearsal");
        harness.check_accessibility();
        assert_eq!(harness.get_all_by_label_contains("done within 60 min").count(), 3);
        harness.get_by_label_contains("simulated evenings;");
        harness.get_by_label_contains("The evenings by their minutes");
        harness.get_by_label_contains("The end waits most for");
        harness.get_by_label_contains("holds groups up most");
        harness.get_by_label_contains("Under the Snow:");
        click(&mut harness, Role::Button, "gentle level");
        harness.get_by_label_contains("simulated evenings;");
    }
}

#[test]
fn a_play_is_written_down_taken_back_and_saved_beside_the_kit() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    rest(&mut harness);
    press(&mut harness, Modifiers::COMMAND, Key::Num4);
    click(&mut harness, Role::Button, "Plays");
    harness.check_accessibility();
    let title = harness.state().kit().puzzles[0].title.clone();
    for (name, number) in [("Minutes in all", "21"), (&format!("Minutes for {title}"), "14.5")] {
        harness.get_by_role_and_label(Role::SpinButton, name).click();
        harness.run_steps(SETTLE);
        harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
        harness.run_steps(2);
        harness.event(eframe::egui::Event::Text(number.into()));
        harness.run_steps(2);
        harness.key_press(Key::Enter);
        harness.run_steps(SETTLE);
    }
    // What the play would make of the estimate stands there before it is added.
    let then = harness.get_all_by_label_contains("6.5 (").count();
    assert!(then >= 1, "5 minutes, worth three plays, and one play of 14.5: the middle of the logarithms is 6.5");
    harness.get_by_role_and_label(Role::Button, "Add this play").scroll_to_me();
    harness.run_steps(SETTLE);
    click(&mut harness, Role::Button, "Add this play");
    rest(&mut harness);
    assert_eq!(harness.state().kit().plays.plays.len(), 1);
    press(&mut harness, Modifiers::COMMAND, Key::Z);
    assert!(harness.state().kit().plays.plays.is_empty());
    press(&mut harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    press(&mut harness, Modifiers::COMMAND, Key::S);
    rest(&mut harness);
    let text = Disk::new(folder.path()).read_text(&VPath::new("plays.ron").unwrap(), 1 << 20).unwrap();
    let plays = read_plays(&text, "plays.ron").unwrap();
    assert_eq!(plays, harness.state().kit().plays);
    assert_eq!((plays.plays[0].guests, plays.plays[0].minutes), (4, 21.0));
    assert_eq!(plays.plays[0].puzzles.values().next().map(|known| known.minutes), Some(14.5));
    harness.get_by_role_and_label(Role::Button, "Remove the play Play 1").scroll_to_me();
    harness.run_steps(SETTLE);
    click(&mut harness, Role::Button, "Remove the play Play 1");
    assert!(harness.state().kit().plays.plays.is_empty());
}

#[test]
fn plays_that_another_program_writes_down_are_taken_over() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = window(small(folder.path()), false);
    rest(&mut harness);
    let text = "(format: 1, plays: [(guests: 5, minutes: 18)])";
    Disk::new(folder.path()).write(&VPath::new("plays.ron").unwrap(), text.as_bytes()).unwrap();
    let start = std::time::Instant::now();
    while harness.state().kit().plays.plays.is_empty() {
        assert!(start.elapsed() < super::PATIENCE, "the plays did not come");
        std::thread::sleep(std::time::Duration::from_millis(10));
        harness.step();
    }
    assert_eq!(harness.state().kit().plays.plays[0].guests, 5);
    rest(&mut harness);
}
