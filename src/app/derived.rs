use std::sync::Arc;

use crate::bundle::Progress;
use crate::checks::{Finding, Proof};
use crate::diag::{Level, Trouble};
use crate::flow::Flow;
use crate::flow::drawing::{Drawing, Extent, draw};
use crate::ids::PuzzleId;
use crate::kit::Kit;
use crate::party::{LaidPuzzle, Party};
use crate::rehearse::Rehearsal;

/// The flow of one level, drawn.
pub struct Drawn {
    all: Drawing,
    solving: Drawing,
}

/// A proof, and the flow of each of its levels, drawn.
pub struct Proven {
    /// The proof.
    pub proof: Proof,
    /// The drawings.
    pub drawings: Vec<(Level, Arc<Drawn>)>,
    /// Whether mends that take long are still being looked for.
    pub mending: bool,
}

impl Proven {
    /// Draws the flow of every level of a proof of `kit`; levels with the same flow share their drawing.
    #[must_use]
    pub fn new(kit: &Kit, proof: Proof) -> Self {
        let mut drawings: Vec<(Level, Arc<Drawn>)> = Vec::new();
        for (at, level) in proof.levels.iter().enumerate() {
            let same = proof.levels.iter().take(at).position(|other| other.flow == level.flow);
            let drawing = match same.and_then(|at| drawings.get(at)) {
                Some((_, drawing)) => drawing.clone(),
                None => {
                    let spoken = level.party.spoken(kit);
                    let [all, solving] =
                        [Extent::All, Extent::Solving].map(|extent| draw(&spoken, &level.flow, extent));
                    Arc::new(Drawn { all, solving })
                }
            };
            drawings.push((level.party.level, drawing));
        }
        Self { proof, drawings, mending: false }
    }
}

/// What was computed last, and for which revision of the kit.
#[derive(Default)]
pub struct Derived {
    revision: u64,
    proof: Option<Proof>,
    trouble: Option<Trouble>,
    drawings: Vec<(Level, Arc<Drawn>)>,
    theme: Vec<Finding>,
    mending: bool,
    /// How far the export under way has come.
    pub export: Option<Progress>,
}

impl Derived {
    /// Takes a new proof in. One that failed leaves the older one standing, with the reason beside it.
    pub fn proved(&mut self, revision: u64, proof: Result<Proven, Trouble>) {
        self.revision = revision;
        match proof {
            Ok(Proven { proof, drawings, mending }) => {
                self.mending = mending;
                self.proof = Some(proof);
                self.drawings = drawings;
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

    /// Whether ways to mend the findings are still being looked for.
    #[must_use]
    pub const fn mending(&self) -> bool {
        self.mending && self.trouble.is_none()
    }

    /// What kept the kit from being proved.
    #[must_use]
    pub const fn trouble(&self) -> Option<&Trouble> {
        self.trouble.as_ref()
    }

    /// Takes in what is wrong with the theme by itself.
    pub fn looked(&mut self, findings: Vec<Finding>) {
        self.theme = findings;
    }

    /// What is wrong with the theme by itself, what blocks first.
    #[must_use]
    pub fn theme_findings(&self) -> &[Finding] {
        &self.theme
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

    /// Simulated evenings at a level.
    #[must_use]
    pub fn rehearsal(&self, level: Level) -> Option<&Rehearsal> {
        self.proof.as_ref()?.level(level)?.rehearsal.as_deref()
    }

    /// The flow at a level, drawn.
    #[must_use]
    pub fn drawing(&self, level: Level, extent: Extent) -> Option<&Drawing> {
        let (_, drawn) = self.drawings.iter().find(|(of, _)| *of == level)?;
        Some(match extent {
            Extent::All => &drawn.all,
            Extent::Solving | Extent::Part => &drawn.solving,
        })
    }

    /// What guests can reach at a level.
    #[must_use]
    pub fn flow(&self, level: Level) -> Option<&Flow> {
        Some(&self.proof.as_ref()?.levels.iter().find(|at| at.party.level == level)?.flow)
    }
}
