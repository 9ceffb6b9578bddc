use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use inklatch::sheet::Paper;
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, lines_on, printed, reread};

const TWO: LockKind = LockKind::Digits(2);

fn letters(wheels: &[&str]) -> LockKind {
    LockKind::Letters(wheels.iter().map(|wheel| (*wheel).to_owned()).collect())
}

fn read(text: &Value, rule: &Value, lock: &LockKind) -> Readings {
    let view = json!({ "text": text, "rule": rule, "bold": null });
    find("line-initials").unwrap().view(&view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// Lines that begin with these letters.
fn lines(initials: &str) -> Vec<String> {
    initials.chars().map(|letter| format!("{letter}b cd")).collect()
}

#[test]
fn initials_spell_words_or_number_words() {
    assert_eq!(answers(&read(&json!([lines("OWL")]), &json!("lines"), &letters(&["OA", "WB", "LC"]))), ["OWL"]);
    assert_eq!(answers(&read(&json!([lines("THREE"), lines("SIX")]), &json!("lines"), &TWO)), ["36"]);
    let spaced = [lines("XTHREE"), lines("QSIX")];
    assert_eq!(answers(&read(&json!(spaced), &json!("lines"), &TWO)), ["36"]);
    // Signs before the first letter do not count.
    assert_eq!(answers(&read(&json!([["\"Six!\"", "(ivy)", "– x"]]), &json!("lines"), &LockKind::Digits(1))), ["6"]);
}

#[test]
fn number_words_by_accident_read_as_well() {
    // TWONE holds both two and one, and a guest may see either.
    let found = read(&json!([lines("TWONE")]), &json!("lines"), &TWO);
    assert_eq!(answers(&found), ["21"]);
    assert_eq!(answers(&read(&json!([lines("TWONE")]), &json!("lines"), &LockKind::Digits(1))), ["1", "2"]);
    let third = read(&json!([lines("THREESIXTEN"), lines("ONE")]), &json!("lines"), &TWO);
    assert!(answers(&third).is_empty(), "{third:?}");
}

#[test]
fn with_no_rule_paragraphs_and_last_letters_read_too() {
    let text = json!([["Six in", "I saw one", "X there"], ["In all four", "X marks"], ["X is mine"]]);
    let lock = letters(&["SNI", "IE", "XA"]);
    assert_eq!(answers(&read(&text, &json!("paragraphs"), &lock)), ["SIX"]);
    let two = json!([["Four", "I", "X"], ["Ad", "Bd"]]);
    let lock = letters(&["FAR", "IAN"]);
    assert_eq!(answers(&read(&two, &json!("lines"), &lock)), Vec::<&str>::new());
    assert_eq!(answers(&read(&two, &json!("paragraphs"), &lock)), ["FA"]);
    let ends = json!([["Axo n", "Bo e"]]);
    let lock = letters(&["AN", "BE"]);
    let open = read(&ends, &Value::Null, &lock);
    assert_eq!(answers(&open), ["AB", "NE"]);
    assert!(open.list[1].why.contains("last letters") && open.remarks[0].contains("nothing on the sheet"), "{open:?}");
    assert_eq!(read(&ends, &json!("lines"), &lock).verdict("AB"), Verdict::One);
}

#[test]
fn refusals() {
    let refused = |setup: &str, answer: &str, lock: &LockKind| {
        lay_out(find("line-initials").unwrap(), setup, answer, lock, 1).err().unwrap().to_string()
    };
    assert!(refused("(text: \"Six\\nIn\\nXylo\")", "7", &LockKind::Digits(1)).contains("SIX and so hide 6"));
    assert!(refused("(text: \"Tea\\nWe\\nOh\\nNo\\nEh\")", "2", &LockKind::Digits(1)).contains("hide 21"));
    let lock = letters(&["OA", "WB", "LC"]);
    assert!(refused("(text: \"Owl.\\nWhy?\\nLook!\")", "OWL", &lock).contains("stands openly"));
    let long = format!("(text: \"{}\")", "over a white lake ".repeat(5));
    assert!(refused(&long, "OWL", &lock).contains("is too long: a line takes 64"));
    assert!(refused("()", "KKK", &LockKind::Spoken).contains("too few lines that begin with"));
    assert!(refused("(by: paragraphs)", "37373", &LockKind::Digits(5)).contains("a sheet takes"));
}

#[test]
fn the_lines_are_the_same_on_both_papers() {
    let lock = LockKind::Digits(4);
    for setup in ["()", "(by: paragraphs)"] {
        for answer in ["2407", "1616"] {
            let view = lay_out(find("line-initials").unwrap(), setup, answer, &lock, 3).unwrap();
            let pieces = dressed("line-initials", &lock, |cx| view.pieces(cx)).unwrap();
            let text: Vec<Vec<String>> = serde_json::from_value(view.json()["text"].clone()).unwrap();
            for paper in [Paper::A4, Paper::Letter] {
                let on = lines_on(paper, &pieces);
                for line in text.iter().flatten() {
                    assert!(on.contains(line), "{paper:?} breaks \"{line}\": {on:?}");
                }
            }
        }
    }
}

#[test]
fn bold_initials_are_a_rule_of_their_own() {
    let lock = letters(&["AN", "BE"]);
    let view = json!({ "text": [["Axo n", "Bo e"]], "rule": null, "bold": "lines" });
    let view = find("line-initials").unwrap().view(&view).unwrap();
    assert_eq!(view.readings(&lock, &mut Budget::default()).verdict("AB"), Verdict::One);
    assert_eq!(view.readings(&lock, &mut Budget::new(0)).verdict("AB"), Verdict::Unproven);
    let pieces = dressed("line-initials", &lock, |cx| view.pieces(cx)).unwrap();
    let spans = pieces[0].front.runs().flat_map(|run| &run.text.paragraphs).flat_map(|p| &p.spans);
    assert_eq!(spans.filter(|span| span.strong).map(|span| span.text.as_str()).collect::<String>(), "AB");
}

#[test]
fn a_line_that_was_broken_in_print_is_noticed() {
    let mechanic = find("line-initials").unwrap();
    let lock = LockKind::Digits(3);
    let view = lay_out(mechanic, "()", "604", &lock, 1).unwrap();
    let mut sides = printed("line-initials", &lock, view.as_ref());
    // The third line of the text moves to the top.
    let line = view.json()["text"][0][2].as_str().unwrap().to_owned();
    let top = sides[0].texts.iter().map(|text| text.y.get()).fold(f64::MAX, f64::min);
    for text in sides[0].texts.iter_mut().filter(|text| line.starts_with(&text.text)) {
        text.y = inklatch::units::Mm::new(top + 14.0);
        text.rect.y = text.y;
    }
    let again = reread(mechanic, &lock, &sides).unwrap().unwrap();
    assert_ne!(again.readings(&lock, &mut Budget::default()).verdict("604"), Verdict::One);
}
