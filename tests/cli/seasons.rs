//! Themes and another season by command.

use inklatch::bundle;
use inklatch::files::{Disk, Files as _, VPath};

use super::inklatch;

#[test]
fn themes_are_listed_and_looked_through() {
    let (code, out, _) = inklatch(&["themes", "--json"]);
    let report: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!((code, report["format"].as_u64()), (0, Some(1)));
    let ids: Vec<&str> = report["themes"].as_array().unwrap().iter().filter_map(|theme| theme["id"].as_str()).collect();
    for id in ["harbour", "hive", "midwinter", "orchard", "plain"] {
        assert!(ids.contains(&id), "{ids:?}");
    }
    let folder = tempfile::tempdir().unwrap();
    let disk = Disk::new(folder.path());
    let path = |text: &str| VPath::new(text).unwrap();
    let bare = "(format: 1, id: \"bare\", name: \"Bare\", credit: \"\", palette: {}, lettering: {\"text\": \"Alegreya\"}, frames: {}, symbols: {})";
    disk.write(&path("kit.ron"), bundle::scaffold("A Kit").unwrap().as_bytes()).unwrap();
    disk.write(&path("themes/bare/theme.ron"), bare.as_bytes()).unwrap();
    let place = folder.path().to_str().unwrap();
    let (code, out, _) = inklatch(&["themes", place]);
    assert_eq!(code, 1);
    assert!(out.starts_with("bare    Bare (the kit's own)"), "{out}");
    for line in ["the frame `portrait` is missing", "licence-missing", "the theme has 0 symbols"] {
        assert!(out.contains(line), "{line}: {out}");
    }
    let (code, out, _) = inklatch(&["themes", folder.path().join("themes/bare").to_str().unwrap()]);
    assert_eq!(code, 1);
    assert!(!out.contains("midwinter"), "{out}");
}

#[test]
fn a_kit_is_put_into_another_theme_in_a_folder_of_its_own() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("summer");
    let place = place.to_str().unwrap();
    let (code, out, err) = inklatch(&["redress", "--theme", "harbour", "--out", place]);
    assert_eq!(code, 0, "{out}{err}");
    for line in [
        "goes from Midwinter to Harbour",
        "symbol owl -> gull",
        "colour gold -> yellow",
        "each with one reading",
        "leftover-word",
    ] {
        assert!(out.contains(line), "{line}: {out}");
    }
    let disk = Disk::new(place);
    let png = disk.read(&VPath::new("side-by-side/01.png").unwrap(), 32 << 20).unwrap();
    assert!(png.starts_with(b"\x89PNG"));
    let kit = bundle::open(Some(std::path::Path::new(place))).unwrap().kit;
    let old = bundle::open(None).unwrap().kit;
    assert_eq!(kit.theme.as_str(), "harbour");
    assert!(kit.puzzles.iter().zip(&old.puzzles).any(|(new, old)| new.answer != old.answer), "no code is new");
    // A folder with something in it is left alone.
    let (code, _, err) = inklatch(&["redress", "--theme", "hive", "--out", place]);
    assert_eq!(code, 2);
    assert!(err.contains("the folder is not empty"), "{err}");
    let (code, _, err) = inklatch(&["redress", "--theme", "harbor", "--out", place]);
    assert!(code == 2 && err.contains("did you mean `harbour`?"), "{err}");
    let other = folder.path().join("mended");
    let (_, out, _) =
        inklatch(&["redress", "--theme", "plain", "--keep-codes", "--mend", "--out", other.to_str().unwrap()]);
    let kit = bundle::open(Some(&other)).unwrap().kit;
    assert!(kit.puzzles.iter().zip(&old.puzzles).all(|(new, old)| new.answer == old.answer), "{out}");
    assert!(out.contains("read them before you print") && out.contains("the padlock with the hourglass"), "{out}");
    let (code, _, err) = inklatch(&["redress", "--theme", "hive", "--symbol", "owl", "--out", "nowhere"]);
    assert!(code == 2 && err.contains("--symbol crab=moon"), "{err}");
}

