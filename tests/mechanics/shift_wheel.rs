use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str, lock: &LockKind) -> Value {
    lay_out(find("shift-wheel").unwrap(), setup, answer, lock, 1).unwrap().json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("shift-wheel").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn a_shift_goes_on_along_the_ring() {
    // Three places on from B E L L are E H O O; the ring closes, so three on from Y is B.
    let lock = LockKind::Spoken;
    let inwards = view("(shift: 3)", "BELLY", &lock);
    assert_eq!(inwards["message"], json!(["E", "H", "O", "O", "B"]));
    assert_eq!(inwards["setting"], json!("D"));
    assert_eq!(answers(&read(&inwards, &lock)), ["BELLY"]);
    let outwards = view("(shift: 3, from: inner)", "EHOOB", &lock);
    assert_eq!(outwards["message"], json!(["B", "E", "L", "L", "Y"]));
    assert_eq!(answers(&read(&outwards, &lock)), ["EHOOB"]);
}

#[test]
fn with_no_direction_stated_both_read() {
    let found = read(&view("(shift: 3, say_direction: false)", "407", &THREE), &THREE);
    // The message is 7 3 0: back by three 4 0 7, on by three 0 6 3.
    assert_eq!(answers(&found), ["063", "407"]);
    assert_eq!(found.verdict("407"), Verdict::Several);
}

#[test]
fn half_a_turn_reads_the_same_both_ways_and_is_remarked() {
    let found = read(&view("(shift: 5, say_direction: false)", "407", &THREE), &THREE);
    assert_eq!(answers(&found), ["407"]);
    assert!(found.remarks[0].contains("half a turn"), "{found:?}");
    for seed in 0..60 {
        let laid = lay_out(find("shift-wheel").unwrap(), "()", "407", &THREE, seed).unwrap().json();
        assert!(!["0", "5"].contains(&laid["setting"].as_str().unwrap()), "{laid}");
    }
}

#[test]
fn with_no_setting_stated_every_shift_reads() {
    let found = read(&view("(shift: 3, say_setting: false)", "407", &THREE), &THREE);
    assert_eq!(found.list.len(), 10);
}

#[test]
fn a_symbol_that_the_wheel_lacks_is_remarked_and_a_setting_that_changes_nothing_too() {
    let mut wheel = view("(shift: 3)", "407", &THREE);
    wheel["message"][0] = json!("X");
    let found = read(&wheel, &THREE);
    assert!(found.list.is_empty() && found.remarks[0].contains("no X"), "{found:?}");
    let mut wheel = view("(shift: 3)", "407", &THREE);
    wheel["setting"] = json!("0");
    assert!(read(&wheel, &THREE).remarks[0].contains("changes nothing"));
}

#[test]
fn refusals() {
    let refused =
        |setup: &str| lay_out(find("shift-wheel").unwrap(), setup, "407", &THREE, 1).err().unwrap().to_string();
    assert!(refused("(shift: 10)").contains("changes nothing"));
    assert!(refused("(ring: \"0123\")").contains("4 symbols"));
    assert!(refused("(ring: \"012345\")").contains("lacks 7"));
    assert!(refused("(ring: \"0123455\")").contains("twice"));
    assert!(refused("(ring: \"01234-7\")").contains("cannot stand"));
}

#[test]
fn the_discs_are_measured_and_the_card_states_setting_and_way() {
    let laid = lay_out(find("shift-wheel").unwrap(), "(shift: 3)", "407", &THREE, 1).unwrap();
    let pieces = dressed("shift-wheel", &THREE, |cx| laid.pieces(cx)).unwrap();
    assert!(pieces[0].measured && pieces[1].measured);
    assert!(pieces[0].front.size.w.get() > pieces[1].front.size.w.get() + 20.0, "the outer ring shows");
    assert_eq!(pieces[0].front.runs().count(), 10);
    let card: Vec<String> = pieces[2].front.runs().map(|run| run.text.text()).collect();
    assert!(
        card.iter().any(|text| text.contains("start mark to 3") && text.contains("from left to right")),
        "{card:?}"
    );
}
