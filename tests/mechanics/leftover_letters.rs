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

#[test]
fn the_sheet_says_in_which_directions_its_words_run() {
    let mechanic = find("leftover-letters").unwrap();
    let lock = LockKind::Digits(3);
    let rule = |setup: &str, seed| {
        let view = lay_out(mechanic, setup, "471", &lock, seed).unwrap();
        let pieces = dressed("leftover-letters", &lock, |cx| view.pieces(cx)).unwrap();
        let said = pieces[0].front.runs().map(|run| run.text.text()).find(|text| text.starts_with("Circle")).unwrap();
        said.split(". ").nth(1).unwrap().to_owned()
    };
    let (mut aslant, mut turned) = (0, 0);
    for seed in 0..8 {
        for setup in ["(work: Light)", "(aslant: false)"] {
            assert_eq!(rule(setup, seed), "They run across and down and may cross", "{setup}");
        }
        let said = rule("()", seed);
        assert!(!said.contains("some of them"), "{said}");
        aslant += usize::from(said.contains("on a slant"));
        let said = rule("(backwards: true, aslant: false)", seed);
        assert!(!said.contains("slant"), "{said}");
        turned += usize::from(said.contains("some of them"));
    }
    assert!(aslant > 0 && turned > 0, "{aslant} {turned}");
    // What the words of a sheet do is said, not what the setup allows.
    let (rows, lock) = (["T.E", "OWL", "P.O"], LockKind::Spoken);
    let row = |line: &str| line.chars().map(|c| if c == '.' { Value::Null } else { json!(c) }).collect::<Vec<_>>();
    let said = |word: &str| {
        let view = json!({ "rows": rows.map(row).to_vec(), "words": [word] });
        let view = mechanic.view(&view).unwrap();
        let pieces = dressed("leftover-letters", &lock, |cx| view.pieces(cx)).unwrap();
        pieces[0].front.runs().map(|run| run.text.text()).find(|text| text.starts_with("Circle")).unwrap()
    };
    for (word, ways) in [
        ("OWL", "run across and may"),
        ("LWO", "run across, some of them backwards, and may"),
        ("TOP", "run down and may"),
        ("POT", "run down, some of them up, and may"),
        ("TWO", "run on a slant and may"),
        ("OWT", "run on a slant, some of them backwards, and may"),
        ("PWE", "run on a slant and may"),
    ] {
        assert!(said(word).contains(ways), "{word}: {}", said(word));
    }
}
