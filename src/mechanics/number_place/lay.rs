use rand::seq::SliceRandom as _;

use super::{Reasoning, Setup, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::words::{any_symbol, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::Budget;
use crate::readings::places::Places;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let places = Places::new(usize::from(setup.size)).ok_or_else(|| {
        Trouble::new(format!("there is no number place grid of {} rows", setup.size)).hint("take a `size` of 4, 6 or 9")
    })?;
    let alphabet = alphabet(setup, &answer, job.lock, places.size, rng)?;
    let wanted: Vec<usize> =
        answer.iter().filter_map(|symbol| alphabet.iter().position(|other| other == symbol)).collect();
    let job = Grid { places, alphabet: &alphabet, wanted: &wanted, setup };
    arranged(setup.work, rng, &mut |rng| job.grid(rng), &texts::work)
}

/// What every grid for the answer is made with.
struct Grid<'a> {
    places: Places,
    alphabet: &'a [char],
    wanted: &'a [usize],
    setup: &'a Setup,
}

impl Grid<'_> {
    fn grid(&self, rng: &mut Rng) -> Hinted<View> {
        let Self { places, alphabet, wanted, setup } = *self;
        for _ in 0..limits::GRID_STARTS {
            let Some(marks) = marks(places, wanted, rng) else { continue };
            let mut held = vec![None; places.size * places.size];
            for (cell, value) in marks.iter().zip(wanted) {
                held[*cell] = Some(*value);
            }
            let mut full = None;
            let filled = places.each(
                &held,
                &mut |tries| tries.shuffle(rng),
                &mut Budget::new(limits::GRID_STEPS),
                &mut |grid| {
                    full = Some(grid.to_vec());
                    false
                },
            );
            if let (Ok(()), Some(full)) = (filled, full)
                && let Some(givens) = dig(places, &full, &marks, setup, rng)
            {
                let cell = |value: &Option<usize>| value.and_then(|value| alphabet.get(value).copied());
                return Ok(View {
                    rows: givens.chunks(places.size).map(|row| row.iter().map(cell).collect()).collect(),
                    symbols: alphabet.to_vec(),
                    marks: marks.iter().map(|cell| (cell / places.size, cell % places.size)).collect(),
                    large: setup.large || places.size == 9,
                });
            }
        }
        Err(Trouble::new("no grid with one solution was found for this answer")
            .hint("take a larger `size`, or `reasoning: Any`, or fewer wheels"))
    }
}

/// The symbols that the author names, or those of a plain grid where the lock shows digits: 1, 2, 3 and so on.
pub(super) fn symbols_of(setup: &Setup, lock: &LockKind) -> Option<Vec<char>> {
    let own: Vec<char> = setup.symbols.to_uppercase().chars().filter(|c| !c.is_whitespace()).collect();
    let digits = matches!(lock, LockKind::Digits(_));
    if own.is_empty() { digits.then(|| plain(usize::from(setup.size))) } else { Some(own) }
}

/// 1, 2, 3 and so on.
fn plain(size: usize) -> Vec<char> {
    ('1'..='9').take(size).collect()
}

/// The symbols of the grid: the author's, or 1, 2, 3 and so on where the answer allows it, or the answer's own
/// filled up with others of the lock.
fn alphabet(setup: &Setup, answer: &[char], lock: &LockKind, size: usize, rng: &mut Rng) -> Hinted<Vec<char>> {
    let mut own: Vec<char> = setup.symbols.to_uppercase().chars().filter(|c| !c.is_whitespace()).collect();
    let count = own.len();
    own.sort_unstable();
    own.dedup();
    if count > 0 {
        if own.len() != size || count != size || !own.iter().all(|c| c.is_alphanumeric()) {
            return Err(Trouble::new(format!("a grid of {size} rows takes {size} different letters or digits"))
                .hint("mend `symbols`, or leave it empty"));
        }
        if let Some(missing) = answer.iter().find(|symbol| !own.contains(symbol)) {
            return Err(Trouble::new(format!("the grid has no {missing}, which the answer needs"))
                .hint("add it to `symbols`, or leave `symbols` empty"));
        }
        return Ok(own);
    }
    let plain = plain(size);
    if answer.iter().all(|symbol| plain.contains(symbol)) {
        return Ok(plain);
    }
    own = answer.to_vec();
    own.sort_unstable();
    own.dedup();
    if own.len() > size {
        return Err(Trouble::new(format!("the answer has {} different symbols, and the grid takes {size}", own.len()))
            .hint("take a larger `size`"));
    }
    // Others of the lock, so that the symbols alone tell little; letters of its wheels may be few, so A to Z after.
    let mut spare: Vec<char> = (0..limits::GRID_SPARE).map(|_| any_symbol(lock, rng)).collect();
    let rest: Vec<char> =
        if answer.iter().all(char::is_ascii_digit) { ('0'..='9').collect() } else { ('A'..='Z').collect() };
    spare.extend(rest);
    for symbol in spare {
        if own.len() < size && symbol.is_alphanumeric() && !own.contains(&symbol) {
            own.push(symbol);
        }
    }
    own.sort_unstable();
    Ok(own)
}

/// Cells for the answer's values, drawn by chance: equal values must not see each other.
fn marks(places: Places, wanted: &[usize], rng: &mut Rng) -> Option<Vec<usize>> {
    let mut cells: Vec<usize> = (0..places.size * places.size).collect();
    cells.shuffle(rng);
    let mut marks: Vec<usize> = Vec::new();
    for value in wanted {
        let fits = |cell: &usize| {
            marks
                .iter()
                .zip(wanted)
                .all(|(other, held)| other != cell && (held != value || !places.see_each_other(*other, *cell)))
        };
        let cell = cells.iter().copied().find(fits)?;
        marks.push(cell);
    }
    Some(marks)
}

/// Takes values out, by chance, as long as the grid stays solvable as the author wants; the marked cells first,
/// for they must be empty.
fn dig(places: Places, full: &[usize], marks: &[usize], setup: &Setup, rng: &mut Rng) -> Option<Vec<Option<usize>>> {
    let mut budget = Budget::new(limits::GRID_STEPS);
    let mut sound = |givens: &[Option<usize>]| match setup.reasoning {
        Reasoning::Single => places.deduce(givens).open == 0,
        Reasoning::Any => places.count(givens, 2, &mut budget) == Ok(1),
    };
    let mut givens: Vec<Option<usize>> = full.iter().copied().map(Some).collect();
    for cell in marks {
        givens[*cell] = None;
    }
    if !sound(&givens) {
        return None;
    }
    let mut left: Vec<usize> = (0..full.len()).filter(|cell| !marks.contains(cell)).collect();
    left.shuffle(rng);
    let mut count = left.len();
    let least = match setup.work {
        Effort::Light => full.len() * 3 / 5,
        Effort::Fair | Effort::Deep => 0,
    };
    for cell in left {
        if count <= least.max(usize::from(setup.givens)) {
            break;
        }
        let value = givens[cell].take();
        if sound(&givens) {
            count -= 1;
        } else {
            givens[cell] = value;
        }
    }
    Some(givens)
}
