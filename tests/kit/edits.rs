//! Edits: applied, taken back, and harmless where they have nothing to do.

use inklatch::ids::LockId;
use inklatch::kit::edit::{Edit, Facts, Item, apply, apply_all};
use inklatch::kit::{Apart, Kept, Kit, Lock, Lying, Making, TokenMake, WordForms, rename};

use super::demo_kit;

/// Edits of every sort that change the demo kit.
fn edits(kit: &Kit) -> Vec<Edit> {
    let mut facts = Facts::of(kit);
    facts.title = "Another".into();
    let mut letter = kit.letter.clone();
    letter.body.push_str(" And so on.");
    let mut lock = kit.locks[2].clone();
    lock.hole = 6;
    let mut fresh = kit.notes[0].clone();
    fresh.id = inklatch::ids::NoteId::from_text("Fresh");
    let mut finish = kit.finish.clone();
    finish.treat = "a seed cake".into();
    let mut look = kit.look.clone();
    look.palette.insert("accent".into(), "#204080".into());
    let mut levels = kit.levels.clone();
    levels.stiff.quiet_minutes += 1;
    let making = Making { tokens: TokenMake::FoldOver, ..kit.making };
    let mut dressed = kit.dressed.clone();
    dressed.old_pictures.push(inklatch::files::VPath::new("art/owl.svg").unwrap());
    let apart = Apart {
        one: Lying::Letter,
        other: Lying::Prop(kit.props[0].id.clone()),
        why: "it rustles".into(),
        together: false,
    };
    let at = Item::Spot(kit.spots[0].id.clone());
    let (mut spot, mut item, mut prop, mut puzzle) =
        (kit.spots[1].clone(), kit.boxes[0].clone(), kit.props[1].clone(), kit.puzzles[1].clone());
    spot.about.push('!');
    item.about.push('!');
    prop.about.push('!');
    puzzle.title.push('!');
    vec![
        Edit::Finish(Box::new(finish)),
        Edit::Look(Box::new(look)),
        Edit::Levels(Box::new(levels)),
        Edit::Making(Box::new(making)),
        Edit::Dressed(Box::new(dressed)),
        Edit::Apart(vec![apart]),
        Edit::Credit("art/owl.svg".into(), Some("my own".into())),
        Edit::Spot(Box::new(spot)),
        Edit::Box(Box::new(item)),
        Edit::Prop(Box::new(prop)),
        Edit::Puzzle(Box::new(puzzle)),
        Edit::Insert(1, Box::new(Edit::Lock(Box::new(Lock { id: LockId::from_text("new"), ..kit.locks[0].clone() })))),
        Edit::Facts(Box::new(facts)),
        Edit::Letter(Box::new(letter)),
        Edit::Lock(Box::new(lock)),
        Edit::Note(Box::new(fresh)),
        Edit::Word("cat".into(), Some(WordForms { one: "Sol".into(), ..WordForms::default() })),
        Edit::Word("town".into(), None),
        Edit::Remove(Item::Puzzle(kit.puzzles[3].id.clone())),
        Edit::Id(Item::Lock(kit.locks[0].id.clone()), 0, "fresh-lock".into()),
        Edit::Remove(at),
        Edit::Remove(Item::Note(kit.notes[0].id.clone())),
        Edit::Remove(Item::Lock(kit.locks[0].id.clone())),
        Edit::Remove(Item::Box(kit.boxes[1].id.clone())),
        Edit::Remove(Item::Prop(kit.props[4].id.clone())),
    ]
}

#[test]
fn every_edit_is_taken_back_by_its_inverse() {
    let before = demo_kit();
    for edit in edits(&before) {
        let mut kit = before.clone();
        let said = format!("{edit:?}");
        let back = apply(&mut kit, edit.clone()).unwrap_or_else(|| panic!("changed nothing: {said}"));
        assert_ne!(kit, before, "{said}");
        let after = kit.clone();
        let forth = apply(&mut kit, back).expect("the inverse changed nothing");
        assert_eq!(kit, before, "{said}");
        apply(&mut kit, forth);
        assert_eq!(kit, after, "done again: {said}");
    }
}

