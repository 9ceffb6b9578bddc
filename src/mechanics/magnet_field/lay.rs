//! Strews shapes over a board and hides washers behind some.

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};

use super::{FIELD, Kind, LEAST_ACROSS, NEIGHBOUR, Order, Rule, STEEL_APART, Setup, Shape, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::field::{Area, scatter_sized};
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Job, Rng};
use crate::units::{Mm, Rect};

/// Least distance from a washer to the middle of a neighbouring shape; what a print at 94 % takes is added.
const NEIGHBOUR_APART: f64 = NEIGHBOUR.get() / 0.94;
/// Air about a shape.
const AIR: Mm = Mm::new(1.0);
/// Each size is so many times the one before; guests must see the difference without a ruler.
const SIZE_STEP: f64 = 1.3;
/// Most sizes on one board: the next would be more than twice as wide as a coin.
const SIZES: usize = 4;
/// Outlines on the rule card that hide no washer, so that the card does not tell where to feel.
const IDLE_KINDS: usize = 3;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let numbers = numbers(setup, job)?;
    let count = usize::from(setup.shapes);
    let needed = numbers.len().max(12);
    if count < needed || count > limits::FIELD_MARKS {
        return Err(Trouble::new(format!("a board has {needed} to {} shapes here, not {count}", limits::FIELD_MARKS))
            .hint("set `shapes` to about 60"));
    }
    let least = least_across(setup.digits);
    if setup.shape_size < least {
        return Err(Trouble::new(format!(
            "shapes of {} mm are too small to write {} digits on",
            setup.shape_size.get(),
            setup.digits
        ))
        .hint(format!("set shape_size to {} or more", least.get())));
    }
    for _ in 0..limits::FIELD_STARTS {
        if let Some(view) = attempt(setup, &numbers, count, rng)? {
            return Ok(view);
        }
    }
    Err(Trouble::new(format!(
        "{} washers find no places far enough from each other and from other shapes",
        numbers.len()
    ))
    .hint(
        "set fewer shapes or a smaller shape_size, or put more digits on each shape, so that fewer washers are needed",
    ))
}

/// The answer cut into the numbers of the shapes that pull.
fn numbers(setup: &Setup, job: &Job<'_>) -> Hinted<Vec<String>> {
    let symbols = symbols(job.answer, job.lock)?;
    digits_only(&symbols)?;
    if !(1..=3).contains(&setup.digits) {
        return Err(Trouble::new("a shape carries 1, 2 or 3 digits").hint("set `digits` to 1"));
    }
    let numbers: Vec<String> = symbols.chunks(usize::from(setup.digits)).map(|part| part.iter().collect()).collect();
    let most = match setup.order {
        Order::Kinds => Kind::ALL.len(),
        Order::Sizes => SIZES,
        Order::Rows => limits::WHEELS,
    };
    if numbers.len() < 2 {
        return Err(Trouble::new("one shape would carry the whole answer").hint("set `digits` lower"));
    }
    if numbers.len() > most {
        return Err(Trouble::new(format!(
            "this order has room for {most} washers, and the answer needs {}",
            numbers.len()
        ))
        .hint("put more digits on each shape, or set `order` to Rows"));
    }
    Ok(numbers)
}

/// The least breadth on which such a number stands at 9 points (common practice for cards, no source).
pub(super) const fn least_across(digits: u8) -> Mm {
    match digits {
        0 | 1 => LEAST_ACROSS,
        2 => Mm::new(16.0),
        _ => Mm::new(20.0),
    }
}

/// One board; none when the washers find no places on it.
fn attempt(setup: &Setup, numbers: &[String], count: usize, rng: &mut Rng) -> Hinted<Option<View>> {
    let washers = numbers.len();
    let sizes = sizes(setup, washers, count);
    let radii: Vec<Mm> = sizes.iter().map(|across| *across / 2.0 + AIR).collect();
    let area = Rect { x: -FIELD.w / 2.0, y: -FIELD.h / 2.0, w: FIELD.w, h: FIELD.h };
    let places = scatter_sized(Area::Rect(area), &radii, rng)?;

    let mut order: Vec<Kind> = Kind::ALL.to_vec();
    order.shuffle(rng);
    order.truncate((washers + IDLE_KINDS).min(Kind::ALL.len()));
    let lengths: Vec<usize> = numbers.iter().map(|number| number.chars().count()).collect();
    let mut shapes: Vec<Shape> = Vec::new();
    for (index, ((x, y), across)) in places.into_iter().zip(sizes).enumerate() {
        let kind = match setup.order {
            // Compared by size, shapes must not differ in form.
            Order::Sizes => Kind::Circle,
            Order::Kinds => order.get(index % order.len()).copied().unwrap_or(Kind::Circle),
            Order::Rows => Kind::ALL.get(index % Kind::ALL.len()).copied().unwrap_or(Kind::Circle),
        };
        shapes.push(Shape { x, y, across, kind, number: String::new(), pulls: false });
    }

    let Some(pulling) = pick(setup.order, &shapes, &order, washers, rng) else { return Ok(None) };
    for (place, number) in pulling.iter().zip(numbers) {
        if let Some(shape) = shapes.get_mut(*place) {
            shape.pulls = true;
            shape.number.clone_from(number);
        }
    }
    fill(&mut shapes, numbers, &lengths, rng);
    let rule = match setup.order {
        Order::Kinds => Rule::Kinds(order),
        Order::Rows => Rule::Rows,
        Order::Sizes => Rule::Sizes,
    };
    Ok(Some(View { shapes, rule: Some(rule) }))
}

