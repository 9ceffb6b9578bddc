//! What the command line lists and tells: names that a kit may use, lines of the file, examples.

use std::process::Command;

use clap::CommandFactory as _;
use inklatch::bundle;
use inklatch::cli::{Args, CLEAN, FAILED};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::material::MATERIALS;
use inklatch::limits;
use inklatch::mechanics::MECHANICS;
use inklatch::theme::{builtin_ids, load_builtin};

use super::{inklatch, kit};

#[test]
fn every_commands_help_has_an_example() {
    for command in Args::command().get_subcommands().filter(|command| command.get_name() != "help") {
        let help = command.get_after_help().map(ToString::to_string).unwrap_or_default();
        let example = help.strip_prefix("Example: ").unwrap_or_else(|| panic!("{} has none", command.get_name()));
        let words: Vec<&str> = example.split(' ').collect();
        // Quotation marks belong to the shell.
        let words = words.iter().map(|word| word.trim_matches('\''));
        let read = <Args as clap::Parser>::try_parse_from(words.filter(|word| !["Waking", "Hive"].contains(word)));
        assert!(read.is_ok(), "{example}: {:?}", read.err());
    }
}

#[test]
fn everything_is_listed_without_a_name() {
    let (code, out, _) = inklatch(&["explain"]);
    assert_eq!(code, CLEAN);
    let names: Vec<&str> = out.split(|c: char| !(c.is_alphanumeric() || c == '-')).collect();
    for name in MECHANICS.iter().map(|mechanic| mechanic.meta().id).chain(MATERIALS.iter().map(|material| material.id))
    {
        assert!(names.contains(&name), "{name} is not listed");
        let (code, ..) = inklatch(&["explain", name]);
        assert_eq!(code, CLEAN, "{name}");
    }
    let (_, out, _) = inklatch(&["explain", "materials"]);
    for material in MATERIALS {
        assert!(
            out.contains(material.id) && out.contains(material.name) && out.contains(material.unit),
            "{}",
            material.id
        );
    }
}

#[test]
fn a_mechanic_tells_its_pieces_with_size_paper_and_whose_they_are() {
    let told = |name: &str| {
        let (code, out, err) = inklatch(&["explain", name]);
        assert_eq!(code, CLEAN, "{err}");
        let (_, rest) = out.split_once("Pieces of a sample").expect("the pieces");
        rest.lines().skip(1).take_while(|line| !line.is_empty()).map(str::to_owned).collect::<Vec<_>>()
    };
    // What guests write on is of plain paper; a board is as large in every theme.
    assert_eq!(told("price-list"), ["  bills        190 × 250 mm, plain paper, for guests"]);
    let sheets = told("overlay-sheets");
    assert!(sheets.iter().any(|line| line.contains("clear film, for guests")), "{sheets:?}");
    let board = told("magnet-field");
    assert!(board.iter().any(|line| line.ends_with("plain paper, for the host")), "{board:?}");
    // One for each wheel of the first lock that the sample suits.
    let clocks = told("clock-faces");
    assert!(clocks.iter().any(|line| line.starts_with("  clocks       3 pieces, each 80 × 80 mm")), "{clocks:?}");
}

#[test]
fn a_theme_is_listed_with_all_that_it_has() {
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap().theme;
        let (code, out, err) = inklatch(&["themes", id.as_str()]);
        assert_eq!(code, CLEAN, "{err}");
        let (_, json, _) = inklatch(&["themes", id.as_str(), "--json"]);
        let json: serde_json::Value = serde_json::from_str(&json).unwrap();
        let [only] = json["themes"].as_array().unwrap().as_slice() else { panic!("{json}") };
        assert_eq!(only["symbol_names"].as_array().unwrap().len(), theme.symbols.len());
        for name in
            theme.symbols.keys().chain(theme.colours.keys()).chain(theme.words.keys()).chain(theme.dressings.keys())
        {
            assert!(out.contains(name.as_str()), "{id}: {name}");
        }
        for (mechanic, words) in &theme.dressings {
            for part in words.keys() {
                assert!(out.contains(part.as_str()), "{id}: {mechanic}, {part}");
                assert_eq!(only["dressings"][mechanic][part], serde_json::json!(words[part]));
            }
        }
    }
}

/// Tried out, not written down: what the plainest mechanics answer is known beforehand.
#[test]
fn mechanics_say_which_locks_they_open() {
    let (_, json, _) = inklatch(&["mechanics", "--json"]);
    let rows: serde_json::Value = serde_json::from_str(&json).unwrap();
    let locks = |id: &str| -> Vec<String> {
        let row = rows.as_array().unwrap().iter().find(|row| row["id"] == id).unwrap();
        row["locks"].as_array().unwrap().iter().map(|lock| lock.as_str().unwrap().to_owned()).collect()
    };
    for mechanic in MECHANICS {
        assert!(!locks(mechanic.meta().id).is_empty(), "{} opens nothing", mechanic.meta().id);
    }
    assert_eq!(locks("marked-hiding-place"), ["key"]);
    assert!(locks("picture-grid").contains(&"directions".to_owned()));
    assert!(
        locks("shift-wheel").contains(&"letters".to_owned()) && locks("shift-wheel").contains(&"spoken".to_owned())
    );
    let (_, out, _) = inklatch(&["mechanics"]);
    assert_eq!(out.matches("    answer: ").count(), MECHANICS.len());
}

