use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::Value;

use crate::common::{dressed, lay_out};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str) -> Value {
    lay_out(find("clock-faces").unwrap(), setup, answer, &THREE, 1).unwrap().json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("clock-faces").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn the_card_fixes_the_order_and_ten_gives_two_digits() {
    let found = read(&view("()", "395"), &THREE);
    assert_eq!(answers(&found), ["395"]);
    let ten = view("()", "410");
    assert_eq!(ten["clocks"].as_array().unwrap().len(), 2);
    assert_eq!(answers(&read(&ten, &THREE)), ["410"]);
}

#[test]
fn with_no_order_stated_all_orders_read() {
    let found = read(&view("(say_order: false)", "395"), &THREE);
    assert_eq!(answers(&found), ["359", "395", "539", "593", "935", "953"]);
    assert_eq!(found.verdict("395"), Verdict::Several);
    assert_eq!(read(&view("(say_order: false)", "333"), &THREE).verdict("333"), Verdict::One);
}

#[test]
fn with_twelve_hours_unsaid_three_may_be_fifteen() {
    let two = view("(say_twelve: false)", "310");
    // 3 and 10: 310, or one of the two written otherwise so that three digits come out.
    assert_eq!(answers(&read(&two, &THREE)), ["310", "322"]);
    assert_eq!(answers(&read(&view("()", "310"), &THREE)), ["310"]);
    let found = read(&two, &LockKind::Digits(4));
    assert!(answers(&found).contains(&"1522") && answers(&found).contains(&"0310"), "{found:?}");
}

#[test]
fn hands_of_like_length_are_taken_for_each_other() {
    let lock = LockKind::Digits(4);
    let mut clocks = view("(hour_hand: 0.9)", "395");
    let found = read(&clocks, &lock);
    assert_eq!(answers(&found), ["1295", "3125", "3912"]);
    clocks["hour_hand"] = 0.6.into();
    assert!(read(&clocks, &lock).list.is_empty());
}

#[test]
fn two_clocks_of_one_name_leave_a_choice() {
    let mut clocks = view("()", "395");
    let name = clocks["order"][0].clone();
    let other = clocks["order"][1].clone();
    for clock in clocks["clocks"].as_array_mut().unwrap() {
        if clock["name"] == other {
            clock["name"] = name.clone();
        }
    }
    clocks["order"][1] = name;
    let found = read(&clocks, &THREE);
    assert_eq!(answers(&found), ["395", "935"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("2 clocks bear the name")), "{found:?}");
}

#[test]
fn refusals_and_a_small_budget() {
    let refused = |setup: &str, answer: &str| {
        lay_out(find("clock-faces").unwrap(), setup, answer, &THREE, 1).err().unwrap().to_string()
    };
    assert!(refused("()", "304").contains("hour 0"));
    assert!(refused("(names: [\"hall\", \"loft\"])", "345").contains("3 clocks"));
    assert!(refused("(names: [\"hall\", \"loft\", \"Hall\"])", "345").contains("names no clock, or two"));
    assert!(refused("(hour_hand: 2.0)", "345").contains("0.3 to 1"));
    let laid = lay_out(find("clock-faces").unwrap(), "()", "395", &THREE, 1).unwrap();
    assert_eq!(laid.readings(&THREE, &mut Budget::new(2)).verdict("395"), Verdict::Unproven);
}

#[test]
fn each_clock_is_a_card_and_the_rule_is_printed() {
    let laid = lay_out(find("clock-faces").unwrap(), "()", "395", &THREE, 1).unwrap();
    let pieces = dressed("clock-faces", &THREE, |cx| laid.pieces(cx)).unwrap();
    assert_eq!(pieces.len(), 4);
    assert_eq!(pieces[0].front.runs().count(), 1 + 12);
    let card: String = pieces[3].front.runs().map(|run| run.text.text()).collect();
    assert!(card.contains("in this order"), "{card}");
    let bare =
        lay_out(find("clock-faces").unwrap(), "(say_order: false, say_twelve: false)", "395", &THREE, 1).unwrap();
    assert_eq!(bare.parts(), ["clocks"]);
}
