use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str, lock: &LockKind) -> Value {
    lay_out(find("morse-strip").unwrap(), setup, answer, lock, 1).unwrap().json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("morse-strip").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn a_strip_with_a_start_mark_reads_one_way() {
    let found = read(&view("()", "129", &THREE), &THREE);
    assert_eq!(answers(&found), ["129"]);
    assert!(found.list[0].why.contains(".---- / ..--- / ----."), "{:?}", found.list);
}

#[test]
fn without_a_start_mark_it_reads_from_the_other_end_as_well() {
    let found = read(&view("(start_mark: false)", "129", &THREE), &THREE);
    assert_eq!(answers(&found), ["129", "189"]);
    assert_eq!(found.verdict("129"), Verdict::Several);
    // 5, 0, 5 is the same from both ends.
    assert_eq!(read(&view("(start_mark: false)", "505", &THREE), &THREE).verdict("505"), Verdict::One);
}

#[test]
fn groups_that_run_together_part_in_several_ways() {
    let lock = LockKind::Letters(vec!["EAT".into(), "ETN".into(), "ETN".into()]);
    let mut view = view("()", "ATE", &lock);
    assert_eq!(answers(&read(&view, &lock)), ["ATE"]);
    for run in view["runs"].as_array_mut().unwrap() {
        if run["ink"] == json!(false) {
            run["units"] = json!(1);
        }
    }
    let found = read(&view, &lock);
    assert!(answers(&found).contains(&"ATE") && answers(&found).contains(&"ETN"), "{found:?}");
}

#[test]
fn lengths_between_short_and_long_leave_a_choice() {
    let lock = LockKind::Letters(vec!["ET".into()]);
    let mut view = view("()", "E", &lock);
    view["runs"][0]["units"] = json!(2);
    assert_eq!(answers(&read(&view, &lock)), ["E", "T"]);
}

#[test]
fn a_group_that_the_key_lacks_is_remarked() {
    let mut view = view("()", "129", &THREE);
    view["key"].as_array_mut().unwrap().retain(|entry| entry["symbol"] != "2");
    let found = read(&view, &THREE);
    assert!(found.list.is_empty() && found.remarks[0].contains("..---"), "{found:?}");
}

#[test]
fn a_small_budget_is_unproven_and_long_strips_are_refused() {
    let lock = LockKind::Digits(12);
    let trouble = lay_out(find("morse-strip").unwrap(), "()", "000000000000", &lock, 1).err().unwrap();
    assert!(trouble.message.contains("units long"), "{trouble}");
    let laid = lay_out(find("morse-strip").unwrap(), "()", "129", &THREE, 1).unwrap();
    assert_eq!(laid.readings(&THREE, &mut Budget::new(3)).verdict("129"), Verdict::Unproven);
    let trouble = lay_out(find("morse-strip").unwrap(), "()", "A1B", &LockKind::Spoken, 1).err().unwrap();
    assert!(trouble.message.contains("digits only or letters"), "{trouble}");
}

#[test]
fn the_key_states_the_rule_and_every_look_is_drawn() {
    for look in ["lamps", "bars", "beads"] {
        let laid = lay_out(find("morse-strip").unwrap(), &format!("(look: {look})"), "00000", &LockKind::Digits(5), 1);
        let pieces = dressed("morse-strip", &LockKind::Digits(5), |cx| laid.unwrap().pieces(cx)).unwrap();
        let card: Vec<String> = pieces[1].front.runs().map(|run| run.text.text()).collect();
        assert!(card.iter().any(|text| text.contains("to the right")), "{card:?}");
        assert_eq!(card.len(), 2 + 10);
    }
}
