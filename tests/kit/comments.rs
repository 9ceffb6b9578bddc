//! Comments and layout of kit and theme files survive what the program writes into them.

use inklatch::bundle::{open, save_theme, scaffold};
use inklatch::files::{Files as _, Memory, VPath};
use inklatch::kit::file::{read_kit, rewrite};
use inklatch::kit::ron_merge::{comments, merged};
use inklatch::kit::{Kit, LevelChange, RawSetup};

/// The fresh kit as text and as a value.
fn fresh() -> (String, Kit) {
    let text = scaffold("A Kit").unwrap();
    let kit = read_kit(&text, "kit.ron").unwrap();
    (text, kit)
}

/// What the file says after a change, which reads as the change does.
fn changed(text: &str, change: impl FnOnce(&mut Kit)) -> String {
    let before = read_kit(text, "kit.ron").unwrap();
    let mut after = before.clone();
    change(&mut after);
    let new = rewrite(text, &before, &after).unwrap();
    assert_eq!(read_kit(&new, "kit.ron").unwrap(), after);
    new
}

#[test]
fn a_changed_field_leaves_all_else_as_it_was() {
    let (text, kit) = fresh();
    assert!(comments(&text).len() >= 3, "the fresh kit explains itself in comments");
    assert_eq!(changed(&text, |_| {}), text);
    let answer = kit.puzzles[0].answer.clone();
    let new = changed(&text, |kit| kit.puzzles[0].answer = "640".into());
    assert_eq!(new, text.replacen(&format!("answer: \"{answer}\""), "answer: \"640\"", 1));
    let new = changed(&text, |kit| {
        kit.title = "Another \"Title\"".into();
        kit.letter.body.push_str("\n\nA last word.");
        kit.notes.clear();
        kit.minutes += 5;
    });
    let kept = comments(&new).len();
    assert!(kept >= comments(&text).len() - 1, "{new}");
}

#[test]
fn things_come_go_and_move_with_their_comments() {
    let (text, _) = fresh();
    let text =
        text.replacen("    notes: [\n", "    // All the notes.\n    notes: [ // here\n        // The first.\n", 1);
    let before = comments(&text).len();
    let added = changed(&text, |kit| {
        let mut more = kit.notes[0].clone();
        more.id = inklatch::ids::NoteId::new("more").unwrap();
        kit.notes.push(more);
    });
    assert_eq!(comments(&added).len(), before, "{added}");
    assert!(added.contains("notes: [ // here\n        // The first.\n        ("), "{added}");
    let turned = changed(&added, |kit| kit.notes.reverse());
    assert_eq!(comments(&turned).len(), before, "{turned}");
    assert!(turned.find("id: \"more\"").unwrap() < turned.find("// The first.").unwrap(), "{turned}");
    let gone = changed(&turned, |kit| drop(kit.notes.remove(1)));
    assert!(!gone.contains("// The first.") && gone.contains("// All the notes."), "{gone}");
}

#[test]
fn every_part_of_the_demo_kits_can_change_in_its_place() {
    for name in ["the-stopped-clock", "the-harbour-regatta"] {
        let opened = open(Some(name.as_ref())).unwrap();
        let text = opened.files.read_text(&opened.file, 1 << 22).unwrap();
        for at in 0..opened.kit.puzzles.len() {
            changed(&text, |kit| kit.puzzles[at].hints.method.push('!'));
            changed(&text, |kit| drop(kit.puzzles.remove(at)));
            changed(&text, |kit| {
                let copy = kit.puzzles[at].clone();
                kit.puzzles.insert(0, copy);
            });
            changed(&text, |kit| (kit.puzzles[at].gentle, kit.puzzles[at].stiff) = (None, None));
            changed(&text, |kit| kit.puzzles[at].parts.clear());
        }
        let new = changed(&text, |kit| {
            kit.puzzles.reverse();
            kit.boxes.reverse();
            kit.words.insert("odd".into(), inklatch::kit::WordForms { one: "odd".into(), ..Default::default() });
            kit.props.truncate(1);
        });
        // Setups keep what was written in them, letter for letter.
        for puzzle in &opened.kit.puzzles {
            assert!(new.contains(puzzle.setup.ron().trim()), "{}", puzzle.id);
        }
    }
}

#[test]
fn a_new_field_stands_where_a_person_would_write_it() {
    let is = |there: &str, after: &str, wanted: &str| {
        assert_eq!(merged(there, "(a: 1, b: 2)", after).as_deref(), Some(wanted));
    };
    let after = "(a: 1, b: 2, c: false)";
    is("(a: 1, b: 2)", after, "(a: 1, b: 2, c: false)");
    is("(a: 1, b: 2,)", after, "(a: 1, b: 2, c: false,)");
    is("(a: 1,\n b: 2)", after, "(a: 1,\n b: 2,\n c: false)");
    is("(\n  a: 1, b: 2)", after, "(\n  a: 1, b: 2, c: false)");
    is("(\n  a: 1,\n  b: 2)", after, "(\n  a: 1,\n  b: 2,\n  c: false)");
    is("(\n  a: 1,\n  b: 2,\n)", after, "(\n  a: 1,\n  b: 2,\n  c: false,\n)");
    is("(\n  a: 1, b: 2\n)", after, "(\n  a: 1, b: 2,\n  c: false,\n)");
    is("(a: 1,\n b: 2 // two\n)", after, "(a: 1,\n b: 2, // two\n c: false,\n)");
    is("(a: 1, // one\n b: 2)", "(a: 1)", "(a: 1, // one\n)");
    is("(a: 1,\n b: 2)", "(a: 1)", "(a: 1)");
    is("(a: 1,\n b: 2)", "(c: 0, a: 1, b: 2)", "(c: 0,\n a: 1,\n b: 2)");
    // On a line that is full already it begins one, set in like the others.
    let long = format!("(a: 1,\n   b: 2, d: \"{}\")", "x".repeat(110));
    let (before, after) = ("(a: 1, b: 2, d: 0)", "(a: 1, b: 2, d: 0, c: false)");
    assert_eq!(merged(&long, before, after), Some(long.replace("\")", "\",\n   c: false)")));
}

