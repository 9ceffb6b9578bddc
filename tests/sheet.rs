//! Tests of `sheet`: packing, imposition, backs.

use inklatch::face::{Audience, Face, Outline, Piece};
use inklatch::sheet::pack::{Item, pack};
use inklatch::sheet::{Duplex, GUTTER, Paper, Sheet, Turn, content, cut_marks, impose, impose_for, largest};
use inklatch::units::{Mm, Rect, Size};
use serde::Deserialize;

#[derive(Deserialize)]
struct Refs<T> {
    cases: Vec<T>,
}

#[derive(Deserialize)]
struct Packing {
    id: String,
    usable_mm: (f64, f64),
    gap_mm: f64,
    rotation_allowed: bool,
    pieces_mm: Vec<(f64, f64)>,
    expected: Fewest,
}

#[derive(Deserialize)]
struct Fewest {
    min_sheets: Option<usize>,
}

/// Packings with proven minima: constructed, computed with OR-Tools CP-SAT 9.15 (see the file's head).
#[test]
fn packing_against_proven_minima() {
    let refs: Refs<Packing> = serde_json::from_str(include_str!("refs/10_sheet_packing.json")).unwrap();
    assert_eq!(refs.cases.len(), 12);
    let mut surplus = 0;
    for case in refs.cases {
        let area = Size::mm(case.usable_mm.0, case.usable_mm.1);
        let items: Vec<Item> =
            case.pieces_mm.iter().enumerate().map(|(group, (w, h))| Item { size: Size::mm(*w, *h), group }).collect();
        let packed = pack(&items, area, Mm::new(case.gap_mm), case.rotation_allowed);
        let Some(least) = case.expected.min_sheets else {
            assert!(packed.is_err(), "{}: a piece cannot fit", case.id);
            continue;
        };
        let spots = packed.unwrap();
        assert_eq!(spots.len(), items.len());
        let used = spots.iter().map(|spot| spot.page + 1).max().unwrap_or(0);
        assert!(used >= least, "{}: {used} pages are fewer than can be", case.id);
        assert!(used <= least + 1, "{}: {used} pages where {least} do", case.id);
        surplus += used - least;
        for (at, (spot, item)) in spots.iter().zip(&items).enumerate() {
            let size = if spot.turned { Size { w: item.size.h, h: item.size.w } } else { item.size };
            assert_eq!((spot.rect.w, spot.rect.h), (size.w, size.h));
            assert!(!spot.turned || case.rotation_allowed);
            assert!(Rect::of(area).holds(spot.rect), "{}: {spot:?}", case.id);
            let room = spot.rect.inset(Mm::new(0.002 - case.gap_mm / 2.0));
            for other in spots.iter().skip(at + 1).filter(|other| other.page == spot.page) {
                let theirs = other.rect.inset(Mm::new(0.002 - case.gap_mm / 2.0));
                assert!(!room.meets(theirs), "{}: {spot:?} and {other:?}", case.id);
            }
        }
    }
    println!("pages over the proven minima, all cases together: {surplus}");
    assert!(surplus <= 1);
}

fn piece(id: &str, w: f64, h: f64) -> Piece {
    Piece {
        id: id.into(),
        part: id.into(),
        label: format!("{id}: by the window"),
        audience: Audience::Players,
        front: Face::new(Size::mm(w, h), ""),
        back: None,
        copies: 1,
        measured: false,
        stock: inklatch::face::Stock::Card,
        on_a_thing: false,
        large: false,
        group: String::new(),
    }
}

