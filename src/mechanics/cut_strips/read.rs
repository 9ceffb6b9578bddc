//! Lays the strips in every order that can show signs at all. A sign is taken for itself wherever it stands and
//! however long its upright strokes come out, as a guest would take it; its level strokes keep their thickness.

use std::cell::Cell;

use super::{FINE, View, letter};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::dots;
use crate::mechanics::work::{Work, counted};
use crate::readings::orders::{Orders, Step};
use crate::readings::{Budget, Readings};

/// A stretch of a sign: a row of cells that comes again and again.
struct Stretch {
    row: Vec<char>,
    /// Whether it may come out longer or shorter than drawn.
    long: bool,
}

/// A sign by its stretches, from the top.
struct Sign {
    symbol: char,
    stretches: Vec<Stretch>,
}

/// How far a picture has come of a sign: the sign, the stretch it is in (0: above the sign; one more than there are:
/// below it), and the rows of that stretch so far.
type Stage = (usize, usize, usize);

/// For each place across, all that it can still become.
type State = Vec<Vec<Stage>>;

struct Reader<'a> {
    view: &'a View,
    /// The signs that may stand at each place.
    signs: Vec<Vec<Sign>>,
    /// How often a strip was tried.
    tried: Cell<usize>,
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let Some((_, count)) = view.measures() else {
        all.remarks.push("the strips are not all of one size".into());
        return all;
    };
    let shows = |place: usize, symbol: char| match lock {
        LockKind::Spoken => symbol.is_ascii_uppercase(),
        _ => lock.shows(place, symbol),
    };
    let reader = Reader::new(view, count, &shows);
    let done = reader.orders(&mut |orders| {
        orders.each_end(&reader.start(), budget, &mut |laid, state| {
            for answer in reader.spelt(state) {
                all.add(lock, &answer, order(laid));
            }
            !all.more
        })
    });
    all.unproven = done.is_err();
    for (index, strip) in view.strips.iter().enumerate() {
        if !view.arrows && turned(strip) == *strip {
            all.remarks.push(format!("strip {} looks the same upside down", letter(index)));
        }
        if view.strips.iter().take(index).any(|other| other == strip) {
            all.remarks.push(format!("strip {} looks like another strip", letter(index)));
        }
    }
    all
}

/// How many strips are tried, laid one below another, until every order is known to fit or not.
pub(super) fn work(view: &View) -> Option<Work> {
    let (_, count) = view.measures()?;
    // Guests do not know what the lock can show: all digits, or all letters.
    let digits = Reader::new(view, count, &|_, symbol| symbol.is_ascii_digit());
    let letters = Reader::new(view, count, &|_, symbol| symbol.is_ascii_uppercase());
    for reader in [&digits, &letters] {
        let mut shows = false;
        let done = reader.orders(&mut |orders| {
            orders.each_end(&reader.start(), &mut Budget::new(limits::CUT_STEPS), &mut |_, state| {
                shows |= !reader.spelt(state).is_empty();
                true
            })
        });
        if shows || done.is_err() {
            let tried = reader.tried.get();
            let says = format!(
                "It takes patience: guests lay strip after strip at the cut until one goes on, {} at the most.",
                counted(tried, "time")
            );
            return Some(Work::new(tried, says));
        }
    }
    None
}

/// A strip upside down.
pub(super) fn turned(strip: &[String]) -> Vec<String> {
    strip.iter().rev().map(|row| row.chars().rev().collect()).collect()
}

fn order(laid: &[Step]) -> String {
    let steps: Vec<String> = laid
        .iter()
        .map(|(strip, way)| format!("{}{}", letter(*strip), if *way == 1 { " upside down" } else { "" }))
        .collect();
    format!("{ORDER}{}", steps.join(", "))
}

/// What the reason of a reading begins with.
const ORDER: &str = "the strips from the top in the order ";

/// The letters of the strips from the top, as they show what the lock can be set to; none where that is not certain.
pub(super) fn in_order(view: &View, lock: &LockKind) -> Option<String> {
    let found = readings(view, lock, &mut Budget::new(limits::CUT_STEPS));
    match found.list.as_slice() {
        [only] if !found.unproven => only.why.strip_prefix(ORDER).map(str::to_owned),
        _ => None,
    }
}

impl<'a> Reader<'a> {
    fn new(view: &'a View, count: usize, shows: &dyn Fn(usize, char) -> bool) -> Self {
        let signs = (0..count)
            .map(|place| {
                let fits = dots::SIGNS.iter().filter(|(symbol, _)| shows(place, *symbol));
                fits.map(|(symbol, rows)| sign(*symbol, rows)).collect()
            })
            .collect();
        Self { view, signs, tried: Cell::new(0) }
    }

