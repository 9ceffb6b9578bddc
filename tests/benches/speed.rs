//! Speed, measured: `cargo bench`.
//!
//! Each group names what a user waits for. The aims, on a machine with two cores: a keystroke is on the card in
//! 16 ms and on the letter in 25 ms; all checks in 50 ms; one paper at one level exported in 0.8 s.

#![expect(clippy::expect_used, reason = "a bench that cannot be set up has nothing to measure")]

mod season;
mod solvers;

use std::collections::BTreeSet;
use std::hint::black_box;
use std::path::PathBuf;

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use inklatch::bundle::{self, Go, Opened, Options};
use inklatch::checks::{self, Prover};
use inklatch::diag::Level;
use inklatch::face::{Audience, Face, Layer};
use inklatch::ids::{BoxId, LockId, PuzzleId};
use inklatch::kit::{BoxDef, Lock, LockKind, Place};
use inklatch::party::Party;
use inklatch::print::DocInfo;
use inklatch::rehearse::{Stage, rehearse};
use inklatch::sheet::{Paper, impose};
use inklatch::theme::Edition;
use rayon::prelude::*;

/// The program's own: what is measured is what its user waits for.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Pixels to a millimetre at which the window shows a card.
const CARD_PX: f64 = 7.0;
/// Pixels to a millimetre at which a window of 1440 × 900 shows the letter: some 390 pixels for 203 mm.
const PAGE_PX: f64 = 1.92;

fn demo() -> Opened {
    bundle::open(None).expect("the demo kit opens")
}

/// The face with another word at the end of its longest text: what a keystroke leaves.
fn typed(face: &Face, keystroke: u64) -> Face {
    let mut face = face.clone();
    let runs = face.layers.iter_mut().filter_map(|layer| match layer {
        Layer::Text(run) => Some(run),
        Layer::Art(_) => None,
    });
    let longest = runs.max_by_key(|run| run.text.text().len());
    let last = longest.and_then(|run| run.text.paragraphs.last_mut()).and_then(|paragraph| paragraph.spans.last_mut());
    if let Some(span) = last {
        span.text.push_str(&format!(" {keystroke}"));
    }
    face
}

fn keystroke(c: &mut Criterion) {
    let opened = demo();
    let press = bundle::press_of(&opened).expect("a press");
    let party = Party::new(&opened.kit, &opened.theme, Level::Standard).expect("a party");
    let letter = party.letter(&opened.theme, Paper::A4.safe_size()).expect("a letter");
    let note = party.pieces.iter().find(|piece| piece.group == "notes").expect("a note");
    let mut count = 0;
    let mut next = |face: &Face| {
        count += 1;
        typed(face, count)
    };
    c.bench_function("a keystroke on a card", |b| {
        b.iter_batched(
            || next(&note.front),
            |face| press.preview(black_box(&face), CARD_PX).expect("a card"),
            BatchSize::PerIteration,
        );
    });
    c.bench_function("a keystroke on the letter", |b| {
        b.iter_batched(
            || next(&letter.front),
            |face| press.preview(black_box(&face), PAGE_PX).expect("a letter"),
            BatchSize::PerIteration,
        );
    });
}

fn proving(c: &mut Criterion) {
    let opened = demo();
    c.bench_function("all checks of one level, nothing set", |b| {
        b.iter(|| checks::prove(&opened.kit, &opened.theme, None, &[Level::Standard]).expect("a proof"));
    });
    c.bench_function("all checks of three levels, nothing set", |b| {
        b.iter(|| checks::prove(&opened.kit, &opened.theme, None, &Level::ALL).expect("a proof"));
    });
    let press = bundle::press_of(&opened).expect("a press");
    c.bench_function("all checks of one level, every face set", |b| {
        b.iter(|| checks::prove(&opened.kit, &opened.theme, Some(&press), &[Level::Standard]).expect("a proof"));
    });
}

