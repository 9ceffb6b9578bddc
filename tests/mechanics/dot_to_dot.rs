use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

/// A plain 7: along the top, then down.
const SEVEN: [(u16, u16); 5] = [(200, 150), (500, 150), (800, 150), (640, 600), (480, 1050)];

fn dots(places: &[(u16, u16)], step: u16) -> Vec<Value> {
    places.iter().zip(1_u16..).map(|((x, y), turn)| json!({ "x": x, "y": y, "number": turn * step })).collect()
}

fn view(panels: &[Vec<Value>]) -> Value {
    json!({ "text": "", "step": 1, "panels": panels, "loose": false, "baseline": true })
}

fn read(view: &Value) -> Readings {
    let wheels = u8::try_from(view["panels"].as_array().unwrap().len()).unwrap();
    find("dot-to-dot").unwrap().view(view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn joined_dots_show_a_digit_and_strays_do_not_matter() {
    let mut panel = dots(&SEVEN, 1);
    panel.push(json!({ "x": 100, "y": 900, "number": null }));
    let found = read(&view(&[panel]));
    assert_eq!(answers(&found), ["7"]);
    assert!(found.remarks.is_empty(), "{found:?}");
    let mut panel = dots(&SEVEN, 3);
    panel.push(json!({ "x": 100, "y": 900, "number": 5 }));
    let mut by_three = view(&[panel]);
    by_three["step"] = json!(3);
    assert_eq!(answers(&read(&by_three)), ["7"]);
}

#[test]
fn a_six_without_a_ground_line_is_a_nine_as_well() {
    let lock = LockKind::Digits(3);
    for (answer, both) in [("648", vec!["648", "948"]), ("197", vec!["167", "197"]), ("357", vec!["357"])] {
        let laid = lay_out(find("dot-to-dot").unwrap(), "(baseline: false, loose: true)", answer, &lock, 4).unwrap();
        assert_eq!(answers(&laid.readings(&lock, &mut Budget::default())), both);
    }
}

#[test]
fn a_number_that_stands_twice_leaves_two_lines() {
    // The second dot 3 lies at the left end, so that one line doubles back.
    let mut panel = dots(&SEVEN, 1);
    panel.push(json!({ "x": 780, "y": 180, "number": 3 }));
    let found = read(&view(&[panel.clone()]));
    assert_eq!(answers(&found), ["7"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("twice")), "{found:?}");
    for number in [1, 2, 4, 5, 1, 2, 4, 5, 1, 2, 4, 5] {
        panel.push(json!({ "x": 400, "y": 700, "number": number }));
    }
    assert!(read(&view(&[panel])).unproven);
}

#[test]
fn a_missing_number_and_a_scribble_are_remarked() {
    let mut panel = dots(&SEVEN, 1);
    panel.remove(2);
    let found = read(&view(&[panel]));
    assert!(found.list.is_empty() && found.remarks.iter().any(|remark| remark.contains("no dot 3")), "{found:?}");
    let flat = dots(&[(100, 500), (400, 500), (900, 500)], 1);
    assert_eq!(read(&view(&[flat])).remarks, ["panel 1 shows no digit"]);
    assert!(read(&view(&[vec![]])).list.is_empty());
    let many = dots(&[(1, 1); 60], 1);
    assert_eq!(read(&view(&[many])).verdict("1"), Verdict::Unproven);
    let mut zero = view(&[dots(&SEVEN, 1)]);
    zero["step"] = json!(0);
    assert_eq!(answers(&read(&zero)), ["7"], "no step is a step of one");
}

#[test]
fn every_digit_is_carried_at_every_work_and_step() {
    let mechanic = find("dot-to-dot").unwrap();
    for work in ["Light", "Fair", "Deep"] {
        for step in 1..=4 {
            for (answer, loose) in [("01234", false), ("56789", true), ("690471", false)] {
                let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
                let setup = format!("(work: {work}, step: {step}, loose: {loose}, strays: 14)");
                for seed in 0..4 {
                    let view = lay_out(mechanic, &setup, answer, &lock, seed).unwrap();
                    let found = view.readings(&lock, &mut Budget::default());
                    assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
                    assert!(found.remarks.is_empty(), "{found:?}");
                    let pieces = dressed("dot-to-dot", &lock, |cx| view.pieces(cx)).unwrap();
                    assert_eq!(pieces.len(), if loose { answer.len() } else { 1 });
                }
            }
        }
    }
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let mechanic = find("dot-to-dot").unwrap();
    for (setup, answer) in [("(step: 0)", "123"), ("(step: 5)", "123"), ("(strays: 50)", "123"), ("()", "1234567")] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let trouble = lay_out(mechanic, setup, answer, &lock, 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{trouble}");
    }
    let letters = LockKind::Letters(vec!["AB".into(), "AB".into()]);
    assert!(lay_out(mechanic, "()", "AB", &letters, 1).is_err());
}
