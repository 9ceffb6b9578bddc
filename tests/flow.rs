//! Tests of `flow`: against scenarios solved by exhaustive search elsewhere, and against brute force here.

use std::collections::{BTreeMap, BTreeSet};

use inklatch::flow::net::{Net, NetBox, Opener, Where};
use inklatch::flow::{Flow, flow};
use inklatch::ids::{BoxId, LockId, PropId, PuzzleId};
use inklatch::kit::{BoxDef, Kit, Lock, LockKind, Place, Prop, PropRole, Spot};
use proptest::prelude::*;
use serde_json::Value as Json;

use crate::sound::{kit_of, puzzle_of};

/// 05_unlock_scenarios: thirty AND/OR scenarios, constructed; reachable sets and rounds confirmed by exhaustive
/// search over all states, blocking sets over all subsets of boxes. Tolerance: exact; an explanation is right when
/// the boxes that it names are one of `blocking_sets_for_finish` or hold such a set.
const SCENARIOS: &str = include_str!("refs/05_unlock_scenarios.json");

fn list<'a>(value: &'a Json, key: &str) -> &'a [Json] {
    value[key].as_array().map_or(&[], Vec::as_slice)
}

/// A name of the scenario as an id.
fn text(value: &Json) -> String {
    value.as_str().unwrap().to_lowercase().replace(['_', ' '], "-")
}

fn texts(value: &Json) -> BTreeSet<String> {
    value.as_array().unwrap().iter().map(text).collect()
}

/// The scenario as a kit: objects are props, needs are tools, and the first thing of the finish is the card.
fn scenario(case: &Json) -> Kit {
    let s = &case["scenario"];
    let mut kit = kit_of("scenario");
    let boxes: BTreeSet<String> = list(s, "containers").iter().map(|item| text(&item["id"])).collect();
    let place = |value: &Json| {
        let name = if value.is_null() { "nowhere".into() } else { text(value) };
        match boxes.contains(&name) {
            true => Place::Box(BoxId::new(&name).unwrap()),
            false => Place::Spot(inklatch::ids::SpotId::new(&name).unwrap()),
        }
    };
    for name in list(s, "places") {
        let id = inklatch::ids::SpotId::new(&text(name)).unwrap();
        kit.spots.push(Spot { name: id.to_string(), id, about: String::new(), person: false });
    }
    for item in list(s, "containers") {
        kit.boxes.push(BoxDef {
            id: BoxId::new(&text(&item["id"])).unwrap(),
            name: text(&item["id"]),
            place: place(&item["in"]),
            locks: list(item, "locks").iter().map(|lock| LockId::new(&text(lock)).unwrap()).collect(),
            hasp: false,
            label: None,
            printed: None,
            about: String::new(),
        });
    }
    let mut opens = BTreeMap::new();
    for lock in list(s, "locks") {
        let id = LockId::new(&text(&lock["id"])).unwrap();
        for puzzle in list(lock, "opened_by") {
            opens.insert(text(puzzle), id.clone());
        }
        let name = id.to_string();
        kit.locks.push(Lock {
            id,
            name,
            kind: LockKind::Digits(3),
            mark: String::new(),
            hole: 0,
            how_to_set: String::new(),
            tag: true,
        });
    }
    for puzzle in list(s, "puzzles") {
        let name = text(&puzzle["id"]);
        let mut made = puzzle_of(&name, opens.get(&name).map_or("none", LockId::as_str));
        made.tools = list(puzzle, "needs").iter().map(|need| PropId::new(&text(need)).unwrap()).collect();
        kit.puzzles.push(made);
    }
    for object in list(s, "objects") {
        kit.props.push(Prop {
            id: PropId::new(&text(&object["id"])).unwrap(),
            name: text(&object["id"]),
            role: PropRole::Tool,
            place: place(&object["in"]),
            material: String::new(),
            amount: Default::default(),
            used_up: false,
            made: false,
            about: String::new(),
            printed: None,
        });
    }
    kit
}

fn names<T: ToString>(ids: impl Iterator<Item = T>) -> BTreeSet<String> {
    ids.map(|id| id.to_string()).collect()
}

#[test]
fn the_scenarios_come_out_as_exhaustive_search_says() {
    let all: Json = serde_json::from_str(SCENARIOS).unwrap();
    let cases = list(&all, "cases");
    assert_eq!(cases.len(), 30);
    for case in cases {
        let id = &case["id"];
        let (kit, expected) = (scenario(case), &case["expected"]);
        let found: Flow = flow(&kit, &BTreeMap::new());
        assert_eq!(names(found.props.keys()), texts(&expected["reachable_objects"]), "{id}");
        assert_eq!(names(found.boxes.keys()), texts(&expected["opened_containers"]), "{id}");
        assert_eq!(names(found.puzzles.keys()), texts(&expected["solvable_puzzles"]), "{id}");
        let opened: Vec<BTreeSet<String>> =
            found.rounds.iter().map(|round| names(round.opens.iter())).filter(|opens| !opens.is_empty()).collect();
        let wanted: Vec<BTreeSet<String>> = list(expected, "opened_by_round").iter().map(texts).collect();
        assert_eq!(opened, wanted, "{id}");
        assert_eq!(opened.len() as u64, expected["rounds_total"].as_u64().unwrap(), "{id}");
        let finish: Vec<PropId> =
            list(&case["scenario"], "finish").iter().map(|thing| PropId::new(&text(thing)).unwrap()).collect();
        let round = finish.iter().map(|thing| found.props.get(thing).copied()).try_fold(0, |a, b| b.map(|b| a.max(b)));
        assert_eq!(round.map(|round| round as u64), expected["rounds_to_finish"].as_u64(), "{id}");
        check_loops(&kit, &found, expected, &id.to_string());
    }
}