/// The demo kit with its first puzzle so many times over, each with a lock, a box, spots and a code of its own, in
/// strands of ten: the word of each lies in the box before.
fn large(count: usize) -> Opened {
    let mut opened = demo();
    let kit = &mut opened.kit;
    let (puzzle, lock, item) = (kit.puzzles[0].clone(), kit.locks[0].clone(), kit.boxes[0].clone());
    let setup = puzzle.setup.with_field("word", "\"WINTER\"").expect("the setup has a word");
    let spot = kit.spots.first().expect("a spot").id.clone();
    for (n, code) in unlike(count).into_iter().enumerate() {
        // Spelled, so that no number in a name is a code of the demo kit.
        let spelled: String = n.to_string().bytes().map(|digit| char::from(digit - b'0' + b'k')).collect();
        let name = format!("large-{spelled}");
        let id = LockId::new(&name).expect("a name");
        let kind = LockKind::Digits(6);
        kit.locks.push(Lock { id: id.clone(), name: format!("the lock {spelled}"), kind, ..lock.clone() });
        let own = BoxId::new(&name).expect("a name");
        kit.boxes.push(BoxDef {
            id: own,
            name: format!("the box {spelled}"),
            locks: vec![id.clone()],
            label: None,
            printed: None,
            ..item.clone()
        });
        let mut more = puzzle.clone();
        more.id = PuzzleId::new(&name).expect("a name");
        more.title = format!("The lamp {spelled}");
        more.opens = id;
        more.answer = code;
        more.setup = setup.clone();
        let before = kit.boxes.get(kit.boxes.len() - 2).map(|before| before.id.clone());
        for (part, place) in more.parts.values_mut().enumerate() {
            *place = match before.clone().filter(|_| n % 10 > 0 && part > 0) {
                Some(before) => Place::Box(before),
                None => Place::Spot(spot.clone()),
            };
        }
        kit.puzzles.push(more);
    }
    opened
}

/// Codes of six digits of which no two have the same digits or differ on one wheel only.
fn unlike(count: usize) -> Vec<String> {
    let (mut digits, mut wheels, mut codes) = (BTreeSet::new(), BTreeSet::new(), Vec::new());
    // Steps by a prime come to every number once, and to neighbours late.
    for number in (0_u32..1_000_000).map(|n| n.wrapping_mul(388_211) % 1_000_000) {
        let code = format!("{number:06}");
        let mut sorted = code.clone().into_bytes();
        sorted.sort_unstable();
        let open: Vec<String> = (0..6).map(|at| format!("{}-{}", &code[..at], &code[at + 1..])).collect();
        if codes.len() < count && !digits.contains(&sorted) && !open.iter().any(|wheel| wheels.contains(wheel)) {
            digits.insert(sorted);
            wheels.extend(open);
            codes.push(code);
        }
    }
    codes
}

/// What is included: texts filled, every puzzle laid out and read, every piece made, the flow, all checks. Nothing is
/// set in type, and mends that have to be tried are looked for after the findings are shown.
/// What an edit costs that changes an estimate: other edits leave the rehearsal as it is.
fn rehearsing(c: &mut Criterion) {
    for (name, opened) in
        [("the demo kit", demo()), ("200 puzzles more", large(200)), ("1,900 puzzles more", large(1_900))]
    {
        let party = Party::new(&opened.kit, &opened.theme, Level::Standard).expect("a party");
        let stage = Stage::new(&opened.kit, &party.parts(&opened.kit), Level::Standard).expect("a stage");
        let mut group = c.benchmark_group("rehearsal of one level");
        group.sample_size(20).bench_function(name, |b| {
            b.iter(|| rehearse(black_box(&stage), stage.usual_runs()).expect("a rehearsal"));
        });
        group.finish();
    }
}

fn proving_large(c: &mut Criterion) {
    let mut group = c.benchmark_group("all checks of one level, nothing set");
    group.sample_size(10);
    for count in [200, 2_000] {
        let opened = large(count);
        group.bench_function(format!("{count} puzzles, afresh"), |b| {
            b.iter(|| Prover::default().prove(&opened.kit, &opened.theme, None, &[Level::Standard]).expect("a proof"));
        });
        let mut prover = Prover::default();
        let mut kit = opened.kit.clone();
        group.bench_function(format!("{count} puzzles, after one edit"), |b| {
            b.iter(|| {
                kit.puzzles[0].title.push('x');
                prover.prove(&kit, &opened.theme, None, &[Level::Standard]).expect("a proof")
            });
        });
    }
    group.finish();
}

