//! What the host is told to do beforehand, for kits of every making.

use inklatch::bundle::open_demo;
use inklatch::diag::Level;
use inklatch::face::Layer;
use inklatch::ids::PropId;
use inklatch::kit::edit::{Item, apply};
use inklatch::kit::{Form, HowMany, Kit, LockKind, Printed, Prop, PropRole, TokenMake, rename};
use inklatch::party::Party;
use inklatch::prep::{PRINT, PrepPlan, Task, plan};

fn demo(id: &str) -> Kit {
    open_demo(id).unwrap().kit
}

fn planned(kit: &Kit) -> PrepPlan {
    plan(kit, Level::Standard, &[], 1)
}

fn tasks<'a>(plan: &'a PrepPlan, head: &str) -> Vec<&'a Task> {
    plan.tasks.iter().filter(|task| task.what.starts_with(head)).collect()
}

#[test]
fn tokens_are_made_in_their_own_steps() {
    let mut kit = demo("the-stopped-clock");
    let number = kit.puzzles.len() * 3;
    let print = |plan: &PrepPlan| plan.tasks.iter().find(|task| task.what == PRINT).unwrap().clone();
    for make in TokenMake::ALL {
        kit.making.tokens = make;
        let plan = planned(&kit);
        assert!(print(&plan).what.contains("all pieces but the hint tokens"));
        let made = tasks(&plan, "Hint tokens");
        let glued = matches!(make, TokenMake::FoldOver | TokenMake::Flap);
        assert_eq!(made.len(), if glued { 2 } else { 1 }, "{make:?}");
        assert!(made.iter().all(|task| task.start >= print(&plan).hands && task.hands > 0.0), "{make:?}");
        assert!(made[0].what.contains(&format!("{number} ")), "{}", made[0].what);
        let takes = |material: &str| made.iter().any(|task| task.needs.iter().any(|need| need.material == material));
        assert!(takes("scissors") && takes("glue") == glued, "{make:?}");
        assert_eq!(takes("sticker"), make == TokenMake::Flap);
        let bought = plan.shopping.iter().find(|line| line.material == "glue");
        let named = bought.is_some_and(|line| line.for_what.iter().any(|what| what == "the hint tokens"));
        assert_eq!(named, glued, "{make:?}");
        if let [first, then] = made[..] {
            assert!(first.what.contains("glue") && first.wait >= 10.0, "{}", first.what);
            assert!(then.start >= first.start + first.hands + first.wait && then.wait == 0.0, "{make:?}");
            // Whatever is cut round its shape is cut when the layers hold together.
            assert_eq!(then.what.contains("round the shape"), make == TokenMake::FoldOver);
        }
    }
    // As many minutes as there are tokens.
    let hands = |kit: &Kit| tasks(&planned(kit), "Hint tokens").iter().map(|task| task.hands).sum::<f64>();
    let (all, puzzles) = (hands(&kit), kit.puzzles.len());
    kit.puzzles.truncate(puzzles / 2);
    assert!((hands(&kit) * puzzles as f64 - all * (puzzles / 2) as f64).abs() < 1e-6);
    kit.puzzles.clear();
    assert!(tasks(&planned(&kit), "Hint tokens").is_empty());
}

#[test]
fn a_flap_takes_a_sticker_unless_it_lies_open_from_the_start() {
    let mut kit = demo("the-harbour-regatta");
    kit.making.tokens = TokenMake::Flap;
    let puzzles = kit.puzzles.len();
    let listed = |kit: &Kit, level: Level, groups: u16| {
        let plan = plan(kit, level, &[], groups);
        let said = tasks(&plan, "Hint tokens, when they are dry").first().map(|task| task.what.clone());
        let line = plan.shopping.into_iter().find(|line| line.material == "sticker");
        assert_eq!(line.is_some(), said.is_some());
        line.map(|line| {
            assert!(line.used_up && line.stand_in.contains("tape") && line.for_what == ["the hint tokens"]);
            (line.amount as usize, said.unwrap())
        })
    };
    for (open, level) in [(0, Level::Stiff), (1, Level::Gentle), (2, Level::Standard)] {
        kit.levels.of_mut(level).open_steps = open;
        let (number, said) = listed(&kit, level, 1).unwrap();
        assert_eq!(number, puzzles * (3 - usize::from(open)));
        assert_eq!(said.contains("lie open from the start"), open > 0, "{said}");
        assert!(open == 0 || said.contains(&format!("the {number} that you keep")), "{said}");
        assert_eq!(listed(&kit, level, 3).unwrap().0, number * 3);
    }
    kit.levels.standard.open_steps = 3;
    assert_eq!(listed(&kit, Level::Standard, 1), None);
    // Those of the kit's own steps are counted besides.
    let mut clock = demo("the-stopped-clock");
    let own = listed_of(&clock);
    clock.making.tokens = TokenMake::Flap;
    let all = 3.0 * clock.puzzles.len() as f64;
    assert_eq!(listed_of(&clock), own + all - f64::from(clock.levels.standard.open_steps) * all / 3.0);
}

