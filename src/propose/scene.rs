use std::collections::BTreeSet;

use super::{Change, LEVELS};
use crate::codes::{Saying, says, stands_in};
use crate::diag::{Anchor, Hinted, PuzzleField, Step};
use crate::face::Audience;
use crate::ids::PuzzleId;
use crate::kit::edit::{Edit, apply};
use crate::kit::{Kit, Lock, LockKind, Puzzle};
use crate::party::{Kept, Party, Trial, words_of};
use crate::theme::Loaded;

/// What stands fixed while codes are looked for: the texts on view, the hints, and the means to lay puzzles out.
pub(super) struct Scene<'a> {
    trials: Vec<Trial<'a>>,
    /// Texts that no new code can change, and the puzzle that each belongs to.
    texts: BTreeSet<(Option<PuzzleId>, String)>,
    /// Labels, file names and descriptions, likewise; a code must not stand in one even of its own puzzle.
    beside: BTreeSet<String>,
    /// Hints at all levels, and their puzzles.
    hints: BTreeSet<(PuzzleId, String)>,
}

/// Why a code cannot be used, whatever the other codes are.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum No {
    Avoided,
    Guessable,
    Turnable,
    NotHeld,
    OnView,
    Hinted,
    Refused(String),
    Read(&'static str),
}

impl<'a> Scene<'a> {
    /// The scene of a kit in which the `open` puzzles are to change.
    pub fn new(kit: &'a Kit, theme: &'a Loaded, open: &[&Puzzle]) -> Hinted<Self> {
        let mut scene =
            Self { trials: Vec::new(), texts: BTreeSet::new(), beside: BTreeSet::new(), hints: BTreeSet::new() };
        let mut laid = Kept::default();
        for level in LEVELS {
            let party = Party::with(kit, theme, level, &mut laid)?;
            scene.trials.push(Trial::new(kit, theme, level)?);
            for view in party.on_view(kit) {
                let owner = owner(&view.from);
                if owner.as_ref().is_none_or(|owner| open.iter().all(|puzzle| puzzle.id != *owner)) {
                    scene.texts.insert((owner, view.text));
                }
            }
            // Descriptions of the puzzles' own pieces follow their codes; those are looked at in the end.
            for piece in party.pieces.iter().filter(|piece| piece.audience != Audience::Host) {
                let words = words_of(piece);
                scene.beside.extend(
                    words
                        .beside
                        .into_iter()
                        .filter(|(what, _)| matches!(*what, "label" | "file name"))
                        .map(|(_, text)| text),
                );
            }
            for laid in &party.puzzles {
                let steps = Step::ALL.iter().map(|step| laid.hints.step(*step)).filter(|text| !text.trim().is_empty());
                scene.hints.extend(steps.map(|text| (laid.id.clone(), text.to_owned())));
            }
        }
        Ok(scene)
    }

    /// A text with its slots filled; as written where that fails.
    pub fn fill(&self, text: &str) -> String {
        let words = self.trials.first().map(|trial| &trial.script().words);
        words.and_then(|words| words.fill(text).ok()).unwrap_or_else(|| text.to_owned())
    }

    /// The words of the theme and of the kit.
    pub fn words(&self) -> Vec<String> {
        let Some(trial) = self.trials.first() else { return Vec::new() };
        trial.script().words.forms().values().flat_map(|forms| [forms.one.clone(), forms.many.clone()]).collect()
    }

    /// Whether the puzzle holds all symbols of the code by itself, at every level.
    pub fn held(&self, puzzle: &Puzzle) -> impl Fn(&str) -> bool + use<> {
        let held: Vec<Vec<char>> = self.trials.iter().filter_map(|trial| trial.symbols(puzzle)).collect();
        move |code| held.iter().all(|symbols| code.chars().all(|symbol| symbols.contains(&symbol)))
    }

    /// Whether a fixed text or a hint tells the code.
    pub fn told(&self, puzzle: &Puzzle, kind: &LockKind, code: &str) -> Option<No> {
        let whole = |text: &str| says(text, kind, code) == Some(Saying::Whole);
        if self.texts.iter().any(|(owner, text)| owner.as_ref() != Some(&puzzle.id) && whole(text))
            || self.beside.iter().any(|text| stands_in(text, code))
        {
            return Some(No::OnView);
        }
        let tells = |(owner, text): &(PuzzleId, String)| match says(text, kind, code) {
            Some(saying) => *owner == puzzle.id || saying.whole(),
            None => false,
        };
        self.hints.iter().any(tells).then_some(No::Hinted)
    }

    /// Whether the puzzle cannot be laid out for the code with one reading at every level.
    pub fn carried(&self, puzzle: &Puzzle, code: &str) -> Option<No> {
        self.trials.iter().find_map(|trial| match trial.verdict(puzzle, code) {
            Ok(crate::readings::Verdict::One) => None,
            Ok(other) => Some(No::Read(other.word())),
            Err(trouble) => Some(No::Refused(trouble.message)),
        })
    }
}

/// The puzzle to whose pieces a text belongs; titles belong to everybody.
fn owner(from: &Anchor) -> Option<PuzzleId> {
    match from {
        Anchor::Puzzle(id, field) if *field != PuzzleField::Title => Some(id.clone()),
        _ => None,
    }
}

/// The codes that stand in plain sight once `kit` is laid out with these changes: whose code, and on whose piece;
/// with none as the latter, on a piece that no change made.
pub(super) fn clashes(kit: &Kit, theme: &Loaded, changes: &[Change]) -> Hinted<Vec<(PuzzleId, Option<PuzzleId>)>> {
    let mut kit = kit.clone();
    for change in changes {
        let fresh = kit.puzzle(&change.puzzle).map(|puzzle| Puzzle { answer: change.new.clone(), ..puzzle.clone() });
        fresh.map(|fresh| apply(&mut kit, Edit::Puzzle(Box::new(fresh))));
    }
    let mut found = BTreeSet::new();
    let mut laid = Kept::default();
    for level in LEVELS {
        let party = Party::with(&kit, theme, level, &mut laid)?;
        let locks: Vec<(&Change, &Lock)> =
            changes.iter().filter_map(|change| Some((change, kit.lock(&kit.puzzle(&change.puzzle)?.opens)?))).collect();
        for view in party.on_view(&kit) {
            let owner = owner(&view.from);
            for (change, lock) in &locks {
                if owner.as_ref() != Some(&change.puzzle)
                    && says(&view.text, &lock.kind, &change.new) == Some(Saying::Whole)
                {
                    found.insert((change.puzzle.clone(), owner.clone()));
                }
            }
        }
        for piece in party.pieces.iter().filter(|piece| piece.audience != Audience::Host) {
            let owner = piece.front.runs().find_map(|run| owner(&run.from));
            for (_, text) in words_of(piece).beside {
                for (change, _) in locks.iter().filter(|(change, _)| stands_in(&text, &change.new)) {
                    found.insert((change.puzzle.clone(), owner.clone()));
                }
            }
        }
    }
    Ok(found.into_iter().collect())
}
