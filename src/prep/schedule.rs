//! One person's order of work: hands on one task at a time, waits beside one another.

use crate::limits;

/// A task to be put in order.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// Minutes of hands.
    pub hands: f64,
    /// Minutes of waiting afterwards.
    pub wait: f64,
    /// Tasks whose wait must be over first; a number that is no task is left out.
    pub after: Vec<usize>,
}

/// An order of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Schedule {
    /// For each task the minute in which it starts; none for a task that waits for itself.
    pub starts: Vec<Option<f64>>,
    /// The minute in which all is done and dry.
    pub ready: f64,
    /// Whether no order is shorter; else the search ended early and this is the best that was seen.
    pub exact: bool,
}

/// The shortest order of work.
///
/// The first order takes, of the tasks that can start soonest, the one with the longest way to the end (hands,
/// waits, and what comes after): long drying starts early. Then every order that could be shorter is tried
/// (branch and bound) while [`limits::PREP_STEPS`] lasts.
#[must_use]
pub fn schedule(work: &[Work]) -> Schedule {
    let order = sound_order(work);
    let tails = tails(work, &order);
    let best = Schedule { starts: vec![None; work.len()], ready: f64::INFINITY, exact: true };
    let mut search = Search { work, tails: &tails, groups: &[], left: limits::PREP_STEPS, best, first: false };
    search.go(&mut vec![None; work.len()], order.len(), Point::default());
    search.best
}

/// An order no longer than `found` in which tasks of one group stand together where that costs no time: easier
/// to follow than one that jumps from puzzle to puzzle. It is `found` itself when the search does not end in time.
#[must_use]
pub fn tidied(work: &[Work], groups: &[usize], found: &Schedule) -> Schedule {
    let order = sound_order(work);
    let tails = tails(work, &order);
    let best = Schedule { ready: found.ready + SLACK, ..found.clone() };
    let mut search = Search { work, tails: &tails, groups, left: limits::PREP_STEPS, best, first: true };
    search.go(&mut vec![None; work.len()], order.len(), Point::default());
    Schedule { ready: search.best.ready.min(found.ready), exact: found.exact, starts: search.best.starts }
}

/// Minutes within which two orders are equally long: sums of minutes are rounded.
const SLACK: f64 = 1e-6;

/// An order in which every task comes after those it waits for; tasks in a ring are left out.
fn sound_order(work: &[Work]) -> Vec<usize> {
    let mut order: Vec<usize> = Vec::new();
    let mut placed = vec![false; work.len()];
    loop {
        let ready = |task: &Work| task.after.iter().all(|before| placed.get(*before).copied().unwrap_or(true));
        let Some(next) = (0..work.len()).find(|index| !placed[*index] && ready(&work[*index])) else { return order };
        placed[next] = true;
        order.push(next);
    }
}

/// For each task the minutes from its start to the end of the longest chain that begins with it.
fn tails(work: &[Work], order: &[usize]) -> Vec<f64> {
    let mut tails = vec![0.0_f64; work.len()];
    for index in order.iter().rev() {
        // Until here the entry holds the longest chain after the task.
        let tail = tails[*index] + work[*index].hands + work[*index].wait;
        tails[*index] = tail;
        for before in &work[*index].after {
            if let Some(longest) = tails.get_mut(*before) {
                *longest = longest.max(tail);
            }
        }
    }
    tails
}

/// How far an order has come: when the hands are free, when all so far is dry, and what was done last.
#[derive(Clone, Copy, Default)]
struct Point {
    now: f64,
    ready: f64,
    last: Option<usize>,
}

struct Search<'a> {
    work: &'a [Work],
    tails: &'a [f64],
    /// The group of each task; empty when groups do not matter.
    groups: &'a [usize],
    /// Whether the first order that is short enough will do.
    first: bool,
    left: u64,
    best: Schedule,
}

impl Search<'_> {
    /// Tries every order of the `open` tasks not yet started; true when the search may end.
    fn go(&mut self, starts: &mut Vec<Option<f64>>, open: usize, at: Point) -> bool {
        if open == 0 {
            if at.ready < self.best.ready {
                self.best.ready = at.ready;
                self.best.starts.clone_from(starts);
                return self.first;
            }
            return false;
        }
        // The first order is always finished, so that there is one.
        if self.best.ready.is_finite() {
            let Some(left) = self.left.checked_sub(1) else {
                self.best.exact = false;
                return true;
            };
            self.left = left;
        }
        for (index, start) in self.choices(starts, at) {
            if self.least(starts, index, start, at.ready) >= self.best.ready {
                continue;
            }
            let task = &self.work[index];
            let end = start + task.hands;
            starts[index] = Some(start);
            let next = Point { now: end, ready: at.ready.max(end + task.wait), last: Some(index) };
            if self.go(starts, open - 1, next) {
                return true;
            }
            starts[index] = None;
        }
        false
    }

    /// The tasks that can come next with the minute in which each can start, soonest first, then by the longest
    /// way to the end; with groups, what continues the group in hand comes before other tasks that can start at
    /// once. A task is left out when another could be done wholly before it can start.
    fn choices(&self, starts: &[Option<f64>], at: Point) -> Vec<(usize, f64)> {
        let mut choices: Vec<(usize, f64)> = Vec::new();
        for (index, task) in self.work.iter().enumerate() {
            if starts[index].is_some() {
                continue;
            }
            let dry = |before: &usize| match (self.work.get(*before), starts.get(*before)) {
                (Some(task), Some(start)) => start.map(|start| start + task.hands + task.wait),
                _ => Some(0.0),
            };
            let times: Option<Vec<f64>> = task.after.iter().map(dry).collect();
            choices.extend(times.map(|times| (index, times.into_iter().fold(at.now, f64::max))));
        }
        let soonest =
            choices.iter().map(|(index, start)| start + self.work[*index].hands).fold(f64::INFINITY, f64::min);
        choices.retain(|(index, start)| *start < soonest || start + self.work[*index].hands <= soonest);
        let elsewhere = |index: usize| match (at.last, self.groups.get(index)) {
            (Some(last), Some(group)) => self.groups.get(last) != Some(group),
            _ => false,
        };
        choices.sort_by(|a, b| {
            let waits = a.1.total_cmp(&b.1);
            waits
                .then(elsewhere(a.0).cmp(&elsewhere(b.0)))
                .then(self.tails[b.0].total_cmp(&self.tails[a.0]))
                .then(a.0.cmp(&b.0))
        });
        choices
    }

    /// No order that goes on with `index` at `start` is ready sooner than this.
    fn least(&self, starts: &[Option<f64>], index: usize, start: f64, ready: f64) -> f64 {
        let mut least = ready.max(start + self.tails[index]);
        let end = start + self.work[index].hands;
        let (mut hands, mut last_wait) = (0.0, f64::INFINITY);
        for (other, task) in self.work.iter().enumerate() {
            // A task of a ring has no tail and is never started.
            if other != index && starts[other].is_none() && self.tails[other] > 0.0 {
                least = least.max(end + self.tails[other]);
                hands += task.hands;
                last_wait = last_wait.min(task.wait);
            }
        }
        if last_wait.is_finite() { least.max(end + hands + last_wait) } else { least }
    }
}
