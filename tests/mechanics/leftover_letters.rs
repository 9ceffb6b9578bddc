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
        ("OWL", "runs across."),
        ("LWO", "runs across, backwards."),
        ("TOP", "runs down."),
        ("POT", "runs straight up."),
        ("TWO", "runs on a slant."),
        ("OWT", "runs on a slant, backwards."),
        ("PWE", "runs on a slant."),
    ] {
        assert!(said(word).contains(ways), "{word}: {}", said(word));
    }
}

#[test]
fn one_word_to_find_is_told_as_one() {
    let (mechanic, lock) = (find("leftover-letters").unwrap(), LockKind::Digits(2));
    let told = |setup: &str| {
        let view = lay_out(mechanic, setup, "41", &lock, 3).unwrap();
        dressed("leftover-letters", &lock, |cx| {
            let words: Vec<String> = view.pieces(cx).unwrap()[0].front.runs().map(|run| run.text.text()).collect();
            let hints = view.draft_hints(cx);
            format!("{} {} {} {}", words.join(" "), view.reason(cx), hints.method, hints.giveaway)
        })
    };
    let one = told("(words: [\"THIMBLE\"])");
    assert!(one.contains("Circle the word of the list. It runs "), "{one}");
    assert!(!one.contains("1 word") && !one.contains("They run") && !one.contains("long ones"), "{one}");
    let two = told("(words: [\"THIMBLE\", \"LANTERN\"])");
    assert!(two.contains("Circle all 2 words. They run "), "{two}");
}

/// The longer the words, the fewer stand side by side: each is set as large as the list allows.
#[test]
fn long_words_stand_in_fewer_columns() {
    let (mechanic, lock) = (find("leftover-letters").unwrap(), LockKind::Digits(2));
    let columns = |words: &[&str]| {
        let setup = format!("(words: {words:?})");
        let view = lay_out(mechanic, &setup, "41", &lock, 3).unwrap();
        dressed("leftover-letters", &lock, |cx| {
            let piece = view.pieces(cx).unwrap().remove(0);
            let listed = piece.front.runs().filter(|run| words.contains(&run.text.text().as_str()));
            let mut lefts: Vec<i64> = listed.map(|run| (run.rect.x.get() * 10.0).round() as i64).collect();
            lefts.sort_unstable();
            lefts.dedup();
            lefts.len()
        })
    };
    let short = ["OWL", "BEE", "ANT", "FOX", "ELK", "YAK", "EMU", "RAM"];
    let long = ["GRASSHOPPERS", "CATERPILLARS", "DRAGONFLYING", "WOODPECKERED", "NIGHTINGALES", "KINGFISHERED"];
    assert!(columns(&short) > columns(&long), "{} and {}", columns(&short), columns(&long));
}
