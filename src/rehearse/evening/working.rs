//! What guests and host do: who sits down to what, answers tried, tokens.

use super::table::{Busy, Event, Play};

impl Play<'_> {
    /// Gives everybody something to do, as far as there is: open puzzles first, then what is to be looked for, then
    /// others' puzzles.
    pub(super) fn share_out(&mut self) {
        loop {
            let free = self.units.iter().position(|unit| unit.at == Busy::Idle);
            if let Some(puzzle) = self.waiting.front().copied() {
                // Whoever only helps elsewhere leaves for a puzzle at which nobody is.
                let Some(unit) = free.or_else(|| self.helper()) else { return };
                self.waiting.pop_front();
                self.leave(unit);
                let began = self.puzzles[puzzle].open;
                let kept = self.now > began;
                let state = &mut self.puzzles[puzzle];
                state.began = Some(self.now);
                state.kept_by = self.units[unit].last.filter(|_| kept);
                (state.since, state.quiet) = (self.now, self.now);
                self.busy.push(puzzle);
                self.join(unit, puzzle);
                continue;
            }
            let Some(unit) = free else { return };
            if let Some(item) = self.unfound.pop_front() {
                self.units[unit].at = Busy::Seeking(item);
                let at = self.now + self.finds[item] / self.stage.habits.pace(self.units[unit].heads);
                self.push(at, Event::Found(item, unit));
                continue;
            }
            let most = self.stage.habits.useful();
            let fewest = self.busy.iter().filter(|at| !self.puzzles[**at].trying && self.puzzles[**at].heads < most);
            let Some(puzzle) = fewest.min_by_key(|at| self.puzzles[**at].heads).copied() else { return };
            self.join(unit, puzzle);
        }
    }

    /// Guests at a puzzle where others are as well.
    pub(super) fn helper(&self) -> Option<usize> {
        self.units.iter().position(|unit| match unit.at {
            Busy::At(puzzle) => self.puzzles[puzzle].heads > unit.heads && !self.puzzles[puzzle].trying,
            Busy::Idle | Busy::Seeking(_) => false,
        })
    }

    pub(super) fn join(&mut self, unit: usize, puzzle: usize) {
        self.settle(puzzle);
        self.units[unit].at = Busy::At(puzzle);
        self.puzzles[puzzle].heads += self.units[unit].heads;
        self.go_on(puzzle);
    }

    pub(super) fn leave(&mut self, unit: usize) {
        if let Busy::At(puzzle) = self.units[unit].at {
            self.settle(puzzle);
            self.puzzles[puzzle].heads = self.puzzles[puzzle].heads.saturating_sub(self.units[unit].heads);
            self.units[unit].at = Busy::Idle;
            self.go_on(puzzle);
        }
    }

    /// Takes off the work that was done since the last change.
    pub(super) fn settle(&mut self, puzzle: usize) {
        let pace = self.stage.habits.pace(self.puzzles[puzzle].heads);
        let state = &mut self.puzzles[puzzle];
        if !state.trying && state.heads > 0 {
            state.left = (state.left - (self.now - state.since) * pace).max(0.0);
        }
        state.since = self.now;
    }

    /// Says when the work that is left will be done, at the pace of those who are at it.
    pub(super) fn go_on(&mut self, puzzle: usize) {
        let state = &mut self.puzzles[puzzle];
        state.version += 1;
        if state.trying || state.heads == 0 {
            return;
        }
        let (version, left, heads) = (state.version, state.left, state.heads);
        let at = self.now + left / self.stage.habits.pace(heads);
        self.push(at, Event::Worked(puzzle, version));
    }

    pub(super) fn try_it(&mut self, puzzle: usize) {
        self.puzzles[puzzle].trying = true;
        let locks = self.stage.puzzles.get(puzzle).map_or(1.0, |task| task.locks);
        self.push(self.now + self.stage.habits.trying * locks, Event::Tried(puzzle));
    }

    pub(super) fn tried(&mut self, puzzle: usize) {
        if self.puzzles[puzzle].over {
            return;
        }
        let habits = &self.stage.habits;
        self.puzzles[puzzle].trying = false;
        self.puzzles[puzzle].since = self.now;
        let state = &mut self.puzzles[puzzle];
        if state.wrong < state.wrongs {
            state.wrong = state.wrong.saturating_add(1);
            state.left = state.whole * state.rest * habits.again;
            if state.helped {
                state.left = state.left.min(habits.rescue);
            }
            if state.wrong.is_multiple_of(habits.wrong_tries.max(1)) {
                self.token(puzzle);
            } else {
                self.go_on(puzzle);
            }
            return;
        }
        self.puzzles[puzzle].solved = Some(self.now);
        self.give_up(puzzle);
        let links = self.links;
        for lock in &links.puzzle_locks[puzzle] {
            self.open_lock(*lock, Some(puzzle));
        }
    }

    /// Everybody gets up from a puzzle, and nobody sits down to it any more.
    pub(super) fn give_up(&mut self, puzzle: usize) {
        let state = &mut self.puzzles[puzzle];
        (state.version, state.over) = (state.version + 1, true);
        self.busy.retain(|at| *at != puzzle);
        self.waiting.retain(|at| *at != puzzle);
        for unit in &mut self.units {
            if unit.at == Busy::At(puzzle) {
                (unit.at, unit.last) = (Busy::Idle, Some(puzzle));
            }
        }
    }

    /// The table has gone quiet: a token for the puzzle that has been stuck longest, or a word on where to look.
    pub(super) fn help(&mut self) {
        self.stirred = self.now;
        let stuck = self.busy.iter().filter(|at| !self.puzzles[**at].trying);
        let stuck = stuck.min_by(|a, b| self.puzzles[**a].quiet.total_cmp(&self.puzzles[**b].quiet)).copied();
        if let Some(puzzle) = stuck {
            self.settle(puzzle);
            self.token(puzzle);
            return;
        }
        let seeking = self.units.iter().enumerate().find_map(|(at, unit)| match unit.at {
            Busy::Seeking(item) => Some((at, item)),
            Busy::Idle | Busy::At(_) => None,
        });
        if let Some((unit, item)) = seeking {
            self.units[unit].at = Busy::Idle;
            self.found(item, self.units[unit].last);
        }
    }

    /// The next token of a puzzle, and when there is none the host's own help; its work must be settled.
    pub(super) fn token(&mut self, puzzle: usize) {
        let habits = &self.stage.habits;
        let steps = self.stage.puzzles.get(puzzle).map_or([false; 3], |task| task.steps);
        let state = &mut self.puzzles[puzzle];
        let next = (state.step..steps.len()).find(|at| steps[*at]);
        match next {
            Some(at) => {
                state.step = at + 1;
                state.left *= habits.hints[at];
                state.rest *= habits.hints[at];
            }
            None => {
                state.left = state.left.min(habits.rescue);
                state.helped = true;
            }
        }
        state.quiet = self.now;
        self.stirred = self.now;
        let taken = &mut self.out.puzzles[puzzle].tokens[next.unwrap_or(steps.len())];
        *taken = taken.saturating_add(1);
        self.go_on(puzzle);
    }
}
