//! Mazes, maps, scenes, dots, dominoes and clocks of every kind read back from paper as they were proven, and a drawing
//! that was tampered with does not.

use inklatch::face::proof::Printed;
use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};

use crate::common::{lay_out, printed, reread};

fn sides(mechanic: &str, setup: &str, answer: &str, lock: &LockKind, seed: u64) -> Vec<Printed> {
    let view = lay_out(find(mechanic).unwrap(), setup, answer, lock, seed)
        .unwrap_or_else(|trouble| panic!("{mechanic} {setup} {answer}: {trouble}"));
    printed(mechanic, lock, view.as_ref())
}

fn read(mechanic: &str, lock: &LockKind, sides: &[Printed]) -> Result<Readings, String> {
    let again = reread(find(mechanic).unwrap(), lock, sides).unwrap().map_err(|trouble| trouble.to_string())?;
    Ok(again.readings(lock, &mut Budget::default()))
}

#[test]
fn every_kind_reads_back_in_colour_in_grey_and_small() {
    let (three, four, five) = (LockKind::Digits(3), LockKind::Digits(4), LockKind::Digits(5));
    let pushes = LockKind::Directions(4);
    let letters = LockKind::Letters(vec!["BC".into(), "AE".into(), "LT".into()]);
    let cases = [
        ("fork-maze", "(text: \"Under the *town*:\", cols: 18, rows: 18, work: Deep)", "40718", &five),
        ("fork-maze", "(cols: 6, rows: 7, work: Light)", "ULDR", &pushes),
        (
            "fork-maze",
            "(cols: 14, rows: 12, decoys: 20, start: \"owl\", goal: \"bell\", waymark: \"key\")",
            "UDUD",
            &pushes,
        ),
        ("fork-maze", "(decoys: 0)", "CAT", &letters),
        ("route-map", "(text: \"The *round*:\", work: Deep)", "40718", &five),
        ("route-map", "(cols: 12, rows: 12, others: 24)", "BAT", &letters),
        ("route-map", "(route: Roads, cols: 10, rows: 10, others: 20, work: Deep)", "4071", &four),
        ("route-map", "(route: Roads, work: Light, text: \"Go on to the end, friend:\")", "BET", &letters),
        ("route-map", "()", "RDLU", &pushes),
        ("count-scene", "(work: Deep, text: \"For the *book*:\")", "90817", &five),
        ("count-scene", "(ringed: false, work: Light)", "305", &three),
        ("dot-to-dot", "(step: 4, work: Deep, strays: 14)", "690", &three),
        ("dot-to-dot", "(loose: true, step: 2, work: Fair)", "81234", &five),
        ("dot-to-dot", "(work: Light, strays: 0, text: \"Stars:\")", "5678", &four),
        ("domino-chain", "(card_text: \"After *tea*:\", work: Light)", "4071", &four),
        ("domino-chain", "(work: Deep)", "40718", &five),
        ("clock-faces", "(text: \"The *round*, as he goes it:\", hour_hand: 0.75)", "3129", &four),
        ("clock-faces", "(hour_hand: 0.4)", "1012", &four),
    ];
    for (mechanic, setup, answer, lock) in cases {
        for seed in 0..6 {
            let sides = sides(mechanic, setup, answer, lock, seed);
            let grey: Vec<Printed> = sides.iter().map(Printed::grey).collect();
            let small: Vec<Printed> = sides.iter().map(|side| side.scaled(0.94)).collect();
            for (name, sides) in [("as it is", &sides), ("in grey", &grey), ("at 94 %", &small)] {
                let found =
                    read(mechanic, lock, sides).unwrap_or_else(|t| panic!("{mechanic} {setup} {seed} {name}: {t}"));
                assert_eq!(found.verdict(answer), Verdict::One, "{mechanic} {setup} {seed} {name}: {found:?}");
                assert!(found.remarks.is_empty(), "{mechanic} {setup} {seed} {name}: {found:?}");
            }
        }
    }
}

/// Whether the proof notices: it cannot be read, reads otherwise, or remarks.
fn noticed(mechanic: &str, lock: &LockKind, sides: &[Printed], answer: &str) -> bool {
    read(mechanic, lock, sides).map_or(true, |found| found.verdict(answer) != Verdict::One || !found.remarks.is_empty())
}

