//! The public code tables against `tests/refs/03_*.json`; source and tolerance stand at the head of each.

use inklatch::mechanics::codes::{braille, morse, semaphore};
use serde_json::Value;

fn rows<'a>(reference: &'a Value, list: &str) -> &'a Vec<Value> {
    reference[list].as_array().unwrap()
}

fn text<'a>(row: &'a Value, field: &str) -> &'a str {
    row[field].as_str().unwrap()
}

#[test]
fn morse_signs_and_lengths_are_those_of_the_recommendation() {
    let reference: Value = serde_json::from_str(include_str!("../refs/03_morse.json")).unwrap();
    let mut seen = 0;
    for row in rows(&reference, "table") {
        if text(row, "kind") != "punctuation" {
            assert_eq!(morse::code(text(row, "symbol").chars().next().unwrap()), Some(text(row, "code")));
            seen += 1;
        }
    }
    assert!(seen >= 18);
    for row in rows(&reference, "vectors") {
        let runs = morse::runs(text(row, "text")).unwrap();
        assert_eq!(u64::from(morse::length(&runs)), row["units"].as_u64().unwrap(), "{row}");
        let written: String = runs
            .iter()
            .map(|run| match (run.ink, run.units) {
                (true, 1) => ".",
                (true, _) => "-",
                (false, 1) => "",
                (false, 3) => " ",
                (false, _) => " / ",
            })
            .collect();
        assert_eq!(written, text(row, "morse"));
    }
}

#[test]
fn braille_cells_are_those_of_the_rulebook() {
    let reference: Value = serde_json::from_str(include_str!("../refs/03_braille_ueb.json")).unwrap();
    for row in rows(&reference, "table") {
        let symbol = text(row, "symbol");
        if matches!(text(row, "kind"), "letter" | "digit after numeric indicator") {
            assert_eq!(braille::dots(symbol.chars().next().unwrap()), Some(text(row, "dots")), "{row}");
        }
    }
    let sign = |dots: &str| {
        let bits: u32 = dots.chars().map(|dot| 1 << (dot.to_digit(10).unwrap() - 1)).sum();
        char::from_u32(0x2800 + bits).unwrap()
    };
    for row in rows(&reference, "vectors") {
        let cells: String = braille::cells(text(row, "text")).unwrap().into_iter().map(sign).collect();
        assert_eq!(cells, text(row, "braille"), "{row}");
    }
    assert_eq!(braille::turned("1235"), "2456");
    assert_eq!(braille::turned("14"), "36");
}

#[test]
fn semaphore_arms_are_those_of_the_table() {
    let reference: Value = serde_json::from_str(include_str!("../refs/03_semaphore.json")).unwrap();
    let mut seen = 0;
    for row in rows(&reference, "table") {
        let letter = text(row, "letter");
        if letter.len() != 1 {
            continue;
        }
        let arms = format!("{}-{}", row["angles"][0], row["angles"][1]);
        assert_eq!(semaphore::arms(letter.chars().next().unwrap()), Some(arms.as_str()), "{row}");
        if let Some(numeral) = row["numeral"].as_str() {
            assert_eq!(semaphore::arms(numeral.chars().next().unwrap()), Some(arms.as_str()), "{row}");
        }
        seen += 1;
    }
    assert!(seen >= 12);
    let all: std::collections::BTreeSet<&str> = semaphore::TABLE.iter().map(|(_, arms)| *arms).collect();
    assert_eq!(all.len(), 26);
    assert!(!all.contains(semaphore::NUMERALS));
    assert_eq!(semaphore::mirrored("45-90"), "270-315");
    assert_eq!(semaphore::mirrored("0-180"), "0-180");
}
