//! Tests of `bundle`.

mod listing;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use inklatch::bundle::{self, Exported, Go, Manifest, Opened, Options};
use inklatch::diag::{Level, Severity};
use inklatch::files::{Builtin, Disk, Files, Memory, VPath};
use inklatch::kit::LockKind;
use inklatch::kit::file::{read_kit, write_kit};
use inklatch::sheet::Paper;
use sha2::{Digest as _, Sha256};

/// The demo kit at `standard` on both papers, exported once for all tests that read it.
pub struct Demo {
    /// The kit.
    pub opened: Opened,
    /// What was exported.
    pub exported: Exported,
    _kept: tempfile::TempDir,
}

/// See [`Demo`].
pub static DEMO: LazyLock<Demo> = LazyLock::new(|| {
    let opened = bundle::open(None).unwrap();
    let kept = tempfile::tempdir().unwrap();
    let options = Options { zip: true, one_pdf: true, ..standard(kept.path()) };
    let exported = bundle::export(&opened, &options, &|_| Go::On).unwrap();
    Demo { opened, exported, _kept: kept }
});

fn standard(out: &Path) -> Options {
    Options { levels: vec![Level::Standard], listing: true, out: out.to_owned(), ..Options::default() }
}

fn path(text: &str) -> VPath {
    VPath::new(text).unwrap()
}

/// Every file below a folder with its bytes.
fn read_all(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let disk = Disk::new(folder);
    let files = disk.list(&VPath::root()).unwrap();
    files.iter().map(|file| (file.to_string(), disk.read(file, u64::MAX - 1).unwrap())).collect()
}

/// The fresh kit, changed, as an opened kit in memory.
fn opened(change: impl FnOnce(&mut inklatch::kit::Kit)) -> Opened {
    let mut kit = read_kit(&bundle::scaffold("A Fresh Kit").unwrap(), "kit.ron").unwrap();
    change(&mut kit);
    let files = Memory::with([(path("kit.ron"), write_kit(&kit).unwrap().into_bytes())]);
    bundle::open_in(Arc::new(files), path("kit.ron")).unwrap()
}

#[test]
fn the_manifest_accounts_for_every_file() {
    let folder = &DEMO.exported.folder;
    let mut files = read_all(folder);
    let manifest = Manifest::parse(std::str::from_utf8(&files.remove("manifest.json").unwrap()).unwrap()).unwrap();
    assert!(files.remove(manifest.zip.as_deref().unwrap()).is_some());
    let listed: Vec<&String> = manifest.files.iter().map(|entry| &entry.path).collect();
    assert_eq!(listed, files.keys().collect::<Vec<_>>());
    for entry in &manifest.files {
        let bytes = &files[&entry.path];
        assert_eq!(entry.bytes, bytes.len() as u64, "{}", entry.path);
        let sum: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
        assert_eq!(entry.sha256, sum, "{}", entry.path);
        assert!(entry.path.starts_with("pieces/") || entry.path.starts_with(&entry.audience), "{}", entry.path);
        if entry.path.ends_with(".pdf") {
            // What the kit is sold by belongs to no level.
            let level = (entry.audience != "listing").then_some(Level::Standard);
            assert!(entry.pages.unwrap() > 0 && entry.paper.is_some() && entry.level == level);
        }
    }
    for (folder, least) in [("players/", 2), ("hints/", 2), ("host/", 2), ("pieces/", 20), ("listing/", 5)] {
        let count = listed.iter().filter(|path| path.starts_with(folder)).count();
        assert!(count >= least, "{folder} has {count} files");
    }
}

#[test]
fn the_same_kit_gives_the_same_bytes() {
    let again = tempfile::tempdir().unwrap();
    let options = Options { zip: true, one_pdf: true, ..standard(again.path()) };
    let exported = bundle::export(&DEMO.opened, &options, &|_| Go::On).unwrap();
    let (first, second) = (read_all(&DEMO.exported.folder), read_all(&exported.folder));
    assert_eq!(first.keys().collect::<Vec<_>>(), second.keys().collect::<Vec<_>>());
    for (name, bytes) in &first {
        assert!(*bytes == second[name], "{name} differs");
    }
}