#[test]
fn a_list_of_edits_is_taken_back_as_one() {
    let before = demo_kit();
    let mut kit = before.clone();
    let back = apply_all(&mut kit, edits(&before));
    assert_ne!(kit, before);
    let forth = apply_all(&mut kit, back);
    assert_eq!(kit, before);
    apply_all(&mut kit, forth);
    assert_eq!(kit.title, "Another");
}

#[test]
fn an_edit_that_changes_nothing_gives_no_step_to_undo() {
    let mut kit = demo_kit();
    let same = Edit::Puzzle(Box::new(kit.puzzles[0].clone()));
    assert!(apply(&mut kit, same).is_none());
    let gone = Edit::Remove(Item::Note(inklatch::ids::NoteId::from_text("never was")));
    assert!(apply(&mut kit, gone).is_none());
    assert!(apply(&mut kit, Edit::Word("never_was".into(), None)).is_none());
    assert_eq!(kit, demo_kit());
}

/// Every item of the kit.
fn items(kit: &Kit) -> Vec<Item> {
    let notes = kit.notes.iter().map(|item| Item::Note(item.id.clone()));
    let spots = kit.spots.iter().map(|item| Item::Spot(item.id.clone()));
    let boxes = kit.boxes.iter().map(|item| Item::Box(item.id.clone()));
    let locks = kit.locks.iter().map(|item| Item::Lock(item.id.clone()));
    let props = kit.props.iter().map(|item| Item::Prop(item.id.clone()));
    let puzzles = kit.puzzles.iter().map(|item| Item::Puzzle(item.id.clone()));
    notes.chain(spots).chain(boxes).chain(locks).chain(props).chain(puzzles).collect()
}

#[test]
fn a_new_id_goes_wherever_the_old_one_stood() {
    let mut before = demo_kit();
    // Ids of different kinds may be the same word; here every id is one of its own, so that none can hide.
    for (n, item) in items(&before).into_iter().enumerate() {
        let edits = rename(&before, &item, &format!("own-{n}x")).unwrap();
        apply_all(&mut before, edits);
    }
    let one = Lying::Part(before.puzzles[0].id.clone(), "key-card".into());
    before.apart.push(Apart {
        one,
        other: Lying::Box(before.boxes[0].id.clone()),
        why: String::new(),
        together: false,
    });
    before.apart.push(Apart {
        one: Lying::Note(before.notes[0].id.clone()),
        other: Lying::Prop(before.props[0].id.clone()),
        why: String::new(),
        together: false,
    });
    let at = format!("puzzle {}, title", before.puzzles[0].id);
    before.dressed.kept.push(Kept { at, what: "tower".into() });
    for item in items(&before) {
        let mut kit = before.clone();
        let old = item.id().to_owned();
        let edits = rename(&kit, &item, "another-name").unwrap();
        let back = apply_all(&mut kit, edits);
        let text = inklatch::kit::file::write_kit(&kit).unwrap();
        assert!(!text.contains(&old), "{old} is still named");
        let places = |kit: &Kit| items(kit).iter().map(|item| item.id().to_owned()).collect::<Vec<String>>();
        let renamed = |id: &String| if *id == old { "another-name".to_owned() } else { id.clone() };
        assert_eq!(places(&kit), places(&before).iter().map(renamed).collect::<Vec<String>>());
        apply_all(&mut kit, back);
        assert_eq!(kit, before, "{old}");
    }
}

#[test]
fn an_id_that_is_taken_or_none_is_refused() {
    let kit = demo_kit();
    let lock = Item::Lock(kit.locks[0].id.clone());
    for id in [kit.locks[1].id.as_str(), kit.locks[0].id.as_str(), "", "Bell Lock", "-", "x--y"] {
        assert!(rename(&kit, &lock, id).is_err(), "{id}");
    }
    // A box may be called as a lock is.
    assert!(rename(&kit, &Item::Box(kit.boxes[0].id.clone()), kit.locks[0].id.as_str()).is_ok());
    assert!(rename(&kit, &Item::Lock(LockId::from_text("never was")), "some-lock").is_err());
}
