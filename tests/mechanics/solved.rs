//! The solved state that the host sees: drawn within its room, and true.

use std::collections::BTreeMap;

use inklatch::kit::LockKind;
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::{carried, locks};
use inklatch::mechanics::solved::{HIGHEST, Mark, Panel, Solved, WIDEST};
use inklatch::units::Rect;
use serde_json::Value;

use crate::common::{Stage, plain_theme, rng};

/// What is in bold, in the order in which it is read.
fn bold(panels: &[Panel]) -> String {
    let words = panels.iter().flat_map(|panel| &panel.marks).filter_map(|mark| match mark {
        Mark::Words { text, bold: true, .. } => Some(text.as_str()),
        _ => None,
    });
    words.collect()
}

fn sorted(text: &str) -> String {
    let mut chars: Vec<char> = text.chars().collect();
    chars.sort_unstable();
    chars.into_iter().collect()
}

/// What a host reads off a solved number grid: the symbol after each letter, by the letters.
fn lettered(panels: &[Panel]) -> String {
    let words: Vec<(&str, bool)> = panels[0]
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Words { text, bold, .. } => Some((text.as_str(), *bold)),
            _ => None,
        })
        .collect();
    let letter = |text: &str| text.chars().all(|c| c.is_ascii_lowercase());
    let pairs = words.windows(2).filter(|pair| letter(pair[0].0) && pair[1].1);
    pairs.map(|pair| (pair[0].0, pair[1].0)).collect::<BTreeMap<_, _>>().into_values().collect()
}

/// The lengths of the filled runs of each row of a picture, as its view has them.
fn runs(panel: &Panel, rows: usize) -> Vec<Vec<usize>> {
    let areas: Vec<&Rect> = panel
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Area { rect, edge: None, .. } => Some(rect),
            _ => None,
        })
        .collect();
    let side = panel.size.h.get() / rows as f64;
    let cols = (panel.size.w.get() / side).round() as usize;
    let inked = |row: usize, col: usize| {
        areas.iter().any(|area| {
            (area.x.get() / side - col as f64).abs() < 0.1 && (area.y.get() / side - row as f64).abs() < 0.1
        })
    };
    let line = |row: usize| {
        let cells: Vec<bool> = (0..cols).map(|col| inked(row, col)).collect();
        cells.split(|ink| !ink).map(<[bool]>::len).filter(|length| *length > 0).collect()
    };
    (0..rows).map(line).collect()
}

/// Holds what is drawn against the answer and the view.
fn held(id: &str, solved: &Solved, answer: &str, view: &Value) {
    match (id, solved) {
        ("number-place", Solved::Drawn { panels, .. }) => assert_eq!(lettered(panels), answer, "{id}"),
        ("picture-grid", Solved::Drawn { panels, .. }) => {
            for (panel, grid) in panels.iter().zip(view["panels"].as_array().unwrap()) {
                let rows: Vec<Vec<usize>> = serde_json::from_value(grid["rows"].clone()).unwrap();
                assert_eq!(runs(panel, rows.len()), rows, "{id}");
            }
            assert_eq!(panels.len(), answer.len(), "{id}");
        }
        ("leftover-letters", Solved::Drawn { panels, .. }) => {
            let words = ["ZERO", "ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT", "NINE"];
            let spelled = answer.chars().map(|c| c.to_digit(10).map_or(c.to_string(), |at| words[at as usize].into()));
            assert_eq!(bold(panels), spelled.collect::<String>(), "{id}");
        }
        ("domino-chain", Solved::Drawn { panels, .. }) => {
            // Each join stands twice, on both pieces.
            let twice: String = answer.chars().flat_map(|pips| [pips, pips]).collect();
            assert_eq!(bold(panels), twice, "{id}");
        }
        ("mask-card", Solved::Drawn { panels, .. }) => assert_eq!(bold(panels), answer, "{id}"),
        // What is noted, in the order of the sheet and not of the way.
        ("fork-maze" | "route-map", Solved::Drawn { panels, .. }) => assert_eq!(sorted(&bold(panels)), sorted(answer)),
        ("dot-to-dot", Solved::Drawn { panels, .. }) => {
            for (panel, dots) in panels.iter().zip(view["panels"].as_array().unwrap()) {
                let numbered = dots.as_array().unwrap().iter().filter(|dot| dot["number"].is_number()).count();
                let drawn = panel.marks.iter().find_map(|mark| match mark {
                    Mark::Line { points, .. } => Some(points.len()),
                    _ => None,
                });
                assert_eq!(drawn, Some(numbered), "{id}");
            }
        }
        ("price-list", Solved::Table { says, .. }) => {
            let things = view["things"].as_array().unwrap();
            for (asked, price) in view["asked"].as_array().unwrap().iter().zip(answer.chars()) {
                let thing = things[usize::try_from(asked.as_u64().unwrap()).unwrap()].as_str().unwrap();
                assert!(says.contains(&format!("{thing} {price}")), "{thing} {price}: {says}");
            }
        }
        ("logic-grid", Solved::Table { rows, .. }) => {
            let at = |value: &Value| usize::try_from(value.as_u64().unwrap()).unwrap();
            for (asked, tag) in view["asked"].as_array().unwrap().iter().zip(answer.chars()) {
                let (kind, thing) = (at(&asked[0]), at(&asked[1]));
                let name = view["kinds"][kind]["things"][thing].as_str().unwrap();
                let row = rows.iter().find(|row| row[kind] == name).unwrap();
                assert_eq!(row.last().map(String::as_str), Some(tag.to_string().as_str()), "{name}");
            }
        }
        ("truth-tellers", Solved::Table { rows, .. }) => {
            let read: String = rows.iter().filter(|row| row[1] == "true").map(|row| row[2].as_str()).collect();
            assert_eq!(read, answer, "{id}");
        }
        _ => panic!("{id} draws a solved state that nothing holds"),
    }
}

