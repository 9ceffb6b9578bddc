//! Proposals: a set of codes for a whole kit that no check objects to and that every mechanic can carry.
//!
//! Each code is tried as it would be printed: laid out at every play level and read by the independent solver. The
//! search is seeded; the same kit, wish and seed give the same proposal.

mod candidates;
mod scene;
mod search;

use std::collections::BTreeSet;

use rayon::prelude::*;
use serde::Serialize;

use crate::codes::as_set;
use crate::diag::{Hinted, Level, Trouble};
use crate::ids::PuzzleId;
use crate::kit::edit::{Edit, between};
use crate::kit::{Kit, LockKind, Puzzle};
use crate::limits;
use crate::party::follow_drafts;
use crate::theme::Loaded;

use candidates::Pool;
use scene::Scene;

/// What an author wants of a proposal.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wish {
    /// Another seed gives other codes.
    pub seed: u64,
    /// Codes that shall not be used, such as last season's. The codes that the kit has now are never proposed again.
    pub avoid: Vec<String>,
    /// Puzzles that keep their answers.
    pub keep: BTreeSet<PuzzleId>,
}

impl Wish {
    /// A wish for a new code of one puzzle; all others keep theirs.
    #[must_use]
    pub fn only(kit: &Kit, puzzle: &PuzzleId) -> Self {
        let keep = kit.puzzles.iter().map(|puzzle| &puzzle.id).filter(|id| *id != puzzle).cloned().collect();
        Self { seed: kit.seed, avoid: Vec::new(), keep }
    }
}

/// A set of codes that go together.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Proposal {
    /// The puzzles that get another answer, in the kit's order.
    pub changes: Vec<Change>,
    /// The puzzles that keep theirs, and why.
    pub kept: Vec<Kept>,
}

/// A new answer for a puzzle.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Change {
    /// Which puzzle.
    pub puzzle: PuzzleId,
    /// Its answer now.
    pub old: String,
    /// The answer proposed.
    pub new: String,
}

/// A puzzle that keeps its answer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Kept {
    /// Which puzzle.
    pub puzzle: PuzzleId,
    /// Why: "its lock opens with a key, so its answer says where that lies".
    pub why: String,
    /// What the author can do to change it; empty where nothing need be done.
    pub help: String,
}

impl Proposal {
    /// The proposal as one step of edits of the kit for which it was made. Hints that are a mechanic's draft follow it.
    #[must_use]
    pub fn edits(&self, kit: &Kit, theme: &Loaded) -> Vec<Edit> {
        let mut fresh = kit.clone();
        for change in &self.changes {
            if let Some(puzzle) = fresh.puzzle_mut(&change.puzzle) {
                puzzle.answer.clone_from(&change.new);
            }
        }
        follow_drafts((kit, theme), &mut fresh, theme);
        between(kit, &fresh)
    }
}

/// Finds answers for all puzzles of `kit` that are not to keep theirs: none guessable, none like another, none in
/// plain sight or told by a hint, each carried by its mechanic with one reading at every level.
///
/// Digits and pushes are drawn; words for letter wheels are taken from the theme's and the kit's own. A puzzle for
/// which there is nothing keeps its answer, and [`Proposal::kept`] says why.
///
/// # Errors
/// When the palette cannot be read, or no codes of the puzzles that could change go together; the hints say why.
pub fn propose(kit: &Kit, theme: &Loaded, wish: &Wish) -> Hinted<Proposal> {
    let mut kept: Vec<Kept> = Vec::new();
    let mut open: Vec<&Puzzle> = Vec::new();
    for puzzle in &kit.puzzles {
        match stays(kit, wish, puzzle) {
            Some((why, help)) => kept.push(Kept { puzzle: puzzle.id.clone(), why, help: help.to_owned() }),
            None => open.push(puzzle),
        }
    }
    let scene = Scene::new(kit, theme, &open)?;
    let mut pools: Vec<Pool<'_>> = open.iter().filter_map(|puzzle| Pool::new(&scene, kit, puzzle, wish)).collect();
    // A puzzle that has no code of its own, whatever the others have, keeps what it has.
    let firsts: Vec<Option<(String, String)>> = pools.par_iter_mut().map(|pool| pool.first(&scene).err()).collect();
    let mut free = Vec::new();
    for (pool, none) in pools.into_iter().zip(firsts) {
        match none {
            None => free.push(pool),
            Some((why, help)) => kept.push(Kept { puzzle: pool.puzzle.id.clone(), why, help }),
        }
    }
    for pool in &mut free {
        pool.avoid_kept(kit, &kept, &scene);
    }
    let changes = together(kit, theme, &scene, free)?;
    let order = |id: &PuzzleId| kit.puzzles.iter().position(|puzzle| puzzle.id == *id);
    kept.sort_by_key(|kept| order(&kept.puzzle));
    Ok(Proposal { changes, kept })
}

