use rand::RngExt as _;
use rand::seq::IndexedRandom as _;

use super::figures::{Bar, every_half, halves, joined};
use super::{Figure, Pleat, Setup, View, read};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Job, Rng};
use crate::readings::{Budget, Verdict};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    if answer.len() > limits::FOLD_FIGURES {
        return Err(Trouble::new(format!("{} digits are too many for one strip", answer.len()))
            .hint(format!("give the puzzle a lock of at most {} wheels", limits::FOLD_FIGURES)));
    }
    let text: String = answer.iter().collect();
    for _ in 0..limits::FOLD_STARTS {
        let figures = answer.iter().filter_map(|digit| figure(*digit, setup.pleat, rng)).collect();
        let view = View { figures };
        let found = read::readings(&view, job.lock, &mut Budget::default());
        if setup.pleat == Pleat::Empty || found.verdict(&text) == Verdict::One {
            return Ok(view);
        }
    }
    Err(Trouble::new("the open strip would show digits that can be set on the lock as well")
        .hint("give the puzzle a lock with as many digit wheels as the answer has digits"))
}

fn figure(digit: char, pleat: Pleat, rng: &mut Rng) -> Option<Figure> {
    let (left, right) = halves(digit)?;
    let pleat = match pleat {
        Pleat::Empty => [Vec::new(), Vec::new()],
        Pleat::Halves => {
            [astray(digit, &|half| joined(&left, half), rng)?, astray(digit, &|half| joined(half, &right), rng)?]
        }
    };
    Some(Figure { left, pleat, right })
}

/// A half that leads astray: with its neighbour it shows another digit, or none, and never this one.
fn astray(digit: char, shows: &dyn Fn(&[Bar]) -> Vec<char>, rng: &mut Rng) -> Option<Vec<Bar>> {
    let fit: Vec<Vec<Bar>> = every_half().filter(|half| half.len() > 1 && !shows(half).contains(&digit)).collect();
    let digits: Vec<Vec<Bar>> = fit.iter().filter(|half| shows(half).len() == 1).cloned().collect();
    // Where another digit can be shown at all, it is shown more often than not: that leads furthest astray.
    let from = if !digits.is_empty() && rng.random_bool(0.7) { &digits } else { &fit };
    from.choose(rng).cloned()
}