fn check(sheets: &[Sheet]) {
    for sheet in sheets {
        let safe = sheet.paper.safe();
        let content = content(sheet.paper);
        for (at, placed) in sheet.placed.iter().enumerate() {
            assert!(safe.holds(placed.rect), "{placed:?}");
            if !placed.cut {
                continue;
            }
            assert!(content.holds(placed.rect) && content.holds(placed.label_rect), "{placed:?}");
            assert!(!placed.rect.meets(placed.label_rect));
            for other in sheet.placed.iter().skip(at + 1) {
                let wide = placed.rect.inset(-(GUTTER * 0.999));
                assert!(!wide.meets(other.rect), "{placed:?} {other:?}");
                assert!(!placed.label_rect.meets(other.rect) && !other.label_rect.meets(placed.rect));
            }
            if let Some(bar) = sheet.check_bar {
                assert!(safe.holds(bar) && !bar.meets(placed.rect) && !bar.meets(placed.label_rect));
            }
        }
        for (x1, y1, x2, y2) in cut_marks(sheet) {
            let mark = Rect { x: x1.min(x2), y: y1.min(y2), w: x1.max(x2) - x1.min(x2), h: y1.max(y2) - y1.min(y2) };
            assert!(safe.holds(mark));
            assert!(sheet.placed.iter().all(|p| !p.rect.meets(mark) && !p.label_rect.meets(mark)));
        }
    }
}

#[test]
fn every_copy_is_placed_and_audiences_stay_apart() {
    let mut pieces = vec![
        Piece { copies: 7, ..piece("card", 75.0, 105.0) },
        Piece { measured: true, ..piece("disc", 70.0, 70.0) },
        piece("board", 190.0, 250.0),
        piece("sign", 190.0, 62.0),
        Piece { copies: 0, ..piece("none", 10.0, 10.0) },
    ];
    pieces[1].front.outline = Outline::Round;
    pieces.push(Piece { audience: Audience::Hints, copies: 21, ..piece("token", 58.0, 66.0) });
    pieces.push(Piece { audience: Audience::Host, ..piece("template", 190.0, 250.0) });
    for paper in Paper::ALL {
        for (audience, count) in [(Audience::Players, 10), (Audience::Hints, 21), (Audience::Host, 1)] {
            let sheets = impose(&pieces, paper, audience, "The Stopped Clock").unwrap();
            check(&sheets);
            assert_eq!(sheets.iter().map(|sheet| sheet.placed.len()).sum::<usize>(), count);
            assert!(sheets.iter().all(|sheet| sheet.audience == audience && sheet.paper == paper));
            for sheet in &sheets {
                let measured = sheet.placed.iter().any(|placed| placed.piece == "disc");
                assert_eq!(sheet.check_bar.is_some(), measured);
            }
        }
    }
}

#[test]
fn groups_stay_together_when_that_costs_no_sheet() {
    let mut pieces = Vec::new();
    for k in 0..8 {
        let group = if k % 2 == 0 { "even" } else { "odd" };
        pieces.push(Piece { group: group.into(), ..piece(&format!("card-{k}"), 75.0, 105.0) });
    }
    let sheets = impose(&pieces, Paper::A4, Audience::Players, "Kit").unwrap();
    assert_eq!(sheets.len(), 2);
    for sheet in &sheets {
        let even = sheet.placed.iter().filter(|placed| placed.piece.ends_with(['0', '2', '4', '6'])).count();
        assert!(even == 0 || even == 4, "{even}");
    }
}

/// Flags of which a page takes four lying and three upright, and smaller things beside them: like pieces lie one way on
/// each page, and no sheet more is used than by turning them freely.
#[test]
fn like_pieces_lie_one_way() {
    let mut pieces = Vec::new();
    for k in 0..9 {
        pieces.push(Piece { group: "flags".into(), ..piece(&format!("flag-{k}"), 122.0, 96.0) });
    }
    for k in 0..18 {
        pieces.push(Piece { group: "tokens".into(), ..piece(&format!("token-{k}"), 58.0, 66.0) });
    }
    for k in 0..3 {
        pieces.push(Piece { group: "tags".into(), ..piece(&format!("tag-{k}"), 40.0, 70.0) });
    }
    for (paper, least) in [(Paper::Letter, 5), (Paper::A4, 5)] {
        let sheets = impose(&pieces, paper, Audience::Players, "Kit").unwrap();
        check(&sheets);
        assert!(sheets.len() <= least, "{} on {}", sheets.len(), paper.word());
        for sheet in &sheets {
            for kind in ["flag", "token", "tag"] {
                let ways: std::collections::BTreeSet<bool> = sheet
                    .placed
                    .iter()
                    .filter(|placed| placed.piece.starts_with(kind))
                    .map(|placed| placed.turned)
                    .collect();
                assert!(ways.len() < 2, "{kind} both ways on one sheet of {}", paper.word());
            }
        }
    }
}

