use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::json;

use crate::common::{dressed, lay_out};

fn read(text: &str, rule: bool, wheels: u8) -> Readings {
    let view = json!({ "text": text, "rule": rule });
    find("hidden-numbers").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn number_words_across_gaps_read_in_order() {
    let text = "The lamp burned on every stair. The roof of our tower shook, and nobody had sent word.";
    let found = read(text, true, 3);
    assert_eq!(answers(&found), ["142"]);
    assert!(found.list[0].why.contains("4 in \"of our\""), "{found:?}");
    assert!(found.remarks.is_empty());
}

#[test]
fn an_accident_changes_the_reading_and_is_refused_with_its_place() {
    let text = "The lamp burned on every stair. Weigh the roof of our tower.";
    assert_eq!(answers(&read(text, true, 3)), ["184"]);
    let lock = LockKind::Digits(2);
    let setup = format!("(text: \"{text}\")");
    let trouble = lay_out(find("hidden-numbers").unwrap(), &setup, "14", &lock, 1).err().unwrap();
    assert!(trouble.message.contains("8 in \"Weigh the\""), "{trouble}");
    assert!(lay_out(find("hidden-numbers").unwrap(), &setup, "184", &LockKind::Digits(3), 1).is_ok());
}

#[test]
fn with_no_rule_words_that_hold_a_number_count_as_well() {
    let text = "Burned on every stone: the roof of our tower.";
    assert_eq!(answers(&read(text, true, 2)), ["14"]);
    assert_eq!(answers(&read(text, false, 3)), ["114"]);
    assert_eq!(read(text, false, 2).verdict("14"), Verdict::One);
    let found = read("Two of our friends saw of our stone.", false, 2);
    assert_eq!(answers(&found), ["21", "44"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("Two")), "{found:?}");
}

#[test]
fn number_words_that_share_letters_leave_a_choice() {
    // "noT WO/NEver": two and one share the o.
    assert_eq!(answers(&read("It was not wo never. The roof of our hut.", true, 2)), ["14", "24"]);
}

#[test]
fn what_the_sentences_cannot_hide_is_refused() {
    let refused = |setup: &str, answer: &str| {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        lay_out(find("hidden-numbers").unwrap(), setup, answer, &lock, 1).err().unwrap().to_string()
    };
    assert!(refused("()", "777").contains("more than twice"));
    assert!(refused("(text: \"Nothing at all.\")", "12").contains("hides nothing"));
    assert!(refused(&format!("(text: \"{}\")", "on every ".repeat(80)), "1").contains("more than 600"));
}

#[test]
fn every_digit_can_be_hidden_twice_and_the_rule_is_printed() {
    let lock = LockKind::Digits(2);
    for digit in '0'..='9' {
        let answer = format!("{digit}{digit}");
        let laid = lay_out(find("hidden-numbers").unwrap(), "()", &answer, &lock, 1).unwrap();
        assert_eq!(answers(&laid.readings(&lock, &mut Budget::default())), [answer.as_str()]);
        let pieces = dressed("hidden-numbers", &lock, |cx| laid.pieces(cx)).unwrap();
        let card: String = pieces[0].front.runs().map(|run| run.text.text()).collect();
        assert!(card.contains("reading order"), "{card}");
    }
}
