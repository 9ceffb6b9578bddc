//! What belongs to what: ids, locks, boxes, tools, parts.

use inklatch::ids::PropId;
use inklatch::kit::{Form, Printed, Prop, PropRole};

use super::{Row, inside, lock, mending, prop, row, setup, spot};
use crate::checks::Case;

/// The tin as an envelope that takes this size, with a card of the last puzzle in it.
fn enveloped(case: &mut Case, size: (f64, f64)) {
    let printed = Some(Printed { size, ..Printed::fresh(Form::Envelope) });
    let item = &mut case.kit.boxes[0];
    item.printed = PropId::new("paper");
    case.kit.props.push(Prop { printed, ..prop("paper", item.place.clone(), "") });
    case.kit.puzzles[2].parts.insert("word-card".into(), inside("tin"));
}

pub fn wiring() -> Vec<Row> {
    vec![
        mending(row(
            "unknown-reference",
            "there is no spot `tabel`",
            |case| case.kit.letter.place = Some(spot("tabel")),
            |case| case.kit.letter.place = None,
        )),
        mending(row(
            "mark-among-pictures",
            "among the pictures of \"The cuff\" is the moon, the mark of the moon padlock",
            |case| {
                case.kit.puzzles[0].mechanic = "count-scene".into();
                setup(case, 0, "(count: [\"moon\", \"key\", \"bell\"])");
            },
            // Its own lock's mark is no other's.
            |case| {
                case.kit.puzzles[0].mechanic = "count-scene".into();
                setup(case, 0, "(count: [\"cup\", \"key\", \"bell\"])");
            },
        )),
        mending(row(
            "id-twice",
            "lock bell-lock is in the kit 2 times",
            |case| case.kit.locks.push(case.kit.locks[0].clone()),
            // A lock and a box may share a name.
            |case| case.kit.locks[0].id = lock("tin"),
        )),
        mending(row(
            "impossible-number",
            "`players` is (8, 4): the least is more than the most",
            |case| case.kit.players = (8, 4),
            |case| case.kit.players = (8, 8),
        )),
        mending(row(
            "answer-off-lock",
            "the answer \"58\" has 2 symbols",
            |case| case.kit.puzzles[0].answer = "58".into(),
            |case| case.kit.puzzles[0].answer = " 582 ".into(),
        )),
        mending(row(
            "lock-without-puzzle",
            "nothing opens the moon padlock, which shuts the chest",
            |case| drop(case.kit.puzzles.pop()),
            |case| {
                case.kit.puzzles.pop();
                let key = PropRole::Key(lock("moon-lock"));
                case.kit.props.push(Prop { role: key, ..prop("key", spot("shelf"), "") });
            },
        )),
        mending(row(
            "puzzle-without-lock",
            "\"The collar\" opens the moon padlock, which hangs on no box",
            |case| drop(case.kit.boxes[1].locks.pop()),
            |case| case.kit.puzzles[2].opens = lock("no-lock"),
        )),
        mending(row(
            "two-puzzles-one-lock",
            "\"The cuff\" and \"The collar\" both open the bell padlock",
            |case| case.kit.puzzles[2].opens = lock("bell-lock"),
            |_| {},
        )),
        mending(row(
            "tool-unnamed",
            "needs a small UV torch",
            |case| case.kit.puzzles[1].tools.clear(),
            |case| case.kit.puzzles[1].tools.push(PropId::new("supper").unwrap()),
        )),
        mending(row(
            "piece-in-no-place",
            "\"The cuff\" has no part `kei-card`, but a place for it",
            |case| drop(case.kit.puzzles[0].parts.insert("kei-card".into(), spot("table"))),
            |case| setup(case, 0, "(word: \"OWL\", card: portrait)"),
        )),
        row(
            "piece-feeds-two",
            "\"The cuff\" and \"The collar\" print the same piece",
            |case| {
                for puzzle in [0, 2] {
                    case.kit.puzzles[puzzle].mechanic = "morse-strip".into();
                    setup(case, puzzle, "()");
                }
            },
            |case| {
                case.kit.puzzles[0].mechanic = "morse-strip".into();
                setup(case, 0, "()");
            },
        ),
        mending(row(
            "lock-unmarked",
            "the bell padlock, the moon padlock with 3 digit wheels cannot be told apart: up to 4 tries",
            |case| case.kit.locks[2].mark = "bell".into(),
            // The only lock of its kind needs no mark.
            |case| case.kit.locks[1].mark.clear(),
        )),
        row(
            "over-hasp",
            "the chest has 7 padlocks on one hasp",
            |case| case.kit.boxes[1].locks.extend((0..5).map(|n| lock(&format!("more-{n}")))),
            |case| case.kit.boxes[1].locks.extend((0..4).map(|n| lock(&format!("more-{n}")))),
        ),
        mending(row(
            "larger-than-envelope",
            "as it lies in the tin, which takes 60 × 60 mm",
            |case| enveloped(case, (60.0, 60.0)),
            |case| enveloped(case, (160.0, 110.0)),
        )),
    ]
}
