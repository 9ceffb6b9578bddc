use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::json;

use crate::common::lay_out;

fn read(key: &[(char, char)], words: &[&str], wheels: u8) -> Readings {
    let key: Vec<_> = key.iter().map(|(letter, digit)| json!({ "letter": letter, "digit": digit })).collect();
    let view = json!({
        "key": key, "words": words, "card": "note", "card_title": "", "card_text": "", "key_title": "",
    });
    find("letter-key").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

const KEY: &[(char, char)] = &[('A', '4'), ('I', '7'), ('D', '1'), ('N', '4'), ('E', '0'), ('S', '6')];

#[test]
fn a_name_reads_letter_by_letter() {
    let found = read(KEY, &["IDA"], 3);
    assert_eq!(answers(&found), ["714"]);
    assert_eq!(found.list[0].why, "IDA: I is 7, then D is 1, then A is 4");
    assert!(found.remarks.is_empty());
}

#[test]
fn letters_that_share_a_digit_are_remarked() {
    let found = read(KEY, &["NAE"], 3);
    assert_eq!(answers(&found), ["440"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("share a digit")), "{:?}", found.remarks);
}

#[test]
fn a_second_name_as_long_reads_as_well() {
    let found = read(KEY, &["IDA", "ENA", "SADIE"], 3);
    assert!(answers(&found).contains(&"714") && answers(&found).contains(&"044"));
    assert_eq!(found.verdict("714"), Verdict::Several);
}

#[test]
fn a_name_too_long_may_be_cut_at_either_end() {
    assert_eq!(answers(&read(KEY, &["SADIE"], 3)), ["170", "641"]);
    assert!(read(KEY, &["SADIE"], 3).remarks.iter().any(|remark| remark.contains("5 letters")));
    assert!(answers(&read(KEY, &["ID"], 3)).is_empty());
}

#[test]
fn a_letter_that_the_key_lacks_or_has_twice() {
    let found = read(KEY, &["IDO"], 3);
    assert!(answers(&found).is_empty() && found.remarks[0].contains("the letter O"), "{found:?}");
    let twice: Vec<(char, char)> = KEY.iter().copied().chain([('D', '8')]).collect();
    assert_eq!(answers(&read(&twice, &["IDA"], 3)), ["714", "784"]);
}

#[test]
fn a_name_of_two_words_may_be_taken_in_part() {
    assert_eq!(answers(&read(KEY, &["ENA IDA"], 3)), ["044", "714"]);
    assert_eq!(answers(&read(KEY, &["ENA IDA"], 6)), ["044714"]);
}

#[test]
fn refusals_name_the_letter() {
    let mechanic = find("letter-key").unwrap();
    let refuse = |setup: &str, answer: &str| {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        lay_out(mechanic, setup, answer, &lock, 1).expect_err("refused").message
    };
    assert!(refuse("(word: \"ANNA\")", "1224").contains("letter A stands twice"));
    assert!(refuse("(word: \"QUIN\", letters: \"INU\")", "1234").contains("letter Q"));
    assert!(refuse("(word: \"IDA\")", "1234").contains("3 letters"));
    let lock = LockKind::Digits(4);
    assert!(lay_out(mechanic, "(word: \"ANNA\")", "1221", &lock, 1).is_ok(), "a repeat that the answer repeats");
    let letters = LockKind::Letters(vec!["AB".into(), "AB".into(), "AB".into()]);
    assert!(lay_out(mechanic, "(word: \"IDA\")", "ABA", &letters, 1).is_err(), "it gives digits");
}
