use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use inklatch::units::Mm;
use serde_json::{Value, json};

use crate::common::{dressed, lay_out, printed, reread};

const THREE: LockKind = LockKind::Digits(3);

fn view(setup: &str, answer: &str, seed: u64) -> Value {
    lay_out(find("overlay-sheets").unwrap(), setup, answer, &THREE, seed).unwrap().json()
}

fn read(view: &Value) -> Readings {
    find("overlay-sheets").unwrap().view(view).unwrap().readings(&THREE, &mut Budget::default())
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

fn sheet(view: &Value, name: &str) -> Vec<Vec<bool>> {
    let rows: Vec<String> = serde_json::from_value(view[name].clone()).unwrap();
    rows.iter().map(|row| row.chars().map(|cell| cell == '#').collect()).collect()
}

/// The four cells of each block, in reading order.
fn blocks(sheet: &[Vec<bool>]) -> Vec<Vec<[bool; 4]>> {
    sheet
        .chunks(2)
        .map(|rows| rows[0].chunks(2).zip(rows[1].chunks(2)).map(|(a, b)| [a[0], a[1], b[0], b[1]]).collect())
        .collect()
}

fn dark(block: [bool; 4]) -> usize {
    block.iter().filter(|cell| **cell).count()
}

#[test]
fn every_block_of_either_sheet_is_half_dark_and_the_overlay_is_dark_where_a_digit_is() {
    for seed in 0..50 {
        let view = view("()", "803", seed);
        let (under, over) = (blocks(&sheet(&view, "under")), blocks(&sheet(&view, "over")));
        let mut full = 0;
        for (a, b) in under.iter().flatten().zip(over.iter().flatten()) {
            assert_eq!((dark(*a), dark(*b)), (2, 2));
            let both = dark([a[0] | b[0], a[1] | b[1], a[2] | b[2], a[3] | b[3]]);
            assert!(both == 4 || (both == 2 && a == b), "a block is neither grey nor dark");
            full += usize::from(both == 4);
        }
        // The digits are the same whatever the noise: 8, 0 and 3 in lines two points wide.
        assert_eq!(full, 46 + 44 + 44, "seed {seed}");
    }
}

/// Naor and Shamir 1994: a sheet alone is equally likely whatever the picture. For every place, the share of seeds in
/// which its block is each of the six patterns is 1/6, inside the digits as outside them.
#[test]
fn a_sheet_alone_is_the_same_noise_inside_and_outside_the_digits() {
    const SEEDS: u64 = 200;
    let mut counts: [[[usize; 16]; 2]; 2] = [[[0; 16]; 2]; 2];
    for seed in 0..SEEDS {
        let view = view("()", "259", seed);
        let sheets = [blocks(&sheet(&view, "under")), blocks(&sheet(&view, "over"))];
        for (under, over) in sheets[0].iter().zip(&sheets[1]) {
            for (a, b) in under.iter().copied().zip(over.iter().copied()) {
                let inside = usize::from(a != b);
                for (sheet, block) in [a, b].into_iter().enumerate() {
                    let pattern = block.iter().fold(0, |bits, cell| bits * 2 + usize::from(*cell));
                    counts[sheet][inside][pattern] += 1;
                }
            }
        }
    }
    for (sheet, places) in counts.iter().enumerate() {
        for (inside, patterns) in places.iter().enumerate() {
            let all: usize = patterns.iter().sum();
            let used: Vec<usize> = patterns.iter().copied().filter(|count| *count > 0).collect();
            assert_eq!(used.len(), 6, "sheet {sheet}");
            // Pearson's chi-square with five degrees of freedom: above 20.5 once in a thousand (NIST/SEMATECH
            // e-Handbook of Statistical Methods, table 1.3.6.7.4: 20.515).
            let each = all as f64 / 6.0;
            let chi: f64 = used.iter().map(|count| (*count as f64 - each).powi(2) / each).sum();
            assert!(chi < 20.515, "sheet {sheet}, inside {inside}: {used:?}, chi-square {chi}");
        }
    }
}

#[test]
fn what_shows_through_on_one_sheet_alone_is_a_reading() {
    let mut view = view("()", "417", 3);
    assert_eq!(answers(&read(&view)), ["417"]);
    // The under sheet carries the overlay itself.
    let laid: Vec<String> = sheet(&view, "under")
        .iter()
        .zip(sheet(&view, "over"))
        .map(|(a, b)| a.iter().zip(b).map(|(a, b)| if *a || b { '#' } else { '.' }).collect())
        .collect();
    view["under"] = json!(laid);
    let found = read(&view);
    assert!(found.remarks.iter().any(|remark| remark.contains("not every block")), "{found:?}");
    // Another number shows on the clear sheet by itself.
    let mut two = self::view("()", "417", 3);
    let other = self::view("()", "552", 9);
    let laid: Vec<String> = sheet(&other, "under")
        .iter()
        .zip(sheet(&other, "over"))
        .map(|(a, b)| a.iter().zip(b).map(|(a, b)| if *a || b { '#' } else { '.' }).collect())
        .collect();
    two["over"] = json!(laid);
    assert!(answers(&read(&two)).contains(&"552"));
    assert_ne!(read(&two).verdict("417"), Verdict::One);
}

#[test]
fn sheets_that_do_not_fit_show_nothing() {
    let mut view = view("()", "417", 3);
    let mut rows: Vec<String> = serde_json::from_value(view["over"].clone()).unwrap();
    rows.rotate_left(1);
    view["over"] = json!(rows);
    assert!(read(&view).list.is_empty());
    rows.pop();
    view["over"] = json!(rows);
    let found = read(&view);
    assert!(found.list.is_empty() && found.remarks[0].contains("one size"), "{found:?}");
}

#[test]
fn both_sheets_have_their_cells_and_marks_at_the_same_place() {
    let mechanic = find("overlay-sheets").unwrap();
    for setup in ["()", "(large: false)"] {
        let laid = lay_out(mechanic, setup, "417", &THREE, 1).unwrap();
        let mut sides = printed("overlay-sheets", &THREE, laid.as_ref());
        assert_eq!(reread(mechanic, &THREE, &sides).unwrap().unwrap().json(), laid.json(), "{setup}");
        // Cells are a millimetre at 94 % still.
        let narrow = |side: &inklatch::face::proof::Printed| {
            // The dots are the last picture laid on each sheet.
            let last = side.arts.len() - 1;
            let four = side
                .shapes
                .iter()
                .filter(|shape| shape.art == last && shape.contours[0].points.len() == 4 && shape.fill.is_some());
            four.map(|shape| shape.rect.w.min(shape.rect.h).get()).fold(f64::INFINITY, f64::min)
        };
        let cells: Vec<f64> = sides.iter().filter(|side| !side.arts.is_empty()).map(narrow).collect();
        assert!(cells.iter().all(|cell| cell * 0.94 >= 1.0), "{setup}: {cells:?}");
        // One sheet printed at another place of its paper no longer fits.
        for shape in &mut sides[1].shapes {
            shape.rect.x += Mm::new(0.8);
            for point in shape.contours.iter_mut().flat_map(|contour| &mut contour.points) {
                point.0 += Mm::new(0.8);
            }
        }
        assert!(reread(mechanic, &THREE, &sides).unwrap().is_err());
    }
}

#[test]
fn what_would_have_cells_under_a_millimetre_is_refused() {
    let mechanic = find("overlay-sheets").unwrap();
    let trouble = lay_out(mechanic, "(large: false)", "123456", &LockKind::Digits(6), 1).err().unwrap();
    assert!(trouble.hints[0].contains("large: true"), "{trouble}");
    for (setup, answer) in [("()", "123456"), ("(large: false)", "12345")] {
        let lock = LockKind::Digits(answer.len().try_into().unwrap());
        let laid = lay_out(mechanic, setup, answer, &lock, 1).unwrap();
        dressed("overlay-sheets", &lock, |cx| laid.pieces(cx)).unwrap();
    }
    assert!(lay_out(mechanic, "()", "1234567", &LockKind::Digits(7), 1).is_err());
}

#[test]
fn digits_stand_two_in_a_row_and_are_read_row_by_row() {
    let mechanic = find("overlay-sheets").unwrap();
    let lock = LockKind::Digits(3);
    let (two, three) = (
        lay_out(mechanic, "()", "41", &LockKind::Digits(2), 1).unwrap().json(),
        lay_out(mechanic, "()", "417", &lock, 1).unwrap(),
    );
    let (one, both) = (sheet(&two, "under"), sheet(&three.json(), "under"));
    assert_eq!((both.len(), both[0].len()), (one.len() * 2, one[0].len()));
    assert_eq!(answers(&three.readings(&lock, &mut Budget::default())), ["417"]);
    // With the rows the other way round another number stands there.
    let turned = |name: &str| {
        let mut rows: Vec<String> = serde_json::from_value(three.json()[name].clone()).unwrap();
        rows.rotate_left(one.len());
        rows
    };
    let mut other = three.json();
    (other["under"], other["over"]) = (json!(turned("under")), json!(turned("over")));
    assert_eq!(answers(&mechanic.view(&other).unwrap().readings(&lock, &mut Budget::default())), ["741"]);
}
