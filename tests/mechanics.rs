//! Tests of `mechanics`: what holds for every member of the family, then a file for each with its traps.

mod bad_input;
mod balance_cards;
mod banded_counters;
mod clock_faces;
mod codes;
mod count_scene;
mod cut_strips;
mod domino_chain;
mod dot_to_dot;
mod drawn;
mod fold_strip;
mod fork_maze;
mod form;
mod glow_ink;
mod grid_square;
mod hidden_numbers;
mod keypad_word;
mod lasting_ink;
mod leftover_letters;
mod letter_key;
mod line_initials;
mod logic_grid;
mod magnet_field;
mod marked_hiding_place;
mod marked_letters;
mod mask_card;
mod morse_strip;
mod names;
mod number_place;
mod odd_letters;
mod overlay_sheets;
mod picture_grid;
mod plain;
mod price_list;
mod proof;
mod route_map;
mod samples;
mod shift_wheel;
mod signs;
mod slips;
mod solved;
mod tag_meta;
mod tampered;
mod truth_tellers;
mod word_reference;
mod work;

use std::collections::{BTreeMap, BTreeSet};

use inklatch::face::Audience;
use inklatch::ids::is_id;
use inklatch::kit::LockKind;
use inklatch::kit::material::material;
use inklatch::mechanics::{AnyMechanic, MECHANICS, find};
use inklatch::readings::{Budget, Verdict};
use rand::RngExt as _;
use serde_json::Value;

use crate::common::{dressed, lay_out, rng};

/// Locks and answers that a mechanic's default setup may carry, drawn by chance.
fn samples(mechanic: &dyn AnyMechanic, seed: u64) -> Vec<(LockKind, String)> {
    let mut rng = rng(seed);
    let mut samples = Vec::new();
    for wheels in 3..=5_u8 {
        let digits: String = (0..wheels).map(|_| rng.random_range(b'0'..=b'9') as char).collect();
        samples.push((LockKind::Digits(wheels), digits));
        let alphabet = ["ABDHLMPSTW", "AEIOULRHNW", "AEIOLNRSTM", "DEKLNPSTXY", "AEHKLNSTYZ"];
        let alphabet: Vec<String> = alphabet.iter().take(usize::from(wheels)).map(|w| (*w).to_owned()).collect();
        let word: String = alphabet.iter().filter_map(|wheel| wheel.chars().nth(rng.random_range(0..10))).collect();
        samples.push((LockKind::Letters(alphabet), word));
    }
    // Names of things, for a key that lies under one of them.
    let setup = mechanic.default_setup().unwrap();
    for name in setup.split("name: \"").skip(1).filter_map(|rest| rest.split('"').next()) {
        samples.push((LockKind::Key, name.to_owned()));
    }
    samples
}

/// Every sample that the default setup carries, with its view.
fn laid(mechanic: &dyn AnyMechanic, seed: u64) -> Vec<(LockKind, String, Box<dyn inklatch::mechanics::AnyView>)> {
    let setup = mechanic.default_setup().unwrap();
    samples(mechanic, seed)
        .into_iter()
        .filter_map(|(lock, answer)| {
            let view = lay_out(mechanic, &setup, &answer, &lock, seed).ok()?;
            Some((lock, answer, view))
        })
        .collect()
}

