use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

/// A map of six by six squares; places are square, picture, sign.
fn map(places: &[(usize, &str, Option<char>)], roads: &[(usize, usize)], task: &Value) -> Value {
    let places: Vec<Value> =
        places.iter().map(|(at, picture, sign)| json!({ "at": at, "picture": picture, "sign": sign })).collect();
    json!({
        "text": "", "cols": 6, "rows": 6, "places": places, "roads": roads, "north": true, "task": task,
        "say_stops": true,
    })
}

fn read(view: &Value, lock: &LockKind) -> Readings {
    find("route-map").unwrap().view(view).unwrap().readings(lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

/// From the owl in the middle: two east, one south to a 4, passing a 9; then three west to a 7.
fn legs() -> Value {
    let task = json!({ "Legs": ["owl", [[["East", 2], ["South", 1]], [["West", 3]]]] });
    let places = [(14, "owl", None), (15, "star", Some('9')), (22, "bell", Some('4')), (19, "key", Some('7'))];
    map(&places, &[], &task)
}

#[test]
fn the_signs_at_the_stops_are_read() {
    let found = read(&legs(), &LockKind::Digits(2));
    assert_eq!(answers(&found), ["47"]);
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn signs_that_are_passed_count_where_nothing_says_that_they_do_not() {
    let mut view = legs();
    view["say_stops"] = json!(false);
    assert_eq!(answers(&read(&view, &LockKind::Digits(2))), ["47"], "another length");
    let found = read(&view, &LockKind::Digits(3));
    assert_eq!(answers(&found), ["947"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("passed")), "{found:?}");
}

#[test]
fn without_a_north_mark_the_map_may_lie_any_way() {
    let mut view = legs();
    view["north"] = json!(false);
    // Turned by a quarter the route goes two south and one west, then three north.
    view["places"].as_array_mut().unwrap().extend([
        json!({ "at": 25, "picture": "moon", "sign": "5" }),
        json!({ "at": 7, "picture": "moon", "sign": "6" }),
    ]);
    let found = read(&view, &LockKind::Digits(2));
    assert_eq!(answers(&found), ["47", "56"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("north mark")), "{found:?}");
}

#[test]
fn a_start_that_stands_twice_and_a_route_that_leaves_the_map_are_noticed() {
    let mut view = legs();
    view["places"].as_array_mut().unwrap().push(json!({ "at": 5, "picture": "owl", "sign": null }));
    let found = read(&view, &LockKind::Digits(2));
    assert_eq!(answers(&found), ["47"], "the other start leads off the map");
    assert!(found.remarks.iter().any(|remark| remark.contains("2 places")), "{found:?}");
    view["task"] = json!({ "Legs": ["gear", [[["East", 2]]]] });
    assert!(read(&view, &LockKind::Digits(2)).list.is_empty());
    view["task"] = json!({ "Legs": ["owl", [[["East", 4_000_000_000_u64]]]] });
    assert!(read(&view, &LockKind::Digits(2)).list.is_empty());
}

/// Two roads of four steps from corner to corner of a square, one of them past a 3, the other past an 8.
fn roads() -> Value {
    let roads = [(0, 1), (1, 2), (2, 8), (8, 14), (0, 6), (6, 12), (12, 13), (13, 14)];
    let places = [(0, "owl", None), (14, "bell", None), (1, "key", Some('3')), (12, "star", Some('8'))];
    map(&places, &roads, &json!({ "Shortest": ["owl", "bell"] }))
}

#[test]
fn two_shortest_roads_are_two_readings() {
    let found = read(&roads(), &LockKind::Digits(1));
    assert_eq!(answers(&found), ["3", "8"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("equally short")), "{found:?}");
    let mut view = roads();
    view["roads"].as_array_mut().unwrap().push(json!([1, 7]));
    view["roads"].as_array_mut().unwrap().push(json!([7, 13]));
    assert_eq!(answers(&read(&view, &LockKind::Digits(1))), ["3", "8"], "a third way past the same sign");
    view["roads"] = json!([[0, 1], [1, 2], [2, 8], [8, 14]]);
    let found = read(&view, &LockKind::Digits(1));
    assert_eq!(answers(&found), ["3"]);
    assert!(found.remarks.is_empty(), "{found:?}");
    view["roads"] = json!([[0, 1]]);
    assert_eq!(read(&view, &LockKind::Digits(1)).remarks, ["no road leads from the start to the goal"]);
    view["roads"] = json!([[0, 14]]);
    assert!(read(&view, &LockKind::Digits(1)).list.is_empty(), "a road must join neighbours");
}

#[test]
fn made_road_maps_have_one_shortest_way() {
    let mechanic = find("route-map").unwrap();
    for work in ["Light", "Fair", "Deep"] {
        for seed in 0..25 {
            let lock = LockKind::Digits(4);
            let setup = format!("(route: Roads, cols: 8, rows: 9, work: {work})");
            let view = lay_out(mechanic, &setup, "4471", &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict("4471"), Verdict::One, "{work} {seed}: {found:?}");
            assert!(found.remarks.is_empty(), "{found:?}");
            assert!(dressed("route-map", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn the_sides_to_which_stops_lie_are_pushed() {
    let places = [(0, "owl", None), (2, "bell", None), (14, "key", None), (12, "star", None), (5, "moon", None)];
    let task = json!({ "Bearings": ["owl", "bell", "key", "star"] });
    let mut view = map(&places, &[], &task);
    assert_eq!(answers(&read(&view, &LockKind::Directions(3))), ["RDL"]);
    view["north"] = json!(false);
    assert_eq!(answers(&read(&view, &LockKind::Directions(3))), ["DLU", "LUR", "RDL", "URD"]);
    view["north"] = json!(true);
    view["places"].as_array_mut().unwrap().push(json!({ "at": 3, "picture": "bell", "sign": null }));
    let found = read(&view, &LockKind::Directions(3));
    assert_eq!(answers(&found), ["RDL"], "from the other bell no straight way leads to the key");
    assert!(!found.remarks.is_empty());
    view["task"] = json!({ "Bearings": ["owl", "key"] });
    assert!(read(&view, &LockKind::Directions(1)).list.is_empty(), "not in line");
    let mechanic = find("route-map").unwrap();
    for (answer, pushes) in [("ULRD", 4), ("rrdul", 5)] {
        let lock = LockKind::Directions(pushes);
        for seed in 0..20 {
            let view = lay_out(mechanic, "()", answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{answer} {seed}: {found:?}");
            assert!(dressed("route-map", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn the_card_says_numbers_in_words() {
    let lock = LockKind::Digits(5);
    let view = lay_out(find("route-map").unwrap(), "(work: Deep)", "40718", &lock, 2).unwrap();
    let pieces = dressed("route-map", &lock, |cx| view.pieces(cx)).unwrap();
    let card = pieces.iter().find(|piece| piece.part == "route").unwrap();
    for run in card.front.runs() {
        assert!(!run.text.text().chars().any(|c| c.is_ascii_digit()), "{}", run.text.text());
    }
}

#[test]
fn what_is_no_map_is_refused() {
    let mechanic = find("route-map").unwrap();
    for setup in [
        "(cols: 3)",
        "(rows: 90)",
        "(others: 200)",
        "(start: \"owll\")",
        "(route: Roads, start: \"owl\", goal: \"owl\")",
    ] {
        let trouble = lay_out(mechanic, setup, "471", &LockKind::Digits(3), 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
    let pushes = LockKind::Directions(6);
    let trouble = lay_out(mechanic, "(cols: 5, rows: 5)", "UUUUUU", &pushes, 1).err().unwrap();
    assert!(trouble.hints[0].contains("larger"), "{trouble}");
    let mut view = legs();
    view["cols"] = json!(4_000_000_000_u64);
    let view = mechanic.view(&view).unwrap();
    assert!(view.readings(&LockKind::Digits(2), &mut Budget::default()).list.is_empty());
    assert!(dressed("route-map", &LockKind::Digits(2), |cx| view.pieces(cx)).is_err());
}
