//! Tests of `party` and of the host's preparation.

use std::collections::BTreeMap;

use inklatch::checks::prove;
use inklatch::diag::{Anchor, Level, PuzzleField, Step};
use inklatch::face::{Audience, Layer, Outline};
use inklatch::kit::edit::apply_all;
use inklatch::kit::material::{Need, PrepStep};
use inklatch::kit::{HintLadder, LevelChange, LockKind};
use inklatch::party::{Party, rng_at, rng_of};
use inklatch::prep::schedule::{Work, schedule, tidied};
use inklatch::prep::{PuzzleSteps, plan};
use inklatch::readings::Verdict;
use inklatch::sheet::Paper;
use serde_json::Value;

use crate::common::plain_theme;
use crate::sound::sound_kit;

fn party(level: Level) -> Party {
    Party::new(&sound_kit(), &plain_theme(), level).unwrap()
}

#[test]
fn the_list_has_what_guests_find_beside_what_the_host_works_with() {
    let mut kit = sound_kit();
    kit.ages = (9, 12);
    kit.players = (4, 8);
    let mut snips = kit.props[0].clone();
    snips.id = inklatch::ids::PropId::new("snips").unwrap();
    (snips.name, snips.material) = ("the snips".into(), "scissors".into());
    let mut ribbon = snips.clone();
    ribbon.id = inklatch::ids::PropId::new("ribbon").unwrap();
    (ribbon.name, ribbon.material, ribbon.amount) =
        ("the ribbon".into(), "string".into(), inklatch::kit::HowMany::All(0.5));
    let mut goat = snips.clone();
    goat.id = inklatch::ids::PropId::new("goat").unwrap();
    (goat.name, goat.material, goat.amount) = ("a toy goat".into(), String::new(), inklatch::kit::HowMany::Each(1.0));
    kit.props.extend([snips, ribbon, goat]);
    let cut = Need { material: "scissors", amount: 1.0 };
    let steps = [PuzzleSteps {
        puzzle: kit.puzzles[0].id.clone(),
        title: "The cuff".into(),
        steps: vec![PrepStep::printed(vec![cut])],
        kinds: Vec::new(),
        pieces: 2,
    }];
    let plan = plan(&kit, Level::Standard, &steps, 2);
    let line = |wanted: &str| plan.shopping.iter().find(|line| line.name.contains(wanted)).unwrap();
    // One pair of the host's for both groups, and for each group one without points.
    let hosts = plan.shopping.iter().find(|line| line.material == "scissors").unwrap();
    assert_eq!((hosts.amount, line("the snips").amount), (1.0, 2.0));
    assert!(line("the snips").name.starts_with("blunt-tipped") && !line("the snips").stand_in.contains("knife"));
    assert_eq!((line("the ribbon").amount, line("the ribbon").unit), (1.0, "metre"));
    assert_eq!(line("a toy goat").amount, 16.0);
    // Only printed and cut out: no step of its own.
    assert!(plan.tasks.iter().all(|task| !task.what.is_empty()));
    assert!(plan.tasks.iter().all(|task| task.puzzle.is_none()));
}

#[test]
fn every_puzzle_is_laid_out_and_read() {
    let party = party(Level::Standard);
    assert!(party.troubles.is_empty(), "{:?}", party.troubles);
    for puzzle in &party.puzzles {
        assert_eq!(puzzle.verdict, Some(Verdict::One), "{}", puzzle.id);
        assert!(!puzzle.parts.is_empty() && !puzzle.reason.is_empty() && !puzzle.prep.is_empty());
        assert!(Step::ALL.iter().all(|step| !puzzle.drafted.step(*step).is_empty()));
    }
}

#[test]
fn there_are_three_tokens_for_each_puzzle_and_none_for_an_empty_step() {
    let mut kit = sound_kit();
    let count = |party: &Party| party.pieces.iter().filter(|piece| piece.audience == Audience::Hints).count();
    assert_eq!(count(&party(Level::Standard)), 9);
    kit.puzzles[0].hints.nudge.clear();
    let party = Party::new(&kit, &plain_theme(), Level::Standard).unwrap();
    assert_eq!(count(&party), 8);
    let token = party.piece("token-log-method").unwrap();
    assert_eq!(token.label, "Token: star \u{2022}\u{2022}");
    assert!(matches!(token.front.outline, Outline::Path(_)));
}

