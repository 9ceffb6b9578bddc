//! Digs a maze by chance: a tree of passages, so that one way leads from any cell to any other.

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};

use super::{Floor, Setup, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::pictures::choose;
use crate::mechanics::words::{any_symbol, pushes, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::ways::Net;

/// Of a hundred steps in digging, so many go on from the newest cell; the rest begin a branch anywhere. More make long
/// winding ways, fewer make many short dead ends.
const ONWARD: u32 = 84;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer: Vec<char> = match job.lock {
        LockKind::Directions(_) => pushes(job.answer, job.lock)?,
        _ => symbols(job.answer, job.lock)?,
    };
    let (least, most) = limits::MAZE_SIDE;
    let (cols, rows) = (usize::from(setup.cols), usize::from(setup.rows));
    if !(least..=most).contains(&cols) || !(least..=most).contains(&rows) {
        return Err(Trouble::new(format!("a maze of {cols} by {rows} cells cannot be printed well"))
            .hint(format!("set `cols` and `rows` to {least} to {most}")));
    }
    if setup.decoys > limits::MAZE_DECOYS {
        return Err(Trouble::new(format!("{} signs off the way crowd the maze", setup.decoys))
            .hint(format!("set `decoys` to {} or less", limits::MAZE_DECOYS)));
    }
    let wanted: Vec<&str> = match job.lock {
        LockKind::Directions(_) => vec![&setup.start, &setup.goal, &setup.waymark],
        _ => vec![&setup.start, &setup.goal],
    };
    let pictures = choose(&wanted, job, rng)?;
    let maze = Maze { setup, lock: job.lock, answer: &answer, pictures: &pictures, cols, rows };
    // A light maze has few wrong turns, so most of its steps go on from the newest cell.
    let onward = match setup.work {
        Effort::Light => 94,
        Effort::Fair | Effort::Deep => ONWARD,
    };
    arranged(setup.work, rng, &mut |rng| maze.dug(onward, rng), &|view| Some(texts::work(view)))
}

/// What every maze for the answer is dug with.
struct Maze<'a> {
    setup: &'a Setup,
    lock: &'a LockKind,
    answer: &'a [char],
    pictures: &'a [String],
    cols: usize,
    rows: usize,
}

