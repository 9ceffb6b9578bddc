//! The drawn flow: nothing overlaps, small flows have no crossing, the same kit gives the same drawing; and what
//! joining two nodes does.

use std::collections::BTreeMap;

use inklatch::diag::{Anchor, Level, PuzzleField};
use inklatch::flow::connect::{Joined, join, lay_part};
use inklatch::flow::drawing::{Drawing, Extent, Kind, Rect, draw, outline, strokes};
use inklatch::flow::flow;
use inklatch::ids::{BoxId, LockId, PropId, PuzzleId, SpotId};
use inklatch::kit::edit::apply_all;
use inklatch::kit::{Kit, Place, Prop, PropRole, Spot};
use inklatch::party::Party;

use super::{box_of, lock_of};
use crate::sound::{kit_of, puzzle_of, sound_kit};

fn drawn(kit: &Kit, extent: Extent) -> Drawing {
    let parts = kit.puzzles.iter().map(|puzzle| (puzzle.id.clone(), puzzle.parts.keys().map(String::as_str).collect()));
    draw(kit, &flow(kit, &parts.collect::<BTreeMap<_, _>>()), extent)
}

fn overlap(a: Rect, b: Rect) -> bool {
    a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h
}

/// What every drawing must be: nodes apart and within it, edges from foot to head and through no node.
fn sound(drawing: &Drawing) {
    for (at, node) in drawing.nodes.iter().enumerate() {
        let r = node.rect;
        assert!(r.x >= 0.0 && r.y >= 0.0 && r.x + r.w <= drawing.width && r.y + r.h <= drawing.height, "{node:?}");
        for other in &drawing.nodes[at + 1..] {
            assert!(!overlap(r, other.rect), "{} lies on {}", node.name, other.name);
        }
    }
    for edge in &drawing.edges {
        let (from, to) = (&drawing.nodes[edge.from].rect, &drawing.nodes[edge.to].rect);
        let (first, last) = (edge.points[0], edge.points[edge.points.len() - 1]);
        let on = |p: (f64, f64), r: &Rect| p.0 >= r.x && p.0 <= r.x + r.w && p.1 >= r.y && p.1 <= r.y + r.h;
        assert!(on(first, from) && on(last, to), "{edge:?}");
        for pair in edge.points.windows(2) {
            // Straight pieces within a row are upright and beside every node of it.
            let middle = ((pair[0].0 + pair[1].0) / 2.0, (pair[0].1 + pair[1].1) / 2.0);
            for node in &drawing.nodes {
                assert!(!on(middle, &node.rect), "an edge runs through {}", node.name);
            }
        }
    }
}

/// A kit with so many puzzles in rounds of three; each round's boxes hold what the next needs.
fn rounds_of_three(count: usize) -> Kit {
    let mut kit = kit_of("many");
    for n in 0..4 {
        let id = SpotId::new(&format!("spot-{n}")).unwrap();
        kit.spots.push(Spot { name: format!("the spot {n}"), id, about: String::new(), person: false });
    }
    let spot = |n: usize| Place::Spot(SpotId::new(&format!("spot-{}", n % 4)).unwrap());
    for n in 0..count {
        let (lock, name) = (format!("lock-{n}"), format!("puzzle-{n}"));
        kit.locks.push(lock_of(&format!("the lock {n}"), &lock));
        let mut item = box_of(&format!("the box {n}"), &format!("box-{n}"), &lock);
        item.place = spot(n);
        kit.boxes.push(item);
        let mut puzzle = puzzle_of(&name, &lock);
        let place = n
            .checked_sub(3)
            .map_or_else(|| spot(n), |before| Place::Box(BoxId::new(&format!("box-{before}")).unwrap()));
        puzzle.parts.insert("card".into(), place);
        puzzle.parts.insert("sheet".into(), spot(n + 1));
        if n % 5 == 4 {
            let id = PropId::new(&format!("tool-{n}")).unwrap();
            kit.props.push(Prop {
                id: id.clone(),
                name: format!("the tool {n}"),
                role: PropRole::Tool,
                place: Place::Box(BoxId::new(&format!("box-{}", n - 4)).unwrap()),
                material: String::new(),
                amount: Default::default(),
                used_up: false,
                made: false,
                about: String::new(),
                printed: None,
            });
            puzzle.tools.push(id);
        }
        kit.puzzles.push(puzzle);
    }
    kit.finish.opens = BoxId::new(&format!("box-{}", count - 1)).unwrap();
    kit
}