fn strings(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(list) => list.iter().for_each(|item| strings(item, out)),
        Value::Object(map) => map.values().for_each(|item| strings(item, out)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

#[test]
fn ids_are_unique_and_found() {
    let ids: BTreeSet<&str> = MECHANICS.iter().map(|mechanic| mechanic.meta().id).collect();
    assert_eq!(ids.len(), MECHANICS.len());
    for id in ids {
        assert!(is_id(id));
        assert_eq!(find(id).unwrap().meta().id, id);
    }
    let trouble = find("leter-key").err().unwrap();
    assert!(trouble.hints.iter().any(|hint| hint.contains("`letter-key`")), "{trouble}");
}

#[test]
fn every_one_is_documented() {
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        for text in [meta.name, meta.guests, meta.order, meta.prints, meta.host] {
            assert!(!text.trim().is_empty(), "{}", meta.id);
        }
        for heading in ["## What it does", "## Setup", "## Example", "## Traps"] {
            assert!(meta.help.contains(heading), "{} lacks {heading}", meta.id);
        }
        // Every field of the setup is described, and the example in RON can be read.
        let setup = mechanic.default_setup().unwrap();
        for line in setup.lines().filter(|line| line.starts_with("    ") && !line.starts_with("     ")) {
            if let Some((field, _)) = line.trim().split_once(':') {
                assert!(meta.help.contains(&format!("`{field}`")), "{} does not describe `{field}`", meta.id);
            }
        }
        for tool in meta.tools {
            assert!(material(tool).is_some(), "{} needs the tool {tool}", meta.id);
        }
        let keys: BTreeSet<&str> = meta.parts.iter().map(|part| part.key).collect();
        assert!(!keys.is_empty() && keys.len() == meta.parts.len() && keys.iter().all(|key| is_id(key)), "{}", meta.id);
        assert!(meta.minutes.0 <= meta.minutes.1 && meta.minutes.0 > 0, "{}", meta.id);
    }
}

/// The example of the help text.
fn example(help: &str) -> String {
    let (_, rest) = help.split_once("## Example\n").unwrap();
    rest.lines().take_while(|line| !line.starts_with("##")).collect::<Vec<_>>().join("\n")
}

#[test]
fn examples_and_defaults_read_back() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let setup = mechanic.default_setup().unwrap();
        assert!(!laid(*mechanic, 1).is_empty(), "{id}: nothing fits the default setup\n{setup}");
        // The example may want another answer than these; it must at least be a setup.
        let refused = lay_out(*mechanic, &example(mechanic.meta().help), "?", &LockKind::Spoken, 1).err();
        if let Some(trouble) = refused {
            assert!(trouble.place.is_none(), "{id}: the example cannot be read: {trouble}");
        }
        let wrong = lay_out(*mechanic, "(no_such_field: 1)", "123", &LockKind::Digits(3), 1).err().unwrap();
        assert!(wrong.message.contains("no_such_field"), "{id}: {wrong}");
    }
}

#[test]
fn the_same_seed_gives_the_same_bytes() {
    for mechanic in MECHANICS {
        for ((lock, _, one), (_, _, two)) in laid(*mechanic, 7).into_iter().zip(laid(*mechanic, 7)) {
            let id = mechanic.meta().id;
            assert_eq!(one.json().to_string(), two.json().to_string(), "{id}");
            dressed(id, &lock, |cx| {
                let pieces = |view: &dyn inklatch::mechanics::AnyView| format!("{:?}", view.pieces(cx).unwrap());
                assert_eq!(pieces(one.as_ref()), pieces(two.as_ref()), "{id}");
            });
        }
    }
}

#[test]
fn fifty_seeds_read_one_way_and_the_view_comes_back() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let mut seen = 0;
        for seed in 0..50 {
            for (lock, answer, view) in laid(*mechanic, seed) {
                let found = view.readings(&lock, &mut Budget::default());
                assert_eq!(found.verdict(&answer), Verdict::One, "{id}, seed {seed}, {answer}: {found:?}");
                let json = view.json();
                let again = mechanic.view(&json).unwrap();
                assert_eq!(again.json(), json, "{id}: the view changes on its way through JSON");
                assert_eq!(again.readings(&lock, &mut Budget::default()), found, "{id}");
                seen += 1;
            }
        }
        assert!(seen >= 50, "{id}: only {seen} samples");
    }
}

#[test]
fn the_solver_does_not_know_the_answer() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        for seed in 0..10 {
            for (lock, answer, view) in laid(*mechanic, seed) {
                if lock != LockKind::Key {
                    // A key's answer is the name of a thing that guests see; any other must not stand there whole.
                    let mut texts = Vec::new();
                    strings(&view.json(), &mut texts);
                    assert!(!texts.contains(&answer), "{id}: the view holds {answer}");
                }
                let scrambled: String = answer.chars().rev().chain(['x']).collect();
                let found = view.readings(&lock, &mut Budget::default());
                assert_eq!(found.verdict(&scrambled), Verdict::Other, "{id}: {answer}");
            }
        }
    }
}

