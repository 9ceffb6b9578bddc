//! Reading order, page by page: what poppler finds in a PDF, in the order in which it is written there (that of its tags,
//! which a reader aloud follows), against the order in which a person reads the page.

use std::path::Path;

use inklatch::bundle;
use inklatch::diag::{Level, Step};
use inklatch::face::{Audience, Face, Role, TextRun};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::Kit;
use inklatch::party::{Kept, Party};
use inklatch::print::DocInfo;
use inklatch::sheet::{Paper, Sheet, impose};
use inklatch::theme::{Edition, Loaded};

use super::{DEMO, all_sheets, pdfs, tool};
use crate::editions::{Dressed, demo, dressed};

/// Letters and digits alone, in lower case: poppler parts words where letters stand wide.
fn bare(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// The bare text of each page, as it is written.
fn pages(pdf: &Path) -> Option<Vec<String>> {
    let text = tool("pdftotext", &["-raw", pdf.to_str().unwrap(), "-"])?;
    let mut pages: Vec<String> = text.split('\u{c}').map(bare).collect();
    // Each page ends with a form feed.
    pages.pop();
    Some(pages)
}

/// Holds that `texts` stand on the page one after another.
fn follow<'a>(page: &str, texts: impl IntoIterator<Item = (&'a str, String)>, place: &str) {
    let mut rest = page;
    for (what, text) in texts {
        let text = bare(&text);
        match rest.find(&text) {
            Some(at) => rest = &rest[at + text.len()..],
            None => panic!("{place}: {what} \"{text}\" does not follow in {rest:?} of {page:?}"),
        }
    }
}

/// What a person reads on a sheet: its head, then piece by piece what is on it and its label.
fn read(sheet: &Sheet) -> Vec<(&'static str, String)> {
    let mut texts = vec![("the head", sheet.heading.clone())];
    for placed in &sheet.placed {
        texts.extend(placed.face.runs().map(|run| ("the text", run.text.text())));
        if placed.label_rect.w.get() > 0.0 {
            texts.push(("the label", placed.label.clone()));
        }
    }
    texts
}

#[test]
fn sheets_are_read_from_head_to_foot() {
    let party = Party::new(&DEMO.opened.kit, &DEMO.opened.theme, Level::Standard).unwrap();
    let mut seen = 0;
    for (audience, folder) in [(Audience::Players, "players"), (Audience::Hints, "hints")] {
        for paper in Paper::ALL {
            let (_, pdf) = pdfs().find(|(entry, _)| entry.audience == folder && entry.paper == Some(paper)).unwrap();
            let Some(pages) = pages(&pdf) else { return };
            let sheets = all_sheets(&party, paper, audience);
            assert_eq!(sheets.len(), pages.len());
            for (number, (sheet, page)) in sheets.iter().zip(&pages).enumerate() {
                let place = format!("{folder}, {}, page {}", paper.word(), number + 1);
                let texts = read(sheet);
                assert!(page.starts_with(&bare(&texts[0].1)), "{place}: the head is not first: {page}");
                follow(page, texts, &place);
                seen += 1;
            }
        }
    }
    assert!(seen > 20, "only {seen} pages were read");
}

