//! The order in which a person reads the texts of a face: a reader aloud follows the order of its layers.

use super::{Face, Layer, TextRun};
use crate::units::{Mm, Rect};

/// How much of the lower of two texts must stand beside the other for both to stand in one row.
const ONE_ROW: f64 = 0.5;
/// How far a text may reach over another's edge and still stand beside it or below it.
const OVER: Mm = Mm::new(0.3);
/// Texts of so many characters are symbols: scattered over a board or about a dial, they have an order of their own.
const SYMBOL: usize = 2;

/// A text as its reader sees it.
struct Seen {
    rect: Rect,
    turn: f64,
    symbol: bool,
}

impl Seen {
    fn of(layer: &Layer) -> Option<Self> {
        let Layer::Text(run) = layer else { return None };
        Some(Self { rect: standing(run), turn: run.turn, symbol: run.text.text().chars().count() <= SYMBOL })
    }

    /// Whether it is read before `other`: it stands above it, or before it in one row. Columns may be read one after
    /// another or row by row. What is turned otherwise is read in another way, and not compared.
    fn before(&self, other: &Self) -> bool {
        if self.symbol && other.symbol || (self.turn - other.turn).abs() > 1.0 {
            return false;
        }
        let (a, b) = (self.rect, other.rect);
        if a.bottom().min(b.bottom()) - a.y.max(b.y) > a.h.min(b.h) * ONE_ROW {
            return a.right() <= b.x + OVER;
        }
        a.bottom() <= b.y + OVER && a.right().min(b.right()) - a.x.max(b.x) > OVER
    }
}

/// Where a run stands on the face: one turned by a quarter stands about the same middle, higher than wide.
fn standing(run: &TextRun) -> Rect {
    let Rect { x, y, w, h } = run.rect;
    let lying = (run.turn.to_radians().cos()).abs() > std::f64::consts::FRAC_1_SQRT_2;
    if lying { run.rect } else { Rect { x: x + (w - h) / 2.0, y: y + (h - w) / 2.0, w: h, h: w } }
}

impl Face {
    /// The same face, with each text after those that are read before it. A text is only ever moved to a later place, so
    /// that no picture comes to cover it.
    #[must_use]
    pub fn in_reading_order(mut self) -> Self {
        let seen: Vec<Option<Seen>> = self.layers.iter().map(Seen::of).collect();
        let follows = |one: usize, other: usize| match (seen.get(one), seen.get(other)) {
            (Some(Some(one)), Some(Some(other))) => other.before(one),
            _ => false,
        };
        let all = 0..seen.len();
        if !all.clone().any(|at| (at + 1..seen.len()).any(|later| follows(at, later))) {
            return self;
        }
        let mut waits_for: Vec<usize> =
            all.clone().map(|one| all.clone().filter(|other| follows(one, *other)).count()).collect();
        let (mut order, mut waiting) = (Vec::with_capacity(seen.len()), Vec::new());
        for at in all {
            waiting.push(at);
            // All that waits for nothing more: this one perhaps, then what has waited for it, and so on.
            while let Some(place) = waiting.iter().position(|held| waits_for.get(*held) == Some(&0)) {
                let now = waiting.remove(place);
                order.push(now);
                for (held, count) in waits_for.iter_mut().enumerate() {
                    *count -= usize::from(follows(held, now)).min(*count);
                }
            }
        }
        // Texts that stand about one another in a ring keep their order.
        order.extend(waiting);
        let mut layers: Vec<Option<Layer>> = self.layers.into_iter().map(Some).collect();
        self.layers = order.into_iter().filter_map(|at| layers.get_mut(at).and_then(Option::take)).collect();
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diag::Anchor;
    use crate::face::{Role, mm};
    use crate::script::Rich;
    use crate::theme::Colour;
    use crate::units::{Pt, Size};

    fn read(texts: &[(&str, f64, f64)]) -> Vec<String> {
        let mut face = Face::new(Size::mm(100.0, 100.0), "");
        for (text, x, y) in texts {
            let rect = Rect { x: mm(*x), y: mm(*y), w: mm(30.0), h: mm(8.0) };
            let ink = Colour { r: 0, g: 0, b: 0 };
            face.text(TextRun::new(rect, Role::Text, Rich::plain(*text), Pt::new(12.0), ink, Anchor::Kit));
        }
        face.in_reading_order().runs().map(|run| run.text.text()).collect()
    }

    #[test]
    fn rows_and_columns_keep_their_order_and_what_stands_below_comes_later() {
        let by_rows = [("one", 0.0, 0.0), ("two", 40.0, 0.0), ("three", 0.0, 10.0), ("four", 40.0, 10.0)];
        assert_eq!(read(&by_rows), ["one", "two", "three", "four"]);
        let by_columns = [("one", 0.0, 0.0), ("three", 0.0, 10.0), ("two", 40.0, 0.0), ("four", 40.0, 10.0)];
        assert_eq!(read(&by_columns), ["one", "three", "two", "four"]);
        let foot_first = [("foot", 0.0, 50.0), ("gold", 40.0, 0.0), ("one", 0.0, 0.0), ("two", 0.0, 20.0)];
        assert_eq!(read(&foot_first), ["one", "gold", "two", "foot"]);
    }
}
