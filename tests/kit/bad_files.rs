//! Files that are no kits, and what the author is told.

use inklatch::diag::Trouble;
use inklatch::kit::Kit;
use inklatch::kit::file::{read_kit, write_kit};
use inklatch::limits;

use super::demo_text;

/// Reads the demo kit with one passage changed, which must fail.
fn refuse(old: &str, new: &str) -> (Trouble, String) {
    let text = demo_text();
    assert!(text.contains(old), "the demo kit no longer holds {old:?}");
    let text = text.replacen(old, new, 1);
    (read_kit(&text, "kit.ron").expect_err("the file was taken"), text)
}

/// The line that a trouble names.
fn line_of(trouble: &Trouble) -> usize {
    let place = trouble.place.as_deref().expect("no place");
    let mut parts = place.rsplit(':');
    let column: usize = parts.next().and_then(|text| text.parse().ok()).unwrap_or_else(|| panic!("{place}"));
    let line: usize = parts.next().and_then(|text| text.parse().ok()).unwrap_or_else(|| panic!("{place}"));
    assert_eq!(parts.next(), Some("kit.ron"));
    assert!(line >= 1 && column >= 1, "{place}");
    line
}

/// The line on which a passage stands.
fn line_with(text: &str, part: &str) -> usize {
    text.lines().position(|line| line.contains(part)).expect("no such passage") + 1
}

fn hints(trouble: &Trouble) -> String {
    trouble.hints.join("\n")
}

#[test]
fn half_a_file_is_refused_wherever_it_breaks_off() {
    let text = demo_text();
    let ends: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
    for end in ends.iter().step_by(61) {
        let trouble = read_kit(&text[..*end], "kit.ron").expect_err("half a file was taken");
        assert!(trouble.place.as_deref().is_some_and(|place| place.starts_with("kit.ron:")), "{trouble}");
        // Where it breaks off within a name, the message is about that name.
        let about_a_name = trouble.message.starts_with("there is no `") || trouble.message.starts_with("the field `");
        assert!(about_a_name || hints(&trouble).contains("backup"), "{trouble}");
    }
}

#[test]
fn an_unknown_field_names_the_nearest() {
    let (trouble, text) = refuse("    spots: [", "    sopts: [");
    assert_eq!(trouble.message, "there is no `sopts` here");
    assert!(hints(&trouble).contains("did you mean `spots`?"), "{trouble}");
    assert!(line_of(&trouble).abs_diff(line_with(&text, "sopts: [")) <= 1, "{trouble}");
}

#[test]
fn an_unknown_field_deep_inside_names_the_nearest() {
    let (trouble, text) = refuse("            opens: \"candle-lock\",", "            open: \"candle-lock\",");
    assert!(hints(&trouble).contains("did you mean `opens`?"), "{trouble}");
    assert!(line_of(&trouble).abs_diff(line_with(&text, " open: \"candle-lock\"")) <= 1, "{trouble}");
}

#[test]
fn an_unknown_kind_of_lock_names_the_nearest() {
    let (trouble, _) = refuse("kind: Digits(3)", "kind: Digit(3)");
    assert!(hints(&trouble).contains("did you mean `Digits`?"), "{trouble}");
    assert!(hints(&trouble).contains("Spoken"), "{trouble}");
}

#[test]
fn a_missing_field_is_named() {
    let (trouble, _) = refuse("    title: \"The Stopped Clock\",\n", "");
    assert_eq!(trouble.message, "the field `title` is missing");
}

#[test]
fn a_wrong_type_says_where() {
    let (trouble, text) = refuse("    minutes: 60,", "    minutes: \"an hour\",");
    assert_eq!(line_of(&trouble), line_with(&text, "an hour"), "{trouble}");
    let (trouble, text) = refuse("    minutes: 60,", "    minutes: -5,");
    assert_eq!(line_of(&trouble), line_with(&text, "minutes: -5"), "{trouble}");
    let (trouble, text) = refuse("    players: (3, 6),", "    players: (3, 600),");
    assert_eq!(line_of(&trouble), line_with(&text, "(3, 600)"), "{trouble}");
}

#[test]
fn an_id_of_the_wrong_shape_is_told_a_right_one() {
    let (trouble, text) = refuse("id: \"chest-place\"", "id: \"The Chest's Place\"");
    assert!(trouble.to_string().contains("the-chest-s-place"), "{trouble}");
    assert_eq!(line_of(&trouble), line_with(&text, "The Chest's Place"), "{trouble}");
}

#[test]
fn a_newer_format_is_refused_before_anything_else() {
    let (trouble, _) = refuse("format: 1,", "format: 99,\n    something_of_the_future: [1, 2],");
    assert!(trouble.message.contains("format 99"), "{trouble}");
    assert!(hints(&trouble).contains("newer Inklatch"), "{trouble}");
    let (trouble, _) = refuse("format: 1,", "format: 0,");
    assert!(trouble.message.contains("format 0"), "{trouble}");
    let (trouble, _) = refuse("    format: 1,\n", "");
    assert_eq!(trouble.message, "the field `format` is missing");
}

