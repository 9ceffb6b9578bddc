//! Strews the things of a scene: those to count, some of them twice over in rings, and strangers.

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};

use super::{FIELD, Setup, Thing, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::field::{Area, scatter_sized};
use crate::mechanics::pictures::choose;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::work::Effort;
use crate::mechanics::{Job, Rng};
use crate::units::{Mm, Rect};

/// Half the breadth of the nearest things, tried from the largest down.
const RADII: [f64; 8] = [14.5, 12.5, 11.0, 10.0, 9.0, 8.0, 7.4, 6.8];
/// Share of a thing's room that it fills: the rest is air, and the ring's line.
const FILLS: f64 = 0.84;
/// How large the farthest things are beside the nearest.
const FAR: f64 = 0.72;
/// Degrees by which a thing may lean.
const LEAN: i8 = 11;

/// How many things a scene has besides those that are counted.
struct Besides {
    /// Kinds that are not on the list.
    kinds: usize,
    /// Things of those kinds.
    strangers: usize,
    /// Things on the list that stand in a ring.
    ringed: usize,
}

const fn besides(work: Effort) -> Besides {
    match work {
        Effort::Light => Besides { kinds: 2, strangers: 4, ringed: 1 },
        Effort::Fair => Besides { kinds: 3, strangers: 10, ringed: 4 },
        Effort::Deep => Besides { kinds: 5, strangers: 22, ringed: 9 },
    }
}

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    if answer.len() > limits::SCENE_KINDS {
        return Err(Trouble::new(format!("a list of {} kinds is too long for its card", answer.len()))
            .hint(format!("give the puzzle a lock of at most {} wheels", limits::SCENE_KINDS)));
    }
    if !setup.count.is_empty() && setup.count.len() != answer.len() {
        return Err(Trouble::new(format!(
            "`count` names {} symbols, and the answer has {} digits",
            setup.count.len(),
            answer.len()
        ))
        .hint("name one symbol for each digit, or none"));
    }
    let besides = besides(setup.work);
    let listed = (0..answer.len()).map(|at| setup.count.get(at).map_or("", String::as_str));
    // A theme with few symbols has fewer kinds of strangers.
    let spare = job.symbols.len().saturating_sub(answer.len()).clamp(1, besides.kinds);
    let spare = if setup.others.is_empty() { spare } else { besides.kinds.min(setup.others.len()) };
    let others = (0..spare).map(|at| setup.others.get(at).map_or("", String::as_str));
    let wanted: Vec<&str> = listed.chain(others).collect();
    let pictures = choose(&wanted, job, rng)?;
    let (list, strange) = pictures.split_at(answer.len());

    let mut kinds: Vec<(String, bool)> = Vec::new();
    for (picture, digit) in list.iter().zip(&answer) {
        let count = digit.to_digit(10).unwrap_or_default() as usize;
        kinds.extend(std::iter::repeat_n((picture.clone(), false), count));
    }
    for turn in 0..besides.strangers {
        let picture = strange.get(turn % strange.len().max(1)).cloned().unwrap_or_default();
        kinds.push((picture, false));
    }
    if setup.ringed {
        kinds.extend((0..besides.ringed).filter_map(|_| list.choose(rng).map(|picture| (picture.clone(), true))));
    }
    kinds.shuffle(rng);
    let (radius, places) = places(kinds.len(), rng)?;
    let mut things: Vec<Thing> = kinds
        .into_iter()
        .zip(places)
        .map(|((picture, ringed), (x, y))| {
            let across = radius * (2.0 * FILLS * (FAR + (1.0 - FAR) * y.get() / FIELD.h.get()));
            let lean = rng.random_range(-LEAN..=LEAN);
            Thing { picture, x, y, across: Mm::new((across.get() * 10.0).round() / 10.0), lean, ringed }
        })
        .collect();
    things.sort_by(|a, b| {
        (a.y.get(), a.x.get()).partial_cmp(&(b.y.get(), b.x.get())).unwrap_or(std::cmp::Ordering::Equal)
    });
    Ok(View {
        text: setup.text.trim().to_owned(),
        things,
        list: list.to_vec(),
        ring_rule: setup.ringed,
        say_order: setup.say_order,
    })
}

/// Places for so many things, with the largest radius for which they find room.
fn places(count: usize, rng: &mut Rng) -> Hinted<(Mm, Vec<(Mm, Mm)>)> {
    let area = Rect { x: Mm::ZERO, y: Mm::ZERO, w: FIELD.w, h: FIELD.h };
    let mut refused = Trouble::new("the scene is too full").hint("take an answer with smaller digits");
    for radius in RADII.map(Mm::new) {
        match scatter_sized(Area::Rect(area), &vec![radius; count], rng) {
            Ok(places) => return Ok((radius, places)),
            Err(trouble) => refused = trouble,
        }
    }
    Err(refused)
}
