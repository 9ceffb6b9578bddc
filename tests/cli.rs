//! Tests of `cli`.

#[path = "cli/seasons.rs"]
mod seasons;
#[path = "cli/told.rs"]
mod told;

use std::io::{BufRead as _, BufReader};
use std::process::{Command, Stdio};

use clap::Parser as _;
use inklatch::bundle;
use inklatch::checks::CHECKS;
use inklatch::cli::{Args, BLOCKED, CLEAN, FAILED, run};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::mechanics::MECHANICS;

/// Runs a command in this program: exit code, output, errors.
fn inklatch(args: &[&str]) -> (u8, String, String) {
    let args = Args::try_parse_from(std::iter::once("inklatch").chain(args.iter().copied())).unwrap();
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = run(&args, &mut out, &mut err, &|_| Ok(()));
    (code, String::from_utf8(out).unwrap(), String::from_utf8(err).unwrap())
}

/// A folder with a changed fresh kit.
fn kit(change: impl FnOnce(String) -> String) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let text = change(bundle::scaffold("A Fresh Kit").unwrap());
    Disk::new(folder.path()).write(&VPath::new("kit.ron").unwrap(), text.as_bytes()).unwrap();
    folder
}

#[test]
fn check_says_clean_blocked_or_failed() {
    let clean = kit(|text| text);
    let (code, out, _) = inklatch(&["check", clean.path().to_str().unwrap()]);
    assert_eq!(code, CLEAN, "{out}");
    assert!(out.contains("one reading"), "{out}");

    let blocked = kit(|text| text.replace("answer: \"582\"", "answer: \"58\""));
    let (code, out, _) = inklatch(&["check", blocked.path().to_str().unwrap(), "--level", "standard"]);
    assert_eq!(code, BLOCKED, "{out}");
    assert!(out.contains("blocks[") && out.contains("hint:"), "{out}");

    let (code, _, err) = inklatch(&["check", "/there/is/no/such/kit"]);
    assert_eq!(code, FAILED);
    assert!(err.starts_with("error: ") && err.contains("\n  hint: "), "{err}");
}

#[test]
fn half_a_kit_is_told_with_line_and_column() {
    let half = kit(|text| text[..text.len() / 2].to_owned());
    let (code, _, err) = inklatch(&["check", half.path().to_str().unwrap()]);
    assert_eq!(code, FAILED);
    let place = half.path().join("kit.ron");
    assert!(err.contains(&format!("at: {}:", place.display())), "{err}");
}

#[test]
fn check_json_has_findings_readings_and_reach() {
    let blocked =
        kit(|text| text.replace("answer: \"582\"", "answer: \"583\"").replace("mark: \"bell\"", "mark: \"belle\""));
    let (code, out, _) = inklatch(&["check", blocked.path().to_str().unwrap(), "--json"]);
    let json: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!(code == BLOCKED, json["blocks"].as_u64().unwrap() > 0);
    assert_eq!(json["format"], 1);
    assert_eq!(json["levels"].as_array().unwrap().len(), 3);
    let level = &json["levels"][0];
    assert_eq!(level["puzzles"][0]["id"], "name-and-list");
    assert!(level["puzzles"][0]["readings"]["list"].is_array());
    assert_eq!(level["reachable"]["boxes"][0], "tin");
    assert_eq!(level["finish"], true);
    let finding = &json["findings"][0];
    for key in ["name", "severity", "level", "anchor", "message", "why", "help", "fix"] {
        assert!(finding.get(key).is_some(), "no {key} in {finding}");
    }
}

#[test]
fn everything_can_be_explained() {
    let names = ["kit", "theme", "frames", "check-json"]
        .into_iter()
        .chain(MECHANICS.iter().map(|mechanic| mechanic.meta().id))
        .chain(CHECKS.iter().map(|check| check.info().name));
    for name in names {
        let (code, out, err) = inklatch(&["explain", name]);
        assert_eq!(code, CLEAN, "{name}: {err}");
        assert!(out.len() > 100, "{name}: {out}");
    }
    let (code, _, err) = inklatch(&["explain", "several-reading"]);
    assert_eq!(code, FAILED);
    assert!(err.contains("did you mean `several-readings`?"), "{err}");
}

