//! Another season: what an author waits for when a kit changes its clothes, and while a colour is dragged.

use std::collections::BTreeMap;
use std::hint::black_box;

use criterion::Criterion;
use inklatch::bundle::{self, redone};
use inklatch::checks::Prover;
use inklatch::diag::Level;
use inklatch::ids::ThemeId;
use inklatch::kit::edit::apply_all;
use inklatch::party::Party;
use inklatch::propose::{Wish, propose};
use inklatch::theme::colour::{Eyes, Lens};
use inklatch::theme::{Colour, Palette, ROLES};

/// Pixels to a millimetre at which the window shows a card in two columns.
const CARD_PX: f64 = 5.0;

/// The demo kit put into another theme, with every leftover mended that can be, and all of it proven anew: three levels,
/// every face set. Aim: one second. New codes are measured apart; they are looked for on a thread of their own.
pub fn redressing(c: &mut Criterion) {
    let opened = super::demo();
    let theme = ThemeId::new("harbour").expect("a name");
    let mut group = c.benchmark_group("another season");
    group.sample_size(10);
    group.bench_function("put on, all proofs anew", |b| {
        b.iter(|| {
            let fresh = redone(&opened, &theme, true, &Default::default()).expect("another theme").opened;
            let press = bundle::press_of(&fresh).expect("a press");
            Prover::default().prove(&fresh.kit, &fresh.theme, Some(&press), &Level::ALL).expect("a proof")
        });
    });
    group.bench_function("put on, new codes, all proofs anew", |b| {
        b.iter(|| {
            let fresh = redone(&opened, &theme, true, &Default::default()).expect("another theme").opened;
            let mut kit = fresh.kit.clone();
            let proposal = propose(&kit, &fresh.theme, &Wish::default()).expect("codes");
            let edits = proposal.edits(&kit, &fresh.theme);
            apply_all(&mut kit, edits);
            let press = bundle::press_of(&fresh).expect("a press");
            Prover::default().prove(&kit, &fresh.theme, Some(&press), &Level::ALL).expect("a proof")
        });
    });
    group.finish();
}

/// One step of a dragged colour: what is computed at once for the read-outs, and until the piece in sight has followed.
/// Aim: the read-outs within a frame of 16 ms, the piece within two.
pub fn dragging(c: &mut Criterion) {
    let opened = super::demo();
    let press = bundle::press_of(&opened).expect("a press");
    let mut group = c.benchmark_group("a dragged colour");
    let mut step: u8 = 0;
    let mut next = move || {
        step = step.wrapping_add(1);
        Colour { r: step, g: 0x2F, b: 0x2F }
    };
    group.bench_function("read-outs", |b| {
        let none = BTreeMap::new();
        b.iter(|| {
            let mut changes = none.clone();
            changes.insert("accent".to_owned(), next().to_string());
            let palette = Palette::new(&opened.theme.theme.palette, &changes).expect("a palette");
            for role in ROLES {
                let colour = palette.get(role.name);
                black_box(colour.contrast(palette.get("paper")));
                black_box(Eyes::ALL.map(|eyes| eyes.see(colour)));
            }
            let telling: Vec<Colour> =
                opened.theme.theme.colours.values().filter_map(|hex| Colour::parse(hex)).collect();
            for (at, one) in telling.iter().enumerate() {
                for other in telling.iter().skip(at + 1) {
                    black_box(Eyes::ALL.map(|eyes| eyes.difference(*one, *other)));
                }
            }
        });
    });
    let whole = Party::new(&opened.kit, &opened.theme, Level::Standard).expect("a party");
    let largest = |one: &&inklatch::face::Piece| (one.front.size.w.get() * one.front.size.h.get()).round() as u64;
    for (name, piece) in [
        ("the piece in sight", whole.pieces.first().expect("a piece")),
        ("the largest piece", whole.pieces.iter().max_by_key(largest).expect("a piece")),
    ] {
        let mut kit = opened.kit.clone();
        kit.puzzles.retain(|puzzle| puzzle.id.as_str() == piece.group);
        let scale = (CARD_PX * 60.0 / piece.front.size.w.get()).clamp(1.5, 14.0);
        group.bench_function(name, |b| {
            b.iter(|| {
                kit.look.palette.insert("accent".to_owned(), next().to_string());
                let party = Party::new(&kit, &opened.theme, Level::Standard).expect("a party");
                let followed = party.pieces.iter().find(|known| known.id == piece.id).expect("the piece");
                press.preview(black_box(&followed.front), scale).expect("a picture")
            });
        });
    }
    let sheet: Vec<Colour> = (0..800 * 1000_u32).map(|n| Colour { r: n as u8, g: (n >> 3) as u8, b: 7 }).collect();
    group.bench_function("a sheet of 800 × 1000 pixels, with other eyes", |b| {
        let lens = Lens::new(Eyes::Deutan);
        b.iter(|| sheet.iter().map(|colour| u64::from(lens.see(*colour).r)).sum::<u64>());
    });
    group.finish();
}
