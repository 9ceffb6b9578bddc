//! Codes, and what tells them.

use inklatch::kit::LockKind;

use super::{Row, mending, row, setup};
use crate::checks::Case;

/// The collar opens to a word said to the host.
fn spoken(case: &mut Case, answer: &str) {
    case.kit.locks[2].kind = LockKind::Spoken;
    case.kit.puzzles[2].answer = answer.into();
}

/// The collar opens a lock with these letters and digits on its first wheel.
fn wheels(case: &mut Case, wheel: &str, answer: &str) {
    case.kit.locks[2].kind = LockKind::Letters(vec![wheel.into(), "AEI".into(), "RST".into()]);
    case.kit.puzzles[2].answer = answer.into();
}

/// The log's digits stand on two loose slips.
fn slips(case: &mut Case, baseline: &str) {
    case.kit.puzzles[1].answer = "1634".into();
    let places = "places: [(name: \"the first slip\"), (name: \"the second slip\")]";
    setup(case, 1, &format!("({places}, order: listed, loose: true, {baseline})"));
}

pub fn codes() -> Vec<Row> {
    vec![
        mending(row(
            "same-code",
            "the bell padlock and the moon padlock both open with 582",
            |case| case.kit.puzzles[2].answer = "582".into(),
            |case| case.kit.puzzles[2].answer = "285".into(),
        )),
        mending(row(
            "near-code",
            "582 of the bell padlock and 285 of the moon padlock are each other backwards",
            |case| case.kit.puzzles[2].answer = "285".into(),
            // Two wheels apart.
            |case| case.kit.puzzles[2].answer = "597".into(),
        )),
        mending(row(
            "guessable-code",
            "321 of the moon padlock is a run",
            |case| case.kit.puzzles[2].answer = "321".into(),
            |case| case.kit.puzzles[2].answer = "324".into(),
        )),
        row(
            "look-alike-symbol",
            "O in the answer of \"The collar\" can be taken for 0",
            |case| spoken(case, "OWL 7"),
            |case| spoken(case, "OWL"),
        ),
        row(
            "look-alike-symbol",
            "S in the answer of \"The collar\" can be taken for 5",
            |case| wheels(case, "S5A", "SAS"),
            |case| wheels(case, "STA", "SAS"),
        ),
        mending(row(
            "six-or-nine",
            "16 lies loose in \"The log\" and reads as 91 upside down",
            |case| slips(case, "baseline: false"),
            |case| slips(case, "baseline: true"),
        )),
        row(
            "idle-spinning",
            "all 100 codes of the bell padlock are tried in 5 minutes",
            |case| {
                case.kit.locks[0].kind = LockKind::Digits(2);
                case.kit.puzzles[0].answer = "58".into();
                case.kit.puzzles[0].minutes = Some(8.0);
                setup(case, 0, "(word: \"OW\")");
            },
            |case| case.kit.puzzles[0].minutes = Some(8.0),
        ),
        mending(row(
            "code-in-plain-sight",
            "the code of the moon padlock stands in the letter",
            |case| case.kit.letter.body.push_str(" It was six, one, seven when it stopped."),
            |case| case.kit.letter.body.push_str(" It has hung there since 1617."),
        )),
    ]
}
