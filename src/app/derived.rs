use crate::bundle::Progress;
use crate::checks::{Finding, Proof};
use crate::diag::{Level, Trouble};
use crate::flow::Flow;
use crate::ids::PuzzleId;
use crate::party::{LaidPuzzle, Party};

/// What was computed last, and for which revision of the kit.
#[derive(Default)]
pub struct Derived {
    revision: u64,
    proof: Option<Proof>,
    trouble: Option<Trouble>,
    /// How far the export under way has come.
    pub export: Option<Progress>,
}

impl Derived {
    /// Takes a new proof in. One that failed leaves the older one standing, with the reason beside it.
    pub fn proved(&mut self, revision: u64, proof: Result<Proof, Trouble>) {
        self.revision = revision;
        match proof {
            Ok(proof) => {
                self.proof = Some(proof);
                self.trouble = None;
            }
            Err(trouble) => self.trouble = Some(trouble),
        }
    }

    /// Forgets everything: another kit was opened.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// Whether there is a proof, of this revision or an older one.
    #[must_use]
    pub const fn proven(&self) -> bool {
        self.proof.is_some() || self.trouble.is_some()
    }

    /// Whether the kit has changed since.
    #[must_use]
    pub const fn stale(&self, revision: u64) -> bool {
        self.revision != revision
    }

    /// What kept the kit from being proved.
    #[must_use]
    pub const fn trouble(&self) -> Option<&Trouble> {
        self.trouble.as_ref()
    }

    /// The findings of all levels, what blocks first.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        self.proof.as_ref().map_or(&[], |proof| proof.findings.as_slice())
    }

    /// The party at a level.
    #[must_use]
    pub fn party(&self, level: Level) -> Option<&Party> {
        Some(&self.proof.as_ref()?.levels.iter().find(|at| at.party.level == level)?.party)
    }

    /// A puzzle as it was laid out and read at a level.
    #[must_use]
    pub fn puzzle(&self, level: Level, id: &PuzzleId) -> Option<&LaidPuzzle> {
        self.party(level)?.puzzle(id)
    }

    /// What guests can reach at a level.
    #[must_use]
    pub fn flow(&self, level: Level) -> Option<&Flow> {
        Some(&self.proof.as_ref()?.levels.iter().find(|at| at.party.level == level)?.flow)
    }
}
