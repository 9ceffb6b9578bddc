//! Checks by programs that were not written here: readers of PDF, fonts, zip.
//!
//! Where CI is set a missing program fails its test; elsewhere the test says what is missing and is left out.

use std::path::{Path, PathBuf};
use std::process::Command;

use inklatch::bundle::Entry;
use inklatch::face::{Audience, Outline, Piece};
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::LockKind;
use inklatch::party::Party;
use inklatch::sheet::{Paper, Placed, Sheet, impose};
use inklatch::units::MM_PER_INCH;

use crate::bundle::DEMO;

mod editions;
mod faces;
mod order;
mod props;
mod reading;
mod reread;
mod whole;

/// Output of a program; none when it is not there and CI is not set.
fn tool(name: &str, args: &[&str]) -> Option<String> {
    match Command::new(name).args(args).output() {
        Ok(output) => {
            let text = String::from_utf8_lossy(&output.stdout).into_owned();
            let err = String::from_utf8_lossy(&output.stderr);
            assert!(output.status.success(), "{name} {args:?}: {text}{err}");
            Some(text)
        }
        Err(error) if std::env::var_os("CI").is_some() => panic!("{name} is needed here: {error}"),
        Err(_) => {
            println!("left out: {name} is missing");
            None
        }
    }
}

fn pdfs() -> impl Iterator<Item = (&'static Entry, PathBuf)> {
    DEMO.exported
        .files
        .iter()
        .filter(|entry| entry.path.ends_with(".pdf"))
        .map(|entry| (entry, DEMO.exported.folder.join(&entry.path)))
}

/// Sizes in points: Letter 8.5 × 11 in (ANSI/ASME Y14.1), A4 210 × 297 mm (ISO 216), at 72 to the inch.
#[test]
fn every_page_has_the_paper_s_size() {
    for (entry, path) in pdfs() {
        let Some(text) = tool("pdfinfo", &["-f", "1", "-l", "999", path.to_str().unwrap()]) else { return };
        let (w, h) = match entry.paper.unwrap() {
            Paper::Letter => (612.0, 792.0),
            Paper::A4 => (210.0 / MM_PER_INCH * 72.0, 297.0 / MM_PER_INCH * 72.0),
        };
        let sizes: Vec<&str> =
            text.lines().filter(|line| line.starts_with("Page ") && line.contains("size:")).collect();
        assert_eq!(sizes.len(), entry.pages.unwrap(), "{text}");
        for line in sizes {
            let numbers: Vec<f64> = line.split_whitespace().filter_map(|word| word.parse().ok()).collect();
            let [.., x, y] = numbers.as_slice() else { panic!("{line}") };
            // pdfinfo rounds to three figures after the point or fewer.
            assert!((x - w).abs() < 0.05 && (y - h).abs() < 0.05, "{}: {line}", entry.path);
        }
        assert!(text.lines().any(|line| line.starts_with("Title:") && line.len() > 20), "{text}");
        assert!(text.lines().any(|line| line.starts_with("Tagged:") && line.ends_with("yes")), "{text}");
    }
}

#[test]
fn qpdf_finds_no_fault() {
    for (_, path) in pdfs() {
        let Some(text) = tool("qpdf", &["--check", path.to_str().unwrap()]) else { return };
        assert!(text.contains("No syntax or stream encoding errors"), "{text}");
    }
}

#[test]
fn every_font_is_embedded() {
    for (_, path) in pdfs() {
        let Some(text) = tool("pdffonts", &[path.to_str().unwrap()]) else { return };
        let mut lines = text.lines();
        let head = lines.next().unwrap();
        let at = head.find("emb").unwrap();
        lines.next();
        let fonts: Vec<&str> = lines.collect();
        assert!(!fonts.is_empty(), "{} has no text", path.display());
        for font in fonts {
            assert!(font[at..].starts_with("yes"), "{font}");
        }
    }
}

/// Words as a reader of the PDF finds them, without regard to line breaks and typographic marks.
fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

