use std::sync::Arc;

use super::gather::Rehearsal;
use super::run::rehearse;
use super::stage::Stage;
use crate::diag::{Hinted, Level};
use crate::flow::Parts;
use crate::kit::Kit;

/// Rehearsals that are kept from edit to edit: one is made anew only when something that it depends on has changed.
#[derive(Debug, Default)]
pub struct Rehearsals {
    kept: Vec<(Stage, Arc<Rehearsal>)>,
}

impl Rehearsals {
    /// The rehearsal of a kit at a level, with as many evenings as are usual for its size.
    ///
    /// # Errors
    /// As [`Stage::new`].
    pub fn of(&mut self, kit: &Kit, parts: &Parts<'_>, level: Level) -> Hinted<Arc<Rehearsal>> {
        let stage = Stage::new(kit, parts, level)?;
        if let Some(at) = self.kept.iter().position(|(known, _)| *known == stage) {
            let known = self.kept.remove(at);
            let rehearsal = known.1.clone();
            self.kept.push(known);
            return Ok(rehearsal);
        }
        let rehearsal = Arc::new(rehearse(&stage, stage.usual_runs())?);
        // One for each level is what the next edit may leave as it is; the oldest goes.
        if self.kept.len() >= Level::ALL.len() {
            self.kept.remove(0);
        }
        self.kept.push((stage, rehearsal.clone()));
        Ok(rehearsal)
    }
}
