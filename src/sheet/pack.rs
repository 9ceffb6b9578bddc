//! Packing: rectangles onto as few pages as can be found, like things together.
//!
//! Several orders and two ways of placing are tried, and the best result is kept: fewest pages first (one more where that
//! keeps much together), then fewest groups torn apart, then pages that come apart by straight cuts from edge to edge,
//! then like pieces that lie one way, then rows rather than patchwork (they cut with a ruler), then fewest turned pieces.
//! All lengths are whole micrometres, so that sums are exact.

mod groups;
mod looks;
mod rects;
mod rows;

use std::collections::{BTreeMap, BTreeSet};

use crate::diag::Hinted;
use crate::diag::Trouble;
use crate::limits;
use crate::units::{Mm, Rect, Size};

/// A rectangle to place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// Its size, upright.
    pub size: Size,
    /// Items of the same group stay together if that costs no page.
    pub group: usize,
}

/// Where an item came to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The page, counted from 0.
    pub page: usize,
    /// Its place within the area.
    pub rect: Rect,
    /// Whether it lies turned by a quarter.
    pub turned: bool,
}

/// An item in whole micrometres, the gap added on its right and below.
#[derive(Clone, Copy, Debug)]
struct Slab {
    at: usize,
    w: i64,
    h: i64,
    group: usize,
}

/// A placed box.
#[derive(Clone, Copy, Debug, Default)]
struct Lot {
    at: usize,
    page: usize,
    x: i64,
    y: i64,
    turned: bool,
}

/// The area with the gap added, and whether boxes may be turned.
#[derive(Clone, Copy, Debug)]
struct Ground {
    w: i64,
    h: i64,
    turn: bool,
}

impl Ground {
    fn takes(self, w: i64, h: i64) -> bool {
        w <= self.w && h <= self.h
    }
}

/// A page more is taken if it spares so many tears of a group over one page more than it needs: whoever cuts out, or
/// prints one puzzle again, then finds it on fewer sheets.
const WORTH_A_PAGE: usize = 3;
/// More items than this are laid in rows only: the patchwork's work grows with the square.
const PATCHWORK_ITEMS: usize = 300;
/// Shuffled orders tried for few items when the sorted ones need more pages than the area asks for.
const SHUFFLES: usize = 160;
/// Few items, for the above.
const SHUFFLED_ITEMS: usize = 40;

/// Lays items onto pages with `area` each and at least `gap` between them; none is needed at the area's edge.
/// Spots come in the order of the items.
///
/// # Errors
/// When an item is larger than the area: the error names its number, counted from 0. When there are too many.
pub fn pack(items: &[Item], area: Size, gap: Mm, turn: bool) -> Hinted<Vec<Spot>> {
    if items.len() > limits::PLACED {
        return Err(Trouble::new(format!("{} pieces are too many to lay out at once", items.len()))
            .hint(format!("at most {} can be; ask for fewer copies", limits::PLACED)));
    }
    let gap = micro(gap);
    let ground = Ground { w: micro(area.w) + gap, h: micro(area.h) + gap, turn };
    let boxes: Vec<Slab> = items
        .iter()
        .enumerate()
        .map(|(at, item)| Slab { at, w: micro(item.size.w) + gap, h: micro(item.size.h) + gap, group: item.group })
        .collect();
    if let Some(large) = boxes.iter().find(|b| !(ground.takes(b.w, b.h) || turn && ground.takes(b.h, b.w))) {
        return Err(Trouble::new(format!("item {} is larger than the page", large.at)));
    }
    // The best for each number of pages.
    let mut best: BTreeMap<usize, (Score, Vec<Lot>)> = BTreeMap::new();
    let mut consider = |lots: Vec<Lot>, patchwork: bool| {
        let score = score(&lots, &boxes, patchwork);
        if best.get(&score.pages).is_none_or(|(old, _)| score < *old) {
            best.insert(score.pages, (score, lots));
        }
        best.keys().next().copied().unwrap_or_default()
    };
    let bound = bound(&boxes, ground);
    let mut pages = 0;
    for order in orders(&boxes) {
        for lying in [false, true] {
            if !lying || turn {
                consider(rows::lay(&order, ground, lying), false);
            }
        }
        if boxes.len() <= PATCHWORK_ITEMS {
            for rule in rects::Rule::ALL {
                pages = consider(rects::lay(&order, ground, rule), true);
            }
        }
    }
    if turn {
        for one_way in one_way(&boxes, ground) {
            one_way.lay(&mut |lots, patchwork| pages = consider(lots, patchwork));
        }
    }
    for most in [usize::MAX, pages, pages + 1] {
        if let Some(lots) = groups::lay(&boxes, ground, most) {
            pages = consider(lots, true);
        }
    }
    if boxes.len() <= SHUFFLED_ITEMS && pages > bound {
        let mut order: Vec<Slab> = boxes.clone();
        let mut chance = Chance(0x9E37_79B9_7F4A_7C15);
        for round in 0..SHUFFLES {
            chance.shuffle(&mut order);
            let rule = rects::Rule::ALL.get(round % rects::Rule::ALL.len()).copied().unwrap_or_default();
            if consider(rects::lay(&order, ground, rule), true) <= bound {
                break;
            }
        }
    }
    let mut lots = tidy(&chosen(best), &boxes, ground);
    lots.sort_by_key(|lot| lot.at);
    Ok(lots.iter().zip(items).map(|(lot, item)| spot(lot, item.size)).collect())
}