/// Every loop that is told holds one of the sets that exhaustive search found to block, and when the cause of a
/// blocked finish is a loop, one of the told loops is such a set of the finish.
fn check_loops(kit: &Kit, found: &Flow, expected: &Json, id: &str) {
    let sets = |key: &str| -> Vec<BTreeSet<String>> { list(expected, key).iter().map(texts).collect() };
    let all = sets("minimal_blocking_sets");
    let told: Vec<BTreeSet<String>> = found.loops.iter().map(|found| names(found.boxes.iter())).collect();
    if let Some(first) = told.first() {
        assert!(all.iter().any(|set| set.is_subset(first)), "{id}: {first:?} is not among {all:?}");
        assert!(!found.loops[0].words.is_empty());
        for named in first {
            assert!(found.loops[0].words.contains(named.as_str()), "{id}: {} lacks {named}", found.loops[0].words);
        }
    }
    if expected["cause"] == "cycle" {
        let finish = sets("blocking_sets_for_finish");
        let hit = |told: &BTreeSet<String>| finish.iter().any(|set| set.is_subset(told));
        assert!(told.iter().any(hit), "{id}: none of {told:?} is among {finish:?}");
        let shortest = finish.iter().map(BTreeSet::len).min().unwrap();
        assert!(told[0].len() <= shortest.max(1), "{id}: {told:?} is longer than {shortest}");
    } else if expected["finish_reachable"] == true && found.boxes.len() == kit.boxes.len() {
        assert!(told.is_empty(), "{id}");
    }
}

#[test]
fn a_loop_is_told_in_words() {
    let mut kit = kit_of("loop");
    let id = |name: &str| LockId::new(name).unwrap();
    kit.boxes.push(box_of("the small box", "small-box", "lock-three"));
    kit.locks.push(lock_of("the brass lock", "lock-three"));
    let mut puzzle = puzzle_of("glow", "lock-three");
    puzzle.title = "In another light".into();
    puzzle.tools.push(PropId::new("torch").unwrap());
    kit.puzzles.push(puzzle);
    kit.props.push(Prop {
        id: PropId::new("torch").unwrap(),
        name: "the torch".into(),
        role: PropRole::Tool,
        place: Place::Box(BoxId::new("small-box").unwrap()),
        material: String::new(),
        amount: Default::default(),
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    });
    let found = flow(&kit, &BTreeMap::new());
    assert_eq!(found.loops.len(), 1);
    assert_eq!(
        found.loops[0].words,
        "the small box needs the brass lock open; the brass lock opens by \"In another light\", which needs the torch; \
         the torch lies in the small box"
    );
    // The key in the open is a way round, and the loop is gone.
    kit.props.push(Prop {
        id: PropId::new("key").unwrap(),
        name: "the key".into(),
        role: PropRole::Key(id("lock-three")),
        place: Place::Spot(kit.spots[0].id.clone()),
        material: String::new(),
        amount: Default::default(),
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    });
    assert!(flow(&kit, &BTreeMap::new()).loops.is_empty());
    // But not where the puzzle leads to that very key: then guests need both.
    kit.locks[0].kind = LockKind::Key;
    assert_eq!(flow(&kit, &BTreeMap::new()).loops.len(), 1);
}

#[test]
fn boxes_that_stand_in_each_other_are_a_loop() {
    let mut kit = kit_of("nested");
    kit.boxes.push(box_of("the outer box", "outer", "none"));
    kit.boxes.push(box_of("the inner box", "inner", "none"));
    for (at, other) in [(0, "inner"), (1, "outer")] {
        kit.boxes[at].locks.clear();
        kit.boxes[at].place = Place::Box(BoxId::new(other).unwrap());
    }
    let found = flow(&kit, &BTreeMap::new());
    assert!(found.boxes.is_empty());
    assert_eq!(found.loops.len(), 1);
    assert_eq!(found.loops[0].words, "the outer box stands in the inner box, which stands in the outer box");
}

