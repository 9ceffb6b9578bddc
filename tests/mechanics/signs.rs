//! Braille card, semaphore figures and picture key: their traps.

use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed};

const THREE: LockKind = LockKind::Digits(3);

fn view(id: &str, setup: &str, answer: &str, lock: &LockKind) -> Value {
    lay_out(find(id).unwrap(), setup, answer, lock, 1).unwrap().json()
}

fn read(id: &str, view: &Value, lock: &LockKind) -> Readings {
    find(id).unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

fn card_text(id: &str, setup: &str, answer: &str) -> String {
    let laid = lay_out(find(id).unwrap(), setup, answer, &THREE, 1).unwrap();
    let pieces = dressed(id, &THREE, |cx| laid.pieces(cx)).unwrap();
    pieces[0].front.runs().map(|run| run.text.text()).collect::<Vec<_>>().join(" / ")
}

#[test]
fn braille_upside_down_is_another_word_where_nothing_marks_the_start() {
    // R and W are each other upside down.
    let lock = LockKind::Letters(vec!["RW".into(), "RW".into()]);
    let id = "braille-card";
    assert_eq!(answers(&read(id, &view(id, "()", "RR", &lock), &lock)), ["RR"]);
    let found = read(id, &view(id, "(start_mark: false)", "RR", &lock), &lock);
    assert_eq!(answers(&found), ["RR", "WW"]);
    assert_eq!(found.verdict("RR"), Verdict::Several);
}

#[test]
fn braille_digits_and_letters_share_cells() {
    let id = "braille-card";
    let said = LockKind::Spoken;
    let plain = view(id, "(key: both, number_sign: false)", "29", &said);
    assert_eq!(answers(&read(id, &plain, &said)), ["29", "2I", "B9", "BI"]);
    assert_eq!(answers(&read(id, &view(id, "(key: both)", "29", &said), &said)), ["29"]);
    assert!(card_text(id, "()", "290").contains("digits follow"));
    assert!(!card_text(id, "(number_sign: false)", "290").contains("digits follow"));
}

#[test]
fn a_cell_that_the_key_lacks_is_remarked() {
    let id = "braille-card";
    let mut cells = view(id, "()", "290", &THREE);
    cells["key"].as_array_mut().unwrap().retain(|entry| entry["symbol"] != "9");
    let found = read(id, &cells, &THREE);
    assert!(found.list.is_empty() && found.remarks[0].contains("sign 2"), "{found:?}");
}

#[test]
fn semaphore_from_behind_or_from_the_right_reads_otherwise() {
    let id = "semaphore-figures";
    assert_eq!(answers(&read(id, &view(id, "()", "126", &THREE), &THREE)), ["126"]);
    assert_eq!(answers(&read(id, &view(id, "(say_front: false)", "126", &THREE), &THREE)), ["126", "762"]);
    assert_eq!(answers(&read(id, &view(id, "(say_order: false)", "126", &THREE), &THREE)), ["126", "621"]);
    assert!(card_text(id, "()", "126").contains("from the front"));
    assert!(!card_text(id, "(say_front: false)", "126").contains("front"));
}

#[test]
fn semaphore_digits_share_arms_with_letters() {
    let id = "semaphore-figures";
    let said = LockKind::Spoken;
    let plain = view(id, "(key: both)", "20", &said);
    assert_eq!(answers(&read(id, &plain, &said)), ["20", "2K", "B0", "BK"]);
    let signed = view(id, "(key: both, numeral_sign: true)", "20", &said);
    assert_eq!(answers(&read(id, &signed, &said)), ["20"]);
    assert!(card_text(id, "(numeral_sign: true)", "126").contains("digits follow"));
}

#[test]
fn a_row_of_pictures_reads_both_ways_without_a_mark() {
    let id = "picture-key";
    assert_eq!(answers(&read(id, &view(id, "()", "407", &THREE), &THREE)), ["407"]);
    let found = read(id, &view(id, "(start_mark: false)", "407", &THREE), &THREE);
    assert_eq!(answers(&found), ["407", "704"]);
    assert_eq!(read(id, &view(id, "(start_mark: false)", "474", &THREE), &THREE).verdict("474"), Verdict::One);
    assert!(card_text(id, "()", "407").contains("Start at the arrowhead"));
}

#[test]
fn a_legend_that_gives_a_picture_two_digits_leaves_a_choice() {
    let id = "picture-key";
    let mut pictures = view(id, "()", "407", &THREE);
    let sign = pictures["row"][1].clone();
    pictures["legend"].as_array_mut().unwrap().push(json!({ "symbol": "9", "sign": sign }));
    assert_eq!(answers(&read(id, &pictures, &THREE)), ["407", "497"]);
}

#[test]
fn pictures_are_named_once_and_enough_of_them() {
    let mechanic = find("picture-key").unwrap();
    let refused = |setup: &str, answer: &str| lay_out(mechanic, setup, answer, &THREE, 1).err().unwrap().to_string();
    assert!(refused("(pictures: [\"bel\", \"key\", \"owl\"])", "407").contains("did you mean `bell`"));
    assert!(refused("(pictures: [\"key\", \"key\", \"owl\"])", "407").contains("named twice"));
    assert!(refused("(pictures: [\"key\", \"owl\"])", "407").contains("3 different symbols"));
}

#[test]
fn pictures_that_look_alike_are_refused() {
    // The plain theme once more, in which the owl is drawn as the key is.
    let mut theme = crate::common::plain_theme();
    let key = theme.theme.symbols["key"].clone();
    theme.theme.symbols.insert("owl".into(), key);
    let lock = THREE;
    let setup = "(pictures: [\"key\", \"owl\", \"moon\"])";
    let laid = lay_out(find("picture-key").unwrap(), setup, "407", &lock, 1).unwrap();
    let trouble = dressed("picture-key", &lock, |cx| {
        let other = inklatch::mechanics::Dressing { theme: &theme, ..*cx };
        laid.pieces(&other).err().unwrap()
    });
    assert!(trouble.message.contains("look alike"), "{trouble}");
    assert!(dressed("picture-key", &lock, |cx| laid.pieces(cx)).is_ok());
}

#[test]
fn semaphore_figures_of_the_key_can_be_told_apart_at_arms_length() {
    let lock = LockKind::Letters(vec!["ABCDEFGHIJKLMNOPQRSTUVWXYZ".into(); 5]);
    let view = lay_out(find("semaphore-figures").unwrap(), "()", "HERON", &lock, 1).unwrap();
    let sides = printed("semaphore-figures", &lock, view.as_ref());
    let key = sides.iter().find(|side| side.part == "key-card").unwrap();
    let figures: Vec<f64> =
        key.arts.iter().map(|art| art.rect.w.get().min(art.rect.h.get())).filter(|side| *side < 40.0).collect();
    // The lock's mark is one more.
    assert!(figures.len() >= 27, "{figures:?}");
    assert!(figures.iter().all(|side| *side >= 12.0), "{figures:?}");
}
