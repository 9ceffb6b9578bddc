use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::strokes::{Point, SIZE, distance, dots};
use super::{Dot, PANEL, Setup, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::work::Effort;
use crate::mechanics::{Job, Rng};

/// How high a digit stands on its panel, of the panel's breadth.
const HIGH: f64 = 960.0;
/// Least room about a dot, for its number.
const ROOM: f64 = 105.0;
/// Places tried for one stray dot: with room left, one of the first is free.
const TRIES: usize = 60;
/// How far a dot may lie off its stroke, in hundredths of a digit's breadth: seen as drawn by hand.
const WOBBLE: f64 = 1.5;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    if answer.len() > limits::PANELS {
        return Err(Trouble::new(format!("{} panels do not fit on a sheet", answer.len()))
            .hint(format!("give the puzzle a lock of at most {} wheels", limits::PANELS)));
    }
    if !(1..=limits::COUNT_STEP).contains(&setup.step) {
        return Err(Trouble::new(format!("dots are not counted in steps of {} here", setup.step))
            .hint(format!("set `step` to 1 to {}", limits::COUNT_STEP)));
    }
    if setup.strays > limits::PANEL_STRAYS {
        return Err(Trouble::new(format!("{} strays leave no room on a panel", setup.strays))
            .hint(format!("set `strays` to {} or less", limits::PANEL_STRAYS)));
    }
    let panels =
        answer.iter().filter_map(|digit| digit.to_digit(10)).map(|digit| panel(digit as usize, setup, rng)).collect();
    Ok(View {
        text: setup.text.trim().to_owned(),
        step: u16::from(setup.step),
        panels,
        loose: setup.loose,
        baseline: setup.baseline,
    })
}

fn panel(digit: usize, setup: &Setup, rng: &mut Rng) -> Vec<Dot> {
    let spacing = match setup.work {
        Effort::Light => 42.0,
        Effort::Fair => 31.0,
        Effort::Deep => 23.0,
    };
    let scale = HIGH / SIZE.1;
    let (free_w, free_h) = (f64::from(PANEL.0) - SIZE.0 * scale, f64::from(PANEL.1) - HIGH);
    // The digit stands somewhere about the middle, so that its place does not tell its dots from the strays.
    let (left, top) = (free_w * rng.random_range(0.3..0.7), free_h * rng.random_range(0.35..0.6));
    let mut places: Vec<Point> = Vec::new();
    for (x, y) in dots(digit, spacing) {
        let (dx, dy) = (rng.random_range(-WOBBLE..WOBBLE), rng.random_range(-WOBBLE..WOBBLE));
        let place = (left + (x + dx) * scale, top + (y + dy) * scale);
        // Where a stroke comes near itself a dot is left out rather than set upon another.
        if places.iter().all(|other| distance(*other, place) >= ROOM * 0.8) {
            places.push(place);
        }
    }
    let on_line = places.len();
    for _ in 0..setup.strays {
        for _ in 0..TRIES {
            let place = (
                rng.random_range(ROOM * 0.6..f64::from(PANEL.0) - ROOM * 0.6),
                rng.random_range(ROOM * 0.6..f64::from(PANEL.1) - ROOM),
            );
            if places.iter().all(|other| distance(*other, place) >= ROOM) {
                places.push(place);
                break;
            }
        }
    }
    let step = u16::from(setup.step);
    let last = u16::try_from(on_line).unwrap_or_default().saturating_mul(step);
    let mut others: Vec<u16> = (1..last).filter(|number| !number.is_multiple_of(step)).collect();
    others.shuffle(rng);
    let mut numbered: Vec<Dot> = places
        .into_iter()
        .enumerate()
        .map(|(index, place)| {
            let number = if index < on_line {
                u16::try_from(index + 1).ok().map(|turn| turn.saturating_mul(step))
            } else {
                others.pop()
            };
            Dot { x: whole(place.0), y: whole(place.1), number }
        })
        .collect();
    // What is listed first must not tell which dots belong together.
    numbered.sort_by_key(|dot| (dot.y, dot.x));
    numbered
}

fn whole(value: f64) -> u16 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a panel")]
    let value = value.round().clamp(0.0, f64::from(PANEL.1)) as u16;
    value
}