#[test]
fn the_letter_has_a_page_of_its_own() {
    for paper in Paper::ALL {
        for size in [paper.safe(), Rect::of(paper.size())] {
            let letter = piece("letter", size.w.get(), size.h.get());
            let sheets = impose(&[piece("card", 75.0, 105.0), letter], paper, Audience::Players, "Kit").unwrap();
            assert_eq!(sheets.len(), 2);
            let placed = &sheets[0].placed[0];
            assert!(sheets[0].heading.is_empty() && !placed.cut && placed.label_rect.w.get() == 0.0);
            assert_eq!(placed.rect, size);
        }
    }
}

#[test]
fn what_no_sheet_takes_is_refused() {
    for paper in Paper::ALL {
        let most = largest(paper);
        assert!(impose(&[piece("fits", most.w.get(), most.h.get())], paper, Audience::Players, "Kit").is_ok());
        assert!(impose(&[piece("turned", most.h.get(), most.w.get())], paper, Audience::Players, "Kit").is_ok());
        let trouble =
            impose(&[piece("large", most.w.get() + 1.0, most.w.get() + 1.0)], paper, Audience::Players, "Kit");
        let trouble = trouble.unwrap_err();
        assert!(trouble.message.contains("too large") && !trouble.hints.is_empty(), "{trouble}");
    }
    let many = Piece { copies: u16::MAX, ..piece("many", 10.0, 10.0) };
    assert!(impose(&[many], Paper::A4, Audience::Players, "Kit").is_err());
}

#[derive(Deserialize)]
struct TurnedSheet {
    page_mm: (f64, f64),
    flip: String,
    back_upside_down_when_card_turned_like_a_page: bool,
    card_mm: (f64, f64),
    map: Vec<Cell>,
}

#[derive(Deserialize)]
struct Cell {
    front_xy: (f64, f64),
    back_xy: (f64, f64),
}

/// Backs lie behind their fronts on pages turned over either edge (source and tolerance at the file's head).
#[test]
fn backs_lie_behind_their_fronts() {
    let refs: Refs<TurnedSheet> = serde_json::from_str(include_str!("refs/08_duplex.json")).unwrap();
    assert!(!refs.cases.is_empty());
    for case in &refs.cases {
        let turn = if case.flip == "long-edge" { Turn::LongEdge } else { Turn::ShortEdge };
        let duplex = Duplex { turn, ..Duplex::default() };
        let page = Size::mm(case.page_mm.0, case.page_mm.1);
        assert_eq!(!duplex.upright(page), case.back_upside_down_when_card_turned_like_a_page);
        for cell in &case.map {
            let front = Rect::mm(cell.front_xy.0, cell.front_xy.1, case.card_mm.0, case.card_mm.1);
            let back = duplex.behind(page, front);
            assert!((back.x.get() - cell.back_xy.0).abs() < 0.01 && (back.y.get() - cell.back_xy.1).abs() < 0.01);
        }
    }
    let back = |piece: Piece| Piece { back: Some(Face::new(piece.front.size, "back")), ..piece };
    let pieces = [back(Piece { copies: 5, ..piece("card", 60.0, 80.0) }), piece("plain", 90.0, 50.0)];
    let sheets = impose(&pieces, Paper::Letter, Audience::Players, "Kit").unwrap();
    assert_eq!(sheets.len(), 3);
    assert!(sheets[0].placed.iter().all(|placed| placed.piece == "plain"));
    let (front, behind) = (&sheets[1], &sheets[2]);
    assert_eq!(front.placed.len(), behind.placed.len());
    for (a, b) in front.placed.iter().zip(&behind.placed) {
        assert!(b.back && !b.over && !b.cut && !a.back && a.piece == b.piece && a.turned == b.turned);
        assert_eq!(b.rect, Duplex::default().behind(Paper::Letter.size(), a.rect));
    }
    // A printer whose backs come out 2 mm to the right and 1 mm high, seen from the front, and that turns the paper
    // over its short edge: what it then prints behind the front's place is what was asked for.
    let duplex = Duplex { turn: Turn::ShortEdge, right: Mm::new(2.0), down: Mm::new(-1.0) };
    let sheets = impose_for(&pieces, Paper::Letter, Audience::Players, "Kit", &duplex).unwrap();
    for (a, b) in sheets[1].placed.iter().zip(&sheets[2].placed) {
        assert!(b.over);
        let (seen_x, seen_y) = (b.rect.x + duplex.right, Paper::Letter.size().h - b.rect.bottom() + duplex.down);
        assert!((seen_x.get() - a.rect.x.get()).abs() < 1e-9 && (seen_y.get() - a.rect.y.get()).abs() < 1e-9);
    }
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config::with_cases(64))]
    #[test]
    fn pieces_never_touch(sizes in proptest::collection::vec((8.0..150.0_f64, 8.0..150.0_f64, 1_u16..5), 1..14)) {
        let pieces: Vec<Piece> = sizes
            .iter()
            .enumerate()
            .map(|(k, (w, h, copies))| Piece { copies: *copies, measured: k == 0, ..piece(&format!("p{k}"), *w, *h) })
            .collect();
        for paper in Paper::ALL {
            let sheets = impose(&pieces, paper, Audience::Players, "Kit").unwrap();
            check(&sheets);
            let placed: usize = sheets.iter().map(|sheet| sheet.placed.len()).sum();
            proptest::prop_assert_eq!(placed, sizes.iter().map(|(_, _, copies)| usize::from(*copies)).sum::<usize>());
        }
    }
}

