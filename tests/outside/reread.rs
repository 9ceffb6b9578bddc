//! The print proof once more: what our own reading of the laid-out pieces saw, found by poppler in the exported PDF, at
//! the same place.

use std::collections::BTreeMap;

use inklatch::bundle;
use inklatch::diag::Level;
use inklatch::face::Audience;
use inklatch::face::proof::{Printed, PrintedText};
use inklatch::sheet::{Paper, Placed};
use inklatch::units::MM_PER_INCH;

use super::{DEMO, all_sheets, players, tool};

/// What a place may differ by, in millimetres.
const TOLERANCE: f64 = 0.5;

/// A word as poppler reports it: millimetres from the page's top left.
#[derive(Clone, Debug)]
struct Word {
    text: String,
    x: (f64, f64),
    y: (f64, f64),
}

/// The words of every page.
fn pages(pdf: &std::path::Path) -> Option<Vec<Vec<Word>>> {
    let xml = tool("pdftotext", &["-bbox-layout", pdf.to_str()?, "-"])?;
    let number = |line: &str, name: &str| -> f64 {
        let at = line.find(&format!("{name}=\"")).unwrap() + name.len() + 2;
        line[at..].split('"').next().unwrap().parse::<f64>().unwrap() / 72.0 * MM_PER_INCH
    };
    let plain = |text: &str| {
        text.replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&apos;", "'")
            .replace("&amp;", "&")
    };
    let mut pages = Vec::new();
    for line in xml.lines().map(str::trim) {
        if line.starts_with("<page") {
            pages.push(Vec::new());
        } else if line.starts_with("<word") {
            let text = line.split('>').nth(1).unwrap().trim_end_matches("</word");
            let word = Word {
                text: plain(text),
                x: (number(line, "xMin"), number(line, "xMax")),
                y: (number(line, "yMin"), number(line, "yMax")),
            };
            pages.last_mut().unwrap().push(word);
        }
    }
    Some(pages)
}

/// Where a baseline stands in its word's box, how tall that is, and the words.
type Baseline = (f64, f64, String);

/// A run of our own reading as it stands on its page: along its baseline from where to where, the baseline's place across.
#[derive(Clone, Copy)]
struct Run<'a> {
    text: &'a PrintedText,
    /// Whether the piece lies a quarter turn to the left, so that lines run upwards.
    up: bool,
    from: f64,
    to: f64,
    across: f64,
}

impl<'a> Run<'a> {
    fn new(placed: &Placed, text: &'a PrintedText) -> Self {
        let (x, y, w) = (text.x.get(), text.y.get(), text.width.get());
        let rect = placed.rect;
        if placed.turned {
            let from = rect.bottom().get() - x;
            Self { text, up: true, from: from - w, to: from, across: rect.x.get() + y }
        } else {
            let from = rect.x.get() + x;
            Self { text, up: false, from, to: from + w, across: rect.y.get() + y }
        }
    }

    /// A word's extent along the run's direction and across it.
    fn seen(&self, word: &Word) -> ((f64, f64), (f64, f64)) {
        if self.up { (word.y, word.x) } else { (word.x, word.y) }
    }

    /// Where in a word's box the baseline stands, as a share from its top: a number of the font, whatever the size.
    fn share(&self, word: &Word) -> f64 {
        let (_, (top, foot)) = self.seen(word);
        (self.across - top) / (foot - top)
    }

    /// The page's word that begins (or ends) the run, at its place along the line.
    fn find<'w>(&self, words: &'w [Word], first: bool) -> Option<&'w Word> {
        let mut parts = self.text.text.split_whitespace();
        let wanted = if first { parts.next()? } else { parts.next_back()? };
        words.iter().find(|word| {
            let ((from, to), (top, foot)) = self.seen(word);
            // Read upwards, a line begins at its lower end.
            let (is, ought) = if first != self.up { (from, self.from) } else { (to, self.to) };
            word.text == wanted && (is - ought).abs() <= TOLERANCE && (top..=foot).contains(&self.across)
        })
    }

    /// A word of the page that holds the whole run among its letters: runs that stand close are one word to poppler.
    fn within<'w>(&self, words: &'w [Word]) -> Option<&'w Word> {
        words.iter().find(|word| {
            let ((from, to), (top, foot)) = self.seen(word);
            word.text.contains(self.text.text.trim())
                && from <= self.from + TOLERANCE
                && to >= self.to - TOLERANCE
                && (top..=foot).contains(&self.across)
        })
    }
}

#[test]
fn every_word_of_the_proof_stands_where_we_read_it() {
    let opened = &DEMO.opened;
    let press = bundle::press_of(opened).unwrap();
    let proof = bundle::prove(opened, &press, &[Level::Standard]).unwrap();
    let level = proof.level(Level::Standard).unwrap();
    let printed: BTreeMap<&str, &Printed> = level
        .set
        .iter()
        .flat_map(|set| &set.printed)
        .filter(|side| !side.back)
        .map(|side| (side.piece.as_str(), side))
        .collect();
    assert!(printed.len() > 8, "only {} pieces were read", printed.len());
    for paper in Paper::ALL {
        let Some(pages) = pages(&players(paper)) else { return };
        let sheets = all_sheets(&level.party, paper, Audience::Players);
        assert_eq!(sheets.len(), pages.len());
        let (mut exact, mut joined, mut displaced) = (0, 0, 0);
        let mut lost = Vec::new();
        let mut shares: BTreeMap<(String, bool), Vec<Baseline>> = BTreeMap::new();
        for (sheet, words) in sheets.iter().zip(&pages) {
            for placed in sheet.placed.iter().filter(|placed| !placed.back) {
                let Some(side) = printed.get(placed.piece.as_str()) else { continue };
                // Letters that stand aslant have no upright boxes.
                for text in side.texts.iter().filter(|text| text.turn == 0.0 && !text.text.trim().is_empty()) {
                    let run = Run::new(placed, text);
                    if let (Some(word), Some(_)) = (run.find(words, true), run.find(words, false)) {
                        exact += 1;
                        // A millimetre beside its place nothing is found, but for rows of like letters.
                        let beside = Run { from: run.from + 1.0, to: run.to + 1.0, ..run };
                        displaced += usize::from(beside.find(words, true).is_some());
                        let ((_, _), (top, foot)) = run.seen(word);
                        let key = (format!("{}{}{}", text.family, text.bold, text.italic), run.up);
                        shares.entry(key).or_default().push((run.share(word), foot - top, text.text.clone()));
                    } else if run.within(words).is_some() {
                        joined += 1;
                    } else {
                        lost.push(format!(
                            "{}: \"{}\" at {:.1}, {:.1} {}",
                            placed.piece, text.text, run.from, run.across, run.up
                        ));
                    }
                }
            }
        }
        println!("{}: {exact} runs in their places, {joined} within longer words", paper.word());
        assert!(lost.is_empty(), "{} of {} not found: {lost:#?}", lost.len(), exact + joined + lost.len());
        assert!(displaced * 20 < exact, "{displaced} of {exact} would be found in a wrong place");
        assert!(exact > 100 && joined * 10 < exact, "{exact} exact, {joined} joined");
        // A font's baseline has one place in its box: whatever differs from the rest is displaced.
        for ((font, _), mut found) in shares {
            found.sort_by(|a, b| a.0.total_cmp(&b.0));
            let usual = found[found.len() / 2].0;
            for (share, tall, text) in &found {
                let off = ((share - usual) * tall).abs();
                assert!(off <= TOLERANCE, "{font}: the baseline of \"{text}\" is {off:.2} mm off");
            }
        }
    }
}
