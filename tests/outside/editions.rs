//! Large print, as a reader of PDF that we did not write sees it.

use inklatch::bundle::{self, Go, Options};
use inklatch::diag::Level;
use inklatch::sheet::Paper;
use inklatch::theme::Edition;

use super::tool;

/// Sizes of type come as whole numbers of pixels, one and a half to the point: 16 points are 24 (pdftohtml, poppler).
#[test]
fn no_page_of_the_large_print_edition_has_smaller_type() {
    let kept = tempfile::tempdir().unwrap();
    let options = Options {
        papers: vec![Paper::Letter],
        levels: vec![Level::Gentle],
        editions: vec![Edition::LargePrint],
        out: kept.path().to_owned(),
        ..Options::default()
    };
    let opened = bundle::open(None).unwrap();
    let exported = bundle::export(&opened, &options, &|_| Go::On).unwrap();
    let mut seen = 0;
    for file in exported.files.iter().filter(|file| file.path.ends_with(".pdf") && file.edition.is_some()) {
        let path = exported.folder.join(&file.path);
        let Some(text) = tool("pdftohtml", &["-xml", "-i", "-stdout", path.to_str().unwrap()]) else { return };
        for font in text.lines().filter(|line| line.contains("<fontspec")) {
            let size = font.split("size=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
            let size: i32 = size.parse().unwrap();
            assert!(size >= 24, "{}: {font}", file.path);
            seen += 1;
        }
    }
    assert!(seen > 10, "only {seen} sizes were seen");
}

#[test]
fn every_page_says_what_it_is_and_how_to_print_it() {
    // What publishes the kit is not printed with it, and the whole in one file is these files again.
    let printed = |entry: &bundle::Entry| entry.edition.is_some() && !entry.path.contains("-everything-");
    for (entry, path) in super::pdfs().filter(|(entry, _)| printed(entry)) {
        let Some(text) = tool("pdftotext", &["-layout", path.to_str().unwrap(), "-"]) else { return };
        let pages: Vec<&str> = text.trim_end_matches('\u{c}').split('\u{c}').collect();
        assert_eq!(pages.len(), entry.pages.unwrap(), "{}", entry.path);
        for (at, page) in pages.iter().enumerate() {
            let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
            let name = format!("{} page {}", entry.path, at + 1);
            let says = |any: &[&str]| any.iter().any(|part| words.contains(part));
            assert!(says(&["print at 100 %"]), "{name}: {words}");
            assert!(says(&["for the guests", "for the host", "not for guests"]), "{name}: {words}");
            assert!(says(&["g/m²", "paper as the guide says"]), "{name}: {words}");
            assert!(
                says(&[
                    &format!("sheet {} of {}", at + 1, pages.len()),
                    &format!("Page {} of {}", at + 1, pages.len())
                ]),
                "{name}: {words}"
            );
        }
    }
}
