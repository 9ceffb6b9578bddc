//! The clock of an evening, and what opens when.

use std::cmp::Reverse;

use rand::seq::SliceRandom as _;

use super::Evening;
use super::table::{Busy, Event, Play};
use crate::flow::Time;
use crate::flow::net::{Opener, Where};

impl Play<'_> {
    pub(super) fn push(&mut self, at: f64, event: Event) {
        self.events += 1;
        self.heap.push(Reverse((Time(at), self.events, event)));
    }

    pub(super) fn run(mut self) -> Option<Evening> {
        loop {
            let next = self.heap.peek().map(|Reverse((Time(at), ..))| *at)?;
            let quiet = self.stirred + self.stage.quiet;
            // Before the letter is read nobody is stuck.
            if self.begun && quiet < next {
                self.pass(quiet);
                self.help();
            } else if let Some(Reverse((Time(at), _, event))) = self.heap.pop() {
                self.pass(at);
                self.happen(event);
            }
            if self.finish == 0 {
                return Some(self.told());
            }
            if self.begun {
                self.share_out();
            }
        }
    }

    /// Lets time go by, and counts who has nothing to do.
    pub(super) fn pass(&mut self, to: f64) {
        let minutes = to - self.now;
        let free = self.units.iter().filter(|unit| unit.at == Busy::Idle).map(|unit| unit.heads).sum::<usize>();
        let useful = self.stage.habits.useful();
        // Whoever stands around a puzzle that takes no more hands has nothing to do either.
        let over: usize = self.busy.iter().map(|at| self.puzzles[*at].heads.saturating_sub(useful)).sum();
        let idle = (free + over) as f64 * minutes;
        self.now = to;
        if !self.begun || idle <= 0.0 {
            return;
        }
        self.out.idle += idle;
        let part = idle / self.busy.len().max(1) as f64;
        for puzzle in &self.busy {
            if let Some(spent) = self.out.puzzles.get_mut(*puzzle) {
                spent.idle += part;
            }
        }
    }

    pub(super) fn happen(&mut self, event: Event) {
        match event {
            Event::Begin => self.begin(),
            Event::Worked(puzzle, version) => {
                if self.puzzles.get(puzzle).is_some_and(|p| p.version == version && !p.trying) {
                    self.puzzles[puzzle].left = 0.0;
                    self.try_it(puzzle);
                }
            }
            Event::Tried(puzzle) => self.tried(puzzle),
            Event::Found(item, unit) => {
                if self.units.get(unit).is_some_and(|unit| unit.at == Busy::Seeking(item)) {
                    self.units[unit].at = Busy::Idle;
                    self.found(item, self.units[unit].last);
                }
            }
            Event::Keyed(lock, thanks) => self.open_lock(lock, thanks),
        }
    }

    pub(super) fn begin(&mut self) {
        self.begun = true;
        self.stirred = self.now;
        let stage = self.stage;
        let mut lying: Vec<usize> =
            (0..stage.net.items.len()).filter(|at| stage.net.items[*at] == Where::Open).collect();
        lying.shuffle(&mut self.rng);
        for item in lying {
            let looked_for = stage.sought.get(item).copied().unwrap_or(false);
            if looked_for && self.finds.get(item).is_some_and(|minutes| *minutes > 0.0) {
                self.unfound.push_back(item);
            } else {
                self.found(item, None);
            }
        }
        for puzzle in 0..self.puzzles.len() {
            if stage.net.puzzles[puzzle].is_empty() {
                self.comes_open(puzzle, None);
            }
        }
        for index in 0..self.boxes.len() {
            if self.boxes[index].0 == 0 {
                self.open_box(index, None);
            }
        }
    }

    /// A thing is to hand, thanks to a puzzle.
    pub(super) fn found(&mut self, item: usize, thanks: Option<usize>) {
        if std::mem::replace(&mut self.items[item], true) {
            return;
        }
        self.stirred = self.now;
        let links = self.links;
        for puzzle in &links.item_puzzles[item] {
            let state = &mut self.puzzles[*puzzle];
            state.lacks = state.lacks.saturating_sub(1);
            if state.lacks == 0 {
                self.comes_open(*puzzle, thanks);
            }
        }
        for lock in &links.item_locks[item] {
            let at = self.now + self.stage.habits.trying;
            self.push(at, Event::Keyed(*lock, thanks));
        }
    }

    pub(super) fn comes_open(&mut self, puzzle: usize, thanks: Option<usize>) {
        let state = &mut self.puzzles[puzzle];
        (state.open, state.thanks) = (self.now, thanks);
        if !state.over {
            self.waiting.push_back(puzzle);
        }
    }

    pub(super) fn open_lock(&mut self, lock: usize, thanks: Option<usize>) {
        if self.locks[lock].is_some() {
            return;
        }
        self.locks[lock] = Some(self.now);
        self.stirred = self.now;
        let links = self.links;
        for index in &links.lock_boxes[lock] {
            self.box_gets(*index, thanks);
        }
        // Nobody goes on with a puzzle whose lock is open already.
        let stage = self.stage;
        for opener in &stage.net.locks[lock] {
            if let Opener::Puzzle(puzzle) = opener
                && links.puzzle_locks.get(*puzzle).is_some_and(|locks| locks.iter().all(|at| self.locks[*at].is_some()))
            {
                self.give_up(*puzzle);
            }
        }
    }

    pub(super) fn box_gets(&mut self, index: usize, thanks: Option<usize>) {
        let waits = &mut self.boxes[index].0;
        *waits = waits.saturating_sub(1);
        if *waits == 0 {
            self.open_box(index, thanks);
        }
    }

    pub(super) fn open_box(&mut self, index: usize, thanks: Option<usize>) {
        if self.boxes[index].1.is_some() {
            return;
        }
        self.boxes[index].1 = Some(self.now);
        let ends = self.stage.finish.iter().filter(|place| **place == Where::Box(index)).count();
        self.finish = self.finish.saturating_sub(ends);
        if ends > 0 && self.finish == 0 {
            self.chain(thanks);
        }
        let links = self.links;
        for item in &links.box_items[index] {
            self.found(*item, thanks);
        }
        for inner in &links.box_boxes[index] {
            self.box_gets(*inner, thanks);
        }
    }

    /// Walks back from the end: what each puzzle waited for last.
    pub(super) fn chain(&mut self, last: Option<usize>) {
        self.out.end = self.now;
        let mut at = last;
        // Each step goes back in time or ends; the bound keeps puzzles that take no time from turning round.
        for _ in 0..self.puzzles.len() {
            let Some(puzzle) = at else { return };
            let state = &self.puzzles[puzzle];
            let (Some(began), Some(solved)) = (state.began, state.solved) else { return };
            self.out.chain.push((puzzle, solved - began));
            at = state.kept_by.or(state.thanks);
        }
    }

    pub(super) fn told(mut self) -> Evening {
        for (spent, puzzle) in self.out.puzzles.iter_mut().zip(&self.puzzles) {
            (spent.began, spent.solved) = (puzzle.began, puzzle.solved);
        }
        self.out.locks = self.locks;
        self.out.boxes = self.boxes.into_iter().map(|(_, opened)| opened).collect();
        self.out
    }
}
