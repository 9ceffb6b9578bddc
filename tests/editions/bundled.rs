//! Editions in a bundle: files, manifest, titles.

use inklatch::bundle::{self, Go, Manifest, Options};
use inklatch::diag::Level;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::sheet::Paper;
use inklatch::theme::Edition;

#[test]
fn each_edition_has_files_of_its_own_and_the_manifest_says_which() {
    let opened = bundle::open(None).unwrap();
    let kept = tempfile::tempdir().unwrap();
    let options = Options {
        papers: vec![Paper::A4],
        levels: vec![Level::Gentle],
        editions: Edition::ALL.to_vec(),
        out: kept.path().to_owned(),
        ..Options::default()
    };
    let exported = bundle::export(&opened, &options, &|_| Go::On).unwrap();
    let text = Disk::new(&exported.folder).read_text(&VPath::new("manifest.json").unwrap(), 1 << 20).unwrap();
    let manifest = Manifest::parse(&text).unwrap();
    let of = |edition: Edition| -> Vec<String> {
        let own = |file: &&bundle::Entry| file.edition == Some(edition) && file.path.ends_with(".pdf");
        manifest.files.iter().filter(own).map(|file| file.path.clone()).collect()
    };
    let usual = of(Edition::Colour);
    assert_eq!(usual.len(), 4, "{usual:?}");
    for edition in Edition::ALL.into_iter().filter(|edition| *edition != Edition::Colour) {
        let mut named: Vec<String> =
            usual.iter().map(|path| path.replace("-gentle-", &format!("-{}-gentle-", edition.word()))).collect();
        named.sort();
        assert_eq!(of(edition), named);
    }
    // Pictures of pieces are made once.
    assert!(manifest.files.iter().filter(|file| file.path.starts_with("pieces/")).all(|file| {
        file.edition == Some(Edition::Colour) && !file.path.contains("low-ink") && file.audience == "players"
    }));
}
