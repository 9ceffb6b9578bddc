use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

/// Two kinds of three things and the tags 4, 7, 9.
fn read(statements: &Value, asked: &[(usize, usize)]) -> Readings {
    let kind =
        |name: &str, things: [&str; 3], in_order: bool| json!({ "name": name, "things": things, "in_order": in_order });
    let view = json!({
        "kinds": [kind("Who", ["Ida", "Maud", "Piet"], false), kind("Came", ["at one", "at two", "at three"], true),
            kind("", ["4", "7", "9"], false)],
        "tag": "tag", "statements": statements, "asked": asked,
    });
    let lock = LockKind::Digits(u8::try_from(asked.len()).unwrap());
    find("logic-grid").unwrap().view(&view).unwrap().readings(&lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn tags_are_read_in_the_order_of_the_list() {
    // Ida at two, Maud right before her, so Piet at three; Piet has the 4, and whoever came at one has not the 7.
    let statements = json!([
        { "Same": [[0, 0], [1, 1]] }, { "RightBefore": [[0, 1], [0, 0], 1] },
        { "Same": [[0, 2], [2, 0]] }, { "NotSame": [[1, 0], [2, 1]] },
    ]);
    let found = read(&statements, &[(1, 0), (0, 0), (0, 2), (1, 0)]);
    assert_eq!(answers(&found), ["9749"]);
    assert_eq!(found.list[0].why, "at one has tag 9, Ida has tag 7, Piet has tag 4, at one has tag 9");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn a_second_solution_reads_as_well_where_it_is_asked_for() {
    let statements = json!([{ "Same": [[0, 0], [1, 1]] }, { "Same": [[0, 0], [2, 1]] }]);
    assert_eq!(answers(&read(&statements, &[(0, 0), (0, 1)])), ["74", "79"]);
    let found = read(&statements, &[(0, 0), (1, 1)]);
    assert_eq!(answers(&found), ["77"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("leave something open")), "{found:?}");
}

#[test]
fn contradictions_and_needless_statements_are_told() {
    let against =
        json!([{ "Same": [[0, 0], [1, 1]] }, { "Before": [[0, 0], [0, 1], 1] }, { "Before": [[0, 0], [0, 2], 1] }]);
    let found = read(&against, &[(0, 0)]);
    assert!(found.list.is_empty() && found.remarks.iter().any(|remark| remark.contains("contradict")));
    let needless = json!([
        { "Same": [[0, 0], [1, 1]] }, { "Before": [[0, 1], [0, 2], 1] }, { "NextTo": [[0, 0], [0, 1], 1] },
        { "Same": [[0, 0], [2, 0]] }, { "Either": [[0, 1], [2, 0], [2, 2]] },
    ]);
    let found = read(&needless, &[(0, 1)]);
    assert_eq!(answers(&found), ["9"]);
    assert_eq!(found.remarks, ["statement 3 follows from the others"]);
}

#[test]
fn a_view_that_is_not_whole_has_no_reading() {
    assert!(read(&json!([{ "Same": [[9, 0], [1, 1]] }]), &[(0, 0)]).list.is_empty());
    let found = read(&json!([]), &[(7, 7)]);
    assert!(found.list.is_empty() && !found.remarks.is_empty());
}

#[test]
fn made_statements_are_all_needed_and_none_gives_a_tag_away() {
    let mechanic = find("logic-grid").unwrap();
    let example = "(kinds: [(name: \"Who\", things: [\"Ida\", \"Jonas\", \"Maud\", \"Piet\", \"Runa\"]), \
                   (name: \"Floor\", things: [\"one\", \"two\", \"three\", \"four\", \"five\"], in_order: true)])";
    for (setup, lock, answer) in [
        ("()", LockKind::Digits(4), "7007"),
        (example, LockKind::Digits(5), "90512"),
        (example, LockKind::Letters(vec!["ABC".into(), "OXY".into(), "LMN".into()]), "BOL"),
    ] {
        for seed in 0..6 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
            assert!(found.remarks.is_empty(), "{setup} {answer}: {found:?}");
            let json = view.json();
            let tags = json["kinds"].as_array().unwrap().len() - 1;
            for statement in json["statements"].as_array().unwrap() {
                if let Some(same) = statement["Same"].as_array() {
                    let asked = json["asked"].as_array().unwrap().contains(&same[0]);
                    assert!(!(asked && same[1][0] == tags), "{statement} gives a tag away");
                }
            }
            assert!(dressed("logic-grid", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
    let spare = |setup: &str| {
        let view = lay_out(mechanic, setup, "123", &LockKind::Digits(3), 1).unwrap();
        view.json()["statements"].as_array().unwrap().len()
    };
    assert_eq!(spare("(spare: 3)"), spare("()") + 3);
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("logic-grid").unwrap();
    for (setup, answer) in [
        ("(kinds: [])", "123"),
        ("(kinds: [(name: \"A\", things: [\"a\", \"b\", \"c\"]), (name: \"B\", things: [\"d\", \"e\"])])", "123"),
        (
            "(kinds: [(name: \"A\", things: [\"a\", \"b\", \"c\"]), (name: \"B\", things: [\"a\", \"e\", \"f\"])])",
            "123",
        ),
        ("()", "12345"),
    ] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let trouble = lay_out(mechanic, setup, answer, &lock, 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}

/// A lone digit at the head of a line would read as a number of its own.
#[test]
fn no_tag_is_parted_from_its_symbol() {
    let (mechanic, lock) = (find("logic-grid").unwrap(), LockKind::Digits(3));
    let mut tags = 0;
    for seed in 0..8 {
        let view = lay_out(mechanic, "()", "472", &lock, seed).unwrap();
        let words = dressed("logic-grid", &lock, |cx| {
            let piece = view.pieces(cx).unwrap().remove(0);
            piece.front.runs().map(|run| run.text.text()).collect::<Vec<_>>()
        });
        // Names beside the table stand in a line of their own.
        for sentence in words.iter().filter(|text| text.contains(". ")) {
            assert!(!sentence.contains("tag ") && !sentence.contains("Tag "), "{sentence}");
            tags += sentence.matches("ag\u{a0}").count();
        }
    }
    assert!(tags > 0);
}
