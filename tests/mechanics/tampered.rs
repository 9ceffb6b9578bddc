//! A drawing that says something else than was proven is noticed: puzzles of words and keys.

use inklatch::face::proof::Printed;
use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings};

use crate::common::{lay_out, printed, reread};

/// What the paper of a puzzle reads as after `change`; nothing when it cannot be read at all.
fn after(id: &str, setup: &str, answer: &str, change: impl FnOnce(&mut [Printed])) -> Option<Readings> {
    let mechanic = find(id).unwrap();
    let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
    let view = lay_out(mechanic, setup, answer, &lock, 1).unwrap();
    let mut sides = printed(id, &lock, view.as_ref());
    change(&mut sides);
    let again = reread(mechanic, &lock, &sides).unwrap().ok()?;
    Some(again.readings(&lock, &mut Budget::default()))
}

fn answers(found: &Readings) -> Vec<&str> {
    found.list.iter().map(|reading| reading.answer.as_str()).collect()
}

fn side<'a>(sides: &'a mut [Printed], part: &str) -> &'a mut Printed {
    sides.iter_mut().find(|side| side.part == part).unwrap()
}

/// Two texts change places on the paper.
fn swap(side: &mut Printed, one: usize, two: usize) {
    let place = |side: &Printed, at: usize| (side.texts[at].x, side.texts[at].y, side.texts[at].rect);
    let (a, b) = (place(side, one), place(side, two));
    for (at, (x, y, rect)) in [(one, b), (two, a)] {
        let text = &mut side.texts[at];
        (text.x, text.y, text.rect) = (x, y, rect);
    }
}

fn text(side: &Printed, said: &str) -> usize {
    side.texts.iter().position(|text| text.text.trim() == said).unwrap()
}

#[test]
fn swapped_digits_on_a_key_card() {
    let found = after("letter-key", "(word: \"OWL\")", "582", |sides| {
        let card = side(sides, "key-card");
        // The digits stand right after their letters in drawing order.
        let (o, w) = (text(card, "O") + 1, text(card, "W") + 1);
        swap(card, o, w);
    });
    assert_eq!(answers(&found.unwrap()), ["852"]);
}

#[test]
fn a_letter_on_another_key_of_the_pad() {
    let found = after("keypad-word", "(word: \"OWL\")", "695", |sides| {
        let pad = side(sides, "keypad");
        let (mno, wxyz) = (text(pad, "MNO"), text(pad, "WXYZ"));
        swap(pad, mno, wxyz);
    });
    assert_eq!(answers(&found.unwrap()), ["965"]);
    // Letters between two keys belong to neither.
    let between = after("keypad-word", "(word: \"OWL\")", "695", |sides| {
        let pad = side(sides, "keypad");
        let at = text(pad, "MNO");
        pad.texts[at].rect.y = pad.texts[at].rect.y - inklatch::units::Mm::new(12.4);
    });
    assert!(between.is_none_or(|found| answers(&found) != ["695"]));
}

#[test]
fn swapped_headings_of_a_square() {
    // Of the headings 1 to 5 the columns come first in drawing order, from the left; the second digits are columns.
    let found = after("grid-square", "(headings: ordered)", "1432", |sides| {
        let square = side(sides, "square");
        let (two, four) = (text(square, "2"), text(square, "4"));
        swap(square, two, four);
    });
    assert_eq!(answers(&found.unwrap()), ["1234"]);
}

#[test]
fn another_word_in_a_story() {
    let found = after("hidden-numbers", "()", "42", |sides| {
        let card = side(sides, "story");
        for text in &mut card.texts {
            text.text = text.text.replace("roof of our", "roof by our").replace("half ouroboros", "half lion");
        }
    });
    assert_eq!(answers(&found.unwrap()), Vec::<&str>::new());
}

#[test]
fn a_letter_that_is_odd_no_longer() {
    let odd = after("odd-letters", "()", "27", |_| {});
    assert_eq!(answers(&odd.unwrap()), ["27"]);
    let found = after("odd-letters", "()", "27", |sides| {
        let card = side(sides, "story");
        let at = card.texts.iter().position(|text| text.bold && text.text.trim().len() == 1).unwrap();
        card.texts[at].bold = false;
    });
    assert_eq!(answers(&found.unwrap()), Vec::<&str>::new());
}
