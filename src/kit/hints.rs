use serde::{Deserialize, Serialize};

use crate::diag::Step;

/// Three hints, each telling a little more. The answer itself is in the host guide only.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HintLadder {
    /// Where to look.
    pub nudge: String,
    /// What to do.
    pub method: String,
    /// All but the last step.
    pub giveaway: String,
}

impl HintLadder {
    /// The text of one step.
    #[must_use]
    pub fn step(&self, step: Step) -> &str {
        match step {
            Step::Nudge => &self.nudge,
            Step::Method => &self.method,
            Step::Giveaway => &self.giveaway,
        }
    }

    /// The text of one step, to change.
    pub fn step_mut(&mut self, step: Step) -> &mut String {
        match step {
            Step::Nudge => &mut self.nudge,
            Step::Method => &mut self.method,
            Step::Giveaway => &mut self.giveaway,
        }
    }
}
