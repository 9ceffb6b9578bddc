//! Every face as the window draws it (resvg) beside the same face as poppler draws it out of the PDF.

use inklatch::bundle;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::print::Raster;
use inklatch::sheet::Paper;

use super::{DEMO, players, sheets, tool};

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
/// piece need not stand on whole pixels.
fn difference(page: &Page, raster: &Raster, left: usize, top: usize, turned: bool) -> f64 {
    let (w, h) = (raster.width as usize, raster.height as usize);
    let (across, down) = if turned { (h, w) } else { (w, h) };
    let mut best = f64::MAX;
    for (dx, dy) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
        let mut sum = 0.0;
        let mut count = 0.0_f64;
        // The cut line lies on the rim and is the sheet's, not the face's.
        for y in 3..down.saturating_sub(3) {
            for x in 3..across.saturating_sub(3) {
                // A quarter turn to the left: the face's right side is up.
                let (fx, fy) = if turned { (w - 1 - y, x) } else { (x, y) };
                let (px, py) = (left + x + dx, top + y + dy);
                if px < page.width && py < page.height {
                    sum += (f64::from(page.grey[py * page.width + px]) - on_white(raster, fx, fy)).abs();
                    count += 1.0;
                }
            }
        }
        best = best.min(sum / count.max(1.0));
    }
    best
}

#[test]
fn previews_are_what_the_pdf_shows() {
    let press = bundle::press_of(&DEMO.opened).unwrap();
    let paper = Paper::A4;
    let mut worst = (0.0, String::new());
    for (index, sheet) in sheets(paper).iter().enumerate() {
        let Some(page) = poppler(&players(paper), index + 1) else { return };
        for placed in &sheet.placed {
            let raster = press.preview(&placed.face, PX).unwrap().raster;
            let dot = |mm: f64| (mm * PX).floor() as usize;
            let found = difference(&page, &raster, dot(placed.rect.x.get()), dot(placed.rect.y.get()), placed.turned);
            if found > worst.0 {
                worst = (found, placed.piece.clone());
            }
            assert!(found <= BOUND, "{}: mean difference {found:.2} of 256", placed.piece);
        }
    }
    println!("greatest mean difference {:.2} of 256, at {}", worst.0, worst.1);
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