#[test]
fn explain_kit_describes_every_field_of_the_code() {
    let (_, out, _) = inklatch(&["explain", "kit"]);
    for field in
        ["title: String", "Digits(u8)", "locks: Vec<LockId> (*)", "nudge: String", "open_steps: u8", "WordForms"]
    {
        assert!(out.contains(field), "no {field}");
    }
    let (_, out, _) = inklatch(&["explain", "theme"]);
    for field in ["palette: BTreeMap<String, String>", "letterhead", "glow", "dressings: {"] {
        assert!(out.contains(field), "no {field}");
    }
}

#[test]
fn mechanics_and_themes_are_listed() {
    let (code, out, _) = inklatch(&["mechanics"]);
    assert_eq!(code, CLEAN);
    assert!(MECHANICS.iter().all(|mechanic| out.contains(mechanic.meta().id)));
    let entry = |id: &str| {
        let (_, rest) = out.split_once(&format!("\n{id}\n")).unwrap_or_else(|| panic!("no {id} in {out}"));
        rest.split("\n\n").next().unwrap().lines().take(6).collect::<Vec<_>>().join("\n")
    };
    assert!(entry("overlay-sheets").contains("clear film for printers"), "{}", entry("overlay-sheets"));
    assert!(entry("cut-strips").contains("needs paper only"), "{}", entry("cut-strips"));
    assert!(entry("glow-ink").contains("small UV torch"), "{}", entry("glow-ink"));
    let (code, json, _) = inklatch(&["mechanics", "--json"]);
    assert_eq!(code, CLEAN);
    let rows: Vec<serde_json::Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(rows.len(), MECHANICS.len());
    let row = |id: &str| rows.iter().find(|row| row["id"] == id).unwrap();
    assert_eq!((&row("overlay-sheets")["film"], &row("overlay-sheets")["paper_only"]), (&true.into(), &false.into()));
    assert_eq!((&row("cut-strips")["film"], &row("cut-strips")["paper_only"]), (&false.into(), &true.into()));
    assert_eq!(row("banded-counters")["colour"], true);
    assert!(!row("magnet-field")["tools"].as_array().unwrap().is_empty());
    for row in &rows {
        assert!(row["minutes"][0].as_u64() <= row["minutes"][1].as_u64() && row["least_age"].as_u64() > Some(0));
        assert!(row["guests"].is_string() && row["prints"].is_string() && row["host"].is_string());
    }
    let (code, _, _) = inklatch(&["themes", "the-harbour-regatta"]);
    assert_eq!(code, 0, "a kit that the program carries has a name");
    let (code, out, _) = inklatch(&["themes"]);
    assert_eq!(code, CLEAN);
    assert!(out.contains("midwinter"), "{out}");
}

#[test]
fn new_makes_a_kit_and_overwrites_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("lantern-night");
    let shown = place.to_str().unwrap();
    let (code, out, _) = inklatch(&["new", shown]);
    assert_eq!(code, CLEAN, "{out}");
    let opened = bundle::open(Some(&place)).unwrap();
    assert_eq!((opened.kit.title.as_str(), opened.kit.id.as_str()), ("Lantern night", "lantern-night"));
    let (code, _, err) = inklatch(&["new", shown, "--title", "Other"]);
    assert_eq!(code, FAILED);
    assert!(err.contains("not empty"), "{err}");
    assert_eq!(bundle::open(Some(&place)).unwrap().kit.title, "Lantern night");
}

#[test]
fn demo_kits_open_by_name_and_can_be_copied() {
    for name in bundle::DEMO_KITS {
        let opened = bundle::open(Some(name.as_ref())).unwrap();
        assert_eq!((opened.kit.id.as_str(), opened.folder), (name, None));
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("mine");
        let (code, out, err) = inklatch(&["new", place.to_str().unwrap(), "--from", name]);
        assert_eq!(code, CLEAN, "{out}{err}");
        assert_eq!(bundle::open(Some(&place)).unwrap().kit, opened.kit);
    }
    assert_eq!(bundle::open(None).unwrap().kit.id.as_str(), bundle::DEMO_KITS[0]);
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("mine");
    let (code, _, err) = inklatch(&["new", place.to_str().unwrap(), "--from", "the-harbor-regatta"]);
    assert_eq!(code, FAILED);
    assert!(err.contains("did you mean `the-harbour-regatta`?"), "{err}");
    assert!(!place.exists());
}