#[test]
fn guests_get_the_letter_and_nothing_of_the_host() {
    let party = Party::new(&DEMO.opened.kit, &DEMO.opened.theme, inklatch::diag::Level::Standard).unwrap();
    for (entry, path) in pdfs() {
        let Some(text) = tool("pdftotext", &["-raw", path.to_str().unwrap(), "-"]) else { return };
        let found = words(&text);
        let joined = found.join(" ");
        if entry.audience == "host" {
            continue;
        }
        let host = ["host guide", "the answers", "how to set it", "test each twice", "shopping", "opens with"];
        for phrase in host {
            // A listing names what is in the kit.
            assert!(entry.audience == "listing" || !joined.contains(phrase), "{} says \"{phrase}\"", entry.path);
        }
        for (puzzle, laid) in DEMO.opened.kit.puzzles.iter().zip(&party.puzzles) {
            // A key's answer is a hiding place, which has a name of its own on its tag.
            let key = DEMO.opened.kit.lock(&puzzle.opens).is_some_and(|lock| lock.kind == LockKind::Key);
            let answer = laid.answer.to_lowercase();
            assert!(key || !found.contains(&answer), "{} holds the answer {answer}", entry.path);
        }
        if entry.audience == "players" {
            let letter = words(&party.script.letter.body.text());
            let start = letter.iter().take(12).cloned().collect::<Vec<_>>().join(" ");
            assert!(joined.contains(&start), "the letter is not in {}", entry.path);
        }
    }
}

#[test]
fn the_zip_file_is_sound() {
    let zip = DEMO.exported.zip.as_ref().unwrap();
    let Some(text) = tool("unzip", &["-t", zip.to_str().unwrap()]) else { return };
    assert!(text.contains("No errors detected"), "{text}");
    let Some(list) = tool("unzip", &["-Z1", zip.to_str().unwrap()]) else { return };
    assert_eq!(list.lines().count(), DEMO.exported.files.len() + 1, "the files and the manifest");
}

#[test]
fn sums_are_those_of_sha256sum() {
    for entry in &DEMO.exported.files {
        let path = DEMO.exported.folder.join(&entry.path);
        let Some(text) = tool("sha256sum", &[path.to_str().unwrap()]) else { return };
        assert!(text.starts_with(&entry.sha256), "{}", entry.path);
    }
}

/// Dots to the inch of the rendering that is measured.
const DPI: f64 = 300.0;
/// What a rendering at 300 dots to the inch can be held to: two dots.
const TOLERANCE: f64 = 0.2;

/// Width, height and grey values of a PGM file: "P5", width, height, greatest value, one white space, the rows.
fn pgm(bytes: &[u8]) -> (usize, usize, Vec<u8>) {
    let mut fields = Vec::new();
    let mut at = 0;
    while fields.len() < 4 {
        let start = at;
        while !bytes[at].is_ascii_whitespace() {
            at += 1;
        }
        fields.push(String::from_utf8(bytes[start..at].to_vec()).unwrap());
        at += 1;
    }
    (fields[1].parse().unwrap(), fields[2].parse().unwrap(), bytes[at..].to_vec())
}

/// A page in grey, as poppler draws it.
struct Page {
    width: usize,
    grey: Vec<u8>,
}

impl Page {
    fn of(pdf: &Path, page: usize) -> Option<Self> {
        let folder = tempfile::tempdir().unwrap();
        let stem = folder.path().join("page");
        let number = page.to_string();
        tool(
            "pdftoppm",
            &["-r", "300", "-gray", "-singlefile", "-f", &number, "-l", &number, pdf.to_str()?, stem.to_str()?],
        )?;
        let bytes = Disk::new(folder.path()).read(&VPath::new("page.pgm").unwrap(), 1 << 30).unwrap();
        let (width, _, grey) = pgm(&bytes);
        Some(Self { width, grey })
    }

    fn dark(&self, x: usize, y: usize) -> bool {
        self.grey[y * self.width + x] < 200
    }

