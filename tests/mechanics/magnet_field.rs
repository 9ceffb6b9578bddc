//! `magnet-field`: what it carries, what it refuses, and the readings of each trap.

use inklatch::face::Audience;
use inklatch::kit::LockKind;
use inklatch::mechanics::{AnyView, find};
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn laid(setup: &str, answer: &str, seed: u64) -> inklatch::diag::Hinted<Box<dyn AnyView>> {
    let wheels = u8::try_from(answer.len()).unwrap();
    lay_out(find("magnet-field").unwrap(), setup, answer, &LockKind::Digits(wheels), seed)
}

fn shape(x: f64, y: f64, across: f64, kind: &str, number: &str, pulls: bool) -> Value {
    json!({ "x": x, "y": y, "across": across, "kind": kind, "number": number, "pulls": pulls })
}

fn read(shapes: &[Value], rule: &Value, wheels: u8) -> Readings {
    let view = json!({ "shapes": shapes, "rule": rule });
    let view = find("magnet-field").unwrap().view(&view).unwrap();
    view.readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn every_order_has_one_reading() {
    let setups = [
        ("()", "000"),
        ("(order: Rows)", "000"),
        ("(order: Sizes)", "000"),
        ("(order: Sizes)", "0000"),
        ("(digits: 2, shape_size: 16.0)", "0000"),
        ("(digits: 2, shape_size: 16.0, order: Rows)", "000"),
        ("(order: Rows)", "000000"),
        ("(shapes: 12)", "000"),
    ];
    for (setup, width) in setups {
        let width = width.len();
        for seed in 0..50_u64 {
            let answer = format!("{:0width$}", (seed * 39_791 + 11) % 10_u64.pow(u32::try_from(width).unwrap()));
            let view = laid(setup, &answer, seed).unwrap_or_else(|trouble| panic!("{setup} seed {seed}: {trouble}"));
            let readings = view.readings(&LockKind::Digits(u8::try_from(width).unwrap()), &mut Budget::default());
            assert_eq!(readings.verdict(&answer), Verdict::One, "{setup} seed {seed}: {readings:?}");
            assert!(readings.remarks.is_empty(), "{setup} seed {seed}: {:?}", readings.remarks);
        }
    }
}

#[test]
fn numbers_of_unlike_length_with_no_order_have_several_readings() {
    let shapes = [shape(-50.0, 0.0, 16.0, "circle", "4", true), shape(50.0, 0.0, 16.0, "star", "17", true)];
    let open = read(&shapes, &Value::Null, 3);
    assert_eq!(answers(&open), ["174", "417"]);
    assert!(open.remarks.iter().any(|remark| remark.contains("no card states the order")));
    assert_eq!(answers(&read(&shapes, &json!({ "Kinds": ["star", "circle"] }), 3)), ["174"]);
}

#[test]
fn ties_under_the_rule_have_several_readings() {
    let level = [shape(-50.0, 0.0, 14.0, "circle", "4", true), shape(50.0, 2.0, 14.0, "circle", "7", true)];
    assert_eq!(answers(&read(&level, &json!("Rows"), 2)), ["47", "74"]);
    let lower = [shape(-50.0, 0.0, 14.0, "circle", "4", true), shape(50.0, 9.0, 14.0, "circle", "7", true)];
    assert_eq!(answers(&read(&lower, &json!("Rows"), 2)), ["47"]);
    assert_eq!(answers(&read(&lower, &json!({ "Kinds": ["circle", "star"] }), 2)), ["47", "74"]);
    // An outline that the card does not list could stand anywhere.
    assert_eq!(answers(&read(&lower, &json!({ "Kinds": ["star"] }), 2)), ["47", "74"]);
    let sizes = |larger| [shape(-50.0, 0.0, 14.0, "circle", "4", true), shape(50.0, 9.0, larger, "circle", "7", true)];
    assert_eq!(answers(&read(&sizes(15.0), &json!("Sizes"), 2)), ["47", "74"]);
    assert_eq!(answers(&read(&sizes(18.2), &json!("Sizes"), 2)), ["47"]);
}

#[test]
fn a_neighbour_within_reach_may_be_read_instead() {
    let shapes = |near| {
        [
            shape(-50.0, 0.0, 14.0, "circle", "4", true),
            shape(-50.0 + near, 0.0, 14.0, "circle", "9", false),
            shape(50.0, 40.0, 14.0, "circle", "7", true),
        ]
    };
    assert_eq!(answers(&read(&shapes(16.5), &json!("Rows"), 2)), ["47", "97"]);
    assert_eq!(answers(&read(&shapes(17.5), &json!("Rows"), 2)), ["47"]);
}

#[test]
fn washers_near_one_another_and_small_shapes_are_remarked() {
    let shapes = [shape(0.0, 0.0, 10.0, "circle", "4", true), shape(20.0, 20.0, 14.0, "circle", "7", true)];
    let readings = read(&shapes, &json!("Rows"), 2);
    assert_eq!(answers(&readings), ["47"]);
    assert!(readings.remarks.iter().any(|remark| remark.contains("28 mm apart")), "{:?}", readings.remarks);
    assert!(readings.remarks.iter().any(|remark| remark.contains("too small")), "{:?}", readings.remarks);
}

#[test]
fn a_long_number_that_stands_twice_is_remarked_and_a_digit_is_not() {
    let shapes = |number: &str| {
        [
            shape(-50.0, 0.0, 16.0, "circle", number, true),
            shape(0.0, 60.0, 16.0, "circle", number, false),
            shape(50.0, 40.0, 16.0, "circle", "70", true),
        ]
    };
    assert!(read(&shapes("4"), &json!("Rows"), 3).remarks.is_empty());
    let twice = read(&shapes("41"), &json!("Rows"), 4);
    assert_eq!(answers(&twice), ["4170"]);
    assert!(
        twice.remarks.iter().any(|remark| remark.contains("41 hides a washer and stands on another shape")),
        "{:?}",
        twice.remarks
    );
}

#[test]
fn no_washer_no_reading() {
    assert!(read(&[shape(0.0, 0.0, 14.0, "circle", "4", false)], &json!("Rows"), 1).list.is_empty());
}

#[test]
fn what_it_cannot_carry_is_refused_with_a_hint() {
    let refused = |setup: &str, answer: &str| laid(setup, answer, 1).unwrap_err().to_string();
    assert!(refused("(digits: 3, shape_size: 20.0)", "407").contains("whole answer"));
    assert!(refused("(shape_size: 8.0)", "407").contains("12 or more"));
    assert!(refused("(digits: 2)", "4071").contains("16 or more"));
    assert!(refused("(shapes: 5)", "407").contains("about 60"));
    assert!(refused("(shapes: 160, shape_size: 20.0)", "407").contains("too full"));
    assert!(refused("(order: Sizes)", "40712").contains("room for 4 washers"));
    assert!(refused("(digits: 0)", "407").contains("1, 2 or 3"));
    assert!(refused("(digits: 9)", "407").contains("1, 2 or 3"));
}

#[test]
fn the_board_holds_every_number_and_the_template_only_the_washers() {
    for setup in ["()", "(order: Rows)", "(order: Sizes)"] {
        let lock = LockKind::Digits(3);
        dressed("magnet-field", &lock, |cx| {
            let pieces = laid(setup, "407", 5).unwrap().pieces(cx).unwrap();
            let [board, card, template] = pieces.as_slice() else { panic!("three pieces") };
            assert_eq!(board.front.runs().count(), 61);
            assert!(board.measured && template.measured);
            for run in board.front.runs() {
                assert!(inklatch::units::Rect::of(board.front.size).holds(run.rect));
                assert!(run.least.get() >= 9.0);
            }
            assert_eq!(template.audience, Audience::Host);
            // Three numbers in rings, and the words above and below, which no ring reaches.
            assert_eq!(template.front.runs().count(), 5);
            let runs: Vec<_> = template.front.runs().map(|run| run.rect).collect();
            assert!(runs.iter().enumerate().all(|(at, rect)| runs[..at].iter().all(|other| !other.meets(*rect))));
            let words: String = card.front.runs().map(|run| run.text.text()).collect::<Vec<_>>().join(" ");
            assert!(words.contains("numbers"), "{words}");
            // Mirrored: a number on the template stands where the board's stands, seen from behind.
            let width = board.front.size.w.get();
            for run in template.front.runs().filter(|run| run.text.text().len() == 1) {
                let x = width - (run.rect.x + run.rect.w / 2.0).get();
                let hit = board.front.runs().any(|other| {
                    other.text.text() == run.text.text() && ((other.rect.x + other.rect.w / 2.0).get() - x).abs() < 0.01
                });
                assert!(hit, "{:?}", run.text.text());
            }
        });
    }
}

#[test]
fn the_last_hint_names_what_pulls_by_shape_and_number_and_leaves_the_order_open() {
    for setup in ["()", "(order: Rows)", "(order: Sizes)"] {
        for seed in 0..20 {
            let hint = dressed("magnet-field", &LockKind::Digits(3), |cx| {
                laid(setup, "407", seed).unwrap().draft_hints(cx).giveaway
            });
            let mut said: Vec<char> = hint.chars().filter(char::is_ascii_digit).collect();
            assert_ne!(said, ['4', '0', '7'], "{hint}");
            said.sort_unstable();
            assert_eq!(said, ['0', '4', '7'], "{hint}");
        }
    }
}