#[test]
fn folds_follow_their_piece_when_it_is_turned() {
    let tent = |id: &str| {
        let front = Face::new(Size::mm(100.0, 60.0), "a sign").tent();
        Piece { front, ..piece(id, 100.0, 60.0) }
    };
    let pieces: Vec<Piece> = ["a", "b", "c"].into_iter().map(tent).collect();
    for paper in Paper::ALL {
        let sheets = impose(&pieces, paper, Audience::Players, "folds").unwrap();
        let mut seen = 0;
        for sheet in &sheets {
            assert_eq!(sheet.folds.len(), sheet.placed.len());
            for (placed, (x1, y1, x2, y2)) in sheet.placed.iter().zip(&sheet.folds) {
                let rect = placed.rect;
                let (x, y) = (rect.x.get() + rect.w.get() / 2.0, rect.y.get() + rect.h.get() / 2.0);
                // The fold halves the piece, whichever way it lies.
                assert!(
                    ((x1.get() + x2.get()) / 2.0 - x).abs() < 1e-9 && ((y1.get() + y2.get()) / 2.0 - y).abs() < 1e-9
                );
                let length = (x2.get() - x1.get()).hypot(y2.get() - y1.get());
                assert!((length - 100.0).abs() < 1e-9, "the fold is {length} mm long");
                assert_eq!((x1.get() - x2.get()).abs() < 1e-9, placed.turned);
                seen += 1;
            }
        }
        assert_eq!(seen, pieces.len());
    }
}

#[test]
fn a_page_more_keeps_groups_together() {
    // Six broad pieces leave room for two strips on each page. Four groups of three strips go there, each over two pages
    // at least; three of them lie whole on a page more.
    let item = |h: f64, group: usize| Item { size: Size::mm(100.0, h), group };
    let broad = (0..6).map(|group| item(70.0, group));
    let strips = (6..10).flat_map(|group| std::iter::repeat_n(item(11.0, group), 3));
    let items: Vec<Item> = broad.chain(strips).collect();
    let spots = pack(&items, Size::mm(100.0, 100.0), Mm::ZERO, false).unwrap();
    let pages = spots.iter().map(|spot| spot.page + 1).max().unwrap();
    assert_eq!(pages, 7);
    let on = |group: usize| -> std::collections::BTreeSet<usize> {
        items.iter().zip(&spots).filter(|(item, _)| item.group == group).map(|(_, spot)| spot.page).collect()
    };
    assert!((6..10).filter(|group| on(*group).len() == 1).count() >= 3);
    // One group alone is worth no page.
    let few: Vec<Item> = items.iter().copied().filter(|item| item.group < 7).collect();
    let spots = pack(&few, Size::mm(100.0, 100.0), Mm::ZERO, false).unwrap();
    assert_eq!(spots.iter().map(|spot| spot.page + 1).max(), Some(6));
}
