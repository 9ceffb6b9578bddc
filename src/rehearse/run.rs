use super::gather::{Rehearsal, evenings};
use super::stage::Stage;
use super::totals::corrected;
use crate::diag::{Hinted, Trouble};
use crate::limits;

/// Rehearses a stage `runs` times. Evenings are independent, so the result is the same on any number of cores.
///
/// # Errors
/// When there is nothing to play or more is asked for than memory should hold; the hint says how many.
pub fn rehearse(stage: &Stage, runs: usize) -> Hinted<Rehearsal> {
    let puzzles = stage.puzzles.len();
    let most = (limits::REHEARSED_ASKED / puzzles.max(1)).clamp(limits::REHEARSED_LEAST, limits::REHEARSED_MOST);
    if runs == 0 || runs > most {
        return Err(Trouble::new(format!("{runs} evenings cannot be rehearsed"))
            .hint(format!("for this kit ask for 1 to {most}")));
    }
    if puzzles != stage.net.puzzles.len() {
        return Err(Trouble::new("the stage and its net have not the same puzzles"));
    }
    let expected = evenings(stage, runs)?;
    if stage.totals.is_empty() {
        return Ok(expected);
    }
    // What real evenings were off by is measured against simulated ones, and corrects what the next are simulated with.
    evenings(&corrected(stage, &expected), runs)
}
