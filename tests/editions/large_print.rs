//! The large-print edition: no text under 16 points on any sheet, nothing off the paper, every puzzle as it was.

use inklatch::diag::Level;
use inklatch::face::{Audience, Face, Layer, Piece, Role};
use inklatch::party::LARGE;
use inklatch::print::DocInfo;
use inklatch::sheet::{Paper, Sheet, impose};
use inklatch::theme::Edition;
use inklatch::units::{Rect, Size};

use super::{Dressed, dressed, sound};

/// Sizes are found on a grid and come back from the page through whole units of its fonts.
const SLACK: f64 = 0.01;

fn sheets(dressed: &Dressed, party: &inklatch::party::Party, paper: Paper, audience: Audience) -> Vec<Sheet> {
    let mut pieces: Vec<Piece> =
        party.letters(&dressed.theme, paper.page_size(true), &|face| dressed.press.fits(face)).unwrap();
    pieces.extend(party.pieces.iter().cloned());
    impose(&pieces, paper, audience, &party.script.title).unwrap()
}

#[test]
fn both_kits_in_every_theme_are_sound_and_nothing_is_under_16_points() {
    for dressed in dressed() {
        let proof = sound(&dressed, &[Level::Standard], Edition::LargePrint);
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
    let envelope = |party: &inklatch::party::Party| party.piece("prop-letter-envelope").unwrap().front.clone();
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

#[test]
fn no_seam_runs_through_a_title() {
    for dressed in dressed() {
        let large = sound(&dressed, &[Level::Standard], Edition::LargePrint);
        let party = &large.levels[0].party;
        let mut parted = 0;
        for paper in Paper::ALL {
            for sheet in sheets(&dressed, party, paper, Audience::Players) {
                for placed in sheet.placed.iter().filter(|placed| placed.face.clipped) {
                    parted += 1;
                    let whole = Rect::of(placed.face.size);
                    for run in placed.face.runs().filter(|run| run.role == Role::Display && run.turn == 0.0) {
                        assert!(whole.holds(run.rect), "\"{}\" on {}", run.text.text(), placed.label);
                    }
                }
            }
        }
        assert!(parted > 0, "{}", dressed.kit.id);
    }
}
