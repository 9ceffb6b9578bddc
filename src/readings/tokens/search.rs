//! The walk through all orders and choices.

use super::{Mark, Order, Way};
use crate::limits;
use crate::readings::Budget;

/// The budget was spent before everything was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spent;

/// One mark taken on the way to an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// Which mark, by its place in the list.
    pub mark: usize,
    /// What it was taken to say.
    pub text: String,
    /// Whether it was read upside down.
    pub upside_down: bool,
}

/// Calls `found` with every concatenation that the order allows and the marks taken for it; it says whether to
/// go on. A concatenation may come more than once when different choices lead to it; marks that nothing tells
/// apart are not interchanged. `fits` cuts off beginnings that no wanted answer has; it must hold for the
/// beginnings of every text it holds for.
///
/// # Errors
/// When the budget was spent first, or there are more than [`limits::FIELD_MARKS`] marks.
pub fn each(
    marks: &[Mark],
    order: &Order,
    fits: &dyn Fn(&str) -> bool,
    budget: &mut Budget,
    found: &mut dyn FnMut(&str, &[Taken]) -> bool,
) -> Result<(), Spent> {
    if marks.len() > limits::FIELD_MARKS {
        // The walk is as deep as an answer has marks; more than a page of them is no puzzle.
        return Err(Spent);
    }
    let mut walk = Walk { marks, fits, budget, found, taken: Vec::new(), text: String::new() };
    let all: Vec<usize> = (0..marks.len()).collect();
    match order {
        Order::Ring { start, way } => {
            for row in rows(&all, *start, *way) {
                if !walk.go(&Plan::Row(&row))? {
                    break;
                }
            }
        }
        Order::Listed => {
            walk.go(&Plan::Row(&all))?;
        }
        Order::Partial(pairs) => {
            walk.go(&Plan::Before(pairs))?;
        }
        Order::Cued(cues) => {
            let cues: Vec<&[usize]> = cues.iter().map(|cue| cue.marks.as_slice()).collect();
            walk.go(&Plan::Cues(&cues))?;
        }
    }
    Ok(())
}

/// The rows that a ring can be read as.
fn rows(ring: &[usize], start: bool, way: Way) -> Vec<Vec<usize>> {
    let backwards: Vec<usize> = ring.iter().rev().copied().collect();
    let ways: Vec<&[usize]> = match way {
        Way::Rightwards => vec![ring],
        Way::Leftwards => vec![&backwards],
        Way::Unstated => vec![ring, &backwards],
    };
    let firsts = if start { 1 } else { ring.len().max(1) };
    ways.into_iter()
        .flat_map(|row| {
            (0..firsts).map(move |first| {
                let (end, begin) = row.split_at(first.min(row.len()));
                [begin, end].concat()
            })
        })
        .collect()
}

/// Which marks may come next.
enum Plan<'a> {
    Row(&'a [usize]),
    Before(&'a [(usize, usize)]),
    Cues(&'a [&'a [usize]]),
}

impl Plan<'_> {
    /// How many marks an answer takes.
    const fn length(&self, marks: usize) -> usize {
        match self {
            Self::Row(row) => row.len(),
            Self::Before(_) => marks,
            Self::Cues(cues) => cues.len(),
        }
    }

    fn next(&self, taken: &[Taken], marks: usize) -> Vec<usize> {
        let used = |mark: usize| taken.iter().any(|step| step.mark == mark);
        match self {
            Self::Row(row) => row.get(taken.len()).copied().into_iter().collect(),
            Self::Before(pairs) => (0..marks)
                .filter(|mark| !used(*mark))
                .filter(|mark| pairs.iter().all(|(before, after)| after != mark || used(*before)))
                .collect(),
            Self::Cues(cues) => {
                let fit = cues.get(taken.len()).copied().unwrap_or_default();
                fit.iter().copied().filter(|mark| *mark < marks && !used(*mark)).collect()
            }
        }
    }

    /// Whether what comes later treats the two alike.
    fn alike(&self, a: usize, b: usize) -> bool {
        match self {
            Self::Row(_) => false,
            Self::Before(pairs) => {
                let swap = |mark: usize| if mark == a { b } else { mark };
                let of = |mark: usize| {
                    let mut list: Vec<(usize, usize)> = pairs
                        .iter()
                        .filter(|(before, after)| *before == mark || *after == mark)
                        .map(|(before, after)| (swap(*before), swap(*after)))
                        .collect();
                    list.sort_unstable();
                    list
                };
                of(a) == of(b)
            }
            Self::Cues(cues) => cues.iter().all(|cue| cue.contains(&a) == cue.contains(&b)),
        }
    }
}

struct Walk<'a> {
    marks: &'a [Mark],
    fits: &'a dyn Fn(&str) -> bool,
    budget: &'a mut Budget,
    found: &'a mut dyn FnMut(&str, &[Taken]) -> bool,
    taken: Vec<Taken>,
    text: String,
}

impl Walk<'_> {
    /// Whether to go on looking.
    fn go(&mut self, plan: &Plan<'_>) -> Result<bool, Spent> {
        if !self.budget.step() {
            return Err(Spent);
        }
        if self.taken.len() == plan.length(self.marks.len()) {
            return Ok((self.found)(&self.text, &self.taken));
        }
        let mut tried: Vec<usize> = Vec::new();
        for at in plan.next(&self.taken, self.marks.len()) {
            let Some(mark) = self.marks.get(at) else { continue };
            let twin = |other: &usize| {
                self.marks.get(*other).is_some_and(|o| o.text == mark.text && o.loose == mark.loose)
                    && plan.alike(*other, at)
            };
            if tried.iter().any(twin) {
                continue;
            }
            tried.push(at);
            for (way, text) in mark.ways().into_iter().enumerate() {
                let length = self.text.len();
                self.text.push_str(&text);
                let mut on = true;
                if (self.fits)(&self.text) {
                    self.taken.push(Taken { mark: at, text, upside_down: way > 0 });
                    on = self.go(plan)?;
                    self.taken.pop();
                }
                self.text.truncate(length);
                if !on {
                    return Ok(false);
                }
            }
        }
        Ok(true)
    }
}
