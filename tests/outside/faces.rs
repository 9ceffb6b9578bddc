//! Every face as the window draws it (resvg) beside the same face as poppler draws it out of the PDF.

use std::collections::BTreeSet;
use std::path::PathBuf;

use inklatch::bundle;
use inklatch::diag::Level;
use inklatch::face::Audience;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::party::Party;
use inklatch::print::{DocInfo, Raster};
use inklatch::sheet::{Paper, Placed};
use rayon::prelude::*;

use super::{DEMO, all_sheets, players, sheets, tool};

/// Pixels to a millimetre of the comparison: 203.2 dots to the inch, a whole number in both units.
const PX: f64 = 8.0;
/// Greatest mean difference of a face, in 256ths of full contrast. The two programs smooth edges differently, and a
/// piece stands between whole pixels on its page, so that line art differs along its edges; a lost or displaced
/// letter, picture or colour differs by far more ([`a_missing_word_is_seen`]).
const BOUND: f64 = 9.0;

/// Grey values of a page that poppler drew.
struct Page {
    width: usize,
    height: usize,
    grey: Vec<u8>,
}

fn poppler(pdf: &std::path::Path, page: usize) -> Option<Page> {
    let folder = tempfile::tempdir().unwrap();
    let stem = folder.path().join("page");
    let number = page.to_string();
    let dpi = format!("{}", PX * 25.4);
    tool(
        "pdftoppm",
        &["-r", &dpi, "-gray", "-singlefile", "-f", &number, "-l", &number, pdf.to_str()?, stem.to_str()?],
    )?;
    let bytes = Disk::new(folder.path()).read(&VPath::new("page.pgm").unwrap(), 1 << 30).unwrap();
    let (width, height, grey) = super::pgm(&bytes);
    Some(Page { width, height, grey })
}

/// The grey value of a pixel on white paper.
fn on_white(raster: &Raster, x: usize, y: usize) -> f64 {
    let at = (y * raster.width as usize + x) * 4;
    let [r, g, b, a] = [0, 1, 2, 3].map(|n| f64::from(raster.rgba[at + n]));
    let grey = 0.299 * r + 0.587 * g + 0.114 * b;
    255.0 - (255.0 - grey) * a / 255.0
}

/// Mean difference of a face at its place; the place is moved by up to a pixel to where it fits best, because a
/// piece need not stand on whole pixels. For the same reason it is the greys about each pixel that are compared, not
/// its own: half a pixel's shift changes every edge of small letters.
fn difference(page: &Page, raster: &Raster, left: usize, top: usize, turned: bool) -> f64 {
    let (w, h) = (raster.width as usize, raster.height as usize);
    let (across, down) = if turned { (h, w) } else { (w, h) };
    let face = Grid::new(across, down, |x, y| {
        // A quarter turn to the left: the face's right side is up.
        let (x, y) = if turned { (w - 1 - y, x) } else { (x, y) };
        on_white(raster, x, y)
    });
    let mut best = f64::MAX;
    for (dx, dy) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
        let paper = Grid::new(across, down, |x, y| {
            let (x, y) = (left + x + dx, top + y + dy);
            let inside = x < page.width && y < page.height;
            if inside { f64::from(page.grey[y * page.width + x]) } else { 255.0 }
        });
        let (mut sum, mut count) = (0.0, 0.0_f64);
        // The cut line lies on the rim and is the sheet's, not the face's.
        for y in 4..down.saturating_sub(4) {
            for x in 4..across.saturating_sub(4) {
                sum += (paper.about(x, y) - face.about(x, y)).abs();
                count += 1.0;
            }
        }
        best = best.min(sum / count.max(1.0));
    }
    best
}

/// Grey values, summed up from the top left so that the mean of any patch costs four look-ups.
struct Grid {
    width: usize,
    sums: Vec<f64>,
}

impl Grid {
    fn new(width: usize, height: usize, grey: impl Fn(usize, usize) -> f64) -> Self {
        let mut sums = vec![0.0; (width + 1) * (height + 1)];
        for y in 0..height {
            for x in 0..width {
                let at = (y + 1) * (width + 1) + x + 1;
                sums[at] = grey(x, y) + sums[at - 1] + sums[at - width - 1] - sums[at - width - 2];
            }
        }
        Self { width: width + 1, sums }
    }

