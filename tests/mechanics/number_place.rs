use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn grid(lines: &[&str]) -> Value {
    let row = |line: &str| line.chars().map(|c| if c == '.' { Value::Null } else { json!(c) }).collect::<Vec<_>>();
    json!(lines.iter().map(|line| row(line)).collect::<Vec<_>>())
}

fn read(lines: &[&str], marks: &[(usize, usize)], wheels: u8) -> Readings {
    let symbols: Vec<String> = (1..=lines.len()).map(|n| n.to_string()).collect();
    let view = json!({ "symbols": symbols, "rows": grid(lines), "marks": marks, "large": false });
    find("number-place").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

const ONE: &[&str] = &["1.34", "3412", "21.3", "432."];

#[test]
fn marked_cells_read_in_the_order_of_their_letters() {
    let found = read(ONE, &[(3, 3), (0, 1), (2, 2)], 3);
    assert_eq!(answers(&found), ["124"]);
    assert_eq!(found.list[0].why, "a holds 1, b holds 2, c holds 4");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn a_second_solution_at_a_marked_cell_reads_as_well() {
    // The 1 and 2 of two rows and columns may be exchanged.
    let two = ["..34", "3412", "2143", "43.."];
    assert_eq!(answers(&read(&two, &[(0, 0), (3, 2), (0, 1)], 3)), ["122"]);
    let open = ["..34", "34..", "..43", "43.."];
    let found = read(&open, &[(0, 0), (0, 1), (1, 2)], 3);
    assert_eq!(found.verdict("121"), Verdict::Several);
    assert!(answers(&found).contains(&"121") && answers(&found).contains(&"212"), "{found:?}");
}

#[test]
fn a_second_solution_elsewhere_is_remarked() {
    let elsewhere = ["12..", "34..", "....", "...."];
    let found = read(&elsewhere, &[(0, 0), (0, 1), (1, 0)], 3);
    assert_eq!(answers(&found), ["123"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("more than one solution")), "{found:?}");
    assert!(found.remarks.iter().any(|remark| remark.contains("filled from the start")), "{found:?}");
}

#[test]
fn an_open_grid_of_nine_rows_is_settled_in_few_questions() {
    let empty = ["........."; 9];
    let found = read(&empty, &[(0, 0), (4, 4), (8, 8)], 3);
    assert!(found.more && !found.unproven);
}

#[test]
fn a_contradiction_or_a_broken_grid_has_no_reading() {
    assert!(read(&["11..", "....", "....", "...."], &[(3, 3), (3, 2), (3, 1)], 3).list.is_empty());
    let found = read(&["12", "21"], &[(0, 0)], 1);
    assert!(found.list.is_empty() && found.remarks[0].contains("not whole"));
    let far = read(ONE, &[(9, 9), (0, 0), (0, 1)], 3);
    assert!(far.list.is_empty() && !far.remarks.is_empty());
}

#[test]
fn a_spent_budget_is_unproven() {
    let symbols: Vec<String> = (1..=9).map(|n| n.to_string()).collect();
    let view = json!({ "symbols": symbols, "rows": grid(&["........."; 9]), "marks": [[0, 0], [1, 3]], "large": true });
    let view = find("number-place").unwrap().view(&view).unwrap();
    let found = view.readings(&LockKind::Digits(2), &mut Budget::new(100));
    assert_eq!(found.verdict("11"), Verdict::Unproven);
}

#[test]
fn every_size_and_reasoning_carries_its_answer() {
    let mechanic = find("number-place").unwrap();
    let letters = LockKind::Letters(vec!["FROST".into(), "ROE".into(), "OAX".into(), "STN".into()]);
    let cases = [
        ("(size: 4)", LockKind::Digits(3), "142"),
        ("(size: 4)", LockKind::Digits(4), "0770"),
        ("(size: 9)", LockKind::Digits(5), "19283"),
        ("(size: 9, reasoning: Any, givens: 26)", LockKind::Digits(4), "5555"),
        ("(size: 6, symbols: \"FROSTY\")", letters, "FROS"),
    ];
    for (setup, lock, answer) in cases {
        for seed in 0..4 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
            assert!(dressed("number-place", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn more_givens_are_kept_when_asked_for() {
    let mechanic = find("number-place").unwrap();
    let given = |setup: &str| {
        let view = lay_out(mechanic, setup, "123", &LockKind::Digits(3), 1).unwrap().json();
        view["rows"]
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|row| row.as_array().unwrap().clone())
            .filter(|c| !c.is_null())
            .count()
    };
    assert_eq!(given("(givens: 20)"), 20);
    assert!(given("()") < 20);
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("number-place").unwrap();
    for (setup, answer) in [
        ("(size: 5)", "123"),
        ("(size: 4)", "12345"),
        ("(size: 4, symbols: \"1233\")", "123"),
        ("(size: 4, symbols: \"1234\")", "125"),
    ] {
        let wheels = u8::try_from(answer.len()).unwrap();
        let trouble = lay_out(mechanic, setup, answer, &LockKind::Digits(wheels), 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}

#[test]
fn hints_name_a_cell_to_begin_with_and_give_all_but_the_marked_cells() {
    let mechanic = find("number-place").unwrap();
    let lock = LockKind::Digits(4);
    let (mut begun, mut told) = (0, 0);
    for seed in 0..6 {
        for setup in ["(size: 9)", "(size: 9, reasoning: Any)", "(symbols: \"123678\")"] {
            let view = lay_out(mechanic, setup, "2718", &lock, seed).unwrap();
            let hints = dressed("number-place", &lock, |cx| view.draft_hints(cx));
            assert!(!hints.giveaway.contains("2718") && !hints.giveaway.contains("2 7 1 8"), "{}", hints.giveaway);
            let json = view.json();
            let rows: Vec<Vec<Option<char>>> = serde_json::from_value(json["rows"].clone()).unwrap();
            let symbols: Vec<char> = serde_json::from_value(json["symbols"].clone()).unwrap();
            // Nobody can take the named cell for another: its row, column and box hold all symbols but one.
            if let Some((row, rest)) =
                hints.method.split_once("Begin in row ").and_then(|(_, rest)| rest.split_once(" from the top, column "))
            {
                let (row, col): (usize, usize) =
                    (row.parse().unwrap(), rest.split(' ').next().unwrap().parse().unwrap());
                let (row, col) = (row - 1, col - 1);
                let (high, wide) = if rows.len() == 9 { (3, 3) } else { (2, 3) };
                let seen = |symbol: &char| {
                    (0..rows.len()).any(|y| {
                        (0..rows.len()).any(|x| {
                            let same = y == row || x == col || (y / high == row / high && x / wide == col / wide);
                            same && rows[y][x] == Some(*symbol)
                        })
                    })
                };
                assert!(rows[row][col].is_none(), "{}", hints.method);
                assert_eq!(symbols.iter().filter(|symbol| !seen(symbol)).count(), 1, "{}", hints.method);
                begun += 1;
            }
            // Each told row agrees with what is given on it.
            for part in hints.giveaway.split("row ").skip(1) {
                let Some((number, cells)) = part.split_once(" is ") else { continue };
                let cells: Vec<&str> = cells.split(['.', ';']).next().unwrap().split(' ').collect();
                let given = &rows[number.parse::<usize>().unwrap() - 1];
                assert_eq!(cells.len(), given.len(), "{}", hints.giveaway);
                let agree =
                    |(cell, given): (&&str, &Option<char>)| given.is_none_or(|given| **cell == given.to_string());
                assert!(cells.iter().zip(given).all(agree), "{}", hints.giveaway);
                told += 1;
            }
        }
    }
    assert!(begun > 6 && told > 18, "{begun} {told}");
}
