use super::candidates::Pool;
use super::scene::Scene;
use crate::diag::{Hinted, Trouble};
use crate::ids::PuzzleId;
use crate::limits;
use crate::readings::Budget;

/// What a search ends with, short of codes.
enum End {
    /// All ways were tried.
    None,
    /// The budget was spent.
    Spent,
}

/// Finds a code for each pool so that all go together: depth first, the pool with the fewest codes first.
///
/// # Errors
/// When there are none, or none were found within the budget; the hints say what fell to what.
pub(super) fn search(scene: &Scene<'_>, pools: &mut [Pool<'_>]) -> Hinted<Vec<(PuzzleId, String)>> {
    pools.sort_by_key(|pool| pool.len());
    let mut budget = Budget::new(limits::PROPOSED_STEPS);
    let mut chosen: Vec<(PuzzleId, String)> = Vec::new();
    // The place in each pool's list from which to go on.
    let mut next = vec![0_usize; pools.len()];
    let mut deepest = 0;
    let end = loop {
        let depth = chosen.len();
        deepest = deepest.max(depth);
        if depth == pools.len() {
            return Ok(chosen);
        }
        match step(scene, pools, &chosen, &mut next, &mut budget) {
            Ok(Some(code)) => chosen.push((pools[depth].puzzle.id.clone(), code)),
            Ok(None) => {
                next[depth] = 0;
                if chosen.pop().is_none() {
                    break End::None;
                }
            }
            Err(end) => break end,
        }
    };
    let told = match end {
        End::None => "no codes go together for these puzzles",
        End::Spent => "no codes that go together were found in time",
    };
    let mut trouble = Trouble::new(told);
    if let Some(pool) = pools.get(deepest) {
        let title = &pool.puzzle.title;
        let hint = format!(
            "the search came no further than \"{title}\": every code that it can have is too like another lock's"
        );
        trouble = trouble.hint(hint);
    }
    Err(trouble.hint("let that puzzle or another open a lock with more wheels, or try another seed"))
}

/// The next code of the pool at the depth reached that goes with the codes chosen.
fn step(
    scene: &Scene<'_>,
    pools: &mut [Pool<'_>],
    chosen: &[(PuzzleId, String)],
    next: &mut [usize],
    budget: &mut Budget,
) -> Result<Option<String>, End> {
    let depth = chosen.len();
    while let Some(code) = pools[depth].code(next[depth]).map(str::to_owned) {
        if !budget.step() {
            return Err(End::Spent);
        }
        let at = next[depth];
        next[depth] += 1;
        let id = &pools[depth].puzzle.id;
        let bars = pools.iter().zip(chosen).any(|(other, (_, theirs))| other.barred_by(id, &code, theirs));
        if !bars && pools[depth].goes_with(&code, chosen) && pools[depth].good(at, scene) {
            return Ok(Some(code));
        }
    }
    Ok(None)
}