    /// The mean of the three by three pixels about one that is not on the rim.
    fn about(&self, x: usize, y: usize) -> f64 {
        let at = |x: usize, y: usize| self.sums[y * self.width + x];
        (at(x + 2, y + 2) - at(x - 1, y + 2) - at(x + 2, y - 1) + at(x - 1, y - 1)) / 9.0
    }
}

/// Every face of every sheet, on both papers, at all levels: guests' pieces, tokens, the host's own. A face that is
/// the same in several documents is compared once.
#[test]
fn previews_are_what_the_pdf_shows() {
    let press = bundle::press_of(&DEMO.opened).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let mut seen = BTreeSet::new();
    let mut pages = Vec::new();
    for (level, paper) in Level::ALL.into_iter().flat_map(|level| Paper::ALL.map(|paper| (level, paper))) {
        let party = Party::new(&DEMO.opened.kit, &DEMO.opened.theme, level).unwrap();
        for audience in [Audience::Players, Audience::Hints, Audience::Host] {
            let sheets = all_sheets(&party, paper, audience);
            let mut wanted = Vec::new();
            for (index, sheet) in sheets.iter().enumerate() {
                let fresh =
                    |placed: &&Placed| seen.insert((placed.turned, serde_json::to_string(&placed.face).unwrap()));
                let placed: Vec<Placed> = sheet.placed.iter().filter(fresh).cloned().collect();
                if !placed.is_empty() {
                    wanted.push((index + 1, placed));
                }
            }
            if wanted.is_empty() {
                continue;
            }
            let name = format!("{audience:?}-{}-{}.pdf", level.word(), paper.word());
            let pdf = press.sheets(&sheets, &DocInfo::default()).unwrap().pdf().unwrap();
            Disk::new(folder.path()).write(&VPath::new(&name).unwrap(), &pdf).unwrap();
            pages.extend(wanted.into_iter().map(|(page, placed)| (folder.path().join(&name), page, placed)));
        }
    }
    let compare = |(pdf, number, placed): &(PathBuf, usize, Vec<Placed>)| {
        let page = poppler(pdf, *number)?;
        let faces = placed.iter().map(|placed| {
            let raster = press.preview(&placed.face, PX).unwrap().raster;
            let dot = |mm: f64| (mm * PX).floor() as usize;
            let found = difference(&page, &raster, dot(placed.rect.x.get()), dot(placed.rect.y.get()), placed.turned);
            (found, placed.piece.clone())
        });
        Some(faces.collect::<Vec<_>>())
    };
    let found: Option<Vec<_>> = pages.par_iter().map(compare).collect();
    let Some(found) = found else { return };
    let mut found: Vec<(f64, String)> = found.into_iter().flatten().collect();
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    assert!(found.len() > 150, "{} faces are not the whole kit", found.len());
    println!("{} faces on {} pages; greatest mean differences {:.2?}", found.len(), pages.len(), &found[..5]);
    let over: Vec<_> = found.iter().filter(|(difference, _)| *difference > BOUND).collect();
    assert!(over.is_empty(), "mean differences over {BOUND} of 256: {over:.2?}");
}

/// The bound is no formality: a face without its longest text differs by more than the same face whole.
#[test]
fn a_missing_word_is_seen() {
    let press = bundle::press_of(&DEMO.opened).unwrap();
    let sheets = sheets(Paper::A4);
    let (letter, rest) = (&sheets[0].placed[0], &sheets[0]);
    assert_eq!(rest.placed.len(), 1, "the letter has a page of its own");
    let Some(page) = poppler(&players(Paper::A4), 1) else { return };
    let mut bare = letter.face.clone();
    bare.layers.retain(|layer| matches!(layer, inklatch::face::Layer::Art(_)));
    let raster = press.preview(&bare, PX).unwrap().raster;
    let dot = |mm: f64| (mm * PX).floor() as usize;
    let found = difference(&page, &raster, dot(letter.rect.x.get()), dot(letter.rect.y.get()), letter.turned);
    assert!(found > BOUND, "the letter without its words differs by {found:.2} only");
}
