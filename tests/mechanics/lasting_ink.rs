use inklatch::face::Audience;
use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

/// Symbols as text and whether they stay, in rows, 20 mm apart.
fn view(carrier: &str, rows: &[&[(char, bool)]], start: bool, direction: &str) -> Value {
    let mut symbols = Vec::new();
    for (row, list) in rows.iter().enumerate() {
        for (at, (text, lasting)) in list.iter().enumerate() {
            symbols.push(json!({ "text": text, "lasting": lasting, "row": row, "at": 10.0 + 20.0 * at as f64 }));
        }
    }
    json!({
        "carrier": carrier, "symbols": symbols, "start": start, "direction": direction, "around_mm": 120.0,
        "pitch_mm": 20.0, "printed": true, "lid_mm": 70.0, "label_title": "", "label_text": "",
    })
}

fn read(view: &Value) -> Readings {
    find("lasting-ink").unwrap().view(view).unwrap().readings(&LockKind::Digits(3), &mut Budget::default())
}

fn answers(view: &Value) -> Vec<String> {
    read(view).list.into_iter().map(|reading| reading.answer).collect()
}

const ROUND: &[(char, bool)] = &[('9', false), ('4', true), ('7', true), ('2', false), ('1', true), ('3', false)];

#[test]
fn a_jar_with_start_and_way_reads_one_way() {
    assert_eq!(answers(&view("jar", &[ROUND], true, "rightwards")), ["471"]);
    assert_eq!(answers(&view("jar", &[ROUND], true, "leftwards")), ["174"]);
}

#[test]
fn without_a_way_it_also_reads_backwards() {
    assert_eq!(answers(&view("jar", &[ROUND], true, "unstated")), ["174", "471"]);
}

#[test]
fn without_a_start_it_has_three_rotations() {
    let found = read(&view("jar", &[ROUND], false, "rightwards"));
    assert_eq!(found.list.iter().map(|reading| reading.answer.as_str()).collect::<Vec<_>>(), ["147", "471", "714"]);
    assert_eq!(found.verdict("471"), Verdict::Several);
    assert_eq!(answers(&view("jar", &[ROUND], false, "unstated")).len(), 6);
}

#[test]
fn the_order_comes_from_places_not_from_the_list() {
    let mut mixed = view("jar", &[ROUND], true, "rightwards");
    let symbols = mixed["symbols"].as_array_mut().unwrap();
    symbols.reverse();
    assert_eq!(answers(&mixed), ["471"]);
}

#[test]
fn a_tile_reads_in_rows_and_upside_down_when_it_can() {
    let rows: &[&[(char, bool)]] = &[&[('6', true), ('5', false)], &[('0', true), ('8', true)]];
    assert_eq!(answers(&view("tile", rows, true, "unstated")), ["608"]);
    assert_eq!(answers(&view("tile", rows, false, "unstated")), ["608", "809"]);
    let upright: &[&[(char, bool)]] = &[&[('6', true), ('5', false)], &[('4', true), ('8', true)]];
    assert_eq!(answers(&view("tile", upright, false, "unstated")), ["648"], "a 4 shows which way is up");
}

#[test]
fn ink_too_close_is_remarked() {
    assert!(read(&view("jar", &[ROUND], true, "rightwards")).remarks.is_empty());
    let mut close = view("jar", &[ROUND], true, "rightwards");
    close["symbols"][0]["at"] = json!(20.0);
    assert!(read(&close).remarks[0].contains("finger"), "{:?}", read(&close).remarks);
}

#[test]
fn leftwards_letters_and_tiles_are_laid_out() {
    let mechanic = find("lasting-ink").unwrap();
    let letters = LockKind::Letters(vec!["BT".into(), "EO".into(), "LN".into(), "LS".into()]);
    for setup in [
        "(direction: leftwards)",
        "(carrier: tile, around_mm: 170.0)",
        "(carrier: tile, around_mm: 170.0, start: false, decoys: 30)",
    ] {
        for seed in 0..20 {
            let laid = lay_out(mechanic, setup, "BELL", &letters, seed).unwrap();
            let found = laid.readings(&letters, &mut Budget::default());
            assert_eq!(found.verdict("bell"), Verdict::One, "{setup}: {found:?}");
        }
    }
}

#[test]
fn too_much_writing_is_refused() {
    let mechanic = find("lasting-ink").unwrap();
    for setup in ["(decoys: 60)", "(around_mm: 20.0)", "(carrier: tile, around_mm: 400.0)", "(lid_mm: 3.0)"] {
        let trouble = lay_out(mechanic, setup, "471", &LockKind::Digits(3), 1).expect_err("refused");
        assert!(!trouble.hints.is_empty(), "{trouble}");
    }
}

#[test]
fn guests_get_what_stays_and_the_host_gets_all() {
    let lock = LockKind::Digits(3);
    let laid = lay_out(find("lasting-ink").unwrap(), "()", "471", &lock, 1).unwrap();
    dressed("lasting-ink", &lock, |cx| {
        let pieces = laid.pieces(cx).unwrap();
        let runs = |audience: Audience| -> usize {
            let strips = pieces.iter().filter(|piece| piece.part == "jar" && piece.audience == audience);
            strips.map(|piece| piece.front.runs().count()).sum()
        };
        assert_eq!(runs(Audience::Players), 3, "only what stays is printed for guests");
        assert_eq!(runs(Audience::Host), 17 + 1, "all symbols, and what the brackets mean");
        let lid = pieces.iter().find(|piece| piece.part == "label").unwrap();
        let words: Vec<String> = lid.front.runs().map(|run| run.text.text()).collect();
        assert!(words.iter().any(|text| text.contains("from the thick line to the right")), "{words:?}");
    });
}
