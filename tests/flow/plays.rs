//! Random kits: the flow against a brute-force play-through, what the finish needs against taking things away, and
//! the longest wait against the critical path method.

use std::collections::{BTreeMap, BTreeSet};

use inklatch::flow::facts::{Stretch, facts};
use inklatch::flow::{Flow, flow};
use inklatch::ids::{BoxId, LockId, NoteId, PropId, SpotId};
use inklatch::kit::{Kit, Note, NoteKind, Place, Prop, PropRole, Puzzle};
use proptest::prelude::*;
use serde_json::Value as Json;

use super::{box_of, lock_of, text};
use crate::sound::{kit_of, puzzle_of};

/// 05_dag_critical_path: constructed graphs; lengths by networkx 3.6.1 (`dag_longest_path_length`), equal to an
/// enumeration of all paths. Tolerance: exact.
const PATHS: &str = include_str!("../refs/05_dag_critical_path.json");

fn prop(id: &str, role: PropRole, place: Place) -> Prop {
    Prop {
        id: PropId::new(id).unwrap(),
        name: format!("the {id}"),
        role,
        place,
        material: String::new(),
        amount: Default::default(),
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    }
}

fn closing(place: Place) -> Note {
    Note {
        id: NoteId::new("end").unwrap(),
        kind: NoteKind::Closing,
        title: "The end".into(),
        text: "It is over.".into(),
        picture: None,
        place,
    }
}

/// Every task of the graph is a puzzle whose lock shuts a box with a tool in it; who comes after needs the tool.
fn tasks(case: &Json) -> Kit {
    let mut kit = kit_of("tasks");
    let table = Place::Spot(SpotId::new("table").unwrap());
    for name in case["node_order"].as_array().unwrap() {
        let id = text(name);
        kit.locks.push(lock_of(&id, &id));
        kit.boxes.push(box_of(&id, &id, &id));
        kit.props.push(prop(&id, PropRole::Tool, Place::Box(BoxId::new(&id).unwrap())));
        let mut puzzle = puzzle_of(&id, &id);
        puzzle.minutes = case["durations"][name.as_str().unwrap()].as_f64();
        kit.puzzles.push(puzzle);
    }
    for edge in case["edges"].as_array().unwrap() {
        let (before, after) = (text(&edge[0]), text(&edge[1]));
        let puzzle = kit.puzzles.iter_mut().find(|puzzle| puzzle.id.as_str() == after).unwrap();
        puzzle.tools.push(PropId::new(&before).unwrap());
    }
    for item in &mut kit.boxes {
        item.place = table.clone();
    }
    kit
}

