//! Printed props at true size: measured in a rendering by poppler at 300 dots to the inch, against what was asked for
//! and against published sizes (refs/08_sizes.json: ISO 216, ANSI, ISO/IEC 7810).

use std::collections::BTreeMap;

use inklatch::diag::Level;
use inklatch::face::Audience;
use inklatch::files::{Disk, Files as _, VPath};
use inklatch::kit::{Form, Printed};
use inklatch::party::Party;
use inklatch::print::DocInfo;
use inklatch::sheet::{Paper, impose};
use inklatch::theme::{builtin_ids, load_builtin};
use inklatch::units::Rect;
use serde::Deserialize;

use super::{DPI, MM_PER_INCH, Page, TOLERANCE, dot};
use crate::common::PRESS;
use crate::props::{all, kit_of};

#[derive(Deserialize)]
struct Refs {
    cases: Vec<Published>,
}

#[derive(Deserialize)]
struct Published {
    name: String,
    w_mm: f64,
    h_mm: f64,
    w_pt: f64,
    h_pt: f64,
}

fn published() -> Vec<Published> {
    let refs: Refs = serde_json::from_str(include_str!("../refs/08_sizes.json")).unwrap();
    refs.cases
}

#[test]
fn papers_have_their_published_sizes() {
    let a4 = published().into_iter().find(|size| size.name == "A4").unwrap();
    assert_eq!((Paper::A4.size().w.get(), Paper::A4.size().h.get()), (a4.w_mm, a4.h_mm));
    for size in published() {
        let of = |mm: f64| inklatch::units::Mm::new(mm).to_pt().get();
        assert!(
            (of(size.w_mm) - size.w_pt).abs() < 0.001 && (of(size.h_mm) - size.h_pt).abs() < 0.001,
            "{}",
            size.name
        );
    }
    // Letter is half of Tabloid (ANSI B, 11 × 17 in), which is in the table.
    let b = published().into_iter().find(|size| size.name == "Tabloid").unwrap();
    let letter = Paper::Letter.size();
    assert!((letter.h.get() - b.w_mm).abs() < 0.05 && (letter.w.get() * 2.0 - b.h_mm).abs() < 0.05);
}

/// The outermost dots of a cut line: left, right, top, bottom, in millimetres. Looked for from a little outside its
/// place inwards, so that neither cut marks nor labels are taken for it.
fn extent(page: &Page, rect: Rect) -> [f64; 4] {
    const OUT: f64 = 0.4;
    const IN: f64 = 1.0;
    // A thin line may lie across two dots.
    let line = |x: usize, y: usize| page.grey[y * page.width + x] < 235;
    let reach = dot(OUT + IN);
    let (left, right, top, bottom) = (rect.x.get(), rect.right().get(), rect.y.get(), rect.bottom().get());
    let mm = |dots: usize| dots as f64 / DPI * MM_PER_INCH;
    let rows = || dot(top)..dot(bottom);
    let columns = || dot(left)..dot(right);
    let first = |from: f64| dot(from - OUT)..dot(from - OUT) + reach;
    let last = |from: f64| (dot(from + OUT) - reach..dot(from + OUT)).rev();
    let x0 = rows().filter_map(|y| first(left).find(|x| line(*x, y))).min().expect("a left edge");
    let x1 = rows().filter_map(|y| last(right).find(|x| line(*x, y))).max().expect("a right edge");
    let y0 = columns().filter_map(|x| first(top).find(|y| line(x, *y))).min().expect("an upper edge");
    let y1 = columns().filter_map(|x| last(bottom).find(|y| line(x, *y))).max().expect("a lower edge");
    [mm(x0), mm(x1 + 1), mm(y0), mm(y1 + 1)]
}