fn listed_of(kit: &Kit) -> f64 {
    planned(kit).shopping.iter().find(|line| line.material == "sticker").map_or(0.0, |line| line.amount)
}

#[test]
fn what_one_party_uses_up_is_bought_anew() {
    let mut kit = demo("the-stopped-clock");
    let prop = |material: &str, used_up: bool| Prop {
        id: PropId::new("extra").unwrap(),
        name: "the extra thing".into(),
        role: PropRole::Decoration,
        place: kit.boxes[0].place.clone(),
        material: material.into(),
        amount: HowMany::All(2.0),
        used_up,
        made: false,
        about: String::new(),
        printed: None,
    };
    let cases: Vec<_> = ["", "string", "plain-paper", "jar"]
        .into_iter()
        .flat_map(|material| [(material, prop(material, false)), (material, prop(material, true))])
        .collect();
    for (material, prop) in cases {
        let used_up = prop.used_up;
        kit.props.push(prop);
        let plan = planned(&kit);
        let own = |line: &&inklatch::prep::ShoppingLine| line.name.contains("the extra thing");
        let line = plan.shopping.iter().find(own);
        let line = line.or_else(|| plan.shopping.iter().find(|line| line.material == material)).unwrap();
        // Paper is used up whatever the author says of it; a jar that is used up stands apart from those that are kept.
        assert_eq!(line.used_up, used_up || material == "plain-paper", "{material}");
        assert_eq!(line.name.contains("the extra thing"), material != "jar" || used_up, "{material}");
        kit.props.pop();
    }
}

#[test]
fn what_a_step_makes_is_not_bought() {
    let mut kit = demo("the-harbour-regatta");
    let listed = |kit: &Kit, name: &str| planned(kit).shopping.iter().any(|line| line.name.starts_with(name));
    assert!(kit.props.iter().any(|prop| prop.made && prop.name == "the starting horn"));
    assert!(!listed(&kit, "the starting horn") && listed(&kit, "funnel"));
    kit.props.iter_mut().for_each(|prop| prop.made = false);
    assert!(listed(&kit, "the starting horn"));
}

#[test]
fn locks_that_look_alike_wear_their_tags_before_their_codes_are_set() {
    let plan = planned(&demo("the-harbour-regatta"));
    let start = |words: &str| tasks(&plan, words).first().map(|task| (task.start, task.start + task.hands)).unwrap();
    assert!(start("Tags of the padlocks").1 <= start("Set the code of every lock").0);
}

#[test]
fn boxes_are_filled_from_the_innermost_only_where_one_lies_in_another() {
    let mut kit = demo("the-harbour-regatta");
    let said = |kit: &Kit| !tasks(&planned(kit), "Lay the pieces").first().unwrap().what.contains("innermost");
    assert!(!kit.nests() && said(&kit));
    let outer = kit.boxes[1].id.clone();
    kit.boxes[0].place = inklatch::kit::Place::Box(outer);
    assert!(kit.nests() && !said(&kit));
}

#[test]
fn there_are_as_many_pencils_as_the_guide_lays_out() {
    let mut kit = demo("the-harbour-regatta");
    let number = |kit: &Kit| {
        let party = Party::new(kit, &open_demo("the-harbour-regatta").unwrap().theme, Level::Standard).unwrap();
        let plan = plan(kit, Level::Standard, &party.prep_steps(), 2);
        let listed = plan.shopping.iter().find(|line| line.material == "pencil").map_or(0.0, |line| line.amount);
        assert_eq!(listed as usize, plan.pencils * 2);
        plan.pencils
    };
    for (guests, pencils) in [(1, 1), (2, 1), (3, 2), (6, 3), (9, 5)] {
        kit.players = (1, guests);
        assert_eq!(number(&kit), pencils, "{guests} guests");
    }
    kit.puzzles.retain(|puzzle| puzzle.mechanic == "count-scene");
    assert_eq!(number(&kit), 0);
}

#[test]
fn only_locks_that_the_kit_has_are_set() {
    let mut kit = demo("the-stopped-clock");
    let said = |kit: &Kit| tasks(&planned(kit), "Set the code").first().map(|task| task.what.clone());
    kit.locks.iter_mut().for_each(|lock| lock.kind = LockKind::Digits(3));
    assert!(said(&kit).unwrap().contains("every lock with wheels while"));
    kit.locks[0].kind = LockKind::Directions(4);
    assert!(said(&kit).unwrap().contains("every lock with wheels or pushes while"));
    kit.locks.iter_mut().skip(1).for_each(|lock| lock.kind = LockKind::Key);
    assert!(said(&kit).unwrap().contains("the lock with pushes while"));
    kit.locks[0].kind = LockKind::Key;
    assert_eq!(said(&kit), None);
}