#[test]
fn a_field_added_to_a_wrapped_thing_ends_without_a_comma() {
    let opened = open(Some("the-stopped-clock".as_ref())).unwrap();
    let text = opened.files.read_text(&opened.file, 1 << 22).unwrap();
    let new = changed(&text, |kit| kit.locks.iter_mut().for_each(|lock| lock.tag = false));
    assert!(new.contains("tag: false),\n") && !new.contains("tag: false,)"), "{new}");
    assert_eq!(new.matches("tag: false").count(), opened.kit.locks.len());
}

#[test]
fn a_levels_setup_is_written_as_the_puzzles_own() {
    let (text, _) = fresh();
    let setup = |ron: &str| Some(RawSetup::new(ron).unwrap());
    let new = changed(&text, |kit| {
        kit.puzzles[0].gentle = Some(LevelChange { setup: setup("(word: \"OWL\")"), ..LevelChange::default() });
    });
    assert!(new.contains("setup: (word: \"OWL\")"), "{new}");
    let new = changed(&new, |kit| kit.puzzles[0].gentle.as_mut().unwrap().setup = setup("(word: \"ELK\")"));
    assert!(new.contains("setup: (word: \"ELK\")") && !new.contains("Some("), "{new}");
}

#[test]
fn any_layout_is_kept_or_left_alone() {
    let with = |there: &str, before: &str, after: &str| merged(there, before, after);
    let is = |there: &str, before: &str, after: &str, wanted: &str| {
        assert_eq!(with(there, before, after).as_deref(), Some(wanted));
    };
    is("(a:1,b:2) // end", "(a: 1, b: 2)", "(a: 1, b: 3)", "(a:1,b:3) // end");
    is(
        "#![enable(implicit_some)]\n/* x */ (a: 1 /* y */, b: 2)",
        "(a: 1, b: 2)",
        "(a: 5, b: 2)",
        "#![enable(implicit_some)]\n/* x */ (a: 5 /* y */, b: 2)",
    );
    is(
        "(\n  a: 1, // one\n  b: 2 // two\n)",
        "(a: 1, b: 2)",
        "(a: 1, b: 2, c: 3)",
        "(\n  a: 1, // one\n  b: 2, // two\n  c: 3,\n)",
    );
    is("(\n  a: 1, // one\n  b: 2, // two\n)", "(a: 1, b: 2)", "(b: 2)", "(\n  b: 2, // two\n)");
    is("([1, 2, // two\n 3])", "([1, 2, 3])", "([1, 2])", "([1, 2, // two\n])");
    is("(a: [1, 2])", "(a: [1, 2])", "(a: [2, 1, 3])", "(a: [2, 1, 3])");
    is("{ \"a\": (1, 2), // pair\n}", "{\"a\": (1, 2)}", "{\"a\": (1, 4)}", "{ \"a\": (1, 4), // pair\n}");
    // A field that is left out, as it says what is meant anyway, stays out; one that says so stays in.
    is("(a: 1)", "(a: 1, b: 0)", "(a: 2, b: 0)", "(a: 2)");
    is("(a: 1, z: 0)", "(a: 1)", "(a: 2)", "(a: 2, z: 0)");
    for broken in ["(", "(a: 1", "a: 1)", "[1, 2", "(a: )", "(,)", "", "\"", "/*", "(a: 1))", "#![", "{1}"] {
        let _ = with(broken, "(a: 1)", "(a: 2)");
        let _ = with("(a: 1)", broken, "(a: 2)");
    }
    let deep = "(".repeat(5000);
    assert_eq!(with(&deep, &deep, &deep), None);
}

#[test]
fn a_theme_keeps_its_comments_too() {
    let files = Memory::new();
    let file = VPath::new("themes/mine/theme.ron").unwrap();
    let demo = open(None).unwrap();
    let mut theme = demo.theme.theme.clone();
    let text =
        inklatch::kit::file::to_ron(&theme).unwrap().replacen("palette: {", "// Ours.\n    palette: { // seven", 1);
    files.write(&file, text.as_bytes()).unwrap();
    theme.palette.insert("glow".into(), "#FFEEAA".into());
    save_theme(&files, &file, &theme, &text).unwrap();
    let new = files.read_text(&file, 1 << 22).unwrap();
    assert!(new.contains("// Ours.\n    palette: { // seven") && new.contains("#FFEEAA"), "{new}");
    assert!(!files.exists(&VPath::new("themes/mine/theme-with-comments.ron").unwrap()));
}
