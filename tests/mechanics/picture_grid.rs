use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::runs::{Cell, Runs};
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::lay_out;

fn picture(lines: &[&str]) -> Value {
    let picture: Vec<Vec<bool>> = lines.iter().map(|line| line.chars().map(|c| c == '#').collect()).collect();
    let Runs { rows, cols } = Runs::of(&picture);
    json!({ "rows": rows, "cols": cols })
}

fn read(panels: &[Value], wheels: u8) -> Readings {
    let view = json!({ "panels": panels });
    find("picture-grid").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

const SEVEN: &[&str] = &["#####", "#...#", "....#", "....#", "....#", "....#", "....#"];
const FOUR: &[&str] = &["#..#.", "#..#.", "#..#.", "#####", "...#.", "...#.", "...#."];

#[test]
fn panels_read_in_the_order_of_their_numbers() {
    let found = read(&[picture(SEVEN), picture(FOUR), picture(SEVEN)], 3);
    assert_eq!(answers(&found), ["747"]);
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn every_digit_of_every_shape_is_found_line_by_line_and_alone() {
    let mechanic = find("picture-grid").unwrap();
    for shape in ["Thin", "Thick"] {
        for margin in 0..=4 {
            for digit in '0'..='9' {
                let answer = digit.to_string();
                let setup = format!("(shape: {shape}, margin: {margin})");
                let lock = LockKind::Digits(1);
                for seed in 0..4 {
                    let view = lay_out(mechanic, &setup, &answer, &lock, seed).unwrap();
                    let found = view.readings(&lock, &mut Budget::default());
                    assert_eq!(found.verdict(&answer), Verdict::One, "{setup} {digit}: {found:?}");
                    assert!(found.remarks.is_empty(), "{setup} {digit}: {found:?}");
                    let json = view.json();
                    let runs = |key: &str| serde_json::from_value(json["panels"][0][key].clone()).unwrap();
                    let runs = Runs { rows: runs("rows"), cols: runs("cols") };
                    assert!(runs.by_lines().unwrap().iter().flatten().all(|cell| *cell != Cell::Open));
                }
            }
        }
    }
}

#[test]
fn every_letter_of_every_shape_is_found_line_by_line_and_alone() {
    let mechanic = find("picture-grid").unwrap();
    for shape in ["Thin", "Thick"] {
        for (margin, letter) in (0..=4).flat_map(|margin| ('A'..='Z').map(move |letter| (margin, letter))) {
            let answer = letter.to_string();
            let setup = format!("(shape: {shape}, margin: {margin})");
            let lock = LockKind::Letters(vec![('A'..='Z').collect()]);
            for seed in 0..4 {
                let view = lay_out(mechanic, &setup, &answer, &lock, seed).unwrap();
                let found = view.readings(&lock, &mut Budget::default());
                assert_eq!(found.verdict(&answer), Verdict::One, "{setup} {letter}: {found:?}");
                assert!(found.remarks.is_empty(), "{setup} {letter}: {found:?}");
            }
        }
    }
}

#[test]
fn every_arrow_of_every_shape_is_found_line_by_line_and_alone() {
    let mechanic = find("picture-grid").unwrap();
    let lock = LockKind::Directions(1);
    for setup in ["shape: Thin", "shape: Thick"] {
        for (margin, way) in (0..=4).flat_map(|margin| "UDLR".chars().map(move |way| (margin, way))) {
            let (setup, answer) = (format!("({setup}, margin: {margin})"), way.to_string());
            for seed in 0..4 {
                let view = lay_out(mechanic, &setup, &answer, &lock, seed).unwrap();
                assert_eq!(view.json()["shows"], "Arrows");
                let found = view.readings(&lock, &mut Budget::default());
                assert_eq!(found.verdict(&answer), Verdict::One, "{setup} {way}: {found:?}");
                assert!(found.remarks.is_empty(), "{setup} {way}: {found:?}");
            }
        }
    }
    // On a lock with letters the same answer is letters.
    let wheels = LockKind::Letters(vec!["UDLR".into(); 2]);
    assert_eq!(lay_out(mechanic, "()", "UL", &wheels, 1).unwrap().json()["shows"], "Letters");
}

#[test]
fn a_sheet_of_letters_is_not_read_as_digits() {
    // The digit 0 is as good as an O, were it not for what the sheet says.
    let view = lay_out(find("picture-grid").unwrap(), "()", "LOSS", &LockKind::Spoken, 1).unwrap();
    let found = view.readings(&LockKind::Spoken, &mut Budget::default());
    assert_eq!(found.verdict("LOSS"), Verdict::One, "{found:?}");
}

#[test]
fn cells_given_on_the_sheet_count_and_may_contradict_it() {
    let with = |given: Value| {
        let mut panel = picture(FOUR);
        panel["given"] = given;
        read(&[panel], 1)
    };
    assert_eq!(answers(&with(json!([[0, 0], [3, 2]]))), ["4"]);
    let found = with(json!([[0, 1]]));
    assert!(found.list.is_empty() && found.remarks[0].contains("in no way"), "{found:?}");
    assert_eq!(answers(&with(json!([[99, 99]]))), ["4"]);
}

#[test]
fn a_second_picture_is_told() {
    // Two cells that may be exchanged with two others: no digit either way.
    let switch = json!({ "rows": [[1], [1]], "cols": [[1], [1]] });
    let found = read(&[switch, picture(FOUR)], 2);
    assert!(found.list.is_empty());
    assert!(found.remarks.iter().any(|remark| remark.contains("more than one way")), "{found:?}");
    assert!(found.remarks.iter().any(|remark| remark.contains("shows no digit")), "{found:?}");
}

#[test]
fn a_picture_between_two_digits_reads_as_both() {
    // One cell short of an 8, one of a 9.
    let blot = ["#####", "#...#", "#...#", "#####", "....#", "#...#", "#####"];
    let eight = ["#####", "#...#", "#...#", "#####", "#...#", "#...#", "#####"];
    assert_eq!(answers(&read(&[picture(&eight)], 1)), ["8"]);
    let found = read(&[picture(&blot)], 1);
    assert_eq!(answers(&found), ["8", "9"]);
}

#[test]
fn numbers_that_contradict_each_other_and_panels_beyond_all_measure() {
    let found = read(&[json!({ "rows": [[2], [2]], "cols": [[1], []] })], 1);
    assert!(found.list.is_empty() && found.remarks[0].contains("in no way"), "{found:?}");
    let wide = json!({ "rows": [[1]], "cols": vec![vec![1]; 500] });
    assert!(read(&[wide], 1).list.is_empty());
    let found = read(&[json!({ "rows": [[usize::MAX, 2]], "cols": [[1], [1]] })], 1);
    assert!(found.list.is_empty());
    // Nothing but the number of inked cells in each line: far more pictures than anybody counts.
    let loose = json!({ "rows": vec![vec![1]; 12], "cols": vec![vec![1]; 12] });
    assert_eq!(read(&[loose], 1).verdict("1"), Verdict::Unproven);
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("picture-grid").unwrap();
    let refuse = |setup: &str, answer: &str, lock: &LockKind| lay_out(mechanic, setup, answer, lock, 1).err().unwrap();
    let mixed = LockKind::Letters(vec!["AB".into(), "12".into()]);
    assert!(!refuse("()", "A2", &mixed).hints.is_empty());
    assert!(!refuse("(margin: 9)", "123", &LockKind::Digits(3)).hints.is_empty());
    assert!(!refuse("()", "1234567", &LockKind::Digits(7)).hints.is_empty());
}