    fn start(&self) -> State {
        self.signs.iter().map(|signs| (0..signs.len()).map(|sign| (sign, 0, 0)).collect()).collect()
    }

    fn orders<T>(&self, walk: &mut dyn FnMut(&Orders<'_, State>) -> T) -> T {
        let ways = if self.view.arrows { 1 } else { 2 };
        let sides: Vec<[Vec<Vec<char>>; 2]> = self
            .view
            .strips
            .iter()
            .map(|strip| {
                let cells = |strip: &[String]| strip.iter().map(|row| row.chars().collect()).collect();
                [cells(strip), cells(&turned(strip))]
            })
            .collect();
        let side = |(strip, way): Step| sides.get(strip).and_then(|sides| sides.get(way));
        let next = |state: &State, step: Step| {
            self.tried.set(self.tried.get() + 1);
            side(step)?.iter().try_fold(state.clone(), |state, row| self.below(&state, row))
        };
        let alike = |a: Step, b: Step| side(a) == side(b);
        walk(&Orders { pieces: self.view.strips.len(), ways, next: &next, alike: &alike })
    }

    /// What the places can still become once a row is laid below; none when one of them can become nothing.
    fn below(&self, state: &State, row: &[char]) -> Option<State> {
        let mut next = Vec::new();
        for (place, stages) in state.iter().enumerate() {
            let left = place * (dots::ACROSS + 1) + 1;
            let cells = row.get(left..left + dots::ACROSS)?;
            let mut after: Vec<Stage> = Vec::new();
            for (index, stretch, rows) in stages {
                let sign = self.signs.get(place)?.get(*index)?;
                sign.below(*stretch, *rows, cells, &mut |stretch, rows| after.push((*index, stretch, rows)));
            }
            after.sort_unstable();
            after.dedup();
            if after.is_empty() {
                return None;
            }
            next.push(after);
        }
        Some(next)
    }

    /// What a finished picture can be read as.
    fn spelt(&self, state: &State) -> Vec<String> {
        let mut texts = vec![String::new()];
        for (signs, stages) in self.signs.iter().zip(state) {
            let mut whole: Vec<char> = stages
                .iter()
                .filter_map(|(index, stretch, rows)| {
                    let sign = signs.get(*index)?;
                    sign.whole(*stretch, *rows).then_some(sign.symbol)
                })
                .collect();
            whole.sort_unstable();
            whole.dedup();
            texts = texts
                .iter()
                .flat_map(|text| whole.iter().map(move |symbol| format!("{text}{symbol}")))
                .take(limits::CUT_SPELT)
                .collect();
        }
        texts
    }
}

fn sign(symbol: char, rows: &[&str]) -> Sign {
    let mut stretches: Vec<Stretch> = Vec::new();
    for row in rows {
        let row: Vec<char> = row.chars().collect();
        match stretches.last_mut() {
            Some(last) if last.row == row => last.long = true,
            _ => stretches.push(Stretch { row, long: false }),
        }
    }
    Sign { symbol, stretches }
}

impl Sign {
    /// Whether a stretch of so many rows may end.
    fn complete(&self, stretch: usize, rows: usize) -> bool {
        let at = stretch.checked_sub(1).and_then(|at| self.stretches.get(at));
        at.is_some_and(|stretch| stretch.long || rows == FINE)
    }

    /// Whether the picture may end here.
    fn whole(&self, stretch: usize, rows: usize) -> bool {
        stretch > self.stretches.len() || (stretch == self.stretches.len() && self.complete(stretch, rows))
    }

    /// The stages to which a row of cells leads.
    fn below(&self, stretch: usize, rows: usize, cells: &[char], reach: &mut dyn FnMut(usize, usize)) {
        let blank = cells.iter().all(|cell| *cell == '.');
        let is = |at: usize| self.stretches.get(at).is_some_and(|stretch| stretch.row == cells);
        if stretch == 0 || stretch > self.stretches.len() {
            if blank {
                reach(stretch, 0);
            }
            if stretch == 0 && is(0) {
                reach(1, 1);
            }
            return;
        }
        if is(stretch - 1) {
            let long = self.stretches.get(stretch - 1).is_some_and(|stretch| stretch.long);
            if long {
                reach(stretch, 1);
            } else if rows < FINE {
                reach(stretch, rows + 1);
            }
        }
        if self.complete(stretch, rows) {
            if is(stretch) {
                reach(stretch + 1, 1);
            }
            if blank && stretch == self.stretches.len() {
                reach(stretch + 1, 0);
            }
        }
    }
}
