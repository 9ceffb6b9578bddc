//! Text in a shape: whatever the theme, no letter leaves the token's outline.

use inklatch::bundle::{self, Opened, find_theme};
use inklatch::diag::{Anchor, Level};
use inklatch::face::{Face, Layer, Role, TextRun};
use inklatch::party::Party;
use inklatch::print::Press;
use inklatch::script::parse;
use inklatch::theme::Colour;
use inklatch::units::{Mm, Pt, Rect, Size};

/// Pixels to a millimetre.
const PX: f64 = 8.0;
/// What soft edges and the kerning of a line may take beyond the shape, in millimetres.
const TOLERANCE: f64 = 0.2;

/// Whether a point lies in a shape, or so near to it that a soft edge explains it.
fn holds(shape: &[(Mm, Mm)], x: f64, y: f64) -> bool {
    let inside = |x: f64, y: f64| {
        let mut odd = false;
        for (k, a) in shape.iter().enumerate() {
            let b = shape[(k + 1) % shape.len()];
            let ((x0, y0), (x1, y1)) = ((a.0.get(), a.1.get()), (b.0.get(), b.1.get()));
            if (y0 <= y) != (y1 <= y) && x < x0 + (y - y0) / (y1 - y0) * (x1 - x0) {
                odd = !odd;
            }
        }
        odd
    };
    [(0.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)]
        .iter()
        .any(|(dx, dy)| inside(x + dx * TOLERANCE, y + dy * TOLERANCE))
}

/// The first inked pixel outside the shape of the face's only shaped run, in millimetres.
fn stray(press: &Press, face: &Face) -> Option<(f64, f64)> {
    let run = face.runs().find(|run| run.within.is_some()).unwrap();
    let shape = run.within.clone().unwrap();
    let mut bare = face.clone();
    bare.layers.retain(|layer| matches!(layer, Layer::Text(text) if text.within.is_some()));
    let raster = press.words(&bare).unwrap().raster(PX).unwrap();
    let mut inked = 0;
    for (n, pixel) in raster.rgba.chunks_exact(4).enumerate() {
        if pixel[3] < 96 {
            continue;
        }
        inked += 1;
        let (x, y) = (n % raster.width as usize, n / raster.width as usize);
        let (x, y) = ((x as f64 + 0.5) / PX, (y as f64 + 0.5) / PX);
        if !holds(&shape, x, y) {
            return Some((x, y));
        }
    }
    assert!(inked > 100, "nothing was set");
    None
}

#[test]
fn no_letter_leaves_a_token_of_any_theme() {
    let demo = bundle::open(None).unwrap();
    let mut tokens = 0;
    for id in inklatch::theme::builtin_ids() {
        let (theme, fonts) = find_theme(&*demo.files, &id).unwrap();
        let opened = Opened { theme, fonts, ..demo.clone() };
        let press = bundle::press_of(&opened).unwrap();
        for level in Level::ALL {
            let party = Party::new(&opened.kit, &opened.theme, level).unwrap();
            for piece in party.pieces.iter().filter(|piece| piece.group == "tokens") {
                let fit = &press.words(&piece.front).unwrap().fits[0];
                assert!(!fit.overflows, "{id}: {} does not fit", piece.id);
                assert_eq!(stray(&press, &piece.front), None, "{id}: {}", piece.id);
                tokens += 1;
            }
        }
    }
    assert!(tokens > 200, "{tokens} tokens");
}

fn triangle(words: &str, most: f64) -> Face {
    let size = Size::mm(60.0, 60.0);
    let mut face = Face::new(size, "");
    let corners = [(30.0, 2.0), (58.0, 58.0), (2.0, 58.0)].map(|(x, y)| (Mm::new(x), Mm::new(y)));
    let run = TextRun::new(
        Rect::mm(2.0, 2.0, 56.0, 56.0),
        Role::Text,
        parse(words),
        Pt::new(most),
        Colour::BLACK,
        Anchor::Letter,
    );
    face.text(run.within(Some(corners.into())));
    face
}

#[test]
fn lines_follow_the_outline() {
    let press = bundle::press_of(&bundle::open(None).unwrap()).unwrap();
    let words = "The clock in the tower has stopped at seven minutes to midnight and nobody in the whole town knows \
                 *why it stopped* or how to wind it again before the snow melts on the first day of spring.";
    let face = triangle(words, 24.0);
    let set = press.words(&face).unwrap();
    assert_eq!(stray(&press, &face), None);
    assert!(!set.fits[0].overflows && set.fits[0].size > Pt::new(9.0));
    // Line by line the words are wider, as the triangle is, and none is lost.
    let mut widths = std::collections::BTreeMap::<i64, f64>::new();
    for text in set.words() {
        *widths.entry((text.y.get() * 100.0).round() as i64).or_default() += text.width.get();
    }
    let widths: Vec<f64> = widths.into_values().collect();
    assert!(widths.len() > 4 && widths.last() > widths.first(), "{widths:?}");
    let said: String = set.words().iter().map(|text| text.text.as_str()).collect::<Vec<_>>().join(" ");
    let plain = words.replace('*', "");
    assert_eq!(said.split_whitespace().collect::<Vec<_>>(), plain.split_whitespace().collect::<Vec<_>>());
}

#[test]
fn what_does_not_fit_is_reported() {
    let press = bundle::press_of(&bundle::open(None).unwrap()).unwrap();
    let set = press.words(&triangle(&"Words upon words upon words. ".repeat(60), 24.0)).unwrap();
    assert!(set.fits[0].overflows);
    let set = press.words(&triangle("Incomprehensibilities-uncharacteristically", 40.0)).unwrap();
    assert!(set.fits[0].size < Pt::new(40.0), "{:?}", set.fits);
}
