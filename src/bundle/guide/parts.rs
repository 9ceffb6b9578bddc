//! A flow that is wider than a page, in pictures that are not: one for each box, with the locks that shut it, the
//! puzzles that open these, and what those need.

use super::words::list;
use crate::flow::Flow;
use crate::flow::drawing::{Drawing, Extent, draw};
use crate::ids::{BoxId, LockId, PropId};
use crate::kit::{Kit, Place, PropRole};
use crate::script::capital;

/// A part of the flow.
pub(super) struct Part {
    /// What it is of.
    pub(super) title: String,
    pub(super) drawing: Drawing,
}

/// Box by box, in the order in which they open, then the locks that hang on none. The locks of a box are shared out among
/// several pictures where one does not fit; what fits in none is told in a sentence.
pub(super) fn parts(kit: &Kit, flow: &Flow, fits: impl Fn(&Drawing) -> bool) -> (Vec<Part>, Vec<String>) {
    let mut boxes: Vec<_> = kit.boxes.iter().filter(|item| !item.locks.is_empty()).collect();
    boxes.sort_by_key(|item| flow.boxes.get(&item.id).copied().unwrap_or(usize::MAX));
    let loose: Vec<&LockId> = kit.locks.iter().map(|lock| &lock.id).filter(|lock| kit.box_of(lock).is_none()).collect();
    let of_boxes = boxes.iter().map(|item| (Some(&item.id), capital(&item.name), item.locks.iter().collect()));
    let groups = of_boxes.chain(std::iter::once((None, "Locks on no box".to_owned(), loose)));
    let (mut found, mut told) = (Vec::new(), Vec::new());
    for (of, name, locks) in groups {
        let mut from = 0;
        while from < locks.len() {
            let most = (locks.len() - from).min(MOST);
            let drawn = |count: &usize| draw(&only(kit, of, &locks[from..from + count]), flow, Extent::Part);
            match (1..=most).rev().map(|count| (count, drawn(&count))).find(|(_, drawing)| fits(drawing)) {
                Some((count, drawing)) => {
                    let title = match (count == locks.len(), count) {
                        (true, _) => name.clone(),
                        (false, 1) => format!("{name}, lock {} of {}", from + 1, locks.len()),
                        _ => format!("{name}, locks {} to {} of {}", from + 1, from + count, locks.len()),
                    };
                    found.push(Part { title, drawing });
                    from += count;
                }
                None => {
                    told.extend(locks.get(from).map(|lock| sentence(kit, lock)));
                    from += 1;
                }
            }
        }
    }
    (found, told)
}

/// Most locks that are tried in one picture: no page is wide enough for more puzzles side by side.
const MOST: usize = 8;

/// The kit with these locks alone, the box that they shut, and what opens them.
fn only(kit: &Kit, of: Option<&BoxId>, locks: &[&LockId]) -> Kit {
    let mut part = kit.clone();
    part.locks.retain(|lock| locks.contains(&&lock.id));
    part.puzzles.retain(|puzzle| locks.contains(&&puzzle.opens));
    let tools: Vec<PropId> = part.puzzles.iter().flat_map(|puzzle| puzzle.tools.iter().cloned()).collect();
    part.props.retain(|prop| match &prop.role {
        PropRole::Key(lock) => locks.contains(&lock) || tools.contains(&prop.id),
        _ => tools.contains(&prop.id),
    });
    let places = part.puzzles.iter().flat_map(|puzzle| puzzle.parts.values());
    let holds: Vec<BoxId> = places
        .chain(part.props.iter().map(|prop| &prop.place))
        .chain(kit.boxes.iter().filter(|item| Some(&item.id) == of).map(|item| &item.place))
        .filter_map(|place| match place {
            Place::Box(id) => Some(id.clone()),
            Place::Spot(_) => None,
        })
        .collect();
    part.boxes.retain(|item| Some(&item.id) == of || holds.contains(&item.id));
    part
}

/// What opens a lock, in words.
fn sentence(kit: &Kit, lock: &LockId) -> String {
    let name = kit.lock(lock).map_or_else(|| lock.to_string(), |lock| lock.name.clone());
    let puzzles = kit.puzzles.iter().filter(|puzzle| puzzle.opens == *lock);
    let titles: Vec<String> = puzzles.clone().map(|puzzle| puzzle.title.clone()).collect();
    let mut needs: Vec<String> =
        puzzles.flat_map(|puzzle| &puzzle.tools).filter_map(|id| kit.prop(id)).map(|prop| prop.name.clone()).collect();
    needs.sort();
    needs.dedup();
    format!(
        "{} is opened by {}, with {}: more than a page is wide, so it stands here in words.",
        capital(&name),
        list(&titles),
        list(&needs)
    )
}
