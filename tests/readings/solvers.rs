//! The solvers of grids, against counts that others found. Sources at the head of each file of `tests/refs`:
//! exhaustive search and general solvers (PySAT, OR-Tools CP-SAT); all counts are exact.

use inklatch::readings::Budget;
use inklatch::readings::cover::each_cover;
use inklatch::readings::matching::{Clue, Item, Matching};
use inklatch::readings::occurrences::{hits, placements};
use inklatch::readings::places::Places;
use inklatch::readings::runs::{Cell, Runs};
use inklatch::readings::spell::each_row;
use inklatch::readings::tokens::Spent;
use serde_json::Value;

fn cases(text: &str) -> Vec<Value> {
    let file: Value = serde_json::from_str(text).unwrap();
    file["cases"].as_array().unwrap().clone()
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

fn number(value: &Value) -> usize {
    usize::try_from(value.as_u64().unwrap()).unwrap()
}

/// The cover that Knuth gives as his first example (Dancing Links, 2000, matrix (3)): rows 1, 4 and 5.
#[test]
fn an_exact_cover_is_found_whole() {
    let options = [vec![2, 4, 5], vec![0, 3, 6], vec![1, 2, 5], vec![0, 3], vec![1, 6], vec![3, 4, 6]];
    let mut found = Vec::new();
    each_cover(7, &options, &mut Budget::default(), &mut |cover| {
        let mut cover = cover.to_vec();
        cover.sort_unstable();
        found.push(cover);
        true
    })
    .unwrap();
    assert_eq!(found, [vec![0, 3, 4]]);
    let odd = [vec![0, 0], vec![0, 9], vec![], vec![0]];
    let mut count = 0;
    let count_one = &mut |cover: &[usize]| {
        assert_eq!(cover, [3]);
        count += 1;
        true
    };
    each_cover(1, &odd, &mut Budget::default(), count_one).unwrap();
    assert_eq!(count, 1, "options that name an item twice or that is not there are never chosen");
    assert_eq!(each_cover(7, &options, &mut Budget::new(1), &mut |_| true), Err(Spent));
}

fn givens(lines: &[Value]) -> Vec<Option<usize>> {
    let cells = lines.iter().flat_map(|line| text(line).chars().collect::<Vec<_>>());
    cells.map(|c| c.to_digit(10).map(|digit| digit as usize - 1)).collect()
}

#[test]
fn number_place_grids_have_as_many_solutions_as_counted() {
    let mut seen = 0;
    for case in cases(include_str!("../refs/09_sudoku.json")) {
        let places = Places::new(number(&case["size"])).unwrap();
        assert_eq!((places.box_rows, places.box_cols), (number(&case["box_rows"]), number(&case["box_cols"])));
        let givens = givens(list(&case["givens"]));
        let mut all = Vec::new();
        places
            .each(&givens, &mut |_| {}, &mut Budget::default(), &mut |grid| {
                all.push(grid.to_vec());
                true
            })
            .unwrap();
        assert_eq!(all.len(), number(&case["expected"]["count"]), "{}", case["id"]);
        if let Some(lines) = case["expected"]["solution"].as_array() {
            let wanted: Vec<usize> = self::givens(lines).into_iter().flatten().collect();
            assert_eq!(all, [wanted], "{}", case["id"]);
        }
        // Two searches, of which neither knows the other.
        let mut found = places.solutions(&givens, usize::MAX, &mut Budget::default()).unwrap();
        found.sort_unstable();
        all.sort_unstable();
        assert_eq!(found, all, "{}", case["id"]);
        assert_eq!(places.count(&givens, 2, &mut Budget::default()).unwrap(), all.len().min(2));
        // Steps that are sound never fill a grid that has several solutions, or none.
        let steps = places.steps(&givens);
        assert!(steps.open > 0 || all.len() == 1, "{}: {steps:?}", case["id"]);
        seen += 1;
    }
    assert_eq!(seen, 5);
}

#[test]
fn single_deductions_fill_what_follows_and_no_more() {
    let places = Places::new(4).unwrap();
    // One row lacks one value; the rest is open.
    let mut grid = vec![None; 16];
    (0..3).for_each(|col| grid[col] = Some(col));
    let deduced = places.deduce(&grid);
    assert!(deduced.only_value >= 1 && deduced.open > 0, "{deduced:?}");
    assert_eq!(places.deduce(&vec![None; 16]).open, 16);
}

fn runs(lines: &Value) -> Vec<Vec<usize>> {
    list(lines).iter().map(|line| list(line).iter().map(number).collect()).collect()
}

#[test]
fn picture_grids_have_as_many_pictures_as_counted() {
    let mut seen = [0; 3];
    for case in cases(include_str!("../refs/09_nonograms.json")) {
        let grid = Runs { rows: runs(&case["rows"]), cols: runs(&case["cols"]) };
        let mut all = Vec::new();
        grid.each(&mut Budget::default(), &mut |picture| {
            assert_eq!(Runs::of(picture).rows, grid.rows);
            let line = |row: &Vec<bool>| row.iter().map(|ink| if *ink { '#' } else { '.' }).collect::<String>();
            all.push(picture.iter().map(line).collect::<Vec<_>>());
            true
        })
        .unwrap();
        let expected = &case["expected"];
        match expected["count"].as_u64() {
            Some(count) => assert_eq!(all.len() as u64, count, "{}", case["id"]),
            None => assert!(all.len() >= number(&expected["at_least"]), "{}", case["id"]),
        }
        if let Some(lines) = expected["solution"].as_array() {
            assert_eq!(all, [lines.iter().map(|line| text(line).to_owned()).collect::<Vec<_>>()]);
        }
        let by_lines = grid.by_lines();
        if all.len() == 1 && by_lines.as_ref().is_some_and(|rows| rows.iter().flatten().all(|c| *c != Cell::Open)) {
            seen[1] += 1;
        } else if all.is_empty() {
            seen[0] += 1;
        } else {
            assert!(by_lines.is_some_and(|rows| rows.iter().flatten().any(|c| *c == Cell::Open)), "{}", case["id"]);
            seen[2] += 1;
        }
    }
    assert_eq!(seen.iter().sum::<i32>(), 15);
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

#[test]
fn logic_grids_have_as_many_solutions_as_counted() {
    let mut seen = 0;
    for case in cases(include_str!("../refs/09_logic_grids.json")) {
        let categories = case["categories"].as_object().unwrap();
        let names: Vec<&String> = categories.keys().collect();
        let item = |value: &Value| {
            let kind = names.iter().position(|name| **name == text(&value[0])).unwrap();
            let at = list(&categories[names[kind]]).iter().position(|thing| *thing == value[1]).unwrap();
            Item { kind, at }
        };
        let by = |clue: &Value| names.iter().position(|name| **name == text(&clue["by"])).unwrap();
        let clues: Vec<Clue> = list(&case["clues"])
            .iter()
            .map(|clue| {
                let (a, b) = (item(&clue["a"]), item(&clue["b"]));
                match text(&clue["type"]) {
                    "same" => Clue::Same(a, b),
                    "not_same" => Clue::NotSame(a, b),
                    "before" => Clue::Before(a, b, by(clue)),
                    "next_to" => Clue::NextTo(a, b, by(clue)),
                    "offset" => Clue::Offset(a, b, by(clue), clue["d"].as_i64().unwrap()),
                    "either" => Clue::Either(a, b, item(&clue["c"])),
                    other => panic!("no clue {other}"),
                }
            })
            .collect();
        let size = Matching { kinds: names.len(), items: list(&categories[names[0]]).len() };
        let mut all = Vec::new();
        size.each(&clues, &mut Budget::default(), &mut |rows| {
            all.push(rows.to_vec());
            true
        })
        .unwrap();
        assert_eq!(all.len(), number(&case["expected"]["count"]), "{}", case["id"]);
        match size.steps(&clues) {
            Some(steps) => assert!(steps.open > 0 || all.len() == 1, "{}: {steps:?}", case["id"]),
            None => assert!(all.is_empty(), "{}: a contradiction was seen where there is none", case["id"]),
        }
        if let Some(solution) = case["expected"]["solution"].as_object() {
            for row in 0..size.items {
                let together: Vec<Item> =
                    solution.iter().map(|(name, things)| item(&serde_json::json!([name, things[row]]))).collect();
                let rows: Vec<usize> = together.iter().map(|thing| all[0][thing.kind][thing.at]).collect();
                assert!(rows.iter().all(|row| *row == rows[0]), "{}: {together:?}", case["id"]);
            }
        }
        if case["expected"]["no_clue_redundant"] == true {
            for left_out in 0..clues.len() {
                let mut fewer = clues.clone();
                fewer.remove(left_out);
                assert_eq!(size.count(&fewer, 2, &mut Budget::default()).unwrap(), 2, "{}", case["id"]);
            }
        }
        seen += 1;
    }
    assert_eq!(seen, 10);
}

#[test]
fn words_stand_where_they_were_counted() {
    let mut seen = 0;
    for case in cases(include_str!("../refs/09_word_search.json")) {
        let grid: Vec<Vec<char>> = list(&case["grid"]).iter().map(|line| text(line).chars().collect()).collect();
        for (word, expected) in case["expected"].as_object().unwrap() {
            let letters: Vec<char> = word.chars().collect();
            assert_eq!(placements(&grid, &letters).len(), number(&expected["placements"]), "{} {word}", case["id"]);
            let found = hits(&grid, &letters);
            assert_eq!(found.len(), number(&expected["directed_hits"]), "{} {word}", case["id"]);
            for at in list(&expected["at"]) {
                let names = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];
                let direction = names.iter().position(|name| *name == text(&at[2])).unwrap();
                let start = (number(&at[0]), number(&at[1]));
                assert!(found.iter().any(|hit| hit.start == start && hit.direction == direction), "{word} at {at}");
            }
            seen += 1;
        }
    }
    assert!(seen > 30, "only {seen} words");
}

#[test]
fn rows_are_asked_for_by_their_beginnings() {
    let mut asked = 0;
    let mut found = Vec::new();
    let possible = &mut |row: &[usize]| {
        asked += 1;
        Ok(row.iter().sum::<usize>() <= 2)
    };
    each_row(3, 3, possible, &mut |row| {
        found.push(row.to_vec());
        true
    })
    .unwrap();
    assert_eq!(found.len(), 10, "rows of three numbers with a sum of at most two");
    assert_eq!(asked, 3 + 3 * 3 + 6 * 3);
}