#[test]
fn a_part_laid_nowhere_keeps_its_puzzle_shut() {
    let mut kit = kit_of("parts");
    kit.boxes.push(box_of("the tin", "tin", "lock"));
    kit.locks.push(lock_of("the lock", "lock"));
    kit.puzzles.push(puzzle_of("p", "lock"));
    let parts = BTreeMap::from([(PuzzleId::new("p").unwrap(), vec!["card"])]);
    assert!(flow(&kit, &parts).boxes.is_empty());
    kit.puzzles[0].parts.insert("card".into(), Place::Spot(kit.spots[0].id.clone()));
    assert_eq!(flow(&kit, &parts).boxes.len(), 1);
    assert_eq!(flow(&kit, &parts).open_per_round(), [1]);
}

fn box_of(name: &str, id: &str, lock: &str) -> BoxDef {
    BoxDef {
        id: BoxId::new(id).unwrap(),
        name: name.into(),
        place: Place::Spot(inklatch::ids::SpotId::new("table").unwrap()),
        locks: vec![LockId::new(lock).unwrap()],
        hasp: false,
        label: None,
        printed: None,
        about: String::new(),
    }
}

fn lock_of(name: &str, id: &str) -> Lock {
    Lock {
        id: LockId::new(id).unwrap(),
        name: name.into(),
        kind: LockKind::Digits(3),
        mark: String::new(),
        hole: 0,
        how_to_set: String::new(),
        tag: true,
    }
}

/// A net of up to five boxes, four locks, four puzzles and five things, with numbers that lead nowhere now and then.
fn net() -> impl Strategy<Value = Net> {
    let place = prop_oneof![3 => Just(Where::Open), 1 => Just(Where::Nowhere), 4 => (0..5_usize).prop_map(Where::Box)];
    let boxes = proptest::collection::vec(
        (place.clone(), proptest::collection::vec(0..5_usize, 0..3))
            .prop_map(|(stands, locks)| NetBox { stands, locks }),
        1..6,
    );
    let opener = prop_oneof![(0..4_usize).prop_map(Opener::Puzzle), (0..5_usize).prop_map(Opener::Item)];
    let locks = proptest::collection::vec(proptest::collection::vec(opener, 0..3), 4);
    let puzzles = proptest::collection::vec(proptest::collection::vec(0..6_usize, 0..3), 4);
    let items = proptest::collection::vec(place, 5);
    (boxes, locks, puzzles, items).prop_map(|(mut boxes, locks, puzzles, mut items)| {
        let count = boxes.len();
        let inside = |place: &mut Where| {
            if let Where::Box(index) = place {
                *index %= count;
            }
        };
        boxes.iter_mut().for_each(|item| inside(&mut item.stands));
        items.iter_mut().for_each(inside);
        Net { boxes, locks, puzzles, items }
    })
}

/// The boxes that can be opened, by plain search over all sets of opened boxes: from nothing open, open any one
/// box that is at hand and whose locks can be opened with what is at hand; collect whatever is ever open.
fn brute(net: &Net) -> BTreeSet<usize> {
    let mut seen = BTreeSet::from([Vec::<usize>::new()]);
    let mut open = vec![Vec::new()];
    let mut ever = BTreeSet::new();
    while let Some(state) = open.pop() {
        let at = |place: &Where| match place {
            Where::Open => true,
            Where::Nowhere => false,
            Where::Box(index) => state.contains(index),
        };
        let has = |item: &usize| net.items.get(*item).is_some_and(at);
        let opens = |lock: &usize| {
            net.locks.get(*lock).is_some_and(|openers| {
                openers.iter().any(|opener| match opener {
                    Opener::Item(item) => has(item),
                    Opener::Puzzle(puzzle) => net.puzzles.get(*puzzle).is_some_and(|needs| needs.iter().all(has)),
                })
            })
        };
        for (index, item) in net.boxes.iter().enumerate() {
            if !state.contains(&index) && at(&item.stands) && item.locks.iter().all(opens) {
                ever.insert(index);
                let mut next = state.clone();
                next.push(index);
                next.sort_unstable();
                if seen.insert(next.clone()) {
                    open.push(next);
                }
            }
        }
    }
    ever
}

proptest! {
    #[test]
    fn what_opens_is_what_brute_force_opens(net in net()) {
        let reached = net.play();
        let found: BTreeSet<usize> = (0..net.boxes.len()).filter(|index| reached.boxes[*index].is_some()).collect();
        prop_assert_eq!(&found, &brute(&net));
        // Whatever stays shut once all dead ends are mended is held by a core, and no member of a smallest core
        // can be left out.
        let kind = net.charitable();
        let reached = kind.play();
        let shut: Vec<usize> = (0..kind.boxes.len()).filter(|index| reached.boxes[*index].is_none()).collect();
        let core = kind.smallest_core(&shut);
        prop_assert_eq!(core.is_empty(), shut.is_empty());
        for drop in &core {
            let rest: Vec<usize> = core.iter().copied().filter(|index| index != drop).collect();
            prop_assert!(kind.core(&rest).is_empty());
        }
    }
}

#[path = "flow/drawing.rs"]
mod drawing;
#[path = "flow/plays.rs"]
mod plays;
