use rand::seq::IndexedRandom as _;

use super::{BLOCK, Setup, View, read};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::picture_grid::glyphs::Shape;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Job, Rng};
use crate::readings::{Budget, Verdict};

/// Digits in a row of a large sheet: with two, the cells are as large as a sheet allows, and easy to lay true.
const ACROSS: usize = 2;
/// The dark cells of a block, as two rows of two: all six ways to have two of four.
const BLOCKS: [[[bool; BLOCK]; BLOCK]; 6] = [
    [[true, true], [false, false]],
    [[false, false], [true, true]],
    [[true, false], [true, false]],
    [[false, true], [false, true]],
    [[true, false], [false, true]],
    [[false, true], [true, false]],
];

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    let most = if setup.large { limits::OVERLAY_DIGITS } else { limits::OVERLAY_CARD };
    if answer.len() > most {
        let trouble = Trouble::new(format!("{} digits side by side would have cells under a millimetre", answer.len()));
        return Err(trouble.hint(if setup.large {
            format!("give the puzzle a lock of at most {most} wheels")
        } else {
            format!("put `large: true`, or give the puzzle a lock of at most {most} wheels")
        }));
    }
    let shape = if setup.large { Shape::Thick } else { Shape::Thin };
    let picture = picture(&answer, shape, if setup.large { answer.len().min(ACROSS) } else { answer.len() });
    let text: String = answer.iter().collect();
    for _ in 0..limits::OVERLAY_STARTS {
        let view = sheets(&picture, setup.large, rng);
        if read::readings(&view, job.lock, &mut Budget::default()).verdict(&text) == Verdict::One {
            return Ok(view);
        }
    }
    Err(Trouble::new("the sheets would show other digits as well").hint("try another arrangement, or another answer"))
}

/// So many digits side by side, row under row, with a blank point round each. Without a digit at its end a row is blank
/// there: noise as well.
fn picture(answer: &[char], shape: Shape, across: usize) -> Vec<Vec<bool>> {
    let mut lines: Vec<Vec<Vec<bool>>> = answer.chunks(across.max(1)).map(|line| row(line, shape)).collect();
    let wide = lines.iter().flatten().map(Vec::len).max().unwrap_or(0);
    for points in lines.iter_mut().flatten() {
        points.resize(wide, false);
    }
    lines.concat()
}

/// Digits side by side with a blank point round each.
fn row(answer: &[char], shape: Shape) -> Vec<Vec<bool>> {
    let mut rows: Vec<Vec<bool>> = Vec::new();
    for glyph in answer.iter().filter_map(|digit| shape.picture(*digit)) {
        rows.resize(glyph.len() + 2, vec![false]);
        for (at, row) in rows.iter_mut().enumerate() {
            let blank = vec![false; glyph.first().map_or(0, Vec::len)];
            row.extend(at.checked_sub(1).and_then(|at| glyph.get(at)).unwrap_or(&blank));
            row.push(false);
        }
    }
    rows
}

fn sheets(picture: &[Vec<bool>], large: bool, rng: &mut Rng) -> View {
    let (mut under, mut over) = (Vec::new(), Vec::new());
    for points in picture {
        let mut lines = [(); BLOCK].map(|()| (String::new(), String::new()));
        for point in points {
            let block = BLOCKS.choose(rng).copied().unwrap_or_default();
            for (cells, (below, above)) in block.iter().zip(&mut lines) {
                for dark in cells {
                    below.push(sign(*dark));
                    above.push(sign(*dark != *point));
                }
            }
        }
        for (below, above) in lines {
            under.push(below);
            over.push(above);
        }
    }
    View { under, over, large }
}

const fn sign(dark: bool) -> char {
    if dark { '#' } else { '.' }
}
