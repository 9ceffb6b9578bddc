use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::depends::{Key, Shared};
use super::{LaidPuzzle, rng_at};
use crate::diag::{Anchor, Hinted, PuzzleField, Trouble};
use crate::face::{Pictures, Piece};
use crate::ids::LockId;
use crate::kit::file::nearest;
use crate::kit::{HintLadder, Kit, Lock, Positions, Puzzle};
use crate::mechanics::{self, AnyView, Dressing, Hung};
use crate::readings::{Budget, Readings};
use crate::script::{PuzzleText, Script};
use crate::theme::{Colour, Loaded, Palette};

/// What the puzzles of a kit are laid out with.
#[derive(Clone, Copy)]
pub(super) struct Scene<'a> {
    pub kit: &'a Kit,
    pub theme: &'a Loaded,
    pub palette: &'a Palette,
    pub script: &'a Script,
    pub colours: &'a [(&'a str, Colour)],
}

/// The scene with what every puzzle is told of it, gathered once.
pub(super) struct Table<'a> {
    scene: Scene<'a>,
    positions: &'a Positions,
    pictures: &'a Pictures,
    symbols: Vec<&'a str>,
    marks: Vec<&'a str>,
    /// The locks that hang in holes, by their holes; with their names, and whether they shut a box.
    hung: Vec<(String, &'a Lock, bool)>,
}

/// A puzzle and its texts.
pub(super) type Job<'a> = (&'a Puzzle, &'a PuzzleText);

/// A puzzle with its pieces.
#[derive(Clone, Debug)]
pub(super) struct Made {
    pub puzzle: LaidPuzzle,
    pub pieces: Vec<Piece>,
    pub trouble: Option<(Anchor, Trouble)>,
}

impl<'a> Table<'a> {
    pub fn new(scene: Scene<'a>, positions: &'a Positions, pictures: &'a Pictures) -> Self {
        let Scene { kit, theme, script, .. } = scene;
        let shut: BTreeSet<&LockId> = kit.boxes.iter().flat_map(|item| &item.locks).collect();
        let mut hung: Vec<&Lock> = kit.locks.iter().filter(|lock| lock.hole > 0).collect();
        hung.sort_by_key(|lock| lock.hole);
        let name = |lock: &Lock| script.words.fill(&lock.name).unwrap_or_else(|_| lock.name.clone());
        Self {
            scene,
            positions,
            pictures,
            symbols: theme.theme.symbols.keys().map(String::as_str).collect(),
            marks: kit.locks.iter().map(|lock| lock.mark.as_str()).collect(),
            hung: hung.into_iter().map(|lock| (name(lock), lock, shut.contains(&lock.id))).collect(),
        }
    }

    fn fill(&self, text: &str) -> String {
        self.scene.script.words.fill(text).unwrap_or_else(|_| text.to_owned())
    }

    /// What a puzzle depends on; none when its lock is not in the kit, so that it cannot be laid out.
    pub fn key(&self, (puzzle, text): Job<'_>) -> Option<Key> {
        let lock = self.positions.lock(self.scene.kit, &puzzle.opens)?;
        Some(Key {
            seed: self.scene.kit.seed,
            arrangement: puzzle.arrangement,
            mechanic: puzzle.mechanic.clone(),
            setup: text.setup.clone(),
            answer: self.fill(&puzzle.answer),
            lock: lock.kind.clone(),
            lock_name: self.fill(&lock.name),
            mark: lock.mark.clone(),
            names: text.names.clone(),
        })
    }

    /// What all puzzles depend on: the palette, and the locks as each puzzle may see them.
    pub fn shared(&self) -> Shared {
        let Scene { kit, palette, .. } = self.scene;
        let shut: BTreeSet<&LockId> = kit.boxes.iter().flat_map(|item| &item.locks).collect();
        let lock = |lock: &Lock| {
            (lock.id.clone(), self.fill(&lock.name), lock.mark.clone(), lock.hole, shut.contains(&lock.id))
        };
        Shared { palette: palette.clone(), locks: kit.locks.iter().map(lock).collect() }
    }

    pub fn lay(&self, (puzzle, text): Job<'_>) -> Made {
        let Scene { theme, palette, .. } = self.scene;
        let answer = self.fill(&puzzle.answer);
        let mut laid = LaidPuzzle {
            id: puzzle.id.clone(),
            answer: answer.trim().to_owned(),
            laid: Err(Trouble::new("not laid out")),
            readings: Readings::default(),
            verdict: None,
            parts: Vec::new(),
            prep: Vec::new(),
            kinds: Vec::new(),
            reason: String::new(),
            work: None,
            reset: String::new(),
            hints: text.hints.clone(),
            drafted: HintLadder::default(),
        };
        let (lock, view) = match self.view(puzzle, &text.setup, &laid.answer) {
            Ok(found) => found,
            Err(trouble) => {
                laid.laid = Err(trouble);
                return Made { puzzle: laid, pieces: Vec::new(), trouble: None };
            }
        };
        let lock_name = self.fill(&lock.name);
        let cx = dressed((puzzle, lock, &lock_name), &text.names, theme, palette, self.pictures);
        laid.readings = view.readings(&lock.kind, &mut Budget::default());
        laid.verdict = Some(laid.readings.verdict(&laid.answer));
        laid.parts = view.parts();
        laid.prep = view.prep(&cx);
        laid.kinds = view.kinds();
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

    pub fn view(&self, puzzle: &Puzzle, setup: &str, answer: &str) -> Hinted<(&'a Lock, Box<dyn AnyView>)> {
        let Scene { kit, colours, .. } = self.scene;
        let mechanic = mechanics::find(&puzzle.mechanic)?;
        let lock = self.positions.lock(kit, &puzzle.opens).ok_or_else(|| {
            let known: Vec<&str> = kit.locks.iter().map(|lock| lock.id.as_str()).collect();
            let trouble = Trouble::new(format!("there is no lock `{}`", puzzle.opens));
            match nearest(puzzle.opens.as_str(), &known) {
                Some(near) => trouble.hint(format!("did you mean `{near}`?")),
                None => trouble.hint("add the lock, or choose another"),
            }
        })?;
        let others = self.hung.iter().filter(|(_, other, _)| other.id != lock.id);
        let hung: Vec<Hung<'_>> = others
            .map(|(name, lock, needed)| Hung { name, mark: &lock.mark, hole: lock.hole, needed: *needed })
            .collect();
        let job = mechanics::Job {
            answer,
            lock: &lock.kind,
            symbols: &self.symbols,
            marks: &self.marks,
            colours,
            hung: &hung,
        };
        let mut rng = rng_at(kit.seed, &puzzle.id, puzzle.arrangement);
        Ok((lock, mechanic.lay_out(setup, &job, &mut rng)?))
    }
}

/// How a puzzle is dressed for its lock, when it is laid out and when it is read back from paper: both must be alike.
pub(super) fn dressed<'a>(
    (puzzle, lock, lock_name): (&'a Puzzle, &'a Lock, &'a str),
    names: &'a BTreeMap<String, String>,
    theme: &'a Loaded,
    palette: &'a Palette,
    pictures: &'a Pictures,
) -> Dressing<'a> {
    Dressing {
        puzzle: &puzzle.id,
        names,
        mechanic: &puzzle.mechanic,
        lock: &lock.kind,
        lock_name,
        // A mark that the theme does not draw is a finding of its own and no reason to print nothing.
        mark: if theme.symbol(&lock.mark).is_some() { &lock.mark } else { "" },
        theme,
        palette,
        pictures,
    }
}