#[test]
fn a_wall_that_is_missing_is_noticed() {
    let lock = LockKind::Digits(3);
    let sides = sides("fork-maze", "(cols: 6, rows: 6)", "471", &lock, 2);
    let straight: Vec<usize> =
        (0..sides[0].shapes.len()).filter(|at| sides[0].shapes[*at].segment().is_some()).collect();
    let mut seen = 0;
    for at in &straight {
        // A wall is two lines, its rim and its body: both go.
        let Some((from, to)) = sides[0].shapes[*at].segment() else { continue };
        let mut changed = sides.clone();
        changed[0].shapes.retain(|shape| shape.segment() != Some((from, to)));
        // Without a wall of a tree's there is a second way, if only round a corner; an outer one is a hole.
        seen += usize::from(noticed("fork-maze", &lock, &changed, "471"));
    }
    // A wall between two dead ends off the way may go unseen: it changes nothing that is read.
    assert!(seen * 4 > straight.len(), "{seen} of {}", straight.len());
}

#[test]
fn two_texts_that_change_places_are_noticed() {
    for (mechanic, setup, part) in [
        ("fork-maze", "(decoys: 0)", "maze"),
        ("route-map", "(others: 0)", "map"),
        ("route-map", "(route: Roads, others: 0)", "map"),
        ("clock-faces", "()", "clocks"),
    ] {
        let lock = LockKind::Digits(3);
        let sides = sides(mechanic, setup, "471", &lock, 3);
        let side = sides.iter().position(|side| side.part == part).unwrap();
        let digits: Vec<usize> = (0..sides[side].texts.len())
            .filter(|at| ["4", "7", "1"].contains(&sides[side].texts[*at].text.as_str()))
            .collect();
        let (a, b) = (digits[0], digits[1]);
        let mut changed = sides.clone();
        let (one, two) = (changed[side].texts[a].text.clone(), changed[side].texts[b].text.clone());
        changed[side].texts[a].text = two;
        changed[side].texts[b].text = one;
        // On a clock the figures only matter where a hand points.
        assert!(noticed(mechanic, &lock, &changed, "471") || mechanic == "clock-faces", "{mechanic} {setup}");
    }
}

#[test]
fn what_is_painted_over_or_moved_is_noticed() {
    let lock = LockKind::Digits(3);
    // A pip that goes.
    let sides = sides("domino-chain", "()", "471", &lock, 1);
    let mut changed = sides.clone();
    let dark = changed[0].shapes.iter().position(|shape| shape.stroke.is_none() && shape.rect.w.get() > 3.0).unwrap();
    changed[0].shapes.remove(dark);
    assert!(noticed("domino-chain", &lock, &changed, "471"));
    // A thing of the scene that goes.
    let sides = self::sides("count-scene", "()", "471", &lock, 1);
    let scene = sides.iter().position(|side| side.part == "scene").unwrap();
    let mut seen = 0;
    for art in 0..sides[scene].arts.len() {
        let mut changed = sides.clone();
        changed[scene].shapes.retain(|shape| shape.art != art);
        seen += usize::from(noticed("count-scene", &lock, &changed, "471"));
    }
    assert!(seen >= 12, "only {seen} of the twelve things that count were missed");
    // A dot that slips far from its place.
    let sides = self::sides("dot-to-dot", "(strays: 0)", "171", &lock, 1);
    let mut changed = sides.clone();
    let dot = changed[0]
        .shapes
        .iter()
        .position(|s| s.rect.w.get() < 2.5 && s.rect.w.get() > 1.0 && s.fill.is_some())
        .unwrap();
    changed[0].shapes.remove(dot);
    assert!(noticed("dot-to-dot", &lock, &changed, "171"));
    // The north mark that goes.
    let sides = self::sides("route-map", "()", "471", &lock, 1);
    let map = sides.iter().position(|side| side.part == "map").unwrap();
    let mut changed = sides.clone();
    changed[map].texts.retain(|text| text.text.trim() != "N");
    assert!(noticed("route-map", &lock, &changed, "471"));
}