fn within(id: &str, panel: &Panel) {
    let Panel { size, marks, .. } = panel;
    assert!(size.w <= WIDEST && size.h <= HIGHEST, "{id}: {size:?}");
    let inside =
        |x: f64, y: f64| (-0.01..=size.w.get() + 0.01).contains(&x) && (-0.01..=size.h.get() + 0.01).contains(&y);
    for mark in marks {
        let corners: Vec<(f64, f64)> = match mark {
            Mark::Line { points, .. } => points.iter().map(|(x, y)| (x.get(), y.get())).collect(),
            Mark::Area { rect, .. } | Mark::Words { rect, .. } => {
                vec![(rect.x.get(), rect.y.get()), (rect.right().get(), rect.bottom().get())]
            }
            Mark::Circle { at: (x, y), r, .. } => {
                vec![((*x - *r).get(), (*y - *r).get()), ((*x + *r).get(), (*y + *r).get())]
            }
        };
        assert!(corners.iter().all(|(x, y)| inside(*x, *y)), "{id}: {mark:?} in {size:?}");
        if let Mark::Words { rect, text, .. } = mark {
            // A letter of 12 pt is at most 3.6 mm wide in our code faces, and 3.2 mm high.
            let wide = 2.6 * text.chars().count() as f64;
            assert!(rect.w.get() >= wide && rect.h.get() >= 4.0, "{id}: {text} in {rect:?}");
        }
    }
}

#[test]
fn what_is_drawn_stays_in_its_room_and_is_true() {
    let theme = plain_theme();
    let mut having = Vec::new();
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let mut seen = 0;
        for lock in locks().iter().filter(|lock| matches!(lock, LockKind::Digits(_))) {
            for seed in 0..12 {
                let setup = mechanic.default_setup().unwrap();
                let Some((answer, view)) = carried(*mechanic, &setup, lock, &theme, &|_| false, &mut rng(seed)) else {
                    continue;
                };
                let Some(solved) = view.solved() else { continue };
                held(id, &solved, &answer, &view.json());
                match &solved {
                    Solved::Drawn { says, panels } => {
                        assert!(says.ends_with('.') && !panels.is_empty(), "{id}");
                        panels.iter().for_each(|panel| within(id, panel));
                    }
                    Solved::Table { says, head, rows } => {
                        assert!(!says.is_empty() && rows.iter().all(|row| row.len() == head.len()), "{id}");
                    }
                }
                seen += 1;
            }
        }
        if seen > 0 {
            having.push(id);
            assert!(seen >= 12, "{id}: only {seen} have their solved state");
        }
    }
    let all = [
        "number-place",
        "picture-grid",
        "logic-grid",
        "truth-tellers",
        "leftover-letters",
        "price-list",
        "domino-chain",
        "fork-maze",
        "dot-to-dot",
        "route-map",
        "mask-card",
    ];
    assert_eq!(having, all);
}

/// Every form that a setup can take, in every theme's own words.
#[test]
fn every_form_of_a_setup_is_drawn_within_its_room() {
    for stage in Stage::all() {
        for mechanic in MECHANICS {
            let samples = inklatch::mechanics::sample::samples(*mechanic, &stage.theme, &stage.palette).unwrap();
            for (_, sample) in samples {
                if let Some(Solved::Drawn { panels, .. }) = sample.view.solved() {
                    panels.iter().for_each(|panel| within(mechanic.meta().id, panel));
                }
            }
        }
    }
}

/// Where guests could end in two ways, the host is shown none of them as the only one.
#[test]
fn what_is_not_certain_is_not_drawn() {
    let view = |id: &str, json: Value| inklatch::mechanics::find(id).unwrap().view(&json).unwrap();
    let open = serde_json::json!({
        "symbols": ["1", "2", "3", "4"], "rows": vec![vec![Value::Null; 4]; 4], "marks": [[0, 1]], "large": false,
    });
    assert_eq!(view("number-place", open).solved(), None);
    let two = serde_json::json!({ "panels": [{ "rows": [[1], [1]], "cols": [[1], [1]] }] });
    assert_eq!(view("picture-grid", two).solved(), None);
    let one = serde_json::json!({ "panels": [{ "rows": [[2], [1]], "cols": [[2], [1]] }] });
    assert!(view("picture-grid", one).solved().is_some());
    let price = serde_json::json!({
        "things": ["an apple", "a nut"], "coin": "", "bills": [{ "pieces": [1, 1], "total": 7 }], "asked": [0, 1],
    });
    assert_eq!(view("price-list", price).solved(), None);
}
