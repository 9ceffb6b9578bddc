use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn read(lines: &[&str], words: &[&str], lock: &LockKind) -> Readings {
    let row = |line: &str| line.chars().map(|c| if c == '.' { Value::Null } else { json!(c) }).collect::<Vec<_>>();
    let rows: Vec<_> = lines.iter().map(|line| row(line)).collect();
    let view = json!({ "rows": rows, "words": words });
    find("leftover-letters").unwrap().view(&view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn letters_left_over_are_read_row_by_row() {
    let lines = ["OBELL", "N.ETX", "OGEAR"];
    let found = read(&lines, &["BELL", "GEAR"], &LockKind::Digits(2));
    assert!(found.list.is_empty(), "{found:?}");
    let lines = ["OBELL", "N.E.T", "GEARW", "O...."];
    let found = read(&lines, &["BELL", "GEAR"], &LockKind::Digits(2));
    assert_eq!(answers(&found), ["12"]);
    assert_eq!(found.list[0].why, "left over: ONETWO");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn a_word_in_two_places_leaves_two_things_over() {
    let lines = ["OAT.A", "....D", "OAT.B"];
    let found = read(&lines, &["OAT"], &LockKind::Spoken);
    assert_eq!(answers(&found), ["ADOATB", "OATADB"]);
    assert_eq!(found.verdict("OATADB"), Verdict::Several);
    assert!(found.remarks.iter().any(|remark| remark.contains("2 places")), "{found:?}");
}

#[test]
fn a_word_that_stands_nowhere_is_told() {
    let found = read(&["SIXOAT"], &["OAT", "RYE"], &LockKind::Digits(1));
    assert_eq!(answers(&found), ["6"]);
    assert_eq!(found.remarks, ["the word RYE stands nowhere"]);
}

#[test]
fn a_word_that_reads_the_same_both_ways_stands_once() {
    let found = read(&["NOONSIX"], &["NOON"], &LockKind::Digits(1));
    assert_eq!(answers(&found), ["6"]);
    assert!(found.remarks.is_empty());
}

#[test]
fn squares_and_choices_beyond_all_measure_are_unproven() {
    let wide = "A".repeat(60);
    assert_eq!(read(&[&wide], &["OAT"], &LockKind::Spoken).verdict("x"), Verdict::Unproven);
    let lines = ["AAAAAAAAAA"; 10];
    let words = ["AAA", "AAAA", "AAAAA", "AAAAAA"];
    assert_eq!(read(&lines, &words, &LockKind::Digits(1)).verdict("1"), Verdict::Unproven);
}

#[test]
fn setups_carry_their_answers() {
    let mechanic = find("leftover-letters").unwrap();
    let letters = LockKind::Letters(vec!["ABC".into(), "OXY".into(), "LMN".into()]);
    for (setup, lock, answer) in [
        ("(backwards: true)", LockKind::Digits(4), "1907"),
        ("(aslant: false)", LockKind::Digits(3), "777"),
        ("(words: [\"OWL\", \"BELL\"])", LockKind::Digits(5), "33333"),
        ("()", letters, "BOL"),
    ] {
        for seed in 0..6 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
            assert!(found.remarks.is_empty(), "{setup} {answer}: {found:?}");
            assert!(dressed("leftover-letters", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("leftover-letters").unwrap();
    for setup in [
        "(words: [])",
        "(words: [\"AB\"])",
        "(words: [\"SNOW\", \"SNOWMAN\"])",
        "(words: [\"TOP\", \"STOP\"])",
        "(words: [\"SN0W\"])",
        "(words: [\"NOON\", \"NOON\"])",
    ] {
        let trouble = lay_out(mechanic, setup, "123", &LockKind::Digits(3), 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}
