//! Puts the tags in every order that card and numbers allow, without those that may never be seen.

use super::{Tag, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{self, Cue, Mark, Order};
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.tags.len() > limits::HASP {
        all.unproven = true;
        return all;
    }
    let spare: Vec<usize> = (0..view.tags.len()).filter(|at| view.tags.get(*at).is_some_and(|tag| tag.spare)).collect();
    // Every choice of spare tags that guests never saw; none first.
    for choice in 0..1_usize << spare.len() {
        let gone = |at: usize| spare.iter().enumerate().any(|(bit, other)| *other == at && choice >> bit & 1 == 1);
        let tags: Vec<&Tag> = view.tags.iter().enumerate().filter(|(at, _)| !gone(*at)).map(|(_, tag)| tag).collect();
        let label = if choice == 0 { String::new() } else { "with a lock left shut: ".to_owned() };
        arranged(view, &tags, &label, lock, budget, &mut all);
    }
    if !spare.is_empty() {
        all.remarks.push("a lock with a tag need not be opened, and its tag may stay unseen".into());
    }
    if view.holes.is_empty() && view.tags.iter().any(|tag| tag.number.is_none()) {
        all.remarks.push("nothing tells in which order the tags are read".into());
    }
    for tag in view
        .tags
        .iter()
        .filter(|tag| !view.holes.is_empty() && !view.holes.iter().any(|hole| fits(tag, hole.number, &hole.mark)))
    {
        all.remarks.push(format!("the tag with {} fits no hole of the hasp card", tag.text));
    }
    all
}

/// Whether a tag may be taken for that of a hole: by its number where it has one, else by its mark.
fn fits(tag: &Tag, number: u8, mark: &str) -> bool {
    match tag.number {
        Some(own) => own == number,
        None => tag.mark == mark,
    }
}

fn arranged(view: &View, tags: &[&Tag], label: &str, lock: &LockKind, budget: &mut Budget, all: &mut Readings) {
    let marks: Vec<Mark> =
        tags.iter().map(|tag| Mark::new(format!("the tag with {}", tag.text), tag.text.clone())).collect();
    let mut orders = Vec::new();
    if view.holes.is_empty() {
        let mut numbered: Vec<(u8, usize)> =
            tags.iter().enumerate().filter_map(|(at, tag)| Some((tag.number?, at))).collect();
        numbered.sort_unstable();
        if numbered.len() == tags.len() {
            orders.push(cued(numbered.into_iter().map(|(number, at)| (format!("number {number}"), vec![at]))));
        } else {
            orders.push(Order::open());
        }
    } else {
        let mut holes = view.holes.clone();
        holes.sort_by_key(|hole| hole.number);
        let cue = |hole: &super::Hole| {
            let fit = tags.iter().enumerate().filter(|(_, tag)| fits(tag, hole.number, &hole.mark)).map(|(at, _)| at);
            (format!("hole {}", hole.number), fit.collect::<Vec<_>>())
        };
        orders.push(cued(holes.iter().map(cue)));
        if !view.rule {
            orders.push(cued(holes.iter().rev().map(cue)));
        }
    }
    for order in orders {
        let found = tokens::read(&marks, &order, lock, budget);
        for reading in found.list {
            all.add(lock, &reading.answer, format!("{label}{}", reading.why));
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
}

/// One mark for each cue; a hole whose tag is missing is passed over.
fn cued(cues: impl Iterator<Item = (String, Vec<usize>)>) -> Order {
    Order::Cued(cues.filter(|(_, marks)| !marks.is_empty()).map(|(label, marks)| Cue { label, marks }).collect())
}
