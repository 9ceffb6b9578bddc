use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn thing(picture: &str, x: f64, y: f64, ringed: bool) -> Value {
    json!({ "picture": picture, "x": x, "y": y, "across": 14.0, "lean": 3, "ringed": ringed })
}

/// Two owls, one of three bells in a ring, and a key.
fn scene() -> Value {
    let things = [
        thing("owl", 20.0, 20.0, false),
        thing("bell", 50.0, 22.0, false),
        thing("owl", 80.0, 60.0, false),
        thing("bell", 20.0, 90.0, true),
        thing("key", 120.0, 90.0, false),
        thing("bell", 60.0, 120.0, false),
        thing("owl", 90.0, 120.0, false),
    ];
    json!({ "text": "", "things": things, "list": ["owl", "bell"], "ring_rule": true, "say_order": true })
}

fn read(view: &Value, wheels: u8) -> Readings {
    find("count-scene").unwrap().view(view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn counts_are_read_in_the_order_of_the_list() {
    let found = read(&scene(), 2);
    assert_eq!(answers(&found), ["32"]);
    assert!(found.remarks.is_empty(), "{found:?}");
    let mut view = scene();
    view["list"] = json!(["moon", "key", "owl"]);
    assert_eq!(answers(&read(&view, 3)), ["013"], "none at all is a count as well");
}

#[test]
fn rings_without_a_rule_count_or_do_not() {
    let mut view = scene();
    view["ring_rule"] = json!(false);
    let found = read(&view, 2);
    assert_eq!(answers(&found), ["32", "33"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("circle")), "{found:?}");
}

#[test]
fn what_is_half_hidden_or_cut_may_be_counted_or_not() {
    let mut view = scene();
    view["things"].as_array_mut().unwrap().push(thing("star", 80.0, 66.0, false));
    let found = read(&view, 2);
    assert_eq!(answers(&found), ["22", "32"], "a star covers an owl");
    assert!(found.remarks.iter().any(|remark| remark.contains("half hidden")), "{found:?}");
    let mut view = scene();
    view["things"].as_array_mut().unwrap().push(thing("bell", 3.0, 150.0, false));
    assert_eq!(answers(&read(&view, 2)), ["32", "33"], "the edge cuts a bell");
}

#[test]
fn without_a_stated_order_counts_are_set_in_any() {
    let mut view = scene();
    view["say_order"] = json!(false);
    assert_eq!(answers(&read(&view, 2)), ["23", "32"]);
}

#[test]
fn a_count_over_nine_takes_two_wheels() {
    let mut view = scene();
    let owls: Vec<Value> = (0..12).map(|at| thing("owl", 10.0 + 12.0 * f64::from(at), 180.0, false)).collect();
    view["things"] = json!(owls);
    view["list"] = json!(["owl"]);
    for owl in view["things"].as_array_mut().unwrap() {
        owl["across"] = json!(11.0);
    }
    let found = read(&view, 2);
    assert_eq!(answers(&found), ["12"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("no single wheel")), "{found:?}");
    assert!(read(&view, 1).list.is_empty());
}

#[test]
fn a_kind_on_the_list_twice_is_remarked_and_too_much_is_unproven() {
    let mut view = scene();
    view["list"] = json!(["owl", "owl"]);
    assert!(read(&view, 2).remarks.iter().any(|remark| remark.contains("twice")));
    view["list"] = json!(vec!["owl"; 200]);
    assert_eq!(read(&view, 2).verdict("32"), Verdict::Unproven);
}

#[test]
fn large_digits_and_none_are_carried() {
    let mechanic = find("count-scene").unwrap();
    for (answer, setup) in [
        ("999999", "(work: Deep)"),
        ("000", "()"),
        ("305", "(count: [\"owl\", \"moon\", \"bell\"], work: Light, ringed: false)"),
        ("88888", "(text: \"For the *book*:\")"),
    ] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        for seed in 0..10 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap_or_else(|t| panic!("{answer}: {t}"));
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{answer}: {found:?}");
            assert!(found.remarks.is_empty(), "{found:?}");
            assert!(dressed("count-scene", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn lists_that_do_not_fit_are_refused() {
    let mechanic = find("count-scene").unwrap();
    for (setup, answer) in [("(count: [\"owl\"])", "12"), ("()", "1234567"), ("(count: [\"owl\", \"owl\"])", "12")] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let trouble = lay_out(mechanic, setup, answer, &lock, 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{trouble}");
    }
}