impl Maze<'_> {
    fn dug(&self, onward: u32, rng: &mut Rng) -> Hinted<View> {
        let picture = |at: usize| self.pictures.get(at).cloned().unwrap_or_default();
        for _ in 0..limits::MAZE_STARTS {
            let passages = self.passages(onward, rng);
            let mut view = View {
                text: self.setup.text.trim().to_owned(),
                cols: self.cols,
                rows: self.rows,
                passages,
                gates: Vec::new(),
                start: (self.edge(rng), picture(0)),
                goal: (0, picture(1)),
                floor: Floor::Symbols(Vec::new()),
                say_order: self.setup.say_order,
            };
            let net = view.net();
            let far = net.distances(view.start.0);
            // As far away as can be; of several such cells the first.
            let goal = (0..self.cols * self.rows).rev().max_by_key(|cell| far.get(*cell).copied().flatten());
            view.goal.0 = goal.unwrap_or_default();
            let way = view.way();
            let on_way = match self.lock {
                LockKind::Directions(_) => self.turns(&view, &way, rng),
                _ => self.passed(&way, rng),
            };
            let Some(on_way) = on_way else { continue };
            let decoys = self.dead_ends(&net, &way, rng);
            view.floor = match self.lock {
                LockKind::Directions(_) => {
                    let mut cells: Vec<usize> = on_way.into_iter().chain(decoys).collect();
                    cells.sort_unstable();
                    Floor::Waymarks(picture(2), cells)
                }
                _ => {
                    let mut list: Vec<(usize, char)> = on_way.into_iter().zip(self.answer.iter().copied()).collect();
                    list.extend(decoys.into_iter().map(|cell| (cell, any_symbol(self.lock, rng))));
                    list.sort_unstable();
                    Floor::Symbols(list)
                }
            };
            return Ok(view);
        }
        Err(Trouble::new("no maze of this size has a way long enough for the answer")
            .hint("set `cols` and `rows` larger, or take an answer with fewer symbols"))
    }

    /// A tree over all cells: from a cell with neighbours not yet reached, a passage to one of them by chance.
    fn passages(&self, onward: u32, rng: &mut Rng) -> Vec<(usize, usize)> {
        let cells = self.cols * self.rows;
        let mut reached = vec![false; cells];
        let first = rng.random_range(0..cells);
        reached[first] = true;
        let mut open = vec![first];
        let mut passages = Vec::new();
        while !open.is_empty() {
            let newest = rng.random_range(0..100_u32) < onward;
            let at = if newest { open.len() - 1 } else { rng.random_range(0..open.len()) };
            let Some(cell) = open.get(at).copied() else { break };
            let near: Vec<usize> = self.neighbours(cell).into_iter().filter(|next| !reached[*next]).collect();
            match near.choose(rng) {
                Some(next) => {
                    reached[*next] = true;
                    passages.push((cell.min(*next), cell.max(*next)));
                    open.push(*next);
                }
                None => {
                    open.remove(at);
                }
            }
        }
        passages.sort_unstable();
        passages
    }

    fn neighbours(&self, cell: usize) -> Vec<usize> {
        let (row, col) = (cell / self.cols, cell % self.cols);
        let mut near = Vec::new();
        if row > 0 {
            near.push(cell - self.cols);
        }
        if col > 0 {
            near.push(cell - 1);
        }
        if col + 1 < self.cols {
            near.push(cell + 1);
        }
        if row + 1 < self.rows {
            near.push(cell + self.cols);
        }
        near
    }

    /// A cell at the edge.
    fn edge(&self, rng: &mut Rng) -> usize {
        let cells: Vec<usize> = (0..self.cols * self.rows).filter(|cell| self.neighbours(*cell).len() < 4).collect();
        cells.choose(rng).copied().unwrap_or_default()
    }

    /// Cells of the way for the answer's symbols, in order, neither at its ends nor next to each other where it is long.
    fn passed(&self, way: &[usize], rng: &mut Rng) -> Option<Vec<usize>> {
        let inner = way.get(1..way.len().checked_sub(1)?)?;
        let count = self.answer.len();
        // With one cell of air between two signs, so many fit; without, so many cells as there are.
        let air = usize::from(inner.len() >= 2 * count);
        let room = (inner.len() + air).checked_sub(count * (1 + air))?;
        let mut gaps: Vec<usize> = (0..count).map(|_| rng.random_range(0..=room)).collect();
        gaps.sort_unstable();
        gaps.iter().enumerate().map(|(index, gap)| inner.get(gap + index * (1 + air)).copied()).collect()
    }

    /// Cells of the way that it leaves to the sides that the answer names, in order.
    fn turns(&self, view: &View, way: &[usize], rng: &mut Rng) -> Option<Vec<usize>> {
        let steps: Vec<(usize, char)> =
            way.windows(2).skip(1).filter_map(|pair| Some((pair[0], view.side(pair[0], pair[1])?.letter()))).collect();
        // The latest step at which each push, and all that follow it, still find their steps.
        let mut latest = vec![0; self.answer.len()];
        let mut end = steps.len();
        for (index, push) in self.answer.iter().enumerate().rev() {
            end = steps.iter().take(end).rposition(|(_, side)| side == push)?;
            latest[index] = end;
        }
        let (mut cells, mut from) = (Vec::new(), 0);
        for (push, latest) in self.answer.iter().zip(latest) {
            let fits: Vec<usize> =
                (from..=latest).filter(|at| steps.get(*at).is_some_and(|(_, side)| side == push)).collect();
            let at = *fits.choose(rng)?;
            cells.push(steps.get(at)?.0);
            from = at + 1;
        }
        Some(cells)
    }

    /// Cells off the way for signs that mislead, ends of dead ends first.
    fn dead_ends(&self, net: &Net, way: &[usize], rng: &mut Rng) -> Vec<usize> {
        let mut off: Vec<usize> = (0..self.cols * self.rows).filter(|cell| !way.contains(cell)).collect();
        off.shuffle(rng);
        off.sort_by_key(|cell| net.from(*cell).len() != 1);
        // Half of them lie at ends, the rest anywhere.
        let wanted = usize::from(self.setup.decoys);
        let mut cells: Vec<usize> = off.iter().copied().take(wanted.div_ceil(2)).collect();
        let mut rest: Vec<usize> = off.into_iter().skip(cells.len()).collect();
        rest.shuffle(rng);
        cells.extend(rest.into_iter().take(wanted - cells.len().min(wanted)));
        cells
    }
}