    /// The first dark dot in row `y` at or after `from`, going by `step`, within `reach` millimetres; in mm.
    fn edge(&self, y: f64, from: f64, step: isize, reach: f64) -> Option<f64> {
        let row = dot(y);
        let dots = dot(reach);
        let start = dot(from);
        (0..dots).find_map(|n| {
            let x = start.checked_add_signed(step * n as isize)?;
            self.dark(x, row).then(|| (x as f64 + 0.5) / DPI * MM_PER_INCH)
        })
    }
}

fn dot(mm: f64) -> usize {
    (mm / MM_PER_INCH * DPI).round() as usize
}

/// The sheets of an audience as the bundle lays them out.
fn all_sheets(party: &Party, paper: Paper, audience: Audience) -> Vec<Sheet> {
    let mut pieces: Vec<Piece> = Vec::new();
    if audience == Audience::Players {
        pieces.push(party.letter(&DEMO.opened.theme, paper.safe_size()).unwrap());
    }
    pieces.extend(party.pieces.iter().filter(|piece| piece.audience == audience).cloned());
    impose(&pieces, paper, audience, &party.script.title).unwrap()
}

/// The guests' sheets at the standard level.
fn sheets(paper: Paper) -> Vec<Sheet> {
    let party = Party::new(&DEMO.opened.kit, &DEMO.opened.theme, inklatch::diag::Level::Standard).unwrap();
    all_sheets(&party, paper, Audience::Players)
}

fn players(paper: Paper) -> PathBuf {
    let (_, path) = pdfs().find(|(entry, _)| entry.audience == "players" && entry.paper == Some(paper)).unwrap();
    path
}

#[test]
fn the_check_bar_measures_fifty_millimetres() {
    for paper in Paper::ALL {
        let sheets = sheets(paper);
        let with_bar: Vec<_> = sheets.iter().enumerate().filter(|(_, sheet)| sheet.check_bar.is_some()).collect();
        assert!(!with_bar.is_empty(), "no sheet has a check bar");
        let (index, sheet) = with_bar[0];
        let bar = sheet.check_bar.unwrap();
        let Some(page) = Page::of(&players(paper), index + 1) else { return };
        // The longest dark run in the rows of the bar.
        let longest = (dot(bar.y.get())..dot(bar.bottom().get()))
            .map(|row| {
                let (mut best, mut run) = (0, 0);
                for x in dot(bar.x.get()).saturating_sub(20)..dot(bar.x.get() + 54.0) {
                    run = if page.dark(x, row) { run + 1 } else { 0 };
                    best = best.max(run);
                }
                best
            })
            .max()
            .unwrap();
        let mm = longest as f64 / DPI * MM_PER_INCH;
        assert!((mm - 50.0).abs() <= TOLERANCE, "the bar is {mm:.2} mm long on {}", paper.word());
    }
}

#[test]
fn the_lid_disc_has_its_true_diameter() {
    for paper in Paper::ALL {
        let sheets = sheets(paper);
        let round: Vec<(usize, &Placed)> = sheets
            .iter()
            .enumerate()
            .flat_map(|(index, sheet)| sheet.placed.iter().map(move |placed| (index, placed)))
            .filter(|(_, placed)| placed.cut && placed.face.outline == Outline::Round)
            .collect();
        assert!(!round.is_empty(), "the demo kit has no round piece");
        for (index, placed) in round {
            let Some(page) = Page::of(&players(paper), index + 1) else { return };
            let rect = placed.rect;
            let middle = rect.y.get() + rect.h.get() / 2.0;
            let left = page.edge(middle, rect.x.get() - 1.0, 1, 3.0).unwrap();
            let right = page.edge(middle, rect.right().get() + 1.0, -1, 3.0).unwrap();
            let want = placed.face.size.w.get();
            assert!((right - left - want).abs() <= TOLERANCE, "{}: {:.2} mm, not {want}", placed.piece, right - left);
        }
    }
}
