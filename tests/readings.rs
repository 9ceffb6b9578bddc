//! Tests of `readings`, and of the colour differences that they rest on.

mod orders;
mod solvers;
mod ways;

use std::collections::BTreeSet;

use inklatch::kit::LockKind;
use inklatch::readings::tokens::{Cue, Mark, Order, Way, each, read, turned, turns};
use inklatch::readings::{Budget, Verdict};
use inklatch::theme::Colour;
use inklatch::theme::colour::{Eyes, Lab, difference};
use serde_json::Value;

fn cases(text: &str) -> (Value, Vec<Value>) {
    let file: Value = serde_json::from_str(text).unwrap();
    (file.clone(), file["cases"].as_array().unwrap().clone())
}

fn marks(texts: &[&str]) -> Vec<Mark> {
    texts.iter().map(|text| Mark::new(format!("the {text}"), *text)).collect()
}

fn answers(marks: &[Mark], order: &Order, wheels: u8) -> Vec<String> {
    let readings = read(marks, order, &LockKind::Digits(wheels), &mut Budget::default());
    assert!(!readings.unproven);
    readings.list.into_iter().map(|reading| reading.answer).collect()
}

/// Source: tests/refs/04_combinatorics.json (multinomial counts and brute force; exact).
#[test]
fn orders_and_concatenations_are_counted_right() {
    let mut seen = 0;
    for case in cases(include_str!("refs/04_combinatorics.json")).1 {
        let tokens: Vec<String> = match case["kind"].as_str().unwrap() {
            "multiset_orderings" => {
                case["input"]["digits"].as_array().unwrap().iter().map(ToString::to_string).collect()
            }
            "token_concatenations" => {
                let tokens = case["input"]["tokens"].as_array().unwrap();
                tokens.iter().map(|token| token.as_str().unwrap().to_owned()).collect()
            }
            _ => continue,
        };
        let marks: Vec<Mark> = tokens.iter().map(|token| Mark::new(token.clone(), token.clone())).collect();
        let mut distinct = BTreeSet::new();
        each(&marks, &Order::open(), &|_| true, &mut Budget::default(), &mut |text, _| {
            distinct.insert(text.to_owned());
            true
        })
        .unwrap();
        assert_eq!(distinct.len() as u64, case["expected"]["count"].as_u64().unwrap(), "{}", case["id"]);
        if let Some(all) = case["expected"]["all"].as_array() {
            let all: BTreeSet<String> = all.iter().map(|text| text.as_str().unwrap().to_owned()).collect();
            assert_eq!(distinct, all, "{}", case["id"]);
        }
        seen += 1;
    }
    assert!(seen > 40, "only {seen} cases were counted");
}

#[test]
fn two_stickers_of_unlike_length_in_no_order_read_two_ways() {
    assert_eq!(answers(&marks(&["7", "12"]), &Order::open(), 3), ["127", "712"]);
    assert_eq!(answers(&marks(&["1", "11"]), &Order::open(), 3), ["111"], "the same digits whatever the order");
    assert_eq!(answers(&marks(&["7", "12"]), &Order::Listed, 3), ["712"]);
}

#[test]
fn a_partial_order_leaves_what_it_leaves() {
    assert_eq!(answers(&marks(&["1", "2", "3"]), &Order::Partial(vec![(0, 1)]), 3), ["123", "132", "312"]);
    assert_eq!(answers(&marks(&["1", "2", "3"]), &Order::Partial(vec![(0, 1), (1, 2)]), 3), ["123"]);
    assert!(answers(&marks(&["1", "2"]), &Order::Partial(vec![(0, 1), (1, 0)]), 2).is_empty(), "a circle");
}

