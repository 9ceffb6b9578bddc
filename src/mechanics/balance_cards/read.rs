use super::{View, Weighing};
use crate::kit::LockKind;
use crate::mechanics::slips::Slip;
use crate::readings::tokens::{Mark, Order, read};
use crate::readings::{Budget, Readings};

/// The tags in every order that the weighings allow.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let marks: Vec<Mark> =
        view.things.iter().map(|thing| Mark::new(format!("the {}", thing.symbol), thing.tag)).collect();
    let pairs: Vec<(usize, usize)> =
        view.weighings.iter().map(|weighing| (weighing.heavier, weighing.lighter)).collect();
    let mut readings = Readings::default();
    // What lies on both pans adds as much to either and tells nothing; it must only be one of the things.
    let listed = |weighing: &Weighing| {
        [Some(weighing.heavier), Some(weighing.lighter), weighing.both].into_iter().flatten().all(|at| at < marks.len())
    };
    if !view.weighings.iter().all(listed) {
        readings.remarks.push("a weighing shows a thing that is not listed".into());
        return readings;
    }
    readings = read(&marks, &Order::Partial(pairs.clone()), lock, budget);
    match order(marks.len(), &pairs) {
        None => readings.remarks.push("the weighings contradict one another".into()),
        Some(ranks) => readings.remarks.extend(
            // An order is settled when each thing is weighed against the next.
            ranks.windows(2).filter(|next| !pairs.contains(&(next[0], next[1]))).map(|next| {
                let name = |at: usize| view.things.get(at).map_or("", |thing| thing.symbol.as_str());
                format!("nothing tells whether the {} or the {} is heavier", name(next[0]), name(next[1]))
            }),
        ),
    }
    readings
}

/// The things from the heaviest to the lightest; none where the weighings do not settle it.
pub(super) fn settled(view: &View) -> Option<Vec<usize>> {
    let pairs: Vec<(usize, usize)> =
        view.weighings.iter().map(|weighing| (weighing.heavier, weighing.lighter)).collect();
    let ranks = order(view.things.len(), &pairs)?;
    let by_neighbours = |next: &[usize]| matches!(next, [heavy, light] if pairs.contains(&(*heavy, *light)));
    ranks.windows(2).all(by_neighbours).then_some(ranks)
}

/// One order that the pairs allow, the first listed of several first; none when they go round in a circle.
fn order(count: usize, pairs: &[(usize, usize)]) -> Option<Vec<usize>> {
    let mut order: Vec<usize> = Vec::new();
    while order.len() < count {
        let free =
            |at: &usize| !order.contains(at) && pairs.iter().all(|(heavy, light)| light != at || order.contains(heavy));
        let next = (0..count).find(free)?;
        order.push(next);
    }
    Some(order)
}

pub(super) fn slips(view: &View) -> Vec<Slip> {
    let Some(ranks) = settled(view) else { return Vec::new() };
    let tags =
        |order: &mut dyn Iterator<Item = usize>| order.filter_map(|at| view.things.get(at)).map(|it| it.tag).collect();
    vec![
        (tags(&mut ranks.iter().rev().copied()), "they read from light to heavy: the sheet says where to begin."),
        (tags(&mut (0..view.things.len())), "they read the tags as the sheet lists the things, not by weight."),
    ]
}
