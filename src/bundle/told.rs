//! What the host guides of the demo kits tell, held against the sheets that they belong to.

use serde_json::Value;

use super::documents::{Job, folder, sheets};
use super::export::{guide_data, prep, press_of, prove};
use super::manifest::{Made, SheetOf};
use super::options::Shift;
use super::{DEMO_KITS, Opened, open_demo};
use crate::checks::LevelProof;
use crate::diag::Level;
use crate::face::{Audience, Stock};
use crate::files::VPath;
use crate::kit::{Form, LockKind};
use crate::party::WORD_RULE;
use crate::print::Press;
use crate::script::typographic;
use crate::sheet::Paper;

/// The demo kits at every level, each with what its guide says and the sheets that it is printed on.
fn demos() -> Vec<(Opened, Level, Value, Vec<Made>)> {
    let mut all = Vec::new();
    for id in DEMO_KITS {
        let opened = open_demo(id).unwrap();
        let press = press_of(&opened).unwrap();
        let proof = prove(&opened, &press, &Level::ALL).unwrap();
        for level in &proof.levels {
            let files = laid(&opened, level, Paper::A4, &press);
            let plan = prep(&opened, level, 1);
            let data = guide_data(&opened, level, &plan, (Paper::A4, 1), &[], &files).unwrap();
            all.push((open_demo(id).unwrap(), level.party.level, data, files));
        }
    }
    all
}

/// The documents of sheets of a level, without their pages.
pub(super) fn laid(opened: &Opened, level: &LevelProof, paper: Paper, press: &Press) -> Vec<Made> {
    let party = &level.party;
    [Audience::Players, Audience::Hints, Audience::Host]
        .iter()
        .map(|audience| {
            let job = Job { party, paper, audience: *audience, shift: Shift::default(), groups: 1 };
            let laid = sheets(&job, &opened.kit, &opened.theme, press).unwrap();
            for sheet in &laid {
                let back = sheet.placed.iter().all(|placed| placed.back);
                assert_eq!(sheet.stock.is_none(), back, "{}", sheet.heading);
            }
            Made {
                path: VPath::new(folder(*audience)).unwrap().join("sheets.pdf").unwrap(),
                bytes: Vec::new(),
                pages: Some(laid.len()),
                paper: Some(paper),
                level: Some(party.level),
                edition: Some(party.edition()),
                audience: folder(*audience),
                sheets: laid.iter().map(SheetOf::new).collect(),
            }
        })
        .collect()
}

/// Every text of some data, with where it stands.
fn texts(value: &Value) -> Vec<String> {
    match value {
        Value::String(text) => vec![text.clone()],
        Value::Array(items) => items.iter().flat_map(texts).collect(),
        Value::Object(fields) => fields
            .iter()
            .filter(|(key, _)| !["marks", "art", "svg"].contains(&key.as_str()))
            .flat_map(|(_, v)| texts(v))
            .collect(),
        _ => Vec::new(),
    }
}

