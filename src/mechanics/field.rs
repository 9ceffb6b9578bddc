//! Fields of marks: shapes strewn over a rectangle or a ring, evenly, by chance, without touching.
//!
//! The marks start at places drawn by chance and push one another apart until each keeps its distance. Only the
//! four operations and the square root are used, which IEEE 754 fixes to the last bit, so that the same seed gives
//! the same field on every machine.

use rand::RngExt as _;

use super::Rng;
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::units::{Mm, Rect};

/// Where marks may stand, wholly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Area {
    /// A rectangle.
    Rect(Rect),
    /// Between two circles about the same middle: the wall of a round jar seen from above, the rim of a lid.
    Ring {
        /// The middle.
        centre: (Mm, Mm),
        /// Radius of the inner circle; zero for a whole disc.
        inner: Mm,
        /// Radius of the outer circle.
        outer: Mm,
    },
}

/// The share of the area that the marks, each with the air about it, are asked to fill. It is more than they can: no
/// hole stays, and what is left of the air is spread evenly. The densest pattern fills 0.907 (Thue; from memory).
const SHARE: f64 = 0.75;
/// The share of the area that marks without air fill for certain. Circles thrown by chance jam near 0.55 (random
/// sequential adsorption, from memory), and pushing them apart only helps.
const EASY: f64 = 0.55;
/// The most air about a mark, as a multiple of its radius: with few marks an even field would be a stiff pattern.
const MOST_AIR: f64 = 2.5;
/// What rounding to a tenth of a millimetre can take from the distance of two marks.
const ROUNDING: f64 = 0.15;

/// Middles of `count` marks of one radius in a rectangle, in millimetres to a tenth. No two marks overlap and all stand
/// wholly inside.
///
/// # Errors
/// When the rectangle is too small for so many; the hints say how many or how large would do.
pub fn scatter(area: Rect, count: usize, radius: Mm, rng: &mut Rng) -> Hinted<Vec<(Mm, Mm)>> {
    scatter_sized(Area::Rect(area), &vec![radius; count.min(limits::FIELD_MARKS + 1)], rng)
}

/// As [`scatter`], between two circles.
///
/// # Errors
/// As [`scatter`].
pub fn scatter_ring(
    centre: (Mm, Mm),
    inner: Mm,
    outer: Mm,
    count: usize,
    radius: Mm,
    rng: &mut Rng,
) -> Hinted<Vec<(Mm, Mm)>> {
    let area = Area::Ring { centre, inner, outer };
    scatter_sized(area, &vec![radius; count.min(limits::FIELD_MARKS + 1)], rng)
}

/// As [`scatter`], for marks of different radii, in any area.
///
/// # Errors
/// As [`scatter`].
pub fn scatter_sized(area: Area, radii: &[Mm], rng: &mut Rng) -> Hinted<Vec<(Mm, Mm)>> {
    let count = radii.len();
    if count > limits::FIELD_MARKS {
        return Err(Trouble::new(format!("a field holds up to {} marks", limits::FIELD_MARKS))
            .hint("ask for fewer, or make two fields"));
    }
    let radii: Vec<f64> = radii.iter().map(|radius| radius.get().max(0.0)).collect();
    let size = area.size();
    let covered: f64 = radii.iter().map(|radius| std::f64::consts::PI * radius * radius).sum();
    let widest = radii.iter().copied().fold(0.0, f64::max);
    if size <= covered || widest * 2.0 > area.breadth() {
        return Err(too_full(count, size, covered));
    }
    let air = if covered > 0.0 { (SHARE * size / covered).sqrt().clamp(1.0, MOST_AIR) } else { 1.0 };
    for _ in 0..limits::FIELD_STARTS {
        let start = radii.iter().map(|radius| area.somewhere(*radius, rng)).collect();
        let places = push_apart(area, start, &radii, air);
        if apart(&places, &radii) {
            let tenth = |value: f64| Mm::new((value * 10.0).round() / 10.0);
            return Ok(places.into_iter().map(|(x, y)| (tenth(x), tenth(y))).collect());
        }
    }
    Err(too_full(count, size, covered))
}

