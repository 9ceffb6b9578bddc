//! The large-print edition: no text under 16 points on any sheet, nothing off the paper, every puzzle as it was.

use std::collections::BTreeMap;

use inklatch::diag::{Anchor, Level};
use inklatch::face::proof::PrintedText;
use inklatch::face::{Align, Audience, Face, Layer, Piece, Role, TextRun, Valign, reach};
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::sample;
use inklatch::party::{Kept, LARGE, Party, enlarged};
use inklatch::print::DocInfo;
use inklatch::script::Rich;
use inklatch::sheet::{Paper, Placed, Sheet, impose};
use inklatch::theme::{Colour, Edition, Palette, builtin_ids};
use inklatch::units::{Mm, Rect, Size};

use super::{Dressed, demo, dressed, sound};

/// Sizes are found on a grid and come back from the page through whole units of its fonts.
const SLACK: f64 = 0.01;

fn sheets(dressed: &Dressed, party: &Party, paper: Paper, audience: Audience) -> Vec<Sheet> {
    let mut pieces: Vec<Piece> =
        party.letters(&dressed.theme, paper.page_size(true), &|face| dressed.press.fits(face)).unwrap();
    pieces.extend(party.pieces.iter().cloned());
    impose(&pieces, paper, audience, &party.script.title).unwrap()
}

#[test]
fn both_kits_in_every_theme_are_sound_and_nothing_is_under_16_points() {
    for dressed in dressed() {
        // At every level in the theme that the kit comes in.
        let home = demo(dressed.kit.id.as_str()).kit.theme == dressed.theme.theme.id;
        let levels: &[Level] = if home { &[Level::Standard, Level::Gentle, Level::Stiff] } else { &[Level::Standard] };
        let proof = sound(&dressed, levels, Edition::LargePrint);
        let level = &proof.levels[0];
        let name = format!("{} in {}", dressed.kit.id, dressed.theme.theme.id);
        for set in &level.set {
            for fit in &set.fits {
                assert!(fit.size.get() >= LARGE.get() - SLACK, "{name}: \"{}\" at {:?}", fit.words, fit.size);
                assert!(!fit.overflows, "{name}: \"{}\" on {}", fit.words, set.piece);
            }
        }
        for paper in Paper::ALL {
            for audience in [Audience::Players, Audience::Hints, Audience::Host] {
                let sheets = sheets(&dressed, &level.party, paper, audience);
                for placed in sheets.iter().flat_map(|sheet| &sheet.placed) {
                    assert!(paper.safe().holds(placed.rect), "{name}: {} off {}", placed.piece, paper.word());
                }
                let doc =
                    dressed.press.sheets(&sheets, &DocInfo { title: "Kit".into(), ..DocInfo::default() }).unwrap();
                for page in 0..doc.page_count() {
                    for text in doc.words(page) {
                        let size = text.size.get();
                        assert!(size >= LARGE.get() - SLACK, "{name}: \"{}\" at {size} pt on a sheet", text.text);
                    }
                }
            }
        }
    }
}

/// A picture that no other is like.
fn picture(number: usize) -> String {
    format!("<svg xmlns='http://www.w3.org/2000/svg' width='{}' height='9'/>", number + 9)
}

fn board(size: Size, pictures: &[(f64, f64)], texts: &[(&str, Rect)]) -> Piece {
    let mut face = Face::new(size, "a board");
    for (number, (x, y)) in pictures.iter().enumerate() {
        face.art(picture(number).into(), Rect::mm(*x, *y, 20.0, 20.0), "");
    }
    for (text, rect) in texts {
        let ink = Colour { r: 0, g: 0, b: 0 };
        let run = TextRun::new(*rect, Role::Text, Rich::plain(*text), LARGE, ink, Anchor::Kit);
        face.text(run.at_least(LARGE).aligned(Align::Left, Valign::Top));
    }
    Piece {
        id: "board".into(),
        part: "board".into(),
        label: "Board".into(),
        audience: Audience::Players,
        front: face,
        back: None,
        copies: 1,
        measured: true,
        stock: inklatch::face::Stock::Card,
        on_a_thing: false,
        large: true,
        group: "board".into(),
    }
}

