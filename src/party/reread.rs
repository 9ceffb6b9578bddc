use super::Party;
use super::laid::dressed;
use crate::diag::Hinted;
use crate::face::proof::Printed;
use crate::kit::{Kit, Puzzle};
use crate::mechanics;
use crate::readings::{Budget, Readings};
use crate::theme::Loaded;

impl Party {
    /// What the printed pieces of a puzzle read as, found from the paper alone and from what the host is told to make
    /// by hand. None: the puzzle was not laid out, or its mechanic prints nothing that carries it.
    ///
    /// # Errors
    /// When the paper cannot be read as this puzzle.
    #[must_use]
    pub fn reread(
        &self,
        kit: &Kit,
        theme: &Loaded,
        puzzle: &Puzzle,
        mut printed: Vec<Printed>,
    ) -> Option<Hinted<Readings>> {
        let laid = self.puzzle(&puzzle.id)?;
        let mechanic = mechanics::find(&puzzle.mechanic).ok()?;
        let lock = self.positions.lock(kit, &puzzle.opens)?;
        let lock_name = self.say(&lock.name);
        let names = &self.script.puzzle(&puzzle.id)?.names;
        let cx = dressed((puzzle, lock, &lock_name), names, theme, &self.palette, &self.pictures);
        printed.push(Printed::told(laid.prep.iter().map(|step| step.what.clone())));
        let view = mechanic.reread(&printed, &cx)?;
        Some(view.map(|view| view.readings(&lock.kind, &mut Budget::default())))
    }
}