fn too_full(count: usize, size: f64, covered: f64) -> Trouble {
    let share = if covered > 0.0 { (EASY * size / covered).max(0.0) } else { 0.0 };
    // `count` is at most FIELD_MARKS and the share below one here or close to it, so the floor is a small whole number.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "small")]
    let fitting = (count as f64 * share).floor() as usize;
    Trouble::new(format!("the field is too full for {count} marks of this size"))
        .hint(format!("{} marks of this size fit easily", fitting.min(count.saturating_sub(1))))
        .hint("or make the marks smaller, or the field larger")
}

/// Moves pairs that stand too near away from each other, round after round, until none does.
fn push_apart(area: Area, mut places: Vec<(f64, f64)>, radii: &[f64], air: f64) -> Vec<(f64, f64)> {
    for _ in 0..limits::FIELD_ROUNDS {
        let mut moved = false;
        for i in 0..places.len() {
            for j in 0..i {
                let (Some(&a), Some(&b)) = (places.get(i), places.get(j)) else { continue };
                let wanted = (radius(radii, i) + radius(radii, j)) * air + ROUNDING;
                let (dx, dy) = (a.0 - b.0, a.1 - b.1);
                let distance = (dx * dx + dy * dy).sqrt();
                // A push of less than a twentieth of a millimetre would not be seen.
                if distance > wanted - 0.05 {
                    continue;
                }
                moved = true;
                let (ux, uy) = if distance > 1e-6 { (dx / distance, dy / distance) } else { (1.0, 0.0) };
                let half = (wanted - distance) / 2.0;
                put(&mut places, i, area.clamp((a.0 + ux * half, a.1 + uy * half), radius(radii, i)));
                put(&mut places, j, area.clamp((b.0 - ux * half, b.1 - uy * half), radius(radii, j)));
            }
        }
        if !moved {
            break;
        }
    }
    places
}

fn radius(radii: &[f64], index: usize) -> f64 {
    radii.get(index).copied().unwrap_or_default()
}

fn put(places: &mut [(f64, f64)], index: usize, place: (f64, f64)) {
    if let Some(slot) = places.get_mut(index) {
        *slot = place;
    }
}

/// Whether no two marks touch, with what rounding may take.
fn apart(places: &[(f64, f64)], radii: &[f64]) -> bool {
    places.iter().enumerate().all(|(i, a)| {
        places.iter().enumerate().take(i).all(|(j, b)| {
            let (dx, dy) = (a.0 - b.0, a.1 - b.1);
            let least = radius(radii, i) + radius(radii, j) + ROUNDING - 0.01;
            dx * dx + dy * dy >= least * least
        })
    })
}

impl Area {
    /// Square millimetres.
    fn size(self) -> f64 {
        match self {
            Self::Rect(rect) => rect.w.get().max(0.0) * rect.h.get().max(0.0),
            Self::Ring { inner, outer, .. } => {
                let (inner, outer) = (inner.get().max(0.0), outer.get().max(0.0));
                (outer * outer - inner * inner) * std::f64::consts::PI
            }
        }
    }

    /// The widest mark that could stand in it.
    fn breadth(self) -> f64 {
        match self {
            Self::Rect(rect) => rect.w.min(rect.h).get(),
            Self::Ring { inner, outer, .. } if inner.get() <= 0.0 => outer.get() * 2.0,
            Self::Ring { inner, outer, .. } => (outer - inner).get(),
        }
    }

    /// A place by chance for the middle of a mark of this radius.
    fn somewhere(self, radius: f64, rng: &mut Rng) -> (f64, f64) {
        let (x, y, w, h) = match self {
            Self::Rect(rect) => (rect.x.get(), rect.y.get(), rect.w.get(), rect.h.get()),
            Self::Ring { centre, outer, .. } => {
                let (cx, cy, r) = (centre.0.get(), centre.1.get(), outer.get());
                (cx - r, cy - r, r * 2.0, r * 2.0)
            }
        };
        let place = (x + rng.random::<f64>() * w, y + rng.random::<f64>() * h);
        self.clamp(place, radius)
    }