/// The result on the fewest pages, or the one on a page more that keeps enough together to be worth the paper.
fn chosen(best: BTreeMap<usize, (Score, Vec<Lot>)>) -> Vec<Lot> {
    let mut results = best.into_values();
    let (Some((few, lots)), more) = (results.next(), results.next()) else { return Vec::new() };
    match more {
        Some((more, whole)) if more.pages == few.pages + 1 && more.torn + WORTH_A_PAGE <= few.torn => whole,
        _ => lots,
    }
}

/// Boxes turned beforehand, like ones alike, and then laid as they are.
struct OneWay {
    boxes: Vec<Slab>,
    turned: BTreeSet<usize>,
    ground: Ground,
}

impl OneWay {
    /// Turns those boxes that `lying` names, and those that fit in no other way.
    fn new(boxes: &[Slab], ground: Ground, lying: impl Fn(&Slab) -> bool) -> Self {
        let turns = |b: &&Slab| !ground.takes(b.w, b.h) || (lying(b) && ground.takes(b.h, b.w));
        let turned: BTreeSet<usize> = boxes.iter().filter(turns).map(|b| b.at).collect();
        let turn = |b: &Slab| if turned.contains(&b.at) { Slab { w: b.h, h: b.w, ..*b } } else { *b };
        Self { boxes: boxes.iter().map(turn).collect(), turned, ground: Ground { turn: false, ..ground } }
    }

    /// Lays them in every way and order; `consider` is told of each, and whether it is patchwork.
    fn lay(&self, consider: &mut dyn FnMut(Vec<Lot>, bool)) {
        for order in orders(&self.boxes) {
            consider(self.known(rows::lay(&order, self.ground, false)), false);
            if self.boxes.len() <= PATCHWORK_ITEMS {
                for rule in rects::Rule::ALL {
                    consider(self.known(rects::lay(&order, self.ground, rule)), true);
                }
            }
        }
    }

    /// As `lay`, until `enough` says so; answers whether it did.
    fn try_each(&self, enough: &mut dyn FnMut(Vec<Lot>) -> bool) -> bool {
        orders(&self.boxes).iter().any(|order| {
            enough(self.known(rows::lay(order, self.ground, false)))
                || rects::Rule::ALL.iter().any(|rule| enough(self.known(rects::lay(order, self.ground, *rule))))
        })
    }

    /// The lots with the boxes that were turned beforehand marked.
    fn known(&self, mut lots: Vec<Lot>) -> Vec<Lot> {
        for lot in &mut lots {
            lot.turned = self.turned.contains(&lot.at);
        }
        lots
    }
}

/// All upright, and all in the way in which a page takes more of their like.
fn one_way(boxes: &[Slab], ground: Ground) -> [OneWay; 2] {
    let a_page = |w: i64, h: i64| if w > 0 && h > 0 { (ground.w / w) * (ground.h / h) } else { 0 };
    [OneWay::new(boxes, ground, |_| false), OneWay::new(boxes, ground, |b| a_page(b.h, b.w) > a_page(b.w, b.h))]
}

/// Lays each page anew by itself: the same boxes, like ones one way, as few of them turned as can be, in rows if that
/// is possible.
fn tidy(lots: &[Lot], boxes: &[Slab], ground: Ground) -> Vec<Lot> {
    let pages = lots.iter().map(|lot| lot.page + 1).max().unwrap_or(0);
    let mut tidied = Vec::with_capacity(lots.len());
    for page in 0..pages {
        let old: Vec<Lot> = lots.iter().filter(|lot| lot.page == page).copied().collect();
        let own: Vec<Slab> = old.iter().filter_map(|lot| boxes.get(lot.at)).copied().collect();
        let upright = Ground { turn: false, ..ground };
        let straight = own.iter().all(|b| ground.takes(b.w, b.h));
        let mut best = (neatness(&old, boxes, true), old);
        let mut consider = |lots: Vec<Lot>, patchwork: bool| {
            if lots.len() == own.len() && lots.iter().all(|lot| lot.page == 0) {
                let new = (neatness(&lots, boxes, patchwork), lots);
                if new.0 < best.0 {
                    best = new;
                }
            }
        };
        if ground.turn {
            for one_way in one_way(&own, ground) {
                one_way.lay(&mut consider);
            }
        }
        for order in orders(&own) {
            for ground in [Some(upright).filter(|_| straight), ground.turn.then_some(ground)].into_iter().flatten() {
                consider(rows::lay(&order, ground, false), false);
                if own.len() <= PATCHWORK_ITEMS {
                    for rule in rects::Rule::ALL {
                        consider(rects::lay(&order, ground, rule), true);
                    }
                }
            }
        }
        tidied.extend(best.1.into_iter().map(|lot| Lot { page, ..lot }));
    }
    tidied
}

