//! What the host prepares, and whose work a kit holds.

use inklatch::files::VPath;
use inklatch::kit::material::{Need, PrepStep};

use super::{Row, computed, row};

pub fn host() -> Vec<Row> {
    vec![
        computed(
            "supply-missing",
            "a step of \"The cuff\" names \"glue\", and no list has white glue",
            |party, _| party.puzzles[0].prep.push(step_of("Fix both with glue.", None)),
            // A word within a word is another word, and what another step takes is on the list.
            |party, _| {
                party.puzzles[0].prep.push(step_of("Fix both with glue; no taped edge.", None));
                party.puzzles[1].prep.push(step_of("Paste it.", Some("glue")));
            },
        ),
        computed(
            "supply-missing",
            "a step of \"The cuff\" takes `moon-dust`, which is on no list",
            |party, _| party.puzzles[0].prep.push(step_of("Strew it.", Some("moon-dust"))),
            |_, _| {},
        ),
        row(
            "dry-time-late",
            "and the host has 20 minutes",
            |case| case.kit.prep_minutes = Some(20),
            |case| case.kit.prep_minutes = Some(7 * 24 * 60),
        ),
        row(
            "licence-missing",
            "does not say who drew it",
            |case| case.theme.theme.credit = "  ".into(),
            // The font is bundled, with its licence.
            |case| drop(case.kit.look.lettering.insert("hand".into(), "Alegreya".into())),
        ),
        row(
            "licence-missing",
            "the font Somebody Sans (hand) has no source and no licence",
            |case| drop(case.kit.look.lettering.insert("hand".into(), "Somebody Sans".into())),
            |case| {
                case.kit.look.lettering.insert("hand".into(), "Somebody Sans".into());
                case.kit.credits.insert("Somebody Sans".into(), "A. Maker, OFL 1.1".into());
            },
        ),
        row(
            "licence-missing",
            "the picture art/owl.svg has no source and no licence",
            |case| case.kit.notes[0].picture = Some(VPath::new("art/owl.svg").unwrap()),
            |case| {
                case.kit.notes[0].picture = Some(VPath::new("art/owl.svg").unwrap());
                case.kit.credits.insert("art/owl.svg".into(), "my own".into());
            },
        ),
    ]
}

/// A step of a host's preparation that takes one material at most.
fn step_of(what: &str, material: Option<&'static str>) -> PrepStep {
    let needs = material.map(|material| Need { material, amount: 1.0 }).into_iter().collect();
    PrepStep { key: "more", what: what.into(), needs, hands: 1.0, wait: 0.0, after: Vec::new() }
}
