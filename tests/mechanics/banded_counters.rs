use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

type Kind<'a> = (&'a str, &'a str, Option<&'a str>);

/// Bands with colour and pattern; counters as band and digit; the card as bands.
fn view(bands: &[Kind<'_>], counters: &[(Option<usize>, &str)], card: Option<&[usize]>) -> Value {
    let bands: Vec<Value> = bands
        .iter()
        .map(|(name, colour, pattern)| json!({ "name": name, "colour": colour, "pattern": pattern }))
        .collect();
    let counters: Vec<Value> =
        counters.iter().map(|(band, text)| json!({ "band": band, "text": text, "count": 1 })).collect();
    json!({
        "bands": bands, "counters": counters, "card": card, "baseline": true, "discs": false, "lid_mm": 70.0,
        "lid_title": "", "card_title": "", "card_text": "",
    })
}

fn read(view: &Value) -> Readings {
    let view = find("banded-counters").unwrap().view(view).unwrap();
    view.readings(&LockKind::Digits(3), &mut Budget::default())
}

fn answers(view: &Value) -> Vec<String> {
    read(view).list.into_iter().map(|reading| reading.answer).collect()
}

const SAFE: &[Kind<'_>] = &[("white", "#FFFFFF", None), ("gold", "#D9A520", None), ("blue", "#23408E", None)];
// A red and a green of like lightness: far apart to full colour vision, close to deuteranopia.
const UNSAFE: &[Kind<'_>] = &[("red", "#B05A3C", None), ("green", "#7D7A35", None), ("blue", "#23408E", None)];
const DIGITS: &[(Option<usize>, &str)] = &[(Some(2), "1"), (Some(0), "4"), (Some(1), "7"), (Some(1), "")];

#[test]
fn the_card_orders_the_bands() {
    assert_eq!(answers(&view(SAFE, DIGITS, Some(&[0, 1, 2]))), ["471"]);
    assert_eq!(answers(&view(SAFE, DIGITS, Some(&[2, 0, 1]))), ["147"]);
}

#[test]
fn without_a_card_every_order_reads() {
    let found = read(&view(SAFE, DIGITS, None));
    assert_eq!(found.list.len(), 6);
    assert_eq!(found.verdict("471"), Verdict::Several);
}

#[test]
fn bands_alike_to_some_eyes_leave_a_choice_and_a_pattern_settles_it() {
    let found = read(&view(UNSAFE, DIGITS, Some(&[0, 1, 2])));
    assert_eq!(found.list.iter().map(|reading| reading.answer.as_str()).collect::<Vec<_>>(), ["471", "741"]);
    assert!(found.list[1].why.contains("anopia"), "{}", found.list[1].why);
    let twins: Vec<Kind<'_>> =
        UNSAFE.iter().zip(["triangle", "cross", "square"]).map(|((n, c, _), p)| (*n, *c, Some(p))).collect();
    assert_eq!(answers(&view(&twins, DIGITS, Some(&[0, 1, 2]))), ["471"]);
}

#[test]
fn bands_of_one_lightness_are_alike_in_grey() {
    // Blue and brown of the same luminance.
    let grey: &[Kind<'_>] = &[("blue", "#3A66B0", None), ("rust", "#A5501F", None), ("white", "#FFFFFF", None)];
    let found = read(&view(grey, DIGITS, Some(&[0, 1, 2])));
    assert_eq!(found.verdict("471"), Verdict::Several);
    assert!(found.list.iter().any(|reading| reading.why.contains("grey print")), "{found:?}");
}

#[test]
fn a_counter_without_its_band_is_taken_for_the_one_that_is_missing() {
    let lost = [(None, "1"), (Some(0), "4"), (Some(1), "7")];
    let found = read(&view(SAFE, &lost, Some(&[0, 1, 2])));
    assert_eq!(found.list.iter().map(|reading| reading.answer.as_str()).collect::<Vec<_>>(), ["471"]);
    assert!(found.remarks[0].contains("no band"), "{found:?}");
    let two = [(None, "1"), (Some(0), "4"), (None, "7")];
    assert_eq!(answers(&view(SAFE, &two, Some(&[0, 1, 2]))), ["417", "471"]);
}

#[test]
fn two_numbered_counters_of_one_band_leave_a_choice() {
    let twice = [(Some(0), "4"), (Some(0), "9"), (Some(1), "7"), (Some(2), "1")];
    assert_eq!(answers(&view(SAFE, &twice, Some(&[0, 1, 2]))), ["471", "971"]);
}

#[test]
fn six_and_nine_need_a_line_beneath() {
    let mut rolls = view(SAFE, &[(Some(0), "6"), (Some(1), "7"), (Some(2), "8")], Some(&[0, 1, 2]));
    assert_eq!(answers(&rolls), ["678"]);
    rolls["baseline"] = json!(false);
    assert_eq!(answers(&rolls), ["678", "978"]);
}

#[test]
fn refusals() {
    let mechanic = find("banded-counters").unwrap();
    let refuse = |setup: &str| {
        let trouble = lay_out(mechanic, setup, "471", &LockKind::Digits(3), 1).expect_err("refused");
        assert!(!trouble.hints.is_empty());
        trouble.to_string()
    };
    assert!(refuse("(bands: [\"white\", \"gold\"])").contains("2 bands"));
    assert!(refuse("(bands: [\"white\", \"gold\", \"gould\"])").contains("did you mean `gold`"));
    assert!(refuse("(bands: [\"white\", \"gold\", \"gold\"])").contains("named twice"));
    assert!(refuse("(lid_mm: 900.0)").contains("900"));
    assert!(refuse("(plain: 9999)").contains("9999"));
}

#[test]
fn the_card_prints_names_signs_and_rule_and_the_disc_is_true() {
    let lock = LockKind::Digits(3);
    let laid = lay_out(find("banded-counters").unwrap(), "(lid_mm: 64.0, discs: true)", "471", &lock, 1).unwrap();
    dressed("banded-counters", &lock, |cx| {
        let pieces = laid.pieces(cx).unwrap();
        let lid = pieces.iter().find(|piece| piece.id.ends_with("-lid")).unwrap();
        assert!(lid.measured && lid.front.size == inklatch::units::Size::mm(64.0, 64.0));
        assert_eq!(lid.front.outline, inklatch::face::Outline::Round);
        let card = pieces.iter().find(|piece| piece.part == "order-card").unwrap();
        let words: Vec<String> = card.front.runs().map(|run| run.text.text()).collect();
        for wanted in ["white", "triangle", "gold", "cross", "blue", "square"] {
            assert!(words.iter().any(|text| text == wanted), "{words:?}");
        }
        assert!(words.iter().any(|text| text.contains("in the order of this list, from the top")), "{words:?}");
        let counters: u16 = pieces.iter().filter(|p| p.id.contains("counter")).map(|piece| piece.copies).sum();
        assert_eq!(counters, 36 + 3);
    });
}