#[test]
fn sheets_of_both_kits_in_every_edition_and_at_every_level_are_read_from_head_to_foot() {
    let folder = tempfile::tempdir().unwrap();
    let mut papers = Paper::ALL.into_iter().cycle();
    let mut seen = 0;
    for Dressed { kit, theme, press } in dressed() {
        if demo(kit.id.as_str()).kit.theme != theme.theme.id {
            continue;
        }
        for (edition, level) in Edition::ALL.into_iter().flat_map(|edition| Level::ALL.map(|level| (edition, level))) {
            let mut party = Party::in_edition(&kit, &theme, level, edition, &mut Kept::default()).unwrap();
            // Each paper in turn; the usual edition at one level stands on both in the test above.
            let paper = papers.next().unwrap();
            let mut pieces = if edition == Edition::LargePrint {
                party.enlarge(&|face| press.fits(face)).unwrap();
                party.letters(&theme, paper.page_size(true), &|face| press.fits(face)).unwrap()
            } else {
                vec![party.letter(&theme, paper.safe_size()).unwrap()]
            };
            pieces.extend(party.pieces.iter().cloned());
            let place = format!("{}, {}, {}, {}", kit.id, edition.word(), level.word(), paper.word());
            for audience in [Audience::Players, Audience::Hints, Audience::Host] {
                let sheets = impose(&pieces, paper, audience, &party.script.title).unwrap();
                if sheets.is_empty() {
                    continue;
                }
                let doc = press.sheets(&sheets, &DocInfo { title: "Kit".into(), ..DocInfo::default() }).unwrap();
                let pdf = VPath::new("sheets.pdf").unwrap();
                Disk::new(folder.path()).write(&pdf, &doc.pdf().unwrap()).unwrap();
                let Some(pages) = pages(&folder.path().join("sheets.pdf")) else { return };
                assert_eq!(sheets.len(), pages.len(), "{place}");
                for (sheet, page) in sheets.iter().zip(&pages) {
                    follow(page, read(sheet), &place);
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 200, "only {seen} pages were read");
}

/// Titles that come after a text which stands below them.
fn late_titles(face: &Face) -> Vec<String> {
    let runs: Vec<&TextRun> = face.runs().filter(|run| run.turn == 0.0).collect();
    let mut found = Vec::new();
    for (at, first) in runs.iter().enumerate() {
        for title in runs[at + 1..].iter().filter(|run| run.role == Role::Display && first.role != Role::Display) {
            let beside = title.rect.right() <= first.rect.x || first.rect.right() <= title.rect.x;
            if title.rect.bottom() <= first.rect.y && !beside {
                found.push(format!("\"{}\" before \"{}\"", first.text.text(), title.text.text()));
            }
        }
    }
    found
}

#[test]
fn a_title_comes_before_what_stands_below_it() {
    for name in bundle::DEMO_KITS {
        let opened = bundle::open_demo(name).unwrap();
        let (kit, theme): (&Kit, &Loaded) = (&opened.kit, &opened.theme);
        for level in Level::ALL {
            let party = Party::new(kit, theme, level).unwrap();
            let letter = party.letter(theme, Paper::A4.safe_size()).unwrap();
            for piece in party.pieces.iter().chain([&letter]) {
                for face in [Some(&piece.front), piece.back.as_ref()].into_iter().flatten() {
                    assert_eq!(late_titles(face), Vec::<String>::new(), "{name}, {}: {}", level.word(), piece.id);
                }
            }
        }
    }
}

#[test]
fn the_guide_is_read_from_head_to_foot() {
    let opened = &DEMO.opened;
    let party = Party::new(&opened.kit, &opened.theme, Level::Standard).unwrap();
    let mut seen = 0;
    for (_, pdf) in pdfs().filter(|(entry, _)| entry.path.contains("-guide-")) {
        let Some(pages) = pages(&pdf) else { return };
        let place = pdf.display().to_string();
        let of = pages.len();
        for (number, page) in pages.iter().enumerate() {
            let foot = bare(&format!("Page {} of {of}", number + 1));
            assert!(page.ends_with(&foot), "{place}: the foot is not last: {page}");
            seen += 1;
        }
        let first = [("the title", party.script.title.clone()), ("the kind", "Host guide".to_owned())];
        assert!(pages[0].starts_with(&bare(&first[0].1)));
        let facts = ["Guests", "Ages", "Play", "Prepare", "What to print", "In this guide"];
        follow(&pages[0], first.into_iter().chain(facts.map(|fact| ("the fact", fact.to_owned()))), &place);
        let whole = pages[1..].concat();
        let sections = [
            "If you have only one minute",
            "What you need",
            "Getting ready",
            "The locks",
            "Setting up",
            "What to say at the start",
            "How the evening runs",
            "The hint tokens",
            "The answers, and why",
            "For the next group",
            "When it is over",
            "Take care",
        ];
        follow(&whole, sections.map(|section| ("the section", section.to_owned())), &place);
        // Each row of the table of tokens, cell by cell; each answer, then its way.
        let tokens = whole.rfind(&bare("The hint tokens")).unwrap();
        for laid in &party.puzzles {
            let title = party.script.puzzle(&laid.id).unwrap().title.clone();
            let steps = Step::ALL.map(|step| ("the hint", laid.hints.step(step).to_owned()));
            follow(&whole[tokens..], [("the title", title.clone())].into_iter().chain(steps), &place);
            let answers = whole.rfind(&bare("The answers, and why")).unwrap();
            let reason = laid.reason.chars().take(24).collect::<String>();
            let row = [("the title", title), ("the answer", laid.answer.clone()), ("the reason", reason)];
            follow(&whole[answers..], row, &place);
        }
    }
    assert!(seen > 20, "only {seen} pages were read");
}
