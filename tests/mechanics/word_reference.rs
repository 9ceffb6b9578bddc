use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use inklatch::sheet::Paper;
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, lines_on, printed, reread};

const ONE: LockKind = LockKind::Digits(1);

fn read(text: &Value, leads: &[[u8; 3]], change: impl FnOnce(&mut Value), lock: &LockKind) -> Readings {
    let mut view = json!({ "text": text, "leads": leads, "columns": true, "counting": true, "take": "words" });
    change(&mut view);
    find("word-reference").unwrap().view(&view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

fn text() -> Value {
    json!([["one two three four", "five-six seven – eight"], ["nine zero one two", "three four five six"]])
}

#[test]
fn rows_lead_to_words() {
    let two = LockKind::Digits(2);
    assert_eq!(answers(&read(&text(), &[[1, 2, 2], [2, 1, 1]], |_| {}, &two)), ["79"]);
    let initials = |view: &mut Value| view["take"] = json!("initials");
    assert_eq!(answers(&read(&text(), &[[1, 1, 1], [2, 1, 1]], initials, &LockKind::Spoken)), ["ON"]);
    let lengths = |view: &mut Value| view["take"] = json!("lengths");
    assert_eq!(answers(&read(&text(), &[[1, 1, 3], [2, 1, 1]], lengths, &two)), ["54"]);
}

#[test]
fn hyphens_signs_and_titles_count_otherwise_where_nothing_says_so() {
    let open = |view: &mut Value| view["counting"] = json!(false);
    // Third in its line: eight as stated; seven with the hyphen counted as a gap, and nothing with the dash as a word.
    assert_eq!(answers(&read(&text(), &[[1, 2, 3]], |_| {}, &ONE)), ["8"]);
    assert_eq!(answers(&read(&text(), &[[1, 2, 3]], open, &ONE)), ["3", "7", "8"]);
    // The title as a paragraph or as a line shifts what is meant.
    let found = read(&text(), &[[2, 1, 2]], open, &ONE);
    assert_eq!(answers(&found), ["0", "2"]);
    assert!(found.list[1].why.contains("title as the first paragraph"), "{found:?}");
    assert!(found.remarks.iter().any(|remark| remark.contains("hyphens")), "{found:?}");
}

#[test]
fn columns_without_names_come_in_six_orders() {
    let open = |view: &mut Value| view["columns"] = json!(false);
    assert_eq!(read(&text(), &[[1, 2, 2]], |_| {}, &ONE).verdict("7"), Verdict::One);
    let found = read(&text(), &[[1, 2, 2]], open, &ONE);
    assert_eq!(answers(&found), ["0", "3", "7"]);
    assert!(found.list.iter().any(|reading| reading.why.contains("word, paragraph, line")), "{found:?}");
}

#[test]
fn what_to_take_must_be_said() {
    let open = |view: &mut Value| view["take"] = Value::Null;
    assert_eq!(answers(&read(&text(), &[[1, 1, 3]], open, &ONE)), ["3", "5"]);
}

#[test]
fn rows_that_lead_nowhere_are_remarked() {
    let found = read(&text(), &[[1, 1, 9]], |_| {}, &ONE);
    assert!(found.list.is_empty() && found.remarks[0].contains("word 9 leads nowhere"), "{found:?}");
    assert!(read(&text(), &[[0, 0, 0], [9, 9, 255]], |_| {}, &ONE).list.is_empty());
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str, lock: &LockKind| {
        lay_out(find("word-reference").unwrap(), setup, answer, lock, 1).err().unwrap().to_string()
    };
    assert!(refused("(text: \"nothing here\")", "7", &ONE).contains("no word \"seven\""));
    assert!(refused("(take: Some(lengths))", "0", &ONE).contains("1 to 9 letters"));
    assert!(refused("(measure: 9)", "7", &ONE).contains("`measure` is 9"));
    assert!(refused("(take: Some(initials))", "77777", &LockKind::Digits(5)).contains("a card takes 24"));
    let wheels = LockKind::Letters(vec!["OA".into(), "WB".into(), "LC".into()]);
    assert!(refused("(text: \"an owl\")", "OWL", &wheels).contains("stands openly"));
    assert!(refused("(take: Some(words))", "OWL", &wheels).contains("holds letters"));
}

#[test]
fn the_lines_are_the_same_on_both_papers() {
    let lock = LockKind::Digits(3);
    let long = "We were seven at supper and nobody had a half-baked idea where the other three had gone. ".repeat(6);
    let own = format!("(measure: 60, text: \"{long}\\n\\n{long}\")");
    for setup in ["()", own.as_str()] {
        let view = lay_out(find("word-reference").unwrap(), setup, "373", &lock, 2).unwrap();
        let pieces = dressed("word-reference", &lock, |cx| view.pieces(cx)).unwrap();
        let text: Vec<Vec<String>> = serde_json::from_value(view.json()["text"].clone()).unwrap();
        for paper in [Paper::A4, Paper::Letter] {
            let on = lines_on(paper, &pieces);
            for line in text.iter().flatten() {
                assert!(on.contains(line), "{paper:?} breaks \"{line}\": {on:?}");
            }
        }
    }
}

#[test]
fn a_tampered_list_is_noticed() {
    let mechanic = find("word-reference").unwrap();
    let lock = LockKind::Digits(3);
    let view = lay_out(mechanic, "()", "604", &lock, 1).unwrap();
    let mut sides = printed("word-reference", &lock, view.as_ref());
    let list = sides.iter_mut().find(|side| side.part == "list").unwrap();
    let rows: Vec<usize> = (0..list.texts.len()).filter(|at| list.texts[*at].text.parse::<u8>().is_ok()).collect();
    // The first row changes places with the last.
    let (first, last) = (list.texts[rows[0]].y, list.texts[rows[8]].y);
    for at in rows {
        let text = &mut list.texts[at];
        text.y = if text.y == first {
            last
        } else if text.y == last {
            first
        } else {
            text.y
        };
    }
    let again = reread(mechanic, &lock, &sides).unwrap().unwrap();
    assert_eq!(again.readings(&lock, &mut Budget::default()).verdict("406"), Verdict::One);
}

#[test]
fn the_sheet_tells_of_hyphens_and_signs_only_where_it_has_some() {
    let told = |text: &Value| {
        let view = json!({ "text": text, "leads": [[1, 1, 1]], "columns": true, "counting": true, "take": "words" });
        dressed("word-reference", &ONE, |cx| {
            let pieces = find("word-reference").unwrap().view(&view).unwrap().pieces(cx).unwrap();
            let all: Vec<String> =
                pieces.iter().flat_map(|piece| piece.front.runs().map(|run| run.text.text())).collect();
            all.join(" ")
        })
    };
    let both = told(&text());
    assert!(both.contains("A word with a hyphen is one word, a sign alone is none."), "{both}");
    let neither = told(&json!([["one two three four"]]));
    assert!(neither.contains("To count here: leave out the title."), "{neither}");
    assert!(!neither.contains("hyphen") && !neither.contains("sign alone"), "{neither}");
}
