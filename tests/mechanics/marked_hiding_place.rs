//! `marked-hiding-place`: what it carries, what it refuses, and the readings of each trap.

use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyView, find};
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const PARCELS: &str = "things: [(name: \"the round parcel\", sign: \"owl\"), (name: \"the long parcel\", sign: \"moon\"), (name: \"the flat parcel\", sign: \"star\", word: \"north star\")]";

fn laid(setup: &str, answer: &str, lock: &LockKind, seed: u64) -> inklatch::diag::Hinted<Box<dyn AnyView>> {
    lay_out(find("marked-hiding-place").unwrap(), setup, answer, lock, seed)
}

fn read(setup: &str, answer: &str) -> Readings {
    laid(&format!("({PARCELS}, {setup})"), answer, &LockKind::Key, 1)
        .unwrap()
        .readings(&LockKind::Key, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

fn view(things: &[(&str, &str)], note: &str) -> Readings {
    let things: Vec<Value> =
        things.iter().map(|(name, sign)| json!({ "name": name, "sign": sign, "word": sign })).collect();
    let view = json!({ "things": things, "note": note, "told_by": "Card", "place": "Under", "slip": null });
    find("marked-hiding-place").unwrap().view(&view).unwrap().readings(&LockKind::Key, &mut Budget::default())
}

#[test]
fn each_thing_can_be_the_place() {
    let names = ["the round one", "the long one", "the flat one", "the tall one", "the striped one"];
    for seed in 0..50 {
        let answer = names[usize::try_from(seed).unwrap() % names.len()];
        let readings =
            laid("()", answer, &LockKind::Key, seed).unwrap().readings(&LockKind::Key, &mut Budget::default());
        assert_eq!(readings.verdict(answer), Verdict::One, "seed {seed}: {readings:?}");
        assert!(readings.remarks.is_empty());
    }
}

#[test]
fn signs_are_drawn_by_the_seed() {
    let json = |seed| laid("()", "the round one", &LockKind::Key, seed).unwrap().json();
    assert_eq!(json(1), json(1));
    assert_ne!(json(1), json(2));
}

#[test]
fn an_own_note_must_name_one_sign() {
    let owls = read("note: \"Ask the owls: they watch over it.\"", "the round parcel");
    assert_eq!(answers(&owls), ["the round parcel"]);
    let two = read("note: \"The owl sits under the north star.\"", "the round parcel");
    assert_eq!(answers(&two), ["the flat parcel", "the round parcel"]);
    let none = read("note: \"You know where to look.\"", "the round parcel");
    assert!(none.list.is_empty());
    assert!(none.remarks.iter().any(|remark| remark.contains("names none of the signs")), "{none:?}");
    // A star alone is not the north star.
    assert!(read("note: \"Follow the star.\"", "the flat parcel").list.is_empty());
    let other = read("note: \"The moon knows.\"", "the round parcel");
    assert_eq!(other.verdict("the round parcel"), Verdict::Other);
}

#[test]
fn a_sign_that_stands_on_two_has_two_readings() {
    let two = view(&[("the bell", "owl"), ("the drum", "owl"), ("the cup", "star")], "Look under the owl.");
    assert_eq!(answers(&two), ["the bell", "the drum"]);
}

#[test]
fn a_name_that_holds_the_sign_is_a_reading_too() {
    let jar = view(&[("the bell jar", "owl"), ("the drum", "bell")], "Look where the bell is.");
    assert_eq!(answers(&jar), ["the bell jar", "the drum"]);
    assert!(jar.list[0].why.contains("is called so itself"), "{jar:?}");
    let named = view(&[("the drum", "owl"), ("the cup", "bell")], "Not under the drum, under the bell.");
    assert_eq!(answers(&named), ["the cup", "the drum"]);
}

#[test]
fn a_key_in_food_is_remarked() {
    let readings = read("place: InFood", "the round parcel");
    assert_eq!(readings.verdict("the round parcel"), Verdict::One);
    assert!(readings.remarks.iter().any(|remark| remark.contains("food")), "{readings:?}");
}

#[test]
fn a_slip_gives_a_code() {
    let lock = LockKind::Digits(3);
    let setup = format!("({PARCELS}, holds: Slip, at: \"the long parcel\")");
    let view = laid(&setup, "407", &lock, 1).unwrap();
    assert!(!view.json().to_string().contains("407"));
    let readings = view.readings(&lock, &mut Budget::default());
    assert_eq!(readings.verdict("407"), Verdict::One);
    assert!(readings.remarks.is_empty());
    let wrong = format!("({PARCELS}, holds: Slip, at: \"the long parcel\", note: \"Under the owl.\")");
    assert!(laid(&wrong, "407", &lock, 1).unwrap().readings(&lock, &mut Budget::default()).list.is_empty());
    let prep = dressed("marked-hiding-place", &lock, |cx| view.prep(cx));
    assert!(prep.iter().any(|step| step.what.contains("Write 407 on a slip")), "{prep:?}");
}

#[test]
fn what_it_cannot_carry_is_refused_with_a_hint() {
    let refused = |setup: &str, answer: &str, lock: &LockKind| laid(setup, answer, lock, 1).unwrap_err().to_string();
    assert!(refused("()", "the rond one", &LockKind::Key).contains("did you mean \"the round one\""));
    assert!(refused("()", "407", &LockKind::Digits(3)).contains("holds to Slip"));
    assert!(refused("(holds: Slip)", "the round one", &LockKind::Key).contains("holds to Key"));
    assert!(refused("(things: [(name: \"a\"), (name: \"A \")])", "a", &LockKind::Key).contains("two things"));
    assert!(refused("(things: [(name: \"a\")])", "a", &LockKind::Key).contains("2 to 24"));
    assert!(
        refused("(things: [(name: \"a\", sign: \"oul\"), (name: \"b\")])", "a", &LockKind::Key)
            .contains("did you mean `owl`")
    );
    let many: String = (0..9).map(|n| format!("(name: \"n{n}\"),")).collect();
    assert!(refused(&format!("(things: [{many}])"), "n1", &LockKind::Key).contains("too few symbols"));
}

#[test]
fn pieces_are_a_tag_each_and_the_note() {
    dressed("marked-hiding-place", &LockKind::Key, |cx| {
        let view = laid(&format!("({PARCELS})"), "the long parcel", &LockKind::Key, 1).unwrap();
        let pieces = view.pieces(cx).unwrap();
        assert_eq!(view.parts(), ["things", "note"]);
        let ids: Vec<&str> = pieces.iter().map(|piece| piece.id.as_str()).collect();
        assert_eq!(ids, ["sample-tag-1", "sample-tag-2", "sample-tag-3", "sample-note"]);
        for piece in &pieces {
            let words: String = piece.front.runs().map(|run| run.text.text()).collect();
            assert!(!format!("{words} {} {}", piece.label, piece.front.alt).contains("long parcel"), "{piece:?}");
        }
        let letter = laid(&format!("({PARCELS}, told_by: Letter)"), "the long parcel", &LockKind::Key, 1).unwrap();
        assert_eq!(letter.parts(), ["things"]);
        assert_eq!(letter.pieces(cx).unwrap().len(), 3);
        assert!(letter.prep(cx).iter().any(|step| step.what.contains("sign of the moon")));
        let hints = view.draft_hints(cx);
        for step in inklatch::diag::Step::ALL {
            assert!(!hints.step(step).contains("long parcel"));
        }
    });
}
