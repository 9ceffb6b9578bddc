//! Tests of `print`: what is set is measured on what comes out.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use inklatch::diag::Anchor;
use inklatch::face::draw::{Drawing, Pen};
use inklatch::face::{Align, Audience, Face, Layer, Outline, Piece, Role, TextRun, Valign};
use inklatch::files::FontBook;
use inklatch::print::{DocInfo, Press, Raster};
use inklatch::script::{Rich, parse};
use inklatch::sheet::{Paper, impose};
use inklatch::theme::{Colour, Lettering};
use inklatch::units::{Mm, Pt, Rect, Size};

const FAMILIES: [(&str, &str); 4] =
    [("text", "Alegreya"), ("display", "Almendra"), ("hand", "Caveat"), ("code", "Atkinson Hyperlegible")];
const INK: Colour = Colour { r: 0x1F, g: 0x2A, b: 0x44 };

fn lettering(families: &[(&str, &str)]) -> Lettering {
    let families = families.iter().map(|(role, family)| ((*role).to_owned(), (*family).to_owned())).collect();
    Lettering::new(&families, &BTreeMap::new()).unwrap()
}

fn new_press() -> Press {
    Press::new(&FontBook::bundled().unwrap(), &lettering(&FAMILIES)).unwrap()
}

static PRESS: LazyLock<Press> = LazyLock::new(new_press);

fn run(rect: Rect, role: Role, text: &str, most: f64) -> TextRun {
    TextRun::new(rect, role, parse(text), Pt::new(most), INK, Anchor::Letter)
}

fn face(size: Size, runs: &[TextRun]) -> Face {
    let mut face = Face::new(size, "");
    for run in runs {
        face.text(run.clone());
    }
    face
}

fn piece(id: &str, front: Face) -> Piece {
    Piece {
        id: id.into(),
        part: id.into(),
        label: id.into(),
        audience: Audience::Players,
        front,
        back: None,
        copies: 1,
        measured: false,
        stock: inklatch::face::Stock::Card,
        on_a_thing: false,
        large: false,
        group: String::new(),
    }
}

const TEXTS: [(&str, Role); 6] = [
    ("The clock has **stopped** at seven minutes to midnight, and the *winder's key* lies near.", Role::Text),
    ("Windle & Daughters", Role::Display),
    ("Gently, gypsy jig: fjord", Role::Hand),
    ("5391", Role::Code),
    ("First paragraph, of some length.\n\nSecond one,\\\nbroken by hand, and longer than the first.", Role::Text),
    ("Half-past-midnight bell-ringing", Role::Display),
];

#[test]
fn the_largest_size_that_fits_is_taken() {
    for (text, role) in TEXTS {
        for (w, h) in [(50.0, 30.0), (61.0, 68.0), (30.0, 12.0), (90.0, 9.0)] {
            let rect = Rect::mm(5.0, 5.0, w, h);
            let size = Size::mm(w + 10.0, h + 10.0);
            let wanted = run(rect, role, text, 40.0).at_least(Pt::new(4.0));
            let set = PRESS.face(&face(size, std::slice::from_ref(&wanted))).unwrap();
            let fit = &set.fits[0];
            assert!(!fit.overflows, "{text} in {w} × {h}: {fit:?}");
            assert!(fit.height.get() <= h + 0.01, "{text} in {w} × {h}: {fit:?}");
            let next = fit.size + Pt::new(0.25);
            if next <= wanted.most {
                let larger = TextRun { least: next, most: next, ..wanted };
                let set = PRESS.face(&face(size, &[larger])).unwrap();
                assert!(set.fits[0].overflows, "{text} in {w} × {h} would fit at {next:?} as well");
            }
        }
    }
}