#[test]
fn a_fault_in_a_setup_is_told_with_the_line_of_the_file() {
    let wrong = kit(|text| {
        assert_eq!(text.matches("setup: (").count(), text.matches("setup:").count());
        let at = text.rfind("setup: (").unwrap();
        format!("{}setup: (\n    nonsense: 3, {}", &text[..at], &text[at + "setup: (".len()..])
    });
    let text = Disk::new(wrong.path()).read_text(&VPath::new("kit.ron").unwrap(), limits::RON_BYTES).unwrap();
    let line = text.lines().position(|line| line.contains("nonsense")).unwrap() + 1;
    let (_, out, _) = inklatch(&["check", wrong.path().to_str().unwrap(), "--level", "standard"]);
    assert!(out.contains(&format!("(kit.ron:{line}:")), "line {line}: {out}");
}

#[test]
fn a_rehearsal_of_impossible_minutes_is_refused() {
    let wrong = kit(|text| text.replacen("players: (", "players: (9, 2), // (", 1));
    let (code, _, err) = inklatch(&["rehearse", wrong.path().to_str().unwrap()]);
    assert_eq!(code, FAILED, "{err}");
    assert!(err.contains("the least is more than the most") && err.contains("hint: "), "{err}");
}

#[test]
fn progress_goes_up_and_tells_of_what_is_made() {
    let clean = kit(|text| text);
    let out_folder = tempfile::tempdir().unwrap();
    let (path, to) = (clean.path().to_str().unwrap(), out_folder.path().to_str().unwrap());
    let (code, out, err) = inklatch(&["export", path, "--paper", "a4", "--level", "standard", "--out", to]);
    assert_eq!(code, CLEAN, "{out}{err}");
    assert!(!out.contains("nothing to print") && !out.contains("picture "), "{out}");
    let percents: Vec<usize> =
        out.lines().filter_map(|line| line.strip_prefix('[')?.split_once(" %]")?.0.trim().parse().ok()).collect();
    assert!(percents.len() > 3 && percents.is_sorted() && percents.last() == Some(&100), "{out}");
}

#[test]
fn a_bundle_of_a_demo_kit_does_not_stand_in_its_way() {
    // `export the-harbour-regatta --out .` leaves a folder of that name, which holds no kit.
    let here = tempfile::tempdir().unwrap();
    let name = bundle::DEMO_KITS[1];
    std::fs::create_dir_all(here.path().join(name).join("players")).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_inklatch"));
    let output = command.current_dir(here.path()).args(["check", name, "--level", "standard"]).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
}

#[test]
fn a_stranger_is_told_what_was_meant() {
    let program = |args: &[&str]| {
        let ran = Command::new(env!("CARGO_BIN_EXE_inklatch")).args(args).output().unwrap();
        (ran.status.code(), String::from_utf8(ran.stderr).unwrap())
    };
    for (args, says) in [
        (&["chek", "k"][..], "did you mean `check`?"),
        (&["theme"], "did you mean `themes`?"),
        (&["check", "the-stoped-clock"], "did you mean `the-stopped-clock`?"),
        (&["themes", "/there/is/nothing"], "the folder of one theme"),
    ] {
        let (code, err) = program(args);
        assert_eq!(code, Some(2), "{args:?}: {err}");
        assert!(err.starts_with("error: ") && err.contains(says), "{args:?}: {err}");
    }
    for (text, says) in [
        ("", "the file is empty"),
        ("junk", "fields in round brackets are expected, and `junk` was found"),
        ("((((", "hint: "),
        ("(format: 1, id: ?)", "hint: "),
    ] {
        let broken = kit(|_| text.to_owned());
        let (code, _, err) = inklatch(&["check", broken.path().to_str().unwrap()]);
        assert_eq!(code, FAILED, "{text}");
        assert!(err.contains(says) && err.contains(broken.path().to_str().unwrap()), "{text}: {err}");
        assert!(!err.contains("Head"), "a name of the program's own: {err}");
    }
}

#[test]
fn what_fails_half_way_is_not_in_the_way_of_the_next_try() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("mine");
    // A theme whose file is broken is found, and cannot be copied whole.
    let from = folder.path().join("broken");
    Disk::new(&from).write(&VPath::new("theme.ron").unwrap(), b"(format: 1").unwrap();
    let (code, _, err) = inklatch(&["new", place.to_str().unwrap(), "--theme-from", from.to_str().unwrap()]);
    assert_eq!(code, FAILED, "{err}");
    assert!(!place.exists());
    // A folder with something in it is refused before anything long is done.
    let (code, out, err) = inklatch(&["redress", "--theme", "hive", "--out", from.to_str().unwrap()]);
    assert_eq!((code, out.as_str()), (FAILED, ""), "{err}");
    assert!(err.contains("not empty"), "{err}");
}