#[test]
fn what_is_no_kit_at_all_is_refused() {
    for text in ["", "   ", "()", "[]", "{}", "null", "\u{feff}", "<svg/>", "PK\u{3}\u{4}", "(format: 1)", "(((((((("] {
        let trouble = read_kit(text, "kit.ron").expect_err(text);
        assert!(trouble.place.is_some(), "{text:?}: {trouble}");
    }
}

#[test]
fn depth_and_size_are_bounded() {
    let deep = format!("(format: 1, id: {}", "[".repeat(100_000));
    assert!(read_kit(&deep, "kit.ron").is_err());
    let large = format!("(format: 1, // {}", "x".repeat(usize::try_from(limits::RON_BYTES).unwrap()));
    let trouble = read_kit(&large, "kit.ron").unwrap_err();
    assert!(trouble.message.contains("more than"), "{trouble}");
}

#[test]
fn a_setup_that_is_not_ron_is_refused_with_its_line() {
    let (trouble, text) =
        refuse("            setup: (\n                shapes: 60,", "            setup: (\n                shapes: ],");
    assert!(line_of(&trouble) >= line_with(&text, "shapes: ],") - 1, "{trouble}");
}

#[test]
fn a_value_without_its_kind_is_told_with_what_it_would_be() {
    let (trouble, _) = refuse("place: Spot(", "place: (");
    assert!(hints(&trouble).contains("Spot(") && hints(&trouble).contains("Box("), "{trouble}");
    let text = demo_text();
    let place = text.lines().find_map(|line| line.trim().strip_prefix("place: Spot(\"")?.split('"').next()).unwrap();
    let (trouble, text) = refuse(&format!("place: Spot(\"{place}\")"), &format!("place: \"{place}\""));
    assert!(hints(&trouble).contains(&format!("write Spot(\"{place}\") or Box(\"{place}\")")), "{trouble}");
    assert_eq!(line_of(&trouble), line_with(&text, &format!("place: \"{place}\"")), "{trouble}");
    let (trouble, _) = refuse("kind: Digits(3)", "kind: 3");
    assert!(hints(&trouble).contains("Digits(3)") && hints(&trouble).contains("Spoken"), "{trouble}");
}

#[test]
fn a_bracket_too_many_is_told_as_one() {
    let trouble =
        inklatch::kit::file::from_ron::<inklatch::kit::Finish>("((opens: \"tin\", card: \"end\"))", "kit.ron")
            .expect_err("two brackets were taken");
    assert!(
        hints(&trouble).contains("one bracket too many") && hints(&trouble).contains("opens, card, treat"),
        "{trouble}"
    );
}

/// Whatever is taken out of a file or put into it, its author is told what to do.
#[test]
fn no_fault_of_a_file_is_told_without_a_hint() {
    let text = demo_text();
    let marks: Vec<usize> = text.char_indices().filter(|(_, c)| "()[]{}:,\"".contains(*c)).map(|(at, _)| at).collect();
    for at in marks.iter().step_by(37) {
        for new in ["", "(", "]", "\"", "7", ": x"] {
            let changed = format!("{}{new}{}", &text[..*at], &text[at + 1..]);
            if let Err(trouble) = read_kit(&changed, "kit.ron") {
                assert!(!trouble.hints.is_empty(), "{trouble}");
            }
        }
    }
}

#[test]
fn a_kit_with_more_than_a_kit_can_have_is_told_of_what_and_how_many() {
    let mut kit = crate::sound::sound_kit();
    let (puzzle, prop) = (kit.puzzles[0].clone(), kit.props[0].clone());
    kit.puzzles = vec![puzzle.clone(); limits::PUZZLES];
    kit.props = vec![prop.clone(); limits::THINGS];
    assert!(read_kit(&write_kit(&kit).unwrap(), "kit.ron").is_ok());
    let told = |kit: &Kit| read_kit(&write_kit(kit).unwrap(), "kit.ron").expect_err("the kit was taken").to_string();
    kit.props.push(prop);
    let said = told(&kit);
    assert!(said.contains("kit.ron") && said.contains("`props` lists 4001, and a kit can have 4000 at most"), "{said}");
    kit.puzzles.push(puzzle);
    let said = told(&kit);
    assert!(said.contains("`puzzles` lists 2001, and a kit can have 2000 at most"), "{said}");
    assert!(said.contains("hint: make several kits of it"), "{said}");
}

#[test]
fn a_value_without_what_it_holds_or_with_more_is_told_as_it_is_written() {
    let (trouble, text) = refuse("kind: Digits(3)", "kind: Digits");
    assert_eq!(trouble.message, "`Digits` is not written like this");
    assert!(hints(&trouble).contains("Digits(3)"), "{trouble}");
    assert_eq!(line_of(&trouble), line_with(&text, "kind: Digits,"));
    let (trouble, _) = refuse("kind: Key", "kind: Key(4)");
    assert!(trouble.message.contains("`Key`") && hints(&trouble).contains("write Key"), "{trouble}");
    assert!(!hints(&trouble).contains("Key("), "{trouble}");
}
