//! How a page looks to whoever cuts it: whether straight cuts take it apart, whether like pieces lie one way.

use std::collections::BTreeMap;

use super::{Lot, Slab};

/// More boxes than this on one page are not asked for straight cuts: a page of so many is a grid, laid in rows.
const CUT_BOXES: usize = 120;

/// A box's place on its page.
#[derive(Clone, Copy)]
struct Block {
    x: (i64, i64),
    y: (i64, i64),
}

/// How many pages do not come apart by straight cuts from edge to edge (guillotine cuts).
pub(super) fn uncut(lots: &[Lot], boxes: &[Slab]) -> usize {
    let mut pages: BTreeMap<usize, Vec<Block>> = BTreeMap::new();
    for lot in lots {
        let Some(slab) = boxes.get(lot.at) else { continue };
        let (w, h) = if lot.turned { (slab.h, slab.w) } else { (slab.w, slab.h) };
        let block = Block { x: (lot.x, lot.x + w), y: (lot.y, lot.y + h) };
        pages.entry(lot.page).or_default().push(block);
    }
    pages.values().filter(|blocks| blocks.len() <= CUT_BOXES && !comes_apart(blocks)).count()
}

/// Whether straight cuts part all blocks from one another.
fn comes_apart(blocks: &[Block]) -> bool {
    let mut open: Vec<Vec<Block>> = vec![blocks.to_vec()];
    while let Some(blocks) = open.pop() {
        if blocks.len() < 2 {
            continue;
        }
        let parted = parted(&blocks, |block| block.x).or_else(|| parted(&blocks, |block| block.y));
        match parted {
            Some((one, other)) => open.extend([one, other]),
            None => return false,
        }
    }
    true
}

/// The blocks on either side of the first cut that runs through none.
fn parted(blocks: &[Block], side: impl Fn(&Block) -> (i64, i64)) -> Option<(Vec<Block>, Vec<Block>)> {
    let mut sorted = blocks.to_vec();
    sorted.sort_by_key(|block| side(block));
    let mut reach = i64::MIN;
    for (at, block) in sorted.iter().enumerate() {
        let (from, to) = side(block);
        if at > 0 && from >= reach {
            let rest = sorted.split_off(at);
            return Some((sorted, rest));
        }
        reach = reach.max(to);
    }
    None
}

/// How often boxes of one group and size lie both ways on one page.
pub(super) fn mixed(lots: &[Lot], boxes: &[Slab]) -> usize {
    let mut kinds: BTreeMap<(usize, usize, i64, i64), (bool, bool)> = BTreeMap::new();
    for lot in lots {
        let Some(slab) = boxes.get(lot.at).filter(|slab| slab.w != slab.h) else { continue };
        let ways = kinds.entry((lot.page, slab.group, slab.w, slab.h)).or_default();
        ways.0 |= !lot.turned;
        ways.1 |= lot.turned;
    }
    kinds.values().filter(|(upright, turned)| *upright && *turned).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn blocks(places: &[(i64, i64, i64, i64)]) -> Vec<Block> {
        places.iter().map(|(x, y, w, h)| Block { x: (*x, x + w), y: (*y, y + h) }).collect()
    }

    #[test]
    fn a_pinwheel_does_not_come_apart() {
        assert!(!comes_apart(&blocks(&[(0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2), (1, 1, 1, 1)])));
        assert!(comes_apart(&blocks(&[(0, 0, 2, 1), (2, 0, 1, 2), (0, 1, 2, 1)])));
        assert!(comes_apart(&blocks(&[(0, 0, 1, 1), (1, 0, 1, 1), (0, 1, 1, 1), (1, 1, 1, 1)])));
    }
}
