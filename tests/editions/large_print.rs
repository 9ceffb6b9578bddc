//! The large-print edition: no text under 16 points on any sheet, nothing off the paper, every puzzle as it was.

use std::collections::BTreeMap;

use inklatch::diag::Level;
use inklatch::face::{Audience, Face, Layer, Piece};
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::sample;
use inklatch::party::{Kept, LARGE, Party, enlarged};
use inklatch::print::DocInfo;
use inklatch::sheet::{Paper, Sheet, impose};
use inklatch::theme::{Edition, Palette, builtin_ids};
use inklatch::units::{Rect, Size};

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

#[test]
fn a_board_in_parts_is_whole() {
    let mut face = Face::new(Size::mm(300.0, 400.0), "a board");
    for (x, y) in [(30.0, 40.0), (140.0, 190.0), (250.0, 350.0)] {
        face.art(
            "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>".into(),
            Rect::mm(x, y, 20.0, 20.0),
            "",
        );
    }
    let whole = face.size.w.get() * face.size.h.get();
    let piece = Piece {
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
    };
    for paper in Paper::ALL {
        let sheets = impose(std::slice::from_ref(&piece), paper, Audience::Players, "Kit").unwrap();
        let parts: Vec<_> = sheets.iter().flat_map(|sheet| &sheet.placed).collect();
        let area: f64 = parts.iter().map(|part| part.face.size.w.get() * part.face.size.h.get()).sum();
        assert!((area - whole).abs() < 1e-6, "{area} of {whole}");
        // No cut goes through a picture that it could go past.
        let pictures = parts.iter().flat_map(|part| &part.face.layers).filter(|layer| matches!(layer, Layer::Art(_)));
        assert_eq!(pictures.count(), 3);
        for part in parts {
            assert!(paper.safe().holds(part.rect) && part.label.contains(" of "), "{}", part.label);
        }
    }
    let usual = Piece { large: false, ..piece };
    assert!(impose(&[usual], Paper::A4, Audience::Players, "Kit").is_err());
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