#[test]
fn what_does_not_fit_is_said_and_set_whole() {
    let long = "All the bells of the tower ring at once. ".repeat(40);
    let wanted = run(Rect::mm(2.0, 2.0, 30.0, 20.0), Role::Text, &long, 14.0);
    let set = PRESS.face(&face(Size::mm(34.0, 24.0), &[wanted])).unwrap();
    assert!(set.fits[0].overflows);
    assert_eq!(set.fits[0].size, Pt::new(9.0));
    let printed: String = set.words().iter().map(|word| word.text.as_str()).collect();
    assert_eq!(printed.matches("tower").count(), 40);
    // One word too long for the width.
    let wanted = run(Rect::mm(2.0, 2.0, 12.0, 20.0), Role::Text, "Glockenspielwerk", 14.0);
    assert!(PRESS.face(&face(Size::mm(16.0, 24.0), &[wanted])).unwrap().fits[0].overflows);
}

#[test]
fn signs_that_engines_read_as_code_are_printed() {
    let text = "#set page(fill: red) $x^2$ *a* _b_ `c` \\ @d <e> [f] = g / h // i ~ j";
    let mut wanted = run(Rect::mm(2.0, 2.0, 96.0, 46.0), Role::Code, "", 12.0);
    wanted.text = Rich::plain(text);
    let set = PRESS.face(&face(Size::mm(100.0, 50.0), &[wanted])).unwrap();
    let printed: String = set.words().iter().map(|word| word.text.as_str()).collect();
    let bare = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect::<String>();
    assert_eq!(bare(&printed), bare(text));
    assert!(set.words().iter().all(|word| word.lost.is_empty()));
}

#[test]
fn a_character_that_the_fonts_lack_is_named() {
    let wanted = run(Rect::mm(2.0, 2.0, 46.0, 20.0), Role::Display, "Ice ☃ Λ", 12.0);
    let set = PRESS.face(&face(Size::mm(50.0, 24.0), &[wanted])).unwrap();
    let missing: Vec<char> = set.missing.iter().map(|missing| missing.text).collect();
    assert_eq!(missing, ['Λ', '☃']);
    assert!(set.missing.iter().all(|missing| missing.family == "Almendra" && missing.from == Anchor::Letter));
    // The running text's family has the Greek letter, and draws it; nobody has the snowman.
    let greek = set.words().into_iter().find(|word| word.text.contains('Λ')).unwrap();
    assert_eq!((greek.family.as_str(), greek.lost.as_str()), ("Alegreya", ""));
    assert_eq!(set.words().iter().map(|word| word.lost.as_str()).collect::<String>(), "☃");
}

#[test]
fn a_family_that_no_font_has_is_refused_with_near_names() {
    let trouble = Press::new(&FontBook::bundled().unwrap(), &lettering(&[("text", "Alegria")])).err().unwrap();
    assert!(trouble.hints.iter().any(|hint| hint.contains("Alegreya")), "{trouble}");
}

/// The box of all pixels that are not empty, in millimetres.
fn inked(raster: &Raster, px_per_mm: f64) -> Option<Rect> {
    let (mut x0, mut y0, mut x1, mut y1) = (u32::MAX, u32::MAX, 0, 0);
    for (at, pixel) in raster.rgba.chunks_exact(4).enumerate() {
        if pixel[3] > 40 {
            let at = u32::try_from(at).unwrap();
            let (x, y) = (at % raster.width, at / raster.width);
            (x0, y0, x1, y1) = (x0.min(x), y0.min(y), x1.max(x + 1), y1.max(y + 1));
        }
    }
    let mm = |px: u32| f64::from(px) / px_per_mm;
    (x1 > 0).then(|| Rect::mm(mm(x0), mm(y0), mm(x1 - x0), mm(y1 - y0)))
}

#[test]
fn ink_stays_in_its_rectangle() {
    for (text, role) in TEXTS {
        for (align, valign) in
            [(Align::Left, Valign::Top), (Align::Centre, Valign::Middle), (Align::Right, Valign::Bottom)]
        {
            let rect = Rect::mm(10.0, 10.0, 44.0, 26.0);
            let wanted = run(rect, role, text, 60.0).at_least(Pt::new(4.0)).aligned(align, valign);
            let set = PRESS.face(&face(Size::mm(64.0, 46.0), &[wanted])).unwrap();
            let ink = inked(&set.raster(10.0).unwrap(), 10.0).unwrap();
            // Exactly, but for a pixel.
            let allowed = Rect::mm(9.9, 9.9, 44.2, 26.2);
            assert!(allowed.holds(ink), "{text} {align:?}: {ink:?}");
        }
    }
}

