//! The other way round: of each thing, who waits for it.

use super::net::{Net, Opener, Where};

/// Who waits for whom, by number.
#[derive(Clone, Debug)]
pub struct Links {
    /// For each thing the puzzles that need it.
    pub item_puzzles: Vec<Vec<usize>>,
    /// For each thing the locks whose key it is.
    pub item_locks: Vec<Vec<usize>>,
    /// For each puzzle the locks that it opens.
    pub puzzle_locks: Vec<Vec<usize>>,
    /// For each lock the boxes that it shuts.
    pub lock_boxes: Vec<Vec<usize>>,
    /// For each box the things in it.
    pub box_items: Vec<Vec<usize>>,
    /// For each box the boxes in it.
    pub box_boxes: Vec<Vec<usize>>,
}

impl Links {
    /// The links of a net. What refers to a number that is none is in no list, so it waits for ever.
    #[must_use]
    pub fn new(net: &Net) -> Self {
        let lists = |n: usize| vec![Vec::new(); n];
        let mut links = Self {
            item_puzzles: lists(net.items.len()),
            item_locks: lists(net.items.len()),
            puzzle_locks: lists(net.puzzles.len()),
            lock_boxes: lists(net.locks.len()),
            box_items: lists(net.boxes.len()),
            box_boxes: lists(net.boxes.len()),
        };
        // Numbers that lead nowhere have nobody who could release them, so what needs them waits for ever.
        let add = |lists: &mut Vec<Vec<usize>>, at: usize, value: usize| {
            if let Some(list) = lists.get_mut(at) {
                list.push(value);
            }
        };
        for (puzzle, needs) in net.puzzles.iter().enumerate() {
            needs.iter().for_each(|item| add(&mut links.item_puzzles, *item, puzzle));
        }
        for (lock, openers) in net.locks.iter().enumerate() {
            for opener in openers {
                match opener {
                    Opener::Puzzle(puzzle) => add(&mut links.puzzle_locks, *puzzle, lock),
                    Opener::Item(item) => add(&mut links.item_locks, *item, lock),
                }
            }
        }
        for (index, item) in net.boxes.iter().enumerate() {
            item.locks.iter().for_each(|lock| add(&mut links.lock_boxes, *lock, index));
            if let Where::Box(outer) = item.stands {
                add(&mut links.box_boxes, outer, index);
            }
        }
        for (index, place) in net.items.iter().enumerate() {
            if let Where::Box(outer) = place {
                add(&mut links.box_items, *outer, index);
            }
        }
        links
    }
}