#[test]
fn the_longest_wait_is_the_critical_path() {
    let all: Json = serde_json::from_str(PATHS).unwrap();
    let cases = all["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 15);
    for case in cases {
        let id = &case["id"];
        let kit = tasks(case);
        let chain = flow(&kit, &BTreeMap::new()).chain;
        assert_eq!(Some(chain.minutes), case["expected"]["critical_length"].as_f64(), "{id}");
        // What is told is such a path: each needs the one before, and together they take that long.
        let puzzles: Vec<&Puzzle> = chain.puzzles.iter().map(|id| kit.puzzle(id).unwrap()).collect();
        let sum: f64 = puzzles.iter().filter_map(|puzzle| puzzle.minutes).sum();
        assert!((sum - chain.minutes).abs() < 1e-9, "{id}: {:?}", chain.puzzles);
        for pair in puzzles.windows(2) {
            assert!(pair[1].tools.iter().any(|tool| tool.as_str() == pair[0].id.as_str()), "{id}");
        }
    }
}

/// A kit of up to five boxes with one or two locks each, up to six puzzles, and as many props.
fn kit() -> impl Strategy<Value = Kit> {
    let boxes = proptest::collection::vec((0..7_usize, proptest::collection::vec(0..5_usize, 0..3)), 1..6);
    let puzzles =
        proptest::collection::vec((0..5_usize, proptest::collection::vec(0..6_usize, 0..3), 0..7_usize), 0..7);
    let props = proptest::collection::vec((0..7_usize, 0..9_usize), 0..7);
    (boxes, puzzles, props, 0..7_usize).prop_map(|(boxes, puzzles, props, end)| {
        let mut kit = kit_of("random");
        let count = boxes.len();
        let place = |n: usize| match n.checked_sub(2) {
            // Two in seven lie in the open.
            None => Place::Spot(SpotId::new("table").unwrap()),
            Some(n) => Place::Box(BoxId::new(&format!("box-{}", n % count)).unwrap()),
        };
        for n in 0..5 {
            kit.locks.push(lock_of(&format!("lock {n}"), &format!("lock-{n}")));
        }
        for (at, (stands, locks)) in boxes.into_iter().enumerate() {
            let mut item = box_of(&format!("box {at}"), &format!("box-{at}"), "none");
            item.place = place(stands);
            item.locks = locks.into_iter().map(|n| LockId::new(&format!("lock-{n}")).unwrap()).collect();
            kit.boxes.push(item);
        }
        for (at, (lies, role)) in props.into_iter().enumerate() {
            let role = match role {
                0..5 => PropRole::Tool,
                n => PropRole::Key(LockId::new(&format!("lock-{}", n % 5)).unwrap()),
            };
            kit.props.push(prop(&format!("prop-{at}"), role, place(lies)));
        }
        for (at, (opens, tools, lies)) in puzzles.into_iter().enumerate() {
            let mut puzzle = puzzle_of(&format!("puzzle-{at}"), &format!("lock-{opens}"));
            puzzle.tools = tools.into_iter().map(|n| PropId::new(&format!("prop-{n}")).unwrap()).collect();
            puzzle.parts.insert("card".into(), place(lies));
            kit.puzzles.push(puzzle);
        }
        kit.finish.opens = BoxId::new("box-0").unwrap();
        kit.notes.push(closing(place(end)));
        kit
    })
}

fn flow_of(kit: &Kit) -> Flow {
    let parts = kit.puzzles.iter().map(|puzzle| (puzzle.id.clone(), puzzle.parts.keys().map(String::as_str).collect()));
    flow(kit, &parts.collect())
}

/// What guests get at by trying everything again and again until nothing new happens, straight from the kit.
#[derive(Default, Debug)]
struct Played {
    boxes: BTreeSet<BoxId>,
    locks: BTreeSet<LockId>,
    solved: BTreeSet<String>,
}

fn played(kit: &Kit, without_puzzle: Option<&str>, without_prop: Option<&str>, without_box: Option<&str>) -> Played {
    let mut now = Played::default();
    loop {
        let at = |now: &Played, place: &Place| match place {
            Place::Spot(id) => kit.spot(id).is_some(),
            Place::Box(id) => now.boxes.contains(id),
        };
        let has = |now: &Played, id: &PropId| {
            without_prop != Some(id.as_str()) && kit.prop(id).is_some_and(|prop| at(now, &prop.place))
        };
        let before = (now.boxes.len(), now.locks.len(), now.solved.len());
        for puzzle in &kit.puzzles {
            let parts = puzzle.parts.values().all(|place| at(&now, place));
            if without_puzzle != Some(puzzle.id.as_str()) && parts && puzzle.tools.iter().all(|tool| has(&now, tool)) {
                now.solved.insert(puzzle.id.to_string());
                if kit.lock(&puzzle.opens).is_some() {
                    now.locks.insert(puzzle.opens.clone());
                }
            }
        }
        for prop in &kit.props {
            if let PropRole::Key(lock) = &prop.role
                && has(&now, &prop.id)
            {
                now.locks.insert(lock.clone());
            }
        }
        for item in &kit.boxes {
            let shut = without_box == Some(item.id.as_str()) || !item.locks.iter().all(|lock| now.locks.contains(lock));
            if !shut && at(&now, &item.place) {
                now.boxes.insert(item.id.clone());
            }
        }
        if before == (now.boxes.len(), now.locks.len(), now.solved.len()) {
            return now;
        }
    }
}

fn ends(kit: &Kit, played: &Played) -> bool {
    let card = match &kit.notes[0].place {
        Place::Spot(_) => true,
        Place::Box(id) => played.boxes.contains(id),
    };
    played.boxes.contains(&kit.finish.opens) && card
}

proptest! {
    #[test]
    fn the_flow_is_what_a_play_through_finds(kit in kit()) {
        let (found, played) = (flow_of(&kit), played(&kit, None, None, None));
        prop_assert_eq!(found.boxes.keys().cloned().collect::<BTreeSet<_>>(), played.boxes.clone());
        prop_assert_eq!(found.locks.keys().cloned().collect::<BTreeSet<_>>(), played.locks.clone());
        prop_assert_eq!(found.puzzles.keys().map(ToString::to_string).collect::<BTreeSet<_>>(), played.solved.clone());
        prop_assert_eq!(found.finish_reachable, ends(&kit, &played));
        prop_assert!(!facts(&kit, &found).is_empty());
    }

    #[test]
    fn what_is_spare_can_be_taken_away_and_nothing_else(kit in kit()) {
        let found = flow_of(&kit);
        if !found.finish_reachable {
            prop_assert!(found.needed.is_empty() && found.spare == inklatch::flow::Spare::default());
            return Ok(());
        }
        for puzzle in &kit.puzzles {
            let id = puzzle.id.as_str();
            let without = ends(&kit, &played(&kit, Some(id), None, None));
            prop_assert_eq!(!without, found.needed.contains(&puzzle.id), "{}", id);
            let reached = found.puzzles.contains_key(&puzzle.id);
            prop_assert_eq!(without && reached, found.spare.puzzles.contains(&puzzle.id), "{}", id);
        }
        for prop in &kit.props {
            let without = ends(&kit, &played(&kit, None, Some(prop.id.as_str()), None));
            let reached = found.props.contains_key(&prop.id);
            prop_assert_eq!(without && reached, found.spare.props.contains(&prop.id), "{}", &prop.id);
        }
        for item in &kit.boxes {
            let without = ends(&kit, &played(&kit, None, None, Some(item.id.as_str())));
            let reached = found.boxes.contains_key(&item.id);
            prop_assert_eq!(without && reached, found.spare.boxes.contains(&item.id), "{}", &item.id);
        }
    }

    #[test]
    fn one_more_prop_takes_nothing_away(kit in kit(), lies in 0..7_usize, key in proptest::option::of(0..5_usize)) {
        let before = flow_of(&kit);
        let mut more = kit.clone();
        let role = key.map_or(PropRole::Tool, |n| PropRole::Key(LockId::new(&format!("lock-{n}")).unwrap()));
        let place = more.boxes.get(lies).map_or_else(
            || Place::Spot(SpotId::new("table").unwrap()),
            |item| Place::Box(item.id.clone()),
        );
        more.props.push(prop("one-more", role, place));
        let after = flow_of(&more);
        let within = |a: &BTreeMap<BoxId, usize>, b: &BTreeMap<BoxId, usize>| a.iter().all(|(id, round)| b.get(id).is_some_and(|r| r <= round));
        prop_assert!(within(&before.boxes, &after.boxes));
        prop_assert!(before.puzzles.iter().all(|(id, round)| after.puzzles.get(id).is_some_and(|r| r <= round)));
        prop_assert!(before.props.iter().all(|(id, round)| after.props.get(id).is_some_and(|r| r <= round)));
        prop_assert!(after.finish_reachable || !before.finish_reachable);
    }
}

#[test]
fn the_longest_stretch_is_the_first_of_the_longest() {
    let round = |n: usize| inklatch::flow::Round {
        solves: (0..n).map(|n| inklatch::ids::PuzzleId::new(&format!("p-{n}")).unwrap()).collect(),
        opens: Vec::new(),
    };
    let stretch = |open: &[usize]| {
        let rounds = open.iter().map(|n| round(*n)).collect();
        Flow { rounds, ..Flow::default() }.single_file()
    };
    assert_eq!(stretch(&[]), None);
    assert_eq!(stretch(&[2, 3, 0]), None);
    assert_eq!(stretch(&[1, 1, 2, 1, 1]), Some(Stretch { first: 1, last: 2 }));
    assert_eq!(stretch(&[1, 2, 1, 1, 1]), Some(Stretch { first: 3, last: 5 }));
}
