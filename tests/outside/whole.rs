//! Bookmarks, standards and descriptions of every PDF, and the document of everything: as qpdf, poppler and Ghostscript
//! read them.

use std::path::Path;

use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::LockKind;
use serde_json::Value;

use super::{DEMO, pdfs, tool, words};

/// A bookmark: its depth, its words, the page that it leads to.
struct Mark {
    depth: usize,
    title: String,
    page: u64,
}

fn bookmarks(pdf: &Path) -> Option<Vec<Mark>> {
    fn gather(list: &Value, depth: usize, found: &mut Vec<Mark>) {
        for item in list.as_array().unwrap() {
            let title = item["title"].as_str().unwrap().to_owned();
            found.push(Mark { depth, title, page: item["destpageposfrom1"].as_u64().unwrap() });
            gather(&item["kids"], depth + 1, found);
        }
    }
    let json = tool("qpdf", &["--json", "--json-key=outlines", pdf.to_str()?])?;
    let json: Value = serde_json::from_str(&json).unwrap();
    let mut found = Vec::new();
    gather(&json["outlines"], 0, &mut found);
    Some(found)
}

/// The words of a page, counted from 1.
fn page_words(pdf: &Path, page: u64) -> Option<String> {
    let page = page.to_string();
    let text = tool("pdftotext", &["-raw", "-f", &page, "-l", &page, pdf.to_str()?, "-"])?;
    Some(words(&text).join(" "))
}

#[test]
fn every_pdf_has_bookmarks_that_lead_to_their_words() {
    for (entry, path) in pdfs() {
        let Some(marks) = bookmarks(&path) else { return };
        assert!(marks.iter().any(|mark| mark.depth == 0) && marks.len() > 1, "{} has no bookmarks", entry.path);
        for mark in &marks {
            let Some(text) = page_words(&path, mark.page) else { return };
            // The letter, the divisions of the sheets and the guide as a whole are named by their bookmarks alone.
            let named = ["Letter", "Pieces for the room", "Hint tokens", "The host’s own sheets", "Host guide"];
            let wanted = words(&mark.title).join(" ");
            assert!(
                named.contains(&mark.title.as_str()) || text.contains(&wanted),
                "{}: page {} does not say \"{}\"",
                entry.path,
                mark.page,
                mark.title
            );
        }
        let codes = DEMO
            .opened
            .kit
            .puzzles
            .iter()
            .filter(|puzzle| DEMO.opened.kit.lock(&puzzle.opens).is_some_and(|lock| lock.kind != LockKind::Key));
        for code in codes {
            let told = marks.iter().find(|mark| words(&mark.title).contains(&code.answer.to_lowercase()));
            assert!(told.is_none(), "{}: a bookmark tells {}", entry.path, code.answer);
        }
    }
}

#[test]
fn everything_in_one_has_the_guests_pages_first() {
    let whole: Vec<_> = pdfs().filter(|(entry, _)| entry.path.contains("everything")).collect();
    assert_eq!(whole.len(), 2, "one for each paper");
    for (entry, path) in whole {
        assert_eq!(entry.audience, "host", "guests are never given it");
        let Some(marks) = bookmarks(&path) else { return };
        let parts: Vec<&str> = marks.iter().filter(|mark| mark.depth == 0).map(|mark| mark.title.as_str()).collect();
        let wanted = ["Pieces for the room", "For the host only", "Hint tokens", "The host’s own sheets", "Host guide"];
        assert_eq!(parts, wanted, "{}", entry.path);
        let page_of = |title: &str| marks.iter().find(|mark| mark.title == title).unwrap().page;
        let divider = page_of("For the host only");
        // The same pages as the guests' own file, then the divider, then the rest.
        let own = pdfs().find(|(other, _)| other.audience == "players" && other.paper == entry.paper).unwrap();
        assert_eq!(divider, own.0.pages.unwrap() as u64 + 1);
        for page in 1..divider {
            assert_eq!(page_words(&path, page), page_words(&own.1, page), "page {page}");
        }
        let Some(text) = page_words(&path, divider) else { return };
        assert!(text.contains("guests stop here"), "{text}");
        assert!(page_of("Hint tokens") > divider && page_of("Host guide") > page_of("The host’s own sheets"));
        // The guide counts its own pages, as its own file does.
        let guide = page_of("Host guide");
        let Some(text) = page_words(&path, guide) else { return };
        let alone = pdfs().find(|(other, _)| other.path.contains("-guide-") && other.paper == entry.paper).unwrap();
        assert!(text.contains(&format!("page 1 of {}", alone.0.pages.unwrap())), "{text}");
    }
}