/// Searches, lays the whole kit out with what was found, and searches anew without what then stands in plain sight.
fn together(kit: &Kit, theme: &Loaded, scene: &Scene<'_>, mut pools: Vec<Pool<'_>>) -> Hinted<Vec<Change>> {
    for _ in 0..limits::PROPOSED_ROUNDS {
        let found = search::search(scene, &mut pools)?;
        let mut changes: Vec<Change> = Vec::new();
        for puzzle in &kit.puzzles {
            let Some((_, new)) = found.iter().find(|(id, _)| *id == puzzle.id) else { continue };
            changes.push(Change { puzzle: puzzle.id.clone(), old: puzzle.answer.clone(), new: new.clone() });
        }
        let clashes = scene::clashes(kit, theme, &changes)?;
        if clashes.is_empty() {
            return Ok(changes);
        }
        for (told, by) in clashes {
            // The code that is told is barred as long as the puzzle that tells it has this code.
            let code = |id: &PuzzleId| found.iter().find(|(found, _)| found == id).map(|(_, code)| code.clone());
            let by = by.and_then(|id| code(&id).map(|code| (id, code)));
            if let (Some(code), Some(pool)) = (code(&told), pools.iter_mut().find(|pool| pool.puzzle.id == told)) {
                pool.bar(code, by);
            }
        }
    }
    Err(Trouble::new("no codes were found that stand nowhere in plain sight once the kit is laid out")
        .hint("try another seed, or keep some of the codes"))
}

/// Why a puzzle keeps its answer before anything is tried, and what the author can do about it.
fn stays(kit: &Kit, wish: &Wish, puzzle: &Puzzle) -> Option<(String, &'static str)> {
    let Some(lock) = kit.lock(&puzzle.opens) else {
        return Some((
            format!("it opens the lock `{}`, which the kit does not have", puzzle.opens),
            "name one that it has",
        ));
    };
    let shared = kit.puzzles.iter().any(|other| other.id != puzzle.id && other.opens == puzzle.opens);
    let why = match lock.kind {
        _ if wish.keep.contains(&puzzle.id) => ("you asked to keep it", ""),
        LockKind::Key => ("its lock opens with a key, so its answer is where that lies, not a code", ""),
        LockKind::Spoken => (
            "its answer is a word that guests say to the host, and so a part of the story",
            "write another word by hand",
        ),
        _ if puzzle.answer.contains("{{") => ("its answer is one of the theme's words, and changes with the theme", ""),
        _ if shared => ("two puzzles open its lock", "give each of them a lock of its own"),
        _ if lock.kind.wheels().is_none_or(|wheels| wheels == 0 || wheels > limits::WHEELS) => {
            let why = format!("its lock has more or fewer wheels than a lock can have ({})", lock.kind.describe());
            return Some((why, "give it wheels that a padlock from a shop has"));
        }
        _ => return None,
    };
    Some((why.0.to_owned(), why.1))
}

/// The answer of a puzzle as it is set on its lock, slots filled.
fn set_answer(scene: &Scene<'_>, kind: &LockKind, puzzle: &Puzzle) -> String {
    as_set(kind, &scene.fill(&puzzle.answer))
}

/// The levels at which every code is tried.
const LEVELS: [Level; 3] = Level::ALL;
