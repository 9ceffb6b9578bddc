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
fn open_halves_that_are_digits_already_are_further_readings() {
    let found = read(&view("(band: Empty)", "888", 1), &THREE);
    assert_eq!(answers(&found), ["000", "888"]);
    assert!(found.list[0].why.contains("open, the"), "{:?}", found.list);
    // Upper halves: 1, 7, box. Lower halves: 1, 1, box.
    let found = read(&view("(band: Empty)", "178", 1), &THREE);
    assert_eq!(answers(&found), ["110", "170", "178"]);
    assert_eq!(found.verdict("178"), Verdict::Several);
    // Nothing of a 3 or a 5 is a digit by itself.
    let found = read(&view("(band: Empty)", "353", 1), &THREE);
    assert_eq!(answers(&found), ["353"]);
}

#[test]
fn a_band_that_lengthens_the_uprights_shows_the_digit_before_it_is_folded() {
    let figure =
        json!({ "upper": ["outer", "left", "right"], "band": ["left", "right"], "lower": ["outer", "left", "right"] });
    let found = read(&json!({ "figures": [figure] }), &LockKind::Digits(1));
    assert_eq!(answers(&found), ["0"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("before it is folded")), "{found:?}");
}

#[test]
fn half_a_middle_bar_leaves_a_choice_and_halves_of_nothing_are_remarked() {
    let thin =
        json!({ "upper": ["outer", "left", "right", "cut"], "band": ["falling"], "lower": ["outer", "left", "right"] });
    assert_eq!(answers(&read(&json!({ "figures": [thin] }), &LockKind::Digits(1))), ["0", "8"]);
    let odd = json!({ "upper": ["outer"], "band": ["falling"], "lower": ["outer", "left"] });
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
    assert!(pieces[0].front.runs().any(|run| run.text.text().contains("read to the right")));
    let letters = LockKind::Letters(vec!["AB".into(), "AB".into()]);
    assert!(!lay_out(mechanic, "()", "AB", &letters, 1).err().unwrap().hints.is_empty());
    let long = lay_out(mechanic, "()", "12345678901", &LockKind::Digits(11), 1).err().unwrap();
    assert!(long.message.contains("too many"), "{long}");
}

#[test]
fn every_figure_and_band_is_read_back_from_paper() {
    let mechanic = find("fold-strip").unwrap();
    for (setup, lock, answer) in [("()", 10, "0123456789"), ("(band: Empty)", 10, "9876543210"), ("()", 3, "111")] {
        for seed in 0..8 {
            let lock = LockKind::Digits(lock);
            let laid = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let sides = printed("fold-strip", &lock, laid.as_ref());
            assert_eq!(reread(mechanic, &lock, &sides).unwrap().unwrap().json(), laid.json(), "{setup} {seed}");
        }
    }
}
