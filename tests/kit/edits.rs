//! Edits: applied, taken back, and harmless where they have nothing to do.

use inklatch::kit::edit::{Edit, Facts, Item, apply, apply_all};
use inklatch::kit::{Kit, WordForms};

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
    vec![
        Edit::Facts(Box::new(facts)),
        Edit::Letter(Box::new(letter)),
        Edit::Lock(Box::new(lock)),
        Edit::Note(Box::new(fresh)),
        Edit::Word("cat".into(), Some(WordForms { one: "Sol".into(), ..WordForms::default() })),
        Edit::Word("town".into(), None),
        Edit::Remove(Item::Puzzle(kit.puzzles[3].id.clone())),
        Edit::Remove(Item::Spot(kit.spots[0].id.clone())),
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