#[test]
fn a_word_is_told_to_a_person_or_waited_for_by_the_host() {
    let mut kit = demo("the-harbour-regatta");
    let (told, heard) = kit.words();
    assert!(!told.is_empty() || !heard.is_empty());
    let spots: Vec<_> = kit.spots.iter().map(|spot| spot.person).collect();
    kit.spots.iter_mut().for_each(|spot| spot.person = false);
    let plan = planned(&kit);
    let said = tasks(&plan, "Words that are said: you yourself wait for");
    assert!(said.len() == 1 && said[0].what.contains("keep"), "{said:?}");
    assert!(plan.tasks.iter().all(|task| !task.what.starts_with("Tell ")));
    // With every spot a person, each box on a spot has somebody who waits.
    kit.spots.iter_mut().for_each(|spot| spot.person = true);
    assert!(spots.len() == kit.spots.len() && kit.words().1.is_empty());
    let plan = planned(&kit);
    let name = &kit.waits_for(&kit.words().0[0].id).unwrap().name;
    assert!(tasks(&plan, "Tell ")[0].what.contains(name.as_str()));
    assert!(plan.tasks.iter().all(|task| !task.what.contains("you yourself")));
}

#[test]
fn a_box_that_is_a_printed_envelope_is_one_thing() {
    let mut opened = open_demo("the-harbour-regatta").unwrap();
    let kit = &mut opened.kit;
    let at = kit.boxes.iter().position(|item| item.id.as_str() == "envelope").unwrap();
    let listed = |kit: &Kit| planned(kit).shopping.iter().any(|line| line.name == kit.boxes[at].name);
    assert!(listed(kit));
    kit.boxes[at].label = None;
    kit.boxes[at].printed = PropId::new("paper-envelope");
    kit.props.push(Prop {
        id: PropId::new("paper-envelope").unwrap(),
        name: "some folded paper".into(),
        role: PropRole::Decoration,
        place: kit.boxes[at].place.clone(),
        material: String::new(),
        amount: HowMany::Usual,
        used_up: false,
        made: false,
        about: "Lay it down with the flap below.".into(),
        printed: Some(Printed { size: (110.0, 100.0), text: "Not yet".into(), ..Printed::fresh(Form::Envelope) }),
    });
    let kit = &opened.kit;
    assert_eq!(kit.printed_as(&kit.boxes[at]).unwrap().id.as_str(), "paper-envelope");
    // Nothing is bought; it is made, by the box's name, before the boxes are filled.
    assert!(!listed(kit));
    let plan = planned(kit);
    let made = tasks(&plan, "The starter's envelope: fold both tabs")[0];
    let lay = tasks(&plan, "Lay the pieces")[0];
    assert!(made.wait > 0.0 && made.start + made.hands + made.wait <= lay.start);
    // The piece goes by the box's name and wears the marks of its locks.
    let party = Party::new(kit, &opened.theme, Level::Standard).unwrap();
    assert!(party.troubles.is_empty(), "{:?}", party.troubles);
    let piece = party.piece("prop-paper-envelope").unwrap();
    assert!(piece.label.starts_with("The starter’s envelope"), "{}", piece.label);
    let marks = piece.front.layers.iter().filter(|layer| matches!(layer, Layer::Art(art) if art.alt == "mark: moon"));
    assert_eq!(marks.count(), 1);
    // A prop that lies elsewhere is none; a new id is followed.
    let renamed = rename(kit, &Item::Prop(PropId::new("paper-envelope").unwrap()), "paper").unwrap();
    let mut followed = kit.clone();
    renamed.into_iter().for_each(|edit| drop(apply(&mut followed, edit)));
    assert!(followed.printed_as(&followed.boxes[at]).is_some());
    let mut away = kit.clone();
    away.props.last_mut().unwrap().place = away.boxes[0].place.clone();
    assert!(away.printed_as(&away.boxes[at]).is_none() && listed(&away));
}

#[test]
fn blank_pieces_are_the_blank_ones_only_beside_written_ones() {
    let mut kit = demo("the-stopped-clock");
    let prop = kit.props.iter_mut().find(|prop| prop.printed.is_some()).unwrap();
    prop.name = "the seats".into();
    let mut said = |text: &str, more: &[&str]| {
        let prop = kit.props.iter_mut().find(|prop| prop.name == "the seats").unwrap();
        let more = more.iter().map(|text| (*text).to_owned()).collect();
        prop.printed = Some(Printed { copies: 2, text: text.into(), more, ..Printed::fresh(Form::Tent) });
        tasks(&planned(&kit), "The seats")[0].what.clone()
    };
    assert!(said("", &[]).contains("write on them"));
    assert!(said("First", &[""]).contains("write on the blank ones"));
    assert!(!said("First", &["Second"]).contains("write on"));
}