#[test]
fn the_quick_way_shows_the_same_face() {
    let size = Size::mm(60.0, 40.0);
    let mut drawing = Drawing::new(size);
    drawing.rect(Rect::mm(2.0, 2.0, 56.0, 36.0), Mm::new(2.0), Pen::line(Colour::BLACK, Mm::new(0.4)));
    let mut card = Face::new(size, "a card");
    card.art(drawing.svg(), Rect::of(size), "");
    card.text(run(Rect::mm(5.0, 5.0, 50.0, 24.0), Role::Text, "The clock has *stopped*.", 20.0));
    let mut mark = Drawing::new(Size::mm(8.0, 8.0));
    mark.circle(Mm::new(4.0), Mm::new(4.0), Mm::new(3.0), Pen::fill(INK));
    card.art(mark.svg(), Rect::mm(26.0, 30.0, 8.0, 8.0), "a dot");
    let slow = PRESS.face(&card).unwrap();
    for _ in 0..2 {
        let quick = PRESS.preview(&card, 7.0).unwrap();
        assert_eq!(quick.fits, slow.fits);
        let slow = slow.raster(7.0).unwrap();
        assert_eq!((quick.raster.width, quick.raster.height), (420, 280));
        let unlike = quick.raster.rgba.iter().zip(&slow.rgba).filter(|(a, b)| a.abs_diff(**b) > 8).count();
        assert!(unlike < 40, "{unlike} values differ");
    }
    // A word more: the lines before it are kept, the rest is drawn anew.
    if let Layer::Text(run) = &mut card.layers[1] {
        run.text = parse("The clock has *stopped*. Again.");
    }
    let slow = PRESS.face(&card).unwrap();
    let (quick, whole) = (PRESS.preview(&card, 7.0).unwrap().raster, slow.raster(7.0).unwrap());
    let unlike = quick.rgba.iter().zip(&whole.rgba).filter(|(a, b)| a.abs_diff(**b) > 8).count();
    assert!(unlike < 40, "{unlike} values differ");
    assert!(slow.raster(7.0).unwrap().png().unwrap().starts_with(b"\x89PNG"));
    assert!(PRESS.preview(&card, 1e9).is_err());
}

fn sheet_pieces() -> Vec<Piece> {
    let mut pieces = Vec::new();
    for k in 0..5 {
        let text = format!("Card {k}. The clock has stopped at seven minutes to midnight.");
        let card = face(Size::mm(75.0, 105.0), &[run(Rect::mm(7.0, 20.0, 61.0, 68.0), Role::Text, &text, 18.0)]);
        pieces.push(piece(&format!("card-{k}"), card));
    }
    let mut disc = face(Size::mm(70.0, 70.0), &[run(Rect::mm(15.0, 20.0, 40.0, 30.0), Role::Display, "Lid", 20.0)]);
    disc.outline = Outline::Round;
    pieces.push(Piece { measured: true, ..piece("disc", disc) });
    let mut token = Face::new(Size::mm(40.0, 40.0), "a token");
    token.outline = Outline::Path("M20 1L39 20L20 39L1 20Z".into());
    pieces.push(piece("token", token));
    pieces
}

fn info() -> DocInfo {
    DocInfo { title: "The Stopped Clock".into(), author: "A. Winder".into(), ..DocInfo::default() }
}

#[test]
fn the_same_pages_are_the_same_bytes() {
    let sheets = impose(&sheet_pieces(), Paper::A4, Audience::Players, "The Stopped Clock").unwrap();
    let fresh = new_press();
    let first = fresh.sheets(&sheets, &info()).unwrap();
    // The second time every measure is known beforehand.
    let second = fresh.sheets(&sheets, &info()).unwrap();
    let other = new_press().sheets(&sheets, &info()).unwrap();
    let pdf = first.pdf().unwrap();
    assert!(pdf.starts_with(b"%PDF-1.7"));
    assert!(pdf == second.pdf().unwrap() && pdf == other.pdf().unwrap());
    assert_eq!(first.svg(0).unwrap(), second.svg(0).unwrap());
    assert_eq!(first.fits, second.fits);
    assert_eq!(first.fits.len(), 6);
}

