use serde::{Deserialize, Serialize, Serializer};

use super::{HintLadder, RawSetup};
use crate::diag::Level;

/// What one play level changes in one puzzle; what it leaves out stays as at `standard`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct LevelChange {
    /// A setup in place of the puzzle's own, all of it: a field that it leaves out is not taken over from there, but is as the
    /// mechanic has it (the check `level-leaves-out` notes such fields).
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "bare")]
    pub setup: Option<RawSetup>,
    /// Hints in place of the puzzle's own; an empty step keeps the puzzle's own text.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hints: Option<HintLadder>,
    /// Minutes in place of the puzzle's own estimate.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
}

/// Writes a setup as an author does, where the format would put `Some(…)` around raw text.
#[expect(clippy::ref_option, reason = "the shape that serde asks for")]
fn bare<S: Serializer>(setup: &Option<RawSetup>, serializer: S) -> Result<S::Ok, S::Error> {
    match setup {
        Some(setup) => setup.serialize(serializer),
        None => serializer.serialize_none(),
    }
}

/// What one play level lays open from the start.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LevelRules {
    /// How many hint steps of each puzzle lie open from the start (0 to 3).
    #[serde(default)]
    pub open_steps: u8,
    /// Quiet minutes after which the host offers the next token.
    #[serde(default)]
    pub quiet_minutes: u8,
    /// Minutes of play at this level, where they are others than the kit's `minutes`; the guide and the rehearsal of the
    /// level go by them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<u16>,
    /// One sentence for the host about this level.
    #[serde(default)]
    pub about: String,
}

/// The three play levels of a kit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Levels {
    /// For the youngest guests.
    pub gentle: LevelRules,
    /// The base.
    pub standard: LevelRules,
    /// For guests who want to work.
    pub stiff: LevelRules,
}

impl Default for Levels {
    fn default() -> Self {
        let rules = |open_steps, quiet_minutes, about: &str| LevelRules {
            open_steps,
            quiet_minutes,
            minutes: None,
            about: about.into(),
        };
        Self {
            gentle: rules(1, 4, "For guests who are new to this."),
            standard: rules(0, 6, "For mixed company."),
            stiff: rules(0, 10, "Tokens only when the guests ask twice."),
        }
    }
}

impl Levels {
    /// The rules of one level.
    #[must_use]
    pub const fn of(&self, level: Level) -> &LevelRules {
        match level {
            Level::Gentle => &self.gentle,
            Level::Standard => &self.standard,
            Level::Stiff => &self.stiff,
        }
    }

    /// The rules of one level, to change.
    pub const fn of_mut(&mut self, level: Level) -> &mut LevelRules {
        match level {
            Level::Gentle => &mut self.gentle,
            Level::Standard => &mut self.standard,
            Level::Stiff => &mut self.stiff,
        }
    }
}