#[test]
fn frames_are_explained_with_their_slots_and_pieces() {
    let (code, out, err) = inklatch(&["explain", "frames"]);
    assert_eq!(code, 0, "{err}");
    for info in inklatch::theme::FRAMES.iter().chain(inklatch::theme::MORE_FRAMES) {
        let (_, rest) = out.split_once(&format!("\n{:<12} ", info.name)).unwrap_or_else(|| panic!("no {}", info.name));
        let entry = rest.split("\n\n").next().unwrap();
        assert!(info.all_slots().all(|slot| entry.contains(&format!("slot-{slot}"))), "{entry}");
        assert!(entry.contains("worn by "), "{entry}");
    }
    assert!(out.contains("square       80 × 80, a square card"), "{out}");
    assert!(out.contains("all hint tokens") && out.contains("logic-grid"), "{out}");
}

#[test]
fn a_theme_is_written_out_to_begin_from() {
    let folder = tempfile::tempdir().unwrap();
    let disk = Disk::new(folder.path());
    disk.write(&VPath::new("kit.ron").unwrap(), bundle::scaffold("A Kit").unwrap().as_bytes()).unwrap();
    let place = folder.path().join("themes/night-stalls");
    let place = place.to_str().unwrap();
    let (code, out, err) = inklatch(&["new", place, "--theme-from", "harbour"]);
    assert_eq!(code, 0, "{out}{err}");
    assert!(out.contains("inklatch redress KIT --theme night-stalls"), "{out}");
    let (code, out, _) = inklatch(&["themes", place]);
    assert_eq!(code, 0, "{out}");
    assert!(out.starts_with("night-stalls    Night Stalls") && out.contains("0 block, 0 warn"), "{out}");
    let worn = bundle::scaffold("A Kit").unwrap().replace("theme: \"midwinter\"", "theme: \"night-stalls\"");
    disk.write(&VPath::new("kit.ron").unwrap(), worn.as_bytes()).unwrap();
    let opened = bundle::open(Some(folder.path())).unwrap();
    assert_eq!(opened.theme.theme.begun_from.as_ref().unwrap().as_str(), "harbour");
    for (at, from, says) in [
        (place, "harbour", "not empty"),
        ("/nowhere/Night Stalls", "harbour", "night-stalls"),
        ("/nowhere/plain", "harbour", "carries a theme `plain`"),
        ("/nowhere/mine", "harbor", "did you mean `harbour`?"),
    ] {
        let (code, _, err) = inklatch(&["new", at, "--theme-from", from]);
        assert_eq!(code, 2);
        assert!(err.contains(says), "{says}: {err}");
    }
    // From a theme of one's own, by its folder.
    let second = folder.path().join("themes/second");
    let (code, out, err) = inklatch(&["new", second.to_str().unwrap(), "--theme-from", place]);
    assert_eq!(code, 0, "{out}{err}");
}

#[test]
fn a_missing_picture_of_the_kit_is_told_once() {
    let folder = tempfile::tempdir().unwrap();
    let text = bundle::scaffold("A Kit").unwrap();
    let kit = inklatch::kit::file::read_kit(&text, "kit.ron").unwrap();
    let note = kit.notes.first().map(|note| format!("id: \"{}\",", note.id)).unwrap();
    let text = text.replacen(&note, &format!("{note}\n            picture: \"art/gone.png\","), 1);
    Disk::new(folder.path()).write(&VPath::new("kit.ron").unwrap(), text.as_bytes()).unwrap();
    let (code, out, err) = inklatch(&["check", folder.path().to_str().unwrap(), "--level", "standard"]);
    assert_eq!(code, 1, "{out}{err}");
    assert_eq!(out.matches("blocks[").count(), 1, "{out}");
    assert!(out.contains("the picture art/gone.png cannot be used: cannot read the file"), "{out}");
    assert!(!out.contains(folder.path().to_str().unwrap()), "a path of this machine is told: {out}");
}
