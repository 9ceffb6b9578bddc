//! What guests can reach, and in which round.

use inklatch::ids::{BoxId, PropId};
use inklatch::kit::{Apart, Lying};

use super::{Row, inside, lock, mending, prop, row, spot};
use crate::checks::Case;

pub fn flow() -> Vec<Row> {
    vec![
        mending(row(
            "locked-behind-itself",
            "the chest needs the star padlock open; the star padlock opens by \"The log\", which needs the night lamp; \
             the night lamp lies in the chest",
            |case| case.kit.props[0].place = inside("chest"),
            |case| case.kit.props[0].place = spot("shelf"),
        )),
        row(
            "finish-out-of-reach",
            "the chest can never be opened",
            |case| drop(case.kit.puzzles[2].parts.remove("key-card")),
            // Without its note the log could not be read, but the cuff and the collar can.
            |case| case.kit.finish.opens = BoxId::new("tin").unwrap(),
        ),
        row(
            "never-reached",
            "the tin never opens, and one thing lies in it: the bell padlock stays locked",
            |case| drop(case.kit.puzzles[0].parts.remove("key-card")),
            // What is locked behind itself is told elsewhere.
            |case| case.kit.props[0].place = inside("chest"),
        ),
        row(
            "finish-without-it",
            "the last box opens without \"The cuff\"",
            |case| case.kit.props[0].place = spot("shelf"),
            |_| {},
        ),
        row(
            "single-file",
            "3 rounds in a row have one open puzzle",
            |case| {
                for part in case.kit.puzzles[2].parts.values_mut() {
                    *part = inside("drawer");
                }
                let mut drawer = case.kit.boxes[0].clone();
                drawer.id = BoxId::new("drawer").unwrap();
                drawer.locks = vec![lock("star-lock")];
                case.kit.boxes.push(drawer);
                case.kit.boxes[1].locks = vec![lock("moon-lock")];
            },
            |case| case.kit.puzzles[2].parts.values_mut().for_each(|part| *part = inside("tin")),
        ),
        mending(row(
            "tool-too-early",
            "the cloth is to hand 3 rounds before \"The end\" needs it",
            |case| {
                late_puzzle(case);
                case.kit.props.push(prop("cloth", spot("table"), ""));
            },
            |case| {
                late_puzzle(case);
                case.kit.props.push(prop("cloth", inside("tin"), ""));
            },
        )),
        mending(row(
            "too-close",
            "the key card of \"The cuff\" and the word card of \"The cuff\" were to lie apart, and both lie at the table",
            |case| drop(case.kit.puzzles[0].parts.insert("word-card".into(), spot("table"))),
            // In a box that stands at the table is not at the table; and the kit's own pair lies apart.
            |case| {
                case.kit.puzzles[2].parts.insert("word-card".into(), inside("tin"));
                let one = Lying::Prop(PropId::new("supper").unwrap());
                case.kit.apart.push(Apart { one, other: Lying::Letter, why: "it smells".into(), together: false });
            },
        )),
        mending(row(
            "long-evening",
            "simulated evenings at the level standard end within 12 minutes",
            |case| case.kit.minutes = 12,
            |_| {},
        )),
        row(
            "short-evening",
            "simulated evenings at the level standard end within 240 minutes",
            |case| case.kit.minutes = 240,
            |_| {},
        ),
        mending(row(
            "too-close",
            "the supper and the tin were to lie apart, and both lie at the shelf",
            |case| {
                let one = Lying::Prop(PropId::new("supper").unwrap());
                let other = Lying::Box(BoxId::new("tin").unwrap());
                case.kit.apart.push(Apart { one, other, why: "the tin is found by its smell".into(), together: false });
            },
            |_| {},
        )),
    ]
}

/// Adds boxes one within another, and a puzzle in the last of them that needs the cloth.
fn late_puzzle(case: &mut Case) {
    let kit = &mut case.kit;
    let mut place = inside("chest");
    for (name, code) in [("first", "408"), ("last", "295")] {
        let mut item = kit.boxes[0].clone();
        item.id = BoxId::new(name).unwrap();
        item.place = place.clone();
        item.locks = vec![lock(name)];
        let mut shut = kit.locks[0].clone();
        shut.id = lock(name);
        shut.mark = if name == "first" { "owl".into() } else { "gear".into() };
        kit.boxes.push(item);
        kit.locks.push(shut);
        let mut puzzle = kit.puzzles[0].clone();
        puzzle.id = inklatch::ids::PuzzleId::new(name).unwrap();
        puzzle.answer = code.into();
        puzzle.opens = lock(name);
        puzzle.parts.values_mut().for_each(|part| *part = place.clone());
        if name == "last" {
            puzzle.title = "The end".into();
            puzzle.tools.push(PropId::new("cloth").unwrap());
        }
        kit.puzzles.push(puzzle);
        place = inside(name);
    }
}