#[test]
fn a_cue_that_fits_two_marks_leaves_a_choice() {
    let cue = |label: &str, marks: &[usize]| Cue { label: label.into(), marks: marks.to_vec() };
    let order = Order::Cued(vec![cue("D", &[0, 2]), cue("K", &[1])]);
    assert_eq!(answers(&marks(&["4", "7", "9"]), &order, 2), ["47", "97"]);
    // A letter that the pointer names twice and two marks carry: both orders.
    let order = Order::Cued(vec![cue("E", &[0, 1]), cue("E", &[0, 1])]);
    assert_eq!(answers(&marks(&["4", "7"]), &order, 2), ["47", "74"]);
    // A cue that nothing fits: no answer.
    assert!(answers(&marks(&["4"]), &Order::Cued(vec![cue("Q", &[])]), 1).is_empty());
}

#[test]
fn a_ring_without_start_or_way_turns_and_flips() {
    let ring = |start, way| answers(&marks(&["4", "7", "1"]), &Order::Ring { start, way }, 3);
    assert_eq!(ring(true, Way::Rightwards), ["471"]);
    assert_eq!(ring(true, Way::Leftwards), ["174"]);
    assert_eq!(ring(true, Way::Unstated), ["174", "471"]);
    assert_eq!(ring(false, Way::Rightwards), ["147", "471", "714"]);
    assert_eq!(ring(false, Way::Unstated).len(), 6);
    let alike = Order::Ring { start: false, way: Way::Unstated };
    assert_eq!(answers(&marks(&["5", "5", "5"]), &alike, 3), ["555"], "all alike: nothing to choose");
}

#[test]
fn loose_pieces_turn_over() {
    assert_eq!(turned("16").as_deref(), Some("91"));
    assert_eq!(turned("108").as_deref(), Some("801"));
    assert_eq!(turned("4"), None);
    assert!(turns("6") && turns("18") && !turns("8") && !turns("101") && !turns("47"));
    let loose = |texts: &[&str]| -> Vec<Mark> { marks(texts).into_iter().map(|mark| mark.loose(true)).collect() };
    assert_eq!(answers(&loose(&["6", "2", "8"]), &Order::Listed, 3), ["628", "928"]);
    assert_eq!(answers(&loose(&["18"]), &Order::Listed, 2), ["18", "81"]);
    assert_eq!(answers(&marks(&["6", "2", "8"]), &Order::Listed, 3), ["628"], "a line beneath settles it");
}

#[test]
fn why_names_the_choice() {
    let list = vec![Mark::new("the white band", "6").loose(true), Mark::new("the gold band", "2")];
    let readings = read(&list, &Order::Listed, &LockKind::Digits(2), &mut Budget::default());
    assert_eq!(readings.list[0].why, "the white band, then the gold band");
    assert_eq!(readings.list[1].why, "the white band upside down (9), then the gold band");
}

#[test]
fn a_small_budget_is_said_to_be_spent() {
    let list = marks(&["1", "2", "3", "4", "5", "6"]);
    let readings = read(&list, &Order::open(), &LockKind::Digits(6), &mut Budget::new(5));
    assert!(readings.unproven);
    assert_eq!(readings.verdict("123456"), Verdict::Unproven);
}

#[test]
fn more_marks_than_a_page_holds_are_not_tried() {
    let list: Vec<Mark> = (0..=inklatch::limits::FIELD_MARKS).map(|index| Mark::new(index.to_string(), "1")).collect();
    assert!(read(&list, &Order::Listed, &LockKind::Spoken, &mut Budget::default()).unproven);
}

#[test]
fn more_readings_than_are_listed_are_said_to_be() {
    let list = marks(&["1", "2", "3", "4", "5"]);
    let readings = read(&list, &Order::open(), &LockKind::Digits(5), &mut Budget::default());
    assert!(readings.more && readings.list.len() == inklatch::limits::READINGS);
    assert_eq!(readings.verdict("12345"), Verdict::Several);
}

#[test]
fn letters_are_read_as_the_wheels_show_them() {
    let lock = LockKind::Letters(vec!["BT".into(), "EO".into()]);
    let readings = read(&marks(&["e", "t"]), &Order::open(), &lock, &mut Budget::default());
    assert_eq!(readings.list.iter().map(|reading| reading.answer.as_str()).collect::<Vec<_>>(), ["TE"]);
}