/// Measures every piece on both papers; answers what was measured, by piece, upright.
fn measured(kit: &inklatch::kit::Kit, theme: &str) -> Option<BTreeMap<String, (f64, f64)>> {
    let theme = load_builtin(&inklatch::ids::ThemeId::new(theme).unwrap()).unwrap();
    let party = Party::new(kit, &theme, Level::Standard).unwrap();
    assert!(party.troubles.is_empty(), "{:?}", party.troubles);
    let folder = tempfile::tempdir().unwrap();
    let mut found = BTreeMap::new();
    for paper in Paper::ALL {
        let sheets = impose(&party.pieces, paper, Audience::Players, "Props").unwrap();
        let info = DocInfo { title: "Props".into(), ..DocInfo::default() };
        let name = format!("{}.pdf", paper.word());
        let bytes = PRESS.sheets(&sheets, &info).unwrap().pdf().unwrap();
        Disk::new(folder.path()).write(&VPath::new(&name).unwrap(), &bytes).unwrap();
        let pdf = folder.path().join(name);
        for (index, sheet) in sheets.iter().enumerate() {
            let page = Page::of(&pdf, index + 1)?;
            for placed in sheet.placed.iter().filter(|placed| placed.cut) {
                let [left, right, top, bottom] = extent(&page, placed.rect);
                // From the middle of the line to the middle of the line: it is a quarter of a point wide.
                let line = 0.25 / 72.0 * MM_PER_INCH;
                let (across, down) = (right - left - line, bottom - top - line);
                let (w, h) = if placed.turned { (down, across) } else { (across, down) };
                let want = (placed.face.size.w.get(), placed.face.size.h.get());
                let off = (w - want.0).abs().max((h - want.1).abs());
                assert!(off <= TOLERANCE, "{} on {}: {w:.2} × {h:.2}, not {want:?}", placed.piece, paper.word());
                found.insert(placed.piece.clone(), (w, h));
            }
        }
    }
    Some(found)
}

/// One of everything, in every theme.
#[test]
fn every_prop_measures_what_it_is_made_for() {
    for theme in builtin_ids() {
        let Some(found) = measured(&kit_of(all()), theme.as_str()) else { return };
        assert!(found.len() > 35, "{}", found.len());
    }
}

/// Sizes asked for by number, and what is measured: no value of ours in between.
#[test]
fn sizes_by_number() {
    let of = |form, size| Printed { size, text: "Words".into(), ..Printed::fresh(form) };
    let mut wanted: Vec<(Printed, (f64, f64))> = vec![
        // ISO/IEC 7810 ID-1: 85.60 × 53.98 mm.
        (of(Form::Label, (85.60, 53.98)), (85.60, 53.98)),
        (of(Form::Tag, (53.98, 85.60)), (53.98, 85.60)),
        (of(Form::Disc, (77.0, 77.0)), (77.0, 77.0)),
        // Two sides, one above the other.
        (of(Form::Tent, (90.0, 50.0)), (90.0, 100.0)),
        // 230 mm round and a tab of 12 mm.
        (of(Form::Band, (230.0, 40.0)), (242.0, 40.0)),
        (of(Form::Strip, (250.0, 40.0)), (250.0, 40.0)),
        (Printed { text: "A".into(), ..of(Form::Banner, (250.0, 197.0)) }, (250.0, 197.0)),
        // 20 + 90 + 8 + 90 + 20 mm.
        (Printed { spine: 8.0, flaps: 20.0, ..of(Form::Cover, (90.0, 120.0)) }, (228.0, 120.0)),
        // A front of 115 × 85 with two tabs of 12; a flap of 0.42 of its height above, a back 3 mm shorter below.
        (of(Form::Envelope, (110.0, 80.0)), (139.0, 85.0 * 1.42 + 82.0)),
    ];
    let sizes = published();
    let small = sizes.iter().filter(|size| size.w_mm <= 197.0 && size.h_mm <= 250.0);
    wanted.extend(small.map(|size| (of(Form::Label, (size.w_mm, size.h_mm)), (size.w_mm, size.h_mm))));
    let kit = kit_of(wanted.iter().map(|(printed, _)| printed.clone()).collect());
    let Some(found) = measured(&kit, "midwinter") else { return };
    for (at, (printed, (w, h))) in wanted.iter().enumerate() {
        let id = format!("prop-prop-{at}");
        let banner = format!("{id}-1");
        let (mw, mh) = found.get(&id).or_else(|| found.get(&banner)).unwrap();
        assert!((mw - w).abs() <= TOLERANCE && (mh - h).abs() <= TOLERANCE, "{printed:?}: {mw:.2} × {mh:.2}");
    }
}
