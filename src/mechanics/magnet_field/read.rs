//! Reads a board as guests do who feel every pull.

use super::{Kind, LEAST_ACROSS, NEIGHBOUR, Rule, STEEL_APART, Shape, View};
use crate::kit::LockKind;
use crate::mechanics::slips::Slip;
use crate::readings::tokens::{self, Mark, Order};
use crate::readings::{Budget, Readings};

/// A shape is seen to be larger from this ratio on (common practice, no source).
const LARGER: f64 = 1.2;

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let pulling: Vec<&Shape> = view.shapes.iter().filter(|shape| shape.pulls).collect();
    remark(view, &pulling, &mut all);
    if pulling.is_empty() {
        return all;
    }
    // For each washer the shapes that it can be felt at, the true one first.
    let felt: Vec<Vec<&Shape>> = pulling.iter().map(|washer| felt_at(view, washer)).collect();
    let mut choice = vec![0_usize; felt.len()];
    loop {
        if !budget.step() {
            all.unproven = true;
            break;
        }
        let taken: Vec<&Shape> = felt.iter().zip(&choice).filter_map(|(shapes, at)| shapes.get(*at).copied()).collect();
        let found = tokens::read(&marks(&taken), &order(view.rule.as_ref(), &taken), lock, budget);
        for reading in found.list {
            all.add(lock, &reading.answer, reading.why);
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
        if all.more || all.unproven || !advance(&mut choice, &felt) {
            break;
        }
    }
    all
}

/// The next choice, as an odometer counts; false after the last.
fn advance(choice: &mut [usize], felt: &[Vec<&Shape>]) -> bool {
    for (at, shapes) in choice.iter_mut().zip(felt) {
        *at += 1;
        if *at < shapes.len() {
            return true;
        }
        *at = 0;
    }
    false
}

/// The shapes at which a washer can be felt, its own first.
fn felt_at<'a>(view: &'a View, washer: &'a Shape) -> Vec<&'a Shape> {
    let near = view.shapes.iter().filter(|other| *other != washer && other.distance(washer) < NEIGHBOUR);
    std::iter::once(washer).chain(near).collect()
}

fn marks(taken: &[&Shape]) -> Vec<Mark> {
    taken
        .iter()
        .map(|shape| Mark::new(format!("the {} {}", shape.kind.plain(), shape.number), shape.number.clone()))
        .collect()
}

/// What the rule says about the order of these shapes: which stands clearly before which.
fn order(rule: Option<&Rule>, taken: &[&Shape]) -> Order {
    let before = |a: &Shape, b: &Shape| match rule {
        None => false,
        Some(Rule::Rows) => (b.y - a.y).get() >= (a.across + b.across).get() / 4.0,
        Some(Rule::Sizes) => b.across.get() >= a.across.get() * LARGER,
        Some(Rule::Kinds(kinds)) => {
            let at = |kind: Kind| kinds.iter().position(|listed| *listed == kind);
            matches!((at(a.kind), at(b.kind)), (Some(first), Some(second)) if first < second)
        }
    };
    let mut pairs = Vec::new();
    for (i, a) in taken.iter().enumerate() {
        for (j, b) in taken.iter().enumerate() {
            if i != j && before(a, b) {
                pairs.push((i, j));
            }
        }
    }
    Order::Partial(pairs)
}

/// Says what a guest should not have to guess.
fn remark(view: &View, pulling: &[&Shape], readings: &mut Readings) {
    if view.rule.is_none() {
        readings.remarks.push("no card states the order of the numbers".into());
    }
    for (index, a) in pulling.iter().enumerate() {
        for b in pulling.iter().take(index) {
            if a.distance(b) < STEEL_APART {
                readings.remarks.push(format!(
                    "the washers behind {} and {} lie {:.0} mm apart: they pull at each other and feel like one",
                    b.number,
                    a.number,
                    a.distance(b).get()
                ));
            }
        }
        let idle = view.shapes.iter().filter(|shape| !shape.pulls && shape.number == a.number).count();
        // One digit must stand on a board many times over; a longer number is what people call a shape by.
        if a.number.chars().count() > 1 && idle > 0 {
            readings.remarks.push(format!("{} hides a washer and stands on another shape as well", a.number));
        }
    }
    let small = view.shapes.iter().filter(|shape| shape.across < LEAST_ACROSS).count();
    if small > 0 {
        readings.remarks.push(format!(
            "{small} shapes are under {} mm across: too small for a number that can be read",
            LEAST_ACROSS.get()
        ));
    }
}

/// The numbers in another order than the card's.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let mut pulling = view.pulling();
    let numbers = |shapes: &[&Shape]| shapes.iter().map(|shape| shape.number.as_str()).collect::<String>();
    let mut slips = Vec::new();
    if matches!(view.rule, Some(Rule::Kinds(_) | Rule::Sizes)) {
        pulling.sort_by(|a, b| a.y.get().total_cmp(&b.y.get()));
        slips.push((numbers(&pulling), "they read from the top of the board down: the card gives another order."));
    }
    if view.rule.is_some() {
        pulling.sort_by(|a, b| a.x.get().total_cmp(&b.x.get()));
        slips.push((numbers(&pulling), "they read from the left of the board to the right: ask what the card says."));
    }
    slips
}