#[test]
fn export_says_where_to_look() {
    let fresh = kit(|text| text);
    let out_folder = tempfile::tempdir().unwrap();
    let out_shown = out_folder.path().to_str().unwrap();
    let args = ["export", fresh.path().to_str().unwrap(), "--paper", "a4", "--level", "standard", "--out", out_shown];
    let (code, out, err) = inklatch(&args);
    assert_eq!(code, CLEAN, "{out}{err}");
    assert!(out.contains(&format!("look in {out_shown}/a-fresh-kit")), "{out}");
    assert!(out_folder.path().join("a-fresh-kit/host/a-fresh-kit-guide-standard-a4.pdf").is_file());

    let blocked = kit(|text| text.replace("answer: \"582\"", "answer: \"58\""));
    let place = blocked.path().to_str().unwrap();
    let other = tempfile::tempdir().unwrap();
    let other_shown = other.path().to_str().unwrap();
    let args = ["export", place, "--paper", "a4", "--level", "standard", "--out", other_shown];
    assert_eq!(inklatch(&args).0, BLOCKED);
    assert_eq!(other.path().read_dir().unwrap().count(), 0);
    let forced: Vec<&str> = args.into_iter().chain(["--force"]).collect();
    assert_eq!(inklatch(&forced).0, CLEAN);
}

#[test]
fn a_reader_who_has_seen_enough_is_no_error() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_inklatch"))
        .args(["explain", "kit"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut line = String::new();
    // The reader is dropped, and with it the pipe, while the program still writes.
    BufReader::with_capacity(16, child.stdout.take().unwrap()).read_line(&mut line).unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(line.starts_with("kit.ron"), "{line}");
    assert!(output.stderr.is_empty(), "{}", String::from_utf8_lossy(&output.stderr));
    assert_ne!(output.status.code(), Some(i32::from(FAILED)));
}

/// The bundle is what was asked for: it is whole although nobody reads the lines of progress.
#[test]
fn an_export_goes_on_when_nobody_reads() {
    let out = tempfile::tempdir().unwrap();
    let mut child = Command::new(env!("CARGO_BIN_EXE_inklatch"))
        .args(["export", "--paper", "a4", "--level", "standard", "--out"])
        .arg(out.path())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(i32::from(CLEAN)), "{}", String::from_utf8_lossy(&output.stderr));
    assert!(out.path().join("the-stopped-clock/manifest.json").is_file());
}

#[test]
fn a_wrong_option_is_refused_with_code_2() {
    let output = Command::new(env!("CARGO_BIN_EXE_inklatch")).args(["export", "--paper", "a5"]).output().unwrap();
    assert_eq!(output.status.code(), Some(i32::from(FAILED)));
}

/// The paths of all fields of a JSON value; an anchor or a place is one field, whatever it holds.
fn paths(value: &serde_json::Value, path: &str, found: &mut std::collections::BTreeSet<String>) {
    match value {
        serde_json::Value::Object(fields) => {
            for (name, value) in fields {
                let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
                if !["anchor", "anchors", "pair", "place"].iter().any(|end| path.ends_with(end)) {
                    paths(value, &path, found);
                }
                found.insert(path);
            }
        }
        serde_json::Value::Array(list) => list.iter().for_each(|value| paths(value, &format!("{path}[]"), found)),
        _ => {}
    }
}

#[test]
fn the_json_of_check_is_as_explained() {
    let (_, explained, _) = inklatch(&["explain", "check-json"]);
    let told: std::collections::BTreeSet<String> =
        explained.lines().filter(|line| !line.is_empty() && !line.contains(' ')).map(str::to_owned).collect();
    let mut found = std::collections::BTreeSet::new();
    let blocked = kit(|text| text.replace("mark: \"bell\"", "mark: \"belle\""));
    for args in [vec!["check", "--json"], vec!["check", blocked.path().to_str().unwrap(), "--json"]] {
        let (_, out, err) = inklatch(&args);
        paths(&serde_json::from_str(&out).unwrap_or_else(|_| panic!("{err}")), "", &mut found);
    }
    let untold: Vec<&String> = found.difference(&told).collect();
    assert!(untold.is_empty(), "not explained: {untold:?}");
    // Loops, work, mends and the like are not in every kit.
    let rare = [
        "levels[].loops[].",
        "levels[].puzzles[].work.",
        "levels[].single_file.",
        "levels[].early_tools[].",
        "levels[].too_close[].",
        "mended[].",
    ];
    let missing: Vec<&String> =
        told.difference(&found).filter(|path| !rare.iter().any(|start| path.starts_with(start))).collect();
    assert!(missing.is_empty(), "explained, but not there: {missing:?}");
}

