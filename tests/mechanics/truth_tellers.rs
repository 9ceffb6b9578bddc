use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn read(speakers: &[(&str, char, Value)], liars: Option<usize>, wheels: u8) -> Readings {
    let speakers: Vec<Value> =
        speakers.iter().map(|(name, badge, says)| json!({ "name": name, "badge": badge, "says": says })).collect();
    let view = json!({ "speakers": speakers, "liars": liars });
    find("truth-tellers").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn badges_of_the_truthful_read_from_the_top_down() {
    // If Ida tells the truth, Jonas does not, so Maud and Ida are not alike, so Maud does not either.
    let speakers = [
        ("Ida", '4', json!({ "False": 1 })),
        ("Jonas", '7', json!({ "Alike": [0, 2] })),
        ("Maud", '2', json!({ "True": 1 })),
    ];
    let found = read(&speakers, None, 1);
    assert_eq!(answers(&found), ["4"]);
    assert_eq!(found.list[0].why, "the truth is told by Ida");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn two_cases_read_two_ways_unless_their_number_is_told() {
    let speakers = [("Ida", '4', json!({ "False": 1 })), ("Jonas", '7', json!({ "False": 0 }))];
    let found = read(&speakers, None, 1);
    assert_eq!(answers(&found), ["4", "7"]);
    let three = [
        ("Ida", '4', json!({ "False": 1 })),
        ("Jonas", '7', json!({ "False": 0 })),
        ("Maud", '2', json!({ "NotBoth": [0, 1] })),
    ];
    assert_eq!(answers(&read(&three, None, 2)), ["42", "72"]);
    let pair = [("Ida", '4', json!({ "True": 1 })), ("Jonas", '7', json!({ "True": 0 }))];
    assert_eq!(read(&pair, Some(0), 2).verdict("47"), Verdict::One);
    let open = read(&pair, None, 2);
    assert_eq!(answers(&open), ["47"]);
    assert!(open.remarks.iter().any(|remark| remark.contains("cannot be set")), "{open:?}");
}

#[test]
fn sentences_that_fit_no_case_have_no_reading() {
    let found = read(&[("Ida", '4', json!({ "False": 0 }))], None, 1);
    assert!(found.list.is_empty() && found.remarks[0].contains("no case"), "{found:?}");
    assert!(read(&[("Ida", '4', json!({ "True": 9 }))], None, 1).list.is_empty());
}

#[test]
fn crowds_and_spent_budgets_are_unproven() {
    let crowd: Vec<(&str, char, Value)> = (0..40).map(|_| ("Ida", '1', json!({ "True": 0 }))).collect();
    assert_eq!(read(&crowd, None, 3).verdict("111"), Verdict::Unproven);
    let view = json!({ "speakers": [{ "name": "Ida", "badge": "1", "says": { "True": 0 } }], "liars": null });
    let view = find("truth-tellers").unwrap().view(&view).unwrap();
    assert_eq!(view.readings(&LockKind::Digits(1), &mut Budget::new(1)).verdict("1"), Verdict::Unproven);
}

#[test]
fn setups_carry_their_answers() {
    let mechanic = find("truth-tellers").unwrap();
    for (setup, answer) in [("(liars: 1)", "12"), ("(liars: 3, tell_count: false)", "1234"), ("(liars: 3)", "000000")] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        for seed in 0..10 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
            assert!(found.remarks.is_empty(), "{setup} {answer}: {found:?}");
            assert!(dressed("truth-tellers", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("truth-tellers").unwrap();
    for setup in [
        "(liars: 0)",
        "(liars: 200)",
        "(names: [\"Ida\", \"Maud\"])",
        "(names: [\"Ida\", \"ida\", \"A\", \"B\", \"C\"])",
    ] {
        let trouble = lay_out(mechanic, setup, "123", &LockKind::Digits(3), 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}

#[test]
fn light_work_is_made_of_sentences_about_one_other_mostly() {
    let (mut simple, mut all) = (0, 0);
    for seed in 0..20 {
        let setup = "(liars: 2, work: Light)";
        let view = lay_out(find("truth-tellers").unwrap(), setup, "549", &LockKind::Digits(3), seed).unwrap().json();
        for speaker in view["speakers"].as_array().unwrap() {
            all += 1;
            simple += usize::from(speaker["says"].get("True").or(speaker["says"].get("False")).is_some());
        }
    }
    assert!(simple * 3 >= all * 2, "{simple} of {all}");
}

#[test]
fn the_last_hint_names_a_single_one_who_says_what_is_false() {
    dressed("truth-tellers", &LockKind::Digits(3), |cx| {
        let view = lay_out(find("truth-tellers").unwrap(), "(liars: 2)", "549", &LockKind::Digits(3), 4).unwrap();
        let hint = view.draft_hints(cx).giveaway;
        let names = ["Ida", "Jonas", "Maud", "Piet", "Runa"];
        assert_eq!(names.iter().filter(|name| hint.contains(**name)).count(), 1, "{hint}");
    });
}
