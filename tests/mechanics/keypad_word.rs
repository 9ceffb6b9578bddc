use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};

use crate::common::{dressed, lay_out};

fn laid(setup: &str, answer: &str) -> inklatch::diag::Hinted<Box<dyn inklatch::mechanics::AnyView>> {
    let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
    lay_out(find("keypad-word").unwrap(), setup, answer, &lock, 1)
}

fn read(setup: &str, answer: &str, wheels: u8) -> Readings {
    laid(setup, answer).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn a_word_gives_the_digits_of_its_keys() {
    let found = read("(word: \"Frost\")", "37678", 5);
    assert_eq!(answers(&found), ["37678"]);
    assert!(found.list[0].why.contains("F is 3, then R is 7"), "{found:?}");
}

#[test]
fn with_no_rule_a_key_may_be_pressed_for_each_place() {
    // B and A: 2 and 2, or 22 and 2.
    assert_eq!(answers(&read("(word: \"BA\", state_rule: false)", "22", 3)), ["222"]);
    assert_eq!(answers(&read("(word: \"BA\")", "22", 3)), [""; 0]);
}

#[test]
fn a_second_word_or_a_cut_one_reads_as_well() {
    let found = read("(word: \"OWL\", other_words: [\"FIR\"])", "695", 3);
    assert_eq!(answers(&found), ["347", "695"]);
    assert_eq!(found.verdict("695"), Verdict::Several);
    assert_eq!(answers(&read("(word: \"OWLS\")", "6957", 3)), ["695", "957"]);
}

#[test]
fn a_letter_on_two_keys_leaves_a_choice_and_one_on_none_is_remarked() {
    let keys = "keys: [\"A\", \"ABC\", \"DEF\", \"GHI\", \"JKL\", \"MNO\", \"PQRS\", \"TUV\", \"WXYZ\", \"\"]";
    assert_eq!(answers(&read(&format!("(word: \"AT\", {keys})"), "18", 2)), ["18", "28"]);
    let found = read("(word: \"OWL\", other_words: [\"AB\"])", "695", 2);
    assert!(found.remarks.is_empty());
}

#[test]
fn refusals_name_the_key_or_the_word() {
    let refused = |setup: &str, answer: &str| laid(setup, answer).err().unwrap().to_string();
    assert!(refused("()", "205").contains("key 0 has no letters"));
    assert!(refused("(word: \"OWL\")", "696").contains("gives 695"));
    assert!(refused("(word: \"OWL\")", "6957").contains("3 letters"));
    assert!(refused("(keys: [\"A\"])", "22").contains("10 keys"));
    let lock = LockKind::Letters(vec!["OA".into(), "WB".into()]);
    let trouble = lay_out(find("keypad-word").unwrap(), "()", "OW", &lock, 1).err().unwrap();
    assert!(trouble.message.contains("gives digits"), "{trouble}");
}

#[test]
fn the_card_states_the_rule_and_the_pad_shows_every_key() {
    let laid = laid("(word: \"OWL\")", "695").unwrap();
    let pieces = dressed("keypad-word", &LockKind::Digits(3), |cx| laid.pieces(cx)).unwrap();
    let runs = |piece: usize| pieces[piece].front.runs().map(|run| run.text.text()).collect::<Vec<_>>();
    assert_eq!(runs(0).len(), 1 + 10 + 8);
    assert!(runs(1).iter().any(|text| text.contains("from left to right")), "{:?}", runs(1));
}