#[test]
fn what_no_lock_or_setup_can_carry_is_refused_with_a_hint() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let setup = mechanic.default_setup().unwrap();
        for (answer, lock) in [("12", LockKind::Digits(3)), ("1234567", LockKind::Digits(3)), ("", LockKind::Digits(3))]
        {
            let trouble = lay_out(*mechanic, &setup, answer, &lock, 1).err();
            let trouble = trouble.unwrap_or_else(|| panic!("{id} took {answer:?} for {lock:?}"));
            assert!(!trouble.hints.is_empty(), "{id}: {trouble}");
        }
    }
}

#[test]
fn pieces_are_whole_and_lie_in_parts() {
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        for (lock, answer, view) in laid(*mechanic, 3) {
            let parts = view.parts();
            assert!(parts.iter().all(|part| meta.parts.iter().any(|known| known.key == *part)), "{}", meta.id);
            for part in meta.parts.iter().filter(|part| !part.optional) {
                assert!(parts.contains(&part.key), "{}: {} is missing", meta.id, part.key);
            }
            let pieces = dressed(meta.id, &lock, |cx| view.pieces(cx)).unwrap();
            let ids: BTreeSet<&str> = pieces.iter().map(|piece| piece.id.as_str()).collect();
            assert_eq!(ids.len(), pieces.len(), "{}: two pieces share an id", meta.id);
            for piece in &pieces {
                let face = &piece.front;
                assert!(is_id(&piece.id), "{}", piece.id);
                let host = piece.audience == Audience::Host;
                assert!(host || parts.contains(&piece.part.as_str()), "{}: {} lies in no part", meta.id, piece.id);
                assert!(face.size.w.get() > 5.0 && face.size.h.get() > 5.0, "{}", piece.id);
                assert!(face.size.w.get() <= 197.0 && face.size.h.get() <= 266.0, "{} fits no paper", piece.id);
                let whole = inklatch::units::Rect::of(face.size);
                for run in face.runs() {
                    assert!(whole.holds(run.rect), "{}: {:?} leaves the face", piece.id, run.rect);
                    assert!(run.least.get() >= 9.0 || host, "{}: small type", piece.id);
                }
                let answer = answer.to_lowercase();
                let tells = |text: &str| lock != LockKind::Key && text.to_lowercase().contains(&answer);
                assert!(!tells(&piece.label) && !tells(&piece.id) && !tells(&face.alt), "{} tells", piece.id);
                if piece.audience == Audience::Players {
                    for run in face.runs() {
                        assert!(!tells(&run.text.text()), "{}: {:?} tells", piece.id, run.text.text());
                    }
                }
            }
        }
    }
}

#[test]
fn preparation_names_materials_and_comes_in_order() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        for (lock, _, view) in laid(*mechanic, 3) {
            let steps = dressed(id, &lock, |cx| view.prep(cx));
            assert!(!steps.is_empty(), "{id}");
            let mut done: BTreeMap<&str, ()> = BTreeMap::new();
            for step in &steps {
                assert!(step.after.iter().all(|key| done.contains_key(key)), "{id}: {} comes too early", step.key);
                assert!(done.insert(step.key, ()).is_none(), "{id}: {} twice", step.key);
                assert!((step.hands > 0.0) != step.what.is_empty() && step.wait >= 0.0, "{id}: {}", step.key);
                for need in &step.needs {
                    assert!(material(need.material).is_some() && need.amount > 0.0, "{id}: {}", need.material);
                }
            }
        }
    }
}

#[test]
fn drafted_hints_climb_and_never_tell() {
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        for (lock, answer, view) in laid(*mechanic, 5) {
            let (hints, reason, reset) =
                dressed(id, &lock, |cx| (view.draft_hints(cx), view.reason(cx), view.reset(cx)));
            let steps = [&hints.nudge, &hints.method, &hints.giveaway];
            for (index, text) in steps.iter().enumerate() {
                assert!(text.len() > 20 && text.ends_with(['.', '!', '?', '"']), "{id}: {text}");
                // About what a token of 58 by 66 mm holds at 9 points.
                assert!(text.chars().count() <= 300, "{id}: {} letters: {text}", text.chars().count());
                if lock != LockKind::Key || index < 2 {
                    assert!(!text.to_lowercase().contains(&answer.to_lowercase()), "{id}: {text} tells {answer}");
                }
            }
            assert!(hints.nudge != hints.method && hints.method != hints.giveaway, "{id}");
            assert!(!reason.is_empty() && !reset.is_empty(), "{id}");
        }
    }
}