#[test]
fn no_two_nodes_overlap_at_thirty_puzzles() {
    for count in [3, 9, 30] {
        let kit = rounds_of_three(count);
        for extent in [Extent::All, Extent::Solving] {
            let drawing = drawn(&kit, extent);
            sound(&drawing);
            assert_eq!(drawing, drawn(&kit, extent));
        }
        let solving = drawn(&kit, Extent::Solving);
        assert_eq!(solving.rounds.len(), count / 3);
        // Three strands side by side, tied by a few tools.
        assert!(solving.crossings() <= count, "{} crossings at {count}", solving.crossings());
    }
}

#[test]
fn small_plane_flows_are_drawn_without_crossings() {
    let single = rounds_of_three(1);
    let three = rounds_of_three(3);
    let mut strand = rounds_of_three(12);
    strand.props.clear();
    strand.puzzles.iter_mut().for_each(|puzzle| puzzle.tools.clear());
    let cases = [(&single, Extent::All), (&three, Extent::Solving), (&strand, Extent::Solving)];
    for (kit, extent) in cases {
        let drawing = drawn(kit, extent);
        sound(&drawing);
        assert_eq!(drawing.crossings(), 0, "{} puzzles", kit.puzzles.len());
    }
    // With its two spots, of which each holds a part of every puzzle, the sound kit has no plane drawing.
    for (extent, most) in [(Extent::All, 2), (Extent::Solving, 0)] {
        let drawing = drawn(&sound_kit(), extent);
        sound(&drawing);
        assert!(drawing.crossings() <= most, "{extent:?}: {}", drawing.crossings());
    }
}

#[test]
fn the_demo_kit_is_drawn_at_every_level_and_holds_no_answer() {
    let opened = inklatch::bundle::open(None).unwrap();
    for level in Level::ALL {
        let party = Party::new(&opened.kit, &opened.theme, level).unwrap();
        let flow = party.flow(&opened.kit);
        let drawing = draw(&party.spoken(&opened.kit), &flow, Extent::Solving);
        sound(&drawing);
        assert!(drawing.crossings() <= 2, "{} crossings", drawing.crossings());
        let told = serde_json::to_string(&drawing.nodes.iter().map(|n| &n.name).collect::<Vec<_>>()).unwrap();
        for puzzle in party.puzzles.iter().filter(|puzzle| puzzle.answer.chars().all(|c| c.is_ascii_digit())) {
            assert!(!told.contains(&puzzle.answer), "{} stands in the drawing", puzzle.answer);
        }
        assert!(!told.contains("{{"), "a slot is not filled: {told}");
    }
}

#[test]
fn a_loop_is_drawn_with_an_edge_that_runs_upwards() {
    let mut kit = rounds_of_three(3);
    kit.puzzles[0].parts.insert("card".into(), Place::Box(BoxId::new("box-0").unwrap()));
    let drawing = drawn(&kit, Extent::All);
    sound(&drawing);
    let back: Vec<_> = drawing.edges.iter().filter(|edge| edge.back).collect();
    assert_eq!(back.len(), 1);
    let (first, last) = (back[0].points[0], back[0].points[back[0].points.len() - 1]);
    assert!(first.1 > last.1);
}

#[test]
fn a_kit_of_nothing_and_a_kit_of_two_thousand_puzzles_are_drawn() {
    sound(&drawn(&kit_of("bare"), Extent::All));
    let drawing = drawn(&rounds_of_three(2_000), Extent::All);
    assert_eq!(drawing.nodes.len(), 3 * 2_000 + 400 + 5 + 1);
}

#[test]
fn every_kind_has_an_outline_of_its_own_within_its_rectangle() {
    let rect = Rect { x: 10.0, y: 20.0, w: 148.0, h: 46.0 };
    let mut seen: Vec<Vec<(f64, f64)>> = Vec::new();
    for kind in Kind::ALL {
        let line = outline(kind, rect);
        for (x, y) in line.iter().copied().chain(strokes(kind, rect).into_iter().flatten()) {
            assert!((10.0..=158.0).contains(&x) && (20.0..=66.0).contains(&y), "{kind:?} {x} {y}");
        }
        // Convex and clockwise (y grows downwards).
        for at in 0..line.len() {
            let (a, b, c) = (line[at], line[(at + 1) % line.len()], line[(at + 2) % line.len()]);
            assert!((b.0 - a.0) * (c.1 - b.1) - (b.1 - a.1) * (c.0 - b.0) >= -1e-9, "{kind:?} is not convex");
        }
        assert!(!seen.contains(&line), "{kind:?} looks like another kind");
        seen.push(line);
    }
}

fn puzzle(id: &str) -> Anchor {
    Anchor::Puzzle(PuzzleId::new(id).unwrap(), PuzzleField::Whole)
}