#[test]
fn a_level_opens_its_steps_and_changes_its_hints() {
    let mut kit = sound_kit();
    let hints = HintLadder { method: "Read it slowly.".into(), ..HintLadder::default() };
    kit.puzzles[0].gentle = Some(LevelChange { hints: Some(hints), ..Default::default() });
    let party = Party::new(&kit, &plain_theme(), Level::Gentle).unwrap();
    assert_eq!(party.puzzles[0].hints.method, "Read it slowly.");
    assert_eq!(party.puzzles[0].hints.nudge, kit.puzzles[0].hints.nudge);
    assert!(party.piece("token-cuff-nudge").unwrap().label.ends_with("face up from the start"));
    assert!(!party.piece("token-cuff-method").unwrap().label.contains("face up"));
}

#[test]
fn one_puzzles_edit_disturbs_no_other() {
    let mut kit = sound_kit();
    let theme = plain_theme();
    let before = Party::new(&kit, &theme, Level::Standard).unwrap();
    kit.puzzles[0].answer = "947".into();
    let puzzle = kit.puzzles.remove(0);
    kit.puzzles.push(puzzle);
    let after = Party::new(&kit, &theme, Level::Standard).unwrap();
    for id in ["log", "collar"] {
        let view =
            |party: &Party| party.puzzles.iter().find(|p| p.id.as_str() == id).unwrap().laid.as_ref().unwrap().json();
        assert_eq!(view(&before), view(&after), "{id}");
    }
}

#[test]
fn the_same_seed_gives_the_same_chance_on_every_machine() {
    use rand::Rng as _;
    let id = inklatch::ids::PuzzleId::new("cuff").unwrap();
    let mut first = rng_of(7, &id);
    let mut again = rng_of(7, &id);
    let mut other = rng_of(8, &id);
    let (a, b, c) = (first.next_u64(), again.next_u64(), other.next_u64());
    assert_eq!(a, b);
    assert_ne!(a, c);
    // Another arrangement is another chance; the first is what a kit without the field has always had.
    assert_eq!(rng_at(7, &id, 0).next_u64(), a);
    assert_ne!(rng_at(7, &id, 1).next_u64(), a);
    assert_ne!(rng_at(7, &id, 1).next_u64(), rng_at(7, &id, 2).next_u64());
}

#[test]
fn the_letter_stands_on_both_papers_with_nothing_on_top_of_anything() {
    let party = party(Level::Standard);
    for paper in Paper::ALL {
        let letter = party.letter(&plain_theme(), paper.safe_size()).unwrap();
        let page = inklatch::units::Rect::of(letter.front.size);
        let runs: Vec<_> = letter.front.runs().map(|run| run.rect).collect();
        assert_eq!(runs.len(), 3);
        for (at, rect) in runs.iter().enumerate() {
            assert!(page.holds(*rect));
            assert!(runs[..at].iter().all(|other| !other.meets(*rect)), "{paper:?} {at}");
        }
        let art: Vec<_> = letter.front.layers.iter().filter(|layer| matches!(layer, Layer::Art(_))).collect();
        assert_eq!(art.len(), 2);
    }
    assert!(party.letter(&plain_theme(), inklatch::units::Size::mm(100.0, 60.0)).is_err());
}

#[test]
fn a_label_has_the_size_asked_for_and_the_marks_of_its_locks() {
    let mut kit = sound_kit();
    kit.boxes[1].label = Some((190.0, 80.0));
    let party = Party::new(&kit, &plain_theme(), Level::Standard).unwrap();
    let label = party.piece("label-chest").unwrap();
    // The frame keeps its shape: 95 by 58 in 190 by 80.
    assert!((label.front.size.h.get() - 80.0).abs() < 0.01 && label.front.size.w.get() < 190.0);
    assert!(label.front.alt.contains("star, moon"));
}