    /// The nearest place at which a mark of this radius stands wholly inside.
    fn clamp(self, (x, y): (f64, f64), radius: f64) -> (f64, f64) {
        match self {
            Self::Rect(rect) => (
                x.max(rect.x.get() + radius).min(rect.right().get() - radius),
                y.max(rect.y.get() + radius).min(rect.bottom().get() - radius),
            ),
            Self::Ring { centre, inner, outer } => {
                let (dx, dy) = (x - centre.0.get(), y - centre.1.get());
                let distance = (dx * dx + dy * dy).sqrt();
                let least = if inner.get() > 0.0 { inner.get() + radius } else { 0.0 };
                let wanted = distance.max(least).min(outer.get() - radius);
                let (ux, uy) = if distance > 1e-6 { (dx / distance, dy / distance) } else { (1.0, 0.0) };
                (centre.0.get() + ux * wanted, centre.1.get() + uy * wanted)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use rand::SeedableRng as _;

    use super::*;

    fn least_gap(places: &[(Mm, Mm)]) -> f64 {
        let mut least = f64::MAX;
        for (i, a) in places.iter().enumerate() {
            for b in &places[..i] {
                let (dx, dy) = ((a.0 - b.0).get(), (a.1 - b.1).get());
                least = least.min((dx * dx + dy * dy).sqrt());
            }
        }
        least
    }

    #[test]
    fn marks_keep_their_distance_and_stay_inside() {
        let area = Rect::mm(5.0, 7.0, 170.0, 200.0);
        for seed in 0..50 {
            let mut rng = Rng::seed_from_u64(seed);
            let places = scatter(area, 60, Mm::new(8.0), &mut rng).unwrap();
            assert_eq!(places.len(), 60);
            assert!(least_gap(&places) >= 16.0, "seed {seed}: {}", least_gap(&places));
            for (x, y) in &places {
                let mark = Rect { x: *x - Mm::new(8.0), y: *y - Mm::new(8.0), w: Mm::new(16.0), h: Mm::new(16.0) };
                assert!(area.inset(Mm::new(-0.06)).holds(mark));
            }
        }
    }

    #[test]
    fn the_same_seed_gives_the_same_field() {
        let make =
            |seed| scatter(Rect::mm(0.0, 0.0, 100.0, 60.0), 20, Mm::new(5.0), &mut Rng::seed_from_u64(seed)).unwrap();
        assert_eq!(make(3), make(3));
        assert_ne!(make(3), make(4));
    }

    #[test]
    fn a_ring_keeps_its_middle_free() {
        let centre = (Mm::new(40.0), Mm::new(40.0));
        for seed in 0..20 {
            let mut rng = Rng::seed_from_u64(seed);
            let places = scatter_ring(centre, Mm::new(14.0), Mm::new(38.0), 24, Mm::new(4.0), &mut rng).unwrap();
            assert!(least_gap(&places) >= 8.0);
            for (x, y) in places {
                let (dx, dy) = ((x - centre.0).get(), (y - centre.1).get());
                let distance = (dx * dx + dy * dy).sqrt();
                assert!((17.9..=34.1).contains(&distance), "{distance}");
            }
        }
    }

    #[test]
    fn too_full_a_field_is_refused_with_a_hint() {
        let mut rng = Rng::seed_from_u64(1);
        let trouble = scatter(Rect::mm(0.0, 0.0, 40.0, 40.0), 60, Mm::new(8.0), &mut rng).unwrap_err();
        assert!(trouble.hints.iter().any(|hint| hint.contains("fit easily")), "{trouble}");
        assert!(scatter(Rect::mm(0.0, 0.0, 0.0, 0.0), 1, Mm::new(8.0), &mut rng).is_err());
        assert!(scatter(Rect::mm(0.0, 0.0, 900.0, 900.0), limits::FIELD_MARKS + 1, Mm::new(1.0), &mut rng).is_err());
        assert!(scatter(Rect::mm(0.0, 0.0, 9.0, 9.0), 0, Mm::new(1.0), &mut rng).unwrap().is_empty());
        assert!(scatter(Rect::mm(0.0, 0.0, 9.0, 9.0), usize::MAX, Mm::new(1.0), &mut rng).is_err());
    }
}
