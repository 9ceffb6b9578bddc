//! Patchwork: each box into the best of the largest free rectangles (the "maximal rectangles" method, Jylänki 2010,
//! "A Thousand Ways to Pack the Bin").

use super::{Ground, Lot, Slab};

/// How a free rectangle is chosen.
#[derive(Clone, Copy, Debug, Default)]
pub(super) enum Rule {
    /// The one in which the shorter leftover side is least.
    #[default]
    ShortSide,
    /// The highest, then the leftmost place.
    TopLeft,
    /// The smallest.
    Area,
}

impl Rule {
    pub(super) const ALL: [Self; 3] = [Self::ShortSide, Self::TopLeft, Self::Area];
}

#[derive(Clone, Copy)]
struct Free {
    x: i64,
    y: i64,
    w: i64,
    h: i64,
}

impl Free {
    fn holds(self, other: Self) -> bool {
        other.x >= self.x
            && other.y >= self.y
            && other.x + other.w <= self.x + self.w
            && other.y + other.h <= self.y + self.h
    }
}

/// Lays boxes in this order, each onto the first page that takes it.
pub(super) fn lay(order: &[Slab], ground: Ground, rule: Rule) -> Vec<Lot> {
    let mut pages: Vec<Vec<Free>> = Vec::new();
    let mut lots = Vec::with_capacity(order.len());
    for b in order {
        let mut page = 0;
        loop {
            if page == pages.len() {
                pages.push(vec![Free { x: 0, y: 0, w: ground.w, h: ground.h }]);
            }
            let Some(free) = pages.get_mut(page) else { break };
            if let Some((used, turned)) = choose(free, b, ground, rule) {
                lots.push(Lot { at: b.at, page, x: used.x, y: used.y, turned });
                take(free, used);
                break;
            }
            page += 1;
            // The caller has made sure that every box fits an empty page, so the loop ends there.
            if page > order.len() {
                break;
            }
        }
    }
    lots
}

fn choose(free: &[Free], b: &Slab, ground: Ground, rule: Rule) -> Option<(Free, bool)> {
    let ways = [Some((b.w, b.h, false)), ground.turn.then_some((b.h, b.w, true))];
    free.iter()
        .flat_map(|f| ways.iter().flatten().map(move |way| (*f, *way)))
        .filter(|(f, (w, h, _))| *w <= f.w && *h <= f.h)
        .min_by_key(|(f, (w, h, turned))| {
            let (dw, dh) = (f.w - w, f.h - h);
            let key = match rule {
                Rule::ShortSide => (dw.min(dh), dw.max(dh)),
                Rule::TopLeft => (f.y + h, f.x),
                Rule::Area => (f.w * f.h, dw.min(dh)),
            };
            (key, *turned, f.y, f.x)
        })
        .map(|(f, (w, h, turned))| (Free { x: f.x, y: f.y, w, h }, turned))
}

/// Cuts `used` out of all free rectangles and drops those that lie within another.
fn take(free: &mut Vec<Free>, used: Free) {
    let mut next: Vec<Free> = Vec::with_capacity(free.len() + 4);
    for f in free.iter() {
        let apart = used.x >= f.x + f.w || used.x + used.w <= f.x || used.y >= f.y + f.h || used.y + used.h <= f.y;
        if apart {
            next.push(*f);
            continue;
        }
        let (right, bottom) = (used.x + used.w, used.y + used.h);
        next.extend(
            [
                Free { w: used.x - f.x, ..*f },
                Free { x: right, w: f.x + f.w - right, ..*f },
                Free { h: used.y - f.y, ..*f },
                Free { y: bottom, h: f.y + f.h - bottom, ..*f },
            ]
            .into_iter()
            .filter(|f| f.w > 0 && f.h > 0),
        );
    }
    let mut kept: Vec<Free> = Vec::with_capacity(next.len());
    for (at, f) in next.iter().enumerate() {
        let within =
            next.iter().enumerate().any(|(other, o)| other != at && o.holds(*f) && !(f.holds(*o) && at < other));
        if !within {
            kept.push(*f);
        }
    }
    *free = kept;
}
