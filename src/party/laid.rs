use std::collections::BTreeSet;
use std::sync::Arc;

use super::kept::{Key, Shared};
use super::{LaidPuzzle, rng_at};
use crate::diag::{Anchor, Hinted, PuzzleField, Trouble};
use crate::face::Piece;
use crate::ids::LockId;
use crate::kit::file::nearest;
use crate::kit::{HintLadder, Kit, Lock, Puzzle};
use crate::mechanics::{self, AnyView, Dressing, Hung, Job};
use crate::readings::{Budget, Readings};
use crate::script::Script;
use crate::theme::{Colour, Loaded, Palette};

/// What the puzzles of a kit are laid out with.
pub(super) struct Table<'a> {
    pub kit: &'a Kit,
    pub theme: &'a Loaded,
    pub palette: &'a Palette,
    pub script: &'a Script,
    pub colours: &'a [(&'a str, Colour)],
}

/// A puzzle with its pieces.
#[derive(Clone, Debug)]
pub(super) struct Made {
    pub puzzle: LaidPuzzle,
    pub pieces: Vec<Piece>,
    pub trouble: Option<(Anchor, Trouble)>,
}

impl Table<'_> {
    /// What `puzzle` depends on; none when its lock is not in the kit, so that it cannot be laid out.
    pub fn key(&self, puzzle: &Puzzle) -> Option<Key> {
        let fill = |text: &str| self.script.words.fill(text).unwrap_or_else(|_| text.to_owned());
        let lock = self.kit.lock(&puzzle.opens)?;
        let text = self.script.puzzle(&puzzle.id);
        Some(Key {
            seed: self.kit.seed,
            arrangement: puzzle.arrangement,
            mechanic: puzzle.mechanic.clone(),
            setup: text.map_or(puzzle.setup.ron(), |text| text.setup.as_str()).to_owned(),
            answer: fill(&puzzle.answer),
            lock: lock.kind.clone(),
            lock_name: fill(&lock.name),
            mark: lock.mark.clone(),
        })
    }

    /// What all puzzles depend on: the palette, and the locks as each puzzle may see them.
    pub fn shared(&self) -> Shared {
        let shut: BTreeSet<&LockId> = self.kit.boxes.iter().flat_map(|item| &item.locks).collect();
        let fill = |text: &str| self.script.words.fill(text).unwrap_or_else(|_| text.to_owned());
        let lock =
            |lock: &Lock| (lock.id.clone(), fill(&lock.name), lock.mark.clone(), lock.hole, shut.contains(&lock.id));
        Shared { palette: self.palette.clone(), locks: self.kit.locks.iter().map(lock).collect() }
    }

    /// The hints in force at the level, which alone of all that is kept do not go into the laying out.
    pub fn hints(&self, puzzle: &Puzzle) -> HintLadder {
        self.script.puzzle(&puzzle.id).map(|text| text.hints.clone()).unwrap_or_default()
    }

    pub fn lay(&self, puzzle: &Puzzle) -> Made {
        let text = self.script.puzzle(&puzzle.id);
        let answer = self.script.words.fill(&puzzle.answer).unwrap_or_else(|_| puzzle.answer.clone());
        let mut laid = LaidPuzzle {
            id: puzzle.id.clone(),
            answer: answer.trim().to_owned(),
            laid: Err(Trouble::new("not laid out")),
            readings: Readings::default(),
            verdict: None,
            parts: Vec::new(),
            prep: Vec::new(),
            reason: String::new(),
            work: None,
            reset: String::new(),
            hints: text.map(|text| text.hints.clone()).unwrap_or_default(),
            drafted: HintLadder::default(),
        };
        let setup = text.map_or(puzzle.setup.ron(), |text| text.setup.as_str());
        let (lock, view) = match self.view(puzzle, setup, &laid.answer) {
            Ok(found) => found,
            Err(trouble) => {
                laid.laid = Err(trouble);
                return Made { puzzle: laid, pieces: Vec::new(), trouble: None };
            }
        };
        let lock_name = self.script.words.fill(&lock.name).unwrap_or_else(|_| lock.name.clone());
        let cx = Dressing {
            puzzle: &puzzle.id,
            mechanic: &puzzle.mechanic,
            lock: &lock.kind,
            lock_name: &lock_name,
            // A mark that the theme does not draw is a finding of its own and no reason to print nothing.
            mark: if self.theme.symbol(&lock.mark).is_some() { &lock.mark } else { "" },
            theme: self.theme,
            palette: self.palette,
        };
        laid.readings = view.readings(&lock.kind, &mut Budget::default());
        laid.verdict = Some(laid.readings.verdict(&laid.answer));
        laid.parts = view.parts();
        laid.prep = view.prep(&cx);
        laid.reason = view.reason(&cx);
        laid.work = view.work();
        laid.reset = view.reset(&cx);
        laid.drafted = view.draft_hints(&cx);
        let (pieces, trouble) = match view.pieces(&cx) {
            Ok(pieces) => (pieces, None),
            Err(trouble) => {
                let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole);
                (Vec::new(), Some((at, trouble)))
            }
        };
        laid.laid = Ok(Arc::from(view));
        Made { puzzle: laid, pieces, trouble }
    }

    pub fn view(&self, puzzle: &Puzzle, setup: &str, answer: &str) -> Hinted<(&Lock, Box<dyn AnyView>)> {
        let mechanic = mechanics::find(&puzzle.mechanic)?;
        let lock = self.kit.lock(&puzzle.opens).ok_or_else(|| {
            let known: Vec<&str> = self.kit.locks.iter().map(|lock| lock.id.as_str()).collect();
            let trouble = Trouble::new(format!("there is no lock `{}`", puzzle.opens));
            match nearest(puzzle.opens.as_str(), &known) {
                Some(near) => trouble.hint(format!("did you mean `{near}`?")),
                None => trouble.hint("add the lock, or choose another"),
            }
        })?;
        let symbols: Vec<&str> = self.theme.theme.symbols.keys().map(String::as_str).collect();
        let marks: Vec<&str> = self.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
        let names: Vec<(String, &Lock)> = self.hung(&lock.id);
        let hung: Vec<Hung<'_>> = names
            .iter()
            .map(|(name, lock)| Hung {
                name,
                mark: &lock.mark,
                hole: lock.hole,
                needed: self.kit.boxes.iter().any(|item| item.locks.contains(&lock.id)),
            })
            .collect();
        let job =
            Job { answer, lock: &lock.kind, symbols: &symbols, marks: &marks, colours: self.colours, hung: &hung };
        let mut rng = rng_at(self.kit.seed, &puzzle.id, puzzle.arrangement);
        Ok((lock, mechanic.lay_out(setup, &job, &mut rng)?))
    }

    /// The locks that hang in holes, but for one, by their holes; with their names.
    fn hung(&self, but: &LockId) -> Vec<(String, &Lock)> {
        let mut hung: Vec<&Lock> = self.kit.locks.iter().filter(|lock| lock.hole > 0 && lock.id != *but).collect();
        hung.sort_by_key(|lock| lock.hole);
        let name = |lock: &Lock| self.script.words.fill(&lock.name).unwrap_or_else(|_| lock.name.clone());
        hung.into_iter().map(|lock| (name(lock), lock)).collect()
    }
}
