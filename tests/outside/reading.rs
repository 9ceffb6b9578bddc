//! The order of the texts on a piece, which a reader aloud follows, against the order in which a person reads them.

use std::collections::BTreeMap;

use inklatch::bundle;
use inklatch::diag::Level;
use inklatch::face::{Face, Piece, TextRun};
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::sample;
use inklatch::party::Party;
use inklatch::sheet::Paper;
use inklatch::theme::{Palette, builtin_ids, load_builtin};
use inklatch::units::Rect;

/// How much of the lower of two texts must stand beside the other for both to stand in one row.
const ONE_ROW: f64 = 0.5;
/// How far one text may reach over another's edge, in mm, and still stand beside it or below it.
const OVER: f64 = 0.3;

/// Where a run stands as it is read; that of a turned one as its reader holds the piece.
fn place(run: &TextRun) -> Rect {
    let quarter = (run.turn / 90.0).round() as i64;
    if quarter.rem_euclid(2) == 0 {
        return run.rect;
    }
    let (x, y) = (run.rect.x + run.rect.w / 2.0, run.rect.y + run.rect.h / 2.0);
    Rect { x: x - run.rect.h / 2.0, y: y - run.rect.w / 2.0, w: run.rect.h, h: run.rect.w }
}

/// What two lengths share.
fn shared((a, b): (f64, f64), (c, d): (f64, f64)) -> f64 {
    b.min(d) - a.max(c)
}

/// Whether a person reads `other` before `one`: it stands above it, or before it in one row. Columns may be read one
/// after another or row by row.
fn before(other: Rect, one: Rect) -> bool {
    let across = |rect: Rect| (rect.x.get(), rect.right().get());
    let down = |rect: Rect| (rect.y.get(), rect.bottom().get());
    let level = shared(down(other), down(one)) > ONE_ROW * other.h.min(one.h).get();
    if level {
        return other.right().get() <= one.x.get() + OVER;
    }
    other.bottom().get() <= one.y.get() + OVER && shared(across(other), across(one)) > OVER
}

/// Whether two texts stand in cells side by side or one above the other.
fn next_to(a: Rect, b: Rect) -> bool {
    let (dx, dy) = ((a.x - b.x).get().abs(), (a.y - b.y).get().abs());
    let alike = (a.w - b.w).get().abs() < OVER && (a.h - b.h).get().abs() < OVER;
    alike && (dy < 0.1 && dx < a.w.get() * 1.3 || dx < 0.1 && dy < a.h.get() * 1.3)
}

/// Pairs of texts in the wrong order. Texts that are turned otherwise are read in another way, and not compared.
fn out_of_order(face: &Face) -> Vec<String> {
    let runs: Vec<&TextRun> = face.runs().collect();
    let mut found = Vec::new();
    for (at, first) in runs.iter().enumerate() {
        for second in &runs[at + 1..] {
            let (a, b) = (place(second), place(first));
            let symbol = |run: &TextRun| run.text.text().chars().count() <= 2;
            // Scattered symbols have an order of their own, by their values or round a dial; those of a table have not.
            let scattered = symbol(first) && symbol(second) && !next_to(a, b);
            if (first.turn - second.turn).abs() < 1.0 && !scattered && before(a, b) {
                found.push(format!("\"{}\" before \"{}\"", first.text.text(), second.text.text()));
            }
        }
    }
    found
}

fn held(pieces: &[Piece], of: &str, faults: &mut Vec<String>) {
    for piece in pieces {
        for face in [Some(&piece.front), piece.back.as_ref()].into_iter().flatten() {
            let found = out_of_order(face);
            if !found.is_empty() {
                faults.push(format!("{of}: {} has {}, such as {}", piece.id, found.len(), found[0]));
            }
        }
    }
}

#[test]
fn pieces_of_both_kits_are_read_in_the_order_in_which_they_stand() {
    let mut faults = Vec::new();
    for name in bundle::DEMO_KITS {
        let opened = bundle::open_demo(name).unwrap();
        for level in Level::ALL {
            let party = Party::new(&opened.kit, &opened.theme, level).unwrap();
            let letter = party.letter(&opened.theme, Paper::A4.safe_size()).unwrap();
            let of = format!("{name}, {}", level.word());
            held(&party.pieces, &of, &mut faults);
            held(&[letter], &of, &mut faults);
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn samples_of_all_mechanics_are_read_in_the_order_in_which_they_stand() {
    let mut faults = Vec::new();
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap();
        let palette = Palette::new(&theme.theme.palette, &BTreeMap::new()).unwrap();
        for mechanic in MECHANICS {
            let sample = sample(*mechanic, &theme, &palette).unwrap();
            held(&sample.pieces, &format!("{} in {id}", mechanic.meta().id), &mut faults);
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