#[test]
fn a_stranger_can_set_the_table_from_the_guide() {
    for (opened, level, data, files) in demos() {
        let (kit, at) = (&opened.kit, format!("{} {}", opened.kit.id, level.word()));
        // Paper is counted from the sheets.
        let laid = |stock: Stock| files.iter().flat_map(|file| &file.sheets).filter(|s| s.stock == Some(stock)).count();
        let listed =
            |name: &str| data["shopping"].as_array().unwrap().iter().find(|item| item["name"] == name).cloned();
        assert_eq!(
            listed("Plain printer paper").unwrap()["sheets"].as_f64().unwrap() as usize,
            laid(Stock::Plain),
            "{at}"
        );
        let card = listed("Card paper").unwrap()["amount"].as_str().unwrap().to_owned();
        assert_eq!(card, format!("{} sheets", laid(Stock::Card)), "{at}");
        // All files are named, in both places.
        assert_eq!(data["files"].as_array().unwrap().len(), files.len() + 1, "{at}");
        assert!(data["minute"][0]["text"].as_str().unwrap().contains("host’s sheets"), "{at}");
        // Guests are told of places where they find something that they need.
        let say = texts(&data["say"]).join(" ");
        assert!(!say.contains("hiding place") && say.contains("the table"), "{at}: {say}");
        let pushed = kit.locks.iter().any(|lock| matches!(lock.kind, LockKind::Directions(_)));
        assert_eq!(say.contains("squeeze"), pushed, "{at}");
        // What lies open does so in one voice.
        let open = kit.levels.of(level).open_steps;
        let setup = texts(&data["places"]).join(" ");
        assert_eq!(setup.contains("they lie open from the start"), open > 0, "{at}");
        assert!(!texts(&data).join(" ").contains("face down"), "{at}");
        // Every box is listed with what it takes.
        for item in &kit.boxes {
            let of = texts(&data["shopping"]).join(" ");
            assert!(of.contains("inside it takes"), "{at}: {}", item.id);
        }
        // The way back names every box and every puzzle's reset.
        let back = texts(&data["reset"]).join(" ");
        for place in data["places"].as_array().unwrap() {
            assert!(back.contains(place["name"].as_str().unwrap()), "{at}: {back}");
        }
        assert!(back.contains("Print once more"), "{at}");
        // What a line says of a place no other says of a puzzle, and no line comes twice.
        let mut lines: Vec<String> = texts(&data["reset"]);
        let puzzles = texts(&data["reset"][2]);
        assert!(
            puzzles.iter().all(|line| !line.contains("back in its") && !line.contains("back in their")),
            "{at}: {puzzles:?}"
        );
        let count = lines.len();
        lines.sort();
        lines.dedup();
        assert_eq!(lines.len(), count, "{at}: {lines:?}");
        // What is folded and glued anew says how long that takes.
        let beforehand = texts(&data["reset"][0]).join(" ");
        for prop in &kit.props {
            if prop.printed.as_ref().is_some_and(|spec| matches!(spec.form, Form::Envelope | Form::Band)) {
                assert!(beforehand.contains("of work, then 15 min to dry"), "{at}: {beforehand}");
            }
        }
        // A word has one rule: in the guide, and on every slip.
        let spoken = kit.locks.iter().any(|lock| lock.kind == LockKind::Spoken);
        assert_eq!(texts(&data["mishaps"]).join(" ").contains(&typographic(WORD_RULE)), spoken, "{at}");
    }
}

#[test]
fn times_add_up_as_printed_and_sentences_are_whole() {
    let minutes = |text: &str| -> i64 {
        let mut sum = 0;
        let words: Vec<&str> = text.split_whitespace().collect();
        for pair in words.windows(2) {
            let Ok(number) = pair[0].parse::<i64>() else { continue };
            sum += if pair[1] == "h" { 60 * number } else { number };
        }
        sum
    };
    for (opened, level, data, _) in demos() {
        let at = format!("{} {}", opened.kit.id, level.word());
        let tasks = data["prep"].as_array().unwrap();
        let start = |task: &Value| minutes(&format!("{} min", task["start"].as_str().unwrap()));
        for pair in tasks.windows(2) {
            let end = start(&pair[0]) + minutes(pair[0]["hands"].as_str().unwrap());
            assert!(end <= start(&pair[1]), "{at}: {} then {}", pair[0], pair[1]);
        }
        for key in ["places", "locks", "shopping", "reset", "cautions", "mishaps"] {
            for text in texts(&data[key]) {
                let after = text.split("; ").skip(1).any(|rest| rest.chars().next().is_some_and(char::is_uppercase));
                assert!(["reset", "cautions"].contains(&key) || !after, "{at}: {text}");
                for slip in ["..", "”.”.", ".”.", "!.", "g/m2", "kG2", "(( ", "  "] {
                    assert!(!text.contains(slip), "{at}: {slip} in {text}");
                }
            }
        }
    }
}