/// One edit of the demo kit, checked again as the window does: at all three levels, every face set.
fn editing(c: &mut Criterion) {
    let opened = demo();
    let press = bundle::press_of(&opened).expect("a press");
    let mut group = c.benchmark_group("one edit checked again");
    for (name, press) in [("three levels, nothing set", None), ("three levels, every face set", Some(&press))] {
        let mut prover = Prover::default();
        let mut kit = opened.kit.clone();
        let mut count = 0;
        group.bench_function(name, |b| {
            b.iter(|| {
                count += 1;
                kit.puzzles[0].hints.nudge = format!("Look again, {count} times.");
                prover.prove(&kit, &opened.theme, press, &Level::ALL).expect("a proof")
            });
        });
        let mut prover = Prover::default();
        group.bench_function(format!("{name}, at one level"), |b| {
            b.iter(|| {
                count += 1;
                kit.puzzles[0].hints.nudge = format!("Look again, {count} times.");
                prover.prove(&kit, &opened.theme, press, &[Level::Standard]).expect("a proof")
            });
        });
    }
    group.finish();
}

fn exporting(c: &mut Criterion) {
    let opened = demo();
    let mut group = c.benchmark_group("export");
    group.sample_size(10);
    let colour = || vec![Edition::Colour];
    for (name, papers, levels, editions) in [
        ("one paper, one level", vec![Paper::A4], vec![Level::Standard], colour()),
        ("both papers, three levels", Paper::ALL.to_vec(), Level::ALL.to_vec(), colour()),
        ("both papers, three levels, all editions", Paper::ALL.to_vec(), Level::ALL.to_vec(), Edition::ALL.to_vec()),
    ] {
        let folder = tempfile::tempdir().expect("a folder");
        let out: PathBuf = folder.path().join("out");
        let options = Options { papers, levels, editions, out, ..Options::default() };
        group.bench_function(name, |b| {
            b.iter(|| bundle::export(&opened, &options, &|_| Go::On).expect("a bundle"));
        });
    }
    group.finish();
}

/// The sheets of one paper and one level alone, nothing remembered from before: set and written as PDF, file beside file
/// as an export does it; and written alone, from pages that are set, which is what a browser does with finished drawings.
/// `tests/beside_chromium.sh` prints the same pages by a browser.
fn printing(c: &mut Criterion) {
    let opened = demo();
    let party = Party::new(&opened.kit, &opened.theme, Level::Standard).expect("a party");
    let audiences = [Audience::Players, Audience::Hints, Audience::Host];
    let letter = party.letter(&opened.theme, Paper::A4.safe_size()).expect("a letter");
    let pieces: Vec<_> = std::iter::once(letter).chain(party.pieces.clone()).collect();
    let laid = |audience| impose(&pieces, Paper::A4, audience, &party.script.title).expect("sheets");
    let sheets: Vec<Vec<_>> = audiences.into_iter().map(laid).collect();
    let mut group = c.benchmark_group("print");
    group.sample_size(10);
    group.bench_function("the sheets of one paper, set and written", |b| {
        b.iter(|| {
            comemo::evict(0);
            let press = bundle::press_of(&opened).expect("a press");
            let pdf = |sheets: &Vec<_>| press.sheets(sheets, &DocInfo::default()).and_then(|set| set.pdf());
            let bytes: usize = sheets.par_iter().map(|sheets| pdf(sheets).expect("a document").len()).sum();
            black_box(bytes)
        });
    });
    let press = bundle::press_of(&opened).expect("a press");
    let set = |sheets: &Vec<_>| press.sheets(sheets, &DocInfo::default()).expect("a document");
    let pages: Vec<_> = sheets.iter().map(set).collect();
    group.bench_function("finished pages, written", |b| {
        b.iter(|| {
            comemo::evict(0);
            let bytes: usize = pages.par_iter().map(|pages| pages.pdf().expect("a file").len()).sum();
            black_box(bytes)
        });
    });
    group.finish();
}

criterion_group!(
    benches,
    keystroke,
    proving,
    proving_large,
    rehearsing,
    editing,
    exporting,
    printing,
    season::redressing,
    season::dragging,
    solvers::proving,
    solvers::making
);
criterion_main!(benches);