#[test]
fn check_fix_makes_the_safe_mends_and_saves() {
    let folder =
        kit(|text| text.replacen("parts: {", "parts: {\n                \"no-such-part\": Spot(\"table\"),", 1));
    let path = folder.path().to_str().unwrap();
    let (_, out, _) = inklatch(&["check", path]);
    assert!(out.contains("piece-in-no-place"), "{out}");
    let (code, out, err) = inklatch(&["check", path, "--fix"]);
    assert_eq!(code, CLEAN, "{out}{err}");
    assert!(out.contains("mended[piece-in-no-place]: ") && out.contains("the kit is saved"), "{out}");
    let (_, out, _) = inklatch(&["check", path, "--fix"]);
    assert!(out.contains("no safe mend to make") && !out.contains("piece-in-no-place"), "{out}");
    let text = Disk::new(folder.path()).read_text(&VPath::new("kit.ron").unwrap(), 1 << 20).unwrap();
    assert!(text.contains("// "), "the file keeps its comments: {text}");
    assert!(!folder.path().join("kit-with-comments.ron").exists(), "no comment is lost");
}

#[test]
fn codes_are_proposed_and_written() {
    let folder = kit(|text| text);
    let path = folder.path().to_str().unwrap();
    let (code, out, _) = inklatch(&["codes", path]);
    assert_eq!(code, CLEAN);
    assert!(out.contains("582 -> ") && out.contains("nothing is changed yet"), "{out}");
    let (_, json, _) = inklatch(&["codes", path, "--json", "--write", "--seed", "3"]);
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    let new = json["changes"][0]["new"].as_str().unwrap();
    let text = Disk::new(folder.path()).read_text(&VPath::new("kit.ron").unwrap(), 1 << 20).unwrap();
    assert!(text.contains(&format!("answer: \"{new}\"")), "{text}");
    let (code, out, _) = inklatch(&["check", path]);
    assert_eq!(code, CLEAN, "{out}");
    let (code, _, err) = inklatch(&["codes", path, "--keep", "name-and-lits"]);
    assert_eq!(code, FAILED);
    assert!(err.contains("did you mean `name-and-list`?"), "{err}");
    let (code, _, err) = inklatch(&["codes", "--write"]);
    assert_eq!(code, FAILED);
    assert!(err.contains("demo kit"), "{err}");
}

#[test]
fn the_evening_is_rehearsed_and_plays_correct_it() {
    let fresh = kit(|text| text);
    let place = fresh.path().to_str().unwrap();
    let (code, out, _) = inklatch(&["rehearse", place]);
    assert_eq!(code, CLEAN);
    for says in [
        "Gentle\n",
        "Standard\n",
        "Stiff\n",
        "1000 simulated evenings",
        "<- stated",
        "A name in digits",
        "explain plays",
    ] {
        assert!(out.contains(says), "{says}:\n{out}");
    }
    let json = |args: &[&str]| -> serde_json::Value {
        let (code, out, err) = inklatch(&[&["rehearse", place, "--json", "--level", "standard"], args].concat());
        assert_eq!(code, CLEAN, "{err}");
        serde_json::from_str(&out).unwrap()
    };
    let before = json(&["--runs", "200"]);
    assert_eq!(before, json(&["--runs", "200"]), "the same kit has the same evenings");
    let level = &before["levels"][0];
    assert_eq!((level["level"].as_str(), level["runs"].as_u64()), (Some("standard"), Some(200)));
    assert!((0.0..=1.0).contains(&level["chance"].as_f64().unwrap()));
    assert_eq!(level["puzzles"][0]["estimate"]["source"], "author");
    let plays = "(format: 1, plays: [(guests: 3, minutes: 30, puzzles: {\"name-and-list\": (minutes: 25)})])";
    let file = VPath::new("plays.ron").unwrap();
    Disk::new(fresh.path()).write(&file, plays.as_bytes()).unwrap();
    let after = json(&["--runs", "200"]);
    assert_eq!(after["plays"], 1);
    assert_eq!(after["levels"][0]["puzzles"][0]["estimate"]["source"]["plays"], 1);
    assert!(after["levels"][0]["mean"].as_f64() > level["mean"].as_f64());
    let (code, _, err) = inklatch(&["rehearse", place, "--runs", "0"]);
    assert!(code == FAILED && err.contains("1 to 100000"), "{err}");
    Disk::new(fresh.path()).write(&file, b"(format: 9)").unwrap();
    let (code, _, err) = inklatch(&["rehearse", place]);
    assert!(code == FAILED && err.contains("plays.ron") && err.contains("format 9"), "{err}");
}
