use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

const COLS: usize = 5;

/// A maze of five by five cells. The way `path` is open, and so are `more`.
fn maze(path: &[usize], more: &[(usize, usize)], floor: &Value) -> Value {
    let mut passages: Vec<(usize, usize)> = path.windows(2).map(|p| (p[0].min(p[1]), p[0].max(p[1]))).collect();
    passages.extend(more);
    json!({
        "text": "", "cols": COLS, "rows": COLS, "passages": passages, "gates": [],
        "start": [path[0], "owl"], "goal": [path[path.len() - 1], "bell"], "floor": floor, "say_order": true,
    })
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("fork-maze").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// Down the left side, along the bottom, up the right side.
const PATH: [usize; 13] = [0, 5, 10, 15, 20, 21, 22, 23, 24, 19, 14, 9, 4];

fn signs() -> Value {
    json!({ "Symbols": [[10, "4"], [22, "7"], [14, "1"], [12, "9"]] })
}

#[test]
fn what_lies_on_the_way_is_read_and_what_lies_off_it_is_not() {
    let found = read(&maze(&PATH, &[(10, 11), (11, 12)], &signs()), &LockKind::Digits(3));
    assert_eq!(answers(&found), ["471"]);
    assert!(found.remarks.is_empty() && !found.unproven, "{found:?}");
    assert_eq!(found.list[0].why, "the way of 12 steps from the owl");
}

#[test]
fn a_second_way_is_a_second_reading() {
    // Through the middle, past the 9.
    let more = [(10, 11), (11, 12), (12, 13), (13, 14)];
    let found = read(&maze(&PATH, &more, &json!({ "Symbols": [[22, "7"], [12, "9"]] })), &LockKind::Digits(1));
    assert_eq!(answers(&found), ["7", "9"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("2 ways")), "{found:?}");
    // Two ways with one reading are one reading, and remarked.
    let found = read(&maze(&PATH, &more, &json!({ "Symbols": [[5, "7"]] })), &LockKind::Digits(1));
    assert_eq!(answers(&found), ["7"]);
    assert!(!found.remarks.is_empty());
}

#[test]
fn holes_in_the_outer_wall_lead_round_the_outside() {
    let mut view = maze(&PATH, &[], &json!({ "Symbols": [[10, "4"], [22, "7"], [9, "5"]] }));
    view["gates"] = json!([[10, "Left"], [9, "Right"]]);
    assert_eq!(answers(&read(&view, &LockKind::Digits(3))), ["475"]);
    let found = read(&view, &LockKind::Digits(2));
    assert_eq!(answers(&found), ["45"], "from the left side round to the right");
    assert!(found.remarks.iter().any(|remark| remark.contains("outer wall")), "{found:?}");
    // One hole leads nowhere.
    view["gates"] = json!([[10, "Left"]]);
    assert!(read(&view, &LockKind::Digits(2)).list.is_empty());
}

#[test]
fn without_a_stated_order_the_way_reads_backwards_too() {
    let mut view = maze(&PATH, &[], &signs());
    view["say_order"] = json!(false);
    assert_eq!(answers(&read(&view, &LockKind::Digits(3))), ["174", "471"]);
}

#[test]
fn waymarks_give_the_side_on_which_the_way_goes_on() {
    let floor = json!({ "Waymarks": ["gear", [10, 20, 23, 24, 12]] });
    let found = read(&maze(&PATH, &[(10, 11), (11, 12)], &floor), &LockKind::Directions(4));
    assert_eq!(answers(&found), ["DRRU"]);
    let mechanic = find("fork-maze").unwrap();
    for (answer, pushes) in [("ULRD", 4), ("lldru", 5), ("UUUU", 4), ("RDLURD", 6)] {
        let lock = LockKind::Directions(pushes);
        for seed in 0..20 {
            let view = lay_out(mechanic, "()", answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{answer}, {seed}: {found:?}");
            assert!(dressed("fork-maze", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
    let trouble = lay_out(mechanic, "()", "UP", &LockKind::Directions(3), 1).err().unwrap();
    assert!(trouble.hints.iter().any(|hint| hint.contains("3 letters")), "{trouble}");
}

#[test]
fn a_maze_without_a_way_or_out_of_bounds_has_no_reading() {
    let found = read(&maze(&[0, 1], &[], &signs()), &LockKind::Digits(3));
    assert!(found.list.is_empty());
    let mut view = maze(&PATH, &[], &signs());
    view["passages"] = json!([[0, 7]]);
    assert!(!read(&view, &LockKind::Digits(3)).remarks.is_empty(), "cells that do not touch");
    view["passages"] = json!([]);
    assert_eq!(read(&view, &LockKind::Digits(3)).remarks, ["no way leads from the start to the goal"]);
    view["cols"] = json!(4_000_000_000_u64);
    view["rows"] = json!(4_000_000_000_u64);
    let huge = find("fork-maze").unwrap().view(&view).unwrap();
    assert!(huge.readings(&LockKind::Digits(3), &mut Budget::default()).list.is_empty());
    assert!(dressed("fork-maze", &LockKind::Digits(3), |cx| huge.pieces(cx)).is_err());
    assert_eq!(huge.work().unwrap().count, 0);
}

#[test]
fn an_open_field_is_unproven_rather_than_tried_for_ever() {
    let mut more = Vec::new();
    for cell in 0..18 * 18 {
        if cell % 18 != 17 {
            more.push((cell, cell + 1));
        }
        if cell + 18 < 18 * 18 {
            more.push((cell, cell + 18));
        }
    }
    let mut view = maze(&[0, 1], &[], &json!({ "Symbols": [[1, "4"]] }));
    view["cols"] = json!(18);
    view["rows"] = json!(18);
    view["passages"] = json!(more);
    view["goal"] = json!([323, "bell"]);
    assert!(read(&view, &LockKind::Digits(3)).unproven);
}

#[test]
fn the_work_counts_wrong_turns_and_their_depth() {
    let view = maze(&PATH, &[(10, 11), (11, 12), (12, 7), (14, 13)], &signs());
    let work = find("fork-maze").unwrap().view(&view).unwrap().work().unwrap();
    assert_eq!(work.count, 4, "{}", work.says);
    assert_eq!(
        work.says,
        "The way is 12 steps long. 2 wrong turns on it lead into dead ends; the deepest goes 3 steps in."
    );
}

#[test]
fn what_cannot_be_printed_is_refused() {
    let mechanic = find("fork-maze").unwrap();
    let lock = LockKind::Digits(3);
    let refused = |setup: &str| {
        let trouble = lay_out(mechanic, setup, "471", &lock, 1).err().unwrap_or_else(|| panic!("{setup}"));
        assert!(!trouble.hints.is_empty(), "{trouble}");
        trouble
    };
    refused("(cols: 4)");
    refused("(rows: 40)");
    refused("(decoys: 99)");
    assert!(refused("(start: \"owll\")").hints[0].contains("`owl`"));
    refused("(start: \"owl\", goal: \"owl\")");
    let pushes = LockKind::Directions(12);
    let trouble = lay_out(mechanic, "(cols: 5, rows: 5)", "UUUUUUUUUUUU", &pushes, 1).err().unwrap();
    assert!(trouble.hints[0].contains("larger"), "{trouble}");
    // A word on letter wheels, and a maze without decoys.
    let lock = LockKind::Letters(vec!["BC".into(), "AE".into(), "LT".into()]);
    let view = lay_out(mechanic, "(decoys: 0, cols: 6, rows: 6)", "cat", &lock, 3).unwrap();
    assert_eq!(answers(&view.readings(&lock, &mut Budget::default())), ["CAT"]);
}
