//! `marked-letters`: what it carries, what it refuses, and the readings of each trap.

use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyView, find};
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const THREE: LockKind = LockKind::Digits(3);

fn laid(setup: &str, answer: &str, seed: u64) -> Box<dyn AnyView> {
    lay_out(find("marked-letters").unwrap(), setup, answer, &THREE, seed).unwrap()
}

fn refused(setup: &str, answer: &str) -> String {
    lay_out(find("marked-letters").unwrap(), setup, answer, &THREE, 1).unwrap_err().to_string()
}

fn read(view: &Value) -> Readings {
    find("marked-letters").unwrap().view(view).unwrap().readings(&THREE, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// A sign of one line; `marks` holds the digit under each letter, a space where there is none.
fn sign(letters: &str, marks: &str, says: &Value, rule: bool, equal_rule: bool) -> Value {
    let cells: Vec<Value> = letters
        .chars()
        .zip(marks.chars())
        .map(|(letter, mark)| json!({ "letter": letter, "mark": (mark != ' ').then_some(mark) }))
        .collect();
    json!({
        "heading": "",
        "lines": [cells],
        "pointer": { "says": says, "rule": rule, "equal_rule": equal_rule },
    })
}

fn letters(letters: &[&str]) -> Value {
    json!({ "Letters": letters })
}

#[test]
fn every_style_has_one_reading() {
    let setups = [
        "()",
        "(equal_letters: ReadingOrder)",
        "(letters: \"RRK\", equal_letters: ReadingOrder, decoys: 6)",
        "(pointer: Initials(\"Underneath golden hands\"), decoys: 5)",
        "(sign: \"The long warm hall of the old weavers and dyers guild\", equal_letters: ReadingOrder)",
    ];
    for setup in setups {
        for seed in 0..50 {
            let answer = format!("{:03}", (seed * 397 + 11) % 1000);
            let readings = laid(setup, &answer, seed).readings(&THREE, &mut Budget::default());
            assert_eq!(readings.verdict(&answer), Verdict::One, "{setup} seed {seed} {answer}: {readings:?}");
            assert!(readings.remarks.is_empty(), "{setup}: {:?}", readings.remarks);
        }
    }
}

#[test]
fn decoys_stand_under_letters_that_are_not_named() {
    let view = laid("(letters: \"UGH\", decoys: 5)", "407", 3).json();
    let marks: Vec<&str> = view["lines"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|line| line.as_array().unwrap())
        .filter(|cell| !cell["mark"].is_null())
        .map(|cell| cell["letter"].as_str().unwrap())
        .collect();
    assert_eq!(marks.len(), 8);
    for named in ["U", "G", "H"] {
        assert_eq!(marks.iter().filter(|letter| **letter == named).count(), 1);
    }
}

#[test]
fn equal_letters_with_no_order_have_several_readings() {
    let open = sign("BELL", "  47", &letters(&["L", "L"]), true, false);
    let two = LockKind::Digits(2);
    let view = |json: &Value| find("marked-letters").unwrap().view(json).unwrap();
    let readings = view(&open).readings(&two, &mut Budget::default());
    assert_eq!(answers(&readings), ["47", "74"]);
    let stated = sign("BELL", "  47", &letters(&["L", "L"]), true, true);
    assert_eq!(answers(&view(&stated).readings(&two, &mut Budget::default())), ["47"]);
    // Named once, marked twice.
    let once = sign("BELL", "3 47", &letters(&["B", "L"]), true, false);
    assert_eq!(answers(&view(&once).readings(&two, &mut Budget::default())), ["34", "37"]);
}

#[test]
fn a_letter_named_again_is_read_again() {
    let view = sign("CLOCK", "4 7  ", &letters(&["C", "O", "C"]), true, false);
    let readings = read(&view);
    assert_eq!(answers(&readings), ["474"]);
    assert!(
        readings.remarks.iter().any(|remark| remark.contains("letter C stands on the sign 2 times")),
        "{readings:?}"
    );
}

#[test]
fn a_named_letter_without_a_digit_is_remarked() {
    let readings = read(&sign("WATCH", "1  25", &letters(&["W", "A", "C", "H"]), true, false));
    assert_eq!(answers(&readings), ["125"]);
    assert!(readings.remarks.iter().any(|remark| remark.contains("letter A is named and carries no digit")));
}

#[test]
fn a_line_without_a_rule_reads_several_ways() {
    // First letters W A T, last letters H T E.
    let line = json!({ "Line": "Watch at three" });
    assert_eq!(answers(&read(&sign("WATHE", "12345", &line, true, false))), ["123"]);
    let open = read(&sign("WATHE", "12345", &line, false, false));
    assert_eq!(answers(&open), ["123", "435"]);
    assert!(open.list[1].why.starts_with("last letters"), "{:?}", open.list[1]);
}

#[test]
fn a_hyphen_reads_two_ways() {
    // One word, T and H with a third letter elsewhere: "twenty-one hours" is T H or T O H.
    let line = json!({ "Line": "Twenty-one hours" });
    let two_or_three = |lock: &LockKind| {
        let view = find("marked-letters").unwrap().view(&sign("THO", "123", &line, true, false)).unwrap();
        view.readings(lock, &mut Budget::default())
    };
    assert_eq!(answers(&two_or_three(&LockKind::Spoken)), ["12", "132"]);
    assert_eq!(answers(&two_or_three(&THREE)), ["132"]);
}

#[test]
fn what_it_cannot_carry_is_refused_with_a_hint() {
    assert!(refused("(sign: \"EST. 1788\")", "407").contains("digit in the sign's own words"));
    assert!(refused("(sign: \"OTTO\")", "407").contains("only 0 letters"));
    assert!(refused("(letters: \"DKW\")", "407").contains("equal_letters"));
    assert!(refused("(letters: \"UG\")", "407").contains("one letter for each digit"));
    assert!(refused("(letters: \"UGZ\")", "407").contains("the sign has 0 of the letter Z"));
    assert!(refused("(pointer: Initials(\"Underneath hands\"))", "407").contains("one word for each digit"));
    assert!(refused("(sign: \"UGH\", decoys: 4)", "407").contains("room for 0 decoys"));
    assert!(refused("(sign: \"A_B\")", "407").contains("cannot stand on the sign"));
    assert!(refused("(signs: \"AB\")", "407").contains("did you mean `sign`"));
    assert!(refused("()", "40").contains("cannot be set on a lock"));
}

#[test]
fn pieces_hold_every_letter_and_digit_and_the_rule() {
    dressed("marked-letters", &THREE, |cx| {
        let view = laid("(letters: \"UGH\", heading: \"Since the great frost\")", "407", 2);
        let pieces = view.pieces(cx).unwrap();
        assert_eq!(pieces.iter().map(|piece| piece.part.as_str()).collect::<Vec<_>>(), ["sign", "pointer"]);
        let words: Vec<String> = pieces[0].front.runs().map(|run| run.text.text()).collect();
        // Heading, 26 letters and the &, three digits and four decoys.
        assert_eq!(words.len(), 1 + 27 + 7, "{words:?}");
        assert!(pieces[0].front.runs().all(|run| run.least.get() >= 9.0));
        let card: String = pieces[1].front.runs().map(|run| run.text.text()).collect();
        assert!(card.contains("U, G, H") && card.contains("in this order"), "{card}");
        let stiff = laid("(pointer: Initials(\"Underneath golden hands\"))", "407", 2);
        let card: String = stiff.pieces(cx).unwrap()[1].front.runs().map(|run| run.text.text()).collect();
        assert!(card.contains("Underneath golden hands") && card.contains("first letter of each word"), "{card}");
        let equal = laid("(letters: \"RRK\", equal_letters: ReadingOrder)", "407", 2);
        let card: String = equal.pieces(cx).unwrap()[1].front.runs().map(|run| run.text.text()).collect();
        assert!(card.contains("from left to right"), "{card}");
    });
}

#[test]
fn a_long_sign_wraps_between_words_and_stays_legible() {
    dressed("marked-letters", &THREE, |cx| {
        let long = "(sign: \"The quiet company of winders, oilers, menders and keepers of the tower\")";
        let view = laid(long, "407", 1);
        assert!(view.json()["lines"].as_array().unwrap().len() > 1);
        let sign = view.pieces(cx).unwrap().remove(0);
        // Without a heading the letters may begin where one would end.
        let slot = inklatch::units::Rect::mm(15.0, 15.0, 160.0, 28.0);
        for run in sign.front.runs() {
            assert!(slot.inset(inklatch::units::Mm::new(-1.0)).holds(run.rect), "{:?}", run.rect);
            assert!(run.most.get() >= 9.0);
        }
    });
}