fn lab(value: &Value) -> Lab {
    Lab { l: value[0].as_f64().unwrap(), a: value[1].as_f64().unwrap(), b: value[2].as_f64().unwrap() }
}

/// Source: Sharma, Wu, Dalal 2005, table 1 (tests/refs/01_ciede2000_sharma2005.json); to 1e-4.
#[test]
fn colour_differences_are_those_of_the_published_table() {
    for case in cases(include_str!("refs/01_ciede2000_sharma2005.json")).1 {
        let (a, b) = (lab(&case["lab1"]), lab(&case["lab2"]));
        let published = case["de00_published"].as_f64().unwrap();
        assert!((difference(a, b) - published).abs() < 1e-4, "{}: {}", case["id"], difference(a, b));
        assert!((difference(b, a) - published).abs() < 1e-4, "{} the other way round", case["id"]);
    }
}

/// Source: W3C WCAG 2.2, relative luminance and contrast ratio (tests/refs/01_wcag_contrast.json; 1e-6, flags exact).
#[test]
fn contrast_is_what_wcag_says() {
    for case in cases(include_str!("refs/01_wcag_contrast.json")).1 {
        let colour = |key: &str| Colour::parse(case[key].as_str().unwrap()).unwrap();
        let (a, b) = (colour("a"), colour("b"));
        let ratio = case["ratio"].as_f64().unwrap();
        assert!((a.contrast(b) - ratio).abs() < 1e-6, "{}: {}", case["id"], a.contrast(b));
        assert_eq!(a.contrast(b), b.contrast(a));
        for (flag, least) in [("3", 3.0), ("4.5", 4.5), ("7", 7.0)] {
            let pass = case["passes"][flag].as_bool().unwrap();
            assert_eq!(a.contrast(b) >= least, pass, "{} at {least}", case["id"]);
        }
    }
}

/// Source: IEC 61966-2-1 by colour-science 0.4.7 (tests/refs/01_srgb_to_lab_d65.json, to 0.06, and
/// 01_hex_pairs_de00.json, to 0.1).
#[test]
fn screen_colours_come_to_cielab() {
    for case in cases(include_str!("refs/01_srgb_to_lab_d65.json")).1 {
        let (got, want) = (Colour::parse(case["hex"].as_str().unwrap()).unwrap().lab(), lab(&case["lab"]));
        for (got, want) in [(got.l, want.l), (got.a, want.a), (got.b, want.b)] {
            assert!((got - want).abs() < 0.06, "{}: {got} for {want}", case["id"]);
        }
    }
    for case in cases(include_str!("refs/01_hex_pairs_de00.json")).1 {
        let colour = |key: &str| Colour::parse(case[key].as_str().unwrap()).unwrap();
        let got = Eyes::Full.difference(colour("a"), colour("b"));
        assert!((got - case["de00"].as_f64().unwrap()).abs() < 0.1, "{}: {got}", case["id"]);
    }
}

/// Source: Machado, Oliveira, Fernandes 2009, severity 1.0, in linear light
/// (tests/refs/01_cvd_machado2009.json; one step of 255).
#[test]
fn other_eyes_see_what_the_model_says() {
    for case in cases(include_str!("refs/01_cvd_machado2009.json")).1 {
        let colour = Colour::parse(case["hex"].as_str().unwrap()).unwrap();
        for (eyes, key) in [(Eyes::Protan, "protan"), (Eyes::Deutan, "deutan"), (Eyes::Tritan, "tritan")] {
            let seen = eyes.see(colour);
            for (got, want) in [seen.r, seen.g, seen.b].iter().zip(case[key]["linear_light"].as_array().unwrap()) {
                let want = want.as_i64().unwrap();
                assert!((i64::from(*got) - want).abs() <= 1, "{} {key}: {seen} for {want}", case["id"]);
            }
        }
    }
}