#[test]
fn a_padlock_has_a_tag_with_its_mark_on_both_sides() {
    let mut kit = sound_kit();
    let (no_tag, said) = (kit.boxes[0].locks[0].clone(), kit.boxes[1].locks[0].clone());
    kit.lock_mut(&no_tag).unwrap().tag = false;
    kit.lock_mut(&said).unwrap().kind = LockKind::Spoken;
    let party = Party::new(&kit, &plain_theme(), Level::Standard).unwrap();
    for lock in &kit.locks {
        let tag = party.piece(&format!("lock-tag-{}", lock.id));
        if lock.id == no_tag || lock.id == said {
            assert!(tag.is_none(), "{}", lock.id);
            continue;
        }
        let face = &tag.unwrap().front;
        let alt = format!("mark: {}", lock.mark);
        let marks = face.layers.iter().filter_map(|layer| match layer {
            Layer::Art(art) if art.alt == alt => Some(art),
            _ => None,
        });
        let marks: Vec<_> = marks.collect();
        let ((_, fold), _) = face.folds[0];
        // Folded at its middle, each side has the mark upright at the same height.
        let [back, front] = marks.as_slice() else { panic!("{}: {} marks", lock.id, marks.len()) };
        assert_eq!((back.turn, front.turn), (180.0, 0.0));
        assert!((fold - back.rect.bottom() - (front.rect.y - fold)).get().abs() < 1e-9);
        assert!((fold * 2.0 - face.size.h).get().abs() < 1e-9);
    }
    // The preparation ties what is printed.
    let tags = party.pieces.iter().filter(|piece| piece.id.starts_with("lock-tag-")).count();
    let string = plan(&kit, Level::Standard, &[], 1)
        .tasks
        .iter()
        .flat_map(|task| task.needs.clone())
        .find(|n| n.material == "string");
    assert_eq!((tags > 0, tags), (string.is_some(), kit.tagged().count()));
}

#[test]
fn a_fault_of_one_puzzle_leaves_the_rest() {
    let mut kit = sound_kit();
    kit.puzzles[0].mechanic = "none".into();
    let party = Party::new(&kit, &plain_theme(), Level::Standard).unwrap();
    assert!(party.puzzles[0].laid.is_err());
    assert_eq!(party.puzzles[2].verdict, Some(Verdict::One));
    // Its parts count as where the kit lays them, so the flow does not break as well.
    assert!(party.flow(&kit).finish_reachable);
}

/// 06_one_person_schedule: instances of four to twelve tasks, constructed; optima proven by a constraint solver
/// and confirmed by branch and bound over all orders. Tolerance: exact optimum of `optimal_ready`.
const SCHEDULES: &str = include_str!("refs/06_one_person_schedule.json");

