use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const OLD: &str = "fill: alphabet, share: \"IJ\", headings: ordered";

fn view(setup: &str, answer: &str, lock: &LockKind) -> Value {
    lay_out(find("grid-square").unwrap(), setup, answer, lock, 1).unwrap_or_else(|trouble| panic!("{trouble}")).json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("grid-square").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// The old square of `tests/refs/03_polybius.json` (source and tolerance at its head): letters and whole texts.
#[test]
fn the_old_square_gives_the_pairs_of_the_reference() {
    let reference: Value = serde_json::from_str(include_str!("../refs/03_polybius.json")).unwrap();
    for row in reference["table"].as_array().unwrap() {
        let (letter, code) = (row["letter"].as_str().unwrap(), row["code"].as_str().unwrap());
        let lock = LockKind::Digits(2);
        let view = view(&format!("(word: \"{letter}\", {OLD})"), code, &lock);
        assert_eq!(answers(&read(&view, &lock)), [code], "{letter}");
    }
    for row in reference["vectors"].as_array().unwrap() {
        let letters: String = row["text"].as_str().unwrap().chars().filter(char::is_ascii_alphabetic).collect();
        let code: String = row["code"].as_str().unwrap().split(' ').collect();
        let view = view(&format!("(word: \"{letters}\", {OLD})"), &code, &LockKind::Spoken);
        assert_eq!(answers(&read(&view, &LockKind::Spoken)), [code.as_str()], "{letters}");
        if !letters.contains(['I', 'J']) {
            let lock = LockKind::Spoken;
            let view = self::view(&format!("({OLD})"), &letters, &lock);
            let pairs: Vec<&str> = row["code"].as_str().unwrap().split(' ').collect();
            assert_eq!(view["message"], json!({ "Pairs": pairs }));
        }
    }
}

#[test]
fn with_no_rule_rows_and_columns_change_places() {
    let lock = LockKind::Digits(4);
    assert_eq!(answers(&read(&view("(word: \"OX\")", "4712", &lock), &lock)), ["4712"]);
    let found = read(&view("(word: \"OX\", state_rule: false)", "4712", &lock), &lock);
    assert_eq!(answers(&found), ["4712", "7421"]);
    assert_eq!(found.verdict("4712"), Verdict::Several);
    let letters = LockKind::Letters(vec!["BF".into(), "CL".into()]);
    let old = format!("({OLD}, state_rule: false)");
    // B is 12 and F is 21; C is 13 and L is 31.
    assert_eq!(answers(&read(&view(&old, "BC", &letters), &letters)), ["BC", "FL"]);
}

#[test]
fn letters_that_share_a_cell_are_a_choice() {
    let plain = LockKind::Letters(vec!["IA".into(), "CL".into()]);
    assert_eq!(answers(&read(&view(&format!("({OLD})"), "IC", &plain), &plain)), ["IC"]);
    let both = LockKind::Letters(vec!["IJ".into(), "CL".into()]);
    let view = view(&format!("({OLD})"), "IC", &plain);
    let found = read(&view, &both);
    assert_eq!(answers(&found), ["IC", "JC"]);
    assert!(found.remarks[0].contains("more than one letter"), "{found:?}");
    let trouble = lay_out(find("grid-square").unwrap(), &format!("({OLD})"), "IC", &both, 1).err().unwrap();
    assert!(trouble.message.contains("I and J share a cell"), "{trouble}");
}

#[test]
fn a_word_too_long_may_be_cut_and_a_letter_missing_is_remarked() {
    let lock = LockKind::Digits(6);
    let view = view("(word: \"OWL\")", "471253", &lock);
    assert_eq!(answers(&read(&view, &LockKind::Digits(4))), ["1253", "4712"]);
    let mut view = view;
    view["message"] = json!({ "Word": "QWL" });
    let found = read(&view, &lock);
    assert!(found.list.is_empty() && found.remarks[0].contains("letter Q"), "{found:?}");
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str, lock: &LockKind| {
        lay_out(find("grid-square").unwrap(), setup, answer, lock, 1).err().unwrap().to_string()
    };
    assert!(refused("()", "123", &LockKind::Digits(3)).contains("even number"));
    let four = LockKind::Digits(4);
    assert!(refused("(word: \"OWL\")", "1234", &four).contains("3 letters"));
    assert!(refused("(word: \"OO\")", "1234", &four).contains("equal letters need equal pairs"));
    assert!(refused("(word: \"QO\")", "1234", &four).contains("letter Q"));
    assert!(refused("(headings: ordered)", "1834", &four).contains("digit 8"));
    assert!(refused("(share: \"I\")", "1234", &four).contains("two different letters"));
    assert!(refused("(leave_out: '1')", "1234", &four).contains("letter A to Z"));
    assert!(refused("()", "QUO", &LockKind::Spoken).contains("leaves out the letter Q"));
    assert!(refused("()", "102030405060", &LockKind::Digits(12)).contains("more than five different"));
}

#[test]
fn the_card_states_the_rule_and_the_square_shows_all_letters() {
    let lock = LockKind::Digits(4);
    let laid = lay_out(find("grid-square").unwrap(), "(word: \"OX\")", "4712", &lock, 1).unwrap();
    let pieces = dressed("grid-square", &lock, |cx| laid.pieces(cx)).unwrap();
    let runs = |piece: usize| pieces[piece].front.runs().map(|run| run.text.text()).collect::<Vec<_>>();
    assert_eq!(runs(0).len(), 1 + 10 + 25);
    assert!(runs(1).iter().any(|text| text.contains("write the digit of its row, then")), "{:?}", runs(1));
}
