//! What a laid out puzzle depends on: as long as it is the same, the puzzle is.

use std::collections::BTreeMap;

use crate::ids::LockId;
use crate::kit::LockKind;
use crate::theme::Palette;

/// What every laid out puzzle depends on besides the theme.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shared {
    pub palette: Palette,
    /// Of each lock its name with slots filled, its mark, its hole, and whether it shuts a box.
    pub locks: Vec<(LockId, String, String, u8, bool)>,
}

/// All that a laid out puzzle depends on besides the theme and what all share.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Key {
    pub seed: u64,
    pub arrangement: u32,
    pub mechanic: String,
    /// The setup with its slots filled.
    pub setup: String,
    /// The answer with its slots filled.
    pub answer: String,
    pub lock: LockKind,
    pub lock_name: String,
    pub mark: String,
    /// What the puzzle calls its own parts, slots filled.
    pub names: BTreeMap<String, String>,
}