#[test]
fn the_shortest_order_of_work_is_found() {
    let all: Value = serde_json::from_str(SCHEDULES).unwrap();
    let cases = all["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 20);
    for case in cases {
        let tasks = case["tasks"].as_object().unwrap();
        let numbers: BTreeMap<&str, usize> = tasks.keys().enumerate().map(|(at, name)| (name.as_str(), at)).collect();
        let mut work: Vec<Work> = tasks
            .values()
            .map(|task| Work {
                hands: task["hands_on"].as_f64().unwrap(),
                wait: task["wait"].as_f64().unwrap(),
                after: Vec::new(),
            })
            .collect();
        for pair in case["precedence"].as_array().unwrap() {
            work[numbers[pair[1].as_str().unwrap()]].after.push(numbers[pair[0].as_str().unwrap()]);
        }
        let found = schedule(&work);
        let id = &case["id"];
        assert!(found.exact, "{id}");
        assert!((found.ready - case["expected"]["optimal_ready"].as_f64().unwrap()).abs() < 1e-9, "{id}: {found:?}");
        keeps_the_rules(&work, &found.starts);
        let groups: Vec<usize> = (0..work.len()).map(|at| at % 3).collect();
        let tidy = tidied(&work, &groups, &found);
        assert!((tidy.ready - found.ready).abs() < 1e-9, "{id}");
        keeps_the_rules(&work, &tidy.starts);
    }
}

/// One pair of hands, and nothing before what it waits for is dry.
fn keeps_the_rules(work: &[Work], starts: &[Option<f64>]) {
    for (at, task) in work.iter().enumerate() {
        let start = starts[at].unwrap();
        for before in &task.after {
            assert!(starts[*before].unwrap() + work[*before].hands + work[*before].wait <= start + 1e-9);
        }
        for (other, rest) in work.iter().enumerate().filter(|(other, _)| *other != at) {
            let begun = starts[other].unwrap();
            assert!(begun + rest.hands <= start + 1e-9 || start + task.hands <= begun + 1e-9);
        }
    }
}

#[test]
fn a_ring_of_tasks_is_done_last_and_not_lost() {
    let step = |key, after: &[&'static str], needs: Vec<Need>| PrepStep {
        key,
        what: format!("do {key}"),
        needs,
        hands: 5.0,
        wait: 0.0,
        after: after.to_vec(),
    };
    let glue = Need { material: "glue", amount: 1.0 };
    let paper = Need { material: "card-paper", amount: 2.0 };
    let kit = sound_kit();
    let steps = [PuzzleSteps {
        puzzle: kit.puzzles[0].id.clone(),
        title: "The cuff".into(),
        steps: vec![
            step("a", &["b"], vec![glue, paper]),
            step("b", &["a"], vec![glue, paper]),
            step("c", &[], Vec::new()),
        ],
        kinds: Vec::new(),
        pieces: 2,
    }];
    let plan = plan(&kit, Level::Standard, &steps, 1);
    let whats: Vec<&str> = plan.tasks.iter().map(|task| task.what.as_str()).collect();
    assert!(whats.contains(&"do a") && whats.contains(&"do b") && whats.contains(&"do c"));
    let amount = |id: &str| plan.shopping.iter().find(|line| line.material == id).map(|line| line.amount);
    assert_eq!(amount("glue"), Some(1.0));
    assert_eq!(amount("card-paper"), Some(4.0));
    assert_eq!(amount("digit-padlock-3"), Some(2.0));
    assert_eq!(amount("digit-padlock-4"), Some(1.0));
    assert_eq!(amount("hasp"), Some(1.0));
    assert!(plan.shopping.iter().any(|line| line.name == "soup and bread"));
    // Three groups at once: three of all, but one of the host's own glue.
    let three = inklatch::prep::plan(&kit, Level::Standard, &steps, 3);
    let amount = |id: &str| three.shopping.iter().find(|line| line.material == id).map(|line| line.amount);
    assert_eq!((amount("glue"), amount("card-paper"), amount("hasp")), (Some(1.0), Some(12.0), Some(3.0)));
    assert!((three.hands - plan.hands * 3.0).abs() < 1e-9);
    assert!(plan.cautions.iter().any(|line| line.of.contains(&"small UV torch")));
    assert!(plan.cautions.iter().all(|line| !line.of.iter().any(|name| name.contains("magnet"))));
}

#[test]
fn a_puzzle_names_its_own_parts_and_sheets() {
    let opened = inklatch::bundle::open_demo("the-stopped-clock").unwrap();
    let (mut kit, theme) = (opened.kit, opened.theme);
    let bell = kit.puzzles.iter_mut().find(|puzzle| puzzle.mechanic == "marked-letters").unwrap();
    bell.names.insert("pointer-title".into(), "What {{ keeper }} heard".into());
    bell.names.insert("sign".into(), "the board over the door".into());
    bell.names.insert("poynter".into(), "a slip".into());
    let id = bell.id.clone();
    let proof = prove(&kit, &theme, None, &[Level::Standard]).unwrap();
    let party = &proof.levels[0].party;
    let texts: Vec<String> =
        party.pieces.iter().flat_map(|piece| piece.front.runs()).map(|run| run.text.text()).collect();
    assert!(texts.iter().any(|text| text.starts_with("What ") && text.ends_with(" heard") && !text.contains("{{")));
    let laid = party.puzzle(&id).unwrap();
    let told = format!("{}{:?}{:?}", laid.reason, laid.prep, laid.drafted);
    assert!(told.contains("the board over the door"), "{told}");
    assert_eq!(laid.verdict, Some(Verdict::One));
    let found: Vec<_> = proof.findings.iter().filter(|finding| finding.name == "unknown-reference").collect();
    let [stray] = &found[..] else { panic!("{found:?}") };
    assert_eq!(stray.anchor, Anchor::Puzzle(id.clone(), PuzzleField::Name("poynter".into())));
    assert!(stray.help.join(" ").contains("pointer"), "{:?}", stray.help);
    let mut mended = kit.clone();
    apply_all(&mut mended, stray.fix.clone().unwrap().edits);
    assert_eq!(mended.puzzle(&id).unwrap().names.get("pointer").map(String::as_str), Some("a slip"));
}

#[test]
fn labels_beside_pieces_have_typographic_marks() {
    let mut kit = sound_kit();
    kit.boxes[1].name = "the winder's \"best\" chest".into();
    let party = Party::new(&kit, &plain_theme(), Level::Standard).unwrap();
    let labels: Vec<&str> = party.pieces.iter().map(|piece| piece.label.as_str()).collect();
    assert!(labels.iter().any(|label| label.contains("winder’s “best” chest")), "{labels:?}");
    assert!(labels.iter().all(|label| !label.contains(['\'', '"'])), "{labels:?}");
}
