use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed, reread};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str, seed: u64) -> Value {
    lay_out(find("fold-strip").unwrap(), setup, answer, &THREE, seed).unwrap().json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("fold-strip").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// The halves of a digit, by a view of that digit alone.
fn halves(digit: char) -> (Value, Value) {
    let lock = LockKind::Digits(1);
    let view = lay_out(find("fold-strip").unwrap(), "(pleat: Empty)", &digit.to_string(), &lock, 1).unwrap().json();
    let figure = &view["figures"][0];
    (figure["left"].clone(), figure["right"].clone())
}

#[test]
fn folded_halves_are_the_answer_whatever_it_is() {
    for answer in 0..1000 {
        let answer = format!("{answer:03}");
        let found = read(&view("()", &answer, answer.parse().unwrap()), &THREE);
        assert_eq!(answers(&found), [answer.as_str()]);
        assert!(found.remarks.is_empty(), "{answer}: {found:?}");
    }
}

#[test]
fn the_open_strip_never_shows_a_digit_of_the_answer_in_its_place() {
    for seed in 0..50 {
        let view = view("()", "409", seed);
        for (figure, digit) in view["figures"].as_array().unwrap().iter().zip(['4', '0', '9']) {
            let (left, right) = halves(digit);
            assert_eq!((&figure["left"], &figure["right"]), (&left, &right));
            assert!(figure["pleat"][0] != right && figure["pleat"][1] != left, "{figure}");
        }
    }
}

#[test]
fn an_open_strip_that_shows_as_many_digits_as_the_lock_has_wheels_is_a_further_reading() {
    let figure = |digit: char, first: &Value, second: &Value| {
        let (left, right) = halves(digit);
        json!({ "left": left, "pleat": [first, second], "right": right })
    };
    let (lone, nothing) = (json!(["lower"]), json!([]));
    // The left half of a 6 beside a whole right half shows an 8; a lone stroke beside the right half shows nothing.
    let view = json!({ "figures": [figure('6', &halves('8').1, &lone), figure('5', &halves('9').1, &lone)] });
    let found = read(&view, &LockKind::Digits(2));
    assert_eq!(answers(&found), ["65", "89"]);
    assert!(found.list[1].why.contains("open"), "{:?}", found.list);
    assert_eq!(found.verdict("65"), Verdict::Several);
    // With empty pleats, the right half of a 1 is a 1 already, and that of a 7 a 7 or a 1.
    let view = json!({ "figures": [figure('1', &nothing, &nothing), figure('7', &nothing, &nothing)] });
    assert_eq!(answers(&read(&view, &LockKind::Digits(2))), ["11", "17"]);
}

#[test]
fn half_a_level_bar_leaves_a_choice_and_halves_of_nothing_are_remarked() {
    let (left, right) = (json!(["top"]), json!(["upper", "lower"]));
    let view = json!({ "figures": [{ "left": left, "pleat": [["foot"], ["foot"]], "right": right }] });
    let found = read(&view, &LockKind::Digits(1));
    assert!(answers(&found).contains(&"1") && answers(&found).contains(&"7"), "{found:?}");
    let odd = json!({ "left": ["top", "upper"], "pleat": [["foot", "lower"], ["lower"]], "right": ["foot"] });
    let found = read(&json!({ "figures": [odd] }), &LockKind::Digits(1));
    assert!(found.list.is_empty() && found.remarks[0].contains("no digit"), "{found:?}");
    let many = json!({ "figures": vec![odd; 11] });
    assert_eq!(read(&many, &LockKind::Digits(11)).verdict("1"), Verdict::Unproven);
}

#[test]
fn the_strip_prints_its_rule_and_refuses_what_it_cannot_show() {
    let mechanic = find("fold-strip").unwrap();
    let laid = lay_out(mechanic, "()", "409", &THREE, 1).unwrap();
    let pieces = dressed("fold-strip", &THREE, |cx| laid.pieces(cx)).unwrap();
    assert!(pieces[0].front.runs().any(|run| run.text.text().contains("Read left to right")));
    let letters = LockKind::Letters(vec!["AB".into(), "AB".into()]);
    assert!(!lay_out(mechanic, "()", "AB", &letters, 1).err().unwrap().hints.is_empty());
    let long = lay_out(mechanic, "()", "1234567", &LockKind::Digits(7), 1).err().unwrap();
    assert!(long.message.contains("too many"), "{long}");
}

#[test]
fn every_half_is_read_back_from_paper() {
    let mechanic = find("fold-strip").unwrap();
    for (setup, answer) in [("()", "012345"), ("()", "678904"), ("(pleat: Empty)", "987601"), ("()", "111")] {
        for seed in 0..8 {
            let lock = LockKind::Digits(answer.len().try_into().unwrap());
            let laid = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let sides = printed("fold-strip", &lock, laid.as_ref());
            assert_eq!(reread(mechanic, &lock, &sides).unwrap().unwrap().json(), laid.json(), "{setup} {seed}");
        }
    }
}