#[test]
fn no_name_tells_an_answer() {
    let kit = &DEMO.opened.kit;
    for puzzle in &kit.puzzles {
        if kit.lock(&puzzle.opens).is_some_and(|lock| lock.kind == LockKind::Key) {
            continue;
        }
        let answer = puzzle.answer.to_lowercase();
        for file in &DEMO.exported.files {
            assert!(!file.path.replace('-', "").contains(&answer), "{} holds {answer}", file.path);
        }
    }
}

#[test]
fn a_piece_named_by_its_answer_gets_a_number() {
    let kit = opened(|kit| {
        kit.puzzles[0].id = inklatch::ids::PuzzleId::new("lamp-5-8-2").unwrap();
    });
    let out = tempfile::tempdir().unwrap();
    let options = Options { papers: vec![Paper::A4], ..standard(out.path()) };
    let exported = bundle::export(&kit, &options, &|_| Go::On).unwrap();
    assert!(exported.files.iter().all(|file| !file.path.contains("5-8-2")));
    assert!(exported.files.iter().any(|file| file.path.starts_with("pieces/piece-")));
}

#[test]
fn an_export_that_is_stopped_leaves_nothing() {
    let out = tempfile::tempdir().unwrap();
    let kit = opened(|_| {});
    for most in [0, 3, 12] {
        let options = Options { one_pdf: true, zip: true, ..standard(out.path()) };
        let stopped = bundle::export(&kit, &options, &|step| if step.done > most { Go::Stop } else { Go::On });
        assert!(stopped.unwrap_err().message.contains("stopped"));
        assert!(read_all(out.path()).is_empty());
        assert_eq!(out.path().read_dir().unwrap().count(), 0);
    }
}

#[test]
fn an_older_bundle_is_replaced_and_stands_until_then() {
    let out = tempfile::tempdir().unwrap();
    let first = opened(|_| {});
    let options = Options { papers: vec![Paper::A4], ..standard(out.path()) };
    let exported = bundle::export(&first, &options, &|_| Go::On).unwrap();
    let old = read_all(&exported.folder);

    bundle::export(&first, &options, &|_| Go::Stop).unwrap_err();
    assert_eq!(read_all(&exported.folder), old);

    let second = opened(|kit| kit.title = "Another Title".into());
    bundle::export(&second, &options, &|_| Go::On).unwrap();
    assert_ne!(read_all(&exported.folder), old);
    assert_eq!(out.path().read_dir().unwrap().count(), 1, "nothing stands beside the bundle");
}

#[test]
fn what_is_not_ours_is_never_replaced() {
    let kit = opened(|_| {});
    for (name, why) in [("notes.txt", "no bundle"), ("players/mine.pdf", "not of the bundle")] {
        let out = tempfile::tempdir().unwrap();
        let place = Disk::new(out.path().join(kit.kit.id.as_str()));
        if why == "not of the bundle" {
            let options = Options { papers: vec![Paper::A4], ..standard(out.path()) };
            bundle::export(&kit, &options, &|_| Go::On).unwrap();
        }
        place.write(&path(name), b"mine").unwrap();
        let before = read_all(out.path());
        let refused = bundle::export(&kit, &standard(out.path()), &|_| Go::On).unwrap_err();
        assert!(refused.message.contains(why), "{refused}");
        assert_eq!(read_all(out.path()), before);
    }
}

#[test]
fn what_blocks_is_exported_by_force_only_and_says_so() {
    let broken = || opened(|kit| kit.puzzles[0].answer = "58".into());
    let out = tempfile::tempdir().unwrap();
    let options = Options { papers: vec![Paper::A4], ..standard(out.path()) };
    let refused = bundle::export(&broken(), &options, &|_| Go::On).unwrap_err();
    assert!(refused.message.contains("block"), "{refused}");
    assert!(read_all(out.path()).is_empty());

    let forced = bundle::export(&broken(), &Options { force: true, ..options }, &|_| Go::On).unwrap();
    assert!(forced.forced && forced.findings.iter().any(|finding| finding.severity == Severity::Blocks));
    let manifest = read_all(&forced.folder).remove("manifest.json").unwrap();
    let manifest = Manifest::parse(std::str::from_utf8(&manifest).unwrap()).unwrap();
    assert!(manifest.forced && !manifest.blocking.is_empty());
}

