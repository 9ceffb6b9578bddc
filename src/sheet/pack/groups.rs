//! Whole groups: what is cut together goes onto one page, beside other whole groups where they leave the room.

use std::collections::BTreeMap;

use super::{Ground, Lot, Slab, one_way, orders, rects, rows};

/// More boxes than this are not laid by groups: each group tries every page that is begun.
const BOXES: usize = 300;

/// A page that is begun.
struct Page {
    boxes: Vec<Slab>,
    lots: Vec<Lot>,
}

/// Lays groups, the largest first, each onto the first page that takes all of it, else onto fresh ones. Once there are
/// `most` pages, a group that no page takes whole is spread over those that are begun. Nothing when there are too many
/// boxes.
pub(super) fn lay(boxes: &[Slab], ground: Ground, most: usize) -> Option<Vec<Lot>> {
    if boxes.len() > BOXES {
        return None;
    }
    let mut groups: BTreeMap<usize, Vec<Slab>> = BTreeMap::new();
    for slab in boxes {
        groups.entry(slab.group).or_default().push(*slab);
    }
    let mut groups: Vec<Vec<Slab>> = groups.into_values().collect();
    groups.sort_by_key(|group| std::cmp::Reverse(area(group)));
    let mut pages: Vec<Page> = Vec::new();
    for group in groups {
        if joins(&mut pages, &group, ground) {
            continue;
        }
        let fresh = fresh(&group, ground);
        if pages.len() + fresh.len() <= most {
            pages.extend(fresh);
            continue;
        }
        for slab in group {
            if !joins(&mut pages, &[slab], ground) {
                pages.extend(self::fresh(&[slab], ground));
            }
        }
    }
    let numbered = |(at, page): (usize, Page)| page.lots.into_iter().map(move |lot| Lot { page: at, ..lot });
    Some(pages.into_iter().enumerate().flat_map(numbered).collect())
}

/// Lays boxes onto the first page that takes them all beside its own, if one does.
fn joins(pages: &mut [Page], group: &[Slab], ground: Ground) -> bool {
    let room = i128::from(ground.w) * i128::from(ground.h);
    let known = pages.iter_mut().filter(|page| area(&page.boxes) + area(group) <= room).find_map(|page| {
        let together: Vec<Slab> = page.boxes.iter().chain(group).copied().collect();
        let lots = one_page(&together, ground)?;
        Some((page, Page { boxes: together, lots }))
    });
    match known {
        Some((page, fuller)) => {
            *page = fuller;
            true
        }
        None => false,
    }
}

fn area(boxes: &[Slab]) -> i128 {
    boxes.iter().map(|b| i128::from(b.w) * i128::from(b.h)).sum()
}

/// All boxes on one page, if a way is found; like ones one way where that goes.
fn one_page(boxes: &[Slab], ground: Ground) -> Option<Vec<Lot>> {
    let mut found = None;
    ways(boxes, ground, &mut |lots| {
        if found.is_none() && lots.len() == boxes.len() && lots.iter().all(|lot| lot.page == 0) {
            found = Some(lots);
        }
        found.is_some()
    });
    found
}

/// The fewest pages that take a group by itself.
fn fresh(group: &[Slab], ground: Ground) -> Vec<Page> {
    let count = |lots: &[Lot]| lots.iter().map(|lot| lot.page + 1).max().unwrap_or(0);
    let mut best: Vec<Lot> = Vec::new();
    ways(group, ground, &mut |lots| {
        if lots.len() == group.len() && (best.is_empty() || count(&lots) < count(&best)) {
            best = lots;
        }
        count(&best) == 1
    });
    (0..count(&best))
        .map(|page| {
            let lots: Vec<Lot> = best.iter().filter(|lot| lot.page == page).copied().collect();
            let boxes = group.iter().filter(|b| lots.iter().any(|lot| lot.at == b.at)).copied().collect();
            Page { boxes, lots }
        })
        .collect()
}

/// Tries ways of laying until `enough` says so.
fn ways(boxes: &[Slab], ground: Ground, enough: &mut dyn FnMut(Vec<Lot>) -> bool) {
    if ground.turn {
        for one_way in one_way(boxes, ground).iter().rev() {
            if one_way.try_each(enough) {
                return;
            }
        }
    }
    for order in orders(boxes) {
        if enough(rows::lay(&order, ground, false)) {
            return;
        }
        for rule in rects::Rule::ALL {
            if enough(rects::lay(&order, ground, rule)) {
                return;
            }
        }
    }
}
