use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::json;

use crate::common::{dressed, lay_out};

fn letters(wheels: &[&str]) -> LockKind {
    LockKind::Letters(wheels.iter().map(|wheel| (*wheel).to_owned()).collect())
}

fn read(stretches: &[(&str, &str)], lock: &LockKind) -> Readings {
    let list: Vec<_> = stretches.iter().map(|(text, style)| json!({ "text": text, "style": style })).collect();
    let view = json!({ "stretches": list, "rule": true });
    find("odd-letters").unwrap().view(&view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn odd_letters_spell_a_word_or_number_words() {
    let lock = letters(&["OA", "WB", "LC"]);
    let found = read(&[("o", "bold"), ("nce a ", "plain"), ("w", "bold"), ("hi", "plain"), ("l", "bold")], &lock);
    assert_eq!(answers(&found), ["OWL"]);
    let three = [("T", "bold"), ("h", "bold"), ("r", "bold"), ("e", "bold"), ("e", "bold"), (" ", "plain")];
    let nine = [("n", "bold"), ("i", "bold"), ("n", "bold"), ("e", "bold")];
    assert_eq!(answers(&read(&[&three[..], &nine[..]].concat(), &LockKind::Digits(2))), ["39"]);
}

#[test]
fn stray_differences_give_further_readings() {
    let lock = letters(&["OA", "WB", "LC"]);
    let two = [("owl", "bold"), (" and ", "plain"), ("abc", "italic")];
    let found = read(&two, &lock);
    assert_eq!(answers(&found), ["ABC", "OWL"]);
    assert_eq!(found.verdict("OWL"), Verdict::Several);
    assert!(found.remarks.iter().any(|remark| remark.contains("hard to see")), "{found:?}");
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str, lock: &LockKind| {
        lay_out(find("odd-letters").unwrap(), setup, answer, lock, 1).err().unwrap().to_string()
    };
    let lock = letters(&["OA", "WB", "LC"]);
    assert!(refused("(text: \"The *owl* over a white lake.\")", "OWL", &lock).contains("emphasis of its own"));
    assert!(refused("(text: \"The owl over a white lake.\")", "OWL", &lock).contains("stands openly"));
    assert!(refused("(text: \"Nothing at all here.\")", "OWL", &lock).contains("runs out of letters"));
    assert!(refused("(style: plain)", "OWL", &lock).contains("must be set differently"));
    let long = format!("(text: \"{}\")", "over a white lake ".repeat(40));
    assert!(refused(&long, "OWL", &lock).contains("a card takes 600"));
}

#[test]
fn digits_are_spelled_and_the_rule_is_printed() {
    let lock = LockKind::Digits(2);
    let laid = lay_out(find("odd-letters").unwrap(), "()", "23", &lock, 1).unwrap();
    let found = laid.readings(&lock, &mut Budget::default());
    assert_eq!(answers(&found), ["23"]);
    assert!(found.list[0].why.contains("number words"), "{found:?}");
    let pieces = dressed("odd-letters", &lock, |cx| laid.pieces(cx)).unwrap();
    let bold = pieces[0].front.runs().flat_map(|run| &run.text.paragraphs).flat_map(|p| &p.spans);
    assert_eq!(bold.filter(|span| span.strong).count(), "TWOTHREE".len());
    let card: String = pieces[0].front.runs().map(|run| run.text.text()).collect();
    assert!(card.contains("Read them in order"), "{card}");
    assert_eq!(laid.readings(&lock, &mut Budget::new(1)).verdict("23"), Verdict::Unproven);
}