#[test]
fn a_board_in_parts_is_joined_by_tabs() {
    const TAB: f64 = 10.0;
    let at = [(30.0, 40.0), (140.0, 190.0), (250.0, 350.0)];
    let piece = board(Size::mm(300.0, 400.0), &at, &[]);
    let whole = piece.front.size.w.get() * piece.front.size.h.get();
    for paper in Paper::ALL {
        let sheets = impose(std::slice::from_ref(&piece), paper, Audience::Players, "Kit").unwrap();
        let parts: Vec<_> = sheets.iter().flat_map(|sheet| &sheet.placed).collect();
        let number =
            |label: &str| -> usize { label.split("part ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap() };
        // What stands on tabs, and what labels say is glued on them, are the same pairs.
        let (mut told, mut tabs) = (Vec::new(), Vec::new());
        let numbers = |text: &str| -> Vec<usize> {
            text.split(|c: char| !c.is_ascii_digit()).filter_map(|word| word.parse().ok()).collect()
        };
        let mut area = 0.0;
        for part in &parts {
            assert!(paper.safe().holds(part.rect) && part.label.contains(" of "), "{}", part.label);
            let own = number(&part.label);
            let on = part.label.split_once(": ").unwrap().1;
            assert_eq!(on == "begin with it", own == 1, "{}", part.label);
            told.extend(numbers(on).into_iter().map(|tab| (tab, own)));
            let (mut w, mut h) = (part.face.size.w.get(), part.face.size.h.get());
            for run in part.face.runs() {
                let said = run.text.text();
                let said = said.split_once(" over").map_or(said.as_str(), |(names, _)| names).to_owned();
                tabs.extend(numbers(&said).into_iter().map(|next| (own, next)));
                if run.turn == 0.0 {
                    h -= TAB
                } else {
                    w -= TAB
                }
                assert!(
                    Rect::of(part.face.size).holds(reach(&Layer::Text(TextRun { turn: 0.0, ..run.clone() })))
                        || run.turn != 0.0
                );
            }
            area += w * h;
        }
        told.sort_unstable();
        tabs.sort_unstable();
        assert_eq!(told, tabs);
        assert!(told.len() >= parts.len() - 1);
        assert!((area - whole).abs() < 1e-6, "{area} of {whole}");
        // No cut goes through a picture that it could go past.
        for (number, _) in at.iter().enumerate() {
            let like = |layer: &&Layer| matches!(layer, Layer::Art(art) if *art.svg == *picture(number));
            let held = parts.iter().flat_map(|part| part.face.layers.iter().filter(like));
            assert_eq!(held.count(), 1);
        }
    }
    let usual = Piece { large: false, ..piece };
    assert!(impose(&[usual], Paper::A4, Audience::Players, "Kit").is_err());
}

#[test]
fn words_that_a_seam_cannot_spare_can_be_read_whole() {
    let long = "A sentence that goes on and on over the whole breadth of the board. ".repeat(21);
    let texts = [(long.trim(), Rect::mm(10.0, 20.0, 380.0, 480.0)), ("Aside", Rect::mm(10.0, 510.0, 60.0, 10.0))];
    let piece = board(Size::mm(400.0, 540.0), &[], &texts);
    let press = &dressed()[0].press;
    for paper in Paper::ALL {
        let sheets = impose(std::slice::from_ref(&piece), paper, Audience::Players, "Kit").unwrap();
        let placed: Vec<_> = sheets.iter().flat_map(|sheet| &sheet.placed).collect();
        for (text, _) in texts {
            let whole = placed.iter().filter(|part| {
                let inside = |rect: Rect| Rect::of(part.face.size).holds(rect);
                part.face.runs().any(|run| run.text.text() == text && inside(run.rect))
            });
            assert_eq!(whole.count(), 1, "{text}");
        }
        let words: Vec<_> = placed.iter().filter(|part| part.label.ends_with("words to read beside it")).collect();
        assert_eq!(words.len(), 1);
        assert!(press.fits(&words[0].face).unwrap().into_iter().all(|fits| fits));
    }
}

#[test]
fn a_thing_keeps_its_size_and_comes_with_a_copy_to_read() {
    let clock = dressed().into_iter().find(|d| d.kit.id.as_str() == "the-stopped-clock").unwrap();
    let usual = sound(&clock, &[Level::Standard], Edition::Colour);
    let large = sound(&clock, &[Level::Standard], Edition::LargePrint);
    let (usual, large) = (&usual.levels[0].party, &large.levels[0].party);
    let mut copies = 0;
    for piece in usual.pieces.iter().filter(|piece| piece.on_a_thing) {
        let kept = large.piece(&piece.id).unwrap();
        assert_eq!(kept.front.size, piece.front.size, "{}", piece.id);
        let Some(copy) = large.piece(&format!("{}-to-read", piece.id)) else { continue };
        copies += 1;
        let words = |piece: &Piece| piece.front.runs().map(|run| run.text.text()).collect::<Vec<_>>();
        assert_eq!(words(copy), words(piece));
        assert!(copy.front.size.w > piece.front.size.w);
        assert!(words(kept).len() < words(piece).len());
        // What stays takes the room of what went.
        let reach = |piece: &Piece| piece.front.runs().map(|run| run.rect.bottom().get()).fold(0.0, f64::max);
        assert!(words(kept).is_empty() || (reach(kept) - reach(piece)).abs() < 0.1, "{}", piece.id);
    }
    assert!(copies > 0, "the demo kit has a lid with a long text");
}

#[test]
fn what_is_folded_stays_whole_on_both_papers() {
    let clock = dressed().into_iter().find(|d| d.kit.id.as_str() == "the-stopped-clock").unwrap();
    let usual = sound(&clock, &[Level::Standard], Edition::Colour);
    let large = sound(&clock, &[Level::Standard], Edition::LargePrint);
    let party = &large.levels[0].party;
    let folded = |piece: &&Piece| !piece.front.folds.is_empty() && piece.audience == Audience::Players;
    assert!(party.pieces.iter().filter(folded).count() > 2, "an envelope, a sign and seat cards");
    let envelope = |party: &Party| party.piece("prop-letter-envelope").unwrap().front.clone();
    let cut = envelope(&usual.levels[0].party);
    assert_eq!((envelope(party).outline, envelope(party).size), (cut.outline.grown(1.0), cut.size));
    for paper in Paper::ALL {
        let sheets = sheets(&clock, party, paper, Audience::Players);
        for piece in party.pieces.iter().filter(folded) {
            let mut placed = 0;
            for sheet in &sheets {
                for on in sheet.placed.iter().filter(|on| on.piece == piece.id) {
                    placed += 1;
                    assert_eq!(on.face, piece.front, "{} on {}", piece.id, paper.word());
                    assert!(!sheet.folds.is_empty() && on.cut, "{}", piece.id);
                }
            }
            assert_eq!(placed, usize::from(piece.copies), "{} on {}", piece.id, paper.word());
        }
    }
}

/// What is parted over sheets among these pieces, on either paper.
fn parted(pieces: &[Piece]) -> Vec<String> {
    let audiences = [Audience::Players, Audience::Hints, Audience::Host];
    let sheets = |(paper, audience)| impose(pieces, paper, audience, "Kit").unwrap();
    let placed = Paper::ALL.into_iter().flat_map(|paper| audiences.map(|who| (paper, who))).flat_map(sheets);
    let parts = placed.flat_map(|sheet| sheet.placed).filter(|placed| placed.face.clipped);
    parts.map(|placed| format!("{} is {}", placed.piece, placed.label)).collect()
}

#[test]
fn both_kits_are_printed_without_a_seam_at_every_level() {
    for dressed in dressed() {
        for level in Level::ALL {
            let (kit, theme) = (&dressed.kit, &dressed.theme);
            let mut party = Party::in_edition(kit, theme, level, Edition::LargePrint, &mut Kept::default()).unwrap();
            party.enlarge(&|face| dressed.press.fits(face)).unwrap();
            let place = format!("{} in {}, {}", kit.id, theme.theme.id, level.word());
            assert_eq!(parted(&party.pieces), Vec::<String>::new(), "{place}");
        }
    }
}

#[test]
fn every_mechanic_s_sample_is_printed_without_a_seam() {
    // The first kit in each of the themes.
    for dressed in dressed().iter().take(builtin_ids().len()) {
        let palette = Palette::new(&dressed.theme.theme.palette, &BTreeMap::new()).unwrap();
        let palette = palette.in_edition(Edition::LargePrint);
        for mechanic in MECHANICS {
            let sample = sample(*mechanic, &dressed.theme, &palette).unwrap();
            let pieces = enlarged(&sample.pieces, &|face| dressed.press.fits(face)).unwrap();
            let place = format!("{} in {}", mechanic.meta().id, dressed.theme.theme.id);
            assert_eq!(parted(&pieces), Vec::<String>::new(), "{place}");
            for face in pieces.iter().flat_map(|piece| std::iter::once(&piece.front).chain(&piece.back)) {
                assert!(dressed.press.fits(face).unwrap().into_iter().all(|fits| fits), "{place}");
            }
        }
    }
}

#[test]
fn what_is_said_on_a_tab_stands_on_it() {
    // The words along the tab are longer than the part is wide.
    let piece = board(Size::mm(300.0, 400.0), &[], &[]);
    let sheets = impose(std::slice::from_ref(&piece), Paper::A4, Audience::Players, "Kit").unwrap();
    let doc = dressed()[0].press.sheets(&sheets, &DocInfo::default()).unwrap();
    let mut seen = 0;
    for (page, sheet) in sheets.iter().enumerate() {
        let said = |placed: &Placed| placed.face.runs().find(|run| run.turn != 0.0).map(|run| run.text.text());
        for placed in sheet.placed.iter().filter(|placed| !placed.turned) {
            let Some(said) = said(placed) else { continue };
            let first = said.split(' ').next().unwrap();
            let words = doc.words(page);
            let upright = |word: &&PrintedText| word.text.starts_with(first) && word.turn != 0.0;
            let word = words.iter().find(upright).unwrap_or_else(|| panic!("{said}: {words:?}"));
            let right = placed.rect.right();
            assert!(word.x < right && word.x > right - Mm::new(10.0), "\"{said}\" at {:?}, not {right:?}", word.x);
            seen += 1;
        }
    }
    assert!(seen >= 2);
}
