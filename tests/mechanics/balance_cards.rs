use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::lay_out;

fn read(tags: &[char], weighings: &[(usize, usize)]) -> Readings {
    let names = ["bell", "gear", "key", "moon", "owl"];
    let things: Vec<Value> = names.iter().zip(tags).map(|(name, tag)| json!({ "symbol": name, "tag": tag })).collect();
    let weighings: Vec<Value> =
        weighings.iter().map(|(heavy, light)| json!({ "heavier": heavy, "lighter": light, "left": true })).collect();
    let view = json!({ "things": things, "weighings": weighings });
    let lock = LockKind::Digits(u8::try_from(tags.len()).unwrap());
    find("balance-cards").unwrap().view(&view).unwrap().readings(&lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn tags_read_from_heavy_to_light() {
    let found = read(&['1', '2', '3'], &[(2, 0), (0, 1)]);
    assert_eq!(answers(&found), ["312"]);
    assert_eq!(found.list[0].why, "the key, then the bell, then the gear");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn an_order_in_part_reads_in_every_way_it_leaves_open() {
    let found = read(&['1', '2', '3'], &[(2, 0), (2, 1)]);
    assert_eq!(answers(&found), ["312", "321"]);
    assert_eq!(found.remarks, ["nothing tells whether the bell or the gear is heavier"]);
    let alike = read(&['1', '1', '3'], &[(2, 0), (2, 1)]);
    assert_eq!(alike.verdict("311"), Verdict::One);
    assert!(!alike.remarks.is_empty());
}

#[test]
fn weighings_in_a_circle_or_of_nothing_have_no_reading() {
    let found = read(&['1', '2', '3'], &[(0, 1), (1, 2), (2, 0)]);
    assert!(found.list.is_empty() && found.remarks[0].contains("contradict"), "{found:?}");
    let found = read(&['1', '2'], &[(0, 1), (9, 0)]);
    assert!(found.list.is_empty() && found.remarks[0].contains("not listed"), "{found:?}");
}

#[test]
fn a_thing_on_both_pans_tells_nothing_and_must_be_one_of_the_list() {
    let read = |both: usize| {
        let things =
            json!([{ "symbol": "bell", "tag": "1" }, { "symbol": "owl", "tag": "2" }, { "symbol": "key", "tag": "3" }]);
        let weighing = |heavier: usize, lighter: usize, both: usize| json!({ "heavier": heavier, "lighter": lighter, "left": true, "both": both });
        let view = json!({ "things": things, "weighings": [weighing(2, 0, both), weighing(0, 1, 2)] });
        let view = find("balance-cards").unwrap().view(&view).unwrap();
        view.readings(&LockKind::Digits(3), &mut Budget::default())
    };
    assert_eq!(answers(&read(1)), ["312"]);
    assert!(read(9).list.is_empty());
}

#[test]
fn the_marks_of_locks_are_not_among_the_things() {
    let mechanic = find("balance-cards").unwrap();
    for seed in 0..40 {
        let view = lay_out(mechanic, "()", "12345", &LockKind::Digits(5), seed).unwrap();
        assert!(!view.json()["things"].to_string().contains("gear"), "the plain kit marks its lock with a gear");
    }
}

#[test]
fn setups_carry_their_answers_and_no_needed_weighing_is_missing() {
    let mechanic = find("balance-cards").unwrap();
    for (setup, answer, weighings) in
        [("()", "77", 1), ("(spare: 9)", "012345", 14), ("(things: [\"bell\", \"owl\", \"key\"], spare: 0)", "121", 2)]
    {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let view = lay_out(mechanic, setup, answer, &lock, 3).unwrap();
        let found = view.readings(&lock, &mut Budget::default());
        assert_eq!(found.verdict(answer), Verdict::One, "{setup}: {found:?}");
        assert!(found.remarks.is_empty(), "{setup}: {found:?}");
        assert_eq!(view.json()["weighings"].as_array().unwrap().len(), weighings, "{setup}");
    }
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("balance-cards").unwrap();
    for (setup, answer) in [
        ("(things: [\"bell\", \"bell\", \"key\"])", "123"),
        ("(things: [\"bell\", \"key\"])", "123"),
        ("(things: [\"bel\", \"key\", \"owl\"])", "123"),
        ("()", "1"),
        ("()", "123456789"),
    ] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let trouble = lay_out(mechanic, setup, answer, &lock, 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}
