//! Guides of kits with very wide and very high flows, as they are laid out.

use std::fmt::Write as _;
use std::sync::Arc;

use super::*;
use crate::bundle::told::laid;
use crate::bundle::{DEMO_KITS, Opened, open_demo, open_in, press_of, prove};
use crate::diag::Level;
use crate::face::Audience;
use crate::files::{Memory, VPath};
use crate::kit::{Flip, LockKind, Making, TokenMake};
use crate::prep::plan;
use crate::print::{DocInfo, Press, SetDoc};

/// What a kit of these tests is like.
struct Shape {
    puzzles: usize,
    /// Locks of each box; with none each box lies in the one before, and its puzzle with it.
    hasp: usize,
    /// Tools of the first puzzle.
    tools: usize,
}

fn kit(shape: &Shape) -> String {
    let Shape { puzzles, hasp, tools } = *shape;
    let marks = ["bell", "star", "moon", "gear", "key", "owl"];
    let (mut locks, mut all, mut boxes, mut props) = (String::new(), String::new(), String::new(), String::new());
    for n in 0..tools {
        let _ = write!(props, r#"(id:"tool-{n}",name:"the tool {n}",role:Tool,place:Spot("shelf")),"#);
    }
    for n in 0..puzzles {
        let _ =
            write!(locks, r#"(id:"lock-{n}",name:"the lock {n}",kind:Digits(3),mark:"{}"),"#, marks[n % marks.len()]);
        let place = match n.checked_sub(1) {
            Some(before) if hasp == 0 => format!(r#"Box("box-{before}")"#),
            _ => r#"Spot("table")"#.to_owned(),
        };
        let needs = if n == 0 { (0..tools).map(|tool| format!(r#""tool-{tool}","#)).collect() } else { String::new() };
        let _ = write!(
            all,
            r#"(id:"puzzle-{n}",title:"The riddle of drawer {n}",mechanic:"letter-key",answer:"{}",opens:"lock-{n}",
            setup:(word:"OWL"),parts:{{"key-card":{place},"word-card":{place}}},tools:[{needs}]),"#,
            (137 * n + 218) % 900 + 100
        );
    }
    let each = hasp.max(1);
    for n in 0..puzzles.div_ceil(each) {
        let of: String = (n * each..puzzles.min((n + 1) * each)).map(|lock| format!(r#""lock-{lock}","#)).collect();
        let place = match n.checked_sub(1) {
            Some(before) if hasp == 0 => format!(r#"Box("box-{before}")"#),
            _ => r#"Spot("table")"#.to_owned(),
        };
        let _ = write!(boxes, r#"(id:"box-{n}",name:"the cabinet {n}",place:{place},locks:[{of}],hasp:true),"#);
    }
    let last = puzzles.div_ceil(each) - 1;
    format!(
        r#"(format:1,id:"shaped",title:"Shaped",author:"A maker",theme:"plain",players:(2,6),ages:(14,99),minutes:60,
        letter:(salutation:"Dear friends,",body:"It is shut.",closing:"In haste,",signature:"W",place:Spot("table")),
        notes:[(id:"done",kind:Closing,title:"Open",text:"It is hidden:",place:Box("box-{last}"))],
        spots:[(id:"table",name:"the table"),(id:"shelf",name:"the shelf")],boxes:[{boxes}],locks:[{locks}],
        props:[{props}],puzzles:[{all}],finish:(opens:"box-{last}",card:"done",treat:"soup"))"#
    )
}

/// The flow of the guide of such a kit: its data, and the pages laid out.
fn guide(shape: &Shape) -> (Value, SetDoc) {
    let path = VPath::new("kit.ron").unwrap();
    let opened = open_in(Arc::new(Memory::with([(path.clone(), kit(shape).into_bytes())])), path).unwrap();
    let press = press_of(&opened).unwrap();
    let data = told(&opened, &press);
    let set = press.guide(&data, Paper::Letter, &DocInfo::default()).unwrap();
    (data["flow"].clone(), set)
}

/// What the guide of a kit says at the standard level.
fn told(opened: &Opened, press: &Press) -> Value {
    let proof = prove(opened, press, &[Level::Standard]).unwrap();
    let level = &proof.levels[0];
    let prep = plan(&opened.kit, Level::Standard, &[], 1);
    let files = laid(opened, level, Paper::Letter, press);
    let files: Vec<_> = files.iter().collect();
    let source = Source {
        opened,
        party: &level.party,
        flow: &level.flow,
        prep: &prep,
        rehearsal: level.rehearsal.as_deref(),
        paper: Paper::Letter,
        groups: 1,
        forced: &[],
        files: &files,
    };
    data(&source).unwrap()
}

/// Nothing leaves its page or runs into its foot, nothing is tiny, and of the puzzles so many stand in pictures.
fn readable(shape: &Shape) -> (usize, usize) {
    let (flow, set) = guide(shape);
    let mut named = vec![0; shape.puzzles];
    for page in 0..set.page_count() {
        let (size, words) = (set.page_size(page).unwrap(), set.words(page));
        for word in &words {
            let foot = word.text.contains("host guide") || word.text.contains("print at") || word.text.contains("Page");
            let lowest = if foot { size.h.get() - 8.0 } else { size.h.get() - 24.0 };
            let at = &word.rect;
            assert!(at.x.get() > 8.0 && at.right().get() < size.w.get() - 8.0, "page {page}: {}", word.text);
            assert!(at.y.get() > 8.0 && at.bottom().get() < lowest, "page {page}: {}", word.text);
            assert!(word.size.get() >= 11.5, "page {page}: {} is set in {:?}", word.text, word.size);
        }
    }
    let parts = flow["parts"].as_array().unwrap();
    for node in parts.iter().flat_map(|part| part["nodes"].as_array().unwrap()) {
        let number = node["name"].as_str().unwrap().strip_prefix("The riddle of drawer ");
        if let Some(number) = number {
            named[number.parse::<usize>().unwrap()] += 1;
        }
    }
    for part in parts {
        let most = if flow["turned"].as_bool().unwrap() { 239.5 } else { 176.0 };
        assert!(part["width"].as_f64().unwrap() <= most, "{}", part["title"]);
    }
    let drawn = named.iter().filter(|count| **count > 0).count();
    assert!(named.iter().all(|count| *count <= 1), "{named:?}");
    assert_eq!(drawn + flow["told"].as_array().unwrap().len(), shape.puzzles.max(drawn + usize::from(drawn == 0)));
    (parts.len(), drawn)
}

#[test]
fn a_wide_flow_comes_in_a_picture_for_each_box() {
    assert_eq!(readable(&Shape { puzzles: 6, hasp: 6, tools: 0 }), (1, 6));
    assert_eq!(readable(&Shape { puzzles: 40, hasp: 6, tools: 0 }), (7, 40));
    let (parts, drawn) = readable(&Shape { puzzles: 40, hasp: 40, tools: 0 });
    assert!((5..=8).contains(&parts) && drawn == 40, "{parts} pictures");
}

#[test]
fn what_no_page_is_wide_enough_for_is_told() {
    let (parts, drawn) = readable(&Shape { puzzles: 4, hasp: 1, tools: 14 });
    assert_eq!((parts, drawn), (3, 3));
}

#[test]
fn a_high_flow_goes_on_and_one_that_fills_the_guide_is_told() {
    assert_eq!(readable(&Shape { puzzles: 30, hasp: 0, tools: 0 }), (1, 30));
    let (flow, _) = guide(&Shape { puzzles: 140, hasp: 0, tools: 0 });
    assert!(flow["parts"].as_array().unwrap().is_empty());
    assert!(flow["told"][0].as_str().unwrap().contains("140 puzzles"));
}

#[test]
fn what_is_laid_out_is_called_as_its_caption_says() {
    for kit in DEMO_KITS {
        let opened = open_demo(kit).unwrap();
        let press = press_of(&opened).unwrap();
        let guide = told(&opened, &press);
        let places = guide["places"].as_array().unwrap();
        let things = places.iter().flat_map(|place| place["things"].as_array().unwrap());
        let mut named: Vec<String> = things.map(|thing| thing["name"].as_str().unwrap().to_owned()).collect();
        let after = places.iter().flat_map(|place| place["after"].as_array().unwrap());
        named.extend(after.filter_map(|line| line.as_str().unwrap().strip_prefix("Hang ").map(str::to_owned)));
        let proof = prove(&opened, &press, &[Level::Standard]).unwrap();
        let party = &proof.levels[0].party;
        let mut titles = 0;
        for piece in party.pieces.iter().filter(|piece| piece.audience == Audience::Players) {
            if opened.kit.puzzles.iter().all(|puzzle| puzzle.id.as_str() != piece.group) {
                continue;
            }
            let called = typographic(places::called(piece));
            let laid: Vec<&String> = named.iter().filter(|name| name.starts_with(&called)).collect();
            assert!(!laid.is_empty(), "{kit}: {} is laid nowhere: {named:?}", piece.label);
            let single = party.pieces.iter().filter(|o| o.group == piece.group && o.part == piece.part).count() == 1;
            if let (true, Some(title)) = (single, piece.title()) {
                let titled = laid.iter().any(|name| name.to_lowercase().contains(&typographic(&title).to_lowercase()));
                assert!(titled, "{kit}: {title} is missing: {laid:?}");
                titles += 1;
            }
        }
        assert!(titles > 3, "{kit}: {titles}");
        // What the guide says of marks is true of what is drawn.
        let note = guide["sheets_note"].as_str().unwrap();
        let bare = note.split_once("do not wear the mark of their lock: ").map_or("", |(_, bare)| bare);
        for puzzle in &opened.kit.puzzles {
            let mark = format!("mark: {}", opened.kit.lock(&puzzle.opens).unwrap().mark);
            for piece in party.pieces.iter().filter(|piece| piece.group == puzzle.id.as_str()) {
                let wears = piece.front.layers.iter().any(|layer| match layer {
                    crate::face::Layer::Art(art) => art.alt == mark,
                    crate::face::Layer::Text(_) => false,
                });
                let told = bare.contains(&typographic(places::called(piece)));
                assert!(piece.audience != Audience::Players || wears || told, "{kit}: {} {bare}", piece.label);
            }
        }
        let said = guide["say"].to_string();
        assert_eq!(said.contains("Nearly every piece"), !bare.is_empty());
        // Every piece lies on a sheet that the table names, and every sheet has its row.
        let table = guide["sheets"].to_string();
        for piece in &party.pieces {
            let called = typographic(places::called(piece));
            let told = table.contains(&called) || piece.audience == Audience::Hints;
            assert!(told, "{kit}: {called} is not in {table}");
        }
    }
}

#[test]
fn what_has_a_back_is_printed_on_both_sides_and_turned_as_the_kit_says() {
    let mut opened = open_demo("the-harbour-regatta").unwrap();
    let press = press_of(&opened).unwrap();
    let said = |opened: &Opened| told(opened, &press)["printing"].as_str().unwrap().to_owned();
    for (make, flip, edge) in [
        (TokenMake::Plain, Flip::LongEdge, ""),
        (TokenMake::FoldOver, Flip::ShortEdge, ""),
        (TokenMake::TwoSided, Flip::LongEdge, "over the long edge"),
        (TokenMake::TwoSided, Flip::ShortEdge, "over the short edge"),
    ] {
        opened.kit.making = Making { tokens: make, flip };
        let said = said(&opened);
        if edge.is_empty() {
            assert!(said.contains(", on one side.") && !said.contains("both sides"), "{said}");
            continue;
        }
        let proof = prove(&opened, &press, &[Level::Standard]).unwrap();
        let files = laid(&opened, &proof.levels[0], Paper::Letter, &press);
        let of = |folder: &str| &files.iter().find(|file| file.audience == folder).unwrap().sheets;
        let backs = of("hints").iter().filter(|sheet| sheet.stock.is_none()).count();
        assert!(backs > 0 && backs * 2 == of("hints").len());
        let host = of("host").len();
        let pairs = format!("both sides: token sheets 1 to {} and host’s sheets {} and {host}.", backs * 2, host - 1);
        assert!(said.contains(&pairs) && said.contains(edge) && said.contains("printer test"), "{said}");
    }
}

#[test]
fn what_one_party_uses_up_is_had_anew() {
    let mut opened = open_demo("the-harbour-regatta").unwrap();
    let press = press_of(&opened).unwrap();
    let back = |opened: &Opened| told(opened, &press)["reset"].to_string();
    let kept = back(&opened);
    assert!(!kept.contains("The string of flags: take the fresh ones."), "{kept}");
    opened.kit.props.iter_mut().for_each(|prop| prop.used_up = true);
    let anew = back(&opened);
    // What is bought is bought again, what is printed is printed again and taken.
    let print = anew.split("Print once more").nth(1).unwrap();
    for said in
        ["The string of flags: take the fresh ones.", "The starting line: take the fresh ones.", "The finest shell"]
    {
        assert!(anew.contains(said), "{said}: {anew}");
    }
    assert!(print.contains("the string of flags") || print.contains("The string of flags"), "{print}");
}

#[test]
fn as_many_pencils_are_laid_out_as_are_listed() {
    for id in DEMO_KITS {
        let mut opened = open_demo(id).unwrap();
        let press = press_of(&opened).unwrap();
        for (letter, place) in [(opened.kit.letter.place.clone(), ""), (None, "Where the guests sit")] {
            opened.kit.letter.place = letter;
            let proof = prove(&opened, &press, &[Level::Standard]).unwrap();
            let files = laid(&opened, &proof.levels[0], Paper::A4, &press);
            let plan = crate::bundle::export::prep(&opened, &proof.levels[0], 1);
            let data = crate::bundle::export::guide_data(&opened, &proof.levels[0], &plan, (Paper::A4, 1), &[], &files)
                .unwrap();
            let listed = data["shopping"].as_array().unwrap().iter().find(|item| item["name"] == "Pencil").unwrap();
            assert_eq!(listed["amount"], format!("{} pieces", plan.pencils), "{id}");
            assert_eq!(plan.pencils, usize::from(opened.kit.players.1).div_ceil(2), "{id}");
            assert!(!data.to_string().contains("{{"), "{id}: a slot is not filled");
            let places = data["places"].to_string();
            assert!(places.contains(&format!("{} pencils", plan.pencils)), "{id}: {places}");
            assert!(places.contains(place) && data["reset"].to_string().contains(place), "{id}: {places}");
        }
    }
}

#[test]
fn the_picture_of_the_flow_begins_its_page_and_cuts_no_section() {
    for id in DEMO_KITS {
        let opened = open_demo(id).unwrap();
        let press = press_of(&opened).unwrap();
        let data = told(&opened, &press);
        let set = press.guide(&data, Paper::A4, &DocInfo::default()).unwrap();
        let headed: Vec<Vec<_>> = (0..set.page_count())
            .map(|page| set.words(page))
            .filter(|words| words.iter().any(|word| word.size.get() > 16.0 && word.text.contains("as a picture")))
            .collect();
        let [page] = headed.as_slice() else { panic!("{id}: the picture stands on {} pages", headed.len()) };
        let heading = page.iter().find(|word| word.text.contains("as a picture")).unwrap();
        let above = page.iter().filter(|word| word.rect.bottom() < heading.rect.y);
        assert_eq!(above.count(), 0, "{id}");
    }
}

#[test]
fn a_word_that_is_said_is_no_padlock() {
    let opened = open_demo("the-harbour-regatta").unwrap();
    let guide = told(&opened, &press_of(&opened).unwrap());
    let words = opened.kit.locks.iter().filter(|lock| lock.kind == LockKind::Spoken).count();
    let locks = guide["locks"].as_array().unwrap();
    let tested = locks.iter().filter(|lock| lock["tested"].as_bool().unwrap()).count();
    assert!(words > 0 && tested + words == locks.len(), "{tested} of {} are tested", locks.len());
    let all = guide.to_string();
    assert_eq!(all.matches("said aloud, opens").count(), words, "{all}");
    assert!(
        all.contains(&format!("Set the {tested} codes")) && all.contains("the slip of the word that you wait for"),
        "{all}"
    );
}

#[test]
fn a_box_that_the_kit_prints_is_told_once_and_by_its_own_name() {
    let mut opened = open_demo("the-harbour-regatta").unwrap();
    let at = opened.kit.boxes.iter().position(|item| item.id.as_str() == "envelope").unwrap();
    let mut prop = opened.kit.props[0].clone();
    prop.id = crate::ids::PropId::new("paper-envelope").unwrap();
    (prop.name, prop.about) = ("some folded paper".into(), "Lay it with the flap below.".into());
    prop.place = opened.kit.boxes[at].place.clone();
    prop.printed = Some(crate::kit::Printed::fresh(crate::kit::Form::Envelope));
    opened.kit.boxes[at].printed = Some(prop.id.clone());
    opened.kit.props.push(prop);
    let guide = told(&opened, &press_of(&opened).unwrap());
    let things = guide["places"].as_array().unwrap().iter().flat_map(|place| place["things"].as_array().unwrap());
    let named: Vec<String> = things.filter(|t| t["name"] == "The starter’s envelope").map(Value::to_string).collect();
    assert!(named.len() == 1 && named[0].contains("from the sheets, filled and shut as above"), "{named:?}");
    assert!(guide["places"].to_string().contains("Lay it with the flap below."));
    assert!(!guide.to_string().contains("folded paper"));
    assert!(guide["shopping"].as_array().unwrap().iter().all(|item| item["name"] != "The starter’s envelope"));
}
