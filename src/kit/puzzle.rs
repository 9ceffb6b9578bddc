use std::collections::BTreeMap;

use ron::value::RawValue;
use serde::{Deserialize, Serialize};

use super::{HintLadder, LevelChange, OwnStep, Place};
use crate::diag::Level;
use crate::ids::{LockId, PropId, PuzzleId};

/// What a mechanic lets the author choose, in RON: fields in round brackets, `(side: 7, turns: 2)`; `()` leaves all as it
/// is when nothing is chosen. `inklatch explain MECHANIC` lists the fields.
// It is kept as text so that the kit file need not know every mechanic; the mechanic parses it.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct RawSetup(Box<RawValue>);

impl RawSetup {
    /// A setup from RON text.
    ///
    /// # Errors
    /// When the text is not RON.
    pub fn new(ron: &str) -> Result<Self, ron::error::SpannedError> {
        RawValue::from_boxed_ron(ron.trim().into()).map(Self)
    }

    /// The RON text.
    #[must_use]
    pub fn ron(&self) -> &str {
        self.0.get_ron().trim()
    }
}

impl PartialEq for RawSetup {
    fn eq(&self, other: &Self) -> bool {
        self.ron() == other.ron()
    }
}

/// One challenge: a mechanic with a setup and an answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Puzzle {
    /// Stable name. Chance arranges the puzzle by it, together with the kit's `seed` and the `arrangement`: under another
    /// name it comes out anew, so choose it before the first sheet is cut.
    pub id: PuzzleId,
    /// Title for the host and the hint tokens; it must not give the answer away.
    pub title: String,
    /// The mechanic's id; `inklatch mechanics` lists them.
    pub mechanic: String,
    /// What opens the lock: digits, letters, U D L R, a spoken word, or the name of the place where the key lies.
    pub answer: String,
    /// The lock that the answer opens. Each puzzle has a lock of its own: what one puzzle opens, no other needs to.
    pub opens: LockId,
    /// Which of the arrangements that chance can make of the setup; another number is another arrangement.
    #[serde(default, skip_serializing_if = "is_first")]
    pub arrangement: u32,
    /// What the mechanic lets the author choose; `inklatch explain MECHANIC` describes it.
    pub setup: RawSetup,
    /// Where each part of the puzzle lies, by the part's name.
    #[serde(default)]
    pub parts: BTreeMap<String, Place>,
    /// What this puzzle calls its own parts and prints over them, in place of the theme's words for its mechanic: by the
    /// keys of the theme's `dressings`, such as `{"card": "the packer's card", "card-title": "How I packed"}`.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub names: BTreeMap<String, String>,
    /// Tools that guests need for it.
    #[serde(default)]
    pub tools: Vec<PropId>,
    /// The three hints.
    #[serde(default)]
    pub hints: HintLadder,
    /// Steps of the host's preparation that the author adds to those of the mechanic; they come after these.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub preparation: Vec<OwnStep>,
    /// Minutes that the author expects half of the groups to need, with no hint; an estimate until play logs say more.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// Minutes within which nine groups of ten should have it; with none, the mechanic's own spread is taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slow_minutes: Option<f64>,
    /// What `gentle` changes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gentle: Option<LevelChange>,
    /// What `stiff` changes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stiff: Option<LevelChange>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "the shape that serde asks for")]
const fn is_first(arrangement: &u32) -> bool {
    *arrangement == 0
}

impl Puzzle {
    /// What a level changes, if anything.
    #[must_use]
    pub const fn change(&self, level: Level) -> Option<&LevelChange> {
        match level {
            Level::Gentle => self.gentle.as_ref(),
            Level::Standard => None,
            Level::Stiff => self.stiff.as_ref(),
        }
    }

    /// The setup in force at a level.
    #[must_use]
    pub fn setup_at(&self, level: Level) -> &RawSetup {
        self.change(level).and_then(|change| change.setup.as_ref()).unwrap_or(&self.setup)
    }

    /// The hints that a level writes itself, made where there are none yet.
    pub fn hints_mut(&mut self, level: Level) -> &mut HintLadder {
        let change = match level {
            Level::Standard => return &mut self.hints,
            Level::Gentle => &mut self.gentle,
            Level::Stiff => &mut self.stiff,
        };
        change.get_or_insert_default().hints.get_or_insert_default()
    }

    /// The hints in force at a level: a step that the level leaves empty keeps the puzzle's own text.
    #[must_use]
    pub fn hints_at(&self, level: Level) -> HintLadder {
        let mut hints = self.hints.clone();
        if let Some(change) = self.change(level).and_then(|change| change.hints.as_ref()) {
            for step in crate::diag::Step::ALL {
                if !change.step(step).trim().is_empty() {
                    change.step(step).clone_into(hints.step_mut(step));
                }
            }
        }
        hints
    }
}