/// The breadth of each shape. Of several sizes the large ones are few, by the cube of their breadth: each then takes a
/// smaller share of the board than the one below, and sixty shapes of four sizes still find room.
fn sizes(setup: &Setup, washers: usize, count: usize) -> Vec<Mm> {
    if setup.order != Order::Sizes {
        return vec![setup.shape_size; count];
    }
    let mut steps = vec![setup.shape_size];
    while steps.len() < washers {
        let next = steps.last().map_or(setup.shape_size, |last| *last * SIZE_STEP);
        steps.push(Mm::new((next.get() * 10.0).round() / 10.0));
    }
    let weight = |across: Mm| 1.0 / (across.get() * across.get() * across.get());
    let all: f64 = steps.iter().map(|across| weight(*across)).sum();
    let mut sizes = Vec::new();
    // Largest first, at least two of each; the smallest size takes what is left.
    for across in steps.iter().skip(1).rev() {
        #[expect(
            clippy::cast_precision_loss,
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "at most FIELD_MARKS"
        )]
        let share = (count as f64 * weight(*across) / all).floor() as usize;
        sizes.extend(std::iter::repeat_n(*across, share.max(2)));
    }
    sizes.truncate(count);
    sizes.resize(count, setup.shape_size);
    sizes
}

/// Shapes to hide washers behind, in the order in which they are to be read.
fn pick(order: Order, shapes: &[Shape], kinds: &[Kind], washers: usize, rng: &mut Rng) -> Option<Vec<usize>> {
    let free: Vec<usize> = (0..shapes.len()).filter(|place| stands_free(shapes, *place)).collect();
    for _ in 0..limits::STEEL_PICKS {
        let mut pulling_kinds: Vec<usize> = (0..kinds.len()).collect();
        pulling_kinds.shuffle(rng);
        pulling_kinds.truncate(washers);
        let mut sizes: Vec<Mm> = shapes.iter().map(|shape| shape.across).collect();
        sizes.sort_by(|a, b| a.get().total_cmp(&b.get()));
        sizes.dedup();
        let mut candidates = free.clone();
        candidates.shuffle(rng);
        let mut chosen: Vec<usize> = Vec::new();
        for turn in 0..washers {
            let next = candidates.iter().copied().find(|place| {
                let Some(shape) = shapes.get(*place) else { return false };
                let fits = match order {
                    Order::Rows => true,
                    Order::Kinds => pulling_kinds.get(turn).and_then(|at| kinds.get(*at)) == Some(&shape.kind),
                    Order::Sizes => sizes.get(turn) == Some(&shape.across),
                };
                fits && chosen.iter().filter_map(|at| shapes.get(*at)).all(|other| lie_apart(order, shape, other))
            });
            chosen.extend(next);
        }
        if chosen.len() == washers {
            chosen.sort_by(|a, b| rank(order, shapes.get(*a), kinds).total_cmp(&rank(order, shapes.get(*b), kinds)));
            return Some(chosen);
        }
    }
    None
}

/// Where a shape comes in the order.
fn rank(order: Order, shape: Option<&Shape>, kinds: &[Kind]) -> f64 {
    let Some(shape) = shape else { return 0.0 };
    match order {
        Order::Rows => shape.y.get(),
        Order::Sizes => shape.across.get(),
        #[expect(clippy::cast_precision_loss, reason = "eight kinds")]
        Order::Kinds => kinds.iter().position(|kind| *kind == shape.kind).unwrap_or_default() as f64,
    }
}

/// Whether a washer behind this shape cannot be felt at the middle of another.
fn stands_free(shapes: &[Shape], place: usize) -> bool {
    let Some(shape) = shapes.get(place) else { return false };
    let others = shapes.iter().enumerate().filter(|(at, _)| *at != place);
    others.map(|(_, other)| shape.distance(other).get()).all(|distance| distance >= NEIGHBOUR_APART)
}

/// Whether two washers can be told apart, and their order seen at a glance.
fn lie_apart(order: Order, a: &Shape, b: &Shape) -> bool {
    let rows = order != Order::Rows || (a.y - b.y).get().abs() >= a.across.get();
    rows && a.distance(b) >= STEEL_APART
}

/// Gives every other shape a number. Long numbers stand on the board once, as far as there are enough of them.
fn fill(shapes: &mut [Shape], taken: &[String], lengths: &[usize], rng: &mut Rng) {
    let mut pools: Vec<(usize, Vec<String>)> = Vec::new();
    for shape in shapes.iter_mut().filter(|shape| !shape.pulls) {
        let length = lengths.choose(rng).copied().unwrap_or(1);
        let at = pools.iter().position(|(of, _)| *of == length).unwrap_or_else(|| {
            pools.push((length, Vec::new()));
            pools.len() - 1
        });
        let Some((_, pool)) = pools.get_mut(at) else { continue };
        if pool.is_empty() {
            *pool = all_numbers(length).filter(|number| length == 1 || !taken.contains(number)).collect();
            pool.shuffle(rng);
        }
        shape.number = pool.pop().unwrap_or_else(|| char::from(b'0' + rng.random_range(0..10_u8)).to_string());
    }
}

/// All numbers of so many digits.
fn all_numbers(length: usize) -> impl Iterator<Item = String> {
    let end = match length {
        0 | 1 => 10,
        2 => 100,
        _ => 1000,
    };
    (0..end).map(move |number| format!("{number:0length$}"))
}