/// ISO 216 (A4) and ANSI/ASME Y14.1 (Letter), in millimetres.
#[test]
fn pages_have_the_size_of_the_paper() {
    for (paper, w, h) in [(Paper::A4, 210.0, 297.0), (Paper::Letter, 215.9, 279.4)] {
        let sheets = impose(&sheet_pieces(), paper, Audience::Players, "Kit").unwrap();
        let doc = PRESS.sheets(&sheets, &info()).unwrap();
        assert_eq!(doc.page_count(), sheets.len());
        let size = doc.page_size(0).unwrap();
        assert!((size.w.get() - w).abs() < 0.01 && (size.h.get() - h).abs() < 0.01, "{size:?}");
        let card = PRESS.face(&sheet_pieces()[0].front).unwrap().svg();
        // 75 mm in points of the CSS kind: 212.598.
        assert!(card.contains("width=\"212.598"), "{}", &card[..200]);
    }
}

fn grey(raster: &Raster, x: f64, y: f64, px_per_mm: f64) -> u8 {
    // The darkest of the pixels around the point: a line of a quarter point is half a pixel wide.
    let mut least = u8::MAX;
    for dx in -1..=1 {
        for dy in -1..=1 {
            let px = |v: f64, d: i32| (v * px_per_mm) as i64 + i64::from(d);
            let (px, py) = (px(x, dx), px(y, dy));
            let at = usize::try_from((py * i64::from(raster.width) + px) * 4).unwrap();
            least = least.min(raster.rgba[at]);
        }
    }
    least
}

#[test]
fn cut_lines_follow_their_outlines() {
    let sheets = impose(&sheet_pieces(), Paper::A4, Audience::Players, "Kit").unwrap();
    let doc = PRESS.sheets(&sheets, &info()).unwrap();
    let scale = 8.0;
    let mut seen = 0;
    for (page, sheet) in sheets.iter().enumerate() {
        let raster = doc.raster(page, scale).unwrap();
        for placed in &sheet.placed {
            let r = placed.rect;
            let (cx, cy) = ((r.x + r.w / 2.0).get(), (r.y + r.h / 2.0).get());
            let dark = |x: f64, y: f64| grey(&raster, x, y, scale) < 235;
            let half = r.w.get() / 2.0;
            match placed.face.outline {
                Outline::Round => {
                    for step in 0..24 {
                        let a = f64::from(step) * std::f64::consts::TAU / 24.0;
                        assert!(dark(cx + half * a.cos(), cy + half * a.sin()), "{} at {a}", placed.piece);
                        let off = half * 1.02;
                        assert!(!dark(cx + off * a.cos(), cy + off * a.sin()) || step % 6 == 0);
                    }
                }
                Outline::Path(_) => {
                    assert!(dark(cx + 9.5, cy - 9.5) && dark(cx - 9.5, cy + 9.5) && dark(cx, cy - 19.0));
                    assert!(!dark(cx + 14.0, cy - 14.0));
                }
                Outline::Rect => assert!(dark(r.x.get(), cy) && dark(cx, r.bottom().get())),
            }
            seen += 1;
        }
    }
    assert_eq!(seen, 7);
}

/// 50 mm and 2 in (25.4 mm each, exact), measured on the drawn page.
#[test]
fn the_check_bar_is_true() {
    let sheets = impose(&sheet_pieces(), Paper::Letter, Audience::Players, "Kit").unwrap();
    let doc = PRESS.sheets(&sheets, &info()).unwrap();
    let page = sheets.iter().position(|sheet| sheet.check_bar.is_some()).unwrap();
    let scale = 20.0;
    let raster = doc.raster(page, scale).unwrap();
    let width = usize::try_from(raster.width).unwrap();
    // Runs of black along each row in the foot of the page; the two longest are the bars.
    let mut runs: Vec<f64> = Vec::new();
    for row in raster.rgba.chunks_exact(width * 4).skip(usize::try_from(raster.height).unwrap() * 9 / 10) {
        let mut length = 0_u32;
        for pixel in row.chunks_exact(4).chain(std::iter::once(&[255_u8, 255, 255, 255][..])) {
            if pixel[0] < 90 {
                length += 1;
            } else {
                runs.push(f64::from(length) / scale);
                length = 0;
            }
        }
    }
    let found = |mm: f64| runs.iter().any(|run| (run - mm).abs() <= 0.2);
    assert!(found(50.0) && found(50.8), "{:?}", runs.iter().copied().fold(0.0, f64::max));
}