/// PDF/UA-1 (ISO 14289-1) and PDF/A-2a (ISO 19005-2) are held to by the engine, which refuses to write otherwise; here a
/// reader finds the file saying so, tagged, and its pictures described.
#[test]
fn every_pdf_says_which_standards_it_keeps() {
    for (entry, path) in pdfs() {
        let Some(meta) = tool("pdfinfo", &["-meta", path.to_str().unwrap()]) else { return };
        for part in ["pdfuaid:part>1<", "pdfaid:part>2<", "pdfaid:conformance>A<"] {
            assert!(meta.contains(part), "{}: no {part} in {meta}", entry.path);
        }
        let Some(structure) = tool("pdfinfo", &["-struct", path.to_str().unwrap()]) else { return };
        assert!(structure.contains("Document"), "{}: {structure}", entry.path);
    }
}

#[test]
fn pictures_are_described() {
    for (entry, path) in pdfs().filter(|(entry, _)| entry.audience != "host" || entry.path.contains("guide")) {
        let file = path.to_str().unwrap();
        let Some(json) = tool("qpdf", &["--json", "--json-key=qpdf", file]) else { return };
        let json: Value = serde_json::from_str(&json).unwrap();
        let objects = json["qpdf"][1].as_object().unwrap();
        let figures: Vec<&Value> =
            objects.values().map(|object| &object["value"]).filter(|value| value["/S"] == "/Figure").collect();
        assert!(!figures.is_empty(), "{} has no pictures", entry.path);
        for figure in figures {
            let words = figure["/Alt"].as_str().unwrap_or_default().trim_start_matches("u:");
            assert!(words.len() > 2, "{}: a picture is described as \"{words}\"", entry.path);
        }
    }
}

/// A second reader, by other people than poppler's and qpdf's, draws every page and has nothing to complain of.
#[test]
fn ghostscript_draws_every_page() {
    for (entry, path) in pdfs() {
        let args = ["-q", "-dBATCH", "-dNOPAUSE", "-dPDFSTOPONERROR", "-sDEVICE=bbox", path.to_str().unwrap()];
        let output = match std::process::Command::new("gs").args(args).output() {
            Ok(output) => output,
            Err(error) if std::env::var_os("CI").is_some() => panic!("gs is needed here: {error}"),
            Err(_) => return println!("left out: gs is missing"),
        };
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success() && !told.contains("Error"), "{}: {told}", entry.path);
        assert_eq!(told.matches("%%BoundingBox").count(), entry.pages.unwrap(), "{}", entry.path);
    }
}

/// A host reads the guide at arm's length: nothing in it is set smaller than 12 pt, the drawn flow and the foot included.
/// The sizes are those that Ghostscript finds in the pages.
#[test]
fn no_word_of_the_guide_is_smaller_than_twelve_points() {
    let folder = tempfile::tempdir().unwrap();
    for (entry, path) in pdfs().filter(|(entry, _)| entry.path.contains("-guide-") || entry.audience == "listing") {
        let out = folder.path().join("text.xml");
        let to = format!("-sOutputFile={}", out.display());
        let args = ["-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=txtwrite", "-dTextFormat=0", &to, path.to_str().unwrap()];
        if tool("gs", &args).is_none() {
            return;
        }
        let bytes = Disk::new(folder.path()).read(&VPath::new("text.xml").unwrap(), 1 << 30).unwrap();
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let sizes: Vec<f64> =
            text.split("size=\"").skip(1).filter_map(|rest| rest.split('"').next()?.parse::<f64>().ok()).collect();
        let least = sizes.iter().copied().fold(f64::MAX, f64::min);
        assert!(sizes.len() > 100 && least >= 11.99, "{}: {least} pt among {} stretches", entry.path, sizes.len());
    }
}