/// What makes one page neater than another, in this order; less is neater. Last comes how far down it reaches.
fn neatness(lots: &[Lot], boxes: &[Slab], patchwork: bool) -> (usize, usize, usize, bool, i64) {
    let turned = lots.iter().filter(|lot| lot.turned).count();
    let reach = lots.iter().map(|lot| lot.y).max().unwrap_or(0);
    (looks::uncut(lots, boxes), looks::mixed(lots, boxes), turned, patchwork, reach)
}

fn spot(lot: &Lot, size: Size) -> Spot {
    let (w, h) = if lot.turned { (size.h, size.w) } else { (size.w, size.h) };
    Spot { page: lot.page, rect: Rect { x: milli(lot.x), y: milli(lot.y), w, h }, turned: lot.turned }
}

/// What makes one result better than another; less is better, in this order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Score {
    pages: usize,
    torn: usize,
    uncut: usize,
    mixed: usize,
    patchwork: bool,
    turned: usize,
}

fn score(lots: &[Lot], boxes: &[Slab], patchwork: bool) -> Score {
    let group = |lot: &Lot| boxes.get(lot.at).map_or(0, |b| b.group);
    let mut seen: Vec<(usize, usize)> = lots.iter().map(|lot| (group(lot), lot.page)).collect();
    seen.sort_unstable();
    seen.dedup();
    let mut groups: Vec<usize> = seen.iter().map(|(group, _)| *group).collect();
    groups.dedup();
    Score {
        pages: lots.iter().map(|lot| lot.page + 1).max().unwrap_or(0),
        torn: seen.len() - groups.len(),
        uncut: looks::uncut(lots, boxes),
        mixed: looks::mixed(lots, boxes),
        patchwork,
        turned: lots.iter().filter(|lot| lot.turned).count(),
    }
}

/// Orders worth trying: as given, group by group; each group's largest first; then regardless of groups.
fn orders(boxes: &[Slab]) -> Vec<Vec<Slab>> {
    let sorted = |key: &dyn Fn(&Slab) -> (i64, i64, i64)| {
        let mut order = boxes.to_vec();
        order.sort_by_key(|b| (key(b), b.at));
        order
    };
    let group = |b: &Slab| i64::try_from(b.group).unwrap_or(i64::MAX);
    vec![
        sorted(&|b| (group(b), 0, 0)),
        sorted(&|b| (group(b), -b.h, -b.w)),
        sorted(&|b| (-b.h, -b.w, 0)),
        sorted(&|b| (-b.w, -b.h, 0)),
        sorted(&|b| (-(b.w * b.h), 0, 0)),
        sorted(&|b| (-b.w.max(b.h), -b.w.min(b.h), 0)),
    ]
}

/// Pages that the area alone asks for.
fn bound(boxes: &[Slab], ground: Ground) -> usize {
    let page = i128::from(ground.w) * i128::from(ground.h);
    let all: i128 = boxes.iter().map(|b| i128::from(b.w) * i128::from(b.h)).sum();
    if page <= 0 { 0 } else { usize::try_from((all + page - 1) / page).unwrap_or(usize::MAX) }
}

/// Whole micrometres; no length of paper comes near the range of i64.
#[expect(clippy::cast_possible_truncation, reason = "lengths are clamped to ten metres")]
fn micro(length: Mm) -> i64 {
    (length.get().clamp(0.0, 10_000.0) * 1000.0).round() as i64
}

#[expect(clippy::cast_precision_loss, reason = "below ten million micrometres")]
fn milli(length: i64) -> Mm {
    Mm::new(length as f64 / 1000.0)
}

/// A small generator (xorshift64, Marsaglia 2003) for trial orders: results must be the same on every machine and
/// with every version of a library.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    fn shuffle(&mut self, order: &mut [Slab]) {
        for at in (1..order.len()).rev() {
            let other = usize::try_from(self.next() % (at as u64 + 1)).unwrap_or(0);
            order.swap(at, other);
        }
    }
}