#[test]
fn the_fresh_kit_is_sound_under_any_title() {
    for title in ["A Fresh Kit", "7 \"bells\" \\ & more", "Ärger im Turm", "{{ x }}"] {
        let text = bundle::scaffold(title).unwrap();
        assert_eq!(read_kit(&text, "kit.ron").unwrap().title, title);
    }
    let fresh = opened(|_| {});
    let press = bundle::press_of(&fresh).unwrap();
    let proof = bundle::prove(&fresh, &press, &Level::ALL).unwrap();
    let bad: Vec<String> = proof
        .findings
        .iter()
        .filter(|finding| finding.severity != Severity::Notes)
        .map(|finding| format!("{}: {}", finding.name, finding.message))
        .collect();
    assert!(bad.is_empty(), "{bad:#?}");
}

#[test]
fn a_kit_brings_its_own_theme() {
    let builtin = Builtin::below(path("themes/midwinter"));
    let mut files: Vec<(VPath, Vec<u8>)> = builtin
        .list(&VPath::root())
        .unwrap()
        .into_iter()
        .map(|file| (path("themes/midwinter").join(file.as_str()).unwrap(), builtin.read(&file, 1 << 24).unwrap()))
        .collect();
    for (file, bytes) in &mut files {
        if file.file_name() == "theme.ron" {
            let text = String::from_utf8(bytes.clone()).unwrap();
            *bytes = text.replacen("name: \"Midwinter\"", "name: \"My Own\"", 1).into_bytes();
        }
    }
    files.push((path("kit.ron"), bundle::scaffold("X").unwrap().into_bytes()));
    let kit = bundle::open_in(Arc::new(Memory::with(files)), path("kit.ron")).unwrap();
    assert_eq!(kit.theme.theme.name, "My Own");
}

#[test]
fn a_missing_theme_is_told_with_the_nearest_name() {
    let text = bundle::scaffold("X").unwrap().replacen("theme: \"midwinter\"", "theme: \"midwintre\"", 1);
    let files = Memory::with([(path("kit.ron"), text.into_bytes())]);
    let trouble = bundle::open_in(Arc::new(files), path("kit.ron")).err().unwrap();
    assert!(trouble.hints.iter().any(|hint| hint.contains("`midwinter`")), "{trouble}");
}

#[test]
fn a_file_in_the_way_is_told() {
    let out = tempfile::tempdir().unwrap();
    let file: PathBuf = out.path().join("file");
    Disk::new(out.path()).write(&path("file"), b"x").unwrap();
    let kit = opened(|_| {});
    assert!(bundle::export(&kit, &standard(&file), &|_| Go::On).is_err());
    assert!(file.is_file());
}

#[test]
fn a_picture_that_not_every_level_has_is_named_after_its_level() {
    let kit = opened(|kit| {
        let puzzle = &mut kit.puzzles[0];
        let change = |mechanic: &str| inklatch::kit::LevelChange {
            setup: Some(inklatch::kit::RawSetup::new(mechanic).unwrap()),
            ..inklatch::kit::LevelChange::default()
        };
        puzzle.mechanic = "cut-strips".into();
        puzzle.setup = inklatch::kit::RawSetup::new("(work: Fair)").unwrap();
        puzzle.gentle = Some(change("(work: Light)"));
        puzzle.stiff = Some(change("(work: Deep)"));
    });
    let out = tempfile::tempdir().unwrap();
    let options = Options {
        papers: vec![Paper::A4],
        levels: Level::ALL.to_vec(),
        force: true,
        listing: false,
        ..standard(out.path())
    };
    let exported = bundle::export(&kit, &options, &|_| Go::On).unwrap();
    let strips: Vec<&str> =
        exported.files.iter().map(|file| file.path.as_str()).filter(|path| path.contains("-strips-")).collect();
    let ends = |level: &str| strips.iter().filter(|path| path.ends_with(&format!("-{level}.png"))).count();
    assert!(ends("stiff") > ends("gentle") && ends("gentle") > 0, "{strips:?}");
    assert_eq!(strips.len(), 2 * Level::ALL.iter().map(|level| ends(level.word())).sum::<usize>(), "{strips:?}");
}
