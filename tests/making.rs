//! The ways in which tokens are made, and sheets with backs.

use inklatch::bundle::{self, Go, Opened, Options, Shift, duplex};
use inklatch::diag::Level;
use inklatch::face::{Audience, Layer, Piece};
use inklatch::kit::{Flip, Making, TokenMake};
use inklatch::party::Party;
use inklatch::sheet::{Paper, Turn, impose_for};
use inklatch::units::Mm;

fn tokens(make: TokenMake) -> (Opened, Vec<Piece>) {
    let mut opened = bundle::open(None).unwrap();
    opened.kit.making = Making { tokens: make, flip: Flip::ShortEdge };
    let party = Party::new(&opened.kit, &opened.theme, Level::Standard).unwrap();
    assert!(party.troubles.is_empty(), "{:?}", party.troubles);
    (opened, party.pieces.into_iter().filter(|piece| piece.audience == Audience::Hints).collect())
}

/// Whether a face shows the words of a hint.
fn speaks(piece: &Piece) -> bool {
    piece.front.runs().any(|run| run.within.is_some())
}

#[test]
fn the_outside_tells_whose_and_which_step_and_no_more() {
    let (_, plain) = tokens(TokenMake::Plain);
    assert!(plain.iter().all(|piece| piece.back.is_none() && piece.front.folds.is_empty() && speaks(piece)));
    let (_, two) = tokens(TokenMake::TwoSided);
    for piece in &two {
        let back = piece.back.as_ref().unwrap();
        assert_eq!(back.size, piece.front.size);
        assert!(speaks(piece) && back.runs().all(|run| run.within.is_none()), "{}", piece.id);
        // Nothing of it must meet an edge: 5 mm stay clear.
        let clear = back.layers.iter().all(|layer| {
            let rect = match layer {
                Layer::Art(art) => art.rect,
                Layer::Text(run) => run.rect,
            };
            let five = Mm::new(4.999);
            rect.x >= five
                && rect.y >= five
                && rect.right() <= back.size.w - five
                && rect.bottom() <= back.size.h - five
        });
        assert!(clear, "{}", piece.id);
    }
    for (make, folds) in [(TokenMake::FoldOver, 1), (TokenMake::Flap, 2)] {
        let (_, strips) = tokens(make);
        for (strip, plain) in strips.iter().zip(&plain) {
            let h = plain.front.size.h;
            assert_eq!(strip.front.folds.len(), folds, "{}", strip.id);
            assert_eq!(strip.front.folds[0].0.1, h);
            // Above the fold the outside, on its head so that it is upright once folded; below it the words.
            for layer in &strip.front.layers {
                let (rect, turn) = match layer {
                    Layer::Art(art) => (art.rect, art.turn),
                    Layer::Text(run) => (run.rect, run.turn),
                };
                assert_eq!(rect.bottom() <= h, turn == 180.0, "{}", strip.id);
            }
            assert!(speaks(strip));
        }
    }
}

#[test]
fn backs_follow_the_printer_and_its_test_comes_with_them() {
    let (opened, pieces) = tokens(TokenMake::TwoSided);
    let turned = duplex(&opened.kit, Shift::parse("1.5, -0.4").unwrap());
    assert_eq!((turned.turn, turned.right, turned.down), (Turn::ShortEdge, Mm::new(1.5), Mm::new(-0.4)));
    let sheets = impose_for(&pieces, Paper::A4, Audience::Hints, "Kit", &turned).unwrap();
    assert!(sheets.len().is_multiple_of(2) && sheets[1].heading.contains("short edge"));
    for wrong in ["", "1", "1,2,3", "a,b", "16,0", "NaN,0"] {
        assert!(Shift::parse(wrong).is_err(), "{wrong}");
    }
    let pages = |make: TokenMake| {
        let mut opened = opened.clone();
        opened.kit.making.tokens = make;
        let out = tempfile::tempdir().unwrap();
        let options = Options {
            papers: vec![Paper::A4],
            levels: vec![Level::Standard],
            out: out.path().to_owned(),
            ..Options::default()
        };
        let exported = bundle::export(&opened, &options, &|_| Go::On).unwrap();
        exported.files.iter().find(|file| file.path.contains("host-sheets")).map_or(0, |file| file.pages.unwrap())
    };
    assert_eq!(pages(TokenMake::TwoSided), pages(TokenMake::Plain) + 2);
}

#[test]
fn every_group_has_its_own_pieces_and_the_host_one_set() {
    let opened = bundle::open(None).unwrap();
    let pages = |groups: u16, what: &str| {
        let out = tempfile::tempdir().unwrap();
        let options = Options {
            papers: vec![Paper::Letter],
            levels: vec![Level::Standard],
            groups,
            out: out.path().to_owned(),
            ..Options::default()
        };
        let exported = bundle::export(&opened, &options, &|_| Go::On).unwrap();
        let found = |file: &&bundle::Entry| file.path.ends_with(".pdf") && file.path.contains(what);
        exported.files.iter().find(found).unwrap().pages.unwrap()
    };
    // The letters alone make one page more for each group.
    assert!(pages(3, "players/") >= pages(1, "players/") + 2);
    assert!(pages(3, "hints/") > pages(1, "hints/"));
    assert_eq!(pages(3, "host-sheets"), pages(1, "host-sheets"));
}