#[test]
fn a_turned_piece_lies_in_its_rectangle() {
    let strip = face(Size::mm(240.0, 40.0), &[run(Rect::mm(5.0, 5.0, 230.0, 30.0), Role::Display, "Strip", 60.0)]);
    let sheets = impose(&[piece("strip", strip)], Paper::A4, Audience::Players, "Kit").unwrap();
    let placed = &sheets[0].placed[0];
    assert!(placed.turned && (placed.rect.w, placed.rect.h) == (Mm::new(40.0), Mm::new(240.0)));
    let doc = PRESS.sheets(&sheets, &info()).unwrap();
    let word = doc.words(0).into_iter().find(|word| word.text == "Strip").unwrap();
    // To the left: it reads from the bottom up.
    assert!((word.turn + 90.0).abs() < 0.01, "{word:?}");
    assert!(placed.rect.holds(Rect { x: word.x, y: word.y - word.width, w: Mm::ZERO, h: word.width }), "{word:?}");
}

#[test]
fn text_runs_may_be_turned() {
    let wanted = run(Rect::mm(10.0, 20.0, 60.0, 20.0), Role::Code, "27", 40.0).turned(180.0);
    let set = PRESS.face(&face(Size::mm(80.0, 60.0), &[wanted])).unwrap();
    let word = &set.words()[0];
    assert!((word.turn.abs() - 180.0).abs() < 0.01, "{word:?}");
    let ink = inked(&set.raster(10.0).unwrap(), 10.0).unwrap();
    assert!(
        (ink.x.get() + ink.w.get() / 2.0 - 40.0).abs() < 0.5 && (ink.y.get() + ink.h.get() / 2.0 - 30.0).abs() < 0.5
    );
}

#[test]
fn art_that_is_no_picture_is_refused() {
    let mut card = Face::new(Size::mm(20.0, 20.0), "");
    card.layers.push(Layer::Art(inklatch::face::Art {
        svg: "<svg".into(),
        rect: Rect::mm(0.0, 0.0, 20.0, 20.0),
        turn: 0.0,
        alt: String::new(),
    }));
    assert!(PRESS.face(&card).is_err());
    assert!(PRESS.pages("no-such.typ", &serde_json::Value::Null, Paper::A4, &info()).is_err());
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config::with_cases(48))]
    #[test]
    fn nothing_an_author_types_stops_the_press(
        text in "\\PC{0,60}",
        w in -5.0..80.0_f64,
        h in -5.0..60.0_f64,
        least in -1.0..20.0_f64,
        most in -1.0..90.0_f64,
        turn in -400.0..400.0_f64,
    ) {
        let wanted = run(Rect::mm(1.0, 1.0, w, h), Role::Hand, &text, most).at_least(Pt::new(least)).turned(turn);
        let set = PRESS.face(&face(Size::mm(w, h), &[wanted])).unwrap();
        proptest::prop_assert!(set.fits.len() <= 1);
    }
}

#[test]
fn characters_that_no_page_may_hold_become_spaces() {
    let mut card = Face::new(Size::mm(80.0, 40.0), "a card with\u{0} odd\u{FEFF} letters");
    let text = Rich::plain("one\u{0}two \\u0000 three\u{FFFE}four\u{8}five");
    card.text(TextRun::new(Rect::mm(5.0, 5.0, 70.0, 30.0), Role::Text, text, Pt::new(12.0), INK, Anchor::Kit));
    let words: String = PRESS.face(&card).unwrap().words().iter().map(|word| word.text.as_str()).collect();
    assert!(words.contains("\\u0000") && !words.contains(['\u{0}', '\u{8}', '\u{FFFE}']), "{words:?}");
}
