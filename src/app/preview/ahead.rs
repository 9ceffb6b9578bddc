use std::time::Duration;

use super::{Job, Painter, Shown, Wanted, laid_out};
use crate::diag::Hinted;
use crate::print::Press;

/// How long the other pieces wait when the one that is looked at has been drawn: a pointer that drags a colour moves
/// again sooner than that.
const PAUSE: Duration = Duration::from_millis(90);

impl Painter {
    /// Draws the piece that is looked at before all others, from a kit with nothing but its puzzle, so that it follows a
    /// drag. Answers whether something newer waits.
    pub(super) fn ahead(
        &mut self,
        job: &Job,
        press: &Press,
        shown: &mut Shown,
        wait: &dyn Fn(Duration) -> bool,
        report: &dyn Fn(Shown),
    ) -> Hinted<bool> {
        let (Wanted::Pieces(_), Some(id)) = (&job.wanted, &job.first) else { return Ok(false) };
        let Some(group) = self.groups.get(id) else { return Ok(false) };
        let mut kit = (*job.kit).clone();
        kit.puzzles.retain(|puzzle| puzzle.id.as_str() == group);
        let party = laid_out(&kit, &job.theme, job, press)?;
        let Some(piece) = party.pieces.iter().find(|piece| piece.id == *id) else { return Ok(false) };
        self.piece(press, piece, job.width_px, shown);
        report(shown.clone());
        shown.items.clear();
        shown.troubles.clear();
        Ok(wait(PAUSE))
    }
}
