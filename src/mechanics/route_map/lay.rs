//! Draws up a map by chance: squares with stops, or roads with one shortest way, or places that lie in line.

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};

use super::{Place, Route, Setup, Task, View, Wind, texts};
use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::pictures::{choose, known};
use crate::mechanics::words::{any_symbol, pushes, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::Budget;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let pushed = matches!(job.lock, LockKind::Directions(_));
    let answer: Vec<char> = if pushed { pushes(job.answer, job.lock)? } else { symbols(job.answer, job.lock)? };
    let (least, most) = limits::MAP_SIDE;
    let (cols, rows) = (usize::from(setup.cols), usize::from(setup.rows));
    if !(least..=most).contains(&cols) || !(least..=most).contains(&rows) {
        return Err(Trouble::new(format!("a map of {cols} by {rows} squares cannot be printed well"))
            .hint(format!("set `cols` and `rows` to {least} to {most}")));
    }
    if setup.others > limits::MAP_OTHERS {
        return Err(Trouble::new(format!("{} other places crowd the map", setup.others))
            .hint(format!("set `others` to {} or less", limits::MAP_OTHERS)));
    }
    // Symbols that the card names must be unlike each other; the rest of the theme's stand anywhere, as often as need be.
    let named = match (pushed, setup.route) {
        (true, _) => answer.len() + 1,
        (false, Route::Squares) => 1,
        (false, Route::Roads) => 2,
    };
    let mut wanted = vec![setup.start.as_str()];
    if named > 1 {
        wanted.extend(std::iter::repeat_n("", named - 2));
        wanted.push(if pushed { "" } else { &setup.goal });
    }
    let named = choose(&wanted, job, rng)?;
    known(&setup.pictures, job)?;
    let wanted = |name: &&str| setup.pictures.is_empty() || setup.pictures.iter().any(|picture| picture == name);
    let unnamed = |name: &&str| !named.iter().any(|other| other == name);
    let mut rest: Vec<&str> = job.symbols.iter().copied().filter(wanted).filter(unnamed).collect();
    rest.shuffle(rng);
    // What the author does not name is no lock's mark where the theme has others.
    if setup.pictures.is_empty() && rest.iter().any(|name| !job.marks.contains(name)) {
        rest.retain(|name| !job.marks.contains(name));
    }
    if rest.is_empty() {
        return Err(Trouble::new("no symbol is left for the other places")
            .hint("name more in `pictures`, or leave it empty; or take a lock with fewer pushes"));
    }
    let chart = Chart { setup, lock: job.lock, answer: &answer, named: &named, rest: &rest, cols, rows };
    let make = &mut |rng: &mut Rng| {
        for _ in 0..limits::MAP_STARTS {
            let view = match (pushed, setup.route) {
                (true, _) => chart.bearings(rng),
                (false, Route::Squares) => chart.squares(rng),
                (false, Route::Roads) => chart.roads(rng),
            };
            if let Some(view) = view {
                return Ok(view);
            }
        }
        Err(Trouble::new("no map of this size has a route for the answer")
            .hint("set `cols` and `rows` larger, or take an answer with fewer symbols"))
    };
    arranged(setup.work, rng, make, &|view| Some(texts::work(view)))
}

/// What every map for the answer is drawn up with.
struct Chart<'a> {
    setup: &'a Setup,
    lock: &'a LockKind,
    answer: &'a [char],
    /// Symbols that the card names.
    named: &'a [String],
    /// All others.
    rest: &'a [&'a str],
    cols: usize,
    rows: usize,
}

