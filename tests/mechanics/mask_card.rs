use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed, reread};

const TWO: LockKind = LockKind::Digits(2);

fn read(windows: &[(u8, u8)], corner: &str, turns: &Value, lock: &LockKind) -> Readings {
    let rows = ["1234", "5678", "9012", "3456"];
    let view = json!({ "rows": rows, "windows": windows, "corner": corner, "turns": turns });
    find("mask-card").unwrap().view(&view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn a_marked_card_lies_in_one_way() {
    assert_eq!(answers(&read(&[(0, 1), (2, 0)], "printed", &json!(1), &TWO)), ["29"]);
    // Four turns to the right: each window on four cells, counted by hand.
    let four = LockKind::Digits(4);
    assert_eq!(answers(&read(&[(0, 0)], "printed", &json!(4), &four)), ["1463"]);
    assert_eq!(answers(&read(&[(0, 1)], "printed", &json!(4), &four)), ["2859"]);
}

#[test]
fn a_cut_corner_lets_the_card_be_flipped_about_it() {
    let found = read(&[(0, 1), (2, 3)], "cut", &json!(1), &TWO);
    assert_eq!(answers(&found), ["22", "55"]);
    assert!(found.list[1].why.contains("face down"), "{found:?}");
    assert_eq!(answers(&read(&[(0, 0), (3, 3)], "cut", &json!(1), &TWO)), ["16"]);
}

#[test]
fn a_card_without_a_mark_lies_in_eight_ways() {
    let found = read(&[(0, 1), (2, 0)], "plain", &json!(1), &TWO);
    // Counted by hand: face up 29, 28, 85, 95, turn after turn; face down 32, 24, 54, 35.
    assert_eq!(answers(&found), ["24", "28", "29", "32", "35", "54", "85", "95"]);
    assert_eq!(found.verdict("29"), Verdict::Several);
    assert!(found.remarks[0].contains("nothing shows how the card lies"), "{found:?}");
}

#[test]
fn with_no_rule_columns_and_turns_read_too() {
    let found = read(&[(0, 1), (2, 0)], "printed", &Value::Null, &TWO);
    assert_eq!(answers(&found), ["29", "92"]);
    let one = read(&[(0, 1)], "printed", &Value::Null, &TWO);
    // Laid on twice, and turned to the right or to the left.
    assert_eq!(answers(&one), ["28", "29"]);
    assert!(one.remarks.iter().any(|remark| remark.contains("in which order")), "{one:?}");
}

#[test]
fn number_words_make_a_card_without_a_mark_sound() {
    let mechanic = find("mask-card").unwrap();
    let lock = LockKind::Digits(3);
    for seed in 0..10 {
        for corner in ["plain", "cut", "printed"] {
            let setup = format!("(spell: true, side: 7, corner: {corner})");
            let view = lay_out(mechanic, &setup, "216", &lock, seed).unwrap();
            assert_eq!(view.readings(&lock, &mut Budget::default()).verdict("216"), Verdict::One, "{corner}, {seed}");
            let again = reread(mechanic, &lock, &printed("mask-card", &lock, view.as_ref())).unwrap().unwrap();
            assert_eq!(again.json(), view.json(), "{corner}, {seed}");
        }
    }
    // A grid of digits has as many readings as the card has ways to lie.
    let view = lay_out(mechanic, "(corner: plain)", "216", &lock, 1).unwrap();
    assert_eq!(view.readings(&lock, &mut Budget::default()).verdict("216"), Verdict::Several);
}

#[test]
fn several_turns_are_stated_and_come_back_from_paper() {
    let mechanic = find("mask-card").unwrap();
    let lock = LockKind::Digits(4);
    for (turns, side) in [(1, 4), (2, 5), (4, 6), (4, 8)] {
        let view = lay_out(mechanic, &format!("(turns: {turns}, side: {side})"), "7315", &lock, 2).unwrap();
        assert_eq!(view.readings(&lock, &mut Budget::default()).verdict("7315"), Verdict::One);
        let again = reread(mechanic, &lock, &printed("mask-card", &lock, view.as_ref())).unwrap().unwrap();
        assert_eq!(again.json(), view.json());
    }
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str| {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        lay_out(find("mask-card").unwrap(), setup, answer, &lock, 1).err().unwrap().to_string()
    };
    assert!(refused("(side: 3)", "123").contains("4 to 8"));
    assert!(refused("(turns: 9)", "123").contains("1 to 4"));
    assert!(refused("(turns: 2)", "123").contains("shared out over 2"));
    assert!(refused("(side: 4, spell: true)", "333").contains("fall apart"));
}

#[test]
fn both_pieces_are_measured_and_of_one_size() {
    let lock = LockKind::Digits(3);
    let view = lay_out(find("mask-card").unwrap(), "()", "216", &lock, 1).unwrap();
    let pieces = dressed("mask-card", &lock, |cx| view.pieces(cx)).unwrap();
    assert!(pieces.iter().all(|piece| piece.measured));
    assert!(pieces[1].label.contains("cut out the windows"));
    // A window that moved by a cell, and a card printed smaller than the square, are noticed.
    let sides = printed("mask-card", &lock, view.as_ref());
    let mut moved = sides.clone();
    let window = moved[1].shapes.iter_mut().find(|shape| shape.dashed).unwrap();
    window.rect.x += window.rect.w * 0.5;
    let again = reread(find("mask-card").unwrap(), &lock, &moved).unwrap();
    assert!(again.is_err() || again.unwrap().readings(&lock, &mut Budget::default()).verdict("216") != Verdict::One);
    let small = vec![sides[0].clone(), sides[1].scaled(0.94)];
    let trouble = reread(find("mask-card").unwrap(), &lock, &small).unwrap().err().unwrap();
    assert!(trouble.message.contains("not as large"), "{trouble}");
}
