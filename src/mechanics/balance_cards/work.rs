//! The order as a person finds it: the thing that is never the lighter one, then the next below it.

use super::View;
use crate::limits;
use crate::mechanics::work::{Work, counted};

/// Pictures of scales that a person looks at.
///
/// All of them once, for the thing that is never the lighter one; then on from the last picture, round and round, until
/// each thing's picture with the next lighter one is met. A picture with a third thing on both pans counts 2 (the weight
/// is our estimate).
pub(super) fn work(view: &View) -> Option<Work> {
    let (things, pictures) = (view.things.len(), view.weighings.len());
    if things > limits::SCALES_THINGS || pictures == 0 {
        return None;
    }
    let cost = |at: usize| view.weighings.get(at).map_or(0, |weighing| 1 + usize::from(weighing.both.is_some()));
    let mut looks: usize = (0..pictures).map(cost).sum();
    let mut left: Vec<usize> = (0..things).collect();
    let mut at = 0;
    while left.len() > 1 {
        let lighter = |thing: &usize, left: &[usize]| {
            view.weighings.iter().any(|weighing| weighing.lighter == *thing && left.contains(&weighing.heavier))
        };
        let Some(heaviest) = left.iter().copied().find(|thing| !lighter(thing, &left)) else { break };
        left.retain(|thing| *thing != heaviest);
        let Some(next) = left.iter().copied().find(|thing| !lighter(thing, &left)) else { break };
        for step in 0..pictures {
            let place = (at + step) % pictures;
            looks += cost(place);
            if view.weighings.get(place).is_some_and(|one| one.heavier == heaviest && one.lighter == next) {
                at = (place + 1) % pictures;
                break;
            }
        }
    }
    let both = view.weighings.iter().filter(|weighing| weighing.both.is_some()).count();
    let third = match both {
        0 => String::new(),
        1 => " One of them has a third thing on both pans.".to_owned(),
        both => format!(" {both} of them have a third thing on both pans."),
    };
    let says = format!(
        "Guests look through the {} of scales again and again until {} are in order.{third}",
        counted(pictures, "picture"),
        if things == 2 { "both things".to_owned() } else { format!("all {things} things") },
    );
    Some(Work::new(looks, says))
}
