use inklatch::kit::LockKind;
use inklatch::mechanics::{dots, find};
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed, reread};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str, lock: &LockKind, seed: u64) -> Value {
    lay_out(find("cut-strips").unwrap(), setup, answer, lock, seed).unwrap().json()
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("cut-strips").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// A text whose signs all stand on one line, in strips of so many rows.
fn level(text: &str, rows: usize, arrows: bool) -> Value {
    let mut picture = vec![String::from("."); dots::DOWN * 2];
    for sign in text.chars() {
        for (at, line) in picture.iter_mut().enumerate() {
            line.push_str(dots::rows(sign).unwrap()[at / 2]);
            line.push('.');
        }
    }
    let strips: Vec<&[String]> = picture.chunks(rows).collect();
    json!({ "strips": strips, "arrows": arrows })
}

#[test]
fn signs_that_change_places_with_their_strips_read_as_others() {
    // All on one line, the uprights of 2 and 5 can change places: the strips then show 5 and 2.
    let found = read(&level("252", 2, true), &THREE);
    assert_eq!(answers(&found), ["252", "525"]);
    assert!(found.list[0].why.contains("in the order"), "{:?}", found.list);
    assert_eq!(read(&level("252", 2, true), &THREE).verdict("252"), Verdict::Several);
    // Laid out by the mechanic, each stands at a height of its own.
    for seed in 0..20 {
        assert_eq!(answers(&read(&view("()", "252", &THREE, seed), &THREE)), ["252"]);
    }
}

#[test]
fn without_arrowheads_a_picture_may_stand_on_its_head() {
    assert!(answers(&read(&level("689", 2, false), &THREE)).contains(&"689"));
    // The same strips turned over as a whole: 689 is itself, 668 becomes 899.
    let found = read(&level("668", 2, false), &THREE);
    assert!(answers(&found).contains(&"668") && answers(&found).contains(&"899"), "{found:?}");
    let trouble = lay_out(find("cut-strips").unwrap(), "(arrows: false)", "668", &THREE, 1).err().unwrap();
    assert!(trouble.hints[0].contains("arrows: true"), "{trouble}");
    let turned = view("(arrows: false)", "374", &THREE, 2);
    assert_eq!(answers(&read(&turned, &THREE)), ["374"]);
}

#[test]
fn like_strips_and_strips_that_can_be_turned_are_remarked() {
    let found = read(&level("111", 2, true), &THREE);
    assert_eq!(answers(&found), ["111"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("like another strip")), "{found:?}");
    let found = read(&level("888", 2, false), &THREE);
    assert!(found.remarks.iter().any(|remark| remark.contains("same upside down")), "{found:?}");
}

#[test]
fn level_strokes_keep_their_thickness_and_uprights_need_not_keep_their_length() {
    // The waist of an 8 may come out higher or lower, but its two upper bars never merge to make it a 0.
    let one = LockKind::Digits(1);
    assert_eq!(answers(&read(&level("8", 1, true), &one)), ["8"]);
    // Halves of rows: each bar is two strips, and any two of them make a bar.
    assert_eq!(answers(&read(&level("5", 1, true), &one)), ["2", "5"]);
}

#[test]
fn letters_are_read_by_what_the_lock_can_show() {
    let lock = LockKind::Letters(vec!["ABDHLMPSTW".into(), "AEIOULRHNW".into(), "AEIOLNRSTM".into()]);
    for seed in 0..10 {
        assert_eq!(answers(&read(&view("()", "SUN", &lock, seed), &lock)), ["SUN"]);
    }
    assert_eq!(answers(&read(&view("()", "BELL", &LockKind::Spoken, 1), &LockKind::Spoken)), ["BELL"]);
}

#[test]
fn what_cannot_be_cut_is_refused_and_a_small_budget_is_unproven() {
    let mechanic = find("cut-strips").unwrap();
    let trouble = lay_out(mechanic, "()", "1234567", &LockKind::Digits(7), 1).err().unwrap();
    assert!(trouble.message.contains("too many"), "{trouble}");
    let trouble = lay_out(mechanic, "()", "123", &LockKind::Spoken, 1).err().unwrap();
    assert!(!trouble.hints.is_empty(), "{trouble}");
    let laid = lay_out(mechanic, "()", "129", &THREE, 1).unwrap();
    assert_eq!(laid.readings(&THREE, &mut Budget::new(3)).verdict("129"), Verdict::Unproven);
    let ragged = json!({ "strips": [["....."], ["...", "..."]], "arrows": true });
    let found = read(&ragged, &THREE);
    assert!(found.list.is_empty() && found.remarks[0].contains("one size"), "{found:?}");
    // Seventeen strips are more than anybody lays; they are left unproven, not tried.
    let many = json!({ "strips": vec![vec!["......."]; 17], "arrows": true });
    assert_eq!(read(&many, &LockKind::Digits(1)).verdict("1"), Verdict::Unproven);
}

#[test]
fn strips_that_lost_a_cell_in_print_are_noticed() {
    let mechanic = find("cut-strips").unwrap();
    let laid = lay_out(mechanic, "()", "347", &THREE, 5).unwrap();
    let mut sides = printed("cut-strips", &THREE, laid.as_ref());
    assert_eq!(reread(mechanic, &THREE, &sides).unwrap().unwrap().json(), laid.json());
    // Two strips change their letters.
    let mut swapped = sides.clone();
    let strips = swapped.iter_mut().filter(|side| side.part == "strips").flat_map(|side| &mut side.texts);
    for text in strips {
        text.text = match text.text.as_str() {
            "A" => "B".into(),
            "B" => "A".into(),
            other => other.into(),
        };
    }
    let trouble = reread(mechanic, &THREE, &swapped).unwrap().err().unwrap();
    assert!(trouble.message.contains("does not bear the letter A"), "{trouble}");
    // One cell of one strip goes missing.
    let strip = sides.iter_mut().find(|side| side.part == "strips" && side.shapes.len() > 2).unwrap();
    // The mark is a picture of its own, after the strip's.
    let last = strip.shapes.iter().rposition(|shape| shape.art == 0).unwrap();
    strip.shapes.remove(last);
    let again = reread(mechanic, &THREE, &sides).unwrap().unwrap();
    assert_ne!(again.json(), laid.json());
}

#[test]
fn the_last_hint_names_the_strips_from_the_top() {
    for (setup, turned) in [("()", false), ("(arrows: false)", true)] {
        let laid = lay_out(find("cut-strips").unwrap(), setup, "374", &THREE, 2).unwrap();
        let hints = dressed("cut-strips", &THREE, |cx| laid.draft_hints(cx));
        let found = laid.readings(&THREE, &mut Budget::default());
        let order = found.list[0].why.split("in the order ").nth(1).unwrap();
        assert!(hints.giveaway.contains(&format!("from the top: {order}.")), "{}", hints.giveaway);
        let mut letters: Vec<&str> = order.split(", ").map(|step| &step[..1]).collect();
        letters.sort_unstable();
        assert_eq!(letters, ["A", "B", "C", "D", "E", "F", "G"]);
        assert_eq!(order.contains("upside down"), turned, "{order}");
    }
}

#[test]
fn the_card_says_how_the_strips_are_laid() {
    for (setup, words) in [("()", "Each arrowhead points up"), ("(arrows: false)", "upside down")] {
        let laid = lay_out(find("cut-strips").unwrap(), setup, "347", &THREE, 1).unwrap();
        let pieces = dressed("cut-strips", &THREE, |cx| laid.pieces(cx)).unwrap();
        assert_eq!(pieces.len(), 1 + 7);
        assert!(pieces[0].front.runs().any(|run| run.text.text().contains(words)));
    }
}
