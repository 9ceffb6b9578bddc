use inklatch::face::{Frame, Layer};
use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use inklatch::theme::{Palette, builtin_ids, load_builtin};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed, reread};

/// Tags that spell the word, a letter each: mark, and whether the lock may stay shut.
fn view(word: &str, locks: &[(&str, bool)]) -> Value {
    let tag = |(letter, (mark, spare)): (char, &(&str, bool))| json!({ "lock": "", "mark": mark, "number": null, "text": letter.to_string(), "spare": spare });
    let hole = |(at, (mark, _)): (usize, &(&str, bool))| json!({ "number": at + 1, "mark": mark });
    json!({
        "tags": word.chars().zip(locks).map(tag).collect::<Vec<_>>(),
        "holes": locks.iter().enumerate().map(hole).collect::<Vec<_>>(),
        "rule": true,
    })
}

fn read(view: &Value) -> Readings {
    find("tag-meta").unwrap().view(view).unwrap().readings(&LockKind::Spoken, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn tags_read_in_the_order_of_the_holes() {
    let mut tags = view("BELL", &[("owl", false), ("key", false), ("moon", false), ("star", false)]);
    assert_eq!(answers(&read(&tags)), ["BELL"]);
    // However the tags come to lie.
    tags["tags"].as_array_mut().unwrap().reverse();
    assert_eq!(answers(&read(&tags)), ["BELL"]);
}

#[test]
fn two_tags_alike_can_change_places() {
    let tags = view("OWL", &[("key", false), ("moon", false), ("key", false)]);
    assert_eq!(answers(&read(&tags)), ["LWO", "OWL"]);
    let mut numbered = tags;
    for (at, tag) in numbered["tags"].as_array_mut().unwrap().iter_mut().enumerate() {
        tag["number"] = json!(at + 1);
    }
    assert_eq!(answers(&read(&numbered)), ["OWL"]);
}

#[test]
fn a_lock_that_may_stay_shut_shortens_the_word() {
    let found = read(&view("OWLS", &[("key", false), ("moon", false), ("star", false), ("owl", true)]));
    assert_eq!(answers(&found), ["OWL", "OWLS"]);
    assert!(found.list[0].why.contains("left shut") && found.remarks[0].contains("need not be opened"), "{found:?}");
}

#[test]
fn without_card_and_numbers_any_order_reads() {
    let mut tags = view("OWL", &[("key", false), ("moon", false), ("star", false)]);
    tags["holes"] = json!([]);
    assert_eq!(read(&tags).list.len(), 6);
    for (at, tag) in tags["tags"].as_array_mut().unwrap().iter_mut().enumerate() {
        tag["number"] = json!(at + 1);
    }
    assert_eq!(answers(&read(&tags)), ["OWL"]);
}

#[test]
fn with_no_rule_the_last_hole_may_come_first() {
    let mut tags = view("OWL", &[("key", false), ("moon", false), ("star", false)]);
    tags["rule"] = json!(false);
    assert_eq!(answers(&read(&tags)), ["LWO", "OWL"]);
    tags["holes"][1]["mark"] = json!("bell");
    assert!(read(&tags).remarks.iter().any(|remark| remark.contains("fits no hole")));
}

#[test]
fn the_locks_of_the_kit_carry_the_tags() {
    let mechanic = find("tag-meta").unwrap();
    let view = lay_out(mechanic, "()", "TOWER", &LockKind::Spoken, 1).unwrap();
    let json = view.json();
    let texts: Vec<&str> = json["tags"].as_array().unwrap().iter().map(|tag| tag["text"].as_str().unwrap()).collect();
    assert_eq!(texts, ["TO", "WE", "R"]);
    assert_eq!(json["holes"][2], json!({ "number": 4, "mark": "moon" }));
    assert_eq!(view.readings(&LockKind::Spoken, &mut Budget::default()).verdict("tower"), Verdict::One);
    // Lock names and spare locks are no print; the rest comes back as it was.
    let again = reread(mechanic, &LockKind::Spoken, &printed("tag-meta", &LockKind::Spoken, view.as_ref()));
    let mut expected = json.clone();
    expected["tags"].as_array_mut().unwrap().iter_mut().for_each(|tag| tag["lock"] = json!(""));
    assert_eq!(again.unwrap().unwrap().json(), expected);
    let steps = dressed("tag-meta", &LockKind::Spoken, |cx| view.prep(cx));
    assert!(steps[1].what.contains("the tag with WE on the long padlock (mark: key)"), "{}", steps[1].what);
    let pieces = dressed("tag-meta", &LockKind::Spoken, |cx| view.pieces(cx)).unwrap();
    assert_eq!(pieces.iter().filter(|piece| piece.front.folds.len() == 1).count(), 3);
}

#[test]
fn a_punch_reaches_the_hole_from_the_fold_in_every_theme() {
    for id in builtin_ids() {
        let loaded = load_builtin(&id).unwrap();
        let palette = Palette::new(&loaded.theme.palette, &Default::default()).unwrap();
        let frame = Frame::read(loaded.frame("tag").unwrap(), &palette).unwrap();
        let hole = frame.slot("hole").unwrap();
        // The print begins at the fold; an ordinary punch reaches about 12 mm (common practice, no source).
        assert!((hole.y + hole.h / 2.0).get() <= 10.0, "{id}: {hole:?}");
    }
    let view = lay_out(find("tag-meta").unwrap(), "()", "OWL", &LockKind::Spoken, 1).unwrap();
    for piece in dressed("tag-meta", &LockKind::Spoken, |cx| view.pieces(cx)).unwrap() {
        let Some(fold) = piece.front.folds.first().map(|fold| fold.0.1) else { continue };
        // What is folded down is longer than the print by the tab, which stands on its head on the sheet.
        assert!(fold > piece.front.size.h - fold, "{}", piece.label);
        let above = piece.front.layers.iter().filter(|layer| match layer {
            Layer::Art(art) => art.rect.bottom() < fold && art.turn == 180.0,
            Layer::Text(run) => run.rect.bottom() < fold && run.turn == 180.0,
        });
        assert_eq!(above.count(), 1, "{}", piece.label);
    }
}

#[test]
fn swapped_tags_are_noticed() {
    let mechanic = find("tag-meta").unwrap();
    let view = lay_out(mechanic, "()", "OWL", &LockKind::Spoken, 1).unwrap();
    let mut sides = printed("tag-meta", &LockKind::Spoken, view.as_ref());
    let letter = sides[0].texts.iter().position(|text| text.text == "O").unwrap();
    let other = sides[1].texts.iter().position(|text| text.text == "W").unwrap();
    sides[0].texts[letter].text = "W".into();
    sides[1].texts[other].text = "O".into();
    let again = reread(mechanic, &LockKind::Spoken, &sides).unwrap().unwrap();
    assert_eq!(answers(&again.readings(&LockKind::Spoken, &mut Budget::default())), ["WOL"]);
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str| {
        lay_out(find("tag-meta").unwrap(), setup, answer, &LockKind::Spoken, 1).err().unwrap().to_string()
    };
    assert!(refused("()", "AB").contains("2 letters or digits, for 3 tags"));
    assert!(refused("()", "ABCDEFGHIJ").contains("for 3 tags"));
    assert!(refused("(locks: [(hole: 1, name: \"a\")])", "AB").contains("fewer than two"));
    assert!(refused("(locks: [(hole: 1, name: \"a\"), (hole: 1, name: \"b\")])", "AB").contains("a hole of its own"));
    assert!(
        refused("(locks: [(hole: 1, name: \"a\", mark: \"cloud\"), (hole: 2, name: \"b\")])", "AB")
            .contains("no symbol")
    );
}
