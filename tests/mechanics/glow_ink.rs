use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn view(writings: &[(&str, u16, &str)], order: &str, listed: &[&str]) -> Value {
    let writings: Vec<Value> = writings
        .iter()
        .map(|(name, page, text)| {
            let symbols: Vec<String> = text.chars().map(String::from).collect();
            json!({ "place": { "name": name, "page": page }, "symbols": symbols })
        })
        .collect();
    json!({
        "writings": writings, "order": order, "listed": listed, "paper": "tinted", "loose": false, "baseline": true,
        "jacket": true, "jacket_title": "", "jacket_text": "", "note_title": "", "note_text": "",
    })
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("glow-ink").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(view: &Value, wheels: u8) -> Vec<String> {
    read(view, &LockKind::Digits(wheels)).list.into_iter().map(|reading| reading.answer).collect()
}

const THREE: &[(&str, u16, &str)] = &[("the stove", 0, "4"), ("the bell rope", 0, "7"), ("the sill", 0, "1")];

#[test]
fn several_places_read_as_the_note_lists_them() {
    assert_eq!(answers(&view(THREE, "listed", &["the sill", "the stove", "the bell rope"]), 3), ["147"]);
}

#[test]
fn several_places_in_no_stated_order_read_every_way() {
    let open = view(THREE, "open", &[]);
    assert_eq!(answers(&open, 3), ["147", "174", "417", "471", "714", "741"]);
    assert_eq!(read(&open, &LockKind::Digits(3)).verdict("471"), Verdict::Several);
    // Of unlike length: two orders of two places.
    assert_eq!(answers(&view(&[("a", 0, "7"), ("b", 0, "12")], "open", &[]), 3), ["127", "712"]);
}

#[test]
fn pages_settle_it_only_where_there_are_pages() {
    let paged = [("a", 80, "4"), ("b", 12, "7"), ("c", 31, "1")];
    assert_eq!(answers(&view(&paged, "pages", &[]), 3), ["714"]);
    let same = [("a", 12, "4"), ("b", 12, "7"), ("c", 31, "1")];
    assert_eq!(answers(&view(&same, "pages", &[]), 3), ["471", "741"]);
    let without = [("a", 0, "4"), ("b", 12, "7"), ("c", 31, "1")];
    assert_eq!(answers(&view(&without, "pages", &[]), 3), ["471", "714", "741"]);
}

#[test]
fn two_places_of_one_name_leave_a_choice() {
    let twice = [("the stove", 0, "4"), ("the stove", 0, "7")];
    assert_eq!(answers(&view(&twice, "listed", &["the stove", "the stove"]), 2), ["47", "74"]);
}

#[test]
fn one_place_reads_from_left_to_right_unless_the_slip_can_turn() {
    let one = [("the lid", 0, "168")];
    assert_eq!(answers(&view(&one, "listed", &["the lid"]), 3), ["168"]);
    let mut slip = view(&one, "listed", &["the lid"]);
    slip["loose"] = json!(true);
    assert_eq!(answers(&slip, 3), ["168"], "a line beneath settles it");
    slip["baseline"] = json!(false);
    assert_eq!(answers(&slip, 3), ["168", "891"]);
}

#[test]
fn loose_slips_turn_one_by_one() {
    let mut slips = view(&[("a", 0, "6"), ("b", 0, "8"), ("c", 0, "9")], "listed", &["a", "b", "c"]);
    slips["loose"] = json!(true);
    slips["baseline"] = json!(false);
    assert_eq!(answers(&slips, 3), ["686", "689", "986", "989"]);
}

#[test]
fn white_paper_is_remarked() {
    let mut white = view(THREE, "listed", &["the sill", "the stove", "the bell rope"]);
    white["paper"] = json!("white");
    assert!(read(&white, &LockKind::Digits(3)).remarks[0].contains("white paper"));
}

#[test]
fn letters_are_carried_and_too_many_places_refused() {
    let mechanic = find("glow-ink").unwrap();
    let lock = LockKind::Letters(vec!["BT".into(), "EO".into(), "LN".into()]);
    let setup = "(places: [(name: \"the sill\"), (name: \"the stove\")])";
    let laid = lay_out(mechanic, setup, "bel", &lock, 1).unwrap();
    assert_eq!(laid.readings(&lock, &mut Budget::default()).verdict("BEL"), Verdict::One);
    let trouble = lay_out(mechanic, setup, "4", &LockKind::Digits(1), 1).err().unwrap();
    assert!(trouble.message.contains("2 places"), "{trouble}");
}

#[test]
fn the_note_prints_the_rule_and_the_host_is_told_what_to_write() {
    let lock = LockKind::Digits(3);
    let laid = lay_out(find("glow-ink").unwrap(), "()", "964", &lock, 1).unwrap();
    dressed("glow-ink", &lock, |cx| {
        let pieces = laid.pieces(cx).unwrap();
        let note = pieces.iter().find(|piece| piece.part == "note").unwrap();
        let words: Vec<String> = note.front.runs().map(|run| run.text.text()).collect();
        assert!(
            words.iter().any(|text| text.starts_with("Read in this order. First the page of the great storm")),
            "{words:?}"
        );
        let told: String = laid.prep(cx).into_iter().map(|step| step.what).collect();
        assert!(told.contains("great storm (page 12): 9, with a line beneath"), "{told}");
    });
}
