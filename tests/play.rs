//! Every puzzle as its guests get it, drawn for a person to solve by hand.
//!
//! `PLAY=folder cargo test --release puzzles_to_play -- --ignored` writes each piece as a picture, the drafted hints and
//! what the host reads beside them, and the answers into a file of their own. `PLAY_THEME` names a theme, `PLAY_SEED`
//! gives other puzzles: 2 for letters first, 3 for directions first. `PLAY_WORK`, `Light` or `Deep`, asks for other work.

use std::fmt::Write as _;
use std::path::PathBuf;

use inklatch::face::Audience;
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::{carried, locks};

use crate::common::{Stage, rng};

/// Pixels to a millimetre: small type can still be read on a screen.
const SCALE: f64 = 5.0;

#[test]
#[ignore = "draws pictures for a person to look at, with the folder in PLAY"]
#[expect(clippy::disallowed_methods, reason = "a test writes where its caller says")]
fn puzzles_to_play() {
    let folder = PathBuf::from(std::env::var("PLAY").expect("the folder in PLAY"));
    let wanted = std::env::var("PLAY_THEME").unwrap_or_else(|_| "midwinter".into());
    let seed: u64 = std::env::var("PLAY_SEED").map_or(1, |seed| seed.parse().expect("a number in PLAY_SEED"));
    let work = std::env::var("PLAY_WORK").ok();
    let stages = Stage::all();
    // The first stage is the bare one of the tests, whose name a built-in theme may share.
    let stage = stages.iter().skip(1).find(|stage| stage.theme.theme.id.as_str() == wanted).expect("a built-in theme");
    let mut answers = String::new();
    for (mechanic, nth) in MECHANICS.iter().zip(1..) {
        let id = mechanic.meta().id;
        // Chance of its own for each: one answer must not tell the others.
        let mut rng = rng(seed + 1000 * nth);
        let mut locks = locks();
        // Digits and letters and directions are drawn in ways of their own: the seed says which lock comes first.
        let turn = usize::try_from(seed).unwrap() % locks.len();
        locks.rotate_left(turn);
        let mut setup = mechanic.default_setup().unwrap();
        if let Some(work) = &work {
            let mut data = mechanic.setup_data(&setup).unwrap();
            if let Some(field) = data.get_mut("work") {
                *field = work.as_str().into();
                setup = mechanic.setup_text(&setup, &data).unwrap();
            }
        }
        let found = locks.iter().find_map(|lock| {
            let (answer, view) = carried(*mechanic, &setup, lock, &stage.theme, &|_| false, &mut rng)?;
            Some((lock, answer, view))
        });
        let (lock, answer, view) = found.unwrap_or_else(|| panic!("{id}: no lock and answer"));
        writeln!(answers, "{id}: {answer} on {lock:?}").unwrap();
        let (pieces, mut text) = stage.dressed(id, lock, |cx| {
            let hints = view.draft_hints(cx);
            let mut text = format!("nudge: {}\nmethod: {}\ngiveaway: {}\n", hints.nudge, hints.method, hints.giveaway);
            writeln!(text, "reason: {}\nreset: {}", view.reason(cx), view.reset(cx)).unwrap();
            for step in view.prep(cx) {
                writeln!(text, "host: {} ({} + {} minutes)", step.what, step.hands, step.wait).unwrap();
            }
            (view.pieces(cx).unwrap(), text)
        });
        if let Some(work) = view.work() {
            writeln!(text, "work: {} {}", work.count, work.says).unwrap();
        }
        std::fs::write(folder.join(format!("{id}.txt")), text).unwrap();
        for piece in &pieces {
            let sides = std::iter::once((&piece.front, "front")).chain(piece.back.iter().map(|back| (back, "back")));
            for (face, side) in sides {
                let whose = if piece.audience == Audience::Host { "host-" } else { "" };
                let name = format!("{id}--{whose}{}-{side}.png", piece.id.trim_start_matches("sample-"));
                std::fs::write(folder.join(name), stage.drawn(face, SCALE)).unwrap();
            }
        }
    }
    std::fs::write(folder.join("answers"), answers).unwrap();
}