fn lock(id: &str) -> Anchor {
    Anchor::Lock(LockId::new(id).unwrap())
}

fn item(id: &str) -> Anchor {
    Anchor::Box(BoxId::new(id).unwrap())
}

fn prop(id: &str) -> Anchor {
    Anchor::Prop(PropId::new(id).unwrap())
}

fn spot(id: &str) -> Anchor {
    Anchor::Spot(SpotId::new(id).unwrap())
}

/// Joins, applies, and gives the kit and the sentence back; the edits must be undone exactly.
fn joined(from: &Anchor, to: &Anchor) -> (Kit, String) {
    let before = sound_kit();
    let mut kit = before.clone();
    let Joined::Edits(edits, told) = join(&kit, from, to) else { panic!("{from} and {to} were not joined") };
    let back = apply_all(&mut kit, edits);
    let after = kit.clone();
    apply_all(&mut kit, back);
    assert_eq!(kit, before);
    (after, told)
}

#[test]
fn joining_two_nodes_does_what_a_drag_means() {
    let (kit, told) = joined(&prop("torch"), &spot("table"));
    assert_eq!(kit.props[0].place, Place::Spot(SpotId::new("table").unwrap()));
    assert_eq!(told, "Laid at the table: the night lamp.");
    // It does not matter which of the two is dragged.
    assert_eq!(joined(&spot("table"), &prop("torch")).0, kit);
    let (kit, _) = joined(&prop("torch"), &puzzle("cuff"));
    assert_eq!(kit.puzzles[0].tools, [PropId::new("torch").unwrap()]);
    let (kit, told) = joined(&puzzle("cuff"), &lock("moon-lock"));
    assert_eq!(kit.puzzles[0].opens.as_str(), "moon-lock");
    assert_eq!(told, "\"The cuff\" now opens the moon padlock.");
    // A lock leaves the box on which it hung.
    let (kit, _) = joined(&lock("moon-lock"), &item("tin"));
    assert_eq!(kit.boxes[0].locks.len(), 2);
    assert_eq!(kit.boxes[1].locks, [LockId::new("star-lock").unwrap()]);
    let (kit, _) = joined(&item("tin"), &item("chest"));
    assert_eq!(kit.boxes[0].place, Place::Box(BoxId::new("chest").unwrap()));
    let (kit, _) = joined(&item("tin"), &Anchor::Finish);
    assert_eq!(kit.finish.opens.as_str(), "tin");
}

#[test]
fn a_puzzle_with_several_parts_asks_which() {
    let mut kit = sound_kit();
    let chest = Place::Box(BoxId::new("chest").unwrap());
    let Joined::Parts(id, parts, place) = join(&kit, &puzzle("cuff"), &item("chest")) else { panic!("it did not ask") };
    assert_eq!((parts.join(" ").as_str(), &place), ("key-card word-card", &chest));
    let Joined::Edits(edits, told) = lay_part(&kit, &id, "word-card", &place) else { panic!("it was not laid") };
    assert_eq!(told, "Laid in the chest: the word card of \"The cuff\".");
    apply_all(&mut kit, edits);
    assert_eq!(kit.puzzles[0].parts["word-card"], chest);
    assert!(matches!(lay_part(&kit, &id, "word-card", &place), Joined::Refused(_)));
}

#[test]
fn what_cannot_be_joined_says_why() {
    let kit = sound_kit();
    let refused = |from: &Anchor, to: &Anchor| match join(&kit, from, to) {
        Joined::Refused(why) => why,
        other => panic!("{other:?}"),
    };
    assert!(refused(&spot("table"), &spot("shelf")).starts_with("Two spots cannot be joined."));
    assert!(refused(&spot("table"), &lock("moon-lock")).starts_with("A spot and a lock cannot be joined."));
    assert!(refused(&item("tin"), &item("tin")).contains("itself"));
    assert!(refused(&prop("supper"), &puzzle("cuff")).contains("No puzzle can need the supper yet"));
    assert!(refused(&prop("torch"), &puzzle("log")).contains("needs the night lamp already"));
    assert!(refused(&prop("torch"), &lock("moon-lock")).contains("No lock can be opened with the night lamp yet"));
    assert!(refused(&prop("gone"), &item("tin")).contains("no longer in the kit"));
    let mut kit = kit.clone();
    kit.boxes[0].place = Place::Box(BoxId::new("chest").unwrap());
    let Joined::Refused(why) = join(&kit, &item("chest"), &item("tin")) else { panic!("a loop was made") };
    assert!(why.contains("because that stands in the chest itself"), "{why}");
}
