use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{FINE, Setup, View, read};
use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::signs::alphabet;
use crate::mechanics::words::symbols;
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng, dots};
use crate::readings::{Budget, Verdict};

/// How many strips, and how many rows of cells each has: always more rows than a sign is high, so that the signs
/// need not stand on one line.
const fn cut(effort: Effort) -> (usize, usize) {
    match effort {
        Effort::Light => (5, 4),
        Effort::Fair => (7, 3),
        Effort::Deep => (9, 2),
    }
}

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let letters = alphabet(&answer)?.contains(&'A');
    if matches!(job.lock, LockKind::Spoken) && !letters {
        return Err(Trouble::new("a word that is said is put together from letters here, and the answer holds digits")
            .hint("write a word of the letters A to Z, or give the puzzle a lock with digit wheels"));
    }
    if answer.len() > limits::CUT_SIGNS {
        return Err(Trouble::new(format!("{} signs are too many for one strip", answer.len()))
            .hint(format!("give the puzzle an answer of at most {} signs", limits::CUT_SIGNS)));
    }
    let text: String = answer.iter().collect();
    let mut make = |rng: &mut Rng| {
        for _ in 0..limits::CUT_STARTS {
            let view = once(setup, &answer, rng);
            let found = read::readings(&view, job.lock, &mut Budget::new(limits::CUT_STEPS));
            let inked = view.strips.iter().all(|strip| strip.iter().any(|row| row.contains('#')));
            if inked && found.verdict(&text) == Verdict::One && !view.strips.iter().any(|strip| same(&view, strip)) {
                return Ok(view);
            }
        }
        let trouble =
            Trouble::new("every way of cutting this answer into strips lets them be laid to show another one");
        Err(if setup.arrows {
            trouble.hint("take another answer, with signs that differ more")
        } else {
            trouble.hint("put `arrows: true`: these signs read as others when they stand on their heads")
        })
    };
    arranged(setup.work, rng, &mut make, &read::work)
}

/// Whether the strips may be turned and this one looks the same either way.
fn same(view: &View, strip: &[String]) -> bool {
    !view.arrows && read::turned(strip) == strip
}

/// The signs side by side, each at a height of its own; cut, mixed, and turned where no arrowhead forbids it.
fn once(setup: &Setup, answer: &[char], rng: &mut Rng) -> View {
    let (strips, rows) = cut(setup.work);
    let width = answer.len() * (dots::ACROSS + 1) + 1;
    let mut picture = vec![vec!['.'; width]; strips * rows];
    let spare = (strips * rows).saturating_sub(dots::DOWN * FINE);
    for (index, sign) in answer.iter().enumerate() {
        let top = rng.random_range(0..=spare);
        let left = index * (dots::ACROSS + 1) + 1;
        for (row, cells) in dots::rows(*sign).into_iter().flatten().enumerate() {
            for (col, cell) in cells.chars().enumerate() {
                for fine in 0..FINE {
                    let place = picture.get_mut(top + row * FINE + fine).and_then(|row| row.get_mut(left + col));
                    if let Some(place) = place {
                        *place = cell;
                    }
                }
            }
        }
    }
    let lines: Vec<String> = picture.into_iter().map(|row| row.into_iter().collect()).collect();
    let mut strips: Vec<Vec<String>> = lines.chunks(rows).map(<[String]>::to_vec).collect();
    strips.shuffle(rng);
    if !setup.arrows {
        for strip in &mut strips {
            if rng.random_bool(0.5) {
                *strip = read::turned(strip);
            }
        }
    }
    View { strips, arrows: setup.arrows }
}