impl Chart<'_> {
    fn view(&self, task: Task) -> View {
        View {
            text: self.setup.text.trim().to_owned(),
            cols: self.cols,
            rows: self.rows,
            places: Vec::new(),
            roads: Vec::new(),
            north: self.setup.north,
            task,
            say_stops: self.setup.say_stops,
        }
    }

    fn named(&self, at: usize) -> String {
        self.named.get(at).cloned().unwrap_or_default()
    }

    /// A place with one of the symbols that the card does not name.
    fn place(&self, view: &mut View, at: usize, sign: Option<char>) {
        let picture = self.rest.get(view.places.len() % self.rest.len().max(1)).copied().unwrap_or_default();
        view.places.push(Place { at, picture: picture.to_owned(), sign });
    }

    /// Adds places that the route does not ask for, on the squares of `likely` first; then sorts all, so that the list
    /// does not tell which is which.
    fn others(&self, view: &mut View, likely: &[usize], signs: bool, rng: &mut Rng) {
        let mut free: Vec<usize> = (0..self.cols * self.rows).collect();
        free.shuffle(rng);
        let mut likely = likely.to_vec();
        likely.shuffle(rng);
        likely.truncate(usize::from(self.setup.others).div_ceil(2));
        let taken: Vec<usize> = view.places.iter().map(|place| place.at).collect();
        let mut squares: Vec<usize> = Vec::new();
        for at in likely.into_iter().chain(free) {
            if squares.len() < usize::from(self.setup.others) && !taken.contains(&at) && !squares.contains(&at) {
                squares.push(at);
            }
        }
        for at in squares {
            let sign = signs.then(|| any_symbol(self.lock, rng));
            self.place(view, at, sign);
        }
        view.places.sort_by_key(|place| place.at);
    }

    /// Legs over squares, each to a stop with its sign.
    fn squares(&self, rng: &mut Rng) -> Option<View> {
        let pieces = match self.setup.work {
            Effort::Light => 1,
            Effort::Fair => 2,
            Effort::Deep => 3,
        };
        let mut view = self.view(Task::Legs(self.named(0), Vec::new()));
        let mut here = rng.random_range(0..self.cols * self.rows);
        view.places.push(Place { at: here, picture: self.named(0), sign: None });
        let (mut legs, mut passed, mut last) = (Vec::new(), Vec::new(), None);
        for sign in self.answer {
            let mut leg = Vec::new();
            for _ in 0..pieces {
                // Never on in the same direction or straight back: that would be one piece, or a shorter one.
                let across = |wind: &Wind| last.is_none_or(|last: Wind| *wind != last && *wind != last.turned(2));
                let ways: Vec<Wind> =
                    Wind::ALL.into_iter().filter(across).filter(|wind| view.step(here, *wind).is_some()).collect();
                let wind = *ways.choose(rng)?;
                let wanted = rng.random_range(1..=4_usize);
                let mut gone = 0;
                while let Some(next) = (gone < wanted).then(|| view.step(here, wind)).flatten() {
                    here = next;
                    gone += 1;
                    passed.push(here);
                }
                leg.push((wind, gone));
                last = Some(wind);
            }
            if view.places.iter().any(|place| place.at == here) {
                return None;
            }
            self.place(&mut view, here, Some(*sign));
            legs.push(leg);
        }
        view.task = Task::Legs(self.named(0), legs);
        self.others(&mut view, &passed, true, rng);
        Some(view)
    }

    /// Roads between crossings with one shortest way, on which the signs stand.
    fn roads(&self, rng: &mut Rng) -> Option<View> {
        let crossings = self.cols * self.rows;
        let mut view = self.view(Task::Shortest(self.named(0), self.named(1)));
        let mut pieces: Vec<(usize, usize)> = (0..crossings)
            .flat_map(|at| [Wind::East, Wind::South].map(|wind| (at, wind)))
            .filter_map(|(at, wind)| view.step(at, wind).map(|next| (at, next)))
            .collect();
        pieces.shuffle(rng);
        // Every crossing is reached; beyond that, more roads make more ways to compare.
        let loops = match self.setup.work {
            Effort::Light => 0.12,
            Effort::Fair => 0.3,
            Effort::Deep => 0.5,
        };
        let mut spare = Vec::new();
        for (a, b) in pieces {
            if view.net().distances(a).get(b).copied().flatten().is_none() {
                view.roads.push((a, b));
            } else {
                spare.push((a, b));
            }
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a map has a few hundred roads")]
        let extra = (spare.len() as f64 * loops) as usize;
        view.roads.extend(spare.into_iter().take(extra));
        let start = rng.random_range(0..crossings);
        let far = view.net().distances(start);
        let longest = far.iter().flatten().max().copied()?;
        let wanted = (self.answer.len() + 2).max(longest * 3 / 4);
        let ends: Vec<usize> = (0..crossings).filter(|at| far.get(*at) == Some(&Some(wanted))).collect();
        let goal = *ends.choose(rng)?;
        let way = self.one_shortest(&mut view, start, goal)?;
        let inner = way.get(1..way.len() - 1)?;
        let mut stops: Vec<usize> = (0..inner.len()).collect();
        stops.shuffle(rng);
        stops.truncate(self.answer.len());
        stops.sort_unstable();
        if stops.len() < self.answer.len() {
            return None;
        }
        for (end, at) in [start, goal].into_iter().enumerate() {
            view.places.push(Place { at, picture: self.named(end), sign: None });
        }
        for (stop, sign) in stops.iter().zip(self.answer) {
            self.place(&mut view, *inner.get(*stop)?, Some(*sign));
        }
        let mut off = view.clone();
        // Other signs stand off the way: one on it would be read.
        let free: Vec<usize> = (0..crossings).filter(|at| !way.contains(at)).collect();
        let mut squares = free;
        squares.shuffle(rng);
        for at in squares.into_iter().take(usize::from(self.setup.others)) {
            let sign = Some(any_symbol(self.lock, rng));
            self.place(&mut off, at, sign);
        }
        off.places.sort_by_key(|place| place.at);
        off.roads.sort_unstable();
        Some(off)
    }

    /// Takes roads away until one shortest way is left, and gives it.
    fn one_shortest(&self, view: &mut View, start: usize, goal: usize) -> Option<Vec<usize>> {
        for _ in 0..limits::MAP_STARTS {
            let mut ways: Vec<Vec<usize>> = Vec::new();
            let keep = &mut |way: &[usize]| {
                ways.push(way.to_vec());
                ways.len() < 2
            };
            view.net().each_shortest(start, goal, &mut Budget::new(limits::GRID_STEPS), keep).ok()?;
            let [first, second] = ways.as_slice() else { return ways.pop() };
            // A road of the second way that the first does not take: without it all crossings can still be reached, for
            // both of its ends lie on ways from the start that do not need it.
            let piece = |way: &[usize], at: usize| Some((*way.get(at)?, *way.get(at + 1)?));
            let (a, b) = (0..second.len())
                .filter_map(|at| piece(second, at))
                .find(|(a, b)| !first.windows(2).any(|pair| pair[0] == *a && pair[1] == *b))?;
            view.roads.retain(|(x, y)| (*x, *y) != (a.min(b), a.max(b)));
        }
        None
    }

    /// Places in line with one another, for the sides to which they lie.
    fn bearings(&self, rng: &mut Rng) -> Option<View> {
        let mut view = self.view(Task::Bearings(self.named.to_vec()));
        let mut here = rng.random_range(0..self.cols * self.rows);
        view.places.push(Place { at: here, picture: self.named(0), sign: None });
        for (turn, push) in self.answer.iter().enumerate() {
            let wind = Wind::ALL.into_iter().find(|wind| wind.push() == *push)?;
            let mut ahead = Vec::new();
            let mut next = view.step(here, wind);
            while let Some(at) = next {
                ahead.push(at);
                next = view.step(at, wind);
            }
            ahead.retain(|at| view.places.iter().all(|place| place.at != *at));
            // Nearer squares leave room for the pushes that follow.
            ahead.truncate(3);
            here = *ahead.choose(rng)?;
            view.places.push(Place { at: here, picture: self.named(turn + 1), sign: None });
        }
        self.others(&mut view, &[], false, rng);
        Some(view)
    }
}
